/// Where the drawing looks: fitting, zooming, going to a place, smoothly where that is wanted.

#include <QTimer>
#include <algorithm>

#include "burrow/drawing/drawing_view.h"
#include "burrow/drawing/flags.h"

namespace burrow {

namespace {
constexpr int tick_ms = 15;
constexpr double closest_px_per_m = 20000, farthest_px_per_m = 0.5;  // as Frame::zoom
}  // namespace

void DrawingView::set_glide(int milliseconds, std::function<qint64()> clock) {
  stop_glide();
  glide_ms_ = milliseconds;
  clock_ = std::move(clock);
}

qint64 DrawingView::now_ms() const {
  return clock_ ? clock_() : since_start_.elapsed();
}

/// Where it looks, or is on its way to.
Frame DrawingView::goal() const {
  return gliding_ ? glide_to_ : frame_;
}

void DrawingView::glide_to(const Frame& to) {
  const bool busy = session_ || gesture_ != Gesture::none;
  if (glide_ms_ <= 0 || busy || !isVisible() || as_good_as_there(frame_, to)) {
    stop_glide();
    frame_ = to;
    viewport()->update();
    return;
  }
  glide_from_ = frame_;
  glide_to_ = to;
  glide_start_ms_ = now_ms();
  gliding_ = true;
  glide_timer_->start(tick_ms);
}

void DrawingView::step_glide() {
  if (!gliding_) return;
  const double share = static_cast<double>(now_ms() - glide_start_ms_) / std::max(1, glide_ms_);
  frame_ = on_the_way(glide_from_, glide_to_, share);
  if (share >= 1) stop_glide();
  viewport()->update();
}

void DrawingView::stop_glide() {
  gliding_ = false;
  glide_timer_->stop();
}

void DrawingView::interrupt_glide(int key) {
  switch (key) {
    case Qt::Key_Plus:  // one zoom after another goes on from where the first would have ended
    case Qt::Key_Equal:
    case Qt::Key_Minus:
    case Qt::Key_Control:
    case Qt::Key_Shift:
    case Qt::Key_Alt:
    case Qt::Key_Meta:
      return;
    default:
      break;
  }
  if (!gliding_) return;
  stop_glide();
  fitted_ = false;
}

void DrawingView::zoom_to_fit() {
  stop_glide();
  flag_rows_ = 1;
  lay_out_again();
  fit(frame_, document_.crossing(), document_.assessment(), automatic_heights_);
  choose_flag_rows();
  fitted_ = true;
  frame_before_tried_.reset();
  if (layers_.tried) show_miss();
  viewport()->update();
}

/// A second row where there is height for it and one is not enough.
void DrawingView::choose_flag_rows() {
  constexpr double roomy_texts = 60;
  if (viewport()->height() < roomy_texts * style_.text) return;
  Scene now = scene();
  now.labels.reset();
  if (!wants_second_row(now, place_flag_lane(now))) return;
  flag_rows_ = 2;
  lay_out_again();
  fit(frame_, document_.crossing(), document_.assessment(), automatic_heights_);
}

void DrawingView::show_picked() {
  if (focus_.picked.none()) return;
  const QPointF at = place_of(focus_.picked);
  const bool side = frame_.pane_at(at) != Pane::plan;
  bring_into_view(frame_.station_m(at.x()), side ? std::optional(frame_.elevation_m(at.y())) : std::nullopt,
                  std::nullopt);
}

void DrawingView::glide_to_fit() {
  Frame to = goal();
  fit(to, document_.crossing(), document_.assessment(), automatic_heights_);
  glide_to(to);
  fitted_ = true;
}

void DrawingView::zoom_by(double factor) {
  Frame to = goal();
  to.zoom(to.elevation.center(), factor);
  fitted_ = false;
  glide_to(to);
}

void DrawingView::show_stations(double from_m, double to_m, bool smoothly) {
  Frame to = goal();
  const double seen_m = std::max(to_m - from_m, 1e-9);
  const double scale = std::clamp(to.elevation.width() / seen_m, farthest_px_per_m, closest_px_per_m);
  to.zoom(to.elevation.center(), scale / to.px_per_m);
  to.left_station_m = (from_m + to_m) / 2 - to.elevation.width() / to.px_per_m / 2;
  fitted_ = false;
  if (smoothly) {
    glide_to(to);
    return;
  }
  stop_glide();
  frame_ = to;
  viewport()->update();
}

void DrawingView::go_to_finding(int index) {
  focus_.finding = index;
  viewport()->update();
  const auto& findings = document_.assessment().findings;
  if (index < 0 || static_cast<std::size_t>(index) >= findings.size()) return;
  const Finding& finding = findings[static_cast<std::size_t>(index)];
  if (finding.station_m) bring_into_view(*finding.station_m, finding.elevation_m, finding.offset_m);
  for (const Utility& u : document_.crossing().site.utilities)
    if (u.id == finding.subject) pick({ItemKind::utility, u.id, -1});
  if (finding.subject == "launch-pit") pick({ItemKind::launch, {}, -1});
  if (finding.subject == "exit-pit") pick({ItemKind::exit, {}, -1});
  if (finding.subject == "bore" && finding.severity != Severity::note)
    pick({finding.code == "bore.length" ? ItemKind::exit : ItemKind::launch, {}, -1});
  for (const SurfaceFeature& s : document_.crossing().site.surface)
    if (s.id == finding.subject) pick({ItemKind::surface, s.id, -1});
}

void DrawingView::bring_into_view(double station_m, std::optional<double> elevation_m, std::optional<double> offset_m) {
  Frame to = goal();
  const double margin = style_.text;
  const double x = to.px_x(station_m);
  if (x < to.elevation.left() + margin || x > to.elevation.right() - margin)
    to.left_station_m = station_m - to.elevation.width() / to.px_per_m / 2;
  if (elevation_m) {
    const double z = to.px_z(*elevation_m);
    if (z < to.elevation.top() + 20 || z > to.elevation.bottom() - 20)
      to.top_elevation_m = *elevation_m + to.elevation.height() * 0.6 / (to.px_per_m * to.exaggeration);
  }
  if (offset_m) {
    const double y = to.px_y(*offset_m);
    if (y < to.plan.top() + margin || y > to.plan.bottom() - margin)
      to.top_offset_m = *offset_m + to.plan.height() / 2 / to.px_per_m;
  }
  if (to == goal()) return;
  fitted_ = false;
  glide_to(to);
}

}  // namespace burrow
