#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"pit.unprotected",
     [](const FindingPhrases& s) {
       return say("{} {} deep with an upright side and no support", s.name(), s.measured(Dimension::length));
     },
     translatable("Slope, shore or shield it; nobody enters before.")},
    {"pit.slope",
     [](const FindingPhrases& s) {
       return say("{} is cut {} : 1, {} : 1 or flatter wanted for its soil type", s.name(),
                  s.measured(Dimension::ratio), s.limit(Dimension::ratio));
     },
     translatable("Slope it flatter, or shore or shield it.")},
    {"pit.slope-depth",
     [](const FindingPhrases& s) {
       return say("{} {} deep with sloped sides, the rules' slopes hold to {}", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Have the slopes calculated, or shore the pit.")},
    {"pit.slope-by-calculation",
     [](const FindingPhrases& s) { return say("sides without support need a calculation in {}", s.name()); },
     translatable("Shore or shield the pit, or have its slopes calculated by an engineer.")},
    {"pit.slope-conditions",
     [](const FindingPhrases& s) {
       return say("nobody has answered what sides without support hang on in {}", s.name());
     },
     translatable(
         "Have the competent person look and answer each, or enter for all of them that none was seen, with name and "
         "day; or shore the pit.")},
    {"pit.bench-narrow",
     [](const FindingPhrases& s) {
       return say("a berm of {} is {} wide, {} wanted", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Cut it wider, slope the side without a berm, or shore it.")},
    {"pit.trench-width",
     [](const FindingPhrases& s) {
       return say("{} is {} wide between its sides, {} wanted at its depth", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Make the floor wider.")},
    {"pit.working-space",
     [](const FindingPhrases& s) {
       return say("{} has {} behind the tool to work in, {} wanted", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Make the floor longer.")},
    {"pit.plant-heaviest",
     [](const FindingPhrases& s) {
       return say(
           "{} is heavier than the rules for a distance reach, {} from the edge of a pit; off {} it counts no more",
           s.name(), s.measured(Dimension::length), s.limit(Dimension::length));
     },
     translatable("Keep it away, or have the pit calculated for it.")},
    {"pit.soil-type",
     [](const FindingPhrases& s) {
       return say("the soil type entered for {} is better than the published order gives", s.name());
     },
     translatable(
         "Look at the reasons given for the type and enter what the ground really is; a name does not overrule it.")},
    {"pit.soil-unconfirmed",
     [](const FindingPhrases& s) { return say("nobody has put a name to the soil type entered for {}", s.name()); },
     translatable("The competent person looks, tests by hand and confirms it; until then it counts as type C.")},
    {"pit.bench",
     [](const FindingPhrases& s) {
       return say("a bench of {} is {} high, {} at most", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Cut lower benches, slope the side, or shore it.")},
    {"pit.bench-soil",
     [](const FindingPhrases& s) { return say("{} has benches, its soil type allows none", s.name()); },
     translatable("Slope that side, or shore or shield it.")},
    {"pit.upright-part",
     [](const FindingPhrases& s) {
       return say("the upright lower part of {} is {} high without support, {} at most", s.name(),
                  s.measured(Dimension::length), s.limit(Dimension::length));
     },
     translatable(
         "Slope it from the floor up, or stand a shield or shoring in front of it and enter how far it reaches.")},
    {"pit.support-low",
     [](const FindingPhrases& s) {
       return say("the support at {} reaches {} above the floor, {} wanted", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Use a higher shield or shoring: it stands above the upright part so that nothing rolls in.")},
    {"pit.support-foot",
     [](const FindingPhrases& s) {
       return say("{} is dug {} below the foot of its support, {} at most", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Let the shield or shoring follow down.")},
    {"pit.support-short",
     [](const FindingPhrases& s) {
       return say("the support in {} reaches {} above the floor, the side is {} high", s.name(),
                  s.measured(Dimension::length), s.limit(Dimension::length));
     },
     translatable("Use a higher shield, stack a second one, or slope what stands above it.")},
    {"pit.shoring",
     [](const FindingPhrases& s) {
       return say("no published example of shoring fits {} with its depth of {}", s.name(),
                  s.measured(Dimension::length));
     },
     translatable("Take the full tables, the maker's data, or an engineer's design.")},
    {"pit.ladder",
     [](const FindingPhrases& s) {
       return say("the ladder in {} is {} from the farthest place of the floor, {} at most", s.name(),
                  s.measured(Dimension::length), s.limit(Dimension::length));
     },
     translatable("Move it to the middle or set a second one.")},
    {"pit.air",
     [](const FindingPhrases& s) {
       return say("the air in {} may be bad and it is {} deep", s.name(), s.measured(Dimension::length));
     },
     translatable("Test it for oxygen, gas and fumes before anybody enters and while they work; ventilate.")},
    {"pit.spoil",
     [](const FindingPhrases& s) {
       return say("the spoil of {} lies {} from the edge, {} wanted", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Put it further back, or hold it by a board.")},
    {"pit.plant",
     [](const FindingPhrases& s) {
       return say("{} stands {} from the edge of a pit, {} wanted", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Move it back from the edge.")},
    {"pit.edge-load",
     [](const FindingPhrases& s) {
       return say("load beside a pit ({}): {} from the edge, nearer than its depth of {}", s.name(),
                  s.measured(Dimension::length), s.limit(Dimension::length));
     },
     translatable("Keep it away while the pit is open, slope flatter, or have the support sized for that load.")},
    {"pit.on-road", [](const FindingPhrases& s) { return say("the excavation of a pit is cut into {}", s.name()); },
     translatable(
         "Close the lane by permit, cover the pit when nobody works, and restore the surface; or move the pit.")},
    {"pit.on-track", [](const FindingPhrases& s) { return say("the excavation of a pit is cut into {}", s.name()); },
     translatable("Move the pit.")},
    {"pit.on-ditch", [](const FindingPhrases& s) { return say("the excavation of a pit is cut into {}", s.name()); },
     translatable("Move the pit, or lead the water past it.")},
    {"pit.on-paving", [](const FindingPhrases& s) { return say("the excavation of a pit opens {}", s.name()); },
     translatable("Lead people past it, and restore the surface.")},
    {"pit.on-structure",
     [](const FindingPhrases& s) { return say("the excavation of a pit is cut into {}", s.name()); },
     translatable("Move the pit, or shore it upright so that it stays clear.")},
    {"pit.boundary", [](const FindingPhrases& s) { return say("the excavation of a pit crosses {}", s.name()); },
     translatable("Get leave from the neighbour, move the pit, or shore it upright.")},
    {"pit.heap-on", [](const FindingPhrases& s) { return say("the spoil heap of a pit lies on {}", s.name()); },
     translatable("Heap it on another side, or cart it away.")},
    {"pit.tree",
     [](const FindingPhrases& s) {
       return say("the excavation of a pit comes within {} of {}, {} protected", s.measured(Dimension::length),
                  s.name(), s.limit(Dimension::length));
     },
     translatable("Move the pit, shore it upright, or dig by hand around the roots as the owner agrees.")},
    {"pit.footing-spread",
     [](const FindingPhrases& s) {
       return say("the excavation of a pit reaches {} into the ground that carries {}",
                  s.f.measured ? format(-*s.f.measured, Dimension::length, s.units) : std::string("–"), s.name());
     },
     translatable("Move the pit away; else have an engineer design its support.")},
    {"pit.track-spread",
     [](const FindingPhrases& s) {
       return say("the excavation of a pit reaches {} into the ground that carries {}",
                  s.f.measured ? format(-*s.f.measured, Dimension::length, s.units) : std::string("–"), s.name());
     },
     translatable("Move the pit away; else have the support designed for the load of the track and ask its owner.")},
    {"pit.base-heave",
     [](const FindingPhrases& s) {
       return say("safety against heave of the floor of {} {}, {} wanted", s.name(), s.measured(Dimension::ratio),
                  s.limit(Dimension::ratio));
     },
     translatable("Dig less deep, keep loads away from the edge, or have sheeting below the floor designed.")},
    {"pit.tool-off-floor",
     [](const FindingPhrases& s) { return say("the tool does not lie on the floor drawn for {}", s.name()); },
     translatable("Draw the floor so that it begins at the face and holds the tool's whole length there.")},
    {"pit.uplift",
     [](const FindingPhrases& s) {
       return say("the clay under the floor of {} weighs {} times the water pressure below it, {} wanted", s.name(),
                  s.measured(Dimension::ratio), s.limit(Dimension::ratio));
     },
     translatable("Lower the water in the layer below before digging, or dig less deep.")},
    {"pit.inflow",
     [](const FindingPhrases& s) {
       return say("water runs into {} through its soil, {} head over the floor", s.name(),
                  s.measured(Dimension::length));
     },
     translatable("Lower the water before digging; never dig into sand that boils.")},
    {"pit.utility",
     [](const FindingPhrases& s) {
       if (s.f.measured && s.f.limit)
         return say("{} may lie inside the excavation of a pit: {} away as drawn, ± {} for its place", s.name(),
                    s.measured(Dimension::length), s.limit(Dimension::length));
       return say("{} lies inside the excavation of a pit", s.name());
     },
     translatable("Move the pit; or expose the utility by hand first and support it.")},
    {"pit.utility-near",
     [](const FindingPhrases& s) {
       if (s.f.limit && s.f.limit_base && *s.f.limit - *s.f.limit_base > 0.005)
         return say("{} lies {} from the excavation of a pit, {} wanted ({} + {} for not knowing exactly)", s.name(),
                    s.measured(Dimension::length), s.limit(Dimension::length),
                    format(*s.f.limit_base, Dimension::length, s.units),
                    format(*s.f.limit - *s.f.limit_base, Dimension::length, s.units));
       return say("{} lies {} from the excavation of a pit, {} wanted", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Expose it by hand before the machine digs there; else move the pit or dig it less deep or wide.")},
    {"pit.floor-length",
     [](const FindingPhrases& s) {
       return say("floor of {} {} long where the tool lies, {} wanted", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Make the floor longer: the tool lies on it whole, and somebody works behind it.")},
    {"pit.floor-width",
     [](const FindingPhrases& s) {
       return say("floor of {} {} wide where the tool lies or arrives, {} wanted", s.name(),
                  s.measured(Dimension::length), s.limit(Dimension::length));
     },
     translatable(
         "Make the floor wider, or move it under the bore; for an exit pit a bore that spreads less does it too.")},
    {"pit.floor-high",
     [](const FindingPhrases& s) {
       return say("floor of {} {} higher than the tool can lie or arrive there", s.name(),
                  s.measured(Dimension::length));
     },
     translatable("Dig the floor deeper; or enter a lower cradle or a thinner slab.")},
    {"pit.floor-low",
     [](const FindingPhrases& s) {
       return say("floor of {} {} below the tool, {} at most", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Dig less deep, or enter the slab and the cradle that carry the tool.")},
    {"missing.pit-signs",
     [](const FindingPhrases& s) {
       return say(
           "{} has an upright or steep side without support, and nobody has said that its sides show no sign of "
           "distress",
           s.name());
     },
     translatable("Have the competent person look, and enter it; or shore that side.")},
    {"pit.bore-side-sloped",
     [](const FindingPhrases& s) {
       return say("bore side of {} is sloped: the roof is missing over the first {} of the bore", s.name(),
                  s.measured(Dimension::length));
     },
     translatable("Keep that side upright and shore it.")},
    {"pit.depth",
     [](const FindingPhrases& s) {
       return say("{} {} deep, {} at most without an engineer's design", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Have the pit designed by a registered engineer.")},
    {"pit.water",
     [](const FindingPhrases& s) {
       return say("floor of {} {} below the water level", s.name(), s.measured(Dimension::length));
     },
     translatable("Plan a sump and pumping, or a shallower pit.")},
};

}  // namespace

std::span<const FindingWords> words_of_pits() {
  return rows;
}

}  // namespace burrow
