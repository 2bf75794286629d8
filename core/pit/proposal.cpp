#include "burrow/pit/proposal.h"

#include "burrow/crossing/statement.h"
#include "burrow/pit/slope.h"

namespace burrow {

bool left_to_program(const PitSide& side) {
  return !side.kind.entered && !side.run_per_rise && !side.upright && !side.support_foot && !side.support_top &&
         side.benches.empty();
}

bool may_stand_upright(const ExcavationRuleSet& rules, const Pit& pit, Length depth) {
  const PitSigns& signs = pit.signs;
  const bool seen = signs.distress.value_or(true) || signs.fissured.value_or(false) || signs.seeping.value_or(false);
  return !seen && !protection_needed(rules, depth);
}

bool shield_holds(const RatedShield& shield, ExcavationType soil, Length depth) {
  constexpr double rounding_m = 1e-9;
  return shield.depth && depth.m <= shield.depth->m + rounding_m && shield.soil_type && *shield.soil_type >= soil &&
         says_something(shield.source);
}

HeldSides held_sides(const ExcavationRuleSet& rules, const Pit& pit, const PitGround& ground) {
  const bool rock = ground.sound_rock && rules.rules == ExcavationRules::us_1926;
  const bool upright = rock || (ground.conditions_clear && may_stand_upright(rules, pit, ground.depth));
  const SideKind proposal = upright                                                ? SideKind::upright
                            : shield_holds(pit.shield, ground.worst, ground.depth) ? SideKind::shielded
                                                                                   : SideKind::shored;
  HeldSides held;
  const auto hold = [&](SideKind& kind, const PitSide& side) {
    const bool left = left_to_program(side);
    kind = left ? proposal : *side.kind;
    held.proposed = held.proposed || left;
  };
  hold(held.bore, pit.sides.bore);
  hold(held.back, pit.sides.back);
  hold(held.left, pit.sides.left);
  hold(held.right, pit.sides.right);
  return held;
}

PitSides sides_in_force(PitSides entered, const HeldSides& held) {
  entered.bore.kind.value = held.bore;
  entered.back.kind.value = held.back;
  entered.left.kind.value = held.left;
  entered.right.kind.value = held.right;
  return entered;
}

}  // namespace burrow
