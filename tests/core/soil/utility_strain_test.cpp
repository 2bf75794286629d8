#include "burrow/soil/utility_strain.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

namespace burrow {
namespace {

using Vector = std::array<double, 3>;  // across, down, along the bore

const OpenedHole hole{{0.05}, {1.3}, {0.9}};
constexpr double a2 = 0.9 * 0.05 * 0.05;

double dot(const Vector& a, const Vector& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

struct Along {
  double stretch = 0, curvature = 0;
};

/// Stretch along a line and curvature across it, by differences of any field.
template <class Field>
Along by_differences(const Field& field, const Vector& at, const Vector& along) {
  const double step = 1e-3;
  const auto moved = [&](double s) {
    return field(Vector{at[0] + s * along[0], at[1] + s * along[1], at[2] + s * along[2]});
  };
  const Vector before = moved(-step), here = moved(0), after = moved(step);
  Vector first{}, second{};
  for (std::size_t i = 0; i < 3; ++i) {
    first[i] = (after[i] - before[i]) / (2 * step);
    second[i] = (after[i] - 2 * here[i] + before[i]) / (step * step);
  }
  const double lengthwise = dot(second, along);
  for (std::size_t i = 0; i < 3; ++i) second[i] -= lengthwise * along[i];
  return {std::abs(dot(first, along)), std::sqrt(dot(second, second))};
}

Vector endless_bore(const Vector& at) {
  const auto m = ground_movement(hole, {at[0]}, {at[1]});
  return {m->outward_m, -m->rise_m, 0};
}

// Second route: differences of `ground_movement` along a line that crosses squarely above, below and close to the
// surface.
TEST(UtilityStrain, SquareCrossing_DifferencesOfTheField) {
  for (const double depth : {0.1, 0.6, 0.9, 1.8, 3.0}) {
    const auto strain = utility_strain(hole, {{0}, {depth}, {pi / 2}, {0.2}});
    ASSERT_TRUE(strain);
    const Along field = by_differences(endless_bore, {0, depth, 0}, {1, 0, 0});
    EXPECT_NEAR(strain->stretch, field.stretch, 2e-5 * field.stretch + 1e-9) << depth;
    EXPECT_NEAR(strain->bending, field.curvature * 0.1, 1e-4 * field.curvature * 0.1 + 1e-9) << depth;
  }
}

// Along the whole utility, at any angle, the endless bore does nowhere more than at the nearest place.
TEST(UtilityStrain, AnyAngle_NowhereMoreThanAtTheNearestPlace) {
  for (const double depth : {0.3, 0.8, 2.1})
    for (const double degrees : {5.0, 30.0, 60.0, 90.0}) {
      const double beta = degrees * pi / 180;
      const auto strain = utility_strain(hole, {{0}, {depth}, {beta}, {0.2}});
      for (double s = -5; s <= 5; s += 0.05) {
        const Vector along{std::sin(beta), 0, std::cos(beta)};
        const Along field = by_differences(endless_bore, {s * along[0], depth, s * along[2]}, along);
        EXPECT_LE(field.stretch, strain->stretch * 1.0001) << depth << " " << degrees << " " << s;
        EXPECT_LE(field.curvature * 0.1, strain->bending * 1.0001) << depth << " " << degrees << " " << s;
      }
    }
}

/// Sagaseta 1987, endless ground, the tip at 0 and the hole behind it.
Vector front(const Vector& at) {
  const double r2 = at[0] * at[0] + at[1] * at[1], R = std::sqrt(r2 + at[2] * at[2]);
  const double radial = a2 / (4 * r2) * (1 - at[2] / R);
  return {radial * at[0], radial * at[1], a2 / (4 * R)};
}

// Second route: the tip passes, and differences of its own field along the utility stay below the closed bound; beside
// the bore bending and stretch alone reach it.
TEST(UtilityStrain, PassingFront_StaysBelowTheBound) {
  const OpenedHole deep{{0.05}, {500}, {0.9}};
  const double c = 0.7, d = 0.2;
  for (const double degrees : {0.0, 5.0, 10.0, 20.0, 30.0, 45.0, 60.0, 80.0, 90.0}) {
    const double beta = degrees * pi / 180;
    const auto strain = utility_strain(deep, {{0}, {500 - c}, {beta}, {d}});
    ASSERT_TRUE(strain);
    const Vector along{std::sin(beta), 0, std::cos(beta)};
    double most = 0, most_bending = 0, most_stretch = 0;
    for (double tip = -5; tip <= 3; tip += 0.05)
      for (double s = -2; s <= 2; s += 0.05) {
        const Along at = by_differences(front, {s * along[0], c, s * along[2] - tip}, along);
        most = std::max(most, at.curvature * d / 2 + at.stretch);
        most_bending = std::max(most_bending, at.curvature * d / 2);
        most_stretch = std::max(most_stretch, at.stretch);
      }
    EXPECT_LE(most, strain->bending + strain->stretch) << degrees;
    EXPECT_GE(most, 0.85 * (strain->bending + strain->stretch)) << degrees;
    // Each of its own exceeds the bound by less than 2 %, at 5 to 10 degrees.
    EXPECT_LE(most_bending, 1.02 * strain->bending) << degrees;
    EXPECT_LE(most_stretch, 1.02 * strain->stretch) << degrees;
  }
}

// Limits: deep below the surface the closed forms of endless ground; no bending of a line without thickness.
TEST(UtilityStrain, DeepLimit_EndlessGround) {
  const OpenedHole deep{{0.05}, {2e5}, {0.9}};
  for (const auto& [x, z] : {std::pair{0.0, 1.0}, {1.0, 0.0}, {0.6, -0.8}}) {
    const auto square = utility_strain(deep, {{x}, {2e5 + z}, {pi / 2}, {0.2}});
    EXPECT_NEAR(square->bending, a2 * 0.1, 1e-8);
    EXPECT_NEAR(square->stretch, a2 / 2, 1e-8);
    const auto beside = utility_strain(deep, {{x}, {2e5 + z}, {0}, {0.2}});
    EXPECT_NEAR(beside->bending, 0.21466 * a2 * 0.1, 1e-8);
    EXPECT_NEAR(beside->stretch, 0.09623 * a2, 1e-7);
    EXPECT_EQ(utility_strain(deep, {{x}, {2e5 + z}, {0.3}, {0}})->bending, 0);
  }
}

TEST(UtilityStrain, Angle_IsContinuousAndRises) {
  double before = 0;
  for (int i = 0; i <= 90; ++i) {
    const auto strain = utility_strain(hole, {{0}, {0.7}, {i * pi / 180}, {0.2}});
    const double total = strain->bending + strain->stretch;
    if (i > 0) {
      EXPECT_GE(total, before);
      EXPECT_LE(total - before, 0.05 * utility_strain(hole, {{0}, {0.7}, {pi / 2}, {0.2}})->stretch * 2);
    }
    before = total;
  }
}

// Between bore and surface the movement exceeds that of endless ground, by less than twofold.
TEST(UtilityStrain, AboveTheBore_MovesMoreThanInEndlessGround) {
  for (const double depth : {0.2, 0.5, 0.8}) {
    const auto strain = utility_strain(hole, {{0}, {depth}, {pi / 2}, {0.1}});
    const double endless = a2 / (2 * (1.3 - depth));
    EXPECT_GT(strain->movement_m, endless) << depth;
    EXPECT_LT(strain->movement_m, 2 * endless) << depth;
    EXPECT_NEAR(strain->movement_m, ground_movement(hole, {0}, {depth}, SourceTerm::exact)->rise_m, 1e-12);
  }
}

// Second route for the field itself: ground at rest. With ν = 1/2 a pressure alone holds it, so the Laplacian of the
// movement is a gradient: its curl vanishes. By differences.
TEST(Movement, Equilibrium_LaplacianIsAGradient) {
  const double d = 0.01;
  const auto field = [](double x, double z) { return endless_bore({x, z, 0}); };
  const auto laplacian = [&](double x, double z, std::size_t i) {
    return (field(x + d, z)[i] + field(x - d, z)[i] + field(x, z + d)[i] + field(x, z - d)[i] - 4 * field(x, z)[i]) /
           (d * d);
  };
  for (const auto& [x, z] : {std::pair{0.4, 0.4}, {1.0, 0.9}, {0.7, 1.9}, {2.0, 0.3}}) {
    const double curl = (laplacian(x, z + d, 0) - laplacian(x, z - d, 0)) / (2 * d) -
                        (laplacian(x + d, z, 1) - laplacian(x - d, z, 1)) / (2 * d);
    const double scale = std::abs(laplacian(x, z, 0)) + std::abs(laplacian(x, z, 1)) + a2;
    EXPECT_NEAR(curl, 0, 0.02 * scale) << x << " " << z;
  }
}

// No pull on the surface: σ_zz = −p + 2G ∂u_z/∂z = 0 with ∇p = G ∇²u. Along the surface ∂p/∂x from both must agree.
TEST(Movement, SurfaceTraction_NormalIsZero) {
  const double d = 0.004;
  const auto field = [](double x, double z) { return endless_bore({x, z, 0}); };
  for (const double x : {0.3, 0.8, 1.7}) {
    // One-sided second differences in z: the field ends at the surface.
    const auto u = [&](double along, double down) { return field(along, down)[0]; };
    const double zz = (2 * u(x, 0) - 5 * u(x, d) + 4 * u(x, 2 * d) - u(x, 3 * d)) / (d * d);
    const double xx = (u(x + d, 0) - 2 * u(x, 0) + u(x - d, 0)) / (d * d);
    const auto down_strain = [&](double along) {
      return (-3 * field(along, 0)[1] + 4 * field(along, d)[1] - field(along, 2 * d)[1]) / (2 * d);
    };
    const double pull = 2 * (down_strain(x + d) - down_strain(x - d)) / (2 * d);
    EXPECT_NEAR(xx + zz, pull, 2e-3 * a2) << x;
  }
}

TEST(UtilityStrain, OutOfRange_Refused) {
  EXPECT_FALSE(utility_strain(hole, {{0}, {1.27}, {1}, {0.1}}));  // inside the hole
  EXPECT_FALSE(utility_strain(hole, {{0}, {-0.1}, {1}, {0.1}}));
  EXPECT_FALSE(utility_strain(hole, {{0}, {0.5}, {-0.1}, {0.1}}));
  EXPECT_FALSE(utility_strain(hole, {{0}, {0.5}, {1.7}, {0.1}}));
  EXPECT_FALSE(utility_strain(hole, {{0}, {0.5}, {1}, {-0.1}}));
  EXPECT_FALSE(utility_strain(hole, {{std::nan("")}, {0.5}, {1}, {0.1}}));
}

}  // namespace
}  // namespace burrow
