/// Mutes, the order of the findings, and the verdict.

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>
#include <vector>

#include "burrow/check/with_findings.h"
#include "judge.h"

namespace burrow {

namespace {

/// A mute lapses when what it was given for has got worse by more than the last digit shown, or can no longer be told.
bool worse_than_muted(const Finding& finding, const Mute& mute) {
  if (!mute.measured) return false;
  if (!finding.measured) return true;
  const double slack = 0.005 * std::max(std::abs(*mute.measured), finding.limit ? std::abs(*finding.limit) : 0.0);
  return finding.at_least ? *finding.measured < *mute.measured - slack : *finding.measured > *mute.measured + slack;
}

int rank(const Finding& finding) {
  if (finding.severity == Severity::stop) return 0;
  if (finding.missing) return 1;
  if (finding.severity == Severity::caution) return finding.muted ? 3 : 2;
  return 4;
}

/// Where a finding stands among those of its rank. The clear gap speaks for its utility, as on its flag (a length is
/// easier to picture than a chance): it stands where the worst finding about that utility would.
std::vector<std::pair<double, bool>> places_of(const std::vector<Finding>& findings) {
  std::vector<std::pair<double, bool>> places;
  for (const Finding& f : findings) {
    const bool speaks = f.code == "utility.separation";
    double margin = f.margin.value_or(0);
    if (speaks)
      for (const Finding& other : findings)
        if (other.subject == f.subject && rank(other) == rank(f)) margin = std::min(margin, other.margin.value_or(0));
    places.emplace_back(margin, !speaks);
  }
  return places;
}

/// Worst first.
std::vector<Finding> in_order(std::vector<Finding> findings) {
  const auto places = places_of(findings);
  std::vector<std::size_t> order(findings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const int first = rank(findings[a]), second = rank(findings[b]);
    return first != second ? first < second : places[a] < places[b];
  });
  std::vector<Finding> sorted;
  sorted.reserve(findings.size());
  for (const std::size_t i : order) sorted.push_back(std::move(findings[i]));
  return sorted;
}

}  // namespace

void give_verdict(const Crossing& crossing, Assessment& answer) {
  for (Finding& finding : answer.findings)
    for (const Mute& mute : crossing.muted)
      if (mute.code == finding.code && mute.subject == finding.subject && !worse_than_muted(finding, mute))
        finding.muted = Muted{mute.reason, mute.by, mute.date};

  const auto any = [&](auto holds) { return std::any_of(answer.findings.begin(), answer.findings.end(), holds); };
  if (any([](const Finding& f) { return f.severity == Severity::stop; }))
    answer.verdict = Verdict::stop;
  else if (any([](const Finding& f) { return f.missing; }))
    answer.verdict = Verdict::incomplete;
  else if (any([](const Finding& f) { return f.severity == Severity::caution && !f.muted; }))
    answer.verdict = Verdict::caution;
  else
    answer.verdict = Verdict::within_limits;
}

void conclude(const Crossing& crossing, Assessment& answer) {
  give_verdict(crossing, answer);
  answer.findings = in_order(std::move(answer.findings));
}

Assessment with_findings(const Crossing& crossing, Assessment assessment, std::vector<Finding> more) {
  for (Finding& finding : more) assessment.findings.push_back(std::move(finding));
  conclude(crossing, assessment);
  return assessment;
}

}  // namespace burrow
