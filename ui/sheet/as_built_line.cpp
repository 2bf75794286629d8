/// The line as it was built: where the nose was at each reading, and how far in anybody measured.

#include <algorithm>

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

std::optional<double> measured_to(const AsBuilt& built) {
  std::optional<double> furthest;
  const std::vector<std::optional<double>> noses = noses_of(built);
  for (std::size_t i = 0; i < noses.size(); ++i) {
    const Reading& reading = built.record.readings[i];
    const auto about = [i](const auto& one) { return one.reading == i; };
    const DayAnswer& day = built.day;
    if (!counts(reading) || std::any_of(day.queried.begin(), day.queried.end(), about) ||
        std::any_of(day.left_out.begin(), day.left_out.end(), about))
      continue;
    std::optional<double> here;
    if (reading.kind == ReadingKind::arrival) here = built.sheet.assessment.bore.length_m;
    const bool at_the_nose =
        reading.kind == ReadingKind::fix || reading.kind == ReadingKind::grade || reading.kind == ReadingKind::heading;
    if (at_the_nose) here = noses[i];
    if (here) furthest = std::max(furthest.value_or(0), *here);
  }
  return furthest;
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
