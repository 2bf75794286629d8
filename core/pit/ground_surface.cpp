#include "burrow/pit/ground_surface.h"

#include <algorithm>
#include <cmath>
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

/// As seen in a mirror along the line, and still counter-clockwise.
void mirror(GroundPiece& piece) {
  for (PlanPoint& p : piece.outline) p.y_m = -p.y_m;
  std::reverse(piece.outline.begin(), piece.outline.end());
  piece.plane.b = -piece.plane.b;
}

}  // namespace

struct GroundSurface::Made {
  LevelLine line;
  std::vector<Point3> points;  // as entered
  GroundHalf left, right;
  double highest_m;
};

GroundSurface::GroundSurface(const LevelLine& line, const std::vector<Point3>& points) {
  BURROW_ENSURE(!line.empty());
  double highest = line.front().elevation_m;
  for (const LevelPoint& p : line) highest = std::max(highest, p.elevation_m);
  GroundHalf left(line, on_side(points, 1)), right(line, on_side(points, -1));
  for (const GroundHalf* half : {&left, &right})
    for (const Point3& p : half->points()) highest = std::max(highest, p.z_m);
  made_ = std::make_shared<const Made>(Made{line, points, std::move(left), std::move(right), highest});
}

bool GroundSurface::made_of(const LevelLine& line, const std::vector<Point3>& points) const {
  return made_ && made_->line == line && made_->points == points;
}

bool GroundSurface::surveyed() const {
  return made_ && !(made_->left.points().empty() && made_->right.points().empty());
}

bool GroundSurface::surveyed_near(const PlanLine& outline, double reach_m) const {
  if (!made_ || outline.empty()) return false;
  PlanBox box{1e300, -1e300, 1e300, -1e300};
  for (const PlanPoint& p : outline)
    box = {std::min(box.x_low_m, p.x_m), std::max(box.x_high_m, p.x_m), std::min(box.y_low_m, p.y_m),
           std::max(box.y_high_m, p.y_m)};
  const auto near = [&](const GroundHalf& half, double sign) {
    const std::vector<Point3>& points = half.points();
    return std::any_of(points.begin(), points.end(), [&](const Point3& p) {
      const double y = sign * p.y_m;
      if (p.x_m < box.x_low_m - reach_m || p.x_m > box.x_high_m + reach_m || y < box.y_low_m - reach_m ||
          y > box.y_high_m + reach_m)
        return false;
      return gap_between(outline, {{p.x_m, y}}, false).gap_m <= reach_m;
    });
  };
  return near(made_->left, 1) || near(made_->right, -1);
}

double GroundSurface::highest_m() const {
  BURROW_ENSURE(made_ != nullptr);
  return made_->highest_m;
}

std::vector<GroundPiece> GroundSurface::pieces_in(const PlanBox& box) const {
  BURROW_ENSURE(made_ != nullptr);
  std::vector<GroundPiece> pieces;
  made_->right.add_pieces({box.x_low_m, box.x_high_m, std::max(-box.y_high_m, 0.0), -box.y_low_m}, pieces);
  for (GroundPiece& piece : pieces) mirror(piece);
  made_->left.add_pieces({box.x_low_m, box.x_high_m, std::max(box.y_low_m, 0.0), box.y_high_m}, pieces);
  return pieces;
}

LevelLine GroundSurface::along(const PlanPoint& from, const PlanPoint& to) const {
  const double dx = to.x_m - from.x_m, dy = to.y_m - from.y_m, length = std::hypot(dx, dy);
  BURROW_ENSURE(length > 0);
  constexpr double beside_m = 1e-3;  // the pieces need some width
  LevelLine line;
  for (const GroundPiece& piece :
       pieces_in({std::min(from.x_m, to.x_m) - beside_m, std::max(from.x_m, to.x_m) + beside_m,
                  std::min(from.y_m, to.y_m) - beside_m, std::max(from.y_m, to.y_m) + beside_m})) {
    double low = 0, high = 1;
    for (const HalfPlane& half : bounds_of(piece.outline)) {
      const double a = half.at(from), b = half.at(to);
      if (a < 0 && b < 0) high = -1;
      if (a < 0 && b >= 0) low = std::max(low, a / (a - b));
      if (a >= 0 && b < 0) high = std::min(high, a / (a - b));
    }
    if (!(high > low)) continue;
    for (const double t : {low, high})
      line.push_back({t * length, piece.plane.at(from.x_m + t * dx, from.y_m + t * dy)});
  }
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
  const LevelLine line = along({x_m - 1e-3, y_m}, {x_m + 1e-3, y_m});
  return elevation_at(line, 1e-3);
}

bool GroundSurface::operator==(const GroundSurface& other) const {
  if (made_ == other.made_) return true;
  return made_ && other.made_ && made_->line == other.made_->line && made_->points == other.made_->points;
}

}  // namespace burrow
