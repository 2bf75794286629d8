#pragma once
/// A plain trial of one error: how far from the aimed line it takes the bore, growing with the length.

#include <optional>
#include <string>
#include <vector>

#include "burrow/bore/path.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

struct TryError {
  double level_rad = 0, aim_rad = 0;  ///< set wrong, positive up and left
  double deeper_m = 0;                ///< launch lower (negative: higher) than drawn
  std::string soil;                   ///< of all strata; empty: as drawn
  std::string tool;                   ///< a class; empty: as chosen
  bool operator==(const TryError&) const = default;
};

/// Away from the straight line that was aimed at the launch, at one station.
struct MissPoint {
  double station_m = 0, up_m = 0, left_m = 0;
  bool operator==(const MissPoint&) const = default;
};

struct TryErrorAnswer {
  BorePath path;  ///< with the errors
  std::vector<MissPoint> points;
  bool reaches = false;                  ///< the exit face
  std::optional<double> ends_station_m;  ///< where it comes out of the ground instead
};

/// The crossing that these errors make: where they are kept, it is the plan. `error.level_rad` and `aim_rad` become
/// part of grade and heading, `deeper_m` of the launch, soil and tool those of the crossing.   Evidence:
/// TryError.Kept_*
Crossing with_error(const Crossing& crossing, const Tables& tables, const TryError& error);

/// The first locked member that keeping these errors would change, "/bore/launch/grade"; nothing: they may be kept.
/// Evidence: TryError.Locked_*
std::optional<std::string> locked_against(const Crossing& crossing, const TryError& error);

/// Where two paths are at the station at which the shorter of them ends.
struct Miss {
  PathPoint planned, other;
  [[nodiscard]] double up_m() const { return other.z_m - planned.z_m; }
  [[nodiscard]] double left_m() const { return other.y_m - planned.y_m; }
};
/// Nothing where they have no way in common.   Evidence: TryError.MissBetween_*
std::optional<Miss> miss_between(const BorePath& planned, const BorePath& other);

/// What a level that lies wrong by `over_level_m` over its length puts the bore off by after `run_m`, were it straight.
/// Source: similar triangles.   Range: level_length_m > 0.   Evidence: TryError.Thumb_*
double thumb_off_m(double over_level_m, double level_length_m, double run_m);

/// The mean path with these errors; the line is that of the crossing's own grade and heading from the launch as tried.
/// Source: our model (the path).   Range: |level|, |aim| up to 0.5 rad; a launch out of the ground gives no points.
/// Evidence: TryError.*
TryErrorAnswer try_error(const Crossing& crossing, const Tables& tables, const TryError& error);

}  // namespace burrow
