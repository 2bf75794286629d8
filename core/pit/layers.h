#pragma once
/// The strata that a pit is dug through.

#include <optional>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/crossing/crossing.h"
#include "burrow/pit/shape.h"
#include "burrow/pit/side.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Layers at a station from the ground, at the height given, down to the floor; as Type C, without slope and volume.
/// Without strata: one layer. Same order as `Ground`: where the top of a lower stratum rises above an upper one, the
/// upper has no thickness there.   Evidence: PitLayers.*
std::vector<PitLayer> layers_at(const Site& site, double station_m, double ground_m, double floor_elevation_m);

/// Slopes of these layers as 29 CFR 1926 Subpart P App. B Fig. B-1.4 has them for two: each layer takes the flattest
/// of its own slope and those below (six cases from memory; more than two layers are our extension). `with_distress`:
/// 1/2 : 1 flatter (read, the half from memory).
/// What the rules do not cover gets their flattest slope. The short-term slope stands in the rules for a simple slope
/// only (read): the compound one is without it.
void slope_layers(std::vector<PitLayer>& layers, const ExcavationRuleSet& rules, double depth_m, const Pit& pit);

/// From the floor up, for the `SideProfile` of this side. Over an upright lower part without support nothing is steeper
/// than the rules have it there.
std::vector<SlopeStep> steps_of(const std::vector<PitLayer>& layers, const PitSide& side,
                                const ExcavationRuleSet& rules, double floor_elevation_m, double depth_m);

/// Upper surface of a stratum and all below it between two stations, wherever the ground is. Nothing: it reaches up to
/// the ground.
std::optional<LevelLine> top_of(const Site& site, std::size_t stratum, double from_m, double to_m);
/// The same, but never above the ground line.
LevelLine surface_of(const Site& site, std::size_t stratum, double from_m, double to_m);

}  // namespace burrow
