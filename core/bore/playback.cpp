#include "burrow/bore/playback.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/bore/point_on_path.h"

namespace burrow {

namespace {

constexpr double at_mark_m = 1e-6;

/// y at x between rows that rise; the first and last beyond them.
double value_at(const std::vector<double>& xs, const std::vector<double>& ys, double x) {
  if (x <= xs.front()) return ys.front();
  if (x >= xs.back()) return ys.back();
  const auto right = static_cast<std::size_t>(std::upper_bound(xs.begin(), xs.end(), x) - xs.begin());
  const double run = xs[right] - xs[right - 1];
  return ys[right - 1] + (ys[right] - ys[right - 1]) * (run > 0 ? (x - xs[right - 1]) / run : 0);
}

std::vector<double> arcs_of(const BorePath& path) {
  std::vector<double> arcs;
  arcs.reserve(path.points.size());
  for (const PathPoint& p : path.points) arcs.push_back(p.s_m);
  return arcs;
}

/// Straight on behind the launch face.
PathPoint behind_launch(const PathPoint& launch, double s_m) {
  PathPoint p = launch;
  const double along = s_m - launch.s_m, flat = along * std::cos(launch.grade_rad);
  p.s_m = s_m;
  p.x_m += flat * std::cos(launch.heading_rad);
  p.y_m += flat * std::sin(launch.heading_rad);
  p.z_m += along * std::sin(launch.grade_rad);
  return p;
}

PathPoint on_axis(const Playback& bore, double s_m) {
  const PathPoint& launch = bore.path.points.front();
  return s_m < launch.s_m ? behind_launch(launch, s_m) : point_at(bore.path, s_m);
}

}  // namespace

double nose_at(const Playback& bore, double time_s) {
  BURROW_ENSURE(!bore.empty() && bore.time_s.size() == bore.path.points.size());
  return value_at(bore.time_s, arcs_of(bore.path), time_s);
}

double time_at(const Playback& bore, double nose_m) {
  BURROW_ENSURE(!bore.empty() && bore.time_s.size() == bore.path.points.size());
  return value_at(arcs_of(bore.path), bore.time_s, nose_m);
}

double pace_at(const Playback& bore, double time_s) {
  if (time_s < 0 || time_s >= bore.end_s()) return 0;
  const auto right =
      static_cast<std::size_t>(std::upper_bound(bore.time_s.begin(), bore.time_s.end(), time_s) - bore.time_s.begin());
  if (right == 0 || right >= bore.time_s.size()) return 0;
  const double run = bore.time_s[right] - bore.time_s[right - 1];
  return run > 0 ? (bore.path.points[right].s_m - bore.path.points[right - 1].s_m) / run : 0;
}

std::vector<PathPoint> axis_between(const Playback& bore, double from_m, double to_m) {
  std::vector<PathPoint> axis;
  if (bore.empty() || !(to_m > from_m)) return axis;
  axis.push_back(on_axis(bore, from_m));
  for (const PathPoint& p : bore.path.points)
    if (p.s_m > from_m && p.s_m < to_m) axis.push_back(p);
  axis.push_back(on_axis(bore, to_m));
  return axis;
}

double heave_share(double behind_nose_m, double depth_m) {
  return 0.5 * (1 + behind_nose_m / std::hypot(behind_nose_m, depth_m));
}

int next_mark(const Playback& bore, double nose_m) {
  const auto it = std::upper_bound(bore.marks_m.begin(), bore.marks_m.end(), nose_m + at_mark_m);
  return it == bore.marks_m.end() ? -1 : static_cast<int>(it - bore.marks_m.begin());
}

int last_mark(const Playback& bore, double nose_m) {
  const auto it = std::upper_bound(bore.marks_m.begin(), bore.marks_m.end(), nose_m + at_mark_m);
  return static_cast<int>(it - bore.marks_m.begin()) - 1;
}

std::vector<double> times_between(const BorePath& path, const std::vector<double>& nose_m,
                                  const std::vector<double>& time_s) {
  BURROW_ENSURE(!nose_m.empty() && nose_m.size() == time_s.size());
  std::vector<double> times;
  for (const PathPoint& p : path.points) times.push_back(value_at(nose_m, time_s, p.s_m));
  return times;
}

}  // namespace burrow
