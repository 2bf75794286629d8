#include "burrow/language/say.h"
#include "burrow/words/working_text.h"
#include "finding_words.h"

namespace burrow {

namespace {

std::string number(const FindingPhrases& s, const std::optional<double>& value) {
  return value ? working_number(*value, s.f.unit, s.units) : "–";
}

const FindingWords rows[] = {
    {"limit.loosened",
     [](const FindingPhrases& s) {
       return say("limit loosened: {} {} instead of {}", s.name(), number(s, s.f.measured), number(s, s.f.limit_base));
     },
     translatable("Make sure that the reason still holds; it is printed on sheet and card.")},
    {"limit.no-reason",
     [](const FindingPhrases& s) {
       return say("limit {} loosened to {} without a reason: {} stays in force", s.name(), number(s, s.f.measured),
                  number(s, s.f.limit_base));
     },
     translatable(
         "Give the reason beside the limit in the file, or the permit of the owner; else take the limit out.")},
    {"limit.impossible",
     [](const FindingPhrases& s) {
       return say("limit {} set to {}, which nobody may set: {} stays in force", s.name(), number(s, s.f.measured),
                  number(s, s.f.limit_base));
     },
     translatable(
         "No chance of harm above 50 %, no chance of arriving below it, and no gap below 0. Take the limit out.")},
    {"file.newer",
     [](const FindingPhrases& s) {
       return say("file version {:.0f}, this program knows {:.0f}: only what it knows is judged",
                  s.f.measured.value_or(0), s.f.limit.value_or(0));
     },
     translatable("Open it with the newer program.")},
    {"file.mute-void", translatable("an acceptance does not count: {name}"),
     translatable("Accept it again with reason and name if it may still stand; else accept it no longer.")},
};

}  // namespace

std::span<const FindingWords> words_of_limits() {
  return rows;
}

}  // namespace burrow
