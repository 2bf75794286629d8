#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"pit.unprotected", Dimension::length, translatable("{name} {measured} deep with an upright side and no support"),
     translatable("Slope, shore or shield it; nobody enters before.")},
    {"pit.slope", Dimension::ratio,
     translatable("{name} is cut {measured} : 1, {limit} : 1 or flatter required for its soil type"),
     translatable("Slope it flatter, or shore or shield it.")},
    {"pit.slope-depth", Dimension::length,
     translatable("{name} {measured} deep with sloped sides, the rules' slopes hold to {limit}"),
     translatable("Have the slopes calculated, or shore the pit.")},
    {"pit.slope-by-calculation", translatable("sides without support need a calculation in {name}"),
     translatable("Shore or shield the pit, or have its slopes calculated by an engineer.")},
    {"pit.slope-conditions", translatable("nobody has answered what sides without support hang on in {name}"),
     translatable(
         "Have the competent person look and answer each, or enter for all of them that none was seen, with name and "
         "day; or shore the pit.")},
    {"pit.bench-narrow", Dimension::length, translatable("a berm of {name} is {measured} wide, {limit} required"),
     translatable("Cut it wider, slope the side without a berm, or shore it.")},
    {"pit.trench-width", Dimension::length,
     translatable("{name} is {measured} wide between its sides, {limit} required at its depth"),
     translatable("Make the floor wider.")},
    {"pit.working-space", Dimension::length,
     translatable("{name} has {measured} behind the tool to work in, {limit} required"),
     translatable("Make the floor longer.")},
    {"pit.plant-heaviest", Dimension::length,
     translatable("{name} is heavier than the rules for a distance reach, {measured} from the edge of a pit; off "
                  "{limit} it counts no more"),
     translatable("Keep it away, or have the pit calculated for it.")},
    {"pit.soil-type", translatable("the soil type entered for {name} is better than the published order gives"),
     translatable(
         "Look at the reasons given for the type and enter what the ground really is; a name does not overrule it.")},
    {"pit.soil-unconfirmed", translatable("nobody has put a name to the soil type entered for {name}"),
     translatable("The competent person looks, tests by hand and confirms it; until then it counts as type C.")},
    {"pit.bench", Dimension::length, translatable("a bench of {name} is {measured} high, {limit} at most"),
     translatable("Cut lower benches, slope the side, or shore it.")},
    {"pit.bench-soil", translatable("{name} has benches, its soil type allows none"),
     translatable("Slope that side, or shore or shield it.")},
    {"pit.upright-part", Dimension::length,
     translatable("the upright lower part of {name} is {measured} high without support, {limit} at most"),
     translatable(
         "Slope it from the floor up, or stand a shield or shoring in front of it and enter how far it reaches.")},
    {"pit.support-low", Dimension::length,
     translatable("the support at {name} reaches {measured} above the floor, {limit} required"),
     translatable("Use a higher shield or shoring: it stands above the upright part so that nothing rolls in.")},
    {"pit.support-foot", Dimension::length,
     translatable("{name} is dug {measured} below the foot of its support, {limit} at most"),
     translatable("Let the shield or shoring follow down.")},
    {"pit.support-short", Dimension::length,
     translatable("the support in {name} reaches {measured} above the floor, the side is {limit} high"),
     translatable("Use a higher shield, stack a second one, or slope what stands above it.")},
    {"pit.shoring", Dimension::length,
     translatable("no published example of shoring fits {name} with its depth of {measured}"),
     translatable("Take the full tables, the maker's data, or an engineer's design.")},
    {"pit.ladder", Dimension::length,
     translatable("the ladder in {name} is {measured} from the farthest place of the floor, {limit} at most"),
     translatable("Move it to the middle or set a second one.")},
    {"pit.air", Dimension::length, translatable("the air in {name} may be bad and it is {measured} deep"),
     translatable("Test it for oxygen, gas and fumes before anybody enters and while they work; ventilate.")},
    {"pit.spoil", Dimension::length,
     translatable("the spoil of {name} lies {measured} from the edge, {limit} required"),
     translatable("Put it further back, or hold it by a board.")},
    {"pit.plant", Dimension::length, translatable("{name} stands {measured} from the edge of a pit, {limit} required"),
     translatable("Move it back from the edge.")},
    {"pit.edge-load", Dimension::length,
     translatable("load beside a pit ({name}): {measured} from the edge, nearer than its depth of {limit}"),
     translatable("Keep it away while the pit is open, slope flatter, or have the support sized for that load.")},
    {"pit.on-road", translatable("the excavation of a pit is cut into {name}"),
     translatable(
         "Close the lane by permit, cover the pit when nobody works, and restore the surface; or move the pit.")},
    {"pit.on-track", translatable("the excavation of a pit is cut into {name}"), translatable("Move the pit.")},
    {"pit.on-ditch", translatable("the excavation of a pit is cut into {name}"),
     translatable("Move the pit, or lead the water past it.")},
    {"pit.on-paving", translatable("the excavation of a pit opens {name}"),
     translatable("Lead people past it, and restore the surface.")},
    {"pit.on-structure", translatable("the excavation of a pit is cut into {name}"),
     translatable("Move the pit, or shore it upright so that it stays clear.")},
    {"pit.boundary", translatable("the excavation of a pit crosses {name}"),
     translatable("Get leave from the neighbour, move the pit, or shore it upright.")},
    {"pit.heap-on", translatable("the spoil of a pit lies on {name}"),
     translatable("Heap it on another side, or cart it away.")},
    {"pit.tree", Dimension::length,
     translatable("the excavation of a pit comes within {measured} of {name}, {limit} protected"),
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
    {"pit.base-heave", Dimension::ratio,
     translatable("safety against heave of the floor of {name} {measured}, {limit} required"),
     translatable("Dig less deep, keep loads away from the edge, or have sheeting below the floor designed.")},
    {"pit.tool-off-floor", translatable("the tool does not lie on the floor drawn for {name}"),
     translatable("Draw the floor so that it begins at the face and holds the tool's whole length there.")},
    {"pit.uplift", Dimension::ratio,
     translatable(
         "the clay under the floor of {name} weighs {measured} times the water pressure below it, {limit} required"),
     translatable("Lower the water in the layer below before digging, or dig less deep.")},
    {"pit.inflow", Dimension::length,
     translatable("water runs into {name} through its soil, {measured} head over the floor"),
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
         return say("{} lies {} from the excavation of a pit, {} required ({} + {} location tolerance)", s.name(),
                    s.measured(Dimension::length), s.limit(Dimension::length),
                    format(*s.f.limit_base, Dimension::length, s.units),
                    format(*s.f.limit - *s.f.limit_base, Dimension::length, s.units));
       return say("{} lies {} from the excavation of a pit, {} required", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Expose it by hand before the machine digs there; else move the pit or dig it less deep or wide.")},
    {"pit.floor-length", Dimension::length,
     translatable("floor of {name} {measured} long where the tool lies, {limit} required"),
     translatable("Make the floor longer: the tool lies on it whole, and somebody works behind it.")},
    {"pit.floor-width", Dimension::length,
     translatable("floor of {name} {measured} wide where the tool lies or arrives, {limit} required"),
     translatable(
         "Make the floor wider, or move it under the bore; for an exit pit a bore that spreads less does it too.")},
    {"pit.floor-high", Dimension::length,
     translatable("floor of {name} {measured} higher than the tool can lie or arrive there"),
     translatable("Dig the floor deeper; or enter a lower cradle or a thinner slab.")},
    {"pit.floor-low", Dimension::length, translatable("floor of {name} {measured} below the tool, {limit} at most"),
     translatable("Dig less deep, or enter the slab and the cradle that carry the tool.")},
    {"missing.pit-signs",
     translatable("{name} has an upright or steep side without support, and nobody has said that its sides show no "
                  "sign of distress"),
     translatable("Have the competent person look, and enter it; or shore that side.")},
    {"pit.bore-side-sloped", Dimension::length,
     translatable("bore side of {name} is sloped: the roof is missing over the first {measured} of the bore"),
     translatable("Keep that side upright and shore it.")},
    {"pit.depth", Dimension::length,
     translatable("{name} {measured} deep, {limit} at most without an engineer's design"),
     translatable("Have the pit designed by a registered engineer.")},
    {"pit.water", Dimension::length, translatable("floor of {name} {measured} below the water level"),
     translatable("Plan a sump and pumping, or a shallower pit.")},
};

}  // namespace

std::span<const FindingWords> words_of_pits() {
  return rows;
}

}  // namespace burrow
