/// German sides without support: what wants a calculation, and what nobody has answered.

#include <algorithm>

#include "burrow/base/phrase.h"
#include "burrow/pit/slope_conditions.h"
#include "pit_check.h"

namespace burrow {

namespace {

Phrase listed(const std::vector<SlopeCondition>& conditions) {
  Phrase all;
  for (const SlopeCondition condition : conditions)
    all = all.empty() ? phrase_of_word(condition) : phrase("{}, {}", std::move(all), phrase_of_word(condition));
  return all;
}

void say_conditions(CheckRun& run, const PitUnderCheck& pit, std::string_view code,
                    const std::vector<SlopeCondition>& conditions) {
  if (conditions.empty()) return;
  Finding finding = finding_of(pit, code, Severity::stop);
  finding.name = phrase("{} ({})", pit.name, listed(conditions));
  finding.source = {
      "DIN 4124 as in DGUV Information 201-052 s. 4.2, BG BAU C 469: with any of these by calculation only",
      SourceLabel::read};
  finding.margin = -1;
  run.add(std::move(finding));
}

void show_rise(CheckRun& run, const PitUnderCheck& pit) {
  if (!run.wants_working()) return;
  run.add_working(
      {"pit.slope-by-calculation",
       pit.subject,
       "n = max (z(d + 2 m) − z(d)) / 2 m",
       {{"d_most", 2 * pit.shape.depth_m, "m"}},
       "n",
       steepest_rise_beside(run.crossing.site, pit.entered, place_of(pit.shape)),
       "",
       std::nullopt,
       {"steepest rise of the ground entered, going away from the floor; 0.1 at most, 0.5 in stiff cohesive soil",
        SourceLabel::our_default}});
}

}  // namespace

void check_pit_conditions(CheckRun& run, const PitUnderCheck& pit) {
  if (pit.rules.rules != ExcavationRules::din_4124) return;
  const bool deep = protected_sides(pit);
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  const bool bare = std::any_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
    return *side.entered.kind != SideKind::shored && *side.entered.kind != SideKind::shielded;
  });
  if (!(deep ? bare : has_steep_side(run, pit))) return;
  const SlopeConditions conditions = slope_conditions(run.crossing, pit.entered, run.tables, place_of(pit.shape));
  show_rise(run, pit);
  say_conditions(run, pit, "pit.slope-by-calculation", conditions.present);
  say_conditions(run, pit, "pit.slope-conditions", conditions.open);
}

}  // namespace burrow
