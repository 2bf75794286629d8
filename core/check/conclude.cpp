/// Mutes, the order of the findings, and the verdict.

#include <fmt/format.h>

#include <algorithm>
#include <compare>
#include <map>
#include <numeric>
#include <string_view>
#include <utility>
#include <vector>

#include "burrow/check/mute.h"
#include "burrow/check/with_findings.h"
#include "check_run.h"

namespace burrow {

namespace {

/// Whose utility it is about decides whether somebody may come to harm over it.
void mark_what_may_hurt(const Crossing& crossing, const Tables& tables, std::vector<Finding>& findings) {
  std::vector<std::string_view> harmful;
  for (const Utility& utility : crossing.site.utilities)
    if (row_of(tables, utility.kind).can_hurt) harmful.emplace_back(utility.id);
  std::sort(harmful.begin(), harmful.end());
  for (Finding& finding : findings)
    finding.can_hurt = std::binary_search(harmful.begin(), harmful.end(), std::string_view(finding.subject));
}

/// A mute that does not count is told, never passed over.
Finding note_of(const VoidMute& one) {
  Finding finding;
  finding.code = "file.mute-void";
  finding.subject = one.mute->subject;
  finding.name = phrase("{}: {}", one.mute->code, why_void(one.fault));
  finding.source = {"an acceptance wants reason, name and day, and holds for what it was given for",
                    SourceLabel::our_default};
  return finding;
}

int rank(const Finding& finding) {
  if (finding.severity == Severity::stop) return 0;
  if (finding.missing) return 1;
  if (finding.severity == Severity::caution) return counts_in_verdict(finding) ? 2 : 3;
  return 4;
}

/// What a finding is put in order by.
struct Standing {
  int rank = 0;
  double margin = 0;
  bool silent = false;
  auto operator<=>(const Standing&) const = default;
};

/// Where each finding stands. The clear gap speaks for its utility, as on its flag (a length is easier to picture than
/// a chance): it stands where the worst finding of its rank about that utility would.
std::vector<Standing> standings_of(const std::vector<Finding>& findings) {
  std::vector<Standing> standings;
  standings.reserve(findings.size());
  std::map<std::pair<int, std::string_view>, double> worst;  // of each rank and subject
  for (const Finding& f : findings) {
    standings.push_back({rank(f), f.margin.value_or(0), f.code != "utility.separation"});
    const auto [at, first] = worst.try_emplace({standings.back().rank, f.subject}, standings.back().margin);
    if (!first) at->second = std::min(at->second, standings.back().margin);
  }
  for (std::size_t i = 0; i < findings.size(); ++i)
    if (!standings[i].silent) standings[i].margin = worst.at({standings[i].rank, findings[i].subject});
  return standings;
}

/// Worst first.
void put_in_order(std::vector<Finding>& findings) {
  const std::vector<Standing> standings = standings_of(findings);
  std::vector<std::size_t> order(findings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return standings[a] < standings[b]; });
  // They are large: each moves once, round the ring of those that take one another's place.
  for (std::size_t start = 0; start < order.size(); ++start) {
    if (order[start] == start) continue;
    Finding first = std::move(findings[start]);
    std::size_t at = start;
    while (order[at] != start) {
      findings[at] = std::move(findings[order[at]]);
      at = std::exchange(order[at], at);
    }
    findings[at] = std::move(first);
    order[at] = at;
  }
}

}  // namespace

std::vector<VoidMute> give_verdict(const Crossing& crossing, const Tables& tables, Assessment& answer) {
  mark_what_may_hurt(crossing, tables, answer.findings);
  std::vector<VoidMute> voids = apply_mutes(crossing, tables.judged_on, answer.findings);
  const auto any = [&](auto holds) { return std::any_of(answer.findings.begin(), answer.findings.end(), holds); };
  if (any([](const Finding& f) { return f.severity == Severity::stop; }))
    answer.verdict = Verdict::stop;
  else if (any([](const Finding& f) { return f.missing; }))
    answer.verdict = Verdict::incomplete;
  else if (any(counts_in_verdict))
    answer.verdict = Verdict::caution;
  else
    answer.verdict = Verdict::within_limits;
  return voids;
}

void conclude(const Crossing& crossing, const Tables& tables, Assessment& answer) {
  for (const VoidMute& one : give_verdict(crossing, tables, answer)) answer.findings.push_back(note_of(one));
  put_in_order(answer.findings);
}

Assessment with_findings(const Crossing& crossing, const Tables& tables, Assessment assessment,
                         std::vector<Finding> more) {
  std::erase_if(assessment.findings, [](const Finding& f) { return f.code == "file.mute-void"; });  // told anew
  for (Finding& finding : more) assessment.findings.push_back(std::move(finding));
  for (Finding& finding : assessment.findings) finding.muted.reset();
  conclude(crossing, tables, assessment);
  return assessment;
}

}  // namespace burrow
