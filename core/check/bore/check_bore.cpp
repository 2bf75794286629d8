/// Does the bore get there: length, end of the path, exit window, what stops the tool.   Evidence: LongBore.* of the
/// bore that is judged by its length alone.

#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/pit/pit_shapes.h"
#include "check_run.h"

namespace burrow {

namespace {

std::string_view length_limit_for(double diameter_m) {
  if (diameter_m <= 0.055 + 1e-9) return "length_to_55_m";
  if (diameter_m <= 0.095 + 1e-9) return "length_to_95_m";
  if (diameter_m <= 0.145 + 1e-9) return "length_to_145_m";
  return "length_above_m";
}

Finding bore_finding(const CheckRun& run, std::string_view code, Severity severity) {
  const PathPoint& end = run.answer.bore.points.back();
  return finding_at(code, severity, "bore", "bore", end.x_m, end.y_m, end.z_m);
}

void judge_arrival(CheckRun& run) {
  Assessment& answer = run.answer;
  const PathPoint& end = answer.bore.points.back();
  Arrival& arrival = answer.arrival;
  arrival.offset_m = end.y_m;
  arrival.elevation_m = end.z_m;
  arrival.sd_lateral_m = end.sd_lateral_m;
  arrival.sd_vertical_m = end.sd_vertical_m;
  std::optional<Length> widest;
  if (!run.crossing.pits.exit.floor_width) widest = Length{run.limit("exit_widest_m").value};
  const double ground = elevation_at(run.crossing.site.ground, end.x_m);
  // Out of all bores that nothing stops: those that come out before, in any ground a guess may be, are not inside.
  const ExitOpening window = exit_opening(answer.exit_pit, Length{ground}, widest);
  const FanChance inside = run.fans.inside(window.right_m, window.left_m, window.low_m, window.high_m);
  arrival.chance_inside_exit_pit = inside.chance;

  if (run.crossing.bore.exit.offset.entered) {
    const double off = std::abs(end.y_m - run.crossing.bore.exit.offset->m);
    run.require(bore_finding(run, "bore.exit-off-aim", Severity::caution), off, run.limit("exit_off_aim_m"));
  }

  const Limit least = run.limit("exit_window_chance");
  Finding finding = bore_finding(run, "bore.exit-window", Severity::stop);
  finding.subject = "exit-pit";
  finding.name = translatable("exit pit");
  finding.unit = "";
  run.require(std::move(finding), *arrival.chance_inside_exit_pit, least);
  if (!run.wants_working()) return;
  std::vector<WorkingInput> inputs{{"y_right", window.right_m, "m"},
                                   {"y_left", window.left_m, "m"},
                                   {"z_low", window.low_m, "m"},
                                   {"z_high", window.high_m, "m"}};
  for (const WorkingInput& input : inputs_of(run.fans, inside, false)) inputs.push_back(input);
  run.add_working({"bore.exit-window",
                   "exit-pit",
                   translatable("P = Σ p P_ground; P_ground = ∫ P(inside | c) f(c) dc"),
                   std::move(inputs),
                   "P",
                   *arrival.chance_inside_exit_pit,
                   "",
                   least.value,
                   {"lognormal steering constant; given it, independent normal errors over the exit window",
                    SourceLabel::our_model},
                   least.source});
}

/// The chance of coming out before the exit: the mean path may arrive and one bore in ten not.
void judge_daylight(CheckRun& run) {
  if (run.fans.empty()) return;
  Assessment& answer = run.answer;
  const FanChance daylight = run.fans.daylight();
  const double chance = daylight.chance;
  answer.chance_of_daylight = chance;
  const Limit& stop = run.limit("daylight_stop");
  if (run.wants_working())
    run.add_working(
        {"bore.daylight-chance",
         "bore",
         translatable("P = Σ p P_ground; P_ground = ∫ Φ(ζ) f(c) dc, ζ = max over x of (z + D/2 − z_ground)/s"),
         inputs_of(run.fans, daylight, true),
         "P",
         chance,
         "",
         stop.value,
         {"lognormal steering constant; given it, normal errors of the height", SourceLabel::our_model},
         stop.source});
  if (answer.bore.ends == PathEnd::daylight) return;  // the mean path itself comes out: that is said already
  const auto finding = [&](Severity severity) {
    Finding one = bore_finding(run, "bore.daylight-chance", severity);
    one.unit = "";
    return one;
  };
  if (run.require(finding(Severity::stop), chance, stop) >= 0)
    run.require(finding(Severity::caution), chance, run.limit("daylight_caution"));
}

/// Being stopped by the ground is a finding of its own. The rates of the table have no source: they make a caution at
/// most, and a note that names them where they do not.
void judge_refusal(CheckRun& run) {
  const double chance = *run.answer.chance_of_refusal;
  const bool known = run.answer.refusal_calibrated;
  const Limit& caution = run.limit("refusal_caution");
  Finding finding;
  finding.code = "bore.refusal";
  finding.severity = Severity::stop;
  finding.subject = "bore";
  finding.name = known ? translatable("rate from records") : translatable("not calibrated from records");
  finding.unit = "";
  double margin = known ? run.require(finding, chance, run.limit("refusal_stop")) : 0;
  finding.severity = Severity::caution;
  if (margin >= 0) margin = run.require(finding, chance, caution);
  if (margin >= 0) {
    finding.severity = Severity::note;
    finding.measured = chance;
    finding.limit = caution.value;
    finding.at_least = false;
    finding.source = caution.source;
    run.add(std::move(finding));
  }
  if (run.wants_working())
    run.add_working(
        {"bore.refusal",
         "bore",
         "P = 1 − exp(−N), N = ∫ r ds",
         {{"N", run.stopping.expected({run.answer.bore.length_m}), ""}, {"L", run.answer.bore.length_m, "m"}},
         "P",
         chance,
         "",
         caution.value,
         known ? Source{"refusal rates entered for the ground along the path", SourceLabel::our_model}
               : Source{"refusal rate r of each soil class along the path, classes of guessed strata mixed",
                        SourceLabel::our_model},
         caution.source});
}

/// Whether a limit of length is broken.
bool judge_length(CheckRun& run) {
  const double length = run.crossing.bore.exit.station.m - run.crossing.bore.launch.station.m;
  for (const std::string_view id : {length_limit_for(run.tool.diameter.m), std::string_view("length_any_m")}) {
    const Limit limit = run.limit(id);
    const double margin = run.require(bore_finding(run, "bore.length", Severity::stop), length, limit);
    if (run.wants_working())
      run.add_working(
          {"bore.length",
           "bore",
           "L = x_exit − x_launch",
           {{"x_exit", run.crossing.bore.exit.station.m, "m"}, {"x_launch", run.crossing.bore.launch.station.m, "m"}},
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
void say_scope(CheckRun& run) {
  Finding model;
  model.code = "bore.model";
  model.subject = "bore";
  model.name = "bore";
  model.measured = run.calibrated() ? static_cast<double>(run.crossing.bore.model.calibrated_from.value) : 0;
  model.source = {"path model of this program", SourceLabel::our_model};
  run.add(std::move(model));
  Finding scope;
  scope.code = "scope.not-judged";
  scope.subject = "site";
  scope.name = "scope";
  scope.source = {"what this program does not compute", SourceLabel::our_default};
  run.add(std::move(scope));
}

}  // namespace

void check_bore(CheckRun& run) {
  Assessment& answer = run.answer;
  if (answer.bore.points.empty()) return;
  answer.chance_of_refusal = run.stopping.up_to(Length{answer.bore.length_m});
  answer.refusal_calibrated = run.calibrated() && run.stopping.all_entered();
  judge_refusal(run);
  judge_length(run);

  if (answer.bore.ends == PathEnd::exit) {
    judge_arrival(run);
  } else {
    Finding finding =
        bore_finding(run, answer.bore.ends == PathEnd::daylight ? "bore.daylight" : "bore.no-arrival", Severity::stop);
    finding.source = {"predicted path", SourceLabel::our_model};
    run.add(std::move(finding));
  }
  judge_daylight(run);

  say_scope(run);
}

void check_too_long(CheckRun& run) {
  const Bore& bore = run.crossing.bore;
  const double length = bore.exit.station.m - bore.launch.station.m;
  const Limit most{longest_followed.m, false, {"no path is followed beyond this length", SourceLabel::our_default}};
  if (!judge_length(run))  // longer ones were allowed for this crossing
    run.require(bore_finding(run, "bore.length", Severity::stop), length, most);
  Finding& path = run.missing("path", "bore", translatable("path of the bore"));
  path.measured = length;
  path.limit = most.value;
  path.at_least = most.at_least;
  path.unit = "m";
  path.source = most.source;
  say_scope(run);
}

}  // namespace burrow
