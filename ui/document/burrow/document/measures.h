#pragma once
/// The dimensions that a person reads off a crossing and wants to set: pit to pit, depths, cover under a road, the gap
/// to a utility, the floor of a pit. Each names the one part that it changes.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/check/assessment.h"
#include "burrow/document/fields.h"
#include "burrow/document/lens.h"

namespace burrow {

enum class MeasureKind { bore_length, launch_depth, exit_depth, surface_cover, separation, floor_length, floor_width };

/// `id`: of the road, of the utility; "launch" or "exit" for a floor.
struct MeasureRef {
  MeasureKind kind = MeasureKind::bore_length;
  std::string id;
  bool operator==(const MeasureRef&) const = default;
};

/// Those that can be told, the most wanted first; a gap for each utility, a floor for each pit.
std::vector<MeasureRef> measures_of(const Crossing& crossing, const Assessment& assessment);

/// SI value as it stands; empty: it cannot be told (the bore does not reach so far, a depth is not known).
std::optional<double> measure_value(const Crossing& crossing, const Assessment& assessment, const MeasureRef& measure);

/// Where the path has its least cover under a thing on top; none: it does not pass under it.
const PathPoint* least_cover_under(const Assessment& assessment, const SurfaceFeature& feature);

/// The part that changes: the exit for the length, the launch for depth, cover and gap (all of the bore rises or
/// sinks), the launch grade for the depth at the exit, the pits for a floor. What lies in the ground is a fact and
/// never moves for a dimension.
ItemRef measure_part(const MeasureRef& measure);

/// "depth at the launch face".
std::string measure_name(const Crossing& crossing, const MeasureRef& measure);

/// The lock that keeps it from being dragged ("/bore/launch/elevation_m"), empty: none.
std::string measure_lock(const Crossing& crossing, const MeasureRef& measure);

/// The change that brings the measure to `wanted`, from the answer as it stands: exact where the measure is entered, to
/// first order where it is predicted. Within what the file accepts. Empty: it cannot be brought there.
Edit toward_measure(const Crossing& crossing, const Assessment& assessment, const MeasureRef& measure, double wanted);

/// The crossing with the measure at it, to half a millimetre, by steps of `toward_measure` with an assessment each.
/// `surface`: of an answer for the crossing, taken by `assess()` where it fits.
/// Errors: it cannot be brought there, with how near it comes.   Evidence: Measures.*
Result<Crossing> with_measure(const Crossing& crossing, const Tables& tables, const MeasureRef& measure, double wanted,
                              GroundSurface surface = {});

/// The entry for typing it. `tables` must outlive it.
Field measure_field(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                    const MeasureRef& measure);

}  // namespace burrow
