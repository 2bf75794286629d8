/// What a press takes hold of, and what a drag or a held key makes of it.

#include <QCursor>
#include <algorithm>

#include "burrow/crossing/find.h"
#include "burrow/document/points.h"
#include "burrow/document/several.h"
#include "burrow/document/text.h"
#include "burrow/drawing/drawing_view.h"
#include "burrow/drawing/handles.h"

namespace burrow {

namespace {

constexpr double reach_px = 9;
constexpr double snap_px = 4;

bool in_a_view(const Frame& frame, const QPointF& at) {
  const Pane pane = frame.pane_at(at);
  return pane == Pane::elevation || pane == Pane::plan;
}

}  // namespace

/// The thing itself, one of its points, or one of several.
bool DrawingView::picked_already(const ItemRef& part) const {
  const auto of_one = [&](const ItemRef& picked) { return picked.kind == part.kind && picked.id == part.id; };
  if (!focus_.several.empty()) return std::any_of(focus_.several.begin(), focus_.several.end(), of_one);
  if (focus_.picked.none() || !of_one(focus_.picked)) return false;
  // Points of the ground are surveyed one by one; those of a selected thing are shown with it.
  const bool point_of_a_line =
      part.kind == ItemKind::ground || part.kind == ItemKind::stratum || part.kind == ItemKind::water;
  return !point_of_a_line || focus_.picked.index == part.index;
}

void DrawingView::press_part(const QPointF& at) {
  const ItemRef under = part_at(with_labels(scene()), at, reach_px);
  gesture_ = Gesture::waiting;
  pressed_ = under;
  was_picked_ = picked_already(under);
  box_adds_ = modifiers_.testFlag(Qt::ShiftModifier);
  shift_pressed_ = box_adds_ && may_be_several(under) ? under : ItemRef{};
  if (!shift_pressed_.none() || (box_adds_ && under.none())) return;  // a click adds or takes away
  if (was_picked_ && !focus_.several.empty()) {
    group_ = focus_.several;  // a drag moves all of them, a click picks the one
    return;
  }
  pick(under);
}

/// The pointer has moved far enough with something under the button.
void DrawingView::start_moving() {
  const Crossing& crossing = document_.crossing();
  const bool may = crossing.version <= known_file_version;
  const Pane pane = press_frame_.pane_at(press_at_);
  if (!shift_pressed_.none()) {
    if (was_picked_ && !focus_.several.empty())
      group_ = focus_.several;
    else
      pick(shift_pressed_);
    shift_pressed_ = {};
  }
  if (held_) {
    start_dimension();
    return;
  }
  if (part_at(scene(), press_at_, reach_px).none() && in_a_view(frame_, press_at_)) {
    gesture_ = Gesture::box;
    return;
  }
  const ItemRef part = group_.empty() ? focus_.picked : ItemRef{};
  const auto hold = [this](const QString& why) {
    gesture_ = Gesture::held;
    held_words_ = why;
    viewport()->setCursor(Qt::ForbiddenCursor);
  };
  if (!may) {
    gesture_ = Gesture::pan;
    viewport()->setCursor(Qt::ClosedHandCursor);
  } else if (group_.empty() && part_locked(crossing, part)) {
    hold(tr("%1 is locked: not dragged. Ctrl+L unlocks it").arg(item_name(part)));
  } else if (is_surveyed(pressed_) && !was_picked_) {
    hold(tr("%1 was surveyed: it moves only once it is selected. Now it is: drag it again").arg(item_name(pressed_)));
  } else if (moved_now(crossing, move_in(pane))) {
    gesture_ = Gesture::part;
    snap_lines_ = group_.empty() ? snap_lines(crossing, document_.tables(), document_.assessment(), part, style_.units)
                                 : std::vector<SnapLine>{};
    session_ = std::make_unique<EditSession>(document_, part);
    viewport()->setCursor(Qt::ClosedHandCursor);
  } else {
    gesture_ = Gesture::pan;
    viewport()->setCursor(Qt::ClosedHandCursor);
  }
}

Edit DrawingView::moved_now(const Crossing& before, const Move& move) const {
  if (!group_.empty()) return moved_together(before, group_, move);
  return moved(before, session_ ? session_->part() : focus_.picked, move);
}

QString DrawingView::step_now() const {
  if (group_.empty()) return step_name(document_.crossing(), session_ ? session_->part() : focus_.picked);
  return tr("Move %1").arg(text_from(several_name(document_.crossing(), group_)));
}

void DrawingView::move_parts(const QPointF& to) {
  const Pane pane = press_frame_.pane_at(press_at_);
  const double up_px = frame_.px_per_m * (pane == Pane::elevation ? frame_.exaggeration : 1.0);
  Move move = move_in(pane);
  move.by_station_m = (to.x() - press_at_.x()) / frame_.px_per_m;
  move.by_up_m = (press_at_.y() - to.y()) / up_px;
  move.at_station_m = frame_.station_m(to.x());
  move.at_up_m = pane == Pane::elevation ? frame_.elevation_m(to.y()) : frame_.offset_m(to.y());
  move.step_m = snap_step(modifiers_);
  const Edit edit = moved_now(session_->crossing_before(), move);
  if (!edit) return;
  focus_.snaps.clear();
  session_->preview([&](Crossing& c) {
    edit(c);
    if (modifiers_.testFlag(Qt::ShiftModifier)) return;
    focus_.snaps = snap(c, snap_lines_, session_->part(), pane, snap_px / frame_.px_per_m, snap_px / up_px);
  });
}

/// What a drag would do there: along, up, freely, or nothing yet.
QCursor DrawingView::cursor_for(const ItemRef& part, const QPointF& at) {
  const Pane pane = frame_.pane_at(at);
  if (pane == Pane::lane) return Qt::PointingHandCursor;
  if (part_locked(document_.crossing(), part)) return Qt::ForbiddenCursor;
  if (is_surveyed(part) && !picked_already(part)) return Qt::PointingHandCursor;
  const bool point = part.index >= 0;
  switch (part.kind) {
    case ItemKind::surface:
      return point && part.index < first_outline_corner ? Qt::SizeHorCursor : Qt::OpenHandCursor;
    case ItemKind::exit:
      return pane == Pane::elevation ? Qt::SizeHorCursor : Qt::SizeAllCursor;
    case ItemKind::water:
    case ItemKind::stratum:
    case ItemKind::ground:
      return point ? Qt::SizeAllCursor : Qt::SizeVerCursor;
    case ItemKind::grade:
      return Qt::SizeVerCursor;
    case ItemKind::pit_edge:
      return Qt::SizeAllCursor;
    default:
      return Qt::OpenHandCursor;
  }
}

bool DrawingView::add_point(const ItemRef& line, const QPointF& at) {
  const Pane pane = frame_.pane_at(at);
  if (line.index >= 0 || document_.crossing().version > known_file_version) return false;
  std::optional<WithPoint> made;
  const bool level_line =
      line.kind == ItemKind::ground || line.kind == ItemKind::water || line.kind == ItemKind::stratum;
  const double step = snap_step(Qt::NoModifier);
  if (level_line && pane == Pane::elevation) {
    made = with_level_point(document_.crossing(), line, std::round(frame_.station_m(at.x()) / step) * step);
  } else if (pane == Pane::plan &&
             (line.kind == ItemKind::utility ||
              (line.kind == ItemKind::around && find_by_id(document_.crossing().site.boundaries, line.id)))) {
    made = with_plan_point(document_.crossing(), line, {frame_.station_m(at.x()), frame_.offset_m(at.y())});
  } else {
    return false;
  }
  if (!made) return false;
  const QString name = text_from(part_name(document_.crossing(), line));
  if (!document_.change(tr("Add a point to %1").arg(name), [&](Crossing& c) { c = made->crossing; })) return false;
  pick(made->point);
  return true;
}

}  // namespace burrow
