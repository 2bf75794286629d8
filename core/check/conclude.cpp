/// Mutes, the order of the findings, and the verdict.

#include <algorithm>
#include <cmath>

#include "judge.h"

namespace burrow {

namespace {

/// A mute lapses when what it was given for has got worse by more than the last digit shown.
bool worse_than_muted(const Finding& finding, const Mute& mute) {
  if (!mute.measured || !finding.measured) return false;
  const double slack = 0.005 * std::max(std::abs(*mute.measured), finding.limit ? std::abs(*finding.limit) : 0.0);
  return finding.at_least ? *finding.measured < *mute.measured - slack : *finding.measured > *mute.measured + slack;
}

int rank(const Finding& finding) {
  if (finding.severity == Severity::stop) return 0;
  if (finding.missing) return 1;
  if (finding.severity == Severity::caution) return finding.muted ? 3 : 2;
  return 4;
}

}  // namespace

void conclude(const Crossing& crossing, Assessment& answer) {
  for (Finding& finding : answer.findings)
    for (const Mute& mute : crossing.muted)
      if (mute.code == finding.code && mute.subject == finding.subject && !worse_than_muted(finding, mute))
        finding.muted = Muted{mute.reason, mute.by, mute.date};

  std::stable_sort(answer.findings.begin(), answer.findings.end(), [](const Finding& a, const Finding& b) {
    if (rank(a) != rank(b)) return rank(a) < rank(b);
    return a.margin.value_or(0) < b.margin.value_or(0);
  });

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

}  // namespace burrow
