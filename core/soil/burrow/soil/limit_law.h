#pragma once
/// Limit pressure of one soil as a function of the stress alone, made fast enough for every step of a path.

#include <optional>

#include "burrow/base/numerics.h"
#include "burrow/soil/soil.h"

namespace burrow {

/// Undrained: q = (1 + K0)/2 · σ_v + s_u (1 + ln(G/s_u)), a straight line in the total stress.
/// Drained:   q = p_L′(p0′) + u with p0′ = (1 + K0)/2 · σ_v′, not below 0.5 kPa; p_L′ by `drained_limit`, cylinder.
/// Source: help page Method (our model) on Gibson & Anderson 1961 and Yu & Houlsby 1991. By the theorem of
/// corresponding states the solver depends on p0′ + c cot φ alone, so ln(p_L′ + c cot φ) is fitted over ln(p0′ + c cot
/// φ) at 12 Chebyshev nodes. Range: any soil. Angles outside the method's range are taken at its nearest edge, a
/// modulus below what the strength needs as that need; beyond the fitted stress the solver itself is asked. Evidence:
/// LimitLaw.Solver_FitError, LimitLaw.AnySoil_FinitePressure
class LimitLaw {
 public:
  /// `deepest`: mean effective stress up to which the fit is made.
  LimitLaw(const Soil& soil, Pressure deepest);

  [[nodiscard]] bool drained() const { return fit_.has_value(); }
  /// (1 + K0)/2, from the vertical to the mean stress across the axis.
  [[nodiscard]] double mean_share() const { return mean_share_; }
  /// s_u (1 + ln(G/s_u)); undrained only.
  [[nodiscard]] double strength_part_Pa() const { return strength_part_; }
  /// tan φ′ on an upright slip; 0 undrained.
  [[nodiscard]] double friction_tangent() const { return friction_tangent_; }
  /// p_L′ at one mean effective stress; drained only.
  [[nodiscard]] double effective_limit_Pa(double mean_effective_Pa) const;
  /// The same at several at once, in place; N = 6 or 12. The greatest is the first or the last.
  template <std::size_t N>
  void effective_limits(std::array<double, N>& mean_effective_Pa) const;

 private:
  [[nodiscard]] double solve(double mean_effective_Pa) const;

  Soil soil_;
  double mean_share_ = 1;
  double strength_part_ = 0;
  double friction_tangent_ = 0;
  double shift_ = 0;    // c cot φ
  double deepest_ = 0;  // end of the fit
  std::optional<ChebyshevFit> fit_;
};

/// p0′ is not taken below this. Source: our model.
inline constexpr double least_mean_effective_Pa = 500.0;

}  // namespace burrow
