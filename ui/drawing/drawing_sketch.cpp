/// Things drawn by clicks.

#include <QKeyEvent>
#include <QMouseEvent>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/drawing_view.h"

namespace burrow {

namespace {

constexpr double drag_starts_px = 3;

QString trouble_words(const Error& error) {
  const QString expected = text_from(error.expected);
  return error.found.empty()
             ? DrawingView::tr("Wanted: %1").arg(expected)
             : DrawingView::tr("%1 is not understood. Wanted: %2").arg(text_from(error.found), expected);
}

}  // namespace

void DrawingView::begin_sketch(SketchKind kind, const std::string& soil) {
  settle();
  if (document_.crossing().version > known_file_version) {
    Q_EMIT refused(document_.read_only_because());
    return;
  }
  pick({});
  sketch_ = std::make_unique<Sketch>(kind, soil);
  focus_.sketch = sketch_.get();
  focus_.measure.reset();
  sketch_trouble_.clear();
  setFocus(Qt::OtherFocusReason);
  viewport()->setCursor(Qt::CrossCursor);
  viewport()->update();
}

void DrawingView::drop_sketch() {
  if (!sketch_) return;
  focus_.sketch = nullptr;
  sketch_.reset();
  sketch_trouble_.clear();
  focus_.pointer_lines.clear();
  viewport()->unsetCursor();
  viewport()->update();
}

/// Beside the pointer, or in the middle where there is none.
void DrawingView::tell_sketch() {
  if (!pointer_here_ && sketch_->points().empty())
    last_at_ = frame_.plan.isEmpty() ? frame_.elevation.center() : frame_.plan.center();
  focus_.pointer = last_at_;
  focus_.pointer_lines = sketch_->words(style_.units);
  if (!sketch_trouble_.isEmpty()) focus_.pointer_lines.prepend(sketch_trouble_);
}

SketchPoint DrawingView::sketch_point(const QPointF& at) const {
  const double step = snap_step(modifiers_);
  const auto rounded = [&](double v) { return step > 0 ? std::round(v / step) * step : v; };
  const bool side = frame_.pane_at(at) == Pane::elevation;
  return {rounded(frame_.station_m(at.x())), rounded(side ? frame_.elevation_m(at.y()) : frame_.offset_m(at.y())), {}};
}

void DrawingView::sketch_at(const QPointF& at) {
  if (!sketch_) return;
  const Result<void> added = sketch_->add(document_.crossing(), frame_.pane_at(at), sketch_point(at), style_.units);
  sketch_trouble_ = added ? QString() : trouble_words(added.error());
  viewport()->update();
  if (added && sketch_->ends_with() > 0 && sketch_->points().size() >= sketch_->ends_with()) end_sketch();
}

bool DrawingView::press_sketch(QMouseEvent* event) {
  if (!sketch_) return false;
  last_at_ = event->position();
  sketch_at(event->position());
  return true;
}

/// A drag draws from corner to corner.
void DrawingView::release_sketch() {
  const QPointF off = last_at_ - press_at_;
  const bool between_two = sketch_->ends_with() == 2 || sketch_->kind() == SketchKind::machine;
  if (between_two && sketch_->points().size() == 1 && std::hypot(off.x(), off.y()) >= drag_starts_px)
    sketch_at(last_at_);
  viewport()->update();
}

void DrawingView::end_sketch() {
  if (!sketch_) return;
  if (!sketch_->typed().isEmpty()) {
    const Result<void> taken = sketch_->take_typed(document_.crossing(), style_.units);
    if (!taken) {
      sketch_trouble_ = trouble_words(taken.error());
      viewport()->update();
      return;
    }
    // A station that was typed: the other end may still be missing.
    if (sketch_->ends_with() == 2 && sketch_->points().size() < 2 && sketch_->kind() != SketchKind::tree) {
      sketch_trouble_.clear();
      viewport()->update();
      return;
    }
  }
  const Result<Drawn> drawn = sketch_->finished(document_.crossing());
  if (!drawn) {
    sketch_trouble_ = trouble_words(drawn.error());
    viewport()->update();
    return;
  }
  const Drawn done = *drawn;
  drop_sketch();
  if (!document_.change(done.step, [&](Crossing& c) { c = done.crossing; })) return;
  pick(done.part);
  Q_EMIT sketch_done(done.part);
}

bool DrawingView::key_sketch(QKeyEvent* event) {
  if (!sketch_) return false;
  switch (event->key()) {
    case Qt::Key_Escape:
      drop_sketch();
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      end_sketch();
      return true;
    case Qt::Key_Backspace:
    case Qt::Key_Delete:
      sketch_trouble_.clear();
      if (!sketch_->back()) drop_sketch();
      viewport()->update();
      return true;
    default:
      break;
  }
  if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) return false;
  if (sketch_->type(event->text())) sketch_trouble_.clear();
  viewport()->update();
  return !event->text().isEmpty();
}

}  // namespace burrow
