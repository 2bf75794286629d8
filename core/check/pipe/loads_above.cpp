#include "loads_above.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/load/earth.h"

namespace burrow {

LoadsAbove::LoadsAbove(const Crossing& crossing, const Ground& ground, Length hole,
                       const std::vector<PathPoint>& points)
    : crossing_(crossing), ground_(ground), hole_m_(hole.m) {
  for (const SurfaceFeature& feature : crossing.site.surface) {
    const TrafficAbove above = traffic_of(feature);
    if (above.traffic == Traffic::none) continue;
    if (const auto stretch = stretch_of(feature, points))
      traffic_.push_back({&feature, above, *stretch, road_width_m(feature, *stretch)});
  }
}

std::optional<LiveLoad> LoadsAbove::live_at(double x_m, double y_m, double cover_m, std::string* id) const {
  std::optional<LiveLoad> greatest;
  const double reach = reach_aside_m(Length{cover_m});
  for (const TrafficStretch& t : traffic_) {
    if (x_m < t.stretch.from_m - reach || x_m > t.stretch.to_m + reach) continue;
    const Result<LiveLoad> load = live_load(t.above.traffic, Length{cover_m}, Length{hole_m_}, Length{t.road_width_m});
    if (!load || (greatest && !(load->pressure_Pa > greatest->pressure_Pa))) continue;
    greatest = *load;
    if (id) *id = t.feature->id;
  }
  if (crossing_.site.plant.empty()) return greatest;
  const Result<Pressure> machines = plant_stress(crossing_.site.plant, {x_m, y_m}, Length{cover_m});
  if (machines && machines->Pa > (greatest ? greatest->pressure_Pa : 0)) {
    greatest = LiveLoad{};
    greatest->pressure_Pa = machines->Pa;
    greatest->source = translatable("machines standing above, even rectangles on a half-space (Newmark 1935)");
    greatest->cover_m = cover_m;
    if (id) *id = crossing_.site.plant.front().id;
  }
  return greatest;
}

std::optional<LoadPoint> LoadsAbove::at(double x_m, double y_m, double crown_m, Column& column) const {
  const double cover = ground_.surface_m(x_m, y_m) - crown_m;
  constexpr double least_cover_m = 0.02;
  if (!(cover > least_cover_m)) return std::nullopt;
  LoadPoint load;
  load.station_m = x_m;
  load.depth_m = cover;
  ground_.fill(column, x_m, y_m);
  load.earth_Pa = column.vertical_stress(crown_m);
  const double axis_m = crown_m - hole_m_ / 2;
  load.water_Pa = std::max(column.pore_pressure(axis_m), 0.0);
  const double k_mu = k_mu_of(ground_.soil_at(x_m, y_m, axis_m));
  const auto silo = silo_pressure(UnitWeight{load.earth_Pa / cover}, Length{cover}, Length{hole_m_}, k_mu, Pressure{0});
  load.earth_arched_Pa = silo ? std::min(silo->pressure_Pa, load.earth_Pa) : load.earth_Pa;
  if (const auto live = live_at(x_m, y_m, cover, &load.live)) load.live_Pa = live->pressure_Pa;
  return load;
}

double LoadsAbove::k_mu_at(const PathPoint& axis) const {
  return k_mu_of(ground_.soil_at(axis.x_m, axis.y_m, axis.z_m));
}

}  // namespace burrow
