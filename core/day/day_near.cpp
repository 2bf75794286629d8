/// Services that nobody has exposed, near the nose: where it is believed to be, where a doubtful fix puts it, and where
/// it was furthest, for what was passed does not go away because the tool is driven back.

#include <algorithm>
#include <cmath>

#include "burrow/clearance/course.h"
#include "burrow/clearance/separation.h"
#include "burrow/crossing/display_name.h"
#include "day_work.h"

namespace burrow {

namespace {

constexpr double band_95_sd = 1.960;

/// The nose as a path of a millimetre, so that the same closed forms answer for it.
BorePath nose_alone(const PathPoint& nose) {
  BorePath path;
  path.points = {nose, nose};
  PathPoint& tip = path.points.back();
  constexpr double little_m = 1e-3;
  tip.s_m += little_m;
  tip.x_m += little_m * std::cos(nose.grade_rad) * std::cos(nose.heading_rad);
  tip.y_m += little_m * std::cos(nose.grade_rad) * std::sin(nose.heading_rad);
  tip.z_m += little_m * std::sin(nose.grade_rad);
  path.length_m = tip.s_m;
  return path;
}

std::vector<PathPoint> places_of_nose(const DayWork& work) {
  std::vector<PathPoint> places{work.answer.nose};
  if (work.answer.furthest_m > work.answer.nose_m + 1e-6)
    places.push_back(point_at(work.answer.smoothed, work.answer.furthest_m));
  for (const ReadPlace& read : work.places) {
    const auto odd = [&](const OddReading& one) { return one.reading == read.reading; };
    const bool queried = std::any_of(work.timeline.queried.begin(), work.timeline.queried.end(),
                                     [&](const ReadingQuery& one) { return one.reading == read.reading; });
    const bool here = read.at.s_m > work.answer.nose_m - still_here_m;
    if (queried || (here && std::any_of(work.answer.odd.begin(), work.answer.odd.end(), odd)))
      places.push_back(read.at);
  }
  return places;
}

std::optional<NearService> near_place(const DayWork& work, const BoreAxis& axis, std::size_t i, const Clearance& c) {
  if (!unexposed(c) || !may_hurt(c)) return std::nullopt;
  NearService near;
  near.id = c.id;
  near.name = display_name(c.name, c.kind, c.id);
  near.can_hurt = row_of(work.tables, c.kind).can_hurt;
  if (c.depth_unknown_at_bore || !c.separation_m) {
    const Site& site = work.crossing.site;
    const std::optional<Approach> approach = axis.nearest_to(judged_line(site.utilities[i], site.ground, work.tables));
    if (!approach) return std::nullopt;
    near.depth_unknown = true;
    near.gap_m = std::max(0.0, approach->distance_m - c.contact_radius_m);
  } else {
    near.gap_m = *c.separation_m;
    near.within_band =
        c.axis_distance_m && c.spread_m && *c.axis_distance_m <= c.contact_radius_m + band_95_sd * *c.spread_m;
  }
  near.too_near =
      near.depth_unknown || c.no_sd || c.no_diameter || near.within_band || !c.required_m || near.gap_m < *c.required_m;
  if (near.gap_m > work.limit("day_near_m").value && !near.within_band) return std::nullopt;
  return near;
}

void keep_nearest(std::vector<NearService>& all, const NearService& near) {
  const auto same = std::find_if(all.begin(), all.end(), [&](const NearService& one) { return one.id == near.id; });
  if (same == all.end()) return all.push_back(near);
  same->gap_m = std::min(same->gap_m, near.gap_m);
  same->within_band = same->within_band || near.within_band;
  same->too_near = same->too_near || near.too_near;
}

}  // namespace

void find_near(DayWork& work) {
  const Site& site = work.crossing.site;
  const ClearanceRules rules = clearance_rules(LimitsInForce(work.crossing, work.tables), work.tables);
  for (const PathPoint& place : places_of_nose(work)) {
    const BorePath nose = nose_alone(place);
    const BoreAxis axis(nose);
    const std::vector<Clearance> all =
        clearances(nose, work.tool.diameter, site.utilities, site.ground, rules, work.tables, site.test_holes);
    for (std::size_t i = 0; i < all.size(); ++i)
      if (const std::optional<NearService> near = near_place(work, axis, i, all[i]))
        keep_nearest(work.answer.near, *near);
  }
  std::stable_sort(work.answer.near.begin(), work.answer.near.end(),
                   [](const NearService& a, const NearService& b) { return a.gap_m < b.gap_m; });
}

}  // namespace burrow
