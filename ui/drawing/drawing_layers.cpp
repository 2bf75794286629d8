/// What the drawing shows on demand.

#include <algorithm>
#include <cmath>

#include "burrow/drawing/drawing_view.h"
#include "burrow/practice/try_error.h"

namespace burrow {

void DrawingView::set_turning_strip(bool on) {
  if (layers_.turning == on) return;
  layers_.turning = on;
  const bool fit_again = fitted_;
  lay_out_again();
  if (fit_again) zoom_to_fit();
  viewport()->update();
}

void DrawingView::set_neutral_line(bool on) {
  layers_.neutral_line = on;
  viewport()->update();
}

void DrawingView::set_zones(bool on) {
  layers_.zones = on;
  viewport()->update();
}

void DrawingView::set_rise(bool on) {
  layers_.rise = on;
  viewport()->update();
}

void DrawingView::set_cloud(bool on) {
  layers_.cloud = on;
  viewport()->update();
}

void DrawingView::set_trials(const Trials* trials, bool current) {
  layers_.trials = trials;
  layers_.trials_current = current;
  layer_cache_.forget_trials();
  viewport()->update();
}

void DrawingView::set_rescue(std::optional<PitShape> pit) {
  layers_.rescue = std::move(pit);
  viewport()->update();
}

void DrawingView::set_ghost_layout(std::shared_ptr<const GhostLayout> ghost) {
  ghost_layout_ = std::move(ghost);
  viewport()->update();
}

void DrawingView::set_across(bool on) {
  const Bore& bore = document_.crossing().bore;
  layers_.across_station_m.reset();
  if (on) layers_.across_station_m = (bore.launch.station.m + bore.exit.station.m) / 2;
  viewport()->update();
}

void DrawingView::set_read_path(std::optional<ReadPath> read) {
  layers_.read = std::move(read);
  viewport()->update();
}

void DrawingView::set_truth(std::optional<TrueLine> truth) {
  layers_.truth = std::move(truth);
  viewport()->update();
}

void DrawingView::set_played(std::optional<Played> played) {
  layers_.played = std::move(played);
  viewport()->update();
}

void DrawingView::set_tried(std::shared_ptr<const BorePath> tried) {
  layers_.tried = std::move(tried);
  if (layers_.tried) {
    show_miss();
  } else if (const std::optional<Frame> before = std::exchange(frame_before_tried_, std::nullopt)) {
    if (fitted_)
      zoom_to_fit();
    else
      frame_ = *before;
  }
  viewport()->update();
}

void DrawingView::show_miss() {
  const BorePath& planned = document_.assessment().bore;
  const std::optional<Miss> miss = miss_between(planned, *layers_.tried);
  if (!miss || !automatic_heights_) return;
  LevelBand end{std::min(miss->planned.z_m, miss->other.z_m), std::max(miss->planned.z_m, miss->other.z_m)}, all = end;
  for (const BorePath* path : {&planned, layers_.tried.get()})
    for (const PathPoint& p : path->points) all = {std::min(all.low_m, p.z_m), std::max(all.high_m, p.z_m)};
  constexpr double beside_m = 0.05;  // the line is not to run along the edge
  const Frame before = frame_;
  bool raised = false;
  for (LevelBand band : {all, end})  // of a steep bore the end alone
    raised = raise_heights(frame_, miss->up_m(), {band.low_m - beside_m, band.high_m + beside_m}) || raised;
  if (raised && !frame_before_tried_) frame_before_tried_ = before;
}

}  // namespace burrow
