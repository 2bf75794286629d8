#include "burrow/check/assessment.h"
#include "burrow/check/headline.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"utility.separation",
     [](const Say& s) {
       std::string wanted = s.limit(Dimension::length);
       if (s.f.limit && s.f.limit_base && *s.f.limit - *s.f.limit_base > 0.005)
         wanted += fmt::format(" wanted ({} + {} for not knowing exactly)",
                               format(*s.f.limit_base, Dimension::length, s.units),
                               format(*s.f.limit - *s.f.limit_base, Dimension::length, s.units));
       else
         wanted += " wanted";
       if (s.f.measured && *s.f.measured < 0)
         return fmt::format("runs into {} by {}, {}", s.f.name, format(-*s.f.measured, Dimension::length, s.units),
                            wanted);
       return fmt::format("{} clear of {}, {}", s.measured(Dimension::length), s.f.name, wanted);
     },
     "Move the bore away: another launch level, grade or station. Then expose the utility before the tool passes."},
    {"utility.contact",
     [](const Say& s) {
       return fmt::format("{} chance of touching {}, {} at most", s.measured(Dimension::chance), s.f.name,
                          s.limit(Dimension::chance));
     },
     "Pass further off, or expose the utility where the bore passes and enter what was measured."},
    {"utility.encroachment",
     [](const Say& s) {
       return fmt::format("{} chance of passing closer than {} to {}, {} at most", s.measured(Dimension::chance),
                          s.f.limit_base ? format(*s.f.limit_base, Dimension::length, s.units) : std::string("wanted"),
                          s.f.name, s.limit(Dimension::chance));
     },
     "Pass further off, or expose the utility where the bore passes and enter what was measured."},
    {"utility.expose",
     [](const Say& s) { return fmt::format("{} lies within the band and nobody has exposed it", s.f.name); },
     "Expose it before the tool passes."},
    {"utility.hole-without-level",
     [](const Say& s) { return fmt::format("a test hole at {} is not used: no level was measured in it", s.f.name); },
     "Measure the level in the hole and enter it, or remove the hole."},
    {"utility.hole-without-diameter",
     [](const Say& s) {
       return fmt::format(
           "a test hole at {} is not used: its level is not that of the centre, and no diameter is entered", s.f.name);
     },
     "Enter the outside diameter, or the level of the centre."},
    {"utility.hole-without-error",
     [](const Say& s) {
       return fmt::format("a test hole at {} is not used: how well the utility was located is not entered", s.f.name);
     },
     "Enter the standard deviations of its record, or pick how it was located."},
    {"utility.hole-off-record",
     [](const Say& s) {
       return fmt::format("a test hole found {} {} from its record, up to {} is to be expected", s.f.name,
                          s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Make sure that it is the same utility; correct its line or how well it was located."},
    {"utility.holes-disagree",
     [](const Say& s) {
       return fmt::format("two test holes at {} differ by {}, up to {} is to be expected", s.f.name,
                          s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Make sure that both found the same utility; measure again, or dig between them."},
    {"site.unknown-service",
     [](const Say& s) {
       return fmt::format("chance of meeting a service that nobody drew: {}", s.measured(Dimension::chance));
     },
     "Have the line swept again, and survey sewers by camera before and after."},
    {"utility.movement",
     [](const Say& s) {
       return fmt::format("the ground at {} moves {}, {} at most", s.f.name, s.measured(Dimension::small_length),
                          s.limit(Dimension::small_length));
     },
     "Pass further off, use a smaller tool, or expose the utility and relieve it while the tool passes."},
    {"utility.strain",
     [](const Say& s) {
       return fmt::format("{} strains by up to {} if it follows the ground, {} at most", s.f.name,
                          Say::strain(s.f.measured), Say::strain(s.f.limit));
     },
     "Pass further off or use a smaller tool; else expose and relieve it, and ask its owner."},
    {"utility.wall-unknown",
     [](const Say& s) {
       return fmt::format(
           "material not known of {}: strain by up to {} if it follows the ground, a brittle pipe bears {}", s.f.name,
           Say::strain(s.f.measured), Say::strain(s.f.limit));
     },
     "Enter its material; cast iron, clay or cement pipes may break."},
    {"utility.vibration",
     [](const Say& s) {
       return fmt::format("blows shake {} with up to {}, {} at most; by forms made for heavier blows", s.f.name,
                          s.speed(s.f.measured), s.speed(s.f.limit));
     },
     "Pass further off, or lower the pressure while the tool passes."},
    {"utility.plastic-zone",
     [](const Say& s) {
       return fmt::format("the ground yields up to {} from the bore, {} is only {} away", s.measured(Dimension::length),
                          s.f.name, s.limit(Dimension::length));
     },
     "The ground pushes less than computed there; nothing to do for this alone."},
    {"bore.plastic-zone",
     [](const Say& s) {
       return fmt::format(
           "the ground yields up to {} from the bore, the surface is only {} away: resistance is at "
           "most that computed",
           s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Nothing to do for this alone: the roof limit and the high estimate of heave count here."},
    {"building.vibration",
     [](const Say& s) {
       return fmt::format("blows shake {} with up to {}, {} at most; by forms made for heavier blows", s.f.name,
                          s.speed(s.f.measured), s.speed(s.f.limit));
     },
     "Keep further off, lower the pressure nearby, or measure the vibration; record the state of the building before."},
    {"footing.influence",
     [](const Say& s) {
       if (s.f.measured && *s.f.measured < 0)
         return fmt::format("the bore runs {} inside the ground that carries {}",
                            format(-*s.f.measured, Dimension::length, s.units), s.f.name);
       return fmt::format("the bore passes {} from the ground that carries {}, {} wanted",
                          s.measured(Dimension::length), s.f.name, s.limit(Dimension::length));
     },
     "Keep further off or shallower; else have an engineer judge the footing."},
    {"bore.cover",
     [](const Say& s) {
       return fmt::format("cover {}, {} wanted", s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Launch deeper or grade downward."},
    {"bore.cover-low",
     [](const Say& s) {
       return fmt::format("cover may fall to {}, {} wanted", s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Launch deeper, or set level and sight more closely."},
    {"bore.neutral-cover",
     [](const Say& s) {
       return fmt::format("cover {} is less than the neutral cover {}: the tool tends to climb",
                          s.measured(Dimension::length), s.limit(Dimension::length));
     },
     "Launch deeper, shorten the bore, or watch the climb from the first marks."},
    {"surface.cover",
     [](const Say& s) {
       return fmt::format("cover under {} {}, its owner wants {}", s.f.name, s.measured(Dimension::length),
                          s.limit(Dimension::length));
     },
     "Launch deeper or grade downward."},
    {"surface.cover-low",
     [](const Say& s) {
       return fmt::format("cover under {} may fall to {}, its owner wants {}", s.f.name, s.measured(Dimension::length),
                          s.limit(Dimension::length));
     },
     "Launch deeper, or set level and sight more closely."},
    {"surface.heave",
     [](const Say& s) {
       return fmt::format("{} lifts {}, {} at most", s.f.name, s.measured(Dimension::small_length),
                          s.limit(Dimension::small_length));
     },
     "Launch deeper or use a smaller tool."},
    {"surface.heave-high",
     [](const Say& s) {
       return fmt::format("{} may lift {}, {} at most", s.f.name, s.measured(Dimension::small_length),
                          s.limit(Dimension::small_length));
     },
     "Launch deeper, use a smaller tool, or watch the levels while it passes."},
    {"surface.settlement",
     [](const Say& s) {
       return fmt::format("{} may sink {} later, {} at most", s.f.name, s.measured(Dimension::small_length),
                          s.limit(Dimension::small_length));
     },
     "Fill the gap around the pipe with grout, use a closer-fitting tool, or launch deeper."},
    {"surface.angle",
     [](const Say& s) {
       return fmt::format("the bore crosses {} at {}, its owner wants {} or more", s.f.name,
                          s.measured(Dimension::angle), s.limit(Dimension::angle));
     },
     "Cross it more squarely."},
    {"surface.pit-setback",
     [](const Say& s) {
       if (s.f.measured && *s.f.measured < 0)
         return fmt::format("a pit stands inside {}, its owner wants it {} away", s.f.name, s.limit(Dimension::length));
       return fmt::format("a pit stands {} from {}, its owner wants {}", s.measured(Dimension::length), s.f.name,
                          s.limit(Dimension::length));
     },
     "Move the pit further away."},
    {"surface.driven",
     [](const Say& s) {
       return fmt::format("hole {} wide under {}, its owner allows {} without taking soil out",
                          s.measured(Dimension::small_length), s.f.name, s.limit(Dimension::small_length));
     },
     "Use a smaller tool or another method."},
    {"surface.permission-refused",
     [](const Say& s) { return fmt::format("the owner of {} refuses unsteered work under it", s.f.name); },
     "Use another method or another place."},
    {"bore.length",
     [](const Say& s) {
       return fmt::format("bore {} long, {} at most for this tool", s.measured(Dimension::length),
                          s.limit(Dimension::length));
     },
     "Move the pits closer, or dig a pit in between."},
    {"bore.daylight", [](const Say&) { return std::string("the tool comes out of the ground before the exit pit"); },
     "Launch deeper or grade downward."},
    {"bore.no-arrival", [](const Say&) { return std::string("the predicted path does not reach the exit face"); },
     "Check grade, heading and soil; shorten the bore."},
    {"bore.exit-window",
     [](const Say& s) {
       return fmt::format("chance to arrive in the exit pit {}, {} wanted", s.measured(Dimension::chance),
                          s.limit(Dimension::chance));
     },
     "Shorten the bore, set level and sight more closely, or make the exit pit wider and deeper."},
    {"bore.set",
     [](const Say& s) {
       return fmt::format("the tool would stop here: {} at each blow, {} needed", s.measured(Dimension::small_length),
                          s.limit(Dimension::small_length));
     },
     "Use a stronger tool or another line. The blow balance is not calibrated: ask those who bored in this ground."},
    {"bore.grip",
     [](const Say& s) {
       const auto times = [](const std::optional<double>& n) { return n ? fmt::format("{:.2f}", *n) : "–"; };
       return fmt::format("the ground holds the tool with {} times the push of its air, {} wanted", times(s.f.measured),
                          times(s.f.limit));
     },
     "Lower the pressure, hold the tool while it starts, or use another tool."},
    {"surface.would-stop",
     [](const Say& s) {
       return fmt::format("the tool would stop under {}: {} at each blow, {} needed", s.f.name,
                          s.measured(Dimension::small_length), s.limit(Dimension::small_length));
     },
     "It could not simply be dug out there. Use a stronger tool or another line."},
    {"surface.stuck",
     [](const Say& s) {
       if (s.f.severity == Severity::note)
         return fmt::format("chance that the ground stops the tool under {}: {}", s.f.name,
                            s.measured(Dimension::chance));
       return fmt::format("chance that the ground stops the tool under {}: {}, {} at most", s.f.name,
                          s.measured(Dimension::chance), s.limit(Dimension::chance));
     },
     "It could not simply be dug out there. Settle beforehand with the owner what is done then."},
    {"bore.model",
     [](const Say& s) {
       const long bores = s.f.measured ? static_cast<long>(*s.f.measured) : 0;
       return bores > 0 ? fmt::format("path model of this program, calibrated from {} bores", bores)
                        : std::string("path model of this program, not calibrated: compare it with your own bores");
     },
     ""},
    {"scope.not-judged",
     [](const Say&) {
       return std::string(
           "not judged here: joints of the pipe, stiffness and joints of utilities, what a footing bears");
     },
     "Have these judged by other means."},
    {"site.soil-guessed",
     [](const Say& s) {
       if (!s.f.measured || *s.f.measured < 0.0005) return fmt::format("{} along the bore is only guessed", s.f.name);
       return fmt::format("{} along the bore is only guessed: the band at its end is {} wider up and down", s.f.name,
                          s.measured(Dimension::small_length));
     },
     "Look in the pit or drive a rod, and say how the stratum is known."},
    {"site.line-held-level",
     [](const Say&) { return std::string("the ground line ends inside a pit and is held level beyond"); },
     "Survey a few metres beyond the pits."},
    {"file.newer",
     [](const Say& s) {
       return fmt::format("file version {:.0f}, this program knows {:.0f}: only what it knows is judged",
                          s.f.measured.value_or(0), s.f.limit.value_or(0));
     },
     "Open it with the newer program."},
    {"missing.ground", [](const Say&) { return std::string("the ground line does not reach from launch to exit"); },
     "Survey the missing stretch."},
    {"missing.water", [](const Say&) { return std::string("water level not entered"); },
     "Enter it, or that it is below the pits."},
    {"missing.utility-search",
     [](const Say&) { return std::string("nobody has said that the utilities were searched for"); },
     "Ask the locating service and enter the reference."},
    {"missing.utilities",
     [](const Say&) { return std::string("no utility entered, and not said that none was found"); },
     "Enter what was marked, or say that none was found."},
    {"missing.laterals", [](const Say&) { return std::string("house connections (sewer, drain, cables) not checked"); },
     "They are usually not on the locator's marks: ask, or survey the sewer by camera before and after."},
    {"missing.rule", [](const Say& s) { return fmt::format("no rule or cover limit of the owner for {}", s.f.name); },
     "Pick the owner's rule or type the cover."},
    {"missing.surface-place",
     [](const Say& s) { return fmt::format("where {} crosses the line is not entered", s.f.name); },
     "Enter its stations, from and to."},
    {"missing.permission",
     [](const Say& s) { return fmt::format("owner of {} not asked about unsteered work", s.f.name); },
     "Ask, and enter the permit."},
    {"missing.pipe", [](const Say&) { return std::string("no pipe entered"); }, "Enter the pipe."},
    {"missing.utility-depth",
     [](const Say& s) { return fmt::format("depth of {} not known where the bore passes", s.f.name); },
     "Expose it or have it traced for depth."},
    {"missing.utility-diameter", [](const Say& s) { return fmt::format("diameter of {} not entered", s.f.name); },
     "Ask its owner."},
    {"missing.utility-location-error",
     [](const Say& s) { return fmt::format("how well {} is located is not entered", s.f.name); },
     "Enter the standard deviations, or pick how it was located."},
};

const FindingWords* row_for(std::string_view code) {
  for (const auto& some :
       {std::span<const FindingWords>(rows), words_of_records(), words_of_pits(), words_of_pipe(), words_of_air()})
    for (const FindingWords& row : some)
      if (row.code == code) return &row;
  return nullptr;
}

}  // namespace

std::string finding_text(const Finding& finding, UnitSystem units) {
  const FindingWords* row = row_for(finding.code);
  return row ? row->words(Say{finding, units}) : finding.code;
}

std::string_view advice(const Finding& finding) {
  const FindingWords* row = row_for(finding.code);
  return row ? row->advice : std::string_view();
}

}  // namespace burrow
