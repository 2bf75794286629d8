#pragma once
/// How far a number is from its limit: a bar as long as what was measured, a tick where the limit is.

#include <QString>
#include <QWidget>
#include <optional>

#include "burrow/drawing/theme.h"

namespace burrow {

class MeasureBar : public QWidget {
  Q_OBJECT

 public:
  explicit MeasureBar(QWidget* parent) : QWidget(parent) {}
  struct Shown {
    double measured = 0, limit = 0;
    bool kept = false;
    QString measured_text, limit_text;
  };
  /// None: the bar is hidden.
  void show_measure(std::optional<Shown> shown);
  void set_theme(const Theme& theme);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return {80, sizeHint().height()}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::optional<Shown> shown_;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
