// The table of the turning against `Steering` itself, by the arrival of bores in which nothing is random.
#include "burrow/bore/turn_table.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/trials_for_tests.h"

namespace burrow {
namespace {

using for_tests::all_tables;
using for_tests::known_stratum;
using for_tests::TrialCase;

struct NamedCase {
  std::string name;
  TrialCase c;
};

/// Grounds with everything that bends the turning: roof, water, layers level and dipping, a ditch, steep ground.
std::vector<NamedCase> grounds() {
  std::vector<NamedCase> cases;
  for (const char* soil : {"soft-clay", "stiff-clay", "loose-sand", "dense-sand"})
    for (const double z : {-1.0, -1.8}) cases.push_back({soil + std::to_string(z), TrialCase(soil, z, 20)});
  {
    TrialCase c("soft-clay", -1.2, 20);
    c.crossing.site.strata.push_back(known_stratum("dense-sand", LevelLine{{0, -1.35}}));
    cases.push_back({"level layers", c});
  }
  {
    TrialCase c("medium-sand", -1.2, 20);
    c.crossing.site.strata.push_back(known_stratum("stiff-clay", LevelLine{{-5, -0.9}, {25, -1.7}}));
    c.crossing.site.water = LevelLine{{0, -1.0}, {20, -1.3}};
    cases.push_back({"dipping layers and water", c});
  }
  {
    TrialCase c("silt", -2.2, 20);
    c.crossing.site.ground = {{-5, 0}, {8, 0}, {9.2, -1.1}, {10.1, -1.1}, {11.4, 0.2}, {30, 0.6}};
    c.crossing.site.water = LevelLine{{0, -1.5}};
    cases.push_back({"ditch", c});
  }
  {
    TrialCase c("loose-sand", -1.3, 20);
    c.crossing.site.ground = {{-5, 0.5}, {30, -3}};
    c.crossing.bore.launch.grade = {-0.1};
    cases.push_back({"slope", c});
  }
  for (NamedCase& named : cases) named.c.certain();
  return cases;
}

// Second route: the tracer of the mean path, which asks `Steering` itself every 0.01 m.
TEST(TurnTable, Steering_ErrorAtArrivalBelowOneMillimetre) {
  for (const NamedCase& named : grounds()) {
    SCOPED_TRACE(named.name);
    const TrialCase& c = named.c;
    const Ground ground(c.crossing.site, all_tables());
    const BorePath path = predict_path(ground, c.tool(), c.crossing.bore, {Length{0.01}});
    const Trials trials = c.run(1);
    ASSERT_EQ(path.ends, PathEnd::exit);
    ASSERT_EQ(trials.arrived.n, 1);
    EXPECT_NEAR(trials.outcomes[0].elevation_m, path.points.back().z_m, 1e-3);
    EXPECT_NEAR(trials.outcomes[0].offset_m, path.points.back().y_m, 1e-3);
  }
}

// Convergence: a step of 0.10 m and one of 0.01 m arrive within 1 mm of each other, in the same table.
TEST(TurnTable, Step_ConvergesToOneMillimetre) {
  for (const NamedCase& named : grounds()) {
    SCOPED_TRACE(named.name);
    TrialCase c = named.c;
    const double at_0_10 = c.run(1).outcomes[0].elevation_m;
    c.setup.step = {0.01};
    EXPECT_NEAR(at_0_10, c.run(1).outcomes[0].elevation_m, 1e-3);
  }
}

// Strips: across the line and beside it, where the tool drifts toward the softer trench.
TEST(TurnTable, Strips_FollowTheMeanPath) {
  for (const bool beside : {false, true}) {
    TrialCase c("firm-clay", -1.2, 15);
    Strip strip;
    strip.soil = "trench-backfill";
    strip.outline = beside ? PlanLine{{3, -0.7}, {12, -0.7}, {12, -0.1}, {3, -0.1}}
                           : PlanLine{{6, -2}, {6.8, -2}, {7.4, 2}, {6.6, 2}};
    strip.bottom_elevation = {-1.8};
    c.crossing.site.strips = {strip};
    c.certain();
    const BorePath path =
        predict_path(Ground(c.crossing.site, all_tables()), c.tool(), c.crossing.bore, {Length{0.01}});
    const Trials trials = c.run(1);
    ASSERT_EQ(trials.arrived.n, 1);
    EXPECT_NEAR(trials.outcomes[0].offset_m, path.points.back().y_m, 5e-4);
    EXPECT_NEAR(trials.outcomes[0].elevation_m, path.points.back().z_m, 1e-3);
    if (!beside) continue;
    EXPECT_LT(path.points.back().y_m, -2e-3);
    EXPECT_LT(trials.outcomes[0].offset_m, -2e-3);
  }
}

// One column where all lines keep their distance from the ground; more where a stratum dips.
TEST(TurnTable, Level_NeedsOneStation) {
  const auto asked = [](const TrialCase& c) {
    const Ground ground(c.crossing.site, all_tables());
    const Steering steering(ground, c.tool());
    return TurnTable(c.crossing.site, ground, steering, c.tool(), {0, 20, 3}, 0).asked();
  };
  TrialCase c("firm-clay");
  const std::size_t level = asked(c);
  EXPECT_LT(level, 300u);
  c.crossing.site.ground = {{0, 0}, {20, -2}};
  EXPECT_EQ(asked(c), level);
  c.crossing.site.strata.push_back(known_stratum("loose-sand", LevelLine{{0, -1}, {20, -2.5}}));
  EXPECT_GT(asked(c), 10 * level);
}

// The soil at the axis: to half a row of the table, and to half a column.
TEST(TurnTable, Soil_NearestNodeDecides) {
  TrialCase c("firm-clay");
  c.crossing.site.strata.push_back(known_stratum("loose-sand", LevelLine{{0, -1}}));
  const Ground ground(c.crossing.site, all_tables());
  const Steering steering(ground, c.tool());
  const TurnTable table(c.crossing.site, ground, steering, c.tool(), {0, 20, 3}, 0);
  EXPECT_FALSE(table.one_soil());
  EXPECT_EQ(table.soil(table.place(7), 0.99), 0u);
  EXPECT_EQ(table.soil(table.place(7), 1.01), 1u);
  EXPECT_EQ(table.soil(table.place(7), 50), 1u);
}

}  // namespace
}  // namespace burrow
