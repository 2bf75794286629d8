// Ground movement: check values of Sagaseta 1987 and Verruijt & Booker 1996 with ν = ½ (derived; digits as printed).
#include <gtest/gtest.h>

#include <cmath>

#include "burrow/soil/movement.h"

namespace burrow {
namespace {

const OpenedHole hole{{0.065}, {1.3}, {1.0}};

TEST(PublishedHeave, Sagaseta1987_Surface) {
  EXPECT_NEAR(surface_rise(hole, {0})->m * 1e3, 3.250, 5e-4);
  EXPECT_NEAR(surface_rise(hole, {1.3})->m * 1e3, 1.625, 5e-4);
}

TEST(PublishedHeave, VerruijtBooker1996_Field) {
  const auto at = [&](double x, double z) { return *ground_movement(hole, {x}, {z}); };
  EXPECT_NEAR(at(0, 0.5).rise_m * 1e3, 4.4662, 5e-5);
  EXPECT_NEAR(at(0.5, 1.3).outward_m * 1e3, 4.0851, 5e-5);
  EXPECT_NEAR(at(0.5, 1.3).rise_m * 1e3, 1.5112, 5e-5);
  EXPECT_NEAR(at(0.3, 1.0).outward_m * 1e3, 3.4372, 5e-5);
  EXPECT_NEAR(at(0.3, 1.0).rise_m * 1e3, 5.1830, 5e-5);
  EXPECT_NEAR(at(0, 0.8).rise_m * 1e3, 5.997, 5e-4);
  EXPECT_NEAR(at(1.3, 0).outward_m * 1e3, 1.625, 5e-4);
  EXPECT_NEAR(at(0.5, 0.8).outward_m * 1e3, 2.012, 5e-4);
  EXPECT_NEAR(at(0.5, 0.8).rise_m * 1e3, 3.712, 5e-4);
}

// Row: integral of the rise over the surface / π a² = 0.99959 between −2 km and 2 km.
TEST(PublishedHeave, Derived_VolumeUnderTheRise) {
  double sum = 0, x = 0;
  for (double step = 0.002; x < 2000;) {
    sum += 2 * step * surface_rise(hole, {x + step / 2})->m;
    x += step;
    step = std::min(std::max(0.002, 0.002 * x), 2000 - x + 1e-12);
  }
  EXPECT_NEAR(sum / (pi * 0.065 * 0.065), 0.99959, 5e-6);
}

// Greatest slope at ten diameters, 1/616, by differences along the surface.
TEST(PublishedHeave, Derived_SlopeAtTenDiameters) {
  double steepest = 0;
  for (double x = 0; x < 3; x += 1e-3)
    steepest = std::max(steepest, (surface_rise(hole, {x})->m - surface_rise(hole, {x + 1e-3})->m) / 1e-3);
  EXPECT_NEAR(1 / steepest, 616, 0.5);
}

// Stretch of the surface over the bore, 0.0025, by differences.
TEST(PublishedHeave, Derived_SurfaceStrain) {
  const double dx = 1e-4;
  EXPECT_NEAR(ground_movement(hole, {dx}, {0})->outward_m / dx, 0.0025, 5e-5);
}

// Movement of a grain 0.5 m away in endless ground: exact 4.2073 mm against 4.225 mm. Deep below the surface the field
// is that of the source alone.
TEST(PublishedHeave, Derived_ExactRadial) {
  const OpenedHole deep{{0.065}, {4000}, {1.0}};
  EXPECT_NEAR(ground_movement(deep, {0.5}, {4000}, SourceTerm::exact)->outward_m * 1e3, 4.2073, 5e-4);
  EXPECT_NEAR(ground_movement(deep, {0.5}, {4000}, SourceTerm::linear)->outward_m * 1e3, 4.225, 5e-4);
}

TEST(PublishedHeave, Sagaseta1987_WhilePassing) {
  EXPECT_NEAR(surface_rise_in_passing(hole, {0}, {0})->m * 1e3, 1.625, 5e-4);
  EXPECT_NEAR(surface_rise_in_passing(hole, {0}, {-1.3})->m * 1e3, 2.7740, 5e-5);
  EXPECT_NEAR(surface_rise_in_passing(hole, {0}, {1.3})->m * 1e3, 0.4760, 5e-5);
}

TEST(PublishedHeave, Derived_PipeCrossing) {
  const auto pipe = utility_movement(hole, {0.5}, {0.1});
  ASSERT_TRUE(pipe);
  EXPECT_NEAR(pipe->movement_m * 1e3, 4.225, 5e-4);
  EXPECT_NEAR(pipe->bending_strain * 1e6, 1690, 0.5);
}

// From memory: Peck 1969 form, same volume, i = 0.65 m.
TEST(PublishedHeave, Peck1969_SameVolume) {
  EXPECT_NEAR(gaussian_rise(hole)->m * 1e3, 8.147, 5e-4);
}

}  // namespace
}  // namespace burrow
