#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"pit.unprotected",
     [](const Say& s) {
       return fmt::format("{} {} deep with an upright side and no support", s.f.name, s.measured(Dimension::length));
     },
     "Slope, shore or shield it; nobody enters before."},
    {"pit.slope",
     [](const Say& s) {
       return fmt::format("{} is cut {} : 1, {} : 1 or flatter wanted for its soil type", s.f.name,
                          s.measured(Dimension::ratio), s.limit(Dimension::ratio));
     },
     "Slope it flatter, or shore or shield it."},
    {"pit.slope-depth",
     [](const Say& s) {
       return fmt::format("{} {} deep with sloped sides, the rules' slopes hold to {}", s.f.name,
                          s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Have the slopes calculated, or shore the pit."},
    {"pit.slope-by-calculation",
     [](const Say& s) {
       return fmt::format("the slopes of {} need a calculation: seepage, dipping layers or vibration", s.f.name);
     },
     "Have them calculated, or shore the pit."},
    {"pit.soil-type",
     [](const Say& s) {
       return fmt::format("the soil type entered for {} is better than the published order gives", s.f.name);
     },
     "Look at the reasons given for the type; the competent person decides on site and enters the name."},
    {"pit.soil-unconfirmed",
     [](const Say& s) { return fmt::format("nobody has put a name to the soil type entered for {}", s.f.name); },
     "The competent person looks, tests by hand and confirms it; until then take type C."},
    {"pit.bench",
     [](const Say& s) {
       return fmt::format("a bench of {} is {} high, {} at most", s.f.name, s.measured(Dimension::length),
                          s.limit(Dimension::length));
     },
     "Cut lower benches, slope the side, or shore it."},
    {"pit.bench-soil", [](const Say& s) { return fmt::format("{} has benches, its soil type allows none", s.f.name); },
     "Slope that side, or shore or shield it."},
    {"pit.upright-part",
     [](const Say& s) {
       return fmt::format("the upright lower part of {} is {} high without support, {} at most", s.f.name,
                          s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Slope it from the floor up, or stand a shield or shoring in front of it and enter how far it reaches."},
    {"pit.support-low",
     [](const Say& s) {
       return fmt::format("the support at {} reaches {} above the floor, {} wanted", s.f.name,
                          s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Use a higher shield or shoring: it stands above the upright part so that nothing rolls in."},
    {"pit.utility", [](const Say& s) { return fmt::format("{} lies inside the excavation of a pit", s.f.name); },
     "Move the pit; or expose the utility by hand first and support it."},
    {"missing.pit-signs",
     [](const Say& s) {
       return fmt::format(
           "{} has an upright or steep side without support, and nobody has said that its sides show no sign of "
           "distress",
           s.f.name);
     },
     "Have the competent person look, and enter it; or shore that side."},
    {"pit.bore-side-sloped",
     [](const Say& s) {
       return fmt::format("bore side of {} is sloped: the roof is missing over the first {} of the bore", s.f.name,
                          s.measured(Dimension::length));
     },
     "Keep that side upright and shore it."},
    {"pit.depth",
     [](const Say& s) {
       return fmt::format("{} {} deep, {} at most without an engineer's design", s.f.name,
                          s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Have the pit designed by a registered engineer."},
    {"pit.water",
     [](const Say& s) {
       return fmt::format("floor of {} {} below the water level", s.f.name, s.measured(Dimension::length));
     },
     "Plan a sump and pumping, or a shallower pit."},
};

}  // namespace

std::span<const FindingWords> words_of_pits() {
  return rows;
}

}  // namespace burrow
