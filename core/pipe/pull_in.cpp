#include "burrow/pipe/pull_in.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

double after(double pull_N, const HolePiece& piece) {
  const double weight = std::abs(piece.weight_N_m);
  const double drag_N_m = piece.friction * (weight * std::cos(piece.grade_rad) + piece.grip_N_m) +
                          weight * std::abs(std::sin(piece.grade_rad));
  const double turn = piece.friction * piece.turn_rad;
  const double grown = std::expm1(turn);
  return pull_N * (1 + grown) + drag_N_m * piece.length_m * (turn > 1e-12 ? grown / turn : 1);
}

Result<void> check(const HolePiece& piece) {
  if (!(piece.length_m >= 0)) return out_of_range("length", piece.length_m, ">= 0 m");
  if (!(piece.turn_rad >= 0)) return out_of_range("turn", piece.turn_rad, ">= 0 rad");
  if (!(piece.friction >= 0)) return out_of_range("friction", piece.friction, ">= 0");
  if (!(piece.grip_N_m >= 0)) return out_of_range("grip", piece.grip_N_m, ">= 0 N/m");
  if (!std::isfinite(piece.weight_N_m)) return out_of_range("weight", piece.weight_N_m, "a number");
  return {};
}

}  // namespace

Result<Force> pull_force(std::span<const HolePiece> pieces) {
  for (const HolePiece& piece : pieces)
    if (const Result<void> sound = check(piece); !sound) return tl::unexpected(sound.error());
  double onward_N = 0, back_N = 0;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    onward_N = after(onward_N, pieces[i]);
    back_N = after(back_N, pieces[pieces.size() - 1 - i]);
  }
  const double pull_N = std::max(onward_N, back_N);
  if (!std::isfinite(pull_N)) return out_of_range("pull", pull_N, "a number");
  return Force{pull_N};
}

Result<Force> push_limit(double bending_stiffness_N_m2, double weight_N_m, Length gap) {
  if (!(bending_stiffness_N_m2 > 0)) return out_of_range("bending stiffness", bending_stiffness_N_m2, "> 0 N m2");
  if (!(weight_N_m > 0)) return out_of_range("weight", weight_N_m, "> 0 N/m");
  if (!(gap.m > 0)) return out_of_range("gap", gap.m, "> 0 m");
  return Force{2 * std::sqrt(bending_stiffness_N_m2 * weight_N_m / gap.m)};
}

Result<Length> stretch(Force pull, Length length, double area_m2, Pressure modulus) {
  if (!(pull.N >= 0)) return out_of_range("pull", pull.N, ">= 0 N");
  if (!(length.m >= 0)) return out_of_range("length", length.m, ">= 0 m");
  if (!(area_m2 > 0)) return out_of_range("area", area_m2, "> 0 m2");
  if (!(modulus.Pa > 0)) return out_of_range("modulus", modulus.Pa, "> 0 Pa");
  return Length{pull.N * length.m / (area_m2 * modulus.Pa)};
}

}  // namespace burrow
