#include "burrow/soil/settlement.h"

#include <algorithm>
#include <cmath>

namespace burrow {

Result<double> open_area_m2(Length hole, Length pipe, std::int64_t count) {
  if (!(hole.m > 0) || !std::isfinite(hole.m)) return out_of_range("hole diameter", hole.m, "> 0 m");
  if (!(pipe.m >= 0) || !std::isfinite(pipe.m)) return out_of_range("pipe diameter", pipe.m, ">= 0 m");
  if (count < 0) return out_of_range("number of pipes", static_cast<double>(count), ">= 0");
  return std::max(0.0, pi / 4 * (hole.m * hole.m - static_cast<double>(count) * pipe.m * pipe.m));
}

Result<Length> later_settlement(double area_m2, Length axis_depth, Ratio share, Length beside) {
  if (!(area_m2 >= 0) || !std::isfinite(area_m2)) return out_of_range("open area", area_m2, ">= 0 m2");
  if (!(axis_depth.m > 0) || !std::isfinite(axis_depth.m)) return out_of_range("axis depth", axis_depth.m, "> 0 m");
  if (!(share.v >= 0) || !std::isfinite(share.v)) return out_of_range("share", share.v, ">= 0");
  if (!std::isfinite(beside.m)) return out_of_range("distance beside", beside.m, "a number");
  const double i = 0.5 * axis_depth.m;
  return Length{share.v * area_m2 / (std::sqrt(2 * pi) * i) * std::exp(-beside.m * beside.m / (2 * i * i))};
}

}  // namespace burrow
