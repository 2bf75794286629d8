#pragma once
/// One error tried plainly: sliders for what may be set wrong, the miss along the bore as a chart.

#include <QWidget>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"
#include "burrow/practice/try_error.h"

class QComboBox;
class QLabel;
class QSlider;

namespace burrow {

class MissChart;

class TryErrorBox : public QWidget {
  Q_OBJECT

 public:
  TryErrorBox(Document& document, QWidget* parent);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  /// Another crossing, or the same changed.
  void catch_up();

  [[nodiscard]] QSlider* level() const { return level_; }
  [[nodiscard]] QSlider* sight() const { return sight_; }
  [[nodiscard]] QSlider* depth() const { return depth_; }
  [[nodiscard]] MissChart* chart() const { return chart_; }
  [[nodiscard]] QString visible_text() const;

 private:
  QSlider* add_slider(const QString& name, int half_range);
  void show_answer();

  Document& document_;
  UnitSystem units_ = UnitSystem::metric;
  QSlider *level_, *sight_, *depth_;
  std::vector<QLabel*> values_;
  QComboBox *soil_, *tool_;
  QLabel* result_text_;
  MissChart* chart_;
};

}  // namespace burrow
