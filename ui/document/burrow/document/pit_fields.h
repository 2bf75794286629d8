#pragma once
/// What a person types about the two pits: floor, sides, spoil, ladder, and how long they stay open.

#include "burrow/check/assessment.h"
#include "burrow/document/fields.h"

namespace burrow {

enum class WhichPit { launch, exit };

inline const ItemRef pits_part{ItemKind::pits, {}, -1};

Pit& pit_of(Pits& pits, WhichPit which);
const Pit& pit_of(const Pits& pits, WhichPit which);

/// Sizes left empty are proposed by the program; `shape` tells what it proposes.
/// Evidence: PitFields.*
std::vector<Field> pit_floor_fields(const Crossing& crossing, WhichPit which, const PitShape& shape);
/// Place of one corner of a floor that has an outline: into the pit, and to the left.
std::vector<Field> floor_corner_fields(const Crossing& crossing, WhichPit which, std::size_t corner);
/// The outline with one corner more: half way along the edge after a corner. And with that one less.
PlanLine with_corner_after(PlanLine outline, std::size_t corner);
PlanLine without_corner(PlanLine outline, std::size_t corner);
/// A rectangle as an outline in the frame of its pit.
PlanLine outline_of_rectangle(const PitShape& shape);
/// Run of the slope and height of the upright lower part, of the sides that have them.
std::vector<Field> pit_side_fields(const Crossing& crossing, WhichPit which, const PitShape& shape);
/// What stands behind an edge that is dragged on the drawing, for typing it.
std::vector<Field> pit_edge_fields(const Crossing& crossing, const ItemRef& edge);
/// Dip of the layers and how long the pit stays open.
std::vector<Field> pit_soil_fields(const Crossing& crossing, WhichPit which);
/// Set-back and height of the spoil heap, place of the ladder.
std::vector<Field> pit_spoil_fields(const Crossing& crossing, WhichPit which);

}  // namespace burrow
