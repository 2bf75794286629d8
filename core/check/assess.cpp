#include "burrow/check/assess.h"

#include <cmath>

#include "burrow/bore/path_fans.h"
#include "burrow/check/prepared_site.h"
#include "burrow/check/tool_at_work.h"
#include "burrow/pit/pit_shapes.h"
#include "check_run.h"

namespace burrow {

namespace {

struct Inputs {
  const Ground& ground;
  const Tool& tool;
  const AirAnswer& air;
  const LimitsInForce& limits;
  const GroundSurface& surface;
  const PreparedSite* groundwork = nullptr;  ///< null: made where it is wanted
  LaunchCache* memory = nullptr;
};

GroundSurface surface_through(const Site& site, const GroundSurface& made = {}) {
  if (site.ground.empty() || site.ground_points.empty()) return {};
  return made.made_of(site.ground, site.ground_points) ? made : GroundSurface(site.ground, site.ground_points);
}

/// The launch pit does not ask for the grade.
PitShape launch_pit_of(const Crossing& crossing, const Tool& tool, const Tables& tables, const GroundSurface& surface,
                       LaunchCache* memory) {
  if (!memory) return launch_pit_shape(crossing, tool, tables, surface);
  Launch level = crossing.bore.launch;
  level.grade = {};
  if (!memory->pit || !(memory->launch == level)) {
    memory->launch = level;
    memory->pit = launch_pit_shape(crossing, tool, tables, surface);
    memory->launch_pit.reset();
  }
  return *memory->pit;
}

GuessedPath path_of(const Crossing& crossing, const Tables& tables, const Inputs& inputs) {
  const PreparedSite* there = inputs.groundwork;
  const TurnTable* turns = there && there->turns ? &*there->turns : nullptr;
  // A table has no finer steps to lose: half as many are good to the millimetre where the rounds of a search add up.
  constexpr PathSteps many_launches{{0.125}, {0.25}};
  BorePath mean = predict_path(inputs.ground, inputs.tool, crossing.bore, turns ? many_launches : PathSteps{}, turns);
  return there ? path_with_mistakes(inputs.ground, there->guesses, inputs.tool, crossing.bore, std::move(mean), turns)
               : path_with_mistakes(crossing.site, tables, inputs.ground, inputs.tool, crossing.bore, std::move(mean));
}

/// The strata whose guess moves the bore by more than can be told apart, if only in the tail of the steering constant.
std::vector<std::size_t> guessed_strata(const std::vector<GuessEffect>& effects) {
  constexpr double no_matter_m = 0.0005;
  std::vector<std::size_t> strata;
  for (const GuessEffect& effect : effects)
    if (effect.chance_of_loss > 0 || effect.shift_high_m - effect.shift_low_m > no_matter_m ||
        std::max(effect.lateral_var_m2, effect.vertical_var_m2) > no_matter_m * no_matter_m)
      strata.push_back(effect.stratum);
  return strata;
}

PathFans fans_of(const Crossing& crossing, const Tables& tables, const Inputs& inputs, const GuessedPath& predicted) {
  const Launch& launch = crossing.bore.launch;
  const FanTable::LaunchLine line{launch.station.m, launch.offset->m, std::tan(launch.heading->rad)};
  std::vector<std::size_t> guessed = guessed_strata(predicted.effects);
  const auto make = [&] {
    return std::make_unique<FanGrounds>(crossing.site, tables, inputs.ground, inputs.tool, line, std::move(guessed));
  };
  std::unique_ptr<FanGrounds> own;
  std::unique_ptr<FanGrounds>& grounds =
      inputs.memory && crossing.site.strips.empty() ? inputs.memory->fans : own;  // beside strips they know the line
  if (!grounds || grounds->guessed() != guessed) grounds = make();
  return PathFans(*grounds, inputs.ground, inputs.tool, crossing.bore, predicted.path);
}

/// A bore too long to follow: its length is judged, its pits, its air, and what was not entered. All that lies along
/// it stays unknown, and is said to be missing.
Assessment judge_length_alone(const Crossing& crossing, const Tables& tables, const Inputs& inputs,
                              std::vector<Finding>* passed) {
  Assessment answer;
  answer.judged_on = tables.judged_on;
  answer.air = inputs.air;
  answer.ground_surface = inputs.surface;
  answer.bore = predict_path(inputs.ground, inputs.tool, crossing.bore);
  answer.launch_pit = launch_pit_of(crossing, inputs.tool, tables, inputs.surface, inputs.memory);
  answer.exit_pit = exit_pit_shape(crossing, inputs.tool, tables, answer.bore, inputs.surface);
  for (const Utility& utility : crossing.site.utilities) {
    UtilityAnswer& unknown = answer.utilities.emplace_back();
    unknown.id = utility.id;
    unknown.name = utility.name;
  }
  const StopChance stopping(crossing.site, tables, inputs.ground, answer.bore);
  const PathFans fans;
  CheckRun run{crossing, tables,        inputs.ground, inputs.tool, stopping,
               fans,     inputs.limits, answer,        passed,      inputs.memory};
  check_missing(run);
  check_bored(run);
  check_too_long(run);
  check_pits(run);
  check_air(run);
  check_typed_limits(run);
  if (passed)
    give_verdict(crossing, tables, answer);
  else
    conclude(crossing, tables, answer);
  return answer;
}

Assessment judge_all(const Crossing& crossing, const Tables& tables, const Inputs& inputs,
                     std::vector<Finding>* passed) {
  if (too_long_to_follow(crossing.bore)) return judge_length_alone(crossing, tables, inputs, passed);
  Assessment answer;
  answer.judged_on = tables.judged_on;
  const Ground& ground = inputs.ground;
  const Tool& tool = inputs.tool;
  answer.air = inputs.air;
  answer.ground_surface = inputs.surface;
  GuessedPath predicted = path_of(crossing, tables, inputs);
  const PathFans fans = fans_of(crossing, tables, inputs, predicted);
  answer.bore = std::move(predicted.path);
  answer.guesses = std::move(predicted.effects);
  answer.chance_to_reach = predicted.chance_to_reach;
  answer.neutral_line = inputs.groundwork && inputs.groundwork->neutral
                            ? neutral_line(ground, *inputs.groundwork->neutral, tool, answer.bore)
                            : neutral_line(ground, tool, answer.bore);
  answer.launch_pit = launch_pit_of(crossing, tool, tables, inputs.surface, inputs.memory);
  answer.exit_pit = exit_pit_shape(crossing, tool, tables, answer.bore, inputs.surface);

  if (passed) {
    passed->reserve(64 + 8 * crossing.site.utilities.size());
  } else {
    answer.findings.reserve(64 + 4 * crossing.site.utilities.size());  // they are large: growing would move them all
    answer.working.reserve(32 + 8 * crossing.site.utilities.size());
  }
  answer.utilities.reserve(crossing.site.utilities.size());
  const StopChance stopping(crossing.site, tables, ground, answer.bore);
  CheckRun run{crossing, tables, ground, tool, stopping, fans, inputs.limits, answer, passed, inputs.memory};
  check_missing(run);
  check_bore(run);
  check_advance(run);
  check_cover(run);
  check_drift(run);
  check_utilities(run);
  check_boundary(run);
  check_plausible(run);
  check_surface(run);
  check_records(run);
  check_bored(run);
  check_settlement(run);
  check_movement(run);
  check_plastic_zone(run);
  check_vibration(run);
  check_footing(run);
  check_rules(run);
  check_pits(run);
  check_loads(run);
  check_air(run);
  passed ? check_mark_spacing(run) : check_marks(run);  // nobody asks a search for its run sheet
  check_typed_limits(run);
  if (passed)
    give_verdict(crossing, tables, answer);
  else
    conclude(crossing, tables, answer);
  return answer;
}

}  // namespace

Assessment assess(const Crossing& crossing, const Tables& tables, const GroundSurface& made) {
  const Ground ground(crossing.site, tables);
  const ToolAtWork at_work = tool_at_work(crossing, tables);
  const LimitsInForce limits(crossing, tables);
  const GroundSurface surface = surface_through(crossing.site, made);
  return judge_all(crossing, tables, {ground, at_work.tool, at_work.air, limits, surface}, nullptr);
}

PreparedSite::PreparedSite(const Crossing& crossing, const Tables& tables)
    : ground(crossing.site, tables),
      surface(surface_through(crossing.site)),
      guesses(crossing.site, tables, ground),
      at_work(tool_at_work(crossing, tables)),
      tool(at_work.tool),
      limits(crossing, tables) {}

PreparedSite::PreparedSite(const Crossing& crossing, const Tables& tables, const TurnExtent& extent)
    : PreparedSite(crossing, tables) {
  if (!crossing.site.strips.empty() || !(extent.to_m > extent.from_m)) return;
  if (!(extent.to_m - extent.from_m <= 2 * longest_followed.m)) return;  // a table as long as that serves nobody
  const double y = crossing.bore.launch.offset->m;                       // nothing varies across
  turns.emplace(crossing.site, ground, Steering(ground, tool), tool, extent, y);
  guesses.tabulate(crossing.site, tool, extent, y);
  neutral.emplace(ground, tool, extent.from_m, extent.to_m, y);
}

JudgedLaunch judge_launch(const Crossing& crossing, const Tables& tables, const PreparedSite& groundwork,
                          LaunchCache* memory) {
  JudgedLaunch judged;
  if (memory) judged.passed = std::move(memory->room);
  judged.passed.clear();
  judged.answer = judge_all(crossing, tables,
                            {groundwork.ground, groundwork.tool, groundwork.at_work.air, groundwork.limits,
                             groundwork.surface, &groundwork, memory},
                            &judged.passed);
  return judged;
}

}  // namespace burrow
