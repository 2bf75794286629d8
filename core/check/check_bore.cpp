/// Does the bore get there: length, end of the path, exit window, what stops the tool.   Evidence: LongBore.* of the
/// bore that is judged by its length alone.

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
  const double arrives = (1.0 - answer.chance_of_refusal.value_or(0)) * answer.chance_to_reach;
  arrival.chance_inside_exit_pit = inside * arrives;

  const Limit least = judge.limit("exit_window_chance");
  Finding finding = bore_finding(judge, "bore.exit-window", Severity::stop);
  finding.subject = "exit-pit";
  finding.name = said("exit pit");
  finding.unit = "";
  judge.demand(std::move(finding), *arrival.chance_inside_exit_pit, least);
  if (judge.shows())
    judge.show({"bore.exit-window",
                "exit-pit",
                "P = P_window · (1 − P_refusal) · P_ground",
                {{"P_window", inside, ""},
                 {"P_refusal", answer.chance_of_refusal.value_or(0), ""},
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

/// Whether a limit of length is broken.
bool judge_length(Judge& judge) {
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
    if (margin < 0) return true;  // one finding about length is enough
  }
  return false;
}

/// What is said of every bore: how far to believe the model, and what is not judged at all.
void say_scope(Judge& judge) {
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

}  // namespace

void check_bore(Judge& judge) {
  Assessment& answer = judge.answer;
  if (answer.bore.points.empty()) return;
  answer.chance_of_refusal = judge.stopping.up_to(Length{answer.bore.length_m});

  judge_length(judge);

  if (answer.bore.ends == PathEnd::exit) {
    judge_arrival(judge);
  } else {
    Finding finding = bore_finding(judge, answer.bore.ends == PathEnd::daylight ? "bore.daylight" : "bore.no-arrival",
                                   Severity::stop);
    finding.source = {"predicted path", SourceLabel::our_model};
    judge.say(std::move(finding));
  }

  say_scope(judge);
}

void check_too_long(Judge& judge) {
  const Bore& bore = judge.crossing.bore;
  const double length = bore.exit.station.m - bore.launch.station.m;
  const Limit most{longest_followed.m, false, {"no path is followed beyond this length", SourceLabel::our_default}};
  if (!judge_length(judge))  // longer ones were allowed for this crossing
    judge.demand(bore_finding(judge, "bore.length", Severity::stop), length, most);
  Finding& path = judge.missing("path", "bore", said("path of the bore"));
  path.measured = length;
  path.limit = most.value;
  path.at_least = most.at_least;
  path.unit = "m";
  path.source = most.source;
  say_scope(judge);
}

}  // namespace burrow
