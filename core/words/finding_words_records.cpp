#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"surface.levels-rose", Dimension::small_length,
     translatable("{name} rose {measured} by the levels taken, {limit} at most"),
     translatable("Tell its owner at once and do what the permit says; take the levels again.")},
    {"surface.levels-sank", Dimension::small_length,
     translatable("{name} sank {measured} by the levels taken, {limit} at most"),
     translatable("Tell its owner at once and do what the permit says; look for a void and have it filled.")},
    {"surface.levels-above-estimate", Dimension::small_length,
     translatable("{name} rose {measured} by the levels taken, more than the {limit} that was thought possible"),
     translatable("The ground is not what was entered: look at it again before the next bore here.")},
    {"site.camera-before", translatable("no camera survey of the sewers and drains nearby is entered"),
     translatable(
         "Survey them by camera before and after: a house connection struck unseen may show only months later.")},
    {"site.camera-after", translatable("sewers and drains to be surveyed by camera again after the bore"),
     translatable("Enter what it showed: a house connection struck unseen may show only months later.")},
    {"site.camera-before-found", translatable("the camera found something in a sewer or drain before the bore"),
     translatable("Keep the film, tell the owner, and make sure that it is not in the way of the bore.")},
    {"site.camera-after-found", translatable("the camera found something in a sewer or drain after the bore"),
     translatable(
         "Shut it off, tell its owner and every house on it that gas may be near, and dig it out: never clear it by "
         "machine.")},
    {"record.struck", translatable("bore {name} struck something, and nobody has released the place"),
     translatable(
         "Nobody bores or digs here until the owner of what was struck has released it: enter who did, how and "
         "when.")},
    {"record.daylight",
     translatable("bore {name} came out of the ground on its way, and nobody has released the place"),
     translatable("Close off where it came up, look why, and enter who let the work go on.")},
    {"record.stuck", translatable("bore {name} is stuck in the ground, and nobody has released the place"),
     translatable("Agree how the tool is got out, and enter who let the work go on.")},
    {"record.lost", translatable("the tool of bore {name} is lost, and nobody knows where it lies"),
     translatable("Find it before anything else is bored here, and enter who let the work go on.")},
    {"missing.record-hole", translatable("what became of the hole of bore {name} is not entered"),
     translatable("Enter whether it is grouted, dug out, open, or still holds the tool.")},
    {"missing.record-arrival", translatable("bore {name} is said to have arrived, and its marks end half way"),
     translatable("Look whether it came out; confirm its end in the site log, or strike it through.")},
    {"record.hole-open", translatable("the hole of bore {name} was given up and is open"),
     translatable("Grout it: water and gas follow it, and the ground above sinks.")},
    {"record.tool-inside", translatable("the tool of bore {name} is still in the ground"),
     translatable("It is in the way of everything else that is bored or dug here.")},
    {"record.restart-near", Dimension::length,
     translatable("{measured} between the axes of this bore and of {name}, {limit} required"),
     translatable("Start in fresh ground further aside, or accept it with the reason why the tool will not follow the "
                  "old hole.")},
    {"record.layout-changed", translatable("the layout was changed since bore {name} was started"),
     translatable("The record is judged by what was bored; put the layout back, or lay out the next bore as an "
                  "alternative.")},
    {"day.back-out", translatable("the bore under way: back out"),
     translatable("Back out while the hole stands: see the site log.")},
    {"day.stop-until-exposed", translatable("the bore under way: stop until {name} is exposed"),
     translatable("Shut the air; expose it and enter what was seen: see the site log.")},
    {"day.leave-and-expose", translatable("the bore under way: leave the tool, expose {name}"),
     translatable("Shut the air, do not drive back, expose it by hand, call its owner: see the site log.")},
    {"day.get-out", translatable("the bore under way: everybody out"),
     translatable("Everybody out and upwind; take it as gas and live power; ring the emergency number.")},
};

}  // namespace

std::span<const FindingWords> words_of_records() {
  return rows;
}

}  // namespace burrow
