#include "burrow/day/start_gate.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "burrow/crossing/day_record.h"
#include "burrow/crossing/display_name.h"
#include "burrow/crossing/find.h"
#include "burrow/crossing/statement.h"
#include "burrow/day/permit_lines.h"

namespace burrow {

namespace {

Date next_day(const Date& day) {
  for (const Date next : {Date{day.year, day.month, day.day + 1}, Date{day.year, day.month + 1, 1}})
    if (date_of(text_of(next))) return next;
  return {day.year + 1, 1, 1};
}

/// Seconds since midnight of "2025-05-03T08:12:00+02:00"; 0 where no time stands there.
double time_of_day_s(const std::string& started) {
  const auto number = [&](std::size_t at) {
    int value = 0;
    if (at + 2 <= started.size()) std::from_chars(started.data() + at, started.data() + at + 2, value);
    return value;
  };
  constexpr std::size_t hours = 11, minutes = 14;
  return number(hours) * 3600.0 + number(minutes) * 60.0;
}

constexpr double same_margin = 1e-3;

bool covers(const TakenOnFinding& taken, const TakenOnFinding& now) {
  if (taken.code != now.code || taken.subject != now.subject) return false;
  return !now.margin || (taken.margin && *now.margin >= *taken.margin - same_margin);
}

bool of_the_day(const Finding& finding) {
  return finding.code.starts_with("day.");
}

}  // namespace

std::vector<Date> days_of(const DayRecord& record, const std::optional<Date>& today) {
  const std::optional<Date> begun = date_of(record.started.value_or(""));
  if (!begun) return today ? std::vector<Date>{*today} : std::vector<Date>{};
  double last = time_of_day_s(*record.started);
  const double start = last;
  for (const Reading& reading : record.readings) last = std::max(last, start + reading.time.s);
  constexpr double day_s = 86400, longest_days = 400;
  Date end = *begun;
  for (double days = std::min(std::floor(last / day_s), longest_days); days >= 1; --days) end = next_day(end);
  std::vector<Date> all{*begun, end};
  if (today && !ended(record) && *today > end) all.push_back(*today);
  return all;
}

bool to_be_exposed(const Assessment& assessment, const UtilityAnswer& utility) {
  constexpr double beside_m = 1.0;
  if (utility.expose) return true;
  if (utility.separation_m && utility.required_m && *utility.separation_m > *utility.required_m + beside_m)
    return false;
  return std::any_of(assessment.findings.begin(), assessment.findings.end(), [&](const Finding& finding) {
    return finding.subject == utility.id &&
           (finding.code == "missing.utility-location-error" || finding.code == "missing.utility-diameter");
  });
}

StartGate start_gate(const Crossing& crossing, const Assessment& assessment, const std::vector<Date>& days) {
  StartGate gate;
  const UtilitySearch& search = crossing.site.utility_search;
  gate.ticket_holds = !days.empty() && search.done.value_or(false) && search.marks_visible.value_or(false) &&
                      std::all_of(days.begin(), days.end(), [&](const Date& day) { return in_force(search, day); });
  for (const UtilityAnswer& utility : assessment.utilities)
    if (to_be_exposed(assessment, utility)) {
      const Utility* drawn = find_by_id(crossing.site.utilities, utility.id);
      gate.to_expose.push_back(drawn ? display_name(*drawn) : Phrase(utility.id));
    }
  for (const Finding& finding : assessment.findings)
    if ((finding.severity == Severity::stop || finding.missing) && !of_the_day(finding))
      gate.to_take_on.push_back({finding.code, finding.subject, finding.margin, {}});
  const bool closed = assessment.verdict == Verdict::stop || assessment.verdict == Verdict::incomplete;
  const bool of_the_day_alone =
      std::any_of(assessment.findings.begin(), assessment.findings.end(), of_the_day) && gate.to_take_on.empty();
  if (closed && gate.to_take_on.empty() && !of_the_day_alone) gate.to_take_on.push_back({"verdict", "bore", {}, {}});
  const std::optional<Date> today = days.empty() ? std::nullopt : std::optional(days.back());
  gate.no_go = signed_no_go(crossing.permit, today);
  gate.permit_open = open_lines(permit_lines(crossing, assessment, today));
  if (!gate.ticket_holds || !gate.to_expose.empty() || gate.no_go || assessment.bore.points.size() < 2)
    gate.gate = Gate::record_only;
  else
    gate.gate = gate.to_take_on.empty() ? Gate::open : Gate::take_on;
  return gate;
}

bool taken_on(const std::optional<TakenOn>& by, const StartGate& gate) {
  if (gate.to_take_on.empty()) return true;
  if (!by || !says_something(by->by) || !says_something(by->why)) return false;
  return std::all_of(gate.to_take_on.begin(), gate.to_take_on.end(), [&](const TakenOnFinding& now) {
    return std::any_of(by->findings.begin(), by->findings.end(),
                       [&](const TakenOnFinding& taken) { return covers(taken, now); });
  });
}

}  // namespace burrow
