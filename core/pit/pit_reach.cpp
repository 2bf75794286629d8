#include "burrow/pit/pit_reach.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "convex.h"

namespace burrow {

namespace {

constexpr double endless_m = std::numeric_limits<double>::infinity();
constexpr double step_m = 0.05;
constexpr int most_steps = 60;

/// What is left of a way in plan and one in height once each error is used up.
double left_of(double in_plan_m, double in_height_m, const PlaceError& error) {
  const double x = std::max(in_plan_m - error.in_plan_m, 0.0), z = std::max(in_height_m - error.in_height_m, 0.0);
  return std::sqrt(x * x + z * z);
}

}  // namespace

PitReach::PitReach(const PitShape& pit, Length sump_depth, const Walls& walls)
    : edge_(pit.footprint.size() > 2 ? pit.footprint : pit.floor),
      edge_wall_m_(std::max({walls.low_m, walls.high_m, walls.left_m, walls.right_m, 0.0})),
      bottom_m_(pit.floor_elevation_m - std::max(sump_depth.m, 0.0)) {
  if (edge_.size() < 3) return;
  for (std::size_t i = 0; i < edge_.size(); ++i) {
    const PlanPoint &a = edge_[i], &b = edge_[(i + 1) % edge_.size()];
    const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m;
    stretches_.push_back({a, dx, dy, dx * dx + dy * dy});
  }
  turn_ = signed_area(edge_) < 0 ? -1 : 1;
  convex_ = true;
  for (std::size_t i = 0; i < stretches_.size(); ++i) {
    const Stretch &s = stretches_[i], &next = stretches_[(i + 1) % stretches_.size()];
    convex_ = convex_ && turn_ * (s.dx_m * next.dy_m - s.dy_m * next.dx_m) >= 0 && s.length2_m2 > 0;
  }
  low_ = high_ = edge_.front();
  for (const PlanLine* line : {static_cast<const PlanLine*>(&edge_), &pit.floor})
    for (const PlanPoint& p : *line) {
      low_ = {std::min(low_.x_m, p.x_m), std::min(low_.y_m, p.y_m)};
      high_ = {std::max(high_.x_m, p.x_m), std::max(high_.y_m, p.y_m)};
    }
  low_ = {low_.x_m - edge_wall_m_, low_.y_m - edge_wall_m_};
  high_ = {high_.x_m + edge_wall_m_, high_.y_m + edge_wall_m_};
  cut_steps(pit, walls);
}

void PitReach::cut_steps(const PitShape& pit, const Walls& walls) {
  const CutSides& sides = pit.sides;
  const double top = std::max(pit.depth_m, step_m);
  std::vector<double> heights{0, top};
  for (const SideProfile* side : {&sides.low, &sides.high, &sides.left, &sides.right})
    for (const double bend : side->bends())
      if (bend > 0 && bend < top) heights.push_back(bend);
  std::sort(heights.begin(), heights.end());
  constexpr double hair_m = 1e-9;  // over a bench its upper end counts
  const auto step_to = [&](double bottom, double height) {
    const double h = height + hair_m;
    steps_.push_back({pit.floor_from_m - sides.low.run_at(h) - walls.low_m,
                      pit.floor_to_m + sides.high.run_at(h) + walls.high_m,
                      pit.floor_right_m - sides.right.run_at(h) - walls.right_m,
                      pit.floor_left_m + sides.left.run_at(h) + walls.left_m, pit.floor_elevation_m + bottom,
                      pit.floor_elevation_m + height});
  };
  step_to(0, 0);  // the floor
  for (std::size_t i = 0; i + 1 < heights.size(); ++i) {
    const double low = heights[i], high = heights[i + 1];
    double run = 0;
    for (const SideProfile* side : {&sides.low, &sides.high, &sides.left, &sides.right})
      run = std::max(run, side->run_at(high + hair_m) - side->run_at(low));
    const int pieces = std::clamp(static_cast<int>(std::ceil(run / step_m)), 1, most_steps);
    for (int k = 0; k < pieces; ++k) step_to(low + (high - low) * k / pieces, low + (high - low) * (k + 1) / pieces);
  }
  steps_.front().bottom_m = bottom_m_;
  steps_.back().top_m = endless_m;
}

/// Asked at every place of every utility nearby. What lies outside a convex edge lies behind a stretch of it, and is
/// nearest to one of those.
double PitReach::beside_edge_m(const PathVertex& place) const {
  if (!convex_ && inside(edge_, place.x_m, place.y_m)) return 0;
  double least2 = endless_m;
  for (const Stretch& s : stretches_) {
    const double x = place.x_m - s.from.x_m, y = place.y_m - s.from.y_m;
    if (convex_ && turn_ * (s.dx_m * y - s.dy_m * x) >= 0) continue;
    const double t = s.length2_m2 > 0 ? std::clamp((x * s.dx_m + y * s.dy_m) / s.length2_m2, 0.0, 1.0) : 0.0;
    const double off_x = s.from.x_m + t * s.dx_m - place.x_m, off_y = s.from.y_m + t * s.dy_m - place.y_m;
    least2 = std::min(least2, off_x * off_x + off_y * off_y);
  }
  return least2 < endless_m ? std::sqrt(least2) : 0;
}

double PitReach::gap_below_edge(const PathVertex& place, const PlaceError& error) const {
  if (edge_.size() < 3) return endless_m;
  const double beside = std::max(beside_edge_m(place) - edge_wall_m_, 0.0);
  return left_of(beside, place.z_m ? std::max(bottom_m_ - *place.z_m, 0.0) : 0, error);
}

double PitReach::gap(const PathVertex& place, const PlaceError& error) const {
  const double below_edge = gap_below_edge(place, error);
  double least = endless_m;
  for (const Step& step : steps_) {
    if (least <= below_edge) break;
    const double x = std::max({step.from_m - place.x_m, place.x_m - step.to_m, 0.0}),
                 y = std::max({step.right_m - place.y_m, place.y_m - step.left_m, 0.0});
    const double height = place.z_m ? std::max({step.bottom_m - *place.z_m, *place.z_m - step.top_m, 0.0}) : 0;
    least = std::min(least, left_of(std::sqrt(x * x + y * y), height, error));
  }
  return std::max(least, below_edge);
}

}  // namespace burrow
