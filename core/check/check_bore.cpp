/// Does the bore get there: length, end of the path, exit window, what stops the tool.

#include "burrow/base/say.h"
#include "burrow/pit/plan.h"
#include "judge.h"

namespace burrow {

namespace {

std::string_view length_limit_for(double diameter_m) {
  if (diameter_m <= 0.055 + 1e-9) return "length_to_55_m";
  if (diameter_m <= 0.095 + 1e-9) return "length_to_95_m";
  if (diameter_m <= 0.145 + 1e-9) return "length_to_145_m";
  return "length_above_m";
}

Finding bore_finding(const Judge& judge, std::string_view code, Severity severity) {
  const PathPoint& end = judge.answer.bore.points.back();
  return finding_at(code, severity, "bore", "bore", end.x_m, end.y_m, end.z_m);
}

void judge_arrival(Judge& judge) {
  Assessment& answer = judge.answer;
  const PathPoint& end = answer.bore.points.back();
  Arrival& arrival = answer.arrival;
  arrival.offset_m = end.y_m;
  arrival.elevation_m = end.z_m;
  arrival.sd_lateral_m = end.sd_lateral_m;
  arrival.sd_vertical_m = end.sd_vertical_m;
  std::optional<Length> widest;
  if (!judge.crossing.pits.exit.floor_width) widest = Length{judge.limit("exit_widest_m").value};
  const double ground = elevation_at(judge.crossing.site.ground, end.x_m);
  const double inside =
      chance_inside(answer.exit_pit, {end.y_m, end.z_m, end.sd_lateral_m, end.sd_vertical_m}, Length{ground}, widest);
  arrival.chance_inside_exit_pit = inside * answer.chance_to_reach;

  const Limit least = judge.limit("exit_window_chance");
  Finding finding = bore_finding(judge, "bore.exit-window", Severity::stop);
  finding.subject = "exit-pit";
  finding.name = said("exit pit");
  finding.unit = "";
  judge.demand(std::move(finding), *arrival.chance_inside_exit_pit, least);
  if (judge.shows())
    judge.show({"bore.exit-window",
                "exit-pit",
                "P = P_window · P_ground",
                {{"P_window", inside, ""},
                 {"P_ground", answer.chance_to_reach, ""},
                 {"sd_lateral", end.sd_lateral_m, "m"},
                 {"sd_vertical", end.sd_vertical_m, "m"}},
                "P",
                *arrival.chance_inside_exit_pit,
                "",
                least.value,
                {"independent normal errors over the exit window", SourceLabel::our_model},
                least.source});
}

/// Being stopped by the ground is a finding of its own. The rates of the table have no source: they make a caution at
/// most, and a note that names them where they do not.
void judge_refusal(Judge& judge) {
  const double chance = *judge.answer.chance_of_refusal;
  const bool known = judge.answer.refusal_calibrated;
  const Limit& caution = judge.limit("refusal_caution");
  Finding finding;
  finding.code = "bore.refusal";
  finding.severity = Severity::stop;
  finding.subject = "bore";
  finding.name = known ? said("rate from records") : said("not calibrated from records");
  finding.unit = "";
  double margin = known ? judge.demand(finding, chance, judge.limit("refusal_stop")) : 0;
  finding.severity = Severity::caution;
  if (margin >= 0) margin = judge.demand(finding, chance, caution);
  if (margin >= 0) {
    finding.severity = Severity::note;
    finding.measured = chance;
    finding.limit = caution.value;
    finding.at_least = false;
    finding.source = caution.source;
    judge.say(std::move(finding));
  }
  if (judge.shows())
    judge.show(
        {"bore.refusal",
         "bore",
         "P = 1 − exp(−N), N = ∫ r ds",
         {{"N", judge.stopping.expected({judge.answer.bore.length_m}), ""}, {"L", judge.answer.bore.length_m, "m"}},
         "P",
         chance,
         "",
         caution.value,
         known ? Source{"refusal rates entered for the ground along the path", SourceLabel::our_model}
               : Source{"refusal rate r of each soil class along the path, classes of guessed strata mixed",
                        SourceLabel::our_model},
         caution.source});
}

}  // namespace

void check_bore(Judge& judge) {
  Assessment& answer = judge.answer;
  if (answer.bore.points.empty()) return;
  answer.chance_of_refusal = judge.stopping.up_to(Length{answer.bore.length_m});
  answer.refusal_calibrated = judge.calibrated() && judge.stopping.all_entered();
  judge_refusal(judge);

  const double length = judge.crossing.bore.exit.station.m - judge.crossing.bore.launch.station.m;
  for (const std::string_view id : {length_limit_for(judge.tool.diameter.m), std::string_view("length_any_m")}) {
    const Limit limit = judge.limit(id);
    const double margin = judge.demand(bore_finding(judge, "bore.length", Severity::stop), length, limit);
    if (judge.shows())
      judge.show({"bore.length",
                  "bore",
                  "L = x_exit − x_launch",
                  {{"x_exit", judge.crossing.bore.exit.station.m, "m"},
                   {"x_launch", judge.crossing.bore.launch.station.m, "m"}},
                  "L",
                  length,
                  "m",
                  limit.value,
                  {"difference of stations", SourceLabel::derived},
                  limit.source});
    if (margin < 0) break;  // one finding about length is enough
  }

  if (answer.bore.ends == PathEnd::exit) {
    judge_arrival(judge);
  } else {
    Finding finding = bore_finding(judge, answer.bore.ends == PathEnd::daylight ? "bore.daylight" : "bore.no-arrival",
                                   Severity::stop);
    finding.source = {"predicted path", SourceLabel::our_model};
    judge.say(std::move(finding));
  }

  Finding model;
  model.code = "bore.model";
  model.subject = "bore";
  model.name = "bore";
  model.measured = static_cast<double>(judge.crossing.bore.model.calibrated_from.value);
  model.source = {"path model of this program", SourceLabel::our_model};
  judge.say(std::move(model));
  Finding scope;
  scope.code = "scope.not-judged";
  scope.subject = "site";
  scope.name = "scope";
  scope.source = {"what this program does not compute", SourceLabel::our_default};
  judge.say(std::move(scope));
}

}  // namespace burrow
