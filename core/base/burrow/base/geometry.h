#pragma once
/// Points and lines in the crossing's local frame: x station along the line, y offset positive left, z elevation up.

#include <optional>
#include <vector>

namespace burrow {

/// A point of a line seen from the side.
struct LevelPoint {
  double station_m = 0;
  double elevation_m = 0;
  bool operator==(const LevelPoint&) const = default;
};
using LevelLine = std::vector<LevelPoint>;

/// A point of a line seen from above.
struct PlanPoint {
  double x_m = 0;
  double y_m = 0;
  bool operator==(const PlanPoint&) const = default;
};
using PlanLine = std::vector<PlanPoint>;

struct Point3 {
  double x_m = 0;
  double y_m = 0;
  double z_m = 0;
  bool operator==(const Point3&) const = default;
};

/// A point of a utility: an absent elevation means that its depth is not known.
struct PathVertex {
  double x_m = 0;
  double y_m = 0;
  std::optional<double> z_m;
  bool operator==(const PathVertex&) const = default;
};

/// Elevation of a line at a station; beyond its ends the line is held level. Stations increase strictly.
/// Range: at least one point (an empty line is a bug of the caller).
double elevation_at(const LevelLine& line, double station_m);

/// Slope dz/dx of the line at a station; 0 beyond its ends.
double slope_at(const LevelLine& line, double station_m);

/// Whether a point lies inside a closed outline (even–odd rule); an outline of fewer than 3 points holds nothing.
bool inside(const PlanLine& outline, double x_m, double y_m);

}  // namespace burrow
