#include "burrow/load/highway.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

constexpr double foot_m = 0.3048, kip_N = 4448.2216152605;
constexpr double patch_width_m = 20.0 / 12 * foot_m, patch_length_m = 10.0 / 12 * foot_m;
constexpr double wheel_gauge_m = 6 * foot_m;

struct Vehicle {
  double wheel_N, axles_apart_m;
};

constexpr Vehicle vehicle_of(HighwayVehicle vehicle) {
  return vehicle == HighwayVehicle::truck ? Vehicle{16 * kip_N, 14 * foot_m} : Vehicle{12.5 * kip_N, 4 * foot_m};
}

Result<void> check(Length cover, Length span, Ratio spread) {
  if (!(cover.m > 0) || !std::isfinite(cover.m)) return out_of_range("cover", cover.m, "> 0 m");
  if (!(span.m >= 0) || !std::isfinite(span.m)) return out_of_range("span", span.m, ">= 0 m");
  if (!(spread.v > 0) || !std::isfinite(spread.v)) return out_of_range("spread", spread.v, "> 0");
  return {};
}

}  // namespace

Result<Ratio> highway_impact(Length cover) {
  if (!(cover.m >= 0)) return out_of_range("cover", cover.m, ">= 0 m");
  return Ratio{std::max(0.0, 0.33 * (1 - 0.125 * cover.m / foot_m))};
}

Result<Ratio> multiple_presence(int lanes) {
  if (!(lanes >= 1)) return out_of_range("lanes", lanes, ">= 1");
  constexpr double presence[] = {1.20, 1.00, 0.85, 0.65};
  return Ratio{presence[std::min(lanes, 4) - 1]};
}

Result<HighwayPressure> highway_pressure(HighwayVehicle which, Length cover, Length span, Ratio spread) {
  if (const Result<void> sound = check(cover, span, spread); !sound) return tl::unexpected(sound.error());
  const Vehicle vehicle = vehicle_of(which);
  HighwayPressure p;
  p.vehicle = which;
  p.wheel_N = vehicle.wheel_N;
  p.spread = spread.v;
  p.length_m = patch_length_m + spread.v * cover.m;
  p.width_m = patch_width_m + spread.v * cover.m + 0.06 * span.m;
  if (p.width_m >= wheel_gauge_m) {
    p.width_m += wheel_gauge_m;
    p.wheels *= 2;
  }
  if (p.length_m >= vehicle.axles_apart_m) {
    p.length_m += vehicle.axles_apart_m;
    p.wheels *= 2;
  }
  p.presence = multiple_presence(1)->v;
  p.impact = highway_impact(cover)->v;
  p.pressure_Pa = p.wheels * p.wheel_N * p.presence * (1 + p.impact) / (p.length_m * p.width_m);
  p.negligible = cover.m > 8 * foot_m && cover.m > span.m;
  return p;
}

Result<HighwayPressure> highway_pressure(Length cover, Length span, Ratio spread) {
  const Result<HighwayPressure> truck = highway_pressure(HighwayVehicle::truck, cover, span, spread);
  const Result<HighwayPressure> tandem = highway_pressure(HighwayVehicle::tandem, cover, span, spread);
  if (!truck || !tandem) return truck;
  return truck->pressure_Pa >= tandem->pressure_Pa ? truck : tandem;
}

Result<Pressure> single_wheel_pressure(Force wheel, Length cover, Ratio spread, Ratio presence, Ratio load_factor) {
  if (const Result<void> sound = check(cover, Length{0}, spread); !sound) return tl::unexpected(sound.error());
  if (!(wheel.N >= 0)) return out_of_range("wheel load", wheel.N, ">= 0 N");
  if (!(presence.v > 0)) return out_of_range("multiple presence", presence.v, "> 0");
  if (!(load_factor.v > 0)) return out_of_range("load factor", load_factor.v, "> 0");
  const double area_m2 = (patch_length_m + spread.v * cover.m) * (patch_width_m + spread.v * cover.m);
  return Pressure{wheel.N * presence.v * load_factor.v / area_m2};
}

}  // namespace burrow
