#include "burrow/drawing/frame.h"

#include <algorithm>
#include <cmath>

namespace burrow {

Pane Frame::pane_at(const QPointF& p) const {
  if (elevation.contains(p)) return Pane::elevation;
  if (!turning.isEmpty() && turning.contains(p)) return Pane::turning;
  if (ruler.contains(p)) return Pane::ruler;
  if (plan.contains(p)) return Pane::plan;
  return Pane::none;
}

void Frame::zoom(const QPointF& at, double factor) {
  const double scale = std::clamp(px_per_m * factor, 0.5, 20000.0);
  const double station = station_m(at.x());
  const Pane pane = pane_at(at);
  const double z = elevation_m(pane == Pane::elevation ? at.y() : elevation.center().y());
  const double y = offset_m(pane == Pane::plan ? at.y() : plan.center().y());
  px_per_m = scale;
  left_station_m = station - (at.x() - elevation.left()) / px_per_m;
  const double z_px = pane == Pane::elevation ? at.y() : elevation.center().y();
  const double y_px = pane == Pane::plan ? at.y() : plan.center().y();
  top_elevation_m = z + (z_px - elevation.top()) / (px_per_m * exaggeration);
  top_offset_m = y + (y_px - plan.top()) / px_per_m;
}

void Frame::pan(const QPointF& by) {
  left_station_m -= by.x() / px_per_m;
  top_elevation_m += by.y() / (px_per_m * exaggeration);
  top_offset_m += by.y() / px_per_m;
}

void lay_out(Frame& frame, const QRectF& area, double split, double gutter, double ruler_height,
             double turning_height) {
  const double strip = std::floor(std::clamp(turning_height, 0.0, 0.22 * area.height()));
  const double usable = std::max(0.0, area.height() - ruler_height - strip);
  const double upper = std::floor(usable * std::clamp(split, 0.2, 0.85));
  const double width = std::max(1.0, area.width() - gutter);
  frame.elevation = QRectF(area.left() + gutter, area.top(), width, std::max(1.0, upper));
  frame.turning = QRectF(area.left() + gutter, frame.elevation.bottom(), width, strip);
  frame.ruler = QRectF(area.left() + gutter, frame.turning.bottom(), width, ruler_height);
  frame.plan = QRectF(area.left() + gutter, frame.ruler.bottom(), width, std::max(1.0, usable - upper));
}

double split_at(const Frame& frame, double y) {
  const double upper = y - frame.turning.height() - frame.ruler.height() / 2 - frame.elevation.top();
  return upper / std::max(1.0, frame.elevation.height() + frame.plan.height());
}

void fit(Frame& frame, const Crossing& crossing, const Assessment& assessment, double sky) {
  const PitShape& launch = assessment.launch_pit;
  const PitShape& exit = assessment.exit_pit;
  double from = std::min(crossing.bore.launch.station.m, launch.floor_from_m);
  double to = std::max(crossing.bore.exit.station.m, exit.floor_to_m);
  for (const PitShape* pit : {&launch, &exit})
    for (const PlanPoint& p : pit->footprint) {
      from = std::min(from, p.x_m);
      to = std::max(to, p.x_m);
    }
  const double margin = std::max(0.6, 0.03 * (to - from));
  from -= margin;
  to += margin;

  double top = -1e300;
  double bottom = std::min(launch.floor_elevation_m, exit.floor_elevation_m);
  const LevelLine& ground = crossing.site.ground;
  for (const double x : {from, to}) top = std::max(top, elevation_at(ground, x));
  for (const LevelPoint& p : ground)
    if (p.station_m > from && p.station_m < to) top = std::max(top, p.elevation_m);
  for (const PathPoint& p : assessment.bore.points) bottom = std::min(bottom, p.z_m - 2.6 * p.sd_vertical_m);
  bottom = std::min(bottom, crossing.bore.launch.elevation.m) - 0.35;

  const double across = std::max(1.0, to - from);
  const double high = std::max(0.5, top - bottom);
  const double room = std::max(40.0, frame.elevation.height() - sky - 12.0);
  frame.px_per_m = std::min(frame.elevation.width() / across, room / (high * frame.exaggeration));
  const double seen_m = frame.elevation.width() / frame.px_per_m;
  frame.left_station_m = (from + to) / 2 - seen_m / 2;
  const double slack = room - high * frame.exaggeration * frame.px_per_m;
  frame.top_elevation_m = top + (sky + std::max(0.0, slack) * 0.35) / (frame.px_per_m * frame.exaggeration);
  const double centre = (crossing.bore.launch.offset->m + crossing.bore.exit.offset->m) / 2;
  frame.top_offset_m = centre + frame.plan.height() / frame.px_per_m / 2;
}

double tick_step(double px_per_m, double least_px, double unit_m) {
  const double least = least_px / (px_per_m * unit_m);
  const double power = std::pow(10.0, std::floor(std::log10(least)));
  for (const double factor : {1.0, 2.0, 5.0})
    if (factor * power >= least) return factor * power * unit_m;
  return 10.0 * power * unit_m;
}

std::vector<double> ticks(double from, double to, double step) {
  std::vector<double> all;
  if (!(step > 0) || (to - from) / step > 2000) return all;
  for (double n = std::ceil(from / step); n * step <= to; n += 1.0) all.push_back(n * step);
  return all;
}

}  // namespace burrow
