/// Dimension lines under the mouse and the keys.

#include <algorithm>
#include <cmath>

#include "burrow/drawing/drawing_view.h"
#include "burrow/drawing/labels.h"

namespace burrow {

namespace {
constexpr double reach_px = 6;  ///< less than of the grips of things, which come first
}

void DrawingView::set_dimensions(bool on) {
  layers_.dimensions = on;
  focus_.measure.reset();
  focus_.measure_hovered.reset();
  viewport()->update();
}

std::vector<DimensionLine> DrawingView::dimension_lines_shown() {
  Scene now = scene();
  now.labels.reset();  // as the crossing is now
  return dimension_lines(now);
}

std::shared_ptr<const Labels> DrawingView::labels() {
  return with_labels(scene()).labels;
}

bool DrawingView::press_dimension(const QPointF& at) {
  const std::vector<DimensionLine> lines = dimension_lines_shown();
  const DimensionLine* line = dimension_at(lines, at, reach_px);
  if (!line) {
    focus_.measure.reset();
    return false;
  }
  focus_.measure = line->measure;
  held_ = *line;
  gesture_ = Gesture::waiting;
  viewport()->update();
  return true;
}

/// The pointer has moved far enough with a dimension line under the button.
void DrawingView::start_dimension() {
  if (document_.crossing().version > known_file_version || !why_held(*held_).isEmpty()) {
    gesture_ = Gesture::held;
    return;
  }
  gesture_ = Gesture::measure;
  session_ = std::make_unique<EditSession>(document_, measure_part(held_->measure));
}

void DrawingView::pull_dimension() {
  if (!session_ || !held_) return;
  const double step = snap_step(modifiers_);
  double wanted = pulled(*held_, last_at_ - press_at_);
  if (step > 0) wanted = std::round(wanted / step) * step;
  if (const Edit edit =
          toward_measure(session_->crossing_before(), session_->assessment_before(), held_->measure, wanted))
    session_->preview(edit);
  focus_.pointer = last_at_;
}

void DrawingView::pick_next_dimension(int direction) {
  const std::vector<DimensionLine> lines = dimension_lines_shown();
  if (lines.empty()) return;
  const auto at =
      std::find_if(lines.begin(), lines.end(), [&](const DimensionLine& l) { return focus_.measure == l.measure; });
  const auto n = static_cast<std::ptrdiff_t>(lines.size());
  const std::ptrdiff_t now = at == lines.end() ? (direction > 0 ? -1 : 0) : at - lines.begin();
  focus_.measure = lines[static_cast<std::size_t>(((now + direction) % n + n) % n)].measure;
  viewport()->update();
}

bool DrawingView::type_dimension(const QPointF& at) {
  const std::vector<DimensionLine> lines = dimension_lines_shown();
  const DimensionLine* line = dimension_at(lines, at, reach_px);
  if (!line) return false;
  focus_.measure = line->measure;
  viewport()->update();
  Q_EMIT measure_typing_wanted(line->measure, line->label.center().toPoint());
  return true;
}

}  // namespace burrow
