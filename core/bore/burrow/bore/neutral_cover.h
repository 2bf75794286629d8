#pragma once
/// The cover at which a level tool neither climbs nor dives.

#include <optional>
#include <vector>

#include "burrow/bore/path.h"
#include "burrow/bore/tool.h"
#include "burrow/soil/ground.h"

namespace burrow {

/// Neutral cover in diameters, C/D, of a level tool in endless dry ground of one soil: less cover and it climbs out,
/// more and it sags. Empty where it does one of the two at every cover between 0.2 and 60 D. The steering constant does
/// not matter.
/// Source: root of dθ/ds at θ = 0, help page Method (our model).   Evidence: NeutralCover.Method_Table
std::optional<double> neutral_cover(const Soil& soil, const Tool& tool);

/// Level of the axis at one station at which a level tool neither climbs nor sags in the ground as it is there, with
/// its layers and its water; empty where it climbs or sags at every cover between 0.2 and 60 D.
struct NeutralPoint {
  double station_m = 0;
  std::optional<double> elevation_m;
  std::optional<double> cover_m;  ///< of the crown there
  bool operator==(const NeutralPoint&) const = default;
};

/// Along a path, about every metre, at its offset; the shallowest where there are several.
/// Source: root of dθ/ds at θ = 0, help page Method (our model).   Evidence: NeutralLine.*
std::vector<NeutralPoint> neutral_line(const Ground& ground, const Tool& tool, const BorePath& path);

/// Neutral covers at every decimetre of a line, for many paths along it; between two of them straight.
/// Range: to ≥ from; as if nothing varied across.   Evidence: NeutralTable.*
class NeutralTable {
 public:
  NeutralTable(const Ground& ground, const Tool& tool, double from_m, double to_m, double y_m);
  [[nodiscard]] std::optional<double> cover_m(double x_m) const;

 private:
  double from_m_ = 0, per_m_ = 10;
  std::vector<std::optional<double>> covers_m_;
};

/// The same line by a table.
std::vector<NeutralPoint> neutral_line(const Ground& ground, const NeutralTable& table, const Tool& tool,
                                       const BorePath& path);

}  // namespace burrow
