#include "burrow/drawing/frame.h"

#include <algorithm>
#include <cmath>

namespace burrow {

Pane Frame::pane_at(const QPointF& p) const {
  if (elevation.contains(p)) return Pane::elevation;
  if (!turning.isEmpty() && turning.contains(p)) return Pane::turning;
  if (ruler.contains(p)) return Pane::ruler;
  if (plan.contains(p)) return Pane::plan;
  if (flags.contains(p) || on_top.contains(p) || names.contains(p)) return Pane::lane;
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

void lay_out(Frame& frame, const QRectF& area, double split, const LaneSizes& lanes, Views views) {
  const double strip = std::floor(std::clamp(lanes.turning, 0.0, 0.22 * area.height()));
  const double fixed = lanes.flags + lanes.on_top + lanes.names + strip + lanes.ruler;
  const double usable = std::max(0.0, area.height() - fixed);
  const double upper = views == Views::side   ? usable
                       : views == Views::plan ? 0
                                              : std::floor(usable * std::clamp(split, 0.2, 0.85));
  const double left = area.left() + lanes.gutter, width = std::max(1.0, area.width() - lanes.gutter);
  double top = area.top();
  const auto next = [&](double height) {
    const QRectF box(left, top, width, height);
    top += height;
    return box;
  };
  frame.flags = next(lanes.flags);
  frame.on_top = next(lanes.on_top);
  frame.elevation = next(views == Views::plan ? 0 : std::max(1.0, upper));
  frame.names = next(lanes.names);
  frame.turning = next(strip);
  frame.ruler = next(lanes.ruler);
  frame.plan = next(views == Views::side ? 0 : std::max(1.0, usable - upper));
}

double split_at(const Frame& frame, double y) {
  const double upper =
      y - frame.names.height() - frame.turning.height() - frame.ruler.height() / 2 - frame.elevation.top();
  return upper / std::max(1.0, frame.elevation.height() + frame.plan.height());
}

LevelBand levels_to_show(const Crossing& crossing, const Assessment& assessment, double from_m, double to_m) {
  constexpr double spread_sds = 2.576;  // 99 % of one coordinate
  constexpr double near_m = 1.5, water_near_m = 1.0, air_m = 0.3;
  const LevelLine& ground = crossing.site.ground;
  double high = -1e300;
  double low = std::min({crossing.bore.launch.elevation.m, assessment.launch_pit.floor_elevation_m,
                         assessment.exit_pit.floor_elevation_m});
  for (const double x : {from_m, to_m}) high = std::max(high, elevation_at(ground, x));
  for (const LevelPoint& p : ground)
    if (p.station_m > from_m && p.station_m < to_m) high = std::max(high, p.elevation_m);
  for (const PathPoint& p : assessment.bore.points) low = std::min(low, p.z_m - spread_sds * p.sd_vertical_m);
  for (const UtilityAnswer& u : assessment.utilities)
    if (u.separation_m && *u.separation_m < near_m && u.on_utility) low = std::min(low, u.on_utility->z_m);
  if (crossing.site.water && !crossing.site.water->empty()) {
    const double water = elevation_at(*crossing.site.water, (from_m + to_m) / 2);
    if (water > low - water_near_m) low = std::min(low, water);
  }
  return {low - air_m, std::max(high, low + air_m) + air_m};
}

void fit(Frame& frame, const Crossing& crossing, const Assessment& assessment, bool automatic) {
  double from = std::min(crossing.bore.launch.station.m, assessment.launch_pit.floor_from_m);
  double to = std::max(crossing.bore.exit.station.m, assessment.exit_pit.floor_to_m);
  for (const PitShape* pit : {&assessment.launch_pit, &assessment.exit_pit})
    for (const PlanPoint& p : pit->footprint) {
      from = std::min(from, p.x_m);
      to = std::max(to, p.x_m);
    }
  const double margin = std::max(0.6, 0.03 * (to - from));
  from -= margin;
  to += margin;

  const LevelBand band = levels_to_show(crossing, assessment, from, to);
  const double high = band.high_m - band.low_m;
  frame.px_per_m = frame.elevation.width() / std::max(1.0, to - from);
  const double centre = (crossing.bore.launch.offset->m + crossing.bore.exit.offset->m) / 2;
  if (frame.elevation.isEmpty()) {  // the plan alone: the heights are chosen when they are shown
    constexpr double least_plan_m = 3;
    frame.px_per_m = std::min(frame.px_per_m, frame.plan.height() / least_plan_m);
    frame.left_station_m = (from + to - frame.elevation.width() / frame.px_per_m) / 2;
    frame.top_offset_m = centre + frame.plan.height() / frame.px_per_m / 2;
    return;
  }
  const double room = std::max(40.0, frame.elevation.height());
  if (automatic) {
    frame.exaggeration = 1;
    for (const double factor : height_factors)
      if (high * frame.px_per_m * factor <= room) frame.exaggeration = factor;
  }
  frame.px_per_m = std::min(frame.px_per_m, room / (high * frame.exaggeration));
  const double seen_m = frame.elevation.width() / frame.px_per_m;
  frame.left_station_m = (from + to) / 2 - seen_m / 2;
  // What is left over goes below, where the ground is.
  constexpr double share_above = 0.2;
  const double px_per_level = frame.px_per_m * frame.exaggeration;
  frame.top_elevation_m = band.high_m + share_above * std::max(0.0, room - high * px_per_level) / px_per_level;
  frame.top_offset_m = centre + frame.plan.height() / frame.px_per_m / 2;
}

bool raise_heights(Frame& frame, double miss_m, const LevelBand& shown) {
  constexpr double factors[] = {1, 1.5, 2, 2.5, 3, 4, 5, 7, 10, 15, 20, 30, 50};
  const double seen_px = std::abs(miss_m) * frame.px_per_m, high = shown.high_m - shown.low_m;
  if (!(seen_px > 0) || seen_px * frame.exaggeration >= least_miss_px || frame.elevation.isEmpty()) return false;
  double raised = frame.exaggeration;
  for (const double factor : factors) {
    if (factor <= frame.exaggeration) continue;
    if (high * frame.px_per_m * factor > frame.elevation.height()) break;
    raised = factor;
    if (seen_px * factor >= least_miss_px) break;
  }
  if (!(raised > frame.exaggeration)) return false;
  frame.exaggeration = raised;
  const double shown_m = frame.elevation.height() / (frame.px_per_m * raised);
  frame.top_elevation_m = (shown.low_m + shown.high_m) / 2 + shown_m / 2;
  return true;
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
