#include "burrow/drawing/overview.h"

#include <QAction>
#include <QContextMenuEvent>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMenu>
#include <QMouseEvent>
#include <QSettings>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/flags.h"

namespace burrow {

namespace {

constexpr double reach_px = 7;
constexpr double least_window_px = 6;  ///< the frame stays graspable however close one looks

QString remembered() {
  return QStringLiteral("overview");
}

}  // namespace

OverviewScale overview_scale(const QRectF& area, const Crossing& crossing, const Assessment& assessment) {
  const PitShape& launch = assessment.launch_pit;
  const PitShape& exit = assessment.exit_pit;
  OverviewScale scale;
  scale.area = area;
  scale.from_m = std::min(crossing.bore.launch.station.m, launch.floor_from_m);
  scale.to_m = std::max(crossing.bore.exit.station.m, exit.floor_to_m);
  for (const PitShape* pit : {&launch, &exit})
    for (const LevelPoint& p : pit->section) {
      scale.from_m = std::min(scale.from_m, p.station_m);
      scale.to_m = std::max(scale.to_m, p.station_m);
    }
  const double aside = std::max(0.5, 0.06 * (scale.to_m - scale.from_m));
  scale.from_m -= aside;
  scale.to_m += aside;
  const LevelLine& ground = crossing.site.ground;
  double high = std::max(elevation_at(ground, scale.from_m), elevation_at(ground, scale.to_m));
  for (const LevelPoint& p : ground)
    if (p.station_m > scale.from_m && p.station_m < scale.to_m) high = std::max(high, p.elevation_m);
  double low = std::min({launch.floor_elevation_m, exit.floor_elevation_m, crossing.bore.launch.elevation.m});
  for (const PathPoint& p : assessment.bore.points) low = std::min(low, p.z_m);
  const double room = std::max(0.2, high - low);
  scale.high_m = high + 0.08 * room;
  scale.low_m = low - 0.16 * room;
  return scale;
}

OverviewStrip::OverviewStrip(Document& document, DrawingView& drawing, QWidget* parent)
    : QWidget(parent), document_(document), drawing_(drawing), shown_(new QAction(tr("&Overview strip"), this)) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAccessibleName(tr("Overview of the whole bore"));
  shown_->setCheckable(true);
  shown_->setChecked(QSettings().value(remembered(), true).toBool());
  setVisible(shown_->isChecked());
  connect(shown_, &QAction::toggled, this, [this](bool on) {
    QSettings().setValue(remembered(), on);
    if (!on && hasFocus()) drawing_.setFocus();
    setVisible(on);
  });
  // During a drag it follows the drawing, not each frame of it: the frame belongs to what is dragged.
  later_.setSingleShot(true);
  later_.setInterval(60);
  connect(&later_, &QTimer::timeout, this, qOverload<>(&QWidget::update));
  connect(&document_, &Document::changed, this, [this] {
    if (!later_.isActive()) later_.start();
  });
  connect(&drawing_, &DrawingView::view_changed, this, [this] {
    tell();
    update();
  });
}

QSize OverviewStrip::sizeHint() const {
  return {600, static_cast<int>(std::lround(fontMetrics().height() * 3.6))};
}

OverviewScale OverviewStrip::scale() {
  const double row = marks_row_height(drawing_.style());
  const QRectF all = rect();
  return overview_scale(all.adjusted(2, row, -2, -3), document_.crossing(), document_.assessment());
}

QRectF OverviewStrip::window() {
  const OverviewScale s = scale();
  const Frame& f = drawing_.frame();
  double left = std::clamp(s.px_x(f.left_station_m), s.area.left(), s.area.right());
  double right = std::clamp(s.px_x(f.right_station_m()), s.area.left(), s.area.right());
  if (right - left < least_window_px) {
    const double middle =
        std::clamp((left + right) / 2, s.area.left() + least_window_px / 2, s.area.right() - least_window_px / 2);
    left = middle - least_window_px / 2;
    right = middle + least_window_px / 2;
  }
  return {left, 1.5, right - left, height() - 3.0};
}

std::vector<OverviewStrip::Mark> OverviewStrip::marks() {
  const OverviewScale s = scale();
  const double side = marks_row_height(drawing_.style()) * 0.8;
  std::vector<Mark> marks;
  const std::vector<Finding>& findings = document_.assessment().findings;
  for (std::size_t i = findings.size(); i-- > 0;) {
    const Finding& f = findings[i];
    if (!flag_wanted(f)) continue;
    const double x = std::clamp(s.px_x(*f.station_m), s.area.left() + side / 2, s.area.right() - side / 2);
    marks.push_back({static_cast<int>(i), QRectF(x - side / 2, s.area.top() - side - 1, side, side)});
  }
  return marks;
}

int OverviewStrip::mark_at(const QPointF& at) {
  const std::vector<Mark> all = marks();
  const auto hit =
      std::find_if(all.rbegin(), all.rend(), [&](const Mark& m) { return m.box.adjusted(-1, -2, 1, 2).contains(at); });
  return hit == all.rend() ? -1 : hit->finding;
}

OverviewStrip::Grip OverviewStrip::grip_at(const QPointF& at) {
  const QRectF w = window();
  const double to_left = std::abs(at.x() - w.left());
  const double to_right = std::abs(at.x() - w.right());
  // In a narrow frame the ends are grasped from outside, so that its middle can be held as well.
  const double inside = std::min(reach_px, w.width() / 4);
  if (to_left <= (at.x() < w.left() ? reach_px : inside) && to_left <= to_right) return Grip::left;
  if (to_right <= (at.x() > w.right() ? reach_px : inside)) return Grip::right;
  return w.contains(QPointF(at.x(), w.center().y())) ? Grip::whole : Grip::none;
}

void OverviewStrip::drag_to(const QPointF& at) {
  const OverviewScale s = scale();
  const double by = s.station_m(at.x()) - press_m_;
  const double least = least_window_px * (s.to_m - s.from_m) / s.area.width() / 4;
  double from = press_from_m_;
  double to = press_to_m_;
  if (held_ == Grip::whole) {
    from += by;
    to += by;
  } else if (held_ == Grip::left) {
    from = std::min(from + by, to - least);
  } else if (held_ == Grip::right) {
    to = std::max(to + by, from + least);
  } else {
    return;
  }
  drawing_.show_stations(from, to, false);
  update();
}

void OverviewStrip::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || drawing_.dragging()) return;
  if (const int finding = mark_at(event->position()); finding >= 0) {
    Q_EMIT finding_wanted(finding);
    return;
  }
  const OverviewScale s = scale();
  const Frame& f = drawing_.frame();
  press_m_ = s.station_m(event->position().x());
  press_from_m_ = f.left_station_m;
  press_to_m_ = f.right_station_m();
  held_ = grip_at(event->position());
  if (held_ == Grip::none) {  // beside the frame: look there
    const double half = (press_to_m_ - press_from_m_) / 2;
    drawing_.show_stations(press_m_ - half, press_m_ + half, true);
  }
  if (held_ == Grip::whole) setCursor(Qt::ClosedHandCursor);
}

void OverviewStrip::mouseMoveEvent(QMouseEvent* event) {
  if (held_ != Grip::none) {
    drag_to(event->position());
    return;
  }
  if (mark_at(event->position()) >= 0) {
    setCursor(Qt::PointingHandCursor);
    return;
  }
  switch (grip_at(event->position())) {
    case Grip::left:
    case Grip::right:
      setCursor(Qt::SizeHorCursor);
      return;
    case Grip::whole:
      setCursor(Qt::OpenHandCursor);
      return;
    case Grip::none:
      unsetCursor();
  }
}

void OverviewStrip::mouseReleaseEvent(QMouseEvent* event) {
  if (held_ != Grip::none) drag_to(event->position());
  held_ = Grip::none;
  unsetCursor();
}

void OverviewStrip::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && !drawing_.dragging()) drawing_.glide_to_fit();
}

void OverviewStrip::wheelEvent(QWheelEvent* event) {
  if (held_ == Grip::none && !drawing_.dragging()) {
    const Frame& f = drawing_.frame();
    const double at = scale().station_m(event->position().x());
    const double factor = std::pow(1.0015, -event->angleDelta().y());
    drawing_.show_stations(at - (at - f.left_station_m) * factor, at + (f.right_station_m() - at) * factor, false);
  }
  event->accept();
}

void OverviewStrip::keyPressEvent(QKeyEvent* event) {
  const Frame& f = drawing_.frame();
  const double seen_m = f.right_station_m() - f.left_station_m;
  const double step = seen_m * (event->modifiers().testFlag(Qt::ShiftModifier) ? 0.5 : 0.1);
  const OverviewScale s = scale();
  const auto go = [&](double left) { drawing_.show_stations(left, left + seen_m, true); };
  if (drawing_.dragging()) return;
  if (event->key() == Qt::Key_Escape && held_ != Grip::none) {
    drawing_.show_stations(press_from_m_, press_to_m_, false);
    held_ = Grip::none;
    return;
  }
  switch (event->key()) {
    case Qt::Key_Left:
      go(f.left_station_m - step);
      return;
    case Qt::Key_Right:
      go(f.left_station_m + step);
      return;
    case Qt::Key_Home:
      go(s.from_m);
      return;
    case Qt::Key_End:
      go(s.to_m - seen_m);
      return;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
    case Qt::Key_Up:
      drawing_.zoom_by(1.25);
      return;
    case Qt::Key_Minus:
    case Qt::Key_Down:
      drawing_.zoom_by(0.8);
      return;
    case Qt::Key_0:
      drawing_.glide_to_fit();
      return;
    default:
      QWidget::keyPressEvent(event);
  }
}

void OverviewStrip::contextMenuEvent(QContextMenuEvent* event) {
  QMenu menu(this);
  menu.addAction(tr("&Fit bore"), this, [this] { drawing_.glide_to_fit(); });
  menu.addAction(tr("&Put the strip away"), this, [this] { shown_->setChecked(false); });
  menu.exec(event->globalPos());
}

bool OverviewStrip::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    const int finding = mark_at(help->pos());
    const auto& findings = document_.assessment().findings;
    QToolTip::showText(
        help->globalPos(),
        finding >= 0 ? text_from(finding_text(findings[static_cast<std::size_t>(finding)], drawing_.style().units))
                     : tr("The whole bore. Drag the frame, or pull its ends; a click beside it looks there."),
        this);
    return true;
  }
  return QWidget::event(event);
}

void OverviewStrip::tell() {
  const auto text = [&](double v) { return text_from(format(v, Dimension::station, drawing_.style().units)); };
  setAccessibleDescription(tr("The drawing shows station %1 to %2. Arrow keys move along, plus and minus look closer "
                              "and wider, 0 shows the whole bore.")
                               .arg(text(drawing_.frame().left_station_m), text(drawing_.frame().right_station_m())));
}

}  // namespace burrow
