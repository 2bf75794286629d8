#include "burrow/soil/movement.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

Result<void> check(const OpenedHole& hole) {
  if (!(hole.radius.m > 0) || !std::isfinite(hole.radius.m)) return out_of_range("radius", hole.radius.m, "> 0 m");
  if (!(hole.axis_depth.m > hole.radius.m) || !std::isfinite(hole.axis_depth.m))
    return out_of_range("axis depth", hole.axis_depth.m, "more than the radius");
  if (!(hole.share.v >= 0) || !std::isfinite(hole.share.v)) return out_of_range("heave share", hole.share.v, ">= 0");
  return {};
}

/// f a²: all of the field is proportional to it.
double passed_on_m2(const OpenedHole& hole) {
  return hole.share.v * hole.radius.m * hole.radius.m;
}

}  // namespace

Result<Movement> ground_movement(const OpenedHole& hole, Length beside, Length depth, SourceTerm source) {
  if (auto ok = check(hole); !ok) return tl::unexpected(ok.error());
  if (!std::isfinite(beside.m)) return out_of_range("distance beside", beside.m, "a number");
  if (!(depth.m >= 0) || !std::isfinite(depth.m)) return out_of_range("depth", depth.m, ">= 0 m");
  const double x = beside.m, z = depth.m, h = hole.axis_depth.m, a2 = passed_on_m2(hole);
  const double z1 = z - h, z2 = z + h;
  const double r1 = std::hypot(x, z1), r2_2 = x * x + z2 * z2;
  if (!(r1 > 0)) return out_of_range("distance from the axis", r1, "> 0 m");
  const double radial = source == SourceTerm::linear ? a2 / (2 * r1) : a2 / (std::sqrt(r1 * r1 + a2) + r1);
  const double out = radial * x / r1 + a2 / 2 * x / r2_2 - 2 * a2 * x * z * z2 / (r2_2 * r2_2);
  const double down = radial * z1 / r1 - a2 / 2 * z2 / r2_2 + a2 * z * (x * x - z2 * z2) / (r2_2 * r2_2);
  return Movement{out, -down};
}

Result<Length> surface_rise(const OpenedHole& hole, Length beside) {
  if (auto ok = check(hole); !ok) return tl::unexpected(ok.error());
  if (!std::isfinite(beside.m)) return out_of_range("distance beside", beside.m, "a number");
  const double h = hole.axis_depth.m;
  return Length{passed_on_m2(hole) * h / (beside.m * beside.m + h * h)};
}

Result<Length> surface_rise_in_passing(const OpenedHole& hole, Length beside, Length ahead) {
  if (!std::isfinite(ahead.m)) return out_of_range("distance ahead", ahead.m, "a number");
  const auto full = surface_rise(hole, beside);
  if (!full) return full;
  const double h = hole.axis_depth.m;
  return Length{full->m / 2 * (1 - ahead.m / std::sqrt(beside.m * beside.m + ahead.m * ahead.m + h * h))};
}

Result<Length> gaussian_rise(const OpenedHole& hole) {
  if (auto ok = check(hole); !ok) return tl::unexpected(ok.error());
  const double i = 0.5 * hole.axis_depth.m;
  return Length{pi * passed_on_m2(hole) / (std::sqrt(2 * pi) * i)};
}

Result<UtilityMovement> utility_movement(const OpenedHole& hole, Length axis_offset, Length utility_diameter) {
  if (auto ok = check(hole); !ok) return tl::unexpected(ok.error());
  const double c = axis_offset.m, a2 = passed_on_m2(hole);
  if (!(c > 0) || !std::isfinite(c)) return out_of_range("axis offset", c, "> 0 m");
  if (!(utility_diameter.m >= 0) || !std::isfinite(utility_diameter.m))
    return out_of_range("utility diameter", utility_diameter.m, ">= 0 m");
  return UtilityMovement{a2 / (2 * c), a2 / (c * c * c) * utility_diameter.m / 2, a2 / (2 * c * c)};
}

Result<HeaveEstimate> surface_heave(Length radius, Length axis_depth, Ratio heave_share, double roof_cap_Pa,
                                    double limit_pressure_Pa) {
  const OpenedHole hole{radius, axis_depth, heave_share};
  const auto low = surface_rise(hole, Length{0});
  if (!low) return tl::unexpected(low.error());
  if (std::isnan(roof_cap_Pa)) return out_of_range("roof cap", roof_cap_Pa, "a pressure");
  if (std::isnan(limit_pressure_Pa)) return out_of_range("limit pressure", limit_pressure_Pa, "a pressure");
  HeaveEstimate heave;
  heave.low_m = low->m;
  heave.gaussian_m = gaussian_rise(hole)->m;
  heave.high_m = heave.gaussian_m;
  if (roof_cap_Pa < limit_pressure_Pa) {
    const double cover = axis_depth.m - radius.m;
    const double width = 2 * radius.m + 2 * cover * std::tan(20 * pi / 180);
    heave.block_m = pi * passed_on_m2(hole) / width;
    heave.high_m = std::max(heave.gaussian_m, *heave.block_m);
  }
  return heave;
}

}  // namespace burrow
