#pragma once
/// What the checks of a pit share.

#include <string>

#include "judge.h"

namespace burrow {

struct PitUnderCheck {
  const PitShape& shape;
  const Pit& entered;
  PitAnswer& work;
  const ExcavationRuleSet& rules;
  std::string subject;
  std::string name;
};

/// At the middle of the floor.
Finding finding_of(const PitUnderCheck& pit, std::string_view code, Severity severity);
/// At the middle of a side's foot, named after it.
Finding finding_of(const PitUnderCheck& pit, PitSideName side, std::string_view code, Severity severity);

/// The four sides as entered, with their profile.
struct SideUnderCheck {
  PitSideName name;
  const PitSide& entered;
  const SideProfile& profile;
};
std::vector<SideUnderCheck> sides_of(const PitUnderCheck& pit);
/// Height of the ground above the floor's edge at a side.
double height_at(const Judge& judge, const PitUnderCheck& pit, PitSideName side);

/// As `Judge::demand`, but a value on its limit to within rounding (feet turned to metres) keeps it.
void demand(Judge& judge, Finding finding, double value, const Limit& limit);

void check_pit_soil(Judge& judge, PitUnderCheck& pit);
void check_pit_sides(Judge& judge, const PitUnderCheck& pit);
void check_pit_benches(Judge& judge, const PitUnderCheck& pit);

/// Set-back of a side cut by the rules, layer by layer.
void show_set_back(Judge& judge, const PitUnderCheck& pit);

}  // namespace burrow
