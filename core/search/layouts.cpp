#include "burrow/search/layouts.h"

#include <algorithm>

#include "burrow/check/mute.h"

namespace burrow {

LayoutSummary summary_of(const Crossing& crossing, const Assessment& assessment) {
  LayoutSummary sum;
  sum.verdict = assessment.verdict;
  for (const Finding& finding : assessment.findings) {
    if (finding.missing)
      ++sum.missing;
    else if (finding.severity == Severity::stop)
      ++sum.stops;
    else if (counts_in_verdict(finding))
      ++sum.cautions;
  }
  const Launch& launch = crossing.bore.launch;
  if (assessment.bore.points.size() > 1) sum.length_m = assessment.bore.length_m;
  if (!crossing.site.ground.empty())
    sum.launch_depth_m = elevation_at(crossing.site.ground, launch.station.m) - launch.elevation.m;
  sum.grade = launch.grade.v;
  sum.least_cover_m = assessment.cover.least_m;
  for (const UtilityAnswer& u : assessment.utilities) {
    if (!u.separation_m || !u.required_m) continue;
    const double over = *u.separation_m - *u.required_m;
    if (sum.least_gap_over_m && over >= *sum.least_gap_over_m) continue;
    sum.least_gap_over_m = over;
    sum.least_gap_m = u.separation_m;
    sum.least_gap_utility = u.name.empty() ? u.id : u.name;
  }
  sum.contact_chance = assessment.contact_chance_any;
  sum.chance_inside_exit_pit = assessment.arrival.chance_inside_exit_pit;
  if (sum.chance_inside_exit_pit) *sum.chance_inside_exit_pit *= 1 - assessment.chance_of_refusal.value_or(0);
  sum.heave_high_m = assessment.surface.heave_high_m;
  sum.dig_m3 = assessment.launch_pit.volume_m3 + assessment.exit_pit.volume_m3;
  sum.time_s = assessment.advance_time_s.p50;
  return sum;
}

std::vector<LayoutSummary> compare_layouts(const Crossing& crossing, const Assessment& in_force, const Tables& tables) {
  std::vector<LayoutSummary> all{summary_of(crossing, in_force)};
  for (const Alternative& alternative : crossing.alternatives) {
    const Crossing other = with_alternative(crossing, alternative.id);
    LayoutSummary sum = summary_of(other, assess(other, tables, in_force.ground_surface));
    sum.id = alternative.id;
    sum.name = alternative.name;
    all.push_back(std::move(sum));
  }
  return all;
}

Alternative kept_layout(const Crossing& crossing, const std::string& name) {
  Alternative kept;
  kept.id = free_id(crossing, "a");
  kept.name = name;
  kept.bore = crossing.bore;
  kept.pipe = crossing.pipe;
  kept.pits = crossing.pits;
  kept.air = crossing.air;
  kept.locks = crossing.locks;
  return kept;
}

Crossing with_layout_in_force(const Crossing& crossing, const std::string& id, const std::string& name_of_the_other) {
  const auto at = std::find_if(crossing.alternatives.begin(), crossing.alternatives.end(),
                               [&](const Alternative& a) { return a.id == id; });
  if (at == crossing.alternatives.end()) return crossing;
  Crossing changed = with_alternative(crossing, id);
  changed.alternatives[static_cast<std::size_t>(at - crossing.alternatives.begin())] =
      kept_layout(crossing, name_of_the_other);
  return changed;
}

}  // namespace burrow
