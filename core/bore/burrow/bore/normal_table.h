#pragma once
/// The normal distribution from a table, for sums over many conditional paths.

#include <array>
#include <cmath>
#include <cstddef>

namespace burrow {

/// Φ and its integral G(z) = ∫ Φ dz = z Φ(z) + φ(z) at nodes 1/64 apart, cubics between.
struct NormalTable {
  static constexpr double end_z = 8;
  static constexpr std::size_t nodes_a_unit = 64, count = 2 * 8 * nodes_a_unit + 2;
  static constexpr double h = 1.0 / nodes_a_unit;
  struct Node {
    double below, sum;
  };
  std::array<Node, count> nodes;
  std::array<double, count> density;
  NormalTable();

  /// From values and slopes at both ends (Hermite).
  static double between(double t, double from, double from_slope, double to, double to_slope) {
    const double rise = to - from, u = 1 - t;
    return from + t * (rise + u * (u * (h * from_slope - rise) + t * (rise - h * to_slope)));
  }
};
const NormalTable& normal_table();

/// Φ(z) and G(z).
/// Source: derived.   Range: any z but NaN; below −8 both are 0, above 8 they are 1 and z. Accuracy 2e-10.
/// Evidence: NormalTable.*
double normal_below(double z);
inline double normal_below_sum(const NormalTable& table, double z) {
  if (!(z > -NormalTable::end_z)) return 0;
  if (z >= NormalTable::end_z) return z;
  const double place = (z + NormalTable::end_z) * NormalTable::nodes_a_unit;
  const auto i = static_cast<unsigned>(place);
  const NormalTable::Node &a = table.nodes[i], &b = table.nodes[i + 1];
  return NormalTable::between(place - i, a.sum, a.below, b.sum, b.below);
}

/// Mean of Φ over a straight run of z, from G at both ends: (G(b) − G(a))/(b − a).
inline double mean_normal_below(double a, double sum_a, double b, double sum_b) {
  constexpr double short_run = 0.002;  // below it the difference of two sums loses digits
  const double run = b - a;
  return std::abs(run) > short_run ? (sum_b - sum_a) / run : normal_below(0.5 * (a + b));
}

}  // namespace burrow
