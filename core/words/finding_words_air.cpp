#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"air.pressure-low",
     [](const FindingPhrases& s) {
       return say("{} of air at the tool, {} wanted", s.measured(Dimension::air_pressure),
                  s.limit(Dimension::air_pressure));
     },
     translatable(
         "See page Air for what to change, the most telling first: a wider or shorter hose, fewer couplings, more "
         "air.")},
    {"air.pressure-high",
     [](const FindingPhrases& s) {
       return say("{} of air at the tool, {} at most", s.measured(Dimension::air_pressure),
                  s.limit(Dimension::air_pressure));
     },
     translatable("Turn the air down, unless the maker's plate allows more.")},
    {"air.standing",
     [](const FindingPhrases& s) {
       return say("{} of air stands at the tool when it stalls, {} at most", s.measured(Dimension::air_pressure),
                  s.limit(Dimension::air_pressure));
     },
     translatable("Set the compressor lower, or enter and set a regulator behind it; more only by the maker's plate.")},
    {"air.rating",
     [](const FindingPhrases& s) {
       return say("{} is rated for {} of air, {} stands in it when the tool stalls", s.name(),
                  s.measured(Dimension::air_pressure), s.limit(Dimension::air_pressure));
     },
     translatable("Change the part for one that is rated for it, or set the compressor or its regulator lower.")},
    {"air.rating-unknown",
     [](const FindingPhrases& s) {
       return say("rating of {} not entered: {} of air stands in it when the tool stalls", s.name(),
                  s.measured(Dimension::air_pressure));
     },
     translatable("Read the working pressure off each hose and coupling and enter it on page Air.")},
    {"air.loss",
     [](const FindingPhrases& s) {
       return say("the air line takes {}, {} at most is usual", s.measured(Dimension::air_pressure),
                  s.limit(Dimension::air_pressure));
     },
     translatable("A wider or shorter hose, or fewer couplings, would give it back.")},
    {"air.compressor-small",
     [](const FindingPhrases& s) {
       return say("the compressor gives {} of free air, the tool would take {}", s.measured(Dimension::flow),
                  s.limit(Dimension::flow));
     },
     translatable("Its pressure falls until both agree: a larger compressor, or a smaller tool.")},
    {"air.choked",
     [](const FindingPhrases& s) {
       return say("the air line is choked in its {}: no more air passes, however high the pressure", s.name());
     },
     translatable("Use a wider hose and fittings of full bore; the pressure computed behind it is a rough one.")},
    {"air.icing",
     [](const FindingPhrases& s) {
       return say("wet air at {} is likely to freeze in the exhaust, {} or warmer is safer",
                  s.measured(Dimension::temperature), s.limit(Dimension::temperature));
     },
     translatable("Put a water separator in the line, drain it, and use oil made for cold air.")},
    {"air.not-entered",
     [](const FindingPhrases& s) { return say("pressure at the tool is not judged: {} not entered", s.name()); },
     translatable("Enter the compressor and the parts of the line on page Air.")},
    {"air.outside-method",
     [](const FindingPhrases& s) { return say("the air line is not judged: its {} is outside the method", s.name()); },
     translatable("Check what is entered on page Air.")},
    {"air.mark-spacing",
     [](const FindingPhrases& s) {
       return say("hose marks every {} cannot be told apart, {} is taken", s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Enter a wider spacing.")},
};

}  // namespace

std::span<const FindingWords> words_of_air() {
  return rows;
}

}  // namespace burrow
