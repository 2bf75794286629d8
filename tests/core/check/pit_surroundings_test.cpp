// Utilities around a pit: excavation, plus the error of their place, plus the clear gap.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

constexpr double floor_m = 98.60 - 0.065 / 2;

/// Pits shored all round, so that the excavation stands upright on its floor.
Crossing boxes() {
  Crossing crossing = clean_crossing();
  for (Pit* pit : {&crossing.pits.launch, &crossing.pits.exit})
    for (PitSide* side : {&pit->sides.bore, &pit->sides.back, &pit->sides.left, &pit->sides.right})
      *side = shored_side();
  return crossing;
}

/// A line across, its crown that far below a level.
Utility across(UtilityKind kind, double station_m, double crown_m) {
  Utility u = water_main(station_m, crown_m - 0.055);
  u.id = "u9";
  u.kind = kind;
  u.located.lateral_sd = Length{0.01};
  u.located.vertical_sd = Length{0.01};
  return u;
}

/// A line along the pit, its near side that far beside the launch pit's left side.
Utility beside(UtilityKind kind, double gap_m, double elevation_m) {
  Utility u = across(kind, 0, elevation_m);
  const double y = 0.45 + gap_m + 0.055;
  u.path = {{-6, y, elevation_m}, {-0.2, y, elevation_m}};
  return u;
}

Assessment with(Crossing crossing, const Utility& utility) {
  crossing.site.utilities.push_back(utility);
  return judged(crossing);
}

const Finding* inside_pit(const Assessment& answer) {
  return find(answer, "pit.utility", "u9");
}
const Finding* near_pit(const Assessment& answer) {
  return find(answer, "pit.utility-near", "u9");
}

// The case of the issue: 5 cm under the floor. 0.60 m to an unexposed gas main (from memory).
TEST(PitSurroundings, FiveCentimetresUnderTheFloor) {
  const Assessment answer = with(boxes(), across(UtilityKind::gas, -1, floor_m - 0.05));
  EXPECT_FALSE(inside_pit(answer)) << listed(answer);
  const Finding* near = near_pit(answer);
  ASSERT_TRUE(near) << listed(answer);
  EXPECT_EQ(near->severity, Severity::caution);
  EXPECT_NEAR(*near->measured, 0.05, 1e-6);
  EXPECT_NEAR(*near->limit, 0.60 + 1.645 * 0.01, 1e-6);
  EXPECT_NEAR(*near->limit_base, 0.60, 1e-9);
  EXPECT_NE(answer.verdict, Verdict::within_limits);
}

// The same line, its level known to ± 0.2 m: it may lie in the excavation.
TEST(PitSurroundings, FiveCentimetresUnderTheFloor_LevelBadlyKnown_IsAStop) {
  Utility gas = across(UtilityKind::gas, -1, floor_m - 0.05);
  gas.located.vertical_sd = Length{0.2};
  const Assessment answer = with(boxes(), gas);
  ASSERT_TRUE(inside_pit(answer)) << listed(answer);
  EXPECT_EQ(inside_pit(answer)->severity, Severity::stop);
  EXPECT_NEAR(*inside_pit(answer)->measured, 0.05, 1e-6);
  EXPECT_FALSE(near_pit(answer));
  // Said to be exposed it is no better; laid bare and seen in a hole it is a matter of care.
  gas.located.how.set(LocatedHow::exposed);
  const Assessment said = with(boxes(), gas);
  ASSERT_TRUE(inside_pit(said)) << listed(said);
  EXPECT_EQ(inside_pit(said)->severity, Severity::stop);
  TestHole hole;
  hole.id = "h1";
  hole.utility = "u9";
  hole.station = Length{-1};
  hole.level.set(LevelMeant::centre);
  hole.elevation = Length{*gas.path.front().z_m};
  hole.date = "2026-02-26";
  hole.by = "A. Nobody";
  Crossing crossing = boxes();
  crossing.site.test_holes = {hole};
  gas.path = {{-1, -0.49, hole.elevation->m}, {-1, 0.49, hole.elevation->m}};
  const Assessment seen = with(crossing, gas);
  ASSERT_TRUE(inside_pit(seen)) << listed(seen);
  EXPECT_EQ(inside_pit(seen)->severity, Severity::caution) << listed(seen);
}

// The case of the issue: behind a shored wall, which reaches 0.1 m behind the side (our default).
TEST(PitSurroundings, BehindAShoredWall) {
  const Assessment answer = with(boxes(), beside(UtilityKind::power, 0.25, 99.2));
  ASSERT_TRUE(near_pit(answer)) << listed(answer);
  EXPECT_NEAR(*near_pit(answer)->measured, 0.15, 1e-6);
  const Assessment in_wall = with(boxes(), beside(UtilityKind::power, 0.05, 99.2));
  ASSERT_TRUE(inside_pit(in_wall)) << listed(in_wall);
  EXPECT_EQ(inside_pit(in_wall)->severity, Severity::stop);
  const Assessment far = with(boxes(), beside(UtilityKind::power, 1.0, 99.2));
  EXPECT_FALSE(inside_pit(far) || near_pit(far)) << listed(far);
}

// The case of the issue: in a sump. Its place on the floor is not entered: all of the floor is as deep.
TEST(PitSurroundings, InAndUnderASump) {
  Crossing crossing = boxes();
  const Utility gas = across(UtilityKind::gas, -1, floor_m - 0.7);
  EXPECT_FALSE(near_pit(with(crossing, gas)));
  crossing.pits.launch.sump_depth.set(Length{0.3});
  const Assessment under = with(crossing, gas);
  ASSERT_TRUE(near_pit(under)) << listed(under);
  EXPECT_NEAR(*near_pit(under)->measured, 0.4, 1e-6);
  crossing.pits.launch.sump_depth.set(Length{0.75});
  ASSERT_TRUE(inside_pit(with(crossing, gas)));
  EXPECT_EQ(inside_pit(with(crossing, gas))->severity, Severity::stop);
}

// Gaps by kind (from memory): an unknown kind as the strictest, even where an owner's limit for one is larger.
TEST(PitSurroundings, UnknownKind_CountsAsTheStrictest) {
  Crossing crossing = boxes();
  crossing.limits["separation_power_m"].value = 1.2;
  const auto wanted = [&](UtilityKind kind) {
    const Assessment answer = with(crossing, across(kind, -1, floor_m - 0.3));
    return near_pit(answer) ? near_pit(answer)->limit_base.value_or(0) : 0;
  };
  EXPECT_NEAR(wanted(UtilityKind::telecom), 0.6, 1e-9);
  EXPECT_NEAR(wanted(UtilityKind::power), 1.2, 1e-9);
  EXPECT_NEAR(wanted(UtilityKind::unknown), 1.2, 1e-9);
  ASSERT_TRUE(inside_pit(with(crossing, across(UtilityKind::unknown, -1, floor_m + 0.3))));
  EXPECT_EQ(inside_pit(with(crossing, across(UtilityKind::unknown, -1, floor_m + 0.3)))->severity, Severity::stop);
}

// Neither what it carries nor that it is said to be abandoned makes less of a line that is dug into unexposed.
TEST(PitSurroundings, KindAndStatus_LowerNothing) {
  for (const UtilityKind kind : {UtilityKind::gas, UtilityKind::water, UtilityKind::sewer, UtilityKind::telecom})
    for (const UtilityStatus status : {UtilityStatus::live, UtilityStatus::abandoned, UtilityStatus::unknown}) {
      Utility u = across(kind, -1, floor_m + 0.3);
      u.status.set(status);
      const Assessment answer = with(boxes(), u);
      ASSERT_TRUE(inside_pit(answer)) << listed(answer);
      EXPECT_EQ(inside_pit(answer)->severity, Severity::stop) << listed(answer);
    }
  Utility drawn = across(UtilityKind::gas, -1, floor_m + 0.3);
  drawn.status.set(UtilityStatus::proposed);
  EXPECT_EQ(inside_pit(with(boxes(), drawn))->severity, Severity::caution);
}

// A typed clear gap of the owner counts where it is more.
TEST(PitSurroundings, OwnGap_Counts) {
  Utility u = across(UtilityKind::water, -1, floor_m - 0.9);
  EXPECT_FALSE(near_pit(with(boxes(), u)));
  u.required_clearance = Length{1.5};
  const Assessment answer = with(boxes(), u);
  ASSERT_TRUE(near_pit(answer)) << listed(answer);
  EXPECT_EQ(near_pit(answer)->source.label, SourceLabel::owners_setting);
}

TEST(PitSurroundings, NoDepthNearAPit_IsMissing) {
  Utility u = beside(UtilityKind::gas, 0.4, 97);
  for (PathVertex& v : u.path) v.z_m.reset();
  const Assessment answer = with(boxes(), u);
  EXPECT_TRUE(find(answer, "missing.utility-depth", "u9")) << listed(answer);
  EXPECT_NE(answer.verdict, Verdict::within_limits);
  EXPECT_NE(answer.verdict, Verdict::caution);
  // Beyond the end of the bore, where the bore itself does not ask.
  u.path = {{9.0, 0.9, std::nullopt}, {12.0, 0.9, std::nullopt}};
  int asked = 0;
  for (const Finding& f : with(boxes(), u).findings) asked += f.code == "missing.utility-depth" && f.subject == "u9";
  EXPECT_EQ(asked, 1);
}

// Seen in a test hole: exposed there, 0.5 m to either side, and not where nobody dug.
TEST(PitSurroundings, TestHole_ExposesWhereItIs) {
  Crossing crossing = boxes();
  TestHole hole;
  hole.id = "h1";
  hole.utility = "u9";
  hole.station = Length{-1};
  hole.offset = Length{0};
  hole.elevation = Length{floor_m + 0.3};
  hole.date = "2026-02-26";
  hole.by = "A. Nobody";
  crossing.site.test_holes = {hole};
  Utility crossing_line = across(UtilityKind::gas, -1, floor_m + 0.3);
  const Assessment answer = with(crossing, crossing_line);  // 0.45 m of floor and 0.1 m of wall on either side
  ASSERT_TRUE(inside_pit(answer)) << listed(answer);
  EXPECT_EQ(inside_pit(answer)->severity, Severity::stop) << "not exposed behind the wall";
  crossing.pits.launch.sides.left.kind.set(SideKind::upright);
  crossing.pits.launch.sides.right.kind.set(SideKind::upright);
  crossing_line.located.lateral_sd = Length{0.0};
  crossing_line.path = {{-1, -0.49, floor_m + 0.245}, {-1, 0.49, floor_m + 0.245}};
  EXPECT_EQ(inside_pit(with(crossing, crossing_line))->severity, Severity::caution);
  // Unsigned, undated, badly measured: it shows nothing.
  const auto without = [&](auto change) {
    Crossing other = crossing;
    change(other.site.test_holes.front());
    return inside_pit(with(other, crossing_line))->severity;
  };
  EXPECT_EQ(without([](TestHole& h) { h.by = " - "; }), Severity::stop);
  EXPECT_EQ(without([](TestHole& h) { h.date.reset(); }), Severity::stop);
  EXPECT_EQ(without([](TestHole& h) { h.date = "2031-01-01"; }), Severity::stop);
  EXPECT_EQ(without([](TestHole& h) { h.sd.set(Length{0.3}); }), Severity::stop);
}

// Exposed where the bore passes is not exposed beside a pit: 0.60 m to a gas main that nobody has seen there, not 0.30.
TEST(PitSurroundings, ExposedAtTheBore_IsNotExposedAtThePit) {
  Utility u = beside(UtilityKind::gas, 0.4, floor_m + 0.5);
  const Assessment traced = with(boxes(), u);
  ASSERT_TRUE(near_pit(traced) || inside_pit(traced)) << listed(traced);
  u.located.how.set(LocatedHow::exposed);
  const Assessment exposed = with(boxes(), u);
  ASSERT_TRUE(near_pit(exposed) || inside_pit(exposed)) << listed(exposed);
  EXPECT_EQ(near_pit(exposed) ? *near_pit(exposed)->limit_base : -1,
            near_pit(traced) ? *near_pit(traced)->limit_base : -1);
}

// 7.4 m typed for 0.74: a hole that contradicts the record takes no line out of a pit.
TEST(PitSurroundings, HoleThatContradictsTheRecord_LowersNothing) {
  Crossing crossing = boxes();
  const Utility line = across(UtilityKind::gas, -1, floor_m + 0.3);
  const Assessment before = with(crossing, line);
  ASSERT_TRUE(inside_pit(before));
  TestHole hole;
  hole.id = "h1";
  hole.utility = "u9";
  hole.station = Length{-1};
  hole.elevation = Length{floor_m + 0.3 - 6.66};
  hole.date = "2026-02-26";
  hole.by = "A. Nobody";
  crossing.site.test_holes = {hole};
  const Assessment after = with(crossing, line);
  EXPECT_TRUE(find(after, "missing.utility-agreed", "u9")) << listed(after);
  ASSERT_TRUE(inside_pit(after)) << listed(after);
  EXPECT_EQ(inside_pit(after)->severity, Severity::stop);
}

// Shored upright along its corners: the excavation is that, not the rectangle round it.
TEST(PitSurroundings, OutlinedFloor_ByItsCorners) {
  Crossing crossing = boxes();
  crossing.pits.launch.floor_outline = {{0, -0.5}, {0, 0.5}, {1.5, 0.5}, {1.5, 2.4}, {3, 2.4}, {3, -0.5}};
  crossing.pits.launch.floor_offset = Length{0};
  Utility in_the_arm = across(UtilityKind::gas, -2.5, floor_m + 0.3);
  in_the_arm.path = {{-2.5, 1.5, floor_m + 0.3}, {-2.5, 5, floor_m + 0.3}};
  ASSERT_TRUE(inside_pit(with(crossing, in_the_arm)));
  Utility in_the_corner = in_the_arm;  // of the rectangle round it: 0.9 m from either arm
  in_the_corner.path = {{-0.2, 1.9, floor_m + 0.3}, {-0.2, 5, floor_m + 0.3}};
  EXPECT_FALSE(inside_pit(with(crossing, in_the_corner)));
}

}  // namespace
}  // namespace burrow::test
