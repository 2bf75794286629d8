#include "burrow/check/headline.h"

#include <fmt/format.h>

#include "burrow/base/say.h"
#include "burrow/check/mute.h"
#include "burrow/check/working_text.h"

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

/// What was muted is never passed over in silence; what may hurt people is named, and counts.
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
    words += muted == 1 ? said(" that may hurt people and counts all the same")
                        : say(", {} of them may hurt people and count all the same", harmful);
    words += fmt::format(": {} ({})", finding_text(*worst, units), worst->muted->reason);
  }
  return words + ".";
}

/// Each with its number, the table's and the reason.
std::string loosened_words(const Assessment& assessment, UnitSystem units) {
  std::string words;
  for (const LoosenedLimit& l : assessment.loosened) {
    words += words.empty() ? std::string(said(" Limits loosened: ")) : "; ";
    words += say("{} {} instead of {} ({})", said_phrase(l.name), limit_number(l.value, l.unit, units),
                 limit_number(l.table_value, l.unit, units), said_phrase(l.why));
  }
  return words.empty() ? words : words + ".";
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
    else if (counts_in_verdict(f))
      ++cautions;
  }
  const auto first = [&] { return finding_text(assessment.findings.front(), units); };
  const auto many = [](int n, std::string_view one, std::string_view more) {
    return fmt::format("{} {}", n, n == 1 ? one : more);
  };
  const std::string eased = muted_words(assessment, units) + loosened_words(assessment, units);
  switch (assessment.verdict) {
    case Verdict::stop:
      return say("{}; first: {}.", many(stops, said("limit is broken"), said("limits are broken")), first()) + eased;
    case Verdict::incomplete:
      return say("{}; first: {}.", many(missing, said("thing is not known"), said("things are not known")), first()) +
             eased;
    case Verdict::caution:
      return say("{}; first: {}.", many(cautions, said("caution"), said("cautions")), first()) + eased;
    case Verdict::within_limits:
      break;
  }
  return no_permit() + eased;
}

std::string no_permit() {
  return said("Layout within limits: not a permit to bore.");
}

std::string eased_in_short(const Assessment& assessment) {
  int muted = 0;
  std::string harmful, loosened;
  for (const Finding& f : assessment.findings) {
    if (!f.muted || f.severity == Severity::note) continue;
    ++muted;
    if (can_hurt_people(f)) harmful += (harmful.empty() ? "" : ", ") + said_phrase(f.name);
  }
  for (const LoosenedLimit& l : assessment.loosened) loosened += (loosened.empty() ? "" : ", ") + said_phrase(l.name);
  std::string words;
  if (muted > 0) words += say("{} muted", muted);
  if (!harmful.empty()) words += say(", may hurt people: {}", harmful);
  if (!loosened.empty()) {
    if (!words.empty()) words += ". ";
    words += say("Limits loosened: {}", loosened);
  }
  return words.empty() ? words : words + ".";
}

}  // namespace burrow
