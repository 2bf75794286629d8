#pragma once
/// Where the bore goes: the mean path with its spread.

#include <string_view>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/bore/tool.h"
#include "burrow/soil/ground.h"

namespace burrow {

class TurnTable;

enum class PathEnd { exit, daylight, longest };
template <>
struct EnumNames<PathEnd> {
  static constexpr std::pair<PathEnd, std::string_view> list[] = {
      {PathEnd::exit, "exit"}, {PathEnd::daylight, "daylight"}, {PathEnd::longest, "longest"}};
};

/// One point of the mean path. Plain suffixed doubles: this is the inner loop's own record.
struct PathPoint {
  double s_m = 0;  ///< arc length from the launch face
  double x_m = 0, y_m = 0, z_m = 0;
  double grade_rad = 0;    ///< θ, inclination of the axis, positive up
  double heading_rad = 0;  ///< ψ, positive left
  double sd_lateral_m = 0, sd_vertical_m = 0;
  double cover_m = 0;  ///< crown of the hole to the surface
  double resistance_above_Pa = 0, resistance_below_Pa = 0;
  double curvature_1_m = 0;      ///< dθ/ds
  double sag_curvature_1_m = 0;  ///< the part of it by the weight, downward positive
  double yaw_curvature_1_m = 0;  ///< dψ/ds, positive left
  double limit_pressure_Pa = 0;  ///< p_L at the axis
  double roof_cap_Pa = 0;
  bool operator==(const PathPoint&) const = default;
};

struct BorePath {
  std::vector<PathPoint> points;
  double length_m = 0;
  PathEnd ends = PathEnd::exit;
  bool operator==(const BorePath&) const = default;
};

/// The longest bore whose path is followed, face to face: four times what any unsteered tool is sent (our default). A
/// longer one is a slip of the pen, 14000 for 14, and is judged by its length alone.
inline constexpr Length longest_followed{200};
bool too_long_to_follow(const Bore& bore);

/// How finely a path is followed, and how far apart its points are recorded at most.
struct PathSteps {
  Length step{0.05};
  Length recorded_every{0.25};  ///< not less than the step
};

/// The mean path of an unsteered tool with its spread, from the launch face to the exit face, to daylight (cover 0,
/// found on the last step) or to 1.5 × (exit − launch) + 5 m. The first point is at s = 0, the last exactly at the end.
/// Mean: `Steering` with the mean of c; midpoint rule, the curvature of a step put forward from the two last ones.
/// Spread: wander σ_e² = σ² + λ s_J² of the soil at the axis, start, level and aim errors, the path's own sensitivity
/// ∂κ/∂z (beside strips ∂κ/∂y), and the spread of c to first order. sd of a coordinate at a station: the sd across the
/// axis is divided by the cosine of grade or heading. Source: help page Method (our model). Range: an exit
/// at or behind the launch face, which the reader refuses, or more than `longest_followed` beyond it gives the launch
/// point alone with length 0 and `longest`; a launch point in the air gives the launch point alone and `daylight`.
/// Evidence: PredictPath.*, PathSpread.*, Wander.*, LongBore.*
/// `turns`: the turning is looked up there instead of being computed at each step, for many paths through one ground
/// without strips; the path then lies within 2 mm of its own, its band within 1 %, and it carries no resistances.
/// Evidence of that: TurnedPath.*
BorePath predict_path(const Ground& ground, const Tool& tool, const Bore& bore, PathSteps steps = {},
                      const TurnTable* turns = nullptr);

/// Chance that something in the ground stops the tool on its way up to `up_to`: 1 − exp(−∫ refusal rate ds), with the
/// rate of the soil at the axis.
/// Source: help page Method (our model).   Evidence: ChanceOfRefusal.*
double chance_of_refusal(const Ground& ground, const BorePath& path, Length up_to);
double chance_of_refusal(const Ground& ground, const BorePath& path);

}  // namespace burrow
