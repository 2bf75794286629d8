// Sides of the pits one by one: what the program cuts itself keeps its own limits; what stands only by a person's word.

#include <gtest/gtest.h>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

constexpr double ft = 0.3048;

/// The clean crossing in stiff clay of Type A, the launch pit so deep, soil type confirmed, every sign looked for.
Crossing type_a(double depth_m) {
  Crossing crossing = clean_crossing();
  crossing.site.surface.clear();
  crossing.site.strata.front().values.undrained_strength = Pressure{100e3};
  crossing.site.utilities.front() = water_main(4, 93.0);
  Pit& pit = crossing.pits.launch;
  pit.floor_elevation = Length{100 - depth_m};
  pit.soil_type = ExcavationType::a;
  pit.confirmed_by = "A. Muster";
  pit.signs.fissured = pit.signs.vibrated = pit.signs.disturbed = pit.signs.seeping = pit.signs.distress = false;
  return crossing;
}

double run_of(const SideProfile& side, double from_m) {
  return side.run_at(from_m + 1) - side.run_at(from_m);
}

// 29 CFR 1926 Subpart P App. B: 1/2 : 1 for 24 h stands with the simple slope of Type A (read), not with benches or a
// slope over an upright part (our reading); to 8 ft deep 3/4 : 1 above 3 1/2 ft, to 12 ft 1 : 1 (from memory: slope).
TEST(PitSides, ShortTerm_ForSimpleSlopesOnly) {
  Crossing crossing = type_a(7 * ft);
  Pit& pit = crossing.pits.launch;
  pit.open_time = Duration{24 * 3600.0};
  pit.sides.left.upright = Length{1.0};
  pit.sides.back.kind.set(SideKind::benched);
  const Assessment answer = judged(crossing);
  const CutSides& cut = answer.launch_pit.sides;
  EXPECT_NEAR(run_of(cut.right, 0), 0.5, 1e-12);
  EXPECT_NEAR(cut.left.run_at(1.0), 0, 1e-12);
  EXPECT_NEAR(run_of(cut.left, 1.0), 0.75, 1e-12);
  EXPECT_NEAR(cut.low.run_at(4 * ft + 0.01), 0.75 * 8 * ft, 1e-9);  // the next edge at 8 ft on the slope
  EXPECT_FALSE(find(answer, "pit.slope")) << listed(answer);
  EXPECT_FALSE(find(answer, "pit.upright-part")) << listed(answer);
}

TEST(PitSides, ShortTerm_BenchesTypedForItAreAStop) {
  Crossing crossing = type_a(10 * ft);
  Pit& pit = crossing.pits.launch;
  pit.open_time = Duration{24 * 3600.0};
  pit.sides.left.kind.set(SideKind::benched);
  pit.sides.left.benches = {{Length{1.2}, Length{0.6}, {}, ""}};
  const Assessment answer = judged(crossing);
  const Finding* slope = find(answer, "pit.slope", "launch-pit");
  ASSERT_TRUE(slope) << listed(answer);
  EXPECT_NEAR(*slope->limit, 0.75, 1e-12);
  EXPECT_NEAR(*slope->measured, 0.6 / 2.4, 1e-12);             // edge at two steps, one tread back
  EXPECT_EQ(slope->offset_m, answer.launch_pit.floor_left_m);  // flagged where it is
  EXPECT_EQ(finding_text(*slope, UnitSystem::metric),
            "left side of launch pit is cut 0.25 : 1, 0.75 : 1 or flatter required for its soil type");
}

TEST(PitSides, UprightPart_SlopeAboveIsCutByItsOwnRow) {
  Crossing crossing = type_a(10 * ft);
  crossing.pits.launch.sides.left.upright = Length{1.0};
  Assessment answer = judged(crossing);
  EXPECT_NEAR(run_of(answer.launch_pit.sides.left, 1.0), 1.0, 1e-12);
  EXPECT_FALSE(find(answer, "pit.slope")) << listed(answer);
  crossing.pits.launch.sides.left.run_per_rise = Ratio{0.8};  // flat enough for Type A, not over an upright part
  answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.slope", "launch-pit")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.slope")->limit, 1.0, 1e-12);
  crossing.pits.launch.sides.left.support_top = Length{1.5};  // a shield before it: 3/4 : 1 above (read)
  EXPECT_FALSE(find(judged(crossing), "pit.slope"));
}

// DIN 4124 as in DGUV Information 201-052 s. 4.2.2 (read): upright to 1.25 m above the floor, 45° above it, to 1.75 m
// deep.
TEST(PitSides, UprightPart_GermanRuleCutsItselfAt45Degrees) {
  Crossing crossing = type_a(1.7);
  crossing.pits.rules.set(ExcavationRules::din_4124);
  crossing.pits.launch.sides.left.upright = Length{1.25};
  const Assessment answer = judged(crossing);
  EXPECT_NEAR(run_of(answer.launch_pit.sides.left, 1.25), 1.0, 1e-12);
  EXPECT_FALSE(find(answer, "pit.slope")) << listed(answer);
  EXPECT_FALSE(find(answer, "pit.upright-part")) << listed(answer);
}

// 652(a)(1)(ii): less than 5 ft deep only if the competent person finds no sign of a cave-in (read), whatever makes the
// side steeper than the rules have it.
TEST(PitSides, Shallow_SteepSidesWantSomebodyToLook) {
  Crossing crossing = type_a(4.5 * ft);
  PitSide& side = crossing.pits.launch.sides.left;
  const auto asked = [&](std::optional<bool> distress) {
    crossing.pits.launch.signs.distress = distress;
    return find(judged(crossing), "missing.pit-signs", "launch-pit") != nullptr;
  };
  EXPECT_FALSE(asked(std::nullopt));
  side.run_per_rise = Ratio{0.75};
  EXPECT_FALSE(asked(std::nullopt));
  side.run_per_rise = Ratio{0.05};
  EXPECT_TRUE(asked(std::nullopt));
  EXPECT_FALSE(asked(false));
  side.run_per_rise.reset();
  side.upright = Length{3.5 * ft};
  EXPECT_FALSE(asked(std::nullopt));
  side.upright = Length{3.6 * ft};
  EXPECT_TRUE(asked(std::nullopt));
  side.support_top = Length{5 * ft};
  EXPECT_FALSE(asked(std::nullopt));
  side.kind.set(SideKind::upright);
  EXPECT_TRUE(asked(std::nullopt));
  side.kind.set(SideKind::shored);
  EXPECT_FALSE(asked(std::nullopt));
}

}  // namespace
}  // namespace burrow::test
