#include "burrow/load/live.h"
#include "burrow/base/phrase.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

Traffic usual(SurfaceKind kind) {
  switch (kind) {
    case SurfaceKind::track:
      return Traffic::cooper_e80;
    case SurfaceKind::road:
    case SurfaceKind::drive:
      return Traffic::highway;
    case SurfaceKind::footway:
      return Traffic::cars;
    case SurfaceKind::ditch:
    case SurfaceKind::footing:
    case SurfaceKind::building:
    case SurfaceKind::wall:
      break;
  }
  return Traffic::none;
}

LiveLoad load_of(double pressure_Pa, std::string_view source, SourceLabel label, double cover_m) {
  LiveLoad load;
  load.pressure_Pa = pressure_Pa;
  load.source = source;
  load.label = label;
  load.cover_m = cover_m;
  return load;
}

Result<LiveLoad> highway_load(Length cover, Length span) {
  const Result<HighwayPressure> highway = highway_pressure(cover, span);
  if (!highway) return tl::unexpected(highway.error());
  LiveLoad load = load_of(highway->negligible ? 0 : highway->pressure_Pa,
                          "AASHTO LRFD 3.6.1.2, 3.6.2.2, the greater of truck and tandem, spread 1.00 for each unit of "
                          "depth, one lane",
                          SourceLabel::from_memory, cover.m);
  load.highway = *highway;
  return load;
}

Result<LiveLoad> european_load(Length cover, Length carriageway) {
  const Result<EuropeanPressure> european = european_pressure(carriageway, cover);
  if (!european) return tl::unexpected(european.error());
  const bool axle = european->model_2_Pa > european->model_1_Pa;
  LiveLoad load =
      load_of(european->greater_Pa(),
              axle ? translatable("EN 1991-2 load model 2, single axle of 400 kN, half-space, worst place below")
                   : translatable("EN 1991-2 load model 1, tandems and even load, half-space, worst place below"),
              axle ? SourceLabel::from_memory : SourceLabel::second_hand, cover.m);
  load.european = *european;
  return load;
}

Result<LiveLoad> rail_load(Length cover) {
  const double below_ties_m = std::max(cover.m - tie_depth_m, 0.05);
  const Result<RailPressure> rail = rail_pressure(Length{below_ties_m});
  if (!rail) return tl::unexpected(rail.error());
  LiveLoad load =
      load_of(rail->pressure_Pa,
              rail->by_table
                  ? translatable("Cooper E80 by the printed table, impact included; cover from the bottom of the ties")
                  : translatable("Cooper E80 by the half-space with impact; cover from the bottom of the ties"),
              rail->by_table ? SourceLabel::second_hand : SourceLabel::from_memory, below_ties_m);
  load.rail = *rail;
  return load;
}

Result<LiveLoad> group_load(Result<Pressure> pressure, std::string_view source, Length cover) {
  if (!pressure) return tl::unexpected(pressure.error());
  return load_of(pressure->Pa, source, SourceLabel::from_memory, cover.m);
}

}  // namespace

TrafficAbove traffic_of(const SurfaceFeature& feature) {
  if (!feature.traffic || feature.traffic->empty()) return {usual(feature.kind), false, true};
  if (const auto word = from_word<Traffic>(*feature.traffic)) return {*word, true, true};
  return {feature.kind == SurfaceKind::track ? Traffic::cooper_e80 : Traffic::highway, true, false};
}

Result<LiveLoad> live_load(Traffic traffic, Length cover, Length span, Length road_width) {
  if (!(cover.m > 0) || !std::isfinite(cover.m)) return out_of_range("cover", cover.m, "> 0 m");
  switch (traffic) {
    case Traffic::highway:
      return highway_load(cover, span);
    case Traffic::cooper_e80:
      return rail_load(cover);
    case Traffic::european:
      return european_load(cover, Length{std::abs(road_width.m)});
    case Traffic::light:
      return group_load(group_pressure(WheelGroup::light_vehicle, cover),
                        translatable("EN 1991-1-1 category G, axle of 90 kN, half-space, worst place below"), cover);
    case Traffic::cars:
      return group_load(group_pressure(WheelGroup::car, cover),
                        translatable("EN 1991-1-1 category F, axle of 20 kN, half-space, worst place below"), cover);
    case Traffic::none:
      break;
  }
  return load_of(0, "nothing runs above", SourceLabel::our_default, cover.m);
}

double reach_aside_m(Length cover) {
  return spread_granular * std::max(cover.m, 0.0) / 2;
}

Result<Pressure> plant_stress(const std::vector<Plant>& plant, const PlanPoint& below, Length depth) {
  if (!(depth.m > 0) || !std::isfinite(depth.m)) return out_of_range("depth", depth.m, "> 0 m");
  Pressure sum;
  for (const Plant& machine : plant) {
    const double load_N = machine.load.N * machine.dynamic_factor->v;
    const double x = machine.station.m, y = machine.offset.m;
    const double area_m2 = machine.length.m * machine.width.m;
    constexpr double least_area_m2 = 1e-6;
    const Result<Pressure> one =
        area_m2 > least_area_m2 ? rectangle_stress({x - machine.length.m / 2, x + machine.length.m / 2,
                                                    y - machine.width.m / 2, y + machine.width.m / 2, load_N / area_m2},
                                                   below, depth)
                                : point_stress(Force{load_N}, Length{std::hypot(x - below.x_m, y - below.y_m)}, depth);
    if (!one) return one;
    sum.Pa += one->Pa;
  }
  if (!std::isfinite(sum.Pa))
    return out_of_range(translatable("load of the machines"), sum.Pa, translatable("a number"));
  return sum;
}

}  // namespace burrow
