#include "burrow/check/limits.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/base/say.h"

namespace burrow {

Limit limit_of(const Crossing& crossing, const Tables& tables, std::string_view id) {
  const LimitRow* row = find_limit(tables, id);
  BURROW_ENSURE(row != nullptr);
  Limit limit{row->value, row->at_least, row->source};
  if (const auto typed = crossing.limits.find(std::string(id)); typed != crossing.limits.end()) {
    limit.value = typed->second.value;
    limit.source = {typed->second.why.empty() ? said("set in this crossing") : typed->second.why,
                    SourceLabel::owners_setting};
  }
  return limit;
}

LimitsInForce::LimitsInForce(const Crossing& crossing, const Tables& tables) {
  all_.reserve(tables.limits.size());
  for (const LimitRow& row : tables.limits) all_.emplace_back(row.id, limit_of(crossing, tables, row.id));
  std::sort(all_.begin(), all_.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
}

const Limit& LimitsInForce::of(std::string_view id) const {
  const auto at = std::lower_bound(all_.begin(), all_.end(), id,
                                   [](const auto& known, std::string_view wanted) { return known.first < wanted; });
  BURROW_ENSURE(at != all_.end() && at->first == id);  // else the tables lack a limit
  return at->second;
}

double margin_of(double value, const Limit& limit) {
  const double scale = std::abs(limit.value) > 0 ? std::abs(limit.value) : 1.0;
  return (limit.at_least ? value - limit.value : limit.value - value) / scale;
}

double bounded_margin(double margin) {
  return std::clamp(margin, -1.0, 1.0);
}

}  // namespace burrow
