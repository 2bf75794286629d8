#include "burrow/load/earth.h"

#include <cmath>

namespace burrow {

namespace {

Result<void> check(UnitWeight unit_weight, Length cover) {
  if (!(unit_weight.N_m3 >= 0) || !std::isfinite(unit_weight.N_m3))
    return out_of_range("unit weight", unit_weight.N_m3, ">= 0 N/m3");
  if (!(cover.m >= 0) || !std::isfinite(cover.m)) return out_of_range("cover", cover.m, ">= 0 m");
  return {};
}

}  // namespace

Result<Pressure> prism_pressure(UnitWeight unit_weight, Length cover) {
  if (const Result<void> sound = check(unit_weight, cover); !sound) return tl::unexpected(sound.error());
  return Pressure{unit_weight.N_m3 * cover.m};
}

Result<Ratio> silo_coefficient(double k_mu, Length cover, Length width) {
  if (!(k_mu >= 0) || !std::isfinite(k_mu)) return out_of_range("K mu'", k_mu, ">= 0");
  if (!(cover.m >= 0) || !std::isfinite(cover.m)) return out_of_range("cover", cover.m, ">= 0 m");
  if (!(width.m > 0) || !std::isfinite(width.m)) return out_of_range("width", width.m, "> 0 m");
  const double h = cover.m / width.m;
  if (!(k_mu * h > 1e-12)) return Ratio{h};
  return Ratio{-std::expm1(-2 * k_mu * h) / (2 * k_mu)};
}

Result<SiloPressure> silo_pressure(UnitWeight unit_weight, Length cover, Length hole, double k_mu, Pressure cohesion) {
  if (const Result<void> sound = check(unit_weight, cover); !sound) return tl::unexpected(sound.error());
  if (!(cohesion.Pa >= 0)) return out_of_range("cohesion", cohesion.Pa, ">= 0 Pa");
  const Result<Ratio> coefficient = silo_coefficient(k_mu, cover, hole);
  if (!coefficient) return tl::unexpected(coefficient.error());
  const double carried = unit_weight.N_m3 * hole.m - 2 * cohesion.Pa;
  return SiloPressure{coefficient->v * std::max(carried, 0.0), coefficient->v, carried < 0};
}

Result<Pressure> arched_pressure(UnitWeight unit_weight, Length cover, Length width, Angle friction) {
  if (const Result<void> sound = check(unit_weight, cover); !sound) return tl::unexpected(sound.error());
  if (!(width.m > 0) || !std::isfinite(width.m)) return out_of_range("width", width.m, "> 0 m");
  if (!(friction.rad >= 0 && friction.rad < pi / 2)) return out_of_range("friction angle", friction.rad, "0 to pi/2");
  const double active = std::tan(pi / 4 - friction.rad / 2);
  const double x = 2 * active * active * cover.m / width.m * std::tan(friction.rad / 2);
  const double kappa = x > 1e-12 ? -std::expm1(-x) / x : 1;
  return Pressure{kappa * unit_weight.N_m3 * cover.m};
}

double k_mu_of(const Soil& soil) {
  return soil.drained ? 0.165 : 0.110;
}

}  // namespace burrow
