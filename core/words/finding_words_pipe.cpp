#include "burrow/base/decimal_mark.h"
#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

std::string times(const std::optional<double>& n) {
  return n ? fixed_text(*n, 2) : std::string("–");
}

std::string percent(const std::optional<double>& share) {
  return share ? fixed_text(*share * 100, 1) + " %" : std::string("–");
}

const FindingWords rows[] = {
    {"missing.pipe-diameter", translatable("diameter of the pipe not entered"),
     translatable("Enter its outside diameter, or select a size.")},
    {"missing.pipe-wall", translatable("wall of the pipe not known"),
     translatable("Enter the wall, or the ratio of diameter to wall.")},
    {"missing.pipe-material", translatable("material of the pipe not entered"), translatable("Select the material.")},
    {"pipe.no-law", translatable("strength of the pipe ({name}) is not judged"),
     translatable("Ask its maker for safe pull, least bend and what it bears from outside.")},
    {"pipe.beyond", translatable("{name} entered for the pipe lies beyond what its material's values tell"),
     translatable("Pull sooner or cooler, or ask the maker.")},
    {"pipe.service-taken", Dimension::temperature,
     translatable("warmest temperature in service not entered: the ring of the pipe is judged at {measured}"),
     translatable("Enter how warm the pipe gets in use, by what it carries and by the ground.")},
    {"pipe.hole",
     [](const FindingPhrases& s) {
       if (s.f.severity == Severity::stop)
         return say("the hole is {} times as wide as what is drawn in: it does not go in", times(s.f.measured));
       return say("the hole is {} times as wide as the widest thing drawn in, {} required", times(s.f.measured),
                  times(s.f.limit));
     },
     translatable("Use a larger tool, a smaller pipe, or a smaller pulling head or coupling.")},
    {"pipe.hole-wide",
     [](const FindingPhrases& s) {
       return say("the hole is {} times as wide as the widest thing drawn in, {} is usual at most", times(s.f.measured),
                  times(s.f.limit));
     },
     translatable("A smaller tool leaves less of a gap to settle; or fill the gap with grout.")},
    {"pipe.traffic-taken", translatable("traffic on {name} not entered: taken as the heaviest usual there"),
     translatable("Enter what runs on it.")},
    {"pipe.traffic-unknown",
     translatable("the word for the traffic on {name} is not known: taken as the heaviest usual there"),
     translatable("Select one of the known kinds of traffic.")},
    {"pipe.pull", Dimension::force, translatable("pull-in {measured} with the hole open, {limit} at most"),
     translatable("Shorten the bore, grease the hole, choose a thicker wall, or let the pull last less long.")},
    {"pipe.push", Dimension::force,
     translatable("push-in {measured} with the hole open, {limit} before the pipe buckles"),
     translatable("Pull it in instead, or use a stiffer pipe.")},
    {"pipe.pull-closed", Dimension::force,
     translatable("if the hole closes on the pipe, the pull is {measured}, {limit} at most"),
     translatable("Bring the pipe in at once, without a break; have it lying ready before the tool arrives.")},
    {"pipe.hose-unrated", translatable("the pipe is to be pulled by the air hose, which nobody has rated for it"),
     translatable(
         "A hose is no tension member unless its maker rates it: pull by a rope or a rod, or enter the maker's "
         "rating.")},
    {"pipe.hose", Dimension::force, translatable("pull on the air hose {measured}, its maker rates it for {limit}"),
     translatable("Pull by a rope or a rod.")},
    {"pipe.bend", Dimension::length, translatable("the path bends to a radius of {measured}, the pipe wants {limit}"),
     translatable("Use a more flexible pipe, or a line that bends less.")},
    {"pipe.deflection",
     [](const FindingPhrases& s) {
       return say("the pipe flattens by {} once the ground has closed on it, {} at most", percent(s.f.measured),
                  percent(s.f.limit));
     },
     translatable("Choose a thicker wall, or lay it deeper under traffic.")},
    {"pipe.deflection-bare",
     [](const FindingPhrases& s) {
       return say("the pipe flattens by {} while the hole stands open around it, {} at most", percent(s.f.measured),
                  percent(s.f.limit));
     },
     translatable("Choose a thicker wall, fill the gap with grout, or keep traffic off until the ground has closed.")},
    {"pipe.ring", Dimension::big_pressure, translatable("compression around the pipe {measured}, {limit} at most"),
     translatable("Choose a thicker wall.")},
    {"pipe.buckling-bare", Dimension::pressure,
     translatable("{measured} press on the pipe while the hole stands open, {limit} before it may buckle"),
     translatable("Choose a thicker wall, keep it full of water, or fill the gap with grout.")},
    {"pipe.buckling", Dimension::pressure, translatable("{measured} press on the pipe, {limit} before it may buckle"),
     translatable("Choose a thicker wall.")},
    {"pipe.pressure", Dimension::big_pressure,
     translatable("tension around the pipe by the pressure inside {measured}, {limit} at most"),
     translatable("Choose a thicker wall or a lower pressure.")},
    {"pipe.strain",
     [](const FindingPhrases& s) {
       return say("strain along the pipe {} as it follows the ground, {} at most", FindingPhrases::strain(s.f.measured),
                  FindingPhrases::strain(s.f.limit));
     },
     translatable("Use a closer-fitting tool, fill the gap with grout, or a more flexible pipe.")},
    {"pipe.floats",
     [](const FindingPhrases& s) {
       return say("the empty pipe floats in the wet hole: it weighs {} of the water it displaces",
                  percent(s.f.measured));
     },
     translatable("Fill it with water while it goes in, if it drags.")},
    {"pipe.near",
     [](const FindingPhrases& s) { return say("{}: {} of its limit used", s.name(), percent(s.f.measured)); },
     translatable("Within its limit, but near it.")},
};

}  // namespace

std::span<const FindingWords> words_of_pipe() {
  return rows;
}

}  // namespace burrow
