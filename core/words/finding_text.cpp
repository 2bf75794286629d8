#include "burrow/check/assessment.h"
#include "burrow/language/say.h"
#include "burrow/words/headline.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"utility.separation",
     [](const FindingPhrases& s) {
       const auto length = [&](double m) { return format(m, Dimension::length, s.units); };
       const std::string wanted = s.limit(Dimension::length);
       const bool inside = s.f.measured && *s.f.measured < 0;
       const std::string gap = inside ? length(-*s.f.measured) : s.measured(Dimension::length);
       if (s.f.limit && s.f.limit_base && *s.f.limit - *s.f.limit_base > 0.005) {
         const std::string base = length(*s.f.limit_base), more = length(*s.f.limit - *s.f.limit_base);
         return inside ? say("runs into {} by {}, {} required ({} + {} location tolerance)", s.name(), gap, wanted,
                             base, more)
                       : say("{} clear of {}, {} required ({} + {} location tolerance)", gap, s.name(), wanted, base,
                             more);
       }
       return inside ? say("runs into {} by {}, {} required", s.name(), gap, wanted)
                     : say("{} clear of {}, {} required", gap, s.name(), wanted);
     },
     translatable("Move the bore away: another launch level, grade or station. Then expose the utility before the tool "
                  "passes.")},
    {"utility.contact", Dimension::chance, translatable("{measured} chance of touching {name}, {limit} at most"),
     translatable("Pass further off, or expose the utility where the bore passes and enter what was measured.")},
    {"utility.encroachment",
     [](const FindingPhrases& s) {
       return say(
           "{} chance of passing closer than {} to {}, {} at most", s.measured(Dimension::chance),
           s.f.limit_base ? format(*s.f.limit_base, Dimension::length, s.units) : std::string(translated("required")),
           s.name(), s.limit(Dimension::chance));
     },
     translatable("Pass further off, or expose the utility where the bore passes and enter what was measured.")},
    {"utility.expose",
     [](const FindingPhrases& s) {
       if (!s.f.measured || *s.f.measured < 0)
         return say("{} lies within the band and nobody has exposed it", s.name());
       return say("{} is crossed {} from the band and nobody has exposed it, {} required", s.name(),
                  s.measured(Dimension::length), s.limit(Dimension::length));
     },
     translatable("Expose it before the tool passes.")},
    {"utility.hole-without-level", translatable("a test hole at {name} is not used: no level was measured in it"),
     translatable("Measure the level in the hole and enter it, or remove the hole.")},
    {"utility.hole-without-diameter",
     translatable("a test hole at {name} is not used: its level is not that of the centre, and no diameter is entered"),
     translatable("Enter the outside diameter, or the level of the centre.")},
    {"utility.hole-without-error",
     translatable("a test hole at {name} is not used: how well the utility was located is not entered"),
     translatable("Enter the standard deviations of its record, or select how it was located.")},
    {"utility.hole-off-record", Dimension::length,
     translatable("a test hole found {name} {measured} from its record, up to {limit} is to be expected"),
     translatable("Make sure that it is the same utility; correct its line or how well it was located.")},
    {"utility.holes-disagree", Dimension::length,
     translatable("two test holes at {name} differ by {measured}, up to {limit} is to be expected"),
     translatable("Make sure that both found the same utility; measure again, or dig between them.")},
    {"site.unknown-service", Dimension::chance,
     translatable("chance of meeting a service that nobody drew: {measured}"),
     translatable("Have the line swept again, and survey sewers by camera before and after.")},
    {"utility.movement", Dimension::small_length,
     translatable("the ground at {name} moves {measured}, {limit} at most"),
     translatable("Pass further off, use a smaller tool, or expose the utility and relieve it while the tool passes.")},
    {"utility.strain",
     [](const FindingPhrases& s) {
       return say("{} strains by up to {} if it follows the ground, {} at most", s.name(),
                  FindingPhrases::strain(s.f.measured), FindingPhrases::strain(s.f.limit));
     },
     translatable("Pass further off or use a smaller tool; else expose and relieve it, and ask its owner.")},
    {"utility.wall-unknown",
     [](const FindingPhrases& s) {
       return say("material not known of {}: strain by up to {} if it follows the ground, a brittle pipe bears {}",
                  s.name(), FindingPhrases::strain(s.f.measured), FindingPhrases::strain(s.f.limit));
     },
     translatable("Enter its material; cast iron, clay or cement pipes may break.")},
    {"utility.vibration",
     [](const FindingPhrases& s) {
       if (!s.f.limit)
         return say("not judged: how hard the blows shake {}; up to {} by forms made for heavier blows", s.name(),
                    s.speed(s.f.measured));
       return say("blows shake {} with up to {}, {} at most", s.name(), s.speed(s.f.measured), s.speed(s.f.limit));
     },
     translatable("Pass further off, or lower the pressure while the tool passes.")},
    {"utility.plastic-zone", Dimension::length,
     translatable(
         "not judged: how the ground yields at {name}; it would up to {measured} from the bore, which is further"),
     translatable("The ground pushes less than computed there; nothing to do for this alone.")},
    {"bore.plastic-zone", Dimension::length,
     translatable("not judged: how the ground yields up to the surface; it would up to {measured} from the bore, which "
                  "is further"),
     translatable("Nothing to do for this alone: the roof limit and the high estimate of heave count here.")},
    {"building.vibration",
     [](const FindingPhrases& s) {
       return say("blows shake {} with up to {}, {} at most; by forms made for heavier blows", s.name(),
                  s.speed(s.f.measured), s.speed(s.f.limit));
     },
     translatable(
         "Keep further off, lower the pressure nearby, or measure the vibration; record the state of the building "
         "before.")},
    {"footing.influence",
     [](const FindingPhrases& s) {
       if (s.f.measured && *s.f.measured < 0)
         return say("the bore runs {} inside the ground that carries {}",
                    format(-*s.f.measured, Dimension::length, s.units), s.name());
       return say("the bore passes {} from the ground that carries {}, {} required", s.measured(Dimension::length),
                  s.name(), s.limit(Dimension::length));
     },
     translatable("Keep further off or shallower; else have an engineer judge the footing.")},
    {"bore.cover", Dimension::length, translatable("cover {measured}, {limit} required"),
     translatable("Launch deeper or grade downward.")},
    {"bore.cover-low", Dimension::length, translatable("cover may fall to {measured}, {limit} required"),
     translatable("Launch deeper, or set level and sight more closely.")},
    {"bore.cover-chance",
     [](const FindingPhrases& s) {
       return say("{} chance that the cover falls below {}, {} at most", s.measured(Dimension::chance),
                  s.limit_base(Dimension::length), s.limit(Dimension::chance));
     },
     translatable("Launch deeper or grade downward: in this ground some bores climb far more than the mean.")},
    {"bore.climb", Dimension::length,
     translatable(
         "by the path model the tool climbs {measured} above its aim, {limit} at most with this cover and exit pit"),
     translatable("Launch deeper or grade downward, shorten the bore, or watch the climb from the first marks.")},
    {"bore.sag", Dimension::length,
     translatable("by the path model the tool sags {measured} below its aim, {limit} at most with this exit pit"),
     translatable("Aim higher, shorten the bore, or dig the exit pit deeper.")},
    {"surface.cover", Dimension::length, translatable("cover under {name} {measured}, its owner wants {limit}"),
     translatable("Launch deeper or grade downward.")},
    {"surface.cover-low", Dimension::length,
     translatable("cover under {name} may fall to {measured}, its owner wants {limit}"),
     translatable("Launch deeper, or set level and sight more closely.")},
    {"surface.cover-chance",
     [](const FindingPhrases& s) {
       return say("{} chance that the cover under {} falls below {}, {} at most", s.measured(Dimension::chance),
                  s.name(), s.limit_base(Dimension::length), s.limit(Dimension::chance));
     },
     translatable("Launch deeper or grade downward: in this ground some bores climb far more than the mean.")},
    {"surface.heave", Dimension::small_length, translatable("{name} lifts {measured}, {limit} at most"),
     translatable("Launch deeper or use a smaller tool.")},
    {"surface.heave-high", Dimension::small_length, translatable("{name} may lift {measured}, {limit} at most"),
     translatable("Launch deeper, use a smaller tool, or watch the levels while it passes.")},
    {"surface.settlement", Dimension::small_length, translatable("{name} may sink {measured} later, {limit} at most"),
     translatable("Fill the gap around the pipe with grout, use a closer-fitting tool, or launch deeper.")},
    {"surface.angle", Dimension::angle,
     translatable("the bore crosses {name} at {measured}, its owner wants {limit} or more"),
     translatable("Cross it more squarely.")},
    {"surface.pit-setback",
     [](const FindingPhrases& s) {
       if (s.f.measured && *s.f.measured < 0)
         return say("a pit stands inside {}, its owner wants it {} away", s.name(), s.limit(Dimension::length));
       return say("a pit stands {} from {}, its owner wants {}", s.measured(Dimension::length), s.name(),
                  s.limit(Dimension::length));
     },
     translatable("Move the pit further away.")},
    {"surface.driven", Dimension::small_length,
     translatable("hole {measured} wide under {name}, its owner allows {limit} without taking soil out"),
     translatable("Use a smaller tool or another method.")},
    {"surface.permission-refused", translatable("the owner of {name} refuses unsteered work under it"),
     translatable("Use another method or another place.")},
    {"bore.length", Dimension::length, translatable("bore {measured} long, {limit} at most for this tool"),
     translatable("Move the pits closer, or dig a pit in between.")},
    {"bore.daylight", translatable("the tool comes out of the ground before the exit pit"),
     translatable("Launch deeper or grade downward.")},
    {"bore.daylight-chance", Dimension::chance,
     translatable("{measured} chance that the tool comes out of the ground before the exit pit, {limit} at most"),
     translatable("Launch deeper or grade downward: in this ground some bores climb far more than the mean.")},
    {"trials.contact", Dimension::chance,
     translatable("simulation: at least {measured} of the bores touch {name}, {limit} at most"),
     translatable("Pass further off, or expose the utility where the bore passes and enter what was measured.")},
    {"trials.encroachment", Dimension::chance,
     translatable("simulation: at least {measured} of the bores pass closer than required to {name}, {limit} at most"),
     translatable("Pass further off, or expose the utility where the bore passes and enter what was measured.")},
    {"trials.exit-window", Dimension::chance,
     translatable(
         "simulation: at most {measured} of the bores that nothing stops arrive in the exit pit, {limit} required"),
     translatable("Shorten the bore, set level and sight more closely, or make the exit pit wider and deeper.")},
    {"trials.daylight", Dimension::chance,
     translatable(
         "simulation: at least {measured} of the bores come out of the ground before the exit pit, {limit} at most"),
     translatable("Launch deeper or grade downward.")},
    {"bore.no-arrival", translatable("the predicted path does not reach the exit face"),
     translatable("Check grade, heading and soil; shorten the bore.")},
    {"bore.exit-window", Dimension::chance,
     translatable("chance to come out inside the exit pit, of bores that get there: {measured}, {limit} required"),
     translatable("Shorten the bore, set level and sight more closely, or make the exit pit wider and deeper.")},
    {"bore.exit-off-aim", Dimension::length,
     translatable("the predicted path arrives {measured} beside the exit entered, {limit} at most"),
     translatable("Aim again, or move the exit to where the path comes out.")},
    {"bore.refusal",
     [](const FindingPhrases& s) {
       if (s.f.severity == Severity::note)
         return say("chance that the ground stops the tool: {} ({})", s.measured(Dimension::chance), s.name());
       return say("chance that the ground stops the tool: {} ({}), {} at most", s.measured(Dimension::chance), s.name(),
                  s.limit(Dimension::chance));
     },
     translatable(
         "Settle beforehand how a stuck tool is got out, ask those who bored in this ground, and let records of bores "
         "teach the rate.")},
    {"bore.set", Dimension::small_length,
     translatable("the tool would stop here: {measured} at each blow, {limit} needed"),
     translatable(
         "Use a stronger tool or another line. The blow balance is not calibrated: ask those who bored in this "
         "ground.")},
    {"bore.grip",
     [](const FindingPhrases& s) {
       const auto times = [](const std::optional<double>& n) { return n ? fixed_text(*n, 2) : std::string("–"); };
       return say("the ground holds the tool with {} times the push of its air, {} required", times(s.f.measured),
                  times(s.f.limit));
     },
     translatable("Lower the pressure, hold the tool while it starts, or use another tool.")},
    {"surface.would-stop", Dimension::small_length,
     translatable("the tool would stop under {name}: {measured} at each blow, {limit} needed"),
     translatable("It could not simply be dug out there. Use a stronger tool or another line.")},
    {"surface.stuck",
     [](const FindingPhrases& s) {
       if (s.f.limit)
         return say("chance that the ground stops the tool under {}: {}, {} at most", s.name(),
                    s.measured(Dimension::chance), s.limit(Dimension::chance));
       std::string text =
           s.f.severity == Severity::note
               ? say("how a tool stuck under {} would be got out is agreed", s.name())
               : say("nobody may dig for a tool stuck under {}, and how it would be got out is not agreed", s.name());
       if (s.f.measured) text += "; " + say("chance that it stops there: {}", s.measured(Dimension::chance));
       return text;
     },
     translatable("Settle with its owner how a stuck tool would be got out; enter how, and with whom it is agreed.")},
    {"bore.model",
     [](const FindingPhrases& s) {
       const long bores = s.f.measured ? static_cast<long>(*s.f.measured) : 0;
       return bores > 0 ? say_count("path model of this program, calibrated from {} bore",
                                    "path model of this program, calibrated from {} bores", bores)
                        : std::string(
                              translated("path model of this program, not calibrated: compare it with your own bores"));
     },
     ""},
    {"scope.not-judged",
     translatable("not judged here: joints of the pipe, stiffness and joints of utilities, what a footing bears"),
     translatable("Have these judged by other means.")},
    {"site.soil-guessed",
     [](const FindingPhrases& s) {
       if (!s.f.measured || *s.f.measured < 0.0005) return say("{} along the bore is only guessed", s.name());
       return say("{} along the bore is only guessed: the band at its end is {} wider up and down", s.name(),
                  s.measured(Dimension::small_length));
     },
     translatable("Look in the pit or drive a rod, and say how the stratum is known.")},
    {"site.line-held-level", translatable("the ground line ends inside a pit and is held level beyond"),
     translatable("Survey a few metres beyond the pits.")},
    {"missing.path", Dimension::length,
     translatable("the bore is longer than {limit}: no path is predicted, nothing along it is judged"),
     translatable("Correct the station of launch or exit.")},
    {"missing.ground", translatable("the ground line does not reach from launch to exit"),
     translatable("Survey the missing stretch.")},
    {"missing.water", translatable("water level not entered"), translatable("Enter it, or that it is below the pits.")},
    {"missing.utility-search", translatable("nobody has said that the utilities were searched for"),
     translatable("Ask the locating service and enter the reference.")},
    {"missing.utilities", translatable("no utility entered, and not said that none was found"),
     translatable("Enter what was marked, or say that none was found.")},
    {"missing.laterals", translatable("house connections (sewer, drain, cables) not checked"),
     translatable("They are usually not on the locator's marks: ask, or survey the sewer by camera before and after.")},
    {"missing.rule", translatable("no rule or cover limit of the owner for {name}"),
     translatable("Select the owner's rule or type the cover.")},
    {"missing.surface-place", translatable("where {name} crosses the line is not entered"),
     translatable("Enter its stations, from and to.")},
    {"missing.permission", translatable("owner of {name} not asked about unsteered work"),
     translatable("Ask, and enter the permit.")},
    {"missing.pipe", translatable("no pipe entered"), translatable("Enter the pipe.")},
    {"missing.utility-depth", translatable("depth of {name} not known where the bore passes"),
     translatable("Expose it or have it traced for depth.")},
    {"missing.utility-diameter", translatable("diameter of {name} not entered"), translatable("Ask its owner.")},
    {"missing.utility-location-error", translatable("how well {name} is located is not entered"),
     translatable("Enter the standard deviations, or select how it was located.")},
};

const FindingWords* row_for(std::string_view code) {
  for (const auto& some : {std::span<const FindingWords>(rows), words_of_records(), words_of_known(), words_of_pits(),
                           words_of_pipe(), words_of_air(), words_of_limits(), words_of_owners()})
    for (const FindingWords& row : some)
      if (row.code == code) return &row;
  return nullptr;
}

}  // namespace

std::string FindingWords::text(const FindingPhrases& finding) const {
  if (own_) return own_(finding);
  return fmt::format(fmt::runtime(translated(sentence_)), fmt::arg("name", finding.name()),
                     fmt::arg("measured", finding.measured(numbers_)), fmt::arg("limit", finding.limit(numbers_)),
                     fmt::arg("limit_base", finding.limit_base(numbers_)));
}

std::string finding_text(const Finding& finding, UnitSystem units) {
  const FindingWords* row = row_for(finding.code);
  std::string text = row ? row->text(FindingPhrases{finding, units}) : finding.code;
  const bool broken_unmeasured = finding.limit && finding.margin && !finding.measured;
  if (broken_unmeasured) text += std::string(" (") + translated("not a number could be worked out") + ")";
  return text;
}

std::string_view advice(const Finding& finding) {
  const FindingWords* row = row_for(finding.code);
  return row ? std::string_view(translated(row->advice)) : std::string_view();
}

}  // namespace burrow
