#pragma once
/// The strip of time in the player.

#include <QSlider>
#include <memory>

#include "burrow/drawing/scene.h"

namespace burrow {

/// The time of a bore from its start to its end: hose marks above, minutes below. A click goes there.
class TimeStrip : public QSlider {
  Q_OBJECT

 public:
  static constexpr int parts_of_second = 10;  ///< of the strip's whole numbers

  explicit TimeStrip(QWidget* parent = nullptr);
  void set_bore(std::shared_ptr<const Playback> bore);
  void set_theme(const Theme& theme);
  [[nodiscard]] QSize sizeHint() const override;
  /// Where a time stands, in the strip's own pixels.
  [[nodiscard]] double x_of(double time_s) const;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;

 private:
  [[nodiscard]] int value_at(double x) const;

  std::shared_ptr<const Playback> bore_;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
