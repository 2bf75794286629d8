#include "burrow/window/what_if_bar.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QSignalBlocker>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "burrow/bore/playback.h"
#include "burrow/check/played_bores.h"
#include "burrow/document/figures.h"
#include "burrow/document/text.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/drawing/played_text.h"

namespace burrow {

namespace {

constexpr double degree_step_rad = 0.05 * pi / 180;
constexpr int degree_steps = 40;  // two degrees to either side
constexpr double depth_step_m = 0.02;
constexpr int depth_steps = 50;
constexpr double level_m = 1.2, level_ft_m = 4 * 0.3048;  // of a level; common practice, no source
constexpr double off_level_m = 0.001, off_level_in_m = 0.0254 / 16;

}  // namespace

WhatIfBar::WhatIfBar(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      said_(new QLabel(this)),
      thumb_(new QLabel(this)),
      keep_(new QPushButton(tr("Keep it as the layout"), this)),
      back_(new QPushButton(tr("Back to the layout"), this)),
      close_(new QToolButton(this)),
      row_(new QHBoxLayout) {
  setAccessibleName(tr("What if something is set wrong"));
  setAutoFillBackground(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(8, 4, 8, 4);
  column->setSpacing(4);
  row_->setSpacing(12);
  column->addLayout(row_);
  knobs_[level] = make_knob(tr("level set wrong"), &error_.level_rad, Dimension::angle, degree_step_rad, degree_steps);
  knobs_[sight] = make_knob(tr("sight set wrong"), &error_.aim_rad, Dimension::angle, degree_step_rad, degree_steps);
  knobs_[depth] = make_knob(tr("deeper"), &error_.deeper_m, Dimension::length, depth_step_m, depth_steps);
  soil_ = make_choice(tr("soil all along"));
  soil_->addItem(tr("as drawn"), QString());
  for (const SoilClass& soil : document_.tables().soils) soil_->addItem(text_from(soil.name), text_from(soil.id));
  tool_ = make_choice(tr("tool"));
  tool_->addItem(tr("as chosen"), QString());
  for (const ToolClass& tool : document_.tables().tools) tool_->addItem(text_from(tool.id), text_from(tool.id));
  close_->setIcon(line_icon(QStringLiteral("close")));
  close_->setIconSize(QSize(22, 22));
  close_->setMinimumSize(36, 36);
  close_->setAutoRaise(true);
  close_->setFocusPolicy(Qt::TabFocus);
  close_->setAccessibleName(tr("Back to the layout, and close"));
  close_->setToolTip(close_->accessibleName());
  row_->addWidget(close_, 0, Qt::AlignTop);

  auto* below = new QHBoxLayout;
  below->setSpacing(12);
  for (QLabel* label : {said_, thumb_}) {
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  }
  QFont bold = said_->font();  // what the room is to read
  bold.setBold(true);
  bold.setPointSizeF(bold.pointSizeF() * 1.15);
  said_->setFont(bold);
  for (QLabel* label : {said_, thumb_})  // a longer word does not move the drawing
    label->setFixedHeight(said_->fontMetrics().lineSpacing() * 3 + 2);
  below->addWidget(said_, 3);
  below->addWidget(thumb_, 3);
  below->addWidget(keep_);
  below->addWidget(back_);
  column->addLayout(below);
  keep_->setToolTip(tr("Grade, aim, depth, soils and tool of the layout become what is tried here; one step to undo."));

  connect(keep_, &QPushButton::clicked, this, &WhatIfBar::keep);
  connect(back_, &QPushButton::clicked, this, &WhatIfBar::start_again);
  connect(close_, &QToolButton::clicked, this, &WhatIfBar::closed);
  hide();
}

WhatIfBar::Knob WhatIfBar::make_knob(const QString& name, double* value, Dimension dimension, double step,
                                     int half_range) {
  auto* grid = new QGridLayout;
  grid->setSpacing(2);
  auto* label = new QLabel(name, this);
  auto* entry = new QLineEdit(this);
  auto* slider = new QSlider(Qt::Horizontal, this);
  label->setBuddy(entry);
  entry->setAccessibleName(name);
  entry->setFixedWidth(fontMetrics().horizontalAdvance(QStringLiteral("−0 ft 00.0 in")) + 8);
  slider->setRange(-half_range, half_range);
  slider->setPageStep(10);
  slider->setAccessibleName(name);
  slider->setMinimumWidth(60);
  grid->addWidget(label, 0, 0, 1, 2);
  grid->addWidget(slider, 1, 0);
  grid->addWidget(entry, 1, 1);
  grid->setColumnStretch(0, 1);
  row_->addLayout(grid, 1);
  connect(slider, &QSlider::valueChanged, this, [this, value, step](int at) {
    *value = at * step;
    show_answer();
  });
  connect(entry, &QLineEdit::editingFinished, this, [this, entry] {
    for (Knob& knob : knobs_)
      if (knob.entry == entry) type(knob);
  });
  return {slider, entry, value, dimension, step};
}

QComboBox* WhatIfBar::make_choice(const QString& name) {
  auto* column = new QVBoxLayout;
  column->setSpacing(2);
  auto* label = new QLabel(name, this);
  auto* choice = new QComboBox(this);
  label->setBuddy(choice);
  choice->setAccessibleName(name);
  choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  choice->setMinimumContentsLength(9);
  choice->setFocusPolicy(Qt::StrongFocus);
  column->addWidget(label);
  column->addWidget(choice);
  row_->addLayout(column);
  connect(choice, &QComboBox::activated, this, [this] {
    error_.soil = soil_->currentData().toString().toStdString();
    error_.tool = tool_->currentData().toString().toStdString();
    show_answer();
  });
  return choice;
}

/// What cannot be read goes back to what it was, as its slider stands.
void WhatIfBar::type(Knob& knob) {
  const Result<double> typed = parse(knob.entry->text().toStdString(), knob.dimension, units_);
  if (typed && text_from(format(*knob.value, knob.dimension, units_)) != knob.entry->text())
    *knob.value = std::clamp(*typed, knob.slider->minimum() * knob.step, knob.slider->maximum() * knob.step);
  show_answer();
}

void WhatIfBar::keep() {
  if (error_ == TryError{}) return;
  if (const std::optional<std::string> member = locked_against(document_.crossing(), error_)) {
    said_->setText(tr("locked in the file (%1): not dragged; a double-click types it").arg(text_from(*member)));
    return;
  }
  const TryError kept = error_;
  const Tables& tables = document_.tables();
  if (!document_.change(tr("Keep what was tried"), [&](Crossing& c) { c = with_error(c, tables, kept); })) {
    said_->setText(tr("Not taken: the crossing cannot be changed now."));
    return;
  }
  start_again();
}

void WhatIfBar::start_again() {
  error_ = {};
  show_answer();
}

void WhatIfBar::set_units(UnitSystem units) {
  units_ = units;
  catch_up();
}

void WhatIfBar::set_theme(const Theme& theme) {
  QPalette colours = palette();
  colours.setColor(QPalette::Window, theme.panel);
  setPalette(colours);
}

void WhatIfBar::catch_up() {
  if (!isHidden()) show_answer();
}

void WhatIfBar::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  if (!isHidden()) return;  // the window is out of sight, not the bar closed
  error_ = {};
  tried_.reset();
  miss_.reset();
  Q_EMIT tried_changed();
}

void WhatIfBar::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  show_answer();
}

void WhatIfBar::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    Q_EMIT closed();
    return;
  }
  QWidget::keyPressEvent(event);
}

void WhatIfBar::show_knobs() {
  for (Knob& knob : knobs_) {
    const QSignalBlocker quiet(knob.slider);
    knob.slider->setValue(static_cast<int>(std::lround(*knob.value / knob.step)));
    if (!knob.entry->hasFocus() || !knob.entry->isModified())
      knob.entry->setText(text_from(format(*knob.value, knob.dimension, units_)));
  }
  soil_->setCurrentIndex(std::max(0, soil_->findData(text_from(error_.soil))));
  tool_->setCurrentIndex(std::max(0, tool_->findData(text_from(error_.tool))));
  const bool tried = !(error_ == TryError{});
  back_->setEnabled(tried);
  keep_->setEnabled(tried && document_.read_only_because().isEmpty());
}

void WhatIfBar::show_answer() {
  for (Knob& knob : knobs_) knob.entry->setModified(false);
  show_knobs();
  const bool tried = !(error_ == TryError{});
  answer_ = tried ? try_error(document_.crossing(), document_.tables(), error_) : TryErrorAnswer{};
  tried_ = tried && answer_.path.points.size() > 1 ? std::make_shared<const BorePath>(answer_.path) : nullptr;
  const BorePath& layout = document_.assessment().bore;  // one that ends elsewhere says nothing of the exit
  miss_ = tried_ && layout.ends == PathEnd::exit ? miss_between(layout, *tried_) : std::nullopt;
  const QString line = nearest_line();
  said_->setText(with_units_kept(line.isEmpty() ? words() : words() + QLatin1Char(' ') + line));
  thumb_->setText(
      tried ? tr("Tried, not judged: the verdict is that of the layout.") + QLatin1Char('\n') + with_units_kept(thumb())
            : tr("The layout and its verdict stay as they are.") + QLatin1Char('\n') + with_units_kept(thumb()));
  Q_EMIT tried_changed();
}

/// The line that the bore tried comes nearest to what is required of it, or past it.
QString WhatIfBar::nearest_line() const {
  if (!tried_) return {};
  const Crossing& crossing = document_.crossing();
  const Tool tool = resolve_tool(with_error(crossing, document_.tables(), error_).bore.tool, document_.tables());
  Playback bore;
  bore.path = *tried_;
  bore.tool_diameter_m = tool.diameter.m;
  const std::vector<UtilityAnswer> lines = lines_beside(bore, crossing, document_.tables());
  const UtilityAnswer* worst = nullptr;
  const UtilityAnswer* unknown = nullptr;
  const auto spare = [](const UtilityAnswer& one) { return *one.separation_m - one.required_m.value_or(0); };
  for (const UtilityAnswer& one : lines) {
    if (!one.separation_m) unknown = &one;
    if (one.separation_m && (!worst || spare(one) < spare(*worst))) worst = &one;
  }
  QString text;
  if (worst && *worst->separation_m < 0)
    text = tr("It would strike %1.").arg(text_from(worst->name));
  else if (worst && worst->required_m)
    text = tr("%1: %2 clear, %3 required.")
               .arg(text_from(worst->name), text_from(format(*worst->separation_m, Dimension::length, units_)),
                    text_from(format(*worst->required_m, Dimension::length, units_)));
  if (unknown)
    text += (text.isEmpty() ? QString() : QStringLiteral(" ")) +
            tr("How far from %1 is not known.").arg(text_from(unknown->name));
  return text;
}

QString WhatIfBar::words() const {
  if (error_ == TryError{}) return tr("Set something wrong and see where the bore would come out.");
  if (!tried_) return tr("There is no path: the launch is out of the ground.");
  if (!answer_.reaches)
    return answer_.ends_station_m ? tr("It comes out of the ground at station %1.")
                                        .arg(text_from(format(*answer_.ends_station_m, Dimension::station, units_)))
                                  : tr("It never reaches the exit face.");
  if (!miss_) return tr("The layout has no bore to compare with.");
  QStringList parts;
  if (const double up = miss_->up_m(); !hardly_any_miss(up))
    parts << (up < 0 ? tr("%1 low") : tr("%1 high")).arg(miss_text(up, units_));
  if (const double left = miss_->left_m(); !hardly_any_miss(left))
    parts << (left < 0 ? tr("%1 to the right") : tr("%1 to the left")).arg(miss_text(left, units_));
  if (parts.isEmpty()) return tr("It comes out where the layout does.");
  return tr("At the exit: %1.").arg(parts.join(QStringLiteral(", ")));
}

QString WhatIfBar::thumb() const {
  const Bore& bore = document_.crossing().bore;
  const double run = bore.exit.station.m - bore.launch.station.m;
  if (!(run > 0)) return {};
  const bool us = units_ == UnitSystem::us;
  const double off = us ? thumb_off_m(off_level_in_m, level_ft_m, run) : thumb_off_m(off_level_m, level_m, run);
  return (us ? tr("1/16 in on a level of 4 ft is %1 over %2 of bore.")
             : tr("1 mm on a level of 1.2 m is %1 over %2 of bore."))
      .arg(text_from(format(off, Dimension::small_length, units_)), text_from(format(run, Dimension::length, units_)));
}

}  // namespace burrow
