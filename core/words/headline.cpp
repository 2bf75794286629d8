#include "burrow/words/headline.h"

#include <fmt/format.h>

#include "burrow/check/mute.h"
#include "burrow/language/say.h"
#include "burrow/words/working_text.h"

namespace burrow {

std::string_view verdict_title(Verdict verdict) {
  switch (verdict) {
    case Verdict::stop:
      return translated("Stop");
    case Verdict::incomplete:
      return translated("Incomplete");
    case Verdict::caution:
      return translated("Caution");
    case Verdict::within_limits:
      break;
  }
  return translated("Within limits");
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
  if (!worst) return say_count("{} accepted.", "{} accepted.", muted);
  const std::string text = finding_text(*worst, units);
  const std::string& why = worst->muted->reason;
  if (muted == 1) return say("1 accepted that may hurt people and counts all the same: {} ({}).", text, why);
  return say_count("{1} accepted, {0} of them may hurt people and counts all the same: {2} ({3}).",
                   "{1} accepted, {0} of them may hurt people and count all the same: {2} ({3}).", harmful, muted, text,
                   why);
}

/// Each with its number, the table's and the reason.
std::string loosened_words(const Assessment& assessment, UnitSystem units) {
  std::string all;
  for (const LoosenedLimit& l : assessment.loosened) {
    if (!all.empty()) all += "; ";
    all += say("{} {} instead of {} ({})", translated_phrase(l.name), limit_number(l.value, l.unit, units),
               limit_number(l.table_value, l.unit, units), translated_phrase(l.why));
  }
  return all.empty() ? all : say("Limits loosened: {}.", all);
}

std::string counted(const Assessment& assessment, int stops, int missing, int cautions, UnitSystem units) {
  const auto first = [&] { return finding_text(assessment.findings.front(), units); };
  switch (assessment.verdict) {
    case Verdict::stop:
      return say_count("{} limit is broken; first: {}.", "{} limits are broken; first: {}.", stops, first());
    case Verdict::incomplete:
      return say_count("{} thing is not known; first: {}.", "{} things are not known; first: {}.", missing, first());
    case Verdict::caution:
      return say_count("{} caution; first: {}.", "{} cautions; first: {}.", cautions, first());
    case Verdict::within_limits:
      break;
  }
  return no_permit();
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
  return sentences({counted(assessment, stops, missing, cautions, units), muted_words(assessment, units),
                    loosened_words(assessment, units)});
}

std::string no_permit() {
  return translated("Layout within limits: not a permit to bore.");
}

std::string eased_in_short(const Assessment& assessment) {
  int muted = 0;
  std::string harmful, loosened;
  for (const Finding& f : assessment.findings) {
    if (!f.muted || f.severity == Severity::note) continue;
    ++muted;
    if (can_hurt_people(f)) harmful += (harmful.empty() ? "" : ", ") + translated_phrase(f.name);
  }
  for (const LoosenedLimit& l : assessment.loosened)
    loosened += (loosened.empty() ? "" : ", ") + translated_phrase(l.name);
  std::string silenced;
  if (!harmful.empty())
    silenced = say_count("{} accepted, may hurt people: {}.", "{} accepted, may hurt people: {}.", muted, harmful);
  else if (muted > 0)
    silenced = say_count("{} accepted.", "{} accepted.", muted);
  return sentences({silenced, loosened.empty() ? std::string() : say("Limits loosened: {}.", loosened)});
}

}  // namespace burrow
