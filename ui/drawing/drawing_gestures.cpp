/// Mouse and wheel of the drawing.

#include <QMouseEvent>
#include <QTimer>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>
#include <utility>

#include "burrow/document/text.h"
#include "burrow/drawing/across.h"
#include "burrow/drawing/along.h"
#include "burrow/drawing/box_pick.h"
#include "burrow/drawing/drawing_view.h"
#include "burrow/drawing/handles.h"
#include "burrow/drawing/labels.h"

namespace burrow {

namespace {

constexpr double reach_px = 9;
constexpr double drag_starts_px = 3;
constexpr double menu_within_px = 4;  ///< further, the right button has panned

}  // namespace

double DrawingView::snap_step(Qt::KeyboardModifiers modifiers) const {
  if (modifiers.testFlag(Qt::ShiftModifier)) return 0;
  return style_.units == UnitSystem::us ? 0.3048 / 20 : 0.01;
}

void DrawingView::schedule() {
  if (scheduled_) return;
  scheduled_ = true;
  QTimer::singleShot(0, this, [this] {
    scheduled_ = false;
    step_gesture();
    viewport()->update();
  });
}

/// A move that has not moved yet, of the picked part.
Move DrawingView::move_in(Pane pane) {
  Move move;
  move.pane = pane;
  const ItemRef& part = session_ ? session_->part() : focus_.picked;
  if (part.kind == ItemKind::pit_edge) {
    const Assessment& at_press = session_ ? session_->assessment_before() : document_.assessment();
    move.pit = part.id == "launch" ? at_press.launch_pit : at_press.exit_pit;
  }
  return move;
}

void DrawingView::step_gesture() {
  if (gesture_ == Gesture::pan) {
    frame_ = press_frame_;
    frame_.pan(last_at_ - press_at_);
    fitted_ = false;
  } else if (gesture_ == Gesture::split) {
    split_ = std::clamp(split_at(frame_, last_at_.y()), 0.25, 0.8);
    const bool fit_again = fitted_;
    lay_out_again();
    if (fit_again) zoom_to_fit();
  } else if (gesture_ == Gesture::tape) {
    pull_tape(last_at_);
  } else if (gesture_ == Gesture::box) {
    const QRectF& pane = press_frame_.pane_at(press_at_) == Pane::plan ? frame_.plan : frame_.elevation;
    focus_.box = QRectF(press_at_, last_at_).normalized().intersected(pane);
  } else if (gesture_ == Gesture::measure) {
    pull_dimension();
  } else if (gesture_ == Gesture::part && session_) {
    move_parts(last_at_);
    focus_.pointer = last_at_;
  }
}

void DrawingView::mousePressEvent(QMouseEvent* event) {
  setFocus(Qt::MouseFocusReason);
  interrupt_glide();
  if (gesture_ != Gesture::none) return;
  if (session_) settle();  // a held arrow key
  press_at_ = last_at_ = event->position();
  press_frame_ = frame_;
  modifiers_ = event->modifiers();
  const bool pans = event->button() == Qt::MiddleButton || event->button() == Qt::RightButton || space_down_;
  space_pans_ = space_pans_ || space_down_;
  if (pans) {
    gesture_ = Gesture::pan;
    viewport()->setCursor(Qt::ClosedHandCursor);
    return;
  }
  if (const Pane pane = frame_.pane_at(press_at_); pane == Pane::plan || pane == Pane::elevation) last_pane_ = pane;
  if (event->button() != Qt::LeftButton) return;
  if (press_sketch(event)) return;
  if (frame_.ruler.contains(press_at_)) {
    gesture_ = Gesture::split;
    return;
  }
  if (modifiers_.testFlag(Qt::ControlModifier)) {
    start_tape(press_at_);
    return;
  }
  const Scene now = with_labels(scene());
  if (const int finding = finding_at(press_at_); finding >= 0) {
    go_to_finding(finding);
    Q_EMIT finding_picked(finding);
    return;
  }
  if (labels()->heights.contains(press_at_)) {
    Q_EMIT heights_wanted(labels()->heights.topLeft().toPoint());
    return;
  }
  if (press_dimension(press_at_)) return;
  press_part(press_at_);
}

void DrawingView::mouseMoveEvent(QMouseEvent* event) {
  pointer_here_ = true;
  last_at_ = event->position();
  modifiers_ = event->modifiers();
  if (gesture_ != Gesture::none && event->buttons() == Qt::NoButton) {
    let_go(Qt::LeftButton);  // the release went to another window
    return;
  }
  if (gesture_ == Gesture::waiting) {
    const QPointF off = last_at_ - press_at_;
    if (std::hypot(off.x(), off.y()) < drag_starts_px) return;
    start_moving();
  }
  if (gesture_ == Gesture::none)
    hover(last_at_);
  else
    schedule();
  show_pointer(last_at_);
}

DrawingView::Under DrawingView::under(const QPointF& at) {
  const Scene now = with_labels(scene());
  Under under;
  under.finding = finding_at(at);
  if (const DimensionLine* line = dimension_at(now.labels->dimensions, at, reach_px)) under.measure = line->measure;
  under.part = part_at(now, at, reach_px);
  const Pane pane = frame_.pane_at(at);
  if (pane == Pane::elevation || pane == Pane::plan) under.station_m = frame_.station_m(at.x());
  return under;
}

void DrawingView::mouseReleaseEvent(QMouseEvent* event) {
  last_at_ = event->position();
  let_go(event->button());
}

/// The gesture ends where the pointer is.
void DrawingView::let_go(Qt::MouseButton button) {
  if (sketch_ && gesture_ == Gesture::none) {
    release_sketch();
    return;
  }
  const QPointF off = last_at_ - press_at_;
  if (button == Qt::RightButton && gesture_ == Gesture::pan && std::hypot(off.x(), off.y()) < menu_within_px) {
    cancel_gesture();
    Q_EMIT menu_wanted(last_at_.toPoint());
    return;
  }
  if (gesture_ != Gesture::none && gesture_ != Gesture::waiting) step_gesture();
  if (gesture_ == Gesture::part && session_) session_->finish(step_now());
  if (gesture_ == Gesture::waiting && !group_.empty() && shift_pressed_.none())
    pick(pressed_);  // a click on one of them
  if (gesture_ == Gesture::measure && session_)
    session_->finish(tr("Set %1").arg(text_from(measure_name(document_.crossing(), held_->measure))));
  if (gesture_ == Gesture::waiting && !shift_pressed_.none()) toggle_picked(shift_pressed_);
  shift_pressed_ = {};
  if (gesture_ == Gesture::box) take_box();
  session_.reset();
  group_.clear();
  held_words_.clear();
  held_.reset();
  focus_.snaps.clear();
  if (gesture_ == Gesture::tape && last_at_ == press_at_) layers_.tape.reset();
  gesture_ = Gesture::none;
  viewport()->unsetCursor();
  hover(last_at_);
  viewport()->update();
}

void DrawingView::start_tape(const QPointF& at) {
  const Pane pane = frame_.pane_at(at);
  if (pane != Pane::elevation && pane != Pane::plan) return;
  gesture_ = Gesture::tape;
  const QPointF end = tape_end(scene(), pane, at, reach_px);
  Tape tape;
  tape.pane = pane;
  tape.from_station_m = frame_.station_m(end.x());
  tape.from_up_m = pane == Pane::elevation ? frame_.elevation_m(end.y()) : frame_.offset_m(end.y());
  tape.to_station_m = tape.from_station_m;
  tape.to_up_m = tape.from_up_m;
  layers_.tape = tape;
  viewport()->update();
}

void DrawingView::pull_tape(const QPointF& at) {
  if (!layers_.tape) return;
  const Pane pane = layers_.tape->pane;
  const QPointF end = tape_end(scene(), pane, at, modifiers_.testFlag(Qt::ShiftModifier) ? 0 : reach_px);
  layers_.tape->to_station_m = frame_.station_m(end.x());
  layers_.tape->to_up_m = pane == Pane::elevation ? frame_.elevation_m(end.y()) : frame_.offset_m(end.y());
}

void DrawingView::cancel_gesture() {
  session_.reset();
  group_.clear();
  held_words_.clear();
  held_.reset();
  shift_pressed_ = {};
  focus_.box.reset();
  focus_.snaps.clear();
  if (gesture_ == Gesture::tape) layers_.tape.reset();
  if (gesture_ == Gesture::pan) frame_ = press_frame_;
  gesture_ = Gesture::none;
  nudged_ = {};
  viewport()->unsetCursor();
  viewport()->update();
}

void DrawingView::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  if (sketch_) {
    end_sketch();
    return;
  }
  settle();
  if (type_dimension(event->position())) return;
  const ItemRef part = part_at(with_labels(scene()), event->position(), reach_px);
  if (part.none()) return;
  if (frame_.pane_at(event->position()) == Pane::lane) {
    pick(part);
    Q_EMIT rename_wanted(part);
    return;
  }
  if (add_point(part, event->position())) return;
  pick(part);
  Q_EMIT typing_wanted(event->position().toPoint());
}

void DrawingView::wheelEvent(QWheelEvent* event) {
  const QPointF wheel = event->angleDelta();
  if (gesture_ != Gesture::none) return;
  interrupt_glide();
  if (event->modifiers().testFlag(Qt::ShiftModifier) || std::abs(wheel.x()) > std::abs(wheel.y())) {
    const double by = std::abs(wheel.x()) > std::abs(wheel.y()) ? wheel.x() : wheel.y();
    frame_.pan(QPointF(by * 0.6, 0));
  } else if (event->modifiers().testFlag(Qt::AltModifier)) {
    frame_.pan(QPointF(0, wheel.y() * 0.6));
  } else {
    frame_.zoom(event->position(), std::pow(1.0015, wheel.y()));
  }
  fitted_ = false;
  event->accept();
  show_pointer(event->position());
  viewport()->update();
}

void DrawingView::hover(const QPointF& at) {
  if (sketch_) {
    viewport()->setCursor(Qt::CrossCursor);
    viewport()->setToolTip({});
    viewport()->update();
    return;
  }
  const Scene now = with_labels(scene());
  const std::shared_ptr<const Labels>& shown = now.labels;
  const DimensionLine* line = dimension_at(shown->dimensions, at, reach_px * 2 / 3);
  const std::optional<MeasureRef> measure = line ? std::optional(line->measure) : std::nullopt;
  if (measure != focus_.measure_hovered) {
    focus_.measure_hovered = measure;
    viewport()->update();
  }
  const ItemRef under = line ? ItemRef{} : part_at(now, at, reach_px);
  if (line) {
    const QString why = why_held(*line);
    const QString name = text_from(measure_name(document_.crossing(), line->measure));
    viewport()->setCursor(why.isEmpty() ? Qt::OpenHandCursor : Qt::ForbiddenCursor);
    viewport()->setToolTip(why.isEmpty() ? tr("%1: drag the round end, or double-click to type").arg(name)
                                         : name + QStringLiteral(": ") + why);
  } else if (frame_.ruler.contains(at))
    viewport()->setCursor(Qt::SplitVCursor);
  else if (finding_at(at) >= 0 || shown->heights.contains(at))
    viewport()->setCursor(Qt::PointingHandCursor);
  else if (under.none())
    viewport()->unsetCursor();
  else
    viewport()->setCursor(cursor_for(under, at));
  const bool tells = !pointer_words(now, at).isEmpty();
  if (tells || !focus_.pointer_lines.isEmpty()) viewport()->update();
  if (!line) viewport()->setToolTip(tip_at(at, under));
  if (under == focus_.hovered) return;
  focus_.hovered = under;
  viewport()->update();
}

/// The finding whose flag or dot is there; −1: none.
int DrawingView::finding_at(const QPointF& at) {
  const std::shared_ptr<const Labels> shown = labels();
  for (const Flag& flag : shown->flags.flags)
    if (flag.box.contains(at)) return flag.finding;
  for (const FlagDot& dot : shown->flags.dots)
    if (dot.box.adjusted(-2, -2, 2, 2).contains(at)) return dot.findings.front();
  return -1;
}

/// What found no room for words is said here.
QString DrawingView::tip_at(const QPointF& at, const ItemRef& under) {
  const std::vector<Finding>& findings = document_.assessment().findings;
  const std::shared_ptr<const Labels> shown = labels();
  const auto words = [&](int finding) {
    return QStringLiteral("%1  ").arg(finding + 1) +
           text_from(finding_text(findings[static_cast<std::size_t>(finding)], style_.units));
  };
  QStringList lines;
  for (const Flag& flag : shown->flags.flags)
    if (flag.box.contains(at)) {
      lines << words(flag.finding);
      for (const int other : flag.others) lines << words(other);
    }
  for (const FlagDot& dot : shown->flags.dots)
    if (dot.box.contains(at))
      for (const int finding : dot.findings) lines << words(finding);
  if (shown->heights.contains(at)) lines << tr("How much heights are exaggerated: click to choose");
  if (!lines.isEmpty()) return lines.join(QLatin1Char('\n'));
  return under.none() ? QString() : text_from(part_name(document_.crossing(), under));
}

void DrawingView::report_pointer() {
  focus_.pointer_lines.clear();
  if (gesture_ != Gesture::none || !pointer_here_) return;
  focus_.pointer = last_at_;
  focus_.pointer_lines = pointer_words(scene(), last_at_);
}

void DrawingView::show_pointer(const QPointF& at) {
  const Pane pane = frame_.pane_at(at);
  if (pane == Pane::none) {
    Q_EMIT pointer_moved({});
    return;
  }
  const double station = frame_.station_m(at.x());
  if (layers_.across_station_m && !across_box(scene()).contains(at)) {
    layers_.across_station_m = station;
    viewport()->update();
  }
  const auto text = [&](double v, Dimension d) { return text_from(format(v, d, style_.units)); };
  QString where = tr("station %1").arg(text(station, Dimension::station));
  if (pane == Pane::elevation && !document_.crossing().site.ground.empty()) {
    const double level = frame_.elevation_m(at.y());
    const double depth = elevation_at(document_.crossing().site.ground, station) - level;
    where += QStringLiteral("   ") + tr("level %1").arg(text(level, Dimension::station));
    where += QStringLiteral("   ") +
             (depth >= 0 ? tr("%1 below ground") : tr("%1 above ground")).arg(text(std::abs(depth), Dimension::length));
  } else if (pane == Pane::plan) {
    const double offset = frame_.offset_m(at.y());
    where += QStringLiteral("   ") + (offset >= 0 ? tr("%1 left of the line") : tr("%1 right of the line"))
                                         .arg(text(std::abs(offset), Dimension::length));
  }
  Q_EMIT pointer_moved(where);
}

}  // namespace burrow
