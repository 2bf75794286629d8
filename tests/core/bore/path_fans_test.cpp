// The bore for every steering constant: integrals over it, and the followed bores against `predict_path`.
#include "burrow/bore/path_fans.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "burrow/base/quantity.h"
#include "burrow/bore/fan_nodes.h"
#include "burrow/bore/normal_table.h"
#include "burrow/file/tables_file.h"

namespace burrow {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables();
  return loaded;
}

// Derived: against the error function of the library, over all z of the table and beyond.
TEST(NormalTable, Derived_AgainstErrorFunction) {
  for (double z = -9; z <= 9; z += 0.0137) {
    const double below = 0.5 * std::erfc(-z * std::sqrt(0.5));
    const double density = std::exp(-0.5 * z * z) / std::sqrt(2 * pi);
    EXPECT_NEAR(normal_below(z), below, 2e-10) << z;
    EXPECT_NEAR(normal_below_sum(normal_table(), z), z * below + density, 2e-10) << z;
  }
  EXPECT_EQ(normal_below(-1e300), 0);
  EXPECT_EQ(normal_below_sum(normal_table(), -1e300), 0);
}

// Derived: the mean over a run by a fine sum; a short run takes another way to the same.
TEST(NormalTable, Derived_MeanOverARun) {
  for (const double from : {-4.0, -1.0, 0.3})
    for (const double run : {-2.0, 0.001, 0.0021, 1.5}) {
      double mean = 0;
      constexpr int parts = 4000;
      for (int i = 0; i < parts; ++i) mean += normal_below(from + run * (i + 0.5) / parts) / parts;
      const double to = from + run;
      EXPECT_NEAR(
          mean_normal_below(from, normal_below_sum(normal_table(), from), to, normal_below_sum(normal_table(), to)),
          mean, 2e-7);
    }
}

FanLanes by_node(double (*of)(double)) {
  FanLanes lanes;
  for (std::size_t k = 0; k < fan_lanes; ++k) lanes[k] = of(fan_first_sd + fan_step_sd * static_cast<double>(k));
  return lanes;
}

// A score that rises straight with ln c: the sum of two normals, Φ(a/√(1 + b²)). Derived.
TEST(PathFans, Derived_StraightScore) {
  EXPECT_NEAR(fan_chance_below(by_node([](double) { return -2.0; })), normal_below(-2), 1e-9);
  EXPECT_NEAR(fan_chance_below(by_node([](double t) { return -3 + t; })), normal_below(-3 / std::sqrt(2.0)), 3e-4);
  EXPECT_NEAR(fan_chance_below(by_node([](double t) { return -9 + 3 * t; })) / normal_below(-9 / std::sqrt(10.0)), 1,
              0.03);
}

// A certain place: all c above a limit, with no other error to blur it. The lognormal's own tail, derived.
TEST(PathFans, Derived_CertainPlaceIsTheTailOfC) {
  const double chance =
      fan_chance_below(by_node([](double t) { return 1e4 * (std::exp(0.668 * t) - std::exp(0.668 * 3.03)); }));
  EXPECT_NEAR(chance / (1 - normal_below(3.03)), 1, 0.05);
}

// Straight from node to node, five times as far apart: near the fine sum, and never half of it.
TEST(PathFans, Nodes_NearTheFineSum) {
  for (const double start : {-3.0, -6.0, -12.0}) {
    FanLanes lanes;
    for (std::size_t k = 0; k < fan_lanes; ++k) lanes[k] = start + 0.8 * std::exp(0.5 * static_cast<double>(k) * 0.668);
    const FanPoints high = fan_points_of(lanes);
    FanPoints low = high;
    for (double& score : low) score -= 2;
    const double fine = fan_chance_between(low, high);
    EXPECT_NEAR(fan_chance_at_nodes(low, high, nullptr, 0, fan_points - 1) / fine, 1, 0.25) << start;
  }
}

struct Sand {
  Site site;
  Tool tool;
  Bore bore;
  Sand() {
    site.ground = {{-5, 0}, {40, 0.5}};
    Stratum sand;
    sand.id = "l1";
    sand.soil = "dense-sand";
    sand.known.set(StratumEvidence::seen);
    site.strata = {sand};
    bore.tool.tool_class = "tool-130";
    tool = resolve_tool(bore.tool, tables());
    bore.launch.elevation = {-2.2};
    bore.exit.station = {12};
  }
};

// Second route: `predict_path` with that constant and no spread of it.
TEST(PathFans, PredictPath_EachFollowedBore) {
  Sand s;
  const Ground ground(s.site, tables());
  FanGrounds grounds(s.site, tables(), ground, s.tool, {0, 0, 0}, {});
  const PathFans fans(grounds, ground, s.tool, s.bore, predict_path(ground, s.tool, s.bore));
  int compared = 0;
  for (std::size_t k = 0; k < fan_lanes; ++k) {
    Bore one = s.bore;
    one.model.steer_constant.set(Ratio{fans.constants()[k]});
    one.model.steer_constant_sd.set(Ratio{0});
    const BorePath path = predict_path(ground, s.tool, one);
    for (const PathPoint& p : path.points) {
      if (p.cover_m < 0.3) break;
      const FanSpot spot = fans.at(0, p.x_m);
      EXPECT_NEAR(spot.z_m[k], p.z_m, 0.002 + 0.02 * std::abs(p.z_m + 2.2)) << k << " " << p.x_m;
      EXPECT_NEAR(std::sqrt(spot.up_var_m2[k]), p.sd_vertical_m, 0.001 + 0.05 * p.sd_vertical_m) << k << " " << p.x_m;
      EXPECT_NEAR(std::sqrt(spot.left_var_m2[k]), p.sd_lateral_m, 0.001 + 0.02 * p.sd_lateral_m) << k << " " << p.x_m;
      ++compared;
    }
  }
  EXPECT_GT(compared, 400);
}

// Constants that nobody believes leave numbers: chances between 0 and 1.
TEST(PathFans, AnyConstant_FiniteChances) {
  for (const double constant : {0.0, 1e-6, 0.04, 3.0, 1e4})
    for (const double sd : {0.0, 0.03, 5.0, 1e5}) {
      Sand s;
      s.bore.model.steer_constant.set(Ratio{constant});
      s.bore.model.steer_constant_sd.set(Ratio{sd});
      const Ground ground(s.site, tables());
      FanGrounds grounds(s.site, tables(), ground, s.tool, {0, 0, 0}, {});
      const PathFans fans(grounds, ground, s.tool, s.bore, predict_path(ground, s.tool, s.bore));
      ASSERT_FALSE(fans.empty());
      for (const double chance :
           {fans.daylight().chance, fans.cover_below(1.3, 0, 12).chance, fans.inside(-1, 1, -3, 0.1).chance}) {
        EXPECT_GE(chance, 0) << constant << " " << sd;
        EXPECT_LE(chance, 1) << constant << " " << sd;
      }
    }
}

// A bore that cannot start, or has nowhere to go, has no fans: nobody may read a chance of 0 off them.
TEST(PathFans, Rejection_NoBore) {
  Sand s;
  const Ground ground(s.site, tables());
  FanGrounds grounds(s.site, tables(), ground, s.tool, {0, 0, 0}, {});
  s.bore.exit.station = {0};
  EXPECT_TRUE(PathFans(grounds, ground, s.tool, s.bore, predict_path(ground, s.tool, s.bore)).empty());
  s.bore.exit.station = {12};
  s.bore.launch.elevation = {1};
  EXPECT_TRUE(PathFans(grounds, ground, s.tool, s.bore, predict_path(ground, s.tool, s.bore)).empty());
}

Site guessed(const std::vector<const char*>& soils) {
  Site site;
  site.ground = {{-5, 0}, {40, 0}};
  for (std::size_t i = 0; i < soils.size(); ++i) {
    Stratum stratum;
    stratum.id = "l" + std::to_string(i);
    stratum.soil = soils[i];
    stratum.known.set(StratumEvidence::guess);
    if (i > 0) stratum.top = LevelLine{{0, -0.5 * static_cast<double>(i)}};
    site.strata.push_back(stratum);
  }
  return site;
}

// Our model: own class ½, neighbours ¼; chances add up to 1, of each class alone and of each pair together.
TEST(FanGrounds, Model_PairsOfClasses) {
  const Sand s;
  for (const std::size_t count : {1U, 2U, 3U, 5U}) {
    std::vector<const char*> soils{"firm-clay", "medium-sand", "soft-clay", "loose-sand", "stiff-clay"};
    soils.resize(count);
    const Site site = guessed(soils);
    const Ground ground(site, tables());
    std::vector<std::size_t> strata;
    for (std::size_t i = 0; i < count; ++i) strata.push_back(i);
    FanGrounds grounds(site, tables(), ground, s.tool, {0, 0, 0}, strata);
    EXPECT_LE(grounds.members().size(), 16U);
    EXPECT_EQ(grounds.members().front().classes.front(), soils[0]);
    for (std::size_t a = 0; a < count; ++a)
      for (std::size_t b = a; b < count; ++b) {
        std::map<std::pair<std::string, std::string>, double> together;
        double all = 0;
        for (const FanGrounds::Member& m : grounds.members()) {
          together[{m.classes[a], m.classes[b]}] += m.chance;
          all += m.chance;
        }
        EXPECT_NEAR(all, 1, 1e-12);
        const double own = together[{soils[a], soils[b]}];
        EXPECT_NEAR(own, a == b ? 0.5 : 0.25, 1e-12) << count << " " << a << " " << b;
      }
  }
}

}  // namespace
}  // namespace burrow
