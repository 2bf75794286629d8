/// A utility that runs through the excavation of a pit is laid bare by the digging (common practice, no source).

#include <gtest/gtest.h>

#include <algorithm>

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
  crossing.site.utilities.back().located.how.set(LocatedHow::exposed);
  const Assessment with = judged(crossing);
  ASSERT_NE(inside_pit(with), nullptr);
  EXPECT_EQ(inside_pit(with)->severity, Severity::caution);
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

}  // namespace
}  // namespace burrow
