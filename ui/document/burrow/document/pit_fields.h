#pragma once
/// What a person types about the two pits: floor, sides, spoil, ladder, and how long they stay open.

#include "burrow/check/assessment.h"
#include "burrow/document/fields.h"

namespace burrow {

enum class WhichPit { launch, exit };

inline const PartRef pits_part{PartKind::pits, {}, -1};

Pit& pit_of(Pits& pits, WhichPit which);
const Pit& pit_of(const Pits& pits, WhichPit which);

/// All of PartKind::pits. Sizes left empty are proposed by the program; `shape` tells what it proposes.
/// Evidence: PitFields.*
std::vector<Field> pit_floor_fields(const Crossing& crossing, WhichPit which, const PitShape& shape);
/// Run of the slope and height of the upright lower part, of the sides that have them.
std::vector<Field> pit_side_fields(const Crossing& crossing, WhichPit which, const PitShape& shape);
/// What stands behind an edge that is dragged on the drawing, for typing it.
std::vector<Field> pit_edge_fields(const Crossing& crossing, const PartRef& edge);
/// Dip of the layers and how long the pit stays open.
std::vector<Field> pit_soil_fields(const Crossing& crossing, WhichPit which);
/// Set-back and height of the spoil heap, place of the ladder.
std::vector<Field> pit_spoil_fields(const Crossing& crossing, WhichPit which);

}  // namespace burrow
