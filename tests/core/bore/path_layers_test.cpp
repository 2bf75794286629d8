// How the path behaves at a boundary: our model, so that only its mathematics and its sense can be tested.

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/bore/path.h"
#include "support/classes_for_tests.h"

namespace burrow {
namespace {

/// A 65 mm tool in soft clay, level ground at 0; `other` below (or above) `top_m`.
struct Layered {
  Site site;
  Bore bore;
  Tool tool;

  Layered(const char* upper, const char* lower, double top_m, double z, double grade) {
    site.ground = {{-5, 0}, {60, 0}};
    Stratum stratum;
    stratum.soil = upper;
    site.strata = {stratum};
    stratum.soil = lower;
    stratum.top = LevelLine{{-5, top_m}, {60, top_m}};
    site.strata.push_back(stratum);
    bore.launch.elevation = {z};
    bore.launch.grade = {grade};
    bore.exit.station = {12};
    ToolChoice choice;
    choice.diameter = Length{0.065};
    tool = resolve_tool(choice, {});
  }
  [[nodiscard]] BorePath path(PathSteps steps = {}) const {
    return predict_path(Ground(site, for_tests::tables()), tool, bore, steps);
  }
  [[nodiscard]] BorePath uniform() const {
    Layered plain = *this;
    plain.site.strata.pop_back();
    return plain.path();
  }
};

double curvature_at(const BorePath& path, double z_m) {
  const PathPoint* nearest = &path.points.front();
  for (const PathPoint& p : path.points)
    if (std::abs(p.z_m - z_m) < std::abs(nearest->z_m - z_m)) nearest = &p;
  return nearest->curvature_1_m;
}

// Met from above at 5 %: the stiff layer resists more below, and the tool is turned up, away from it. Nothing is felt
// beyond two diameters.
TEST(PathLayers, Model_StiffLayerBelowTurnsTheToolUp) {
  const Layered c("soft-clay", "very-stiff-clay", -2.0, -1.6, -0.05);
  const BorePath path = c.path(), plain = c.uniform();
  for (std::size_t i = 0; i < path.points.size() && path.points[i].z_m > -2.0 + 0.13 + 1e-6; ++i)
    EXPECT_EQ(path.points[i].z_m, plain.points[i].z_m) << i;
  EXPECT_GT(curvature_at(path, -1.93), curvature_at(plain, -1.93) + 0.001);
  EXPECT_GT(curvature_at(path, -1.93), 0);
  EXPECT_GT(path.points.back().grade_rad, plain.points.back().grade_rad);
  EXPECT_GT(path.points.back().z_m, plain.points.back().z_m);
}

// The other way round: rising into a stiff layer, the tool is turned down.
TEST(PathLayers, Model_StiffLayerAboveTurnsTheToolDown) {
  const Layered c("very-stiff-clay", "soft-clay", -1.2, -1.6, 0.05);
  Layered soft("soft-clay", "soft-clay", -1.2, -1.6, 0.05);
  const BorePath path = c.path(), plain = soft.path();
  EXPECT_LT(curvature_at(path, -1.27), curvature_at(plain, -1.27) - 0.001);
  EXPECT_LT(path.points.back().z_m, plain.points.back().z_m);
}

// A softer layer below draws the tool in.
TEST(PathLayers, Model_SofterLayerBelowDrawsTheToolDown) {
  const Layered c("stiff-clay", "soft-clay", -2.0, -1.93, 0.0);
  EXPECT_LT(c.path().points.back().z_m, c.uniform().points.back().z_m - 0.01);
}

// A layer that is not there: same soil on both sides of a boundary.
TEST(PathLayers, Limit_SameSoilIsNoBoundary) {
  const Layered c("firm-clay", "firm-clay", -1.5, -1.45, -0.02);
  const BorePath path = c.path(), plain = c.uniform();
  ASSERT_EQ(path.points.size(), plain.points.size());
  for (std::size_t i = 0; i < path.points.size(); ++i) EXPECT_NEAR(path.points[i].z_m, plain.points[i].z_m, 1e-9);
}

// Halving the step across a boundary moves the arrival by less than 1 mm.
TEST(PathLayers, Step_ConvergesToOneMillimetreAcrossABoundary) {
  for (const double grade : {-0.05, -0.08}) {
    const Layered c("soft-clay", "very-stiff-clay", -2.0, -1.6, grade);
    const double z = c.path().points.back().z_m;
    EXPECT_NEAR(z, c.path({Length{0.025}}).points.back().z_m, 0.001);
    EXPECT_NEAR(z, c.path({Length{0.00625}}).points.back().z_m, 0.001);
  }
}

}  // namespace
}  // namespace burrow
