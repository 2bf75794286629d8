#pragma once
/// Lines of LandXML: arcs and spirals as vertices, heights from a profile. Private to the importer library.

#include <optional>
#include <vector>

#include "burrow/base/geometry.h"

namespace burrow {

struct ArcTurn {
  PlanPoint start, centre, end;
  bool clockwise = false;
};

/// Adds the arc after its start; a vertex at least every `sagitta` of departure from the true arc, `end` itself last.
/// Evidence: LandXml.Arc_*
void add_arc(std::vector<PlanPoint>& line, const ArcTurn& arc, double sagitta);

/// A clothoid: curvature grows evenly from start to end. `towards`: the point its first tangent goes to.
/// Source: textbook; heading = k0 s + (k1 − k0) s²/2L, coordinates by Simpson's rule.   Evidence: LandXml.Spiral_*
struct SpiralTurn {
  PlanPoint start, towards, end;
  double curvature_start = 0;  ///< positive left
  double curvature_end = 0;
  double length = 0;
};
void add_spiral(std::vector<PlanPoint>& line, const SpiralTurn& spiral, std::size_t steps = 32);

/// A point of a profile with the length of the vertical curve around it, 0 for none.
struct ProfilePoint {
  double station = 0;
  double z = 0;
  double curve_in = 0;   ///< before the point
  double curve_out = 0;  ///< after it
};

/// Height at a station; none beyond the ends. Parabola z = z_in + (g2 − g1)/(2L) (L_out/L_in)·a² before the point.
/// Source: textbook (vertical curve of two parabolas, Hickerson 1964, from memory).   Evidence: LandXml.Profile_*
std::optional<double> profile_height(const std::vector<ProfilePoint>& profile, double station);

}  // namespace burrow
