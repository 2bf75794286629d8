/// A utility that runs through the excavation of a pit is laid bare by the digging (common practice, no source).

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "burrow/check/limits.h"
#include "burrow/pit/pit_reach.h"

#include "support/clean_crossing.h"

namespace burrow {
namespace {

using namespace test;

const Finding* inside_pit(const Assessment& answer) {
  const auto it = std::find_if(answer.findings.begin(), answer.findings.end(),
                               [](const Finding& f) { return f.code == "pit.utility"; });
  return it == answer.findings.end() ? nullptr : &*it;
}

Utility through(const Crossing& crossing, double station_m, double below_ground_m, UtilityKind kind) {
  Utility u = water_main(station_m, elevation_at(crossing.site.ground, station_m) - below_ground_m);
  u.id = "u9";
  u.kind = kind;
  u.status.set(UtilityStatus::live);
  return u;
}

TEST(PitUtility, UnexposedGasInTheLaunchPit_IsAStop) {
  Crossing crossing = clean_crossing();
  ASSERT_EQ(inside_pit(judged(crossing)), nullptr);
  const double middle = crossing.bore.launch.station.m - 1.0;
  crossing.site.utilities.push_back(through(crossing, middle, 0.5, UtilityKind::gas));
  crossing.site.utilities.back().located.how.set(LocatedHow::traced);
  const Assessment answer = judged(crossing);
  const Finding* finding = inside_pit(answer);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::stop);
  EXPECT_EQ(finding->subject, "u9");
  EXPECT_EQ(answer.verdict, Verdict::stop);
}

TEST(PitUtility, ExposedWaterPipe_IsACaution_BelowTheFloorIsNothing) {
  Crossing crossing = clean_crossing();
  const double middle = crossing.bore.exit.station.m + 1.0;
  crossing.site.utilities.push_back(through(crossing, middle, 0.4, UtilityKind::water));
  Utility& pipe = crossing.site.utilities.back();
  pipe.located.how.set(LocatedHow::exposed);
  ASSERT_NE(inside_pit(judged(crossing)), nullptr);
  EXPECT_EQ(inside_pit(judged(crossing))->severity, Severity::stop) << "nobody has seen it there";
  // Laid bare all the way across the pit: holes no further apart than each shows.
  for (int i = 0; i < 9; ++i) {
    TestHole hole;
    hole.id = "h" + std::to_string(i);
    hole.utility = pipe.id;
    hole.station = Length{middle};
    hole.offset = Length{-3.6 + 0.9 * i};
    hole.level.set(LevelMeant::centre);
    hole.elevation = Length{*pipe.path.front().z_m};
    hole.date = "2026-02-26";
    hole.by = "A. Nobody";
    crossing.site.test_holes.push_back(hole);
  }
  const Assessment with = judged(crossing);
  ASSERT_NE(inside_pit(with), nullptr);
  EXPECT_EQ(inside_pit(with)->severity, Severity::caution) << listed(with);
  crossing.site.test_holes.clear();
  crossing.site.utilities.back() = through(crossing, middle, 30.0, UtilityKind::water);
  EXPECT_EQ(inside_pit(judged(crossing)), nullptr);
}

// A record that ends before the pit: the line goes on into it, and is judged so.
TEST(PitUtility, EdgeOfRecord_GoesOnIntoThePit) {
  Crossing crossing = clean_crossing();
  const double middle = crossing.bore.launch.station.m - 1.0;
  Utility gas = through(crossing, middle, 0.5, UtilityKind::gas);
  gas.located.how.set(LocatedHow::traced);
  const double z = *gas.path.front().z_m;
  gas.path = {{middle, -12, z}, {middle, -6, z}};
  gas.ends.first = gas.ends.last = LineEnd::cap;
  crossing.site.utilities.push_back(gas);
  ASSERT_EQ(inside_pit(judged(crossing)), nullptr);
  crossing.site.utilities.back().ends.last = LineEnd::edge_of_record;
  const Assessment answer = judged(crossing);
  ASSERT_NE(inside_pit(answer), nullptr);
  EXPECT_EQ(inside_pit(answer)->severity, Severity::stop);
}

TEST(PitUtility, Abandoned_HurtsUntilProved) {
  Crossing crossing = clean_crossing();
  Utility gas = through(crossing, crossing.bore.launch.station.m - 1.0, 0.5, UtilityKind::gas);
  gas.located.how.set(LocatedHow::traced);
  gas.status.set(UtilityStatus::abandoned);
  crossing.site.utilities.push_back(gas);
  ASSERT_NE(inside_pit(judged(crossing)), nullptr);
  EXPECT_EQ(inside_pit(judged(crossing))->severity, Severity::stop);
  crossing.site.utilities.back().abandonment = {"cut and capped at both ends, seen", "A. Person", "2026-02-01", {}};
  EXPECT_EQ(inside_pit(judged(crossing))->severity, Severity::caution);
}

// Second route: every place of the line five centimetres apart, none passed over.
TEST(PitUtility, Random_NearestOfEveryPlace) {
  std::mt19937 random(12);
  const auto u = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
  };
  Crossing crossing = clean_crossing();
  for (Pit* pit : {&crossing.pits.launch, &crossing.pits.exit}) pit->sides.bore.kind.set(SideKind::sloped);
  const double wanted = limit_of(crossing, tables(), "separation_gas_m").value;
  int inside = 0, near = 0, far = 0;
  for (int i = 0; i < 150; ++i) {
    Utility gas = through(crossing, -1, 0.5, UtilityKind::gas);
    gas.outside_diameter = Length{u(0.02, 0.3)};
    gas.located.how.set(LocatedHow::traced);
    gas.located.lateral_sd = Length{u(0.01, 0.2)};
    gas.located.vertical_sd = Length{u(0.01, 0.2)};
    const double level = u(97.2, 99.9), aside = u(-4, 4);
    gas.path = {{-7, aside + u(-1, 1), level + u(-0.3, 0.3)}, {u(-3, 0.5), aside, level}};
    crossing.site.utilities = {gas};
    const Assessment answer = judged(crossing);
    const PitReach reach(answer.launch_pit, *crossing.pits.launch.sump_depth, {});
    const PathVertex &a = gas.path[0], &b = gas.path[1];
    const PlaceError error{1.645 * gas.located.lateral_sd->m, 1.645 * gas.located.vertical_sd->m};
    const double pieces = std::ceil(std::hypot(b.x_m - a.x_m, b.y_m - a.y_m, *b.z_m - *a.z_m) / 0.05);
    const double radius = gas.outside_diameter->m / 2;
    double low = 1e9, gap = 1e9;
    bool under_edge = false;
    for (double k = 0; k <= pieces; ++k) {
      const double t = k / pieces;
      const PathVertex at{a.x_m + t * (b.x_m - a.x_m), a.y_m + t * (b.y_m - a.y_m), *a.z_m + t * (*b.z_m - *a.z_m)};
      under_edge = under_edge || reach.gap_below_edge(at) <= radius;
      if (!(reach.gap(at, error) - radius < low)) continue;
      low = reach.gap(at, error) - radius;
      gap = reach.gap(at) - radius;
    }
    const Finding* shown_text = find(answer, "pit.utility-near", "u9");
    if (low <= 0 || under_edge) {
      ++inside;
      EXPECT_NE(find(answer, "pit.utility", "u9"), nullptr) << i;
      EXPECT_EQ(shown_text, nullptr) << i;
    } else if (low < wanted) {
      ++near;
      ASSERT_NE(shown_text, nullptr) << i << " at " << low;
      EXPECT_NEAR(*shown_text->measured, gap, 1e-9) << i;
      EXPECT_NEAR(*shown_text->limit, wanted + gap - low, 1e-9) << i;
    } else {
      ++far;
      EXPECT_EQ(find(answer, "pit.utility", "u9"), nullptr) << i;
      EXPECT_EQ(shown_text, nullptr) << i;
    }
  }
  EXPECT_GT(inside, 15);
  EXPECT_GT(near, 15);
  EXPECT_GT(far, 15);
}

// One rule for bore and pit: a kind wants what its row says, an owner's or agreed distance counts where it is more.
TEST(Limits, Gap_IsTheSameForBoreAndPit) {
  Crossing crossing = clean_crossing();
  const auto type = [&](const char* id, double value) { crossing.limits[id] = {value, "permit 12", ""}; };
  type("separation_exposed_m", 0.4);
  type("separation_traced_m", 0.7);
  type("separation_gas_m", 0.9);
  type("separation_power_m", 1.1);
  type("separation_steam_m", 1.0);
  const LimitsInForce limits(crossing, tables());
  const ClearanceRules rules = clearance_rules(limits, tables());
  Utility line = water_main(8, 98);
  const auto wanted = [&](UtilityKind kind) {
    line.kind = kind;
    for (const bool unexposed : {true, false})
      EXPECT_EQ(gap_limit(limits, tables(), line, unexposed).value, clear_gap_wanted(rules, line, unexposed).m);
    EXPECT_GE(gap_limit(limits, tables(), line, false).value, 0.4);
    return gap_limit(limits, tables(), line, true);
  };
  EXPECT_EQ(wanted(UtilityKind::water).value, 0.7);
  EXPECT_EQ(wanted(UtilityKind::gas).value, 0.9);
  EXPECT_EQ(wanted(UtilityKind::oil).value, 0.9);
  EXPECT_EQ(wanted(UtilityKind::steam).value, 1.0);
  EXPECT_EQ(wanted(UtilityKind::power).value, 1.1);
  EXPECT_EQ(wanted(UtilityKind::unknown).value, 1.1);
  type("separation_traced_m", 1.3);  // then that is the strictest: what is not known never wants less than any kind
  const LimitsInForce stricter(crossing, tables());
  line.kind = UtilityKind::unknown;
  EXPECT_EQ(gap_limit(stricter, tables(), line, true).value, 1.3);
  line.required_clearance = Length{0.8};
  EXPECT_EQ(wanted(UtilityKind::gas).value, 0.9);
  line.agreed.distance = Length{1.5};
  EXPECT_EQ(wanted(UtilityKind::gas).value, 1.5);
  EXPECT_EQ(wanted(UtilityKind::gas).source.label, SourceLabel::owners_setting);
}

TEST(PitUtility, OilLineBesideThePit_WantsTheGapOfItsKind_AndTheAgreedDistance) {
  Crossing crossing = clean_crossing();
  const auto near_pit = [](const Assessment& answer) { return find(answer, "pit.utility-near") != nullptr; };
  Utility oil = through(crossing, crossing.bore.launch.station.m + 1.2, 30.0, UtilityKind::oil);
  const Assessment before = judged(crossing);
  for (PathVertex& v : oil.path) v.z_m = before.launch_pit.floor_elevation_m - 1.0;
  crossing.site.utilities.push_back(oil);
  ASSERT_FALSE(near_pit(judged(crossing)));
  crossing.limits["separation_gas_m"] = {5, "permit 12", ""};
  EXPECT_TRUE(near_pit(judged(crossing)));
  crossing.limits.clear();
  crossing.site.utilities.back().agreed.distance = Length{5};
  EXPECT_TRUE(near_pit(judged(crossing)));
}

}  // namespace
}  // namespace burrow
