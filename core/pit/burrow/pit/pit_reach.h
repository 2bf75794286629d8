#pragma once
/// How near the excavation of a pit comes to a place in the ground: floor, sump and what stands against the sides.

#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/base/quantity.h"
#include "burrow/pit/shape.h"

namespace burrow {

/// How far a place may lie from where it is drawn: in plan any way, and in height.
struct PlaceError {
  double in_plan_m = 0, in_height_m = 0;
};

/// The excavation as a body, open upward: as deep as the floor with its sump (whose place on the floor nobody enters:
/// all of it), as wide at each height as its sides, at most as wide as its edge at the surface. Without a ground line:
/// upright above the floor.
/// Source: derived. Sloped sides are taken in steps of 0.05 m, each as wide as its upper end; an outlined floor as the
/// rectangle round it within the edge at the surface: the body is nowhere smaller than the pit.
/// Range: a floor of at least 3 corners, else nothing is near.   Evidence: PitReach.*
class PitReach {
 public:
  /// `walls`: how far the supports of each side reach behind it.
  struct Walls {
    double low_m = 0, high_m = 0, left_m = 0, right_m = 0;
  };
  PitReach(const PitShape& pit, Length sump_depth, const Walls& walls);

  /// Least distance to the body of any place within the error. Never grows with an error. An empty elevation is any:
  /// then the distance in plan.
  [[nodiscard]] double gap(const PathVertex& place, const PlaceError& error = {}) const;
  /// The same, with the sides upright from the edge at the surface down to the bottom: not more than `gap`.
  [[nodiscard]] double gap_below_edge(const PathVertex& place, const PlaceError& error = {}) const;

  /// The rectangle round all of it, in plan.
  [[nodiscard]] PlanPoint low_corner() const { return low_; }
  [[nodiscard]] PlanPoint high_corner() const { return high_; }

 private:
  struct Step {
    double from_m, to_m, right_m, left_m;  ///< outline
    double bottom_m, top_m;                ///< elevations
  };
  void cut_steps(const PitShape& pit, const Walls& walls);

  /// From one corner of the edge at the surface to the next.
  struct Stretch {
    PlanPoint from;
    double dx_m, dy_m, length2_m2;
  };
  [[nodiscard]] double beside_edge_m(const PathVertex& place) const;

  PlanLine edge_;
  std::vector<Stretch> stretches_;
  bool convex_ = false;  ///< the edge, going round once
  double turn_ = 1;      ///< −1: clockwise
  double edge_wall_m_ = 0;
  double bottom_m_ = 0;
  std::vector<Step> steps_;
  PlanPoint low_, high_;
};

}  // namespace burrow
