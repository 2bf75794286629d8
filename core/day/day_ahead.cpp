/// What lies ahead of the tool, and which services are near its nose.

#include <algorithm>
#include <cmath>

#include "burrow/clearance/course.h"
#include "burrow/clearance/separation.h"
#include "burrow/crossing/display_name.h"
#include "day_work.h"

namespace burrow {

namespace {

constexpr double passed_by_m = 0.05;
constexpr double steep_rad = 20 * pi / 180;  // below, a utility runs beside the bore and is not passed at one place

/// Nearest to the nose itself, and behind it.
bool passed(const DayWork& work, const Clearance& c) {
  const PathPoint& nose = work.answer.nose;
  if (c.angle_rad && *c.angle_rad < steep_rad) return false;
  if (!c.on_bore || !c.on_utility) return c.station_m && *c.station_m < nose.x_m - passed_by_m;
  if (std::abs(c.on_bore->x_m - nose.x_m) > 1e-6) return false;
  const double level = std::cos(nose.grade_rad);
  const double forward = (c.on_utility->x_m - nose.x_m) * level * std::cos(nose.heading_rad) +
                         (c.on_utility->y_m - nose.y_m) * level * std::sin(nose.heading_rad) +
                         (c.on_utility->z_m - nose.z_m) * std::sin(nose.grade_rad);
  return forward < -passed_by_m;
}

void list_utilities(DayWork& work) {
  for (const Clearance& c : work.clearing) {
    if (passed(work, c)) continue;
    DayUtility u;
    u.id = c.id;
    u.name = display_name(c.name, c.kind, c.id);
    u.unexposed = unexposed(c);
    u.separation_m = c.separation_m;
    u.gap_low_m = c.gap_low_m;
    u.station_m = c.station_m;
    u.required_m = c.required_m;
    u.contact_chance = c.contact_chance;
    u.contact_chance_worst = c.contact_chance_worst;
    u.by = c.bound ? ContactBy::bound : ContactBy::normal;
    if (c.station_m) u.ahead_m = std::max(0.0, *c.station_m - work.answer.nose.x_m);
    work.answer.utilities.push_back(u);
  }
}

constexpr double most_by_constant = 0.30;  ///< of the variance, up to which the bands were found to hold
constexpr double band_99_half_sd = 2.576;

/// The shift by c is taken as straight and c as normal: that holds while it is not the main unknown.
void doubt_bands(DayWork& work) {
  SpreadChain known = work.chain;
  known.start(constant, constant) = 0;
  const double rest = condition(known, work.readings()).points.back().smoothed_cov(up_m, up_m);
  const double whole = work.conditioned.points.back().smoothed_cov(up_m, up_m);
  bool& doubt = work.answer.bands_in_doubt;
  doubt = whole > 0 && 1 - rest / whole > most_by_constant;
  for (const PathPoint& p : work.ahead.points) doubt = doubt || !(p.cover_m > band_99_half_sd * p.sd_vertical_m);
}

void find_arrival(DayWork& work) {
  const BorePath& path = work.answer.smoothed;
  if (path.ends != PathEnd::exit) return;
  // A bore that was given up arrives nowhere.
  if (work.timeline.ended && work.timeline.how != EndHow::arrived) return;
  const PathPoint& end = path.points.back();
  // Of bores that get there, as in the plan: the rates at which the ground stops a tool are no reading of the day.
  if (work.answer.furthest_m < path.length_m) work.arrives = work.assessment.chance_to_reach;
  const ArrivalSpread spread{end.y_m, end.z_m, end.sd_lateral_m, end.sd_vertical_m};
  const double inside = window_chance(work, spread);
  work.answer.arrival = {end.y_m, end.z_m, end.sd_lateral_m, end.sd_vertical_m, inside};
  work.answer.working.push_back({"day.window",
                                 "exit-pit",
                                 "P = P_window · P_arrives",
                                 {{"P_window", work.arrives > 0 ? inside / work.arrives : 0, ""},
                                  {"P_arrives", work.arrives, ""},
                                  {"sd_lateral", end.sd_lateral_m, "m"},
                                  {"sd_vertical", end.sd_vertical_m, "m"}},
                                 "P",
                                 inside,
                                 "",
                                 work.limit("day_window").value,
                                 {"independent normal errors over the exit window", SourceLabel::our_model},
                                 work.limit("day_window").source});
}

}  // namespace

bool may_hurt(const Clearance& c) {
  return c.live;
}

bool unexposed(const Clearance& c) {
  return c.unexposed && !c.hole_at_bore;
}

void look_ahead(DayWork& work) {
  const double nose = work.answer.nose.s_m;
  work.ahead.ends = work.answer.smoothed.ends;
  work.ahead.points.push_back(work.answer.nose);
  for (const PathPoint& p : work.answer.smoothed.points)
    if (p.s_m > nose + 1e-6) work.ahead.points.push_back(p);
  work.ahead.length_m = work.ahead.points.back().s_m;
  const ClearanceRules rules = clearance_rules(LimitsInForce(work.crossing, work.tables), work.tables);
  if (work.ahead.points.size() > 1) {
    work.clearing = clearances(work.ahead, work.tool.diameter, work.crossing.site.utilities, work.crossing.site.ground,
                               rules, work.tables, work.crossing.site.test_holes);
    list_utilities(work);
  }
  find_near(work);
  find_arrival(work);
  doubt_bands(work);
}

}  // namespace burrow
