// Test holes in the whole assessment: what they change, what is said about them, which to dig first, and the chances
// of the whole bore.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "burrow/clearance/test_hole_worth.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

TestHole hole(double station_m, double elevation_m, std::string utility = "u1") {
  TestHole h;
  h.id = "h1";
  h.utility = std::move(utility);
  h.station = Length{station_m};
  h.level.set(LevelMeant::centre);
  h.elevation = Length{elevation_m};
  h.date = "2026-02-26";
  h.by = "A. Nobody";
  return h;
}

/// Gas main 0.5 m below the bore at station 4, traced.
Crossing over_gas() {
  Crossing crossing = clean_crossing();
  crossing.site.utilities.front() = water_main(4, 98.1);
  crossing.site.utilities.front().kind = UtilityKind::gas;
  crossing.site.utilities.front().name = "gas main";
  return crossing;
}

TEST(Holes, FoundWhereRecorded_NoLongerToBeExposed) {
  Crossing crossing = over_gas();
  const Assessment before = judged(crossing);
  ASSERT_TRUE(find(before, "utility.separation", "u1")) << listed(before);
  ASSERT_EQ(before.utilities.front().expose_rank, 1);
  crossing.site.test_holes = {hole(4, 98.1)};
  const Assessment after = judged(crossing);
  EXPECT_FALSE(find(after, "utility.expose", "u1")) << listed(after);
  EXPECT_FALSE(find(after, "utility.separation", "u1")) << "0.41 m is enough for an exposed one";
  EXPECT_FALSE(after.utilities.front().expose);
  EXPECT_FALSE(after.utilities.front().expose_rank);
  EXPECT_LT(*after.utilities.front().contact_chance, *before.utilities.front().contact_chance);
  EXPECT_GT(*after.utilities.front().gap_low_m, *before.utilities.front().gap_low_m);
}

TEST(Holes, FoundHigher_TheGapFollows) {
  Crossing crossing = over_gas();
  crossing.site.test_holes = {hole(4, 98.2)};
  const Assessment after = judged(crossing);
  // Found 0.10 m higher with 0.02 m of error, where the record has 0.06 m: σ²/(σ² + s²) of it is believed.
  const double nearer = *judged(over_gas()).utilities.front().separation_m - *after.utilities.front().separation_m;
  EXPECT_NEAR(nearer, 0.1 * 0.0036 / 0.0040, 1e-4);
}

TEST(Holes, OddOnes_AreSaid) {
  const auto shown_text = [](auto change, std::string_view code) {
    Crossing crossing = over_gas();
    crossing.site.test_holes = {hole(4, 98.1)};
    change(crossing);
    const Assessment answer = judged(crossing);
    const Finding* finding = find(answer, code, "u1");
    EXPECT_TRUE(finding) << code << listed(answer);
    if (!finding) return std::string();
    EXPECT_EQ(finding->severity, Severity::caution);
    EXPECT_EQ(finding->station_m, 4);
    return finding_text(*finding, UnitSystem::metric);
  };
  EXPECT_NE(shown_text([](Crossing& c) { c.site.test_holes[0].elevation.reset(); }, "utility.hole-without-level"), "");
  EXPECT_NE(shown_text(
                [](Crossing& c) {
                  c.site.test_holes[0].level.set(LevelMeant::crown);
                  c.site.utilities[0].outside_diameter.reset();
                },
                "utility.hole-without-diameter"),
            "");
  EXPECT_NE(shown_text(
                [](Crossing& c) {
                  c.site.utilities[0].located.vertical_sd.reset(), c.site.utilities[0].located.level.reset();
                },
                "utility.hole-without-error"),
            "");
  EXPECT_EQ(shown_text([](Crossing& c) { c.site.test_holes[0].elevation = Length{98.6}; }, "utility.hole-off-record"),
            "a test hole found gas main 0.50 m from its record, up to 0.19 m is to be expected");
  EXPECT_EQ(shown_text(
                [](Crossing& c) {
                  c.site.test_holes.push_back(hole(4, 98.2));
                  c.site.test_holes.back().id = "h2";
                },
                "utility.holes-disagree"),
            "two test holes at gas main differ by 0.10 m, up to 0.08 m is to be expected");
}

TEST(ExposeFirst, MostContactsTakenAwayFirst) {
  Crossing crossing = over_gas();
  crossing.site.utilities.push_back(water_main(6, 98.35));  // nearer: more to be won
  crossing.site.utilities.back().id = "u2";
  crossing.site.utilities.push_back(water_main(7, 96.2));  // far off: not worth a hole
  crossing.site.utilities.back().id = "u3";
  crossing.site.utilities.push_back(water_main(2, 98.0));  // depth not known: first of all
  crossing.site.utilities.back().id = "u4";
  for (PathVertex& v : crossing.site.utilities.back().path) v.z_m.reset();
  const Assessment answer = judged(crossing);
  const auto& u = answer.utilities;
  EXPECT_EQ(u[3].expose_rank, 1);
  EXPECT_EQ(u[1].expose_rank, 2);
  EXPECT_EQ(u[0].expose_rank, 3);
  EXPECT_FALSE(u[2].expose_rank || u[2].chance_after_hole || u[2].hole_station_m);
  EXPECT_FALSE(u[3].chance_after_hole || u[3].hole_depth_low_m);
  EXPECT_NEAR(*u[3].hole_station_m, 2, 1e-6);
  for (const int i : {0, 1}) {
    EXPECT_LE(*u[i].chance_after_hole, *u[i].contact_chance);
    EXPECT_LE(*u[i].chance_after_hole, 0.01 * *u[i].chance_to_go_on);
    EXPECT_GE(*u[i].chance_to_go_on, 0);
    EXPECT_LE(*u[i].chance_to_go_on, 1);
  }
  // Crown of the 0.11 m pipe below ground at 100 m, 0.06 m in height.
  EXPECT_NEAR((*u[0].hole_depth_low_m + *u[0].hole_depth_high_m) / 2, 100 - 98.1 - 0.055, 1e-9);
  EXPECT_NEAR(*u[0].hole_depth_high_m - *u[0].hole_depth_low_m, 2 * 1.645 * 0.06, 1e-9);
  EXPECT_NEAR(*u[0].hole_station_m, 4, 1e-3);
  EXPECT_NEAR(*u[0].hole_offset_m, 0, 1e-6);
}

// Nothing to choose between two: the dangerous one first, then by station.
TEST(ExposeFirst, Ties_DangerThenStation) {
  Crossing crossing = clean_crossing();
  crossing.bore.model.steer_constant.set(Ratio{0});
  crossing.site.utilities.clear();
  int number = 0;
  for (const auto& [station, kind] :
       {std::pair{3.0, UtilityKind::water}, {2.0, UtilityKind::water}, {5.0, UtilityKind::gas}}) {
    Utility u = water_main(station, 98.0);  // far enough off that no chance of contact is left
    u.id = "u" + std::to_string(++number);
    u.kind = kind;
    crossing.site.utilities.push_back(u);
  }
  const auto& u = judged(crossing).utilities;
  for (const UtilityAnswer& one : u) EXPECT_LT(*one.contact_chance, 5e-7);
  EXPECT_EQ(u[2].expose_rank, 1);
  EXPECT_EQ(u[1].expose_rank, 2);
  EXPECT_EQ(u[0].expose_rank, 3);
}

TEST(WholeBore, ChanceOfAny_OneMinusTheProduct) {
  Crossing crossing = over_gas();
  crossing.site.utilities.push_back(water_main(6, 98.35));
  crossing.site.utilities.back().id = "u2";
  const Assessment answer = judged(crossing);
  const double a = *answer.utilities[0].contact_chance, b = *answer.utilities[1].contact_chance;
  EXPECT_GT(b, 1e-4);
  EXPECT_NEAR(*answer.contact_chance_any, a + b - a * b, 1e-12);
  crossing.site.utilities[0].path[0].z_m.reset();
  EXPECT_FALSE(judged(crossing).contact_chance_any) << "one is not known";
  crossing.site.utilities.clear();
  EXPECT_FALSE(judged(crossing).contact_chance_any) << "nobody said that there are none";
  crossing.site.utility_search.none_found.set(true);
  EXPECT_EQ(judged(crossing).contact_chance_any, 0.0);
}

// By hand: one service in 100 m², 8 m of bore, 65 mm wide.
TEST(WholeBore, ServicesNobodyDrew_ByHand) {
  Crossing crossing = clean_crossing();
  Assessment answer = judged(crossing);
  EXPECT_EQ(answer.chance_unknown_service, 0.0);
  EXPECT_FALSE(find(answer, "site.unknown-service"));
  crossing.site.utility_search.unknown_rate.set(RatePerArea{0.01});
  answer = judged(crossing);
  EXPECT_NEAR(*answer.chance_unknown_service, 1 - std::exp(-0.01 * answer.bore.length_m * 0.065), 1e-15);
  EXPECT_NEAR(*answer.chance_unknown_service, 0.0052, 1e-4);
  const Finding* finding = find(answer, "site.unknown-service");
  ASSERT_TRUE(finding);
  EXPECT_EQ(finding->severity, Severity::note);
  EXPECT_EQ(finding->measured, answer.chance_unknown_service);
  EXPECT_EQ(answer.verdict, judged(clean_crossing()).verdict) << "a note does not change the verdict";
}

}  // namespace
}  // namespace burrow::test
