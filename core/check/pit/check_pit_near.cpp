/// Machines and trees near the pits. Of the two pits the one that is worse for each of them counts.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double light_plant_kg = 12e3;
constexpr double rounding_kg = 1e-3;  // of a mass entered as a load

bool heavier_than_rules(const ExcavationRuleSet& rules, const Plant& plant) {
  const DutyRow* heaviest = find_duty(rules, "plant-heaviest-kg");
  return heaviest && !(plant.load.N / gravity_m_s2 <= heaviest->value + rounding_kg);
}

/// A machine that the rules have no distance for stays off twice the depth of the deeper pit (our default).
Limit distance_without_rule(std::span<const PitUnderCheck> pits) {
  const DutyRow *heavy = find_duty(pits.front().rules, "plant-heavy-distance"),
                *heaviest = find_duty(pits.front().rules, "plant-heaviest-kg");
  double off = heavy ? heavy->value : 0.0;
  for (const PitUnderCheck& pit : pits) off = std::max(off, 2 * pit.shape.depth_m);
  return {off, true, heaviest ? heaviest->source : pits.front().rules.source};
}

/// How far from the edge a machine stays: by its mass where the rules say so, else as spoil.
Limit distance_wanted(const ExcavationRuleSet& rules, const Plant& plant) {
  const bool light = plant.load.N / gravity_m_s2 <= light_plant_kg + rounding_kg;
  const DutyRow* row = find_duty(rules, light ? "plant-light-distance" : "plant-heavy-distance");
  if (row) return {row->value, true, row->source};
  return {rules.spoil_setback.m, true, rules.source};
}

std::optional<PlanGap> nearest_of(std::span<const PitUnderCheck> pits, const PlanLine& line, bool closed) {
  std::optional<PlanGap> nearest;
  for (const PitUnderCheck& pit : pits) {
    if (pit.shape.footprint.empty()) continue;
    const PlanGap gap = gap_between(pit.shape.footprint, line, closed);
    if (!nearest || gap.gap_m < nearest->gap_m) nearest = gap;
  }
  return nearest;
}

Finding at(const CheckRun& run, std::string_view code, Severity severity, const std::string& id, const Phrase& name,
           const PlanGap& gap) {
  return finding_at(code, severity, id, name, gap.on_outline.x_m, gap.on_outline.y_m,
                    elevation_at(run.crossing.site.ground, gap.on_outline.x_m));
}

}  // namespace

void check_pits_near(CheckRun& run, std::span<const PitUnderCheck> pits) {
  const Site& site = run.crossing.site;
  for (const Plant& plant : site.plant)
    if (const auto gap = nearest_of(pits, plan_of(plant), true)) {
      const bool heavier = heavier_than_rules(pits.front().rules, plant);
      const std::string_view code = heavier ? "pit.plant-heaviest" : "pit.plant";
      const Limit limit = heavier ? distance_without_rule(pits) : distance_wanted(pits.front().rules, plant);
      require(run, at(run, code, Severity::stop, plant.id, display_name(plant), *gap), gap->gap_m, limit);
      show_gap(run, code, plant.id, *gap, limit);
    }
  for (const Tree& tree : site.trees)
    if (const auto gap = nearest_of(pits, {{tree.station.m, tree.offset.m}}, false)) {
      const Limit limit{
          tree.protection_radius.m, true, {"protection circle entered for the tree", SourceLabel::owners_setting}};
      const Phrase name = tree.name.empty() ? Phrase(translatable("a tree")) : Phrase(tree.name);
      require(run, at(run, "pit.tree", Severity::caution, tree.id, name, *gap), gap->gap_m, limit);
      show_gap(run, "pit.tree", tree.id, *gap, limit);
    }
}

}  // namespace burrow
