#include "burrow/pit/slope.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {
// 12 ft and 24 h, with the rounding the rules print (3.67 m) on the safe side of neither: feet are the master value.
constexpr double short_term_depth_m = 12 * 0.3048;
constexpr double short_term_s = 24 * 3600;
constexpr double rounding_m = 1e-9;
}  // namespace

Result<Ratio> least_run_per_rise(const ExcavationRuleSet& rules, ExcavationType type, Length depth,
                                 std::optional<Duration> open_time) {
  if (!(depth.m >= 0) || !std::isfinite(depth.m)) return out_of_range("pit depth", depth.m, ">= 0 m");
  const auto row = std::find_if(rules.slopes.begin(), rules.slopes.end(),
                                [&](const SlopeRow& candidate) { return candidate.type == type; });
  if (row == rules.slopes.end())
    return fail("soil type", std::string(word_of(type)), "a soil type with a slope in " + rules.name);
  if (depth.m > row->depth_limit.m + rounding_m)
    return out_of_range("pit depth", depth.m, "a depth the rules cover; deeper needs an engineer's design");
  const bool short_term = rules.rules == ExcavationRules::us_1926 && type == ExcavationType::a && open_time &&
                          open_time->s <= short_term_s && depth.m <= short_term_depth_m + rounding_m;
  return short_term ? Ratio{0.5} : row->run_per_rise;
}

const UprightPartRow* upright_part_row(const ExcavationRuleSet& rules, ExcavationType type, Length depth) {
  for (const UprightPartRow& row : rules.upright_parts)
    if (row.type == type && depth.m <= row.depth_limit.m + rounding_m) return &row;
  return nullptr;
}

}  // namespace burrow
