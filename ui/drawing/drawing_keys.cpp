/// Keys of the drawing.

#include <QKeyEvent>
#include <QTimer>

#include "burrow/drawing/drawing_view.h"
#include "burrow/drawing/handles.h"

namespace burrow {

namespace {

/// A held key repeats well within this. What takes longer is a key whose release went to another window or widget: a
/// step that stayed open would keep the file from being saved.
constexpr int longest_between_repeats_ms = 1500;

}  // namespace

bool DrawingView::nudge(QKeyEvent* event) {
  double right = 0;
  double up = 0;
  switch (event->key()) {
    case Qt::Key_Left:
      right = -1;
      break;
    case Qt::Key_Right:
      right = 1;
      break;
    case Qt::Key_Up:
      up = 1;
      break;
    case Qt::Key_Down:
      up = -1;
      break;
    default:
      return false;
  }
  const std::vector<ItemRef> parts = all_picked();
  if (parts.empty() || gesture_ != Gesture::none || document_.crossing().version > known_file_version) return false;
  // In the view clicked last; Alt: in the other.
  const bool plan = (last_pane_ == Pane::plan) != event->modifiers().testFlag(Qt::AltModifier);
  const double step =
      (style_.units == UnitSystem::us ? 0.3048 / 20 : 0.01) * (event->modifiers().testFlag(Qt::ShiftModifier) ? 10 : 1);
  if (!session_) {
    if (parts.size() > 1) group_ = parts;
    nudge_move_ = move_in(plan ? Pane::plan : Pane::elevation);
    nudge_move_.step_m = 0;
    if (!moved_now(document_.crossing(), nudge_move_)) {
      nudge_move_ = move_in(plan ? Pane::elevation : Pane::plan);  // it moves in one of them alone
      nudge_move_.step_m = 0;
      if (!moved_now(document_.crossing(), nudge_move_)) {
        group_.clear();
        return false;
      }
    }
    session_ = std::make_unique<EditSession>(document_, focus_.picked);
    nudged_ = parts.front();
  }
  nudge_over_->start(longest_between_repeats_ms);
  if (nudged_.kind == ItemKind::grade) {
    const double run =
        grade_grip_station(session_->crossing_before()) - session_->crossing_before().bore.launch.station.m;
    nudge_move_.by_up_m += up * 0.001 * std::max(0.2, run) * (event->modifiers().testFlag(Qt::ShiftModifier) ? 10 : 1);
  } else {
    nudge_move_.by_up_m += up * step;
    nudge_move_.by_station_m += right * step;
  }
  if (const Edit edit = moved_now(session_->crossing_before(), nudge_move_)) session_->preview(edit);
  viewport()->update();
  return true;
}

void DrawingView::keyPressEvent(QKeyEvent* event) {
  interrupt_glide(event->key());
  if (key_sketch(event)) return;
  if (event->key() == Qt::Key_Escape) {
    if (session_ || gesture_ != Gesture::none) {
      cancel_gesture();
    } else if (layers_.tape) {
      layers_.tape.reset();
    } else {
      focus_.finding = -1;
      focus_.measure.reset();
      pick({});
    }
    viewport()->update();
    return;
  }
  if (event->key() == Qt::Key_Space) {
    if (!event->isAutoRepeat()) space_pans_ = false;
    space_down_ = true;
    return;
  }
  if (nudge(event)) return;
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_F2:
      if (focus_.measure) {
        for (const DimensionLine& line : dimension_lines_shown())
          if (line.measure == *focus_.measure) {
            Q_EMIT measure_typing_wanted(line.measure, line.label.center().toPoint());
            return;
          }
      }
      if (!focus_.several.empty()) Q_EMIT several_typing_wanted();
      if (!focus_.picked.none()) Q_EMIT typing_wanted(place_of(focus_.picked).toPoint());
      return;
    case Qt::Key_Menu:
      Q_EMIT menu_wanted(place_of(focus_.picked).toPoint());
      return;
    case Qt::Key_F10:
      if (event->modifiers().testFlag(Qt::ShiftModifier)) Q_EMIT menu_wanted(place_of(focus_.picked).toPoint());
      return;
    case Qt::Key_Comma:
      Q_EMIT step_wanted(-1);
      return;
    case Qt::Key_Period:
      Q_EMIT step_wanted(1);
      return;
    case Qt::Key_N:
      pick_next(1);
      return;
    case Qt::Key_P:
      pick_next(-1);
      return;
    case Qt::Key_D:
      pick_next_dimension(event->modifiers().testFlag(Qt::ShiftModifier) ? -1 : 1);
      return;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      zoom_by(1.25);
      return;
    case Qt::Key_Minus:
      zoom_by(0.8);
      return;
    case Qt::Key_0:
    case Qt::Key_Home:
      glide_to_fit();
      return;
    default:
      QAbstractScrollArea::keyPressEvent(event);
  }
}

/// The step of held arrow keys is kept.
void DrawingView::finish_nudge() {
  if (nudged_.none()) return;
  if (session_) session_->finish(step_now());
  session_.reset();
  group_.clear();
  nudged_ = {};
  tell_screen_reader(true);
  viewport()->update();
}

void DrawingView::keyReleaseEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
    if (space_down_ && !space_pans_) Q_EMIT play_wanted();
    space_down_ = false;
  }
  if (event->isAutoRepeat() || nudged_.none()) return;
  switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
      finish_nudge();
      break;
    default:
      break;
  }
}

}  // namespace burrow
