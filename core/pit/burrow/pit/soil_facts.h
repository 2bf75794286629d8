#pragma once
/// What is entered about the soil of a pit, and the type that counts for it.

#include <optional>

#include "burrow/crossing/crossing.h"
#include "burrow/pit/pit_place.h"
#include "burrow/pit/shape.h"
#include "burrow/pit/soil_type.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Somebody has put a name to the soil type: a blank or a dash is none.
bool soil_confirmed(const Pit& pit);

/// Typed for the stratum or for the pit, the worse of both.
std::optional<ExcavationType> entered_type(const Site& site, std::size_t stratum, const Pit& pit);

/// Ground within 5 m of a road or track is taken as shaken (our default).
bool beside_traffic(const Crossing& crossing, const Pit& pit, const PitPlace& place);

/// An old trench whose fill lies between two elevations of the pit.
bool dug_before(const Crossing& crossing, const Pit& pit, const PitPlace& place, double top_m, double bottom_m);

/// What the signs, the water, the strips, the traffic and the stratum say of one layer.
SoilSeen soil_seen_in_layer(const Crossing& crossing, const Pit& pit, const Tables& tables, const PitPlace& place,
                            const PitLayer& layer);

/// The type entered, where what else is entered leaves it open and somebody has put a name to it; else Type C: a name
/// confirms what the facts leave open and never beats one.
/// Source: 29 CFR 1926 Subpart P App. A (b)(2) (read): at least one look and one test by hand; 652(b)(1): Type C where
/// nobody classified the soil (read).   Evidence: PitNames.*
ExcavationType type_in_force(const Crossing& crossing, const Pit& pit, const Tables& tables, const PitPlace& place,
                             const PitLayer& layer);

}  // namespace burrow
