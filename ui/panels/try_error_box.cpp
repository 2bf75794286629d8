#include "burrow/panels/try_error_box.h"

#include <QComboBox>
#include <QEvent>
#include <QLabel>
#include <QSlider>
#include <QVBoxLayout>
#include <cmath>

#include "burrow/charts/bore_charts.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {
constexpr double tenth_degree_rad = 0.1 * pi / 180;  ///< one step of the first two sliders
constexpr double depth_step_m = 0.05;

}  // namespace

TryErrorBox::TryErrorBox(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      soil_(new QComboBox(this)),
      tool_(new QComboBox(this)),
      result_text_(new QLabel(this)),
      chart_(new MissChart(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  level_ = add_slider(tr("level set wrong"), 20);
  sight_ = add_slider(tr("sight set wrong"), 20);
  depth_ = add_slider(tr("deeper"), 20);
  const auto add_combo = [&](const QString& name, QComboBox* combo) {
    auto* label = new QLabel(name, this);
    label->setBuddy(combo);
    combo->setAccessibleName(name);
    combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    combo->setMinimumContentsLength(6);
    combo->setFocusPolicy(Qt::StrongFocus);
    column->addWidget(label);
    column->addWidget(combo);
    connect(combo, &QComboBox::activated, this, &TryErrorBox::show_answer);
  };
  soil_->addItem(tr("as drawn"), QString());
  for (const SoilClass& soil : document_.tables().soils) soil_->addItem(text_from(soil.name), text_from(soil.id));
  tool_->addItem(tr("as chosen"), QString());
  for (const ToolClass& tool : document_.tables().tools) tool_->addItem(text_from(tool.id), text_from(tool.id));
  add_combo(tr("soil all along"), soil_);
  add_combo(tr("tool"), tool_);
  result_text_->setWordWrap(true);
  result_text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  column->addWidget(result_text_);
  column->addWidget(chart_);
}

QSlider* TryErrorBox::add_slider(const QString& name, int half_range) {
  auto* label = new QLabel(this);
  label->setWordWrap(true);
  label->setProperty("plain", name);
  auto* slider = new QSlider(Qt::Horizontal, this);
  slider->setRange(-half_range, half_range);
  slider->setPageStep(5);
  slider->setTickPosition(QSlider::TicksBelow);
  slider->setTickInterval(half_range / 2);
  slider->setAccessibleName(name);
  label->setBuddy(slider);
  layout()->addWidget(label);
  layout()->addWidget(slider);
  values_.push_back(label);
  connect(slider, &QSlider::valueChanged, this, &TryErrorBox::show_answer);
  return slider;
}

void TryErrorBox::set_units(UnitSystem units) {
  units_ = units;
  show_answer();
}

void TryErrorBox::set_theme(const Theme& theme) {
  chart_->set_theme(theme);
}

void TryErrorBox::catch_up() {
  show_answer();
}

QString TryErrorBox::visible_text() const {
  return result_text_->text();
}

void TryErrorBox::show_answer() {
  TryError error;
  error.level_rad = level_->value() * tenth_degree_rad;
  error.aim_rad = sight_->value() * tenth_degree_rad;
  error.deeper_m = depth_->value() * depth_step_m;
  error.soil = soil_->currentData().toString().toStdString();
  error.tool = tool_->currentData().toString().toStdString();
  const auto label = [&](std::size_t i, const QString& value) {
    values_[i]->setText(values_[i]->property("plain").toString() + QStringLiteral(": ") + value);
  };
  label(0, text_from(format(error.level_rad, Dimension::angle, units_)));
  label(1, text_from(format(error.aim_rad, Dimension::angle, units_)));
  label(2, text_from(format(error.deeper_m, Dimension::length, units_)));
  const TryErrorAnswer answer = try_error(document_.crossing(), document_.tables(), error);
  chart_->show_miss(answer, units_);
  chart_->setVisible(!answer.points.empty());
  if (answer.points.empty()) {
    result_text_->setText(tr("There is no path: the launch is out of the ground."));
    return;
  }
  const MissPoint& end = answer.points.back();
  const auto size = [&](double v) { return text_from(format(std::abs(v), Dimension::length, units_)); };
  const QString up = end.up_m < 0 ? tr("%1 low").arg(size(end.up_m)) : tr("%1 high").arg(size(end.up_m));
  const QString side =
      end.left_m < 0 ? tr("%1 to the right").arg(size(end.left_m)) : tr("%1 to the left").arg(size(end.left_m));
  if (answer.reaches)
    result_text_->setText(tr("At the exit it is %1 and %2 of the aimed line.").arg(up, side));
  else
    result_text_->setText(answer.ends_station_m
                              ? tr("It comes out of the ground at station %1.")
                                    .arg(text_from(format(*answer.ends_station_m, Dimension::station, units_)))
                              : tr("It never reaches the exit face."));
}

}  // namespace burrow
