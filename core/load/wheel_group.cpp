#include "burrow/load/wheel_group.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {

RectangleLoad wheel(double x_m, double y_m, double along_m, double across_m, double load_N) {
  return {x_m - along_m / 2, x_m + along_m / 2, y_m - across_m / 2, y_m + across_m / 2, load_N / (along_m * across_m)};
}

RectangleLoad wheel(double x_m, double y_m, double side_m, double load_N) {
  return wheel(x_m, y_m, side_m, side_m, load_N);
}

std::vector<RectangleLoad> axle(double side_m, double axle_N) {
  return {wheel(0, -0.9, side_m, axle_N / 2), wheel(0, 0.9, side_m, axle_N / 2)};
}

constexpr double shallow_m = 0.05, deep_m = 60;
constexpr std::size_t rows = 96;

class DepthTable {
 public:
  explicit DepthTable(const std::vector<RectangleLoad>& wheels) {
    for (std::size_t i = 0; i < rows; ++i) log_Pa_[i] = std::log(worst_stress(wheels, Length{depth_at(i)})->Pa);
  }
  [[nodiscard]] double operator()(double depth_m) const {
    const double at = std::log(std::clamp(depth_m, shallow_m, deep_m) / shallow_m) / step();
    const std::size_t i = std::min(static_cast<std::size_t>(at), rows - 2);
    const double part = at - static_cast<double>(i);
    const double pressure = std::exp(log_Pa_[i] + part * (log_Pa_[i + 1] - log_Pa_[i]));
    return depth_m > deep_m ? pressure * (deep_m / depth_m) * (deep_m / depth_m) : pressure;
  }

 private:
  static double step() { return std::log(deep_m / shallow_m) / static_cast<double>(rows - 1); }
  static double depth_at(std::size_t i) { return shallow_m * std::exp(step() * static_cast<double>(i)); }
  std::array<double, rows> log_Pa_{};
};

const DepthTable& table_of(WheelGroup group) {
  switch (group) {
    case WheelGroup::european_1: {
      static const DepthTable table(european_wheels(1));
      return table;
    }
    case WheelGroup::european_2: {
      static const DepthTable table(european_wheels(2));
      return table;
    }
    case WheelGroup::european_3: {
      static const DepthTable table(european_wheels(3));
      return table;
    }
    case WheelGroup::european_2_narrow: {
      static const DepthTable table(european_wheels(2, two_lanes_from_m / 2));
      return table;
    }
    case WheelGroup::european_axle: {
      static const DepthTable table(european_single_axle());
      return table;
    }
    case WheelGroup::light_vehicle: {
      static const DepthTable table(light_vehicle_wheels());
      return table;
    }
    case WheelGroup::car:
      break;
  }
  static const DepthTable table(car_wheels());
  return table;
}

}  // namespace

NotionalLanes notional_lanes(Length carriageway) {
  const double width = carriageway.m;
  if (!(width >= two_lanes_from_m)) return {};
  if (width < three_metre_lanes_from_m) return {2, width / 2};
  constexpr double hair = 1e-9, loaded_at_most = 3;  // a width of 9 m read off a drawing holds three
  return {static_cast<int>(std::min(std::floor(width / 3 + hair), loaded_at_most)), 3};
}

std::vector<RectangleLoad> european_wheels(int lanes, double lane_width_m) {
  BURROW_ENSURE(lanes >= 1 && lanes <= 3);
  constexpr double axle_N[] = {300e3, 200e3, 100e3};
  const double middle_m[] = {0, lane_width_m, -lane_width_m};
  std::vector<RectangleLoad> wheels;
  for (int lane = 0; lane < lanes; ++lane)
    for (const double x : {-0.6, 0.6})
      for (const double y : {-1.0, 1.0}) wheels.push_back(wheel(x, middle_m[lane] + y, 0.40, axle_N[lane] / 2));
  return wheels;
}

std::vector<RectangleLoad> european_single_axle() {
  constexpr double wheel_N = 200e3, along_m = 0.35, across_m = 0.60;
  return {wheel(0, -1, along_m, across_m, wheel_N), wheel(0, 1, along_m, across_m, wheel_N)};
}

std::vector<RectangleLoad> car_wheels() {
  return axle(0.10, 20e3);
}

std::vector<RectangleLoad> light_vehicle_wheels() {
  return axle(0.20, 90e3);
}

Result<Pressure> worst_stress(const std::vector<RectangleLoad>& wheels, Length depth) {
  if (!(depth.m > 0) || !std::isfinite(depth.m)) return out_of_range("depth", depth.m, "> 0 m");
  Pressure worst;
  for (int i = 0; i <= 6; ++i)
    for (int j = -1; j <= 15; ++j) {  // from the middle of the first lane to that of the gap to the second
      const Result<Pressure> here = rectangles_stress(wheels, {0.1 * i, 0.1 * j}, depth);
      if (!here) return here;
      worst = std::max(worst, *here);
    }
  return worst;
}

Result<Pressure> group_pressure(WheelGroup group, Length depth) {
  if (!(depth.m > 0) || !std::isfinite(depth.m)) return out_of_range("depth", depth.m, "> 0 m");
  return Pressure{table_of(group)(depth.m)};
}

Result<EuropeanPressure> european_pressure(Length carriageway, Length depth) {
  constexpr WheelGroup groups[] = {WheelGroup::european_1, WheelGroup::european_2, WheelGroup::european_3};
  EuropeanPressure p;
  p.carriageway_m = carriageway.m;
  p.lanes = notional_lanes(carriageway);
  const bool narrow = p.lanes.count == 2 && p.lanes.width_m < 3;
  const Result<Pressure> wheels =
      group_pressure(narrow ? WheelGroup::european_2_narrow : groups[p.lanes.count - 1], depth);
  if (!wheels) return tl::unexpected(wheels.error());
  constexpr double first_lane_Pa = 9e3, beside_Pa = 2.5e3;
  const Result<Pressure> lane = strip_stress(Pressure{first_lane_Pa - beside_Pa}, Length{3}, Length{0}, depth);
  if (!lane) return tl::unexpected(lane.error());
  p.model_1_Pa = wheels->Pa + beside_Pa + lane->Pa;
  p.model_2_Pa = group_pressure(WheelGroup::european_axle, depth)->Pa;
  return p;
}

}  // namespace burrow
