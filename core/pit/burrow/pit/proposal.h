#pragma once
/// How the sides of a pit that nobody entered are held: with the least earth that the rules allow on that ground.

#include "burrow/base/quantity.h"
#include "burrow/crossing/pits.h"
#include "burrow/pit/shape.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Neither its kind was entered nor a slope, an upright part, a support or a bench.   Evidence: PitProposal.*
bool left_to_program(const PitSide& side);

/// Whether a side may stand upright without support: not so deep that the rules want protection, and somebody has
/// looked and seen no distress, no fissure, no water in it. Nobody looked: it may not. Under DIN 4124 its own
/// conditions come on top, see `PitGround`. Source: 29 CFR 1926.652(a)(1) (read); fissures and water, and that the
/// German rule asks for a look too: our default. Evidence: PitProposal.*
bool may_stand_upright(const ExcavationRuleSet& rules, const Pit& pit, Length depth);

/// Whether the user's own shield is rated for a pit of this depth and soil; a rating without a source counts for
/// nothing.   Evidence: PitProposal.*, RatedShield.*
bool shield_holds(const RatedShield& shield, ExcavationType soil, Length depth);

/// What a proposal goes by.
struct PitGround {
  Length depth;
  ExcavationType worst = ExcavationType::c;  ///< type in force
  bool sound_rock = false;  ///< drawn as rock, and somebody has put a name to it: 29 CFR 1926 wants no protection then
  bool conditions_clear = true;  ///< under DIN 4124: all of `slope_conditions` answered, none there
};

/// Kinds of all sides. One left to the program stands upright where it may, else behind the user's shield where that is
/// rated for it, else shored: a slope takes more earth than any of these.
/// Source: our default.   Evidence: PitProposal.*
HeldSides held_sides(const ExcavationRuleSet& rules, const Pit& pit, const PitGround& ground);

/// The sides as entered, each with the kind that holds it.
PitSides sides_in_force(PitSides entered, const HeldSides& held);

}  // namespace burrow
