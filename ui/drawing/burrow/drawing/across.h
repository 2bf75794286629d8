#pragma once
/// A section across the line at one station, looking along the bore: ground, utilities near that plane, the hole and
/// where it may lie.

#include <array>

#include "burrow/drawing/scene.h"

namespace burrow {

/// A utility as the section shows it: what of its line lies near the plane, seen along the bore.
struct AcrossUtility {
  const Utility* utility = nullptr;
  std::vector<PlanLine> runs;       ///< pieces near the plane; x is the offset, y the elevation
  std::optional<PlanPoint> passes;  ///< where it passes through the plane
};

/// Rings about the bore that hold a share of all bores at a station: of two independent coordinates at once, so that
/// they are wider than the bands of the side view, which hold it of one. Radius √(−2 ln(1 − share)) of the sd to each
/// side. Source: Rayleigh distribution.   Evidence: Across.Rings_*
struct RingShare {
  double sds;
  int strength;  ///< alpha of its tint
  const char* name;
};
inline constexpr std::array<RingShare, 3> ring_shares{RingShare{3.0349, 40, "99 %"}, RingShare{2.1460, 70, "90 %"},
                                                      RingShare{1.1774, 110, "50 %"}};

/// Utilities within `reach_m` of the plane at the station. Stretches of unknown depth are left out.
/// Evidence: Across.*
std::vector<AcrossUtility> utilities_across(const Site& site, double station_m, double reach_m);

/// The ground across the line at a station, from one offset to another: offsets and heights. Level, unless a surveyed
/// point lies within `surveyed_reach_m` of that stretch.   Evidence: Across.*
LevelLine ground_across(const Assessment& assessment, const Site& site, double station_m, double from_m, double to_m);

/// Where the section stands: in the plan, at the end away from its station. Empty when it is not shown.
QRectF across_box(const Scene& scene);

/// Its station as a line through both views.
void paint_across_line(QPainter& painter, const Scene& scene);
/// The section itself, over everything.
void paint_across(QPainter& painter, const Scene& scene);

}  // namespace burrow
