#include "burrow/pit/slope.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {
// 12 ft and 24 h, with the rounding the rules print (3.67 m) on the safe side of neither: feet are the master value.
constexpr double short_term_depth_m = 12 * 0.3048;
constexpr double short_term_s = 24 * 3600;
constexpr double rounding_m = 1e-9;

/// At the depth itself: American rules say "from", German ones "above".
bool reached(const ExcavationRuleSet& rules, Length from, Length depth) {
  const double exempt_to = rules.rules == ExcavationRules::din_4124 ? from.m + rounding_m : from.m - rounding_m;
  return rules.rules == ExcavationRules::din_4124 ? !(depth.m <= exempt_to) : !(depth.m < exempt_to);
}
}  // namespace

bool protection_needed(const ExcavationRuleSet& rules, Length depth) {
  return reached(rules, rules.protection_from, depth);
}

bool ladder_needed(const ExcavationRuleSet& rules, Length depth) {
  return reached(rules, rules.ladder_from, depth);
}

Result<Ratio> least_run_per_rise(const ExcavationRuleSet& rules, ExcavationType type, Length depth,
                                 std::optional<Duration> open_time) {
  if (!(depth.m >= 0) || !std::isfinite(depth.m)) return out_of_range("pit depth", depth.m, ">= 0 m");
  const auto row = std::find_if(rules.slopes.begin(), rules.slopes.end(),
                                [&](const SlopeRow& candidate) { return candidate.type == type; });
  if (row == rules.slopes.end())
    return fail("soil type", std::string(word_of(type)), phrase("a soil type with a slope in {}", rules.name));
  if (depth.m > row->depth_limit.m + rounding_m)
    return out_of_range("pit depth", depth.m, "a depth the rules cover; deeper needs an engineer's design");
  const bool short_term = rules.rules == ExcavationRules::us_1926 && type == ExcavationType::a && open_time &&
                          open_time->s <= short_term_s && depth.m <= short_term_depth_m + rounding_m;
  return short_term ? Ratio{0.5} : row->run_per_rise;
}

std::vector<Bench> benches_by_rules(const ExcavationRuleSet& rules, double run_per_rise) {
  const DutyRow* rise = find_duty(rules, "bench-rise");
  if (!rise) return {};
  const DutyRow* berm = berm_row(rules, false);
  if (!berm) return benches_within(run_per_rise, rise->value);
  Bench bench;
  bench.rise = Length{rise->value};
  bench.tread = Length{berm->value};
  bench.run_per_rise = Ratio{run_per_rise};
  return {bench};
}

const DutyRow* berm_row(const ExcavationRuleSet& rules, bool only_walked) {
  return find_duty(rules, only_walked ? "berm-walked" : "berm");
}

const UprightPartRow* upright_part_row(const ExcavationRuleSet& rules, ExcavationType type, Length depth) {
  for (const UprightPartRow& row : rules.upright_parts)
    if (row.type == type && depth.m <= row.depth_limit.m + rounding_m) return &row;
  return nullptr;
}

}  // namespace burrow
