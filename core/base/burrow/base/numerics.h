#pragma once
/// Two small numerical tools whose inner loops are too hot for a library call.

#include <array>
#include <cmath>
#include <cstddef>

#include "burrow/base/quantity.h"

namespace burrow {

/// Nodes and weights of the N-point Gauss–Legendre rule on [−1, 1], N = 6 or 12.
/// Source: derived (roots of the Legendre polynomial by Newton in 40 digits).
/// Evidence: GaussLegendre.Boost_NodesAndWeights
template <std::size_t N>
struct GaussRule;
template <>
struct GaussRule<6> {
  static constexpr std::array<double, 6> nodes{-0.932469514203152028, -0.661209386466264514, -0.238619186083196909,
                                               0.238619186083196909,  0.661209386466264514,  0.932469514203152028};
  static constexpr std::array<double, 6> weights{0.171324492379170345, 0.360761573048138608, 0.467913934572691047,
                                                 0.467913934572691047, 0.360761573048138608, 0.171324492379170345};
};
template <>
struct GaussRule<12> {
  static constexpr std::array<double, 12> nodes{-0.981560634246719251, -0.904117256370474857, -0.769902674194304687,
                                                -0.587317954286617447, -0.367831498998180194, -0.125233408511468916,
                                                0.125233408511468916,  0.367831498998180194,  0.587317954286617447,
                                                0.769902674194304687,  0.904117256370474857,  0.981560634246719251};
  static constexpr std::array<double, 12> weights{0.047175336386511827, 0.106939325995318431, 0.160078328543346226,
                                                  0.203167426723065922, 0.233492536538354809, 0.249147045813402785,
                                                  0.249147045813402785, 0.233492536538354809, 0.203167426723065922,
                                                  0.160078328543346226, 0.106939325995318431, 0.047175336386511827};
};

/// Polynomial through a smooth function at 12 Chebyshev nodes of [low, high].
/// Source: Chebyshev interpolation, Clenshaw summation (textbook).   Range: low < high; outside them it must not be
/// asked. Evidence: ChebyshevFit.Exponential_RelativeError
class ChebyshevFit {
 public:
  static constexpr std::size_t nodes = 12;

  template <class Function>
  ChebyshevFit(double low, double high, Function&& f) : low_(low), high_(high) {
    std::array<double, nodes> values{};
    for (std::size_t k = 0; k < nodes; ++k) values[k] = f(low + (high - low) * 0.5 * (1.0 + std::cos(angle(k))));
    for (std::size_t j = 0; j < nodes; ++j) {
      double sum = 0;
      for (std::size_t k = 0; k < nodes; ++k) sum += values[k] * std::cos(static_cast<double>(j) * angle(k));
      coefficients_[j] = sum * (j == 0 ? 1.0 : 2.0) / static_cast<double>(nodes);
    }
  }

  double operator()(double x) const {
    const double t = scaled(x);
    double b1 = 0, b2 = 0;
    for (std::size_t j = nodes - 1; j > 0; --j) {
      const double b = coefficients_[j] + 2 * t * b1 - b2;
      b2 = b1;
      b1 = b;
    }
    return coefficients_[0] + t * b1 - b2;
  }

  /// The same at several arguments at once, in place.
  template <std::size_t N>
  void evaluate(std::array<double, N>& x) const {
    std::array<double, N> b1{}, b2{};
    for (double& v : x) v = scaled(v);
    for (std::size_t j = nodes - 1; j > 0; --j)
      for (std::size_t i = 0; i < N; ++i) {
        const double b = coefficients_[j] + 2 * x[i] * b1[i] - b2[i];
        b2[i] = b1[i];
        b1[i] = b;
      }
    for (std::size_t i = 0; i < N; ++i) x[i] = coefficients_[0] + x[i] * b1[i] - b2[i];
  }

  [[nodiscard]] double low() const { return low_; }
  [[nodiscard]] double high() const { return high_; }

 private:
  static double angle(std::size_t k) { return pi * (static_cast<double>(k) + 0.5) / static_cast<double>(nodes); }
  [[nodiscard]] double scaled(double x) const { return (2 * x - low_ - high_) / (high_ - low_); }

  double low_, high_;
  std::array<double, nodes> coefficients_{};
};

}  // namespace burrow
