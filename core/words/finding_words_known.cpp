/// Words of what is not known, not proved or hardly possible.

#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"missing.utility-course", translatable("{name} ends near the bore and nobody has said why: it may go on into it"),
     translatable(
         "Declare what its end is (house connection, cap, pole, pit, chamber), or that only the record ends there; "
         "else find "
         "out where it goes.")},
    {"missing.exposure", translatable("{name} is said to be exposed, but no hole shows it where the bore passes"),
     translatable(
         "Enter the test hole within 0.5 m of where the bore passes: measured level, day, and who measured. Until "
         "then it "
         "counts as traced.")},
    {"missing.utility-tracer",
     translatable("{name} is plastic, or nobody entered its material: what its tracing followed is not entered"),
     translatable(
         "Enter its material, and for plastic tracer wire or sonde; without either its place counts as no better than "
         "records.")},
    {"missing.utility-moved", translatable("the line of {name} was moved on the drawing since it was located"),
     translatable(
         "Take the move back, or enter on which later day its place was located or confirmed; how, and how well.")},
    {"missing.utility-depth-error",
     translatable("the place of {name} is said to be known better than a tracing tells, without a reason"),
     translatable(
         "Select the locating preset that says so (one of a line laid bare counts only with a test hole where the bore "
         "passes), enter a test hole, or errors of 15 % of the depth and 50 mm across at least.")},
    {"missing.utility-agreed",
     translatable("a test hole contradicts the record of {name}, and nobody has decided which is right"),
     translatable(
         "Make sure that it is the same utility, correct hole or record, or agree to the hole with reason, name and "
         "day. Until "
         "then the worse of the two counts.")},
    {"missing.hole-utility", translatable("test hole {name} near the bore belongs to no utility"),
     translatable("Say which utility it found, or remove it.")},
    {"missing.background-line", translatable("nobody has said what the line {name} is, and the bore or a pit meets it"),
     translatable("Give it a meaning, or declare that it is not a service.")},
    {"missing.search-reference", translatable("the utility search has no reference of its ticket"),
     translatable("Enter the number of the ticket.")},
    {"missing.search-date",
     [](const FindingPhrases& s) {
       if (s.name().empty()) return std::string(translated("the utility search has no date"));
       return say("the date of the utility search, {}, is no day or has not come yet", s.name());
     },
     translatable("Enter the day of the search.")},
    {"missing.search-validity",
     [](const FindingPhrases& s) {
       if (s.name().empty())
         return std::string(translated("how long the ticket of the utility search holds is not entered"));
       return say("the ticket of the utility search does not hold today (valid to {})", s.name());
     },
     translatable(
         "Copy the first and last day from the ticket; where it has run out, have the line marked again before "
         "anybody digs.")},
    {"missing.search-marks", translatable("nobody has said that the locator's marks can still be seen"),
     translatable("Look on site; where they have gone, have the line marked again.")},
    {"missing.surface", translatable("nothing entered of what stands above the bore"),
     translatable("Enter road, track, ditch or building above, or declare that there is nothing.")},
    {"missing.permit", translatable("the permit of the owner of {name} is not entered"),
     translatable("Enter its number; without it nobody can show that he allowed it.")},
    {"missing.day", translatable("nobody has said for which day this is judged"),
     translatable("Give the day: tickets run out.")},
    {"file.unknown-key",
     [](const FindingPhrases& s) {
       return say("{} in the file is not known; {} may be meant. What stands there is not judged", s.name(),
                  translated_phrase(s.f.source.text));
     },
     translatable("Correct the key in the file, or enter in the window what stands there.")},
    {"utility.above-ground",
     [](const FindingPhrases& s) {
       return say("{} lies {} above the ground as entered", s.name(),
                  s.f.measured ? format(-*s.f.measured, Dimension::length, s.units) : std::string("–"));
     },
     translatable("Check whether a depth was typed as a level, or the other way round.")},
    {"utility.deep", Dimension::length, translatable("{name} lies {measured} deep as entered, {limit} is doubted"),
     translatable("Check whether a depth was typed as a level, or the other way round.")},
    {"utility.far-apart", Dimension::length,
     translatable("{name} lies {measured} above or below the bore, its neighbours do not"),
     translatable("Check its level and what it refers to.")},
    {"site.water-deep", Dimension::length, translatable("water level {measured} below the ground as entered"),
     translatable("Check whether a depth was typed as a level.")},
    {"site.water-above", Dimension::length, translatable("water level {measured} above the ground as entered"),
     translatable("Check whether a depth was typed as a level.")},
    {"bore.boundary-near", Dimension::chance,
     translatable("where another soil begins near the bore, the chance of {name} may be {measured}, {limit} at most"),
     translatable("Run the simulation: it follows each bore through both soils.")},
    {"bore.errors-none", translatable("next to nothing is entered: {name}"),
     translatable("Enter what can be held on site, or leave the default.")},
    {"bore.calibration-unproved",
     [](const FindingPhrases& s) {
       if (!s.f.measured || !s.f.limit)
         return std::string(translated("path model said to be calibrated, without its records"));
       return say("path model said to be calibrated from {:.0f} bores, records of {:.0f} are named",
                  s.f.limit.value_or(0), s.f.measured.value_or(0));
     },
     translatable("Take the constants over from the library of records; a number typed by hand calibrates nothing.")},
    {"surface.off-the-bore", translatable("{name} as entered is not met by the bore: its rules judge nothing"),
     translatable("Check its stations, or remove it.")},
};

}  // namespace

std::span<const FindingWords> words_of_known() {
  return rows;
}

}  // namespace burrow
