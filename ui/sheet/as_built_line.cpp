/// The line as it was built: where the nose was at each reading, and how far in anybody measured.

#include <algorithm>
#include <cmath>

#include "as_built.h"
#include "burrow/crossing/day_record.h"

namespace burrow {

PathPoint built_at(const BorePath& path, double s_m) {
  const auto& points = path.points;
  if (points.empty()) return {};
  const auto beyond = std::find_if(points.begin(), points.end(), [&](const PathPoint& p) { return p.s_m >= s_m; });
  if (beyond == points.begin()) return points.front();
  if (beyond == points.end()) return points.back();
  const PathPoint& a = *(beyond - 1);
  PathPoint p = *beyond;
  const double t = (s_m - a.s_m) / std::max(p.s_m - a.s_m, 1e-12);
  const auto between = [&](double PathPoint::*m) { p.*m = a.*m + t * (p.*m - a.*m); };
  for (double PathPoint::*m :
       {&PathPoint::x_m, &PathPoint::y_m, &PathPoint::z_m, &PathPoint::sd_lateral_m, &PathPoint::sd_vertical_m})
    between(m);
  p.s_m = s_m;
  return p;
}

std::vector<std::optional<double>> noses_of(const AsBuilt& built) {
  std::vector<std::optional<double>> noses;
  std::optional<double> last;
  for (std::size_t i = 0; i < built.record.readings.size(); ++i) {
    const Reading& reading = built.record.readings[i];
    const bool doubted = std::any_of(built.day.queried.begin(), built.day.queried.end(),
                                     [i](const ReadingQuery& query) { return query.reading == i; });
    if (reading.kind == ReadingKind::start) last = last.value_or(0.0);
    if (reading.nose && counts(reading) && !doubted) last = reading.nose->m;
    noses.push_back(last);
  }
  return noses;
}

namespace {

bool near_one(const std::vector<double>& places, double s_m) {
  constexpr double two_marks_m = 3.0;
  return std::any_of(places.begin(), places.end(),
                     [&](double place) { return std::abs(place - s_m) <= two_marks_m + 1e-9; });
}

}  // namespace

bool MeasuredPlaces::aside(double s_m) const {
  return near_one(aside_m, s_m);
}

bool MeasuredPlaces::height(double s_m) const {
  return near_one(height_m, s_m);
}

MeasuredPlaces measured_places(const AsBuilt& built) {
  MeasuredPlaces places;
  const std::vector<std::optional<double>> noses = noses_of(built);
  const double length = built.sheet.assessment.bore.length_m;
  for (std::size_t i = 0; i < noses.size(); ++i) {
    const Reading& reading = built.record.readings[i];
    const auto about = [i](const auto& one) { return one.reading == i; };
    const DayAnswer& day = built.day;
    if (!counts(reading) || std::any_of(day.queried.begin(), day.queried.end(), about) ||
        std::any_of(day.left_out.begin(), day.left_out.end(), about))
      continue;
    if (reading.kind == ReadingKind::arrival) {
      if (reading.offset) places.aside_m.push_back(length);
      if (reading.elevation) places.height_m.push_back(length);
      places.out_aside = places.out_aside || reading.offset;
      places.out_height = places.out_height || reading.elevation;
    }
    if (reading.kind != ReadingKind::fix || !noses[i]) continue;
    if (reading.offset) places.aside_m.push_back(*noses[i]);
    if (reading.depth) places.height_m.push_back(*noses[i]);
  }
  return places;
}

double gap_spread_m(const PathPoint& bore, const UtilityAnswer& utility) {
  const double y = utility.on_utility->y_m - bore.y_m, z = utility.on_utility->z_m - bore.z_m;
  const double apart = std::hypot(y, z), across = apart > 0 ? y / apart : 1, up = apart > 0 ? z / apart : 1;
  const double lateral = std::hypot(bore.sd_lateral_m, utility.lateral_sd_m.value_or(0));
  const double vertical = std::hypot(bore.sd_vertical_m, utility.vertical_sd_m.value_or(0));
  return 1.645 * std::hypot(across * lateral, up * vertical);
}

std::vector<PathPoint> built_points(const AsBuilt& built) {
  std::vector<PathPoint> points;
  for (const PathPoint& p : built.day.smoothed.points) {
    if (p.s_m >= built.day.furthest_m - 1e-9) break;
    points.push_back(p);
  }
  if (!built.day.smoothed.points.empty()) points.push_back(built_at(built.day.smoothed, built.day.furthest_m));
  return points;
}

}  // namespace burrow
