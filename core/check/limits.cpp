#include "burrow/check/limits.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/base/phrase.h"
#include "burrow/crossing/statement.h"

namespace burrow {

namespace {

/// Chances of coming to harm may not pass one half, those of arriving must reach it; what the table itself has on the
/// other side (a bore on the day that is all but out of reach) is left to whoever sets it.
bool impossible(const LimitRow& row, double value) {
  if (row.id.starts_with("separation_")) return !(value >= 0);
  constexpr double even = 0.5;
  const auto beyond = [&](double chance) { return row.at_least ? !(chance >= even) : !(chance <= even); };
  if (!is_chance(row) || beyond(row.value)) return !std::isfinite(value);
  return beyond(value);
}

}  // namespace

bool is_chance(const LimitRow& row) {
  constexpr std::array chances{
      "contact_caution", "contact_stop",     "encroachment_caution", "encroachment_stop", "daylight_caution",
      "daylight_stop",   "cover_low_chance", "refusal_caution",      "refusal_stop",      "stuck_under_caution",
      "day_window",      "day_out_of_reach", "day_odd_rate_chance",  "exit_window_chance"};
  return std::find(chances.begin(), chances.end(), row.id) != chances.end();
}

TypedLimit judge_typed(const LimitRow& row, const LimitOverride& typed) {
  if (impossible(row, typed.value)) return TypedLimit::impossible;
  const bool looser = row.at_least ? typed.value < row.value : typed.value > row.value;
  if (!looser) return TypedLimit::counts;
  return says_something(typed.why) ? TypedLimit::loosened : TypedLimit::no_reason;
}

Limit limit_of(const Crossing& crossing, const Tables& tables, std::string_view id) {
  const LimitRow* row = find_limit(tables, id);
  BURROW_ENSURE(row != nullptr);
  Limit limit{row->value, row->at_least, row->source};
  const auto typed = crossing.limits.find(std::string(id));
  if (typed == crossing.limits.end()) return limit;
  if (const TypedLimit how = judge_typed(*row, typed->second);
      how == TypedLimit::counts || how == TypedLimit::loosened) {
    limit.value = typed->second.value;
    limit.source = {
        typed->second.why.empty() ? Phrase(translatable("set in this crossing")) : Phrase(typed->second.why),
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

namespace {

const Limit& gap_of_kind(const LimitsInForce& limits, const Tables& tables, UtilityKind kind, bool unexposed) {
  if (!unexposed) return limits.of("separation_exposed_m");
  const std::vector<std::string>& ids = row_of(tables, kind).separations;
  const Limit* largest = &limits.of(ids.front());
  for (const std::string& id : ids)
    if (limits.of(id).value > largest->value) largest = &limits.of(id);
  return *largest;
}

}  // namespace

ClearanceRules clearance_rules(const LimitsInForce& limits, const Tables& tables) {
  ClearanceRules rules{Length{limits.of("separation_exposed_m").value}};
  for (const UtilityKindRow& row : tables.utilities)
    rules.unexposed.at(static_cast<std::size_t>(row.kind)) = Length{gap_of_kind(limits, tables, row.kind, true).value};
  return rules;
}

Limit gap_limit(const LimitsInForce& limits, const Tables& tables, const Utility& utility, bool unexposed) {
  Limit limit = gap_of_kind(limits, tables, utility.kind, unexposed);
  const auto more = [&](const std::optional<Length>& own, const char* what) {
    if (!own || !(own->m > limit.value)) return;
    limit = {own->m, true, {what, SourceLabel::owners_setting}};
  };
  more(utility.required_clearance, translatable("clear gap entered for this utility"));
  more(utility.agreed.distance, translatable("clear gap agreed with its owner"));
  return limit;
}

double margin_of(double value, const Limit& limit) {
  constexpr double widest = 1e9, as_good_as_0 = 1e-12;
  const double scale = std::abs(limit.value) > as_good_as_0 ? std::abs(limit.value) : 1.0;
  const double margin = (limit.at_least ? value - limit.value : limit.value - value) / scale;
  return std::isnan(margin) ? -widest : std::clamp(margin, -widest, widest);
}

double bounded_margin(double margin) {
  return std::clamp(margin, -1.0, 1.0);
}

}  // namespace burrow
