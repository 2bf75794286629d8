#include "burrow/check/assess.h"

#include "burrow/check/tool_at_work.h"
#include "burrow/pit/plan.h"
#include "judge.h"

namespace burrow {

Assessment assess(const Crossing& crossing, const Tables& tables) {
  Assessment answer;
  const Ground ground(crossing.site, tables);
  ToolAtWork at_work = tool_at_work(crossing, tables);
  const Tool tool = at_work.tool;
  answer.air = std::move(at_work.air);
  GuessedPath predicted =
      with_guesses(crossing.site, tables, tool, crossing.bore, predict_path(ground, tool, crossing.bore));
  answer.bore = std::move(predicted.path);
  answer.guesses = std::move(predicted.effects);
  answer.chance_to_reach = predicted.chance_to_reach;
  answer.neutral_line = neutral_line(ground, tool, answer.bore);
  answer.launch_pit = launch_pit_shape(crossing, tool, tables);
  answer.exit_pit = exit_pit_shape(crossing, tool, tables, answer.bore);

  answer.findings.reserve(64 + 4 * crossing.site.utilities.size());  // findings are large: growing would move them all
  answer.working.reserve(32 + 8 * crossing.site.utilities.size());
  answer.utilities.reserve(crossing.site.utilities.size());
  const StopChance stopping(crossing.site, tables, ground, answer.bore);
  Judge judge{crossing, tables, ground, tool, stopping, answer};
  check_missing(judge);
  check_bore(judge);
  check_advance(judge);
  check_cover(judge);
  check_utilities(judge);
  check_surface(judge);
  check_records(judge);
  check_settlement(judge);
  check_movement(judge);
  check_plastic_zone(judge);
  check_vibration(judge);
  check_footing(judge);
  check_rules(judge);
  check_pits(judge);
  check_air(judge);
  check_marks(judge);
  conclude(crossing, answer);
  return answer;
}

}  // namespace burrow
