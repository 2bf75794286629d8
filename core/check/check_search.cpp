/// The search for services: its ticket, house connections, lines that are drawn and mean nothing yet.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/clearance/course.h"
#include "burrow/crossing/statement.h"
#include "check_run.h"
#include "utility_course.h"

namespace burrow {

namespace {

void check_ticket(CheckRun& run, const UtilitySearch& search) {
  const std::optional<Date>& on = run.tables.judged_on;
  if (!says_something(search.reference)) run.missing("search-reference", "site", translatable("utility search"));
  if (!dated(search.date, on)) run.missing("search-date", "site", search.date.value_or(""));
  if (!in_force(search, on)) {
    Finding& finding = run.missing("search-validity", "site", search.valid_to.value_or(""));
    finding.source = {"validity as the ticket states it; it differs by country and state", SourceLabel::owners_setting};
  }
  if (!search.marks_visible.value_or(false)) run.missing("search-marks", "site", translatable("utility search"));
}

/// House connections that were entered stand in the list: a line that ends as one.
bool has_house_connection(const Site& site) {
  const auto is = [](const std::optional<LineEnd>& end) { return end == LineEnd::house_connection; };
  return std::any_of(site.utilities.begin(), site.utilities.end(),
                     [&](const Utility& u) { return is(u.ends.first) || is(u.ends.last); });
}

/// The bore as drawn and the outlines of both pits, in plan.
struct Works {
  PlanPoint launch, exit;
  const PlanLine *launch_pit, *exit_pit;
  double x_low, x_high, y_low, y_high;

  explicit Works(const CheckRun& run)
      : launch{run.crossing.bore.launch.station.m, run.crossing.bore.launch.offset->m},
        exit{run.crossing.bore.exit.station.m, run.crossing.bore.exit.offset->m},
        launch_pit(&run.answer.launch_pit.footprint),
        exit_pit(&run.answer.exit_pit.footprint),
        x_low(std::min(launch.x_m, exit.x_m)),
        x_high(std::max(launch.x_m, exit.x_m)),
        y_low(std::min(launch.y_m, exit.y_m)),
        y_high(std::max(launch.y_m, exit.y_m)) {
    for (const PlanLine* pit : {launch_pit, exit_pit})
      for (const PlanPoint& p : *pit) {
        x_low = std::min(x_low, p.x_m);
        x_high = std::max(x_high, p.x_m);
        y_low = std::min(y_low, p.y_m);
        y_high = std::max(y_high, p.y_m);
      }
  }
  [[nodiscard]] bool met_by(const PlanPoint& a, const PlanPoint& b) const {
    if (std::max(a.x_m, b.x_m) < x_low || std::min(a.x_m, b.x_m) > x_high || std::max(a.y_m, b.y_m) < y_low ||
        std::min(a.y_m, b.y_m) > y_high)
      return false;
    if (plan_distance(a, b, launch, exit) <= 0) return true;
    for (const PlanLine* pit : {launch_pit, exit_pit}) {
      if (inside(*pit, a.x_m, a.y_m)) return true;
      for (std::size_t i = 0; i < pit->size(); ++i)
        if (plan_distance(a, b, (*pit)[i], (*pit)[(i + 1) % pit->size()]) <= 0) return true;
    }
    return false;
  }
};

Phrase display_name(const Background& background) {
  if (!background.name.empty()) return background.name;
  return background.layer.empty() ? background.id : background.layer;
}

/// Where a line that ends near the work would be if it went on, straight; a closed outline has no end.
std::optional<PlanPoint> gone_on(const PlanLine& line, bool last, const WorkLine& work) {
  if (line.size() < 2) return std::nullopt;
  const PlanPoint &end = last ? line.back() : line.front(), &before = last ? line[line.size() - 2] : line[1];
  const PlanPoint& other = last ? line.front() : line.back();
  const double dx = end.x_m - before.x_m, dy = end.y_m - before.y_m, length = std::hypot(dx, dy);
  const bool closed = line.size() > 2 && std::hypot(end.x_m - other.x_m, end.y_m - other.y_m) < 1e-6;
  if (closed || !(length > 1e-9)) return std::nullopt;
  if (plan_distance(end, end, work.from, work.to) > asked_within_m + work.half_width_m) return std::nullopt;
  return PlanPoint{end.x_m + goes_on_m / length * dx, end.y_m + goes_on_m / length * dy};
}

/// Nobody knows what they are: one that bore or pit meets, or would meet if it went on, may be a service.
void check_background(CheckRun& run) {
  if (run.crossing.site.background.empty()) return;
  const Works works(run);
  const WorkLine work = work_line(run);
  for (const Background& background : run.crossing.site.background) {
    if (declared(background.not_a_service, run.tables.judged_on)) continue;
    std::optional<PlanPoint> where;
    for (std::size_t l = 0; l < background.lines.size() && !where; ++l) {
      const PlanLine& line = background.lines[l];
      for (std::size_t i = 0; i < line.size() && !where; ++i)
        if (works.met_by(line[i], line[std::min(i + 1, line.size() - 1)])) where = line[i];
      for (const bool last : {false, true})
        if (const auto far = gone_on(line, last, work); far && !where)
          if (const PlanPoint& end = last ? line.back() : line.front(); works.met_by(end, *far)) where = end;
    }
    if (!where) continue;
    Finding& finding = run.missing("background-line", background.id, display_name(background));
    finding.station_m = where->x_m;
    finding.offset_m = where->y_m;
  }
}

/// A hole near the bore that belongs to nothing: something was dug for there, and nobody says what was found.
void check_lone_holes(CheckRun& run) {
  const WorkLine work = work_line(run);
  for (const TestHole& hole : run.crossing.site.test_holes) {
    const bool owned = std::any_of(run.crossing.site.utilities.begin(), run.crossing.site.utilities.end(),
                                   [&](const Utility& u) { return u.id == hole.utility; });
    const PlanPoint at{hole.station.m, hole.offset.m};
    if (owned || plan_distance(at, at, work.from, work.to) > asked_within_m + work.half_width_m) continue;
    Finding& finding = run.missing("hole-utility", hole.id, hole.id);
    finding.station_m = hole.station.m;
    finding.offset_m = hole.offset.m;
  }
}

}  // namespace

void check_search(CheckRun& run) {
  const Site& site = run.crossing.site;
  const UtilitySearch& search = site.utility_search;
  if (!search.done.value_or(false))
    run.missing("utility-search", "site", translatable("utility search"));
  else
    check_ticket(run, search);
  if (search.done.value_or(false) && site.utilities.empty() && !search.none_found.value)
    run.missing("utilities", "site", "utilities");
  const bool answered =
      search.laterals == Laterals::none_here || (search.laterals == Laterals::entered && has_house_connection(site));
  if (!answered) run.missing("laterals", "site", translatable("house connections"));
  check_background(run);
  check_lone_holes(run);
}

}  // namespace burrow
