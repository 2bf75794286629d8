#pragma once
/// The bar under the drawing that plays a bore: play and pause, a mark back or on, a strip of time with the hose marks,
/// how fast, which bore, and what the run sheet says at the mark at hand. It shows what is given and changes nothing.
/// Evidence: Player.*

#include <QComboBox>
#include <QElapsedTimer>
#include <QLabel>
#include <QSlider>
#include <QToolButton>
#include <QWidget>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "burrow/drawing/scene.h"

class QTimer;

namespace burrow {

/// The time of a bore from its start to its end: hose marks above, minutes below. A click goes there.
class TimeStrip : public QSlider {
  Q_OBJECT

 public:
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

class PlayerBar : public QWidget {
  Q_OBJECT

 public:
  struct Bore {
    QString name;
    std::shared_ptr<const Playback> playback;
    bool in_truth = false;
  };

  explicit PlayerBar(QWidget* parent = nullptr);

  /// What can be played; the choice stays where the new list has it, the time too.
  void set_bores(std::vector<Bore> bores);
  /// The crossing whose run sheet is told, both to live until the next call.
  void set_tasks(const Crossing* crossing, const Assessment* assessment, UnitSystem units);
  void set_theme(const Theme& theme);

  /// From the start again once it has ended.
  void toggle();
  void pause();
  [[nodiscard]] bool playing() const;
  /// So many marks on or back; without one left, to the end or the start.
  void step(int marks);
  void set_time(double time_s);
  [[nodiscard]] double time_s() const { return time_s_; }
  /// Chooses a bore by what it is.
  void choose(bool in_truth);
  /// Mark by mark instead of gliding; as the desktop asks unless said.
  void set_still(bool still) { still_ = still; }
  /// One frame: tests set their own clock.
  void tick();
  void set_clock(std::function<qint64()> clock) { clock_ = std::move(clock); }
  [[nodiscard]] double speed() const;
  void set_speed(double times);

 Q_SIGNALS:
  /// What the drawing is to show; nothing once the bar is closed.
  void played_changed(const std::optional<burrow::Played>& played);
  void closed();

 protected:
  void hideEvent(QHideEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void connect_parts();
  [[nodiscard]] const Bore* now() const;
  [[nodiscard]] qint64 now_ms() const;
  void show_time();
  void show_playing();
  [[nodiscard]] QString task_text(const Playback& bore, double nose_m) const;
  void show_task(const QString& task);

  std::vector<Bore> bores_;
  const Crossing* crossing_ = nullptr;
  const Assessment* assessment_ = nullptr;
  UnitSystem units_ = UnitSystem::metric;
  QToolButton *play_, *back_, *on_, *close_;
  QComboBox *which_, *speed_;
  TimeStrip* strip_;
  QLabel *clock_text_, *task_;
  QTimer* timer_;
  QElapsedTimer since_start_;
  std::function<qint64()> clock_;
  double time_s_ = 0;
  qint64 last_ms_ = 0;
  bool still_;
};

}  // namespace burrow
