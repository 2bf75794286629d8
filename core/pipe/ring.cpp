#include "burrow/pipe/ring.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

constexpr double psi_Pa = 6894.757293168361, degree = pi / 180;

Result<void> check(const Ring& ring) {
  if (!(ring.ratio > 2) || !std::isfinite(ring.ratio))
    return out_of_range("ratio of diameter to wall", ring.ratio, "> 2");
  if (!(ring.modulus_Pa > 0) || !std::isfinite(ring.modulus_Pa))
    return out_of_range("modulus", ring.modulus_Pa, "> 0 Pa");
  return {};
}

Result<void> check(Pressure load) {
  if (!(load.Pa >= 0) || !std::isfinite(load.Pa)) return out_of_range("load", load.Pa, ">= 0 Pa");
  return {};
}

double cube(double v) {
  return v * v * v;
}

}  // namespace

Result<Ratio> supported_deflection(const Ring& ring, Pressure load, Pressure soil_modulus) {
  if (const Result<void> sound = check(ring); !sound) return tl::unexpected(sound.error());
  if (const Result<void> sound = check(load); !sound) return tl::unexpected(sound.error());
  if (!(soil_modulus.Pa >= 0)) return out_of_range("soil modulus", soil_modulus.Pa, ">= 0 Pa");
  const double stiffness = 2.0 / 3 * ring.modulus_Pa / cube(ring.ratio - 1);
  return Ratio{bedding_constant * load.Pa / (stiffness + 0.061 * soil_modulus.Pa)};
}

Result<Ratio> bare_deflection(const Ring& ring, Pressure load) {
  if (const Result<void> sound = check(ring); !sound) return tl::unexpected(sound.error());
  if (const Result<void> sound = check(load); !sound) return tl::unexpected(sound.error());
  return Ratio{0.0125 * load.Pa * 12 * cube(ring.ratio - 1) / ring.modulus_Pa};
}

Result<Pressure> ring_compression(double ratio, Pressure load) {
  if (!(ratio > 2)) return out_of_range("ratio of diameter to wall", ratio, "> 2");
  if (const Result<void> sound = check(load); !sound) return tl::unexpected(sound.error());
  return Pressure{load.Pa * ratio / 2};
}

Result<Ratio> ovality_factor(Ratio deflection) {
  if (!(deflection.v >= 0 && deflection.v < 1)) return out_of_range("deflection", deflection.v, "0 to below 1");
  return Ratio{cube((1 - deflection.v) / ((1 + deflection.v) * (1 + deflection.v)))};
}

Result<Pressure> collapse_pressure(const Ring& ring, Ratio ovality) {
  if (const Result<void> sound = check(ring); !sound) return tl::unexpected(sound.error());
  if (!(ring.poisson >= 0 && ring.poisson < 1)) return out_of_range("Poisson's ratio", ring.poisson, "0 to below 1");
  if (!(ovality.v > 0 && ovality.v <= 1)) return out_of_range("ovality factor", ovality.v, "above 0, to 1");
  return Pressure{2 * ring.modulus_Pa * ovality.v / ((1 - ring.poisson * ring.poisson) * cube(ring.ratio - 1))};
}

Result<ElasticSupport> elastic_support(Length cover, Length diameter) {
  if (!(cover.m >= 0) || !std::isfinite(cover.m)) return out_of_range("cover", cover.m, ">= 0 m");
  if (!(diameter.m > 0)) return out_of_range("diameter", diameter.m, "> 0 m");
  ElasticSupport support;
  support.by_cover = 1 / (1 + 4 * std::exp(-0.065 * cover.m / 0.3048));
  const double h = cover.m, twice = 2 * h + diameter.m;
  support.by_luscher = 4 * (h * h + diameter.m * h) / (1.5 * twice * twice);
  support.value = std::min(support.by_cover, support.by_luscher);
  return support;
}

Result<Ratio> buoyancy_factor(Length water_above, Length cover) {
  if (!(cover.m > 0)) return out_of_range("cover", cover.m, "> 0 m");
  if (!std::isfinite(water_above.m)) return out_of_range("water above", water_above.m, "a number");
  return Ratio{1 - 0.33 * std::clamp(water_above.m / cover.m, 0.0, 1.0)};
}

Result<Pressure> supported_buckling(const Ring& ring, double support, double buoyancy, Pressure soil_modulus,
                                    double safety) {
  if (const Result<void> sound = check(ring); !sound) return tl::unexpected(sound.error());
  if (!(support >= 0)) return out_of_range("elastic support", support, ">= 0");
  if (!(buoyancy >= 0)) return out_of_range("buoyancy factor", buoyancy, ">= 0");
  if (!(soil_modulus.Pa >= 0)) return out_of_range("soil modulus", soil_modulus.Pa, ">= 0 Pa");
  if (!(safety > 0)) return out_of_range("safety", safety, "> 0");
  const double bending_Pa = ring.modulus_Pa / (12 * cube(ring.ratio - 1));
  return Pressure{5.65 / safety * std::sqrt(buoyancy * support * soil_modulus.Pa * bending_Pa)};
}

Pressure soil_support_modulus(const Soil& soil) {
  if (!soil.drained) {
    const double s_u = soil.undrained_strength.Pa;
    if (s_u < 24e3) return Pressure{50 * psi_Pa};
    return Pressure{(s_u < 48e3 ? 200 : 700) * psi_Pa};
  }
  const double phi = soil.friction_angle.rad;
  if (phi < 30 * degree) return Pressure{50 * psi_Pa};
  return Pressure{(phi < 34 * degree ? 200 : 700) * psi_Pa};
}

}  // namespace burrow
