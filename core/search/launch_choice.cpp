#include "burrow/search/launch_choice.h"

#include <algorithm>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/check/limits.h"
#include "burrow/crossing/crossing.h"
#include "burrow/crossing/display_name.h"
#include "burrow/soil/settlement.h"

namespace burrow {

namespace {

Finding bound(const LaunchMap& map, const LaunchCell& cell) {
  Finding finding = map.limits[static_cast<std::size_t>(cell.binds)];
  finding.measured = cell.measured;
  finding.limit = cell.limit;
  finding.limit_base = cell.limit_base;
  finding.margin = cell.margin;
  return finding;
}

bool pipe_fits(const Crossing& crossing, double diameter_m) {
  if (!crossing.pipe || !crossing.pipe->outside_diameter) return true;
  return crossing.pipe->outside_diameter->m <= diameter_m &&
         open_area_m2(Length{diameter_m}, *crossing.pipe->outside_diameter, *crossing.pipe->count).has_value();
}

ToolRow judge_row(Crossing crossing, const Tables& tables, const ToolClass& tool, Insertion insertion,
                  const LaunchMapOptions& options, const std::stop_token& stop) {
  ToolRow row;
  row.tool = tool.id;
  row.diameter_m = tool.diameter.m;
  row.insertion = insertion;
  row.in_force = crossing.bore.tool.tool_class == tool.id && (!crossing.pipe || *crossing.pipe->insertion == insertion);
  if (!row.in_force) crossing.bore.tool = ToolChoice{};
  crossing.bore.tool.tool_class = tool.id;
  if (crossing.pipe) crossing.pipe->insertion.set(insertion);
  row.pipe_fits = pipe_fits(crossing, row.diameter_m);
  const LaunchMap map = search_launches(crossing, tables, options, stop);
  row.works = map.works && row.pipe_fits;
  // Where the pit is dug now says nothing for another tool: its launch is the best by the limits.
  row.best = map.best_by_limits ? map.best_by_limits : map.best;
  if (row.best && row.best->binds >= 0) row.binds = bound(map, *row.best);
  if (!map.works && !map.relaxations.empty()) row.why = map.relaxations.front().limits;
  return row;
}

bool exposed(const Utility& utility) {
  return *utility.located.how == LocatedHow::exposed;
}

}  // namespace

std::vector<ToolRow> choose_tool(const Crossing& crossing, const Tables& tables, const ToolTableOptions& options,
                                 const std::stop_token& stop, const std::function<void(double)>& progress) {
  std::vector<Insertion> ways{Insertion::pulled_after, Insertion::towed, Insertion::pushed};
  if (!crossing.pipe) ways = {Insertion::pulled_after};
  std::vector<ToolRow> rows;
  const double all = static_cast<double>(tables.tools.size() * ways.size());
  for (const ToolClass& tool : tables.tools)
    for (const Insertion way : ways) {
      ToolRow row = judge_row(crossing, tables, tool, way,
                              {MapOver::depth_and_grade, options.cells, true, options.threads}, stop);
      if (stop.stop_requested()) return rows;
      rows.push_back(std::move(row));
      if (progress) progress(static_cast<double>(rows.size()) / all);
    }
  return rows;
}

namespace {

/// The hole that would prove it: where the bore passes, at the level of the record, measured on the day.
std::optional<TestHole> hole_over(const Crossing& crossing, const Tables& tables, const Assessment& now,
                                  const Utility& utility) {
  const auto answer = std::find_if(now.utilities.begin(), now.utilities.end(),
                                   [&](const UtilityAnswer& one) { return one.id == utility.id; });
  if (answer == now.utilities.end() || !answer->station_m || !answer->elevation_m || !tables.judged_on) return {};
  TestHole hole;
  hole.id = free_id(crossing, "h");
  hole.utility = utility.id;
  hole.station = Length{*answer->station_m};
  hole.offset = Length{*answer->offset_m};
  hole.level.set(LevelMeant::centre);
  hole.elevation = Length{*answer->elevation_m};
  hole.date = text_of(*tables.judged_on);
  hole.by = "crew";
  return hole;
}

}  // namespace

std::vector<Exposure> exposures(const Crossing& crossing, const Tables& tables, const LaunchMap& map,
                                const ToolTableOptions& options, const std::stop_token& stop) {
  const double hole_sd = limit_of(crossing, tables, "hole_sd_m").value;
  const Assessment now = assess(crossing, tables);
  std::vector<Exposure> all;
  for (const Utility& utility : crossing.site.utilities) {
    const bool in_the_way = std::any_of(map.relaxations.begin(), map.relaxations.end(), [&](const Relaxation& r) {
      return std::any_of(r.limits.begin(), r.limits.end(), [&](const Finding& f) { return f.subject == utility.id; });
    });
    if (!in_the_way || exposed(utility)) continue;
    Crossing dug = crossing;
    if (const std::optional<TestHole> hole = hole_over(crossing, tables, now, utility))
      dug.site.test_holes.push_back(*hole);
    for (Utility& other : dug.site.utilities) {
      if (other.id != utility.id) continue;
      other.located.how.set(LocatedHow::exposed);
      for (std::optional<Length>* sd : {&other.located.lateral_sd, &other.located.vertical_sd})
        *sd = Length{std::min(*sd ? (*sd)->m : hole_sd, hole_sd)};
    }
    const LaunchMap then = search_launches(dug, tables, {map.over, options.cells, true, options.threads}, stop);
    if (stop.stop_requested() || !then.best) return all;
    Exposure& exposure = all.emplace_back();
    exposure.utility = utility.id;
    exposure.name = display_name(utility);
    exposure.works = then.works;
    exposure.best = then.best_by_limits ? *then.best_by_limits : *then.best;
    exposure.best.binds = exposure.best.also = -1;
  }
  std::stable_sort(all.begin(), all.end(), [](const Exposure& a, const Exposure& b) { return a.works > b.works; });
  return all;
}

}  // namespace burrow
