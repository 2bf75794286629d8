#include "burrow/practice/try_error.h"

#include <algorithm>
#include <cmath>

#include "burrow/bore/path.h"

namespace burrow {

TryErrorAnswer try_error(const Crossing& crossing, const Tables& tables, const TryError& error) {
  Site site = crossing.site;
  if (find_soil(tables, error.soil))
    for (Stratum& stratum : site.strata) {
      stratum.soil = error.soil;
      stratum.values = {};
    }
  Bore bore = crossing.bore;
  if (find_tool(tables, error.tool)) {
    bore.tool = {};
    bore.tool.tool_class = error.tool;
  }
  const double steepest = 0.5;
  const double aimed_grade = bore.launch.grade.v, aimed_heading = bore.launch.heading->rad;
  bore.launch.elevation.m -= error.deeper_m;
  bore.launch.grade.v = std::tan(std::atan(aimed_grade) + std::clamp(error.level_rad, -steepest, steepest));
  bore.launch.heading.set(Angle{aimed_heading + std::clamp(error.aim_rad, -steepest, steepest)});
  const BorePath path = predict_path(Ground(site, tables), resolve_tool(bore.tool, tables), bore);
  TryErrorAnswer answer;
  answer.reaches = path.ends == PathEnd::exit;
  if (path.ends == PathEnd::daylight) answer.ends_station_m = path.points.back().x_m;
  if (path.points.size() < 2) return answer;
  const Launch& launch = bore.launch;
  for (const PathPoint& p : path.points) {
    const double run = p.x_m - launch.station.m;
    answer.points.push_back({p.x_m, p.z_m - launch.elevation.m - run * aimed_grade / std::cos(aimed_heading),
                             p.y_m - launch.offset->m - run * std::tan(aimed_heading)});
  }
  return answer;
}

}  // namespace burrow
