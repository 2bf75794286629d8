#pragma once
/// Test holes pin a utility where somebody has seen it: its centre line moves there, its error becomes smaller nearby.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/date.h"
#include "burrow/base/geometry.h"
#include "burrow/crossing/site.h"

namespace burrow {

/// One standard deviation of a utility's place; empty: not known.
struct LocationSd {
  std::optional<double> lateral_m, vertical_m;
};

/// A vertex of the centre line as it is believed to lie, with its standard deviations there.
struct PinnedVertex {
  PathVertex at;
  double lateral_sd_m = 0, vertical_sd_m = 0;
  bool operator==(const PinnedVertex&) const = default;
};

/// What keeps a hole from counting (the first three), or what is odd about it.
enum class HoleTrouble { no_level, no_diameter, no_location_error, off_record, holes_disagree };

struct HoleRemark {
  std::string hole;
  HoleTrouble trouble = HoleTrouble::no_level;
  double station_m = 0, offset_m = 0;
  double apart_m = 0, likely_m = 0;  ///< for the last two: how far apart, and 3 sd of that
  bool operator==(const HoleRemark&) const = default;
};

struct PinnedLine {
  std::vector<PinnedVertex> line;     ///< empty: no hole counts, the line is that of the record
  std::vector<double> holes_along_m;  ///< of those that count: distance along the line of the record, in plan
  std::vector<HoleRemark> remarks;
  bool operator==(const PinnedLine&) const = default;
};

/// The box in plan around the bore, and how near to it a line must come to matter for it.
struct NearBore {
  double from_x_m = 0, to_x_m = 0, from_y_m = 0, to_y_m = 0;
  double matters_within_m = 0;
  [[nodiscard]] double apart_m(double x_m, double y_m) const;  ///< of a point from the box
};

/// The errors across the line and in height are two Gaussian processes along it, with the stated standard deviations
/// and the correlation exp(−(d/reach)²), d in plan along the line; the reach is the least of those of its holes,
/// 10 m at most. Both
/// are conditioned on all holes of the utility, each with its own error (the same across). Holes never make an error
/// larger; at a hole it becomes σ s/√(σ² + s²), s the error of the hole. Vertices are added around the holes, an eighth
/// of the reach apart; between vertices places and errors run straight. Where the record has no elevation, a hole gives
/// that of the line up to its reach: its own, with the error √(2 σ² (1 − ρ) + s²).
/// A hole counts when its level, both errors of the utility and, for a level of crown or invert, the outside diameter
/// are known. Remarks: a hole further from the record, or from another hole, than 3 sd of what is to be expected, or
/// than 1 m.
/// More than 24 holes on one utility: vertices around them no closer than a fortieth of the reach, of each hole only
/// the worst disagreement with others, and with `bore` given a single vertex at each hole that lies too far from it.
/// Source: our model; conditioning of a Gaussian process (derived).   Range: any.
/// Evidence: TestHoles.*, Trials.TestHole_*
PinnedLine pinned_line(const Utility& utility, const LocationSd& sd, const std::vector<TestHole>& holes,
                       const NearBore* bore = nullptr);

/// Distance along a line, in plan, of the place on it nearest to a point. Range: at least one vertex.
double along_in_plan(const std::vector<PathVertex>& line, const PathVertex& point);

/// Elevation of a line at the place on it nearest to a point in plan; empty: not known there.
std::optional<double> elevation_on(const std::vector<PathVertex>& line, const PathVertex& point);

/// Elevation of the utility's centre that a hole found; empty: not measured, or the diameter it needs is not known.
std::optional<double> centre_of(const TestHole& hole, const Utility& utility);

/// Whether a hole proves that the utility lies bare there: a level measured to 0.1 m, a day that has come, who
/// measured. Source: our default.   Evidence: Exposure.*, PitSurroundings.TestHole_*
bool lays_bare(const TestHole& hole, const Utility& utility, const std::optional<Date>& on);

}  // namespace burrow
