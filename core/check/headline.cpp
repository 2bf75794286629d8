#include "burrow/check/headline.h"

#include <fmt/format.h>

#include "burrow/check/mute.h"

namespace burrow {

std::string_view verdict_title(Verdict verdict) {
  switch (verdict) {
    case Verdict::stop:
      return "Stop";
    case Verdict::incomplete:
      return "Incomplete";
    case Verdict::caution:
      return "Caution";
    case Verdict::within_limits:
      break;
  }
  return "Within limits";
}

namespace {

/// What was muted is never passed over in silence; what may hurt people is named.
std::string muted_words(const Assessment& assessment, UnitSystem units) {
  int muted = 0;
  int harmful = 0;
  const Finding* worst = nullptr;
  for (const Finding& f : assessment.findings) {
    if (!f.muted || f.severity == Severity::note) continue;
    ++muted;
    // A stop or a gap in the data still counts, and is told with the others.
    if (f.severity == Severity::stop || f.missing || !can_hurt_people(f)) continue;
    ++harmful;
    if (!worst) worst = &f;
  }
  if (muted == 0) return {};
  std::string words = fmt::format(" {} muted", muted);
  if (worst) {
    words += muted == 1 ? " that may hurt people" : fmt::format(", {} of them may hurt people", harmful);
    words += fmt::format(": {} ({})", finding_text(*worst, units), worst->muted->reason);
  }
  return words + ".";
}

}  // namespace

std::string headline(const Assessment& assessment, UnitSystem units) {
  int stops = 0;
  int missing = 0;
  int cautions = 0;
  for (const Finding& f : assessment.findings) {
    if (f.severity == Severity::stop)
      ++stops;
    else if (f.missing)
      ++missing;
    else if (f.severity == Severity::caution && !f.muted)
      ++cautions;
  }
  const auto first = [&] { return finding_text(assessment.findings.front(), units); };
  const auto many = [](int n, std::string_view one, std::string_view more) {
    return fmt::format("{} {}", n, n == 1 ? one : more);
  };
  const std::string muted = muted_words(assessment, units);
  switch (assessment.verdict) {
    case Verdict::stop:
      return fmt::format("{}; first: {}.", many(stops, "limit is broken", "limits are broken"), first()) + muted;
    case Verdict::incomplete:
      return fmt::format("{}; first: {}.", many(missing, "thing is not known", "things are not known"), first()) +
             muted;
    case Verdict::caution:
      return fmt::format("{}; first: {}.", many(cautions, "caution", "cautions"), first()) + muted;
    case Verdict::within_limits:
      break;
  }
  return "All limits judged here are kept." + muted + " Locate, expose and protect as always.";
}

}  // namespace burrow
