// A shield holds what its maker rates it for; what the sides left to the program come to.

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing shielded(double depth_m) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{100 - depth_m + 0.0325};
  crossing.site.utilities.front() = water_main(4, 90.0);
  PitSides& sides = crossing.pits.launch.sides;
  for (PitSide* side : {&sides.bore, &sides.back, &sides.left, &sides.right}) side->kind.set(SideKind::shielded);
  crossing.pits.launch.shield = {Length{2.4}, ExcavationType::c, "plate 4711", ""};
  return crossing;
}

TEST(RatedShield, NotEntered_IsMissing) {
  Crossing crossing = shielded(2.0);
  EXPECT_FALSE(find(judged(crossing), "missing.pit-shield")) << listed(judged(crossing));
  EXPECT_FALSE(find(judged(crossing), "pit.shield-depth"));
  EXPECT_FALSE(find(judged(crossing), "pit.shield-soil"));
  const RatedShield whole = crossing.pits.launch.shield;
  const auto missing = [&](RatedShield shield) {
    crossing.pits.launch.shield = shield;
    const Assessment answer = judged(crossing);
    return find(answer, "missing.pit-shield", "launch-pit") && answer.verdict != Verdict::within_limits &&
           answer.verdict != Verdict::caution;
  };
  EXPECT_TRUE(missing({}));
  EXPECT_TRUE(missing({std::nullopt, whole.soil_type, whole.source, ""}));
  EXPECT_TRUE(missing({whole.depth, std::nullopt, whole.source, ""}));
  EXPECT_TRUE(missing({whole.depth, whole.soil_type, " ", ""}));
  EXPECT_FALSE(missing(whole));
}

TEST(RatedShield, DeeperOrWorseSoil_IsAStop) {
  Crossing crossing = shielded(2.5);
  Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.shield-depth", "launch-pit")) << listed(answer);
  EXPECT_EQ(find(answer, "pit.shield-depth")->severity, Severity::stop);
  EXPECT_NEAR(*find(answer, "pit.shield-depth")->limit, 2.4, 1e-12);
  EXPECT_EQ(find(answer, "pit.shield-depth")->source.text, "plate 4711");
  EXPECT_TRUE(working(answer, "pit.shield-depth"));
  crossing = shielded(2.0);
  crossing.pits.launch.shield.soil_type = ExcavationType::b;  // the pit is Type C until somebody confirms better
  EXPECT_EQ(find(judged(crossing), "pit.shield-soil", "launch-pit")->severity, Severity::stop);
}

// Proposal and volumes, second route: ∫ (L + r h)(W + 2 r h) dh = L W d + (2 L + W) r d²/2 + 2 r² d³/3, the bore side
// straight.
TEST(PitProposal, VolumesOfBothWays) {
  Crossing crossing = clean_crossing();
  crossing.pits = Pits{};
  const Assessment answer = judged(crossing);
  const PitProposal& proposal = answer.launch_pit_work.proposal;
  const double l = answer.launch_pit.floor_length_m, w = answer.launch_pit.floor_width_m, d = answer.launch_pit.depth_m;
  const double r = 1.5;  // Type C, nobody says better
  EXPECT_TRUE(proposal.made);
  EXPECT_EQ(proposal.kind, SideKind::shored);
  EXPECT_FALSE(proposal.upright_allowed);
  EXPECT_NEAR(proposal.straight_m3, l * w * d, 1e-9);
  ASSERT_TRUE(proposal.sloped_m3);
  EXPECT_NEAR(*proposal.sloped_m3, l * w * d + (2 * l + w) * r * d * d / 2 + 2 * r * r * d * d * d / 3, 1e-9);
  EXPECT_NEAR(answer.launch_pit.volume_m3, proposal.straight_m3, 1e-9);
  const Working* shown = working(answer, "pit.proposal", "launch-pit");
  ASSERT_TRUE(shown);
  EXPECT_NEAR(input(*shown, "V_sloped"), *proposal.sloped_m3, 1e-12);
  crossing = clean_crossing();
  crossing.pits.launch.sides.bore.kind.set(SideKind::shored);
  EXPECT_FALSE(judged(crossing).launch_pit_work.proposal.made);  // all entered
}

// The proposed pit breaks no rule of its own: nobody looked, looked, deep.
TEST(PitProposal, KeepsTheRulesItself) {
  for (const double depth : {1.0, 1.2, 1.5, 1.6, 3.0, 5.0})
    for (const std::optional<bool> distress : {std::optional<bool>(), std::optional(false), std::optional(true)})
      for (const ExcavationRules rules : {ExcavationRules::us_1926, ExcavationRules::din_4124}) {
        Crossing crossing = clean_crossing();
        crossing.pits = Pits{};
        crossing.pits.rules.set(rules);
        crossing.bore.launch.elevation = Length{100 - depth};
        crossing.pits.launch.signs.distress = distress;
        const Assessment answer = judged(crossing);
        for (const char* code :
             {"pit.unprotected", "pit.slope", "pit.slope-depth", "pit.upright-part", "missing.pit-signs",
              "missing.pit-shield", "pit.slope-conditions", "pit.slope-by-calculation"})
          EXPECT_FALSE(find(answer, code, "launch-pit")) << depth << listed(answer);
      }
}

// DIN 4124 (read): upright to 1.25 m, where none of what it asks a calculation for is there; 1.25 m itself may stand.
TEST(PitProposal, German_UprightTo125WithAllAnswered) {
  const auto held = [](double depth, bool answered) {
    Crossing crossing = clean_crossing();
    crossing.pits = Pits{};
    crossing.pits.rules.set(ExcavationRules::din_4124);
    crossing.bore.launch.elevation = Length{100 - depth + 0.0325};
    PitSigns& signs = crossing.pits.launch.signs;
    signs.distress = false;
    if (answered) signs.none_seen = {"", "A. Muster", "2026-03-01", ""};
    const Assessment answer = judged(crossing);
    for (const char* code : {"pit.unprotected", "pit.slope-conditions", "pit.slope-by-calculation"})
      EXPECT_FALSE(find(answer, code, "launch-pit")) << depth << listed(answer);
    return answer.launch_pit.held.left;
  };
  EXPECT_EQ(held(1.25, true), SideKind::upright);
  EXPECT_EQ(held(1.26, true), SideKind::shored);
  EXPECT_EQ(held(1.25, false), SideKind::shored);
}

// 6 m sticks of steel do not go down into a floor of 2.44 m; polyethylene bends in.
TEST(PipePieces, StiffPieceOnAShortFloor_IsAStop) {
  Crossing crossing = clean_crossing();
  crossing.pipe->insertion.set(Insertion::towed);
  Pit& launch = crossing.pits.launch;
  launch.floor_length = Length{2.44};
  EXPECT_FALSE(find(judged(crossing), "pit.floor-length", "launch-pit"));
  crossing.pipe->piece_length = Length{6};
  EXPECT_EQ(find(judged(crossing), "pit.floor-length", "launch-pit")->severity, Severity::caution);
  crossing.pipe->material = "steel-sch40";
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.floor-length", "launch-pit")) << listed(answer);
  EXPECT_EQ(find(answer, "pit.floor-length")->severity, Severity::stop);
  EXPECT_NEAR(*find(answer, "pit.floor-length")->limit, 6, 1e-12);
  crossing.pipe->material.clear();  // nobody said: stiff
  EXPECT_EQ(find(judged(crossing), "pit.floor-length", "launch-pit")->severity, Severity::stop);
  crossing.pipe->insertion.set(Insertion::pulled_after);  // from the other end, whose floor is proposed long enough
  EXPECT_FALSE(find(judged(crossing), "pit.floor-length", "launch-pit"));
  EXPECT_NEAR(judged(crossing).exit_pit.floor_length_m, 7, 1e-9);
  crossing.pits.exit.floor_length = Length{2.44};
  EXPECT_EQ(find(judged(crossing), "pit.floor-length", "exit-pit")->severity, Severity::stop);
  launch.floor_length = Length{7};
  EXPECT_FALSE(find(judged(crossing), "pit.floor-length"));
}

}  // namespace
}  // namespace burrow::test
