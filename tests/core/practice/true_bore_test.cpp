// The bore as the ground makes it.
#include "burrow/practice/true_bore.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

struct Truth {
  Crossing crossing = clean_crossing();
  [[nodiscard]] Ground ground() const { return {crossing.site, tables()}; }
  [[nodiscard]] Tool tool() const { return resolve_tool(crossing.bore.tool, tables()); }
  [[nodiscard]] TrueBore bored(const SetErrors& errors = {}, const Chance& chance = {1, false, false},
                               const std::vector<StoneHit>& stones = {}) const {
    return true_bore(ground(), tool(), crossing.bore, errors, chance, stones);
  }
};

// Second route: without chance and errors it is the mean path, which takes other steps.
TEST(TrueBore, MeanPath_WithoutChance) {
  for (const char* soil : {"soft-clay", "firm-clay", "medium-sand"}) {
    Truth t;
    t.crossing.site.strata[0].soil = soil;
    const BorePath mean = predict_path(t.ground(), t.tool(), t.crossing.bore);
    const BorePath path = t.bored().path;
    ASSERT_EQ(path.ends, mean.ends) << soil;
    EXPECT_NEAR(path.points.back().z_m, mean.points.back().z_m, 1e-3) << soil;
    EXPECT_NEAR(path.length_m, mean.length_m, 1e-3) << soil;
    EXPECT_EQ(path.points.back().x_m, 8);
  }
}

// Derived: with c = 0 an error of level alone shifts the arrival by L tan of it, a stone by its kick from there on.
TEST(TrueBore, Derived_StraightShifts) {
  Truth t;
  t.crossing.bore.model.steer_constant.set(Ratio{0});
  EXPECT_NEAR(t.bored({0.01, 0, 0, 0}).path.points.back().z_m - 98.6, 8 * std::tan(0.01), 1e-9);
  EXPECT_NEAR(t.bored({0, -0.02, 0, 0.01}).path.points.back().y_m, 0.01 - 8 * std::tan(0.02), 1e-9);
  const TrueBore hit = t.bored({}, {1, false, false}, {{3.0, 0.02, -0.01}});
  EXPECT_NEAR(hit.path.points.back().z_m - 98.6, 5 * 0.02, 2e-3);
  EXPECT_EQ(hit.stones.size(), 1u);
}

// The spread of many is that of the model: σ² L³/3 within three standard errors.
TEST(TrueBore, Wander_SpreadOfMany) {
  Truth t;
  t.crossing.bore.model.steer_constant.set(Ratio{0});
  double sum = 0;
  constexpr int count = 2000;
  for (std::uint64_t seed = 1; seed <= count; ++seed)
    sum += std::pow(t.bored({}, {seed, true, false}).path.points.back().y_m, 2);
  const double sigma = find_soil(tables(), "firm-clay")->wander.rad_sqrt_m, variance = sigma * sigma * 512 / 3;
  EXPECT_NEAR(sum / count / variance, 1, 3 * std::sqrt(2.0 / count));
}

// The same seed is the same bore; an error of level does not change the draws.
TEST(TrueBore, Seed_SameDraws) {
  Truth t;
  t.crossing.bore.model.steer_constant.set(Ratio{0});
  const Chance chance{7, true, true};
  EXPECT_EQ(t.bored({}, chance).path, t.bored({}, chance).path);
  const double shift =
      t.bored({0, 0.01, 0, 0}, chance).path.points.back().y_m - t.bored({}, chance).path.points.back().y_m;
  EXPECT_NEAR(shift, 0.08, 1e-3);
}

// A tool that climbs out ends in daylight, at no cover.
TEST(TrueBore, Daylight_EndsAtTheSurface) {
  Truth t;
  t.crossing.bore.launch.grade = Ratio{0.4};
  const BorePath path = t.bored().path;
  EXPECT_EQ(path.ends, PathEnd::daylight);
  EXPECT_NEAR(path.points.back().cover_m, 0, 1e-3);
}

}  // namespace
}  // namespace burrow::test
