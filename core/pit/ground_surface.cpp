#include "burrow/pit/ground_surface.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "burrow/base/ensure.h"
#include "burrow/pit/plan_overlap.h"
#include "convex.h"
#include "ground_half.h"

namespace burrow {

namespace {

std::vector<Point3> on_side(const std::vector<Point3>& points, double sign) {
  std::vector<Point3> side;
  for (const Point3& p : points)
    if (sign * p.y_m > 0) side.push_back({p.x_m, sign * p.y_m, p.z_m});
  return side;
}

std::shared_ptr<const GroundHalf> half_of(const LevelLine& line, std::vector<Point3> points,
                                          const std::shared_ptr<const GroundHalf>& before) {
  return before && before->made_of(line, points) ? before : std::make_shared<const GroundHalf>(line, std::move(points));
}

/// What of a box lies to the left, and to the right of the line as seen in a mirror along it.
PlanBox left_of_line(const PlanBox& box) {
  return {box.x_low_m, box.x_high_m, std::max(box.y_low_m, 0.0), box.y_high_m};
}
PlanBox right_of_line(const PlanBox& box) {
  return {box.x_low_m, box.x_high_m, std::max(-box.y_high_m, 0.0), -box.y_low_m};
}
bool some_width(const PlanBox& box) {
  return box.x_high_m > box.x_low_m && box.y_high_m > box.y_low_m;
}

}  // namespace

struct GroundSurface::Made {
  LevelLine line;
  std::vector<Point3> points;  // as entered
  std::shared_ptr<const GroundHalf> left, right;
  double highest_m;
};

GroundSurface::GroundSurface(const LevelLine& line, const std::vector<Point3>& points, const GroundSurface& before) {
  BURROW_ENSURE(!line.empty());
  double highest = line.front().elevation_m;
  for (const LevelPoint& p : line) highest = std::max(highest, p.elevation_m);
  const Made* other = before.made_.get();
  std::shared_ptr<const GroundHalf> left = half_of(line, on_side(points, 1), other ? other->left : nullptr),
                                    right = half_of(line, on_side(points, -1), other ? other->right : nullptr);
  for (const auto& half : {left, right})
    if (half->surveyed()) highest = std::max(highest, half->highest_point_m());
  made_ = std::make_shared<const Made>(Made{line, points, std::move(left), std::move(right), highest});
}

bool GroundSurface::made_of(const LevelLine& line, const std::vector<Point3>& points) const {
  return made_ && made_->line == line && made_->points == points;
}

bool GroundSurface::surveyed() const {
  return made_ && (made_->left->surveyed() || made_->right->surveyed());
}

bool GroundSurface::surveyed_near(const PlanLine& outline, double reach_m) const {
  if (!made_ || outline.empty()) return false;
  PlanBox box{1e300, -1e300, 1e300, -1e300};
  for (const PlanPoint& p : outline)
    box = {std::min(box.x_low_m, p.x_m), std::max(box.x_high_m, p.x_m), std::min(box.y_low_m, p.y_m),
           std::max(box.y_high_m, p.y_m)};
  const auto near = [&](const GroundHalf& half, double sign) {
    const std::vector<PlanPoint>& points = half.by_station();
    const auto first = std::lower_bound(points.begin(), points.end(), box.x_low_m - reach_m,
                                        [](const PlanPoint& p, double x) { return p.x_m < x; });
    const auto last = std::upper_bound(first, points.end(), box.x_high_m + reach_m,
                                       [](double x, const PlanPoint& p) { return x < p.x_m; });
    return std::any_of(first, last, [&](const PlanPoint& p) {
      const double y = sign * p.y_m;
      return y >= box.y_low_m - reach_m && y <= box.y_high_m + reach_m &&
             gap_between(outline, {{p.x_m, y}}, false).gap_m <= reach_m;
    });
  };
  return near(*made_->left, 1) || near(*made_->right, -1);
}

double GroundSurface::highest_m() const {
  BURROW_ENSURE(made_ != nullptr);
  return made_->highest_m;
}

double GroundSurface::highest_in(const PlanBox& box) const {
  BURROW_ENSURE(made_ != nullptr);
  double highest = -1e300;
  if (const PlanBox left = left_of_line(box); some_width(left)) highest = made_->left->highest_in(left);
  if (const PlanBox right = right_of_line(box); some_width(right))
    highest = std::max(highest, made_->right->highest_in(right));
  return highest;
}

void GroundSurface::each_piece(const PlanBox& box, const PlanBox& within, const TakePiece& take) const {
  BURROW_ENSURE(made_ != nullptr);
  PlanLine mirrored;  // and still counter-clockwise
  made_->right->each_piece(right_of_line(box), {within.x_low_m, within.x_high_m, -within.y_high_m, -within.y_low_m},
                           [&](Corners outline, const GroundPlane& plane) {
                             mirrored.assign(outline.rbegin(), outline.rend());
                             for (PlanPoint& p : mirrored) p.y_m = -p.y_m;
                             take(mirrored, {plane.a, -plane.b, plane.c});
                           });
  made_->left->each_piece(left_of_line(box), within, take);
}

std::vector<GroundPiece> GroundSurface::pieces_in(const PlanBox& box) const {
  std::vector<GroundPiece> pieces;
  each_piece(box, box, [&](Corners outline, const GroundPlane& plane) {
    pieces.push_back({{outline.begin(), outline.end()}, plane});
  });
  return pieces;
}

namespace {

/// The pieces need some width.
PlanBox beside(const PlanPoint& from, const PlanPoint& to) {
  constexpr double beside_m = 1e-3;
  return {std::min(from.x_m, to.x_m) - beside_m, std::max(from.x_m, to.x_m) + beside_m,
          std::min(from.y_m, to.y_m) - beside_m, std::max(from.y_m, to.y_m) + beside_m};
}

}  // namespace

LevelLine GroundSurface::along(const PlanPoint& from, const PlanPoint& to) const {
  const double dx = to.x_m - from.x_m, dy = to.y_m - from.y_m, length = std::hypot(dx, dy);
  BURROW_ENSURE(length > 0);
  LevelLine line;
  const PlanBox box = beside(from, to);
  each_piece(box, box, [&](Corners outline, const GroundPlane& plane) {
    double low = 0, high = 1;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const PlanPoint &p = outline[i], &q = outline[(i + 1) % outline.size()];
      if (p == q) continue;
      const HalfPlane half = left_of(p, q);
      const double a = half.at(from), b = half.at(to);
      if (a < 0 && b < 0) high = -1;
      if (a < 0 && b >= 0) low = std::max(low, a / (a - b));
      if (a >= 0 && b < 0) high = std::min(high, a / (a - b));
    }
    if (!(high > low)) return;
    for (const double t : {low, high}) line.push_back({t * length, plane.at(from.x_m + t * dx, from.y_m + t * dy)});
  });
  std::sort(line.begin(), line.end(),
            [](const LevelPoint& a, const LevelPoint& b) { return a.station_m < b.station_m; });
  line.erase(std::unique(line.begin(), line.end(),
                         [](const LevelPoint& a, const LevelPoint& b) { return b.station_m - a.station_m < 1e-7; }),
             line.end());
  return line;
}

double GroundSurface::height_at(double x_m, double y_m) const {
  BURROW_ENSURE(made_ != nullptr);
  if (y_m == 0) return elevation_at(made_->line, x_m);
  // Half a step to either side: the place itself may lie on an edge.
  constexpr double step_m = 1e-3;
  const PlanPoint from{x_m - step_m, y_m}, to{x_m + step_m, y_m};
  const PlanBox box = beside(from, to);
  std::optional<GroundPlane> plane;  // where it does not, the line to either side lies in one plane
  if (box.y_low_m >= 0) plane = made_->left->plane_over(box);
  if (box.y_high_m <= 0) {
    plane = made_->right->plane_over(right_of_line(box));
    if (plane) plane->b = -plane->b;
  }
  if (!plane) return elevation_at(along(from, to), step_m);
  const double dx = to.x_m - from.x_m, before = plane->at(from.x_m, y_m), after = plane->at(from.x_m + dx, y_m);
  return before + step_m / dx * (after - before);
}

bool GroundSurface::operator==(const GroundSurface& other) const {
  if (made_ == other.made_) return true;
  return made_ && other.made_ && made_->line == other.made_->line && made_->points == other.made_->points;
}

}  // namespace burrow
