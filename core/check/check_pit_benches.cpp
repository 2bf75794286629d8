/// Benched sides: in which soil they may be cut, and how high a step may be.

#include <algorithm>

#include "pit_check.h"

namespace burrow {

namespace {

/// Type C offers no benched side; Type B only in cohesive soil.
bool benches_allowed(const Judge& judge, const PitUnderCheck& pit) {
  if (pit.shape.soil_type == ExcavationType::c) return false;
  if (pit.shape.soil_type != ExcavationType::b) return true;
  return std::none_of(pit.shape.layers.begin(), pit.shape.layers.end(), [&](const PitLayer& layer) {
    if (layer.type != ExcavationType::b || layer.stratum >= judge.crossing.site.strata.size()) return false;
    const ExcavationMatter matter = matter_of(*find_soil(judge.tables, judge.crossing.site.strata[layer.stratum].soil));
    return matter != ExcavationMatter::cohesive && matter != ExcavationMatter::cemented;
  });
}

}  // namespace

void check_pit_benches(Judge& judge, const PitUnderCheck& pit) {
  const DutyRow* lowest = find_duty(pit.rules, "bench-rise");
  if (!lowest) return;
  const DutyRow* upper = pit.shape.soil_type == ExcavationType::a ? find_duty(pit.rules, "bench-rise-upper") : nullptr;
  bool benched = false;
  for (const SideUnderCheck& side : sides_of(pit)) {
    if (side.entered.kind.value != SideKind::benched) continue;
    benched = true;
    for (std::size_t i = 0; i < side.entered.benches.size(); ++i) {
      const DutyRow& rule = i > 0 && upper ? *upper : *lowest;
      demand(judge, finding_of(pit, side.name, "pit.bench", Severity::stop), side.entered.benches[i].rise.m,
             {rule.value, false, rule.source});
    }
  }
  if (!benched || benches_allowed(judge, pit)) return;
  Finding finding = finding_of(pit, "pit.bench-soil", Severity::stop);
  finding.source = {
      "29 CFR 1926 Subpart P App. B: no benches in type C, in type B in cohesive soil only; the latter from memory",
      SourceLabel::from_memory};
  finding.margin = -1;
  judge.say(std::move(finding));
}

}  // namespace burrow
