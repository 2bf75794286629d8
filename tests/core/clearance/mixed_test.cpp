// Chances summed over the steering constant: against the first order where nothing depends on it, and in themselves.
#include <gtest/gtest.h>

#include <cmath>

#include "burrow/bore/path_fans.h"
#include "burrow/clearance/clearance.h"
#include "burrow/file/tables_file.h"

namespace burrow {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables();
  return loaded;
}

struct Case {
  Site site;
  Bore bore;
  Tool tool;
  BorePath path;
  PathFans fans;
  explicit Case(const char* soil, double constant_sd = 0.03, double constant = 0.04) {
    site.ground = {{-5, 0}, {40, 0}};
    Stratum stratum;
    stratum.id = "l1";
    stratum.soil = soil;
    stratum.known.set(StratumEvidence::seen);
    site.strata = {stratum};
    bore.tool.tool_class = "tool-95";
    tool = resolve_tool(bore.tool, tables());
    bore.launch.elevation = {-1.8};
    bore.exit.station = {14};
    bore.model.steer_constant.set(Ratio{constant});
    bore.model.steer_constant_sd.set(Ratio{constant_sd});
    const Ground ground(site, tables());
    path = predict_path(ground, tool, bore);
    FanGrounds grounds(site, tables(), ground, tool, {0, 0, 0}, {});
    fans = PathFans(grounds, ground, tool, bore, path);
  }
  [[nodiscard]] Clearance of(const Utility& utility, bool mixed) const {
    return clearances(path, tool.diameter, {utility}, site.ground, {Length{0.3}, Length{0.6}, Length{0.6}, {}, {}},
                      tables(), {}, mixed ? fans : PathFans{})
        .front();
  }
};

Utility main_at(double x, double z, double lateral_sd, double vertical_sd, double lean = 0, double half = 15) {
  Utility u;
  u.id = "u1";
  u.kind = UtilityKind::water;
  u.outside_diameter = Length{0.11};
  u.located.lateral_sd = Length{lateral_sd};
  u.located.vertical_sd = Length{vertical_sd};
  u.path = {{x - half * lean, -half, z}, {x + half * lean, half, z}};
  return u;
}

// A bore that does not steer, or whose constant is known: the mixture is the first order, derived; utilities that end
// beside the bore too, to what the rectangle for the round end costs.
TEST(MixedClearance, FirstOrder_WhereTheConstantIsKnown) {
  for (const double constant : {0.0, 0.02}) {
    const Case c("firm-clay", 0, constant);
    for (const double gap : {0.0, 0.1, 0.3, 0.5})
      for (const double lean : {0.0, 0.4}) {
        const Clearance first = c.of(main_at(9, -1.8 + gap, 0.05, 0.08, lean), false);
        const Clearance mixed = c.of(main_at(9, -1.8 + gap, 0.05, 0.08, lean), true);
        ASSERT_TRUE(mixed.mixture);
        EXPECT_NEAR(*mixed.contact_chance, *first.contact_chance, 1e-4 + 0.03 * *first.contact_chance) << gap;
        EXPECT_NEAR(*mixed.contact_chance_worst, *first.contact_chance_worst,
                    1e-4 + 0.03 * *first.contact_chance_worst);
        EXPECT_NEAR(*mixed.encroachment_chance, *first.encroachment_chance, 1e-4 + 0.03 * *first.encroachment_chance);
      }
    Utility ends = main_at(9, -1.7, 0.05, 0.08);
    ends.path[0].y_m = 0.05;
    const double first = *c.of(ends, false).contact_chance, mixed = *c.of(ends, true).contact_chance;
    EXPECT_NEAR(mixed, first, 0.15 * first);
  }
}

// Not knowing must not look safe: the chance that the verdict uses never falls when a location gets poorer, in either
// error; and it is at least the plain one.
TEST(MixedClearance, Worst_NonDecreasingInBothErrors) {
  for (const char* soil : {"dense-sand", "firm-clay", "soft-clay"}) {
    const Case c(soil);
    for (const double z : {-2.3, -1.8, -1.3, -0.9})
      for (const double lean : {0.0, 0.6, 1.5})  // steeper than where the answer is a bound by its nearest section
        for (const bool vertical : {false, true}) {
          double last = 0;
          for (double sd = 0; sd < 1.5; sd = sd * 1.13 + 0.004) {
            const Clearance now = c.of(main_at(8, z, vertical ? 0.05 : sd, vertical ? sd : 0.05, lean, 2), true);
            EXPECT_GE(*now.contact_chance_worst, last * (1 - 1e-5) - 1e-6)  // a thousandth of the least limit

                << soil << " " << z << " " << lean << " " << sd;
            EXPECT_GE(*now.contact_chance_worst, *now.contact_chance);
            EXPECT_GE(*now.encroachment_chance, *now.contact_chance - 1e-9);
            last = *now.contact_chance_worst;
          }
        }
  }
}

// Continuous where one form passes into another: as the gap grows, and over the angle down to where `bound` begins.
TEST(MixedClearance, Sweep_NoJumps) {
  const Case c("medium-sand");
  double last = -1;
  for (double z = -1.9; z < -0.6; z += 0.005) {
    const double now = *c.of(main_at(8, z, 0.05, 0.05), true).contact_chance;
    if (last >= 0) {
      EXPECT_NEAR(now, last, 0.004 + 0.12 * last) << z;
    }
    last = now;
  }
}

// On several threads the answers are those of one, to the last digit and in the same order. The second route is one
// utility at a time.
TEST(MixedClearance, Threads_SameAnswers) {
  const Case c("firm-clay");
  std::vector<Utility> many;
  for (int i = 0; i < 150; ++i) {
    many.push_back(
        main_at(1 + 0.085 * i, -1.8 + 0.3 * std::sin(1.0 * i), 0.05 + 0.001 * i, 0.08, 0.3 * std::sin(0.7 * i)));
    many.back().id = "u" + std::to_string(i);
  }
  const auto all = [&](unsigned threads) {
    return clearances(c.path, c.tool.diameter, many, c.site.ground, {Length{0.3}, Length{0.6}, Length{0.6}, {}, {}},
                      tables(), {}, c.fans, threads);
  };
  const std::vector<Clearance> one = all(1);
  EXPECT_TRUE(one == all(2));
  EXPECT_TRUE(one == all(7));
  ASSERT_EQ(one.size(), many.size());
  for (std::size_t i = 0; i < many.size(); ++i) EXPECT_TRUE(one[i] == c.of(many[i], true)) << i;
}

}  // namespace
}  // namespace burrow
