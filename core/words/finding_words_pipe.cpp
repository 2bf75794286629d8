#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

std::string times(const std::optional<double>& n) {
  return n ? fmt::format("{:.2f}", *n) : std::string("–");
}

std::string percent(const std::optional<double>& share) {
  return share ? fmt::format("{:.1f} %", *share * 100) : std::string("–");
}

const FindingWords rows[] = {
    {"missing.pipe-diameter",
     [](const FindingPhrases&) { return std::string(translated("diameter of the pipe not entered")); },
     translatable("Enter its outside diameter, or pick a size.")},
    {"missing.pipe-wall", [](const FindingPhrases&) { return std::string(translated("wall of the pipe not known")); },
     translatable("Enter the wall, or the ratio of diameter to wall.")},
    {"missing.pipe-material",
     [](const FindingPhrases&) { return std::string(translated("material of the pipe not entered")); },
     translatable("Pick the material.")},
    {"pipe.no-law", [](const FindingPhrases& s) { return say("strength of the pipe ({}) is not judged", s.name()); },
     translatable("Ask its maker for safe pull, least bend and what it bears from outside.")},
    {"pipe.beyond",
     [](const FindingPhrases& s) {
       return say("{} entered for the pipe lies beyond what its material's values tell", s.name());
     },
     translatable("Pull sooner or cooler, or ask the maker.")},
    {"pipe.service-taken",
     [](const FindingPhrases& s) {
       return say("warmest temperature in service not entered: the ring of the pipe is judged at {}",
                  s.measured(Dimension::temperature));
     },
     translatable("Enter how warm the pipe gets in use, by what it carries and by the ground.")},
    {"pipe.hole",
     [](const FindingPhrases& s) {
       if (s.f.severity == Severity::stop)
         return say("the hole is {} times as wide as what is drawn in: it does not go in", times(s.f.measured));
       return say("the hole is {} times as wide as the widest thing drawn in, {} wanted", times(s.f.measured),
                  times(s.f.limit));
     },
     translatable("Use a larger tool, a smaller pipe, or a smaller pulling head or coupling.")},
    {"pipe.hole-wide",
     [](const FindingPhrases& s) {
       return say("the hole is {} times as wide as the widest thing drawn in, {} is usual at most", times(s.f.measured),
                  times(s.f.limit));
     },
     translatable("A smaller tool leaves less of a gap to settle; or fill the gap with grout.")},
    {"pipe.traffic-taken",
     [](const FindingPhrases& s) {
       return say("traffic on {} not entered: taken as the heaviest usual there", s.name());
     },
     translatable("Enter what runs on it.")},
    {"pipe.traffic-unknown",
     [](const FindingPhrases& s) {
       return say("the word for the traffic on {} is not known: taken as the heaviest usual there", s.name());
     },
     translatable("Pick one of the known kinds of traffic.")},
    {"pipe.pull",
     [](const FindingPhrases& s) {
       return say("pull-in {} with the hole open, {} at most", s.measured(Dimension::force), s.limit(Dimension::force));
     },
     translatable("Shorten the bore, grease the hole, choose a thicker wall, or let the pull last less long.")},
    {"pipe.push",
     [](const FindingPhrases& s) {
       return say("push-in {} with the hole open, {} before the pipe buckles", s.measured(Dimension::force),
                  s.limit(Dimension::force));
     },
     translatable("Pull it in instead, or use a stiffer pipe.")},
    {"pipe.pull-closed",
     [](const FindingPhrases& s) {
       return say("if the hole closes on the pipe, the pull is {}, {} at most", s.measured(Dimension::force),
                  s.limit(Dimension::force));
     },
     translatable("Bring the pipe in at once, without a break; have it lying ready before the tool arrives.")},
    {"pipe.hose-unrated",
     [](const FindingPhrases&) {
       return std::string(translated("the pipe is to be pulled by the air hose, which nobody has rated for it"));
     },
     translatable(
         "A hose is no tension member unless its maker rates it: pull by a rope or a rod, or enter the maker's "
         "rating.")},
    {"pipe.hose",
     [](const FindingPhrases& s) {
       return say("pull on the air hose {}, its maker rates it for {}", s.measured(Dimension::force),
                  s.limit(Dimension::force));
     },
     translatable("Pull by a rope or a rod.")},
    {"pipe.bend",
     [](const FindingPhrases& s) {
       return say("the path bends to a radius of {}, the pipe wants {}", s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
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
    {"pipe.ring",
     [](const FindingPhrases& s) {
       return say("compression around the pipe {}, {} at most", s.measured(Dimension::big_pressure),
                  s.limit(Dimension::big_pressure));
     },
     translatable("Choose a thicker wall.")},
    {"pipe.buckling-bare",
     [](const FindingPhrases& s) {
       return say("{} press on the pipe while the hole stands open, {} before it may buckle",
                  s.measured(Dimension::pressure), s.limit(Dimension::pressure));
     },
     translatable("Choose a thicker wall, keep it full of water, or fill the gap with grout.")},
    {"pipe.buckling",
     [](const FindingPhrases& s) {
       return say("{} press on the pipe, {} before it may buckle", s.measured(Dimension::pressure),
                  s.limit(Dimension::pressure));
     },
     translatable("Choose a thicker wall.")},
    {"pipe.pressure",
     [](const FindingPhrases& s) {
       return say("tension around the pipe by the pressure inside {}, {} at most", s.measured(Dimension::big_pressure),
                  s.limit(Dimension::big_pressure));
     },
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
