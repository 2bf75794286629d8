#include "burrow/check/headline.h"

#include <fmt/format.h>

#include "burrow/base/say.h"
#include "burrow/check/mute.h"

namespace burrow {

std::string_view verdict_title(Verdict verdict) {
  switch (verdict) {
    case Verdict::stop:
      return said("Stop");
    case Verdict::incomplete:
      return said("Incomplete");
    case Verdict::caution:
      return said("Caution");
    case Verdict::within_limits:
      break;
  }
  return said("Within limits");
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
  std::string words = say(" {} muted", muted);
  if (worst) {
    words += muted == 1 ? said(" that may hurt people") : say(", {} of them may hurt people", harmful);
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
      return say("{}; first: {}.", many(stops, said("limit is broken"), said("limits are broken")), first()) + muted;
    case Verdict::incomplete:
      return say("{}; first: {}.", many(missing, said("thing is not known"), said("things are not known")), first()) +
             muted;
    case Verdict::caution:
      return say("{}; first: {}.", many(cautions, said("caution"), said("cautions")), first()) + muted;
    case Verdict::within_limits:
      break;
  }
  return said("All limits judged here are kept.") + muted + said(" Locate, expose and protect as always.");
}

}  // namespace burrow
