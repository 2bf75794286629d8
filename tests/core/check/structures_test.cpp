// Buildings beside the bore: vibration by the blows, ground that carries the footing.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing beside_house(double beside_m) {
  Crossing crossing = clean_crossing();
  crossing.site.surface.push_back(house(beside_m));
  return crossing;
}

/// 0.55 p A stroke of the 65 mm class: piston 45.5 mm, stroke 112.5 mm, 6.9 bar.
constexpr double energy_J = 0.55 * 690000 * (3.14159265358979 / 4 * 0.0455 * 0.0455) * 0.1125;

// By hand: firm clay k_p 1.5, n 1.3; 2.5 m beside, 0.4 m above the axis at the launch.
TEST(BuildingVibration, Dwelling_ByHand) {
  const Assessment answer = judged(beside_house(2.5));
  ASSERT_EQ(answer.structures.size(), 1u);
  const StructureAnswer& building = answer.structures.front();
  EXPECT_EQ(building.id, "f9");
  const double r = *building.distance_m;
  EXPECT_NEAR(r, std::hypot(2.5, 0.4), 0.02);
  EXPECT_NEAR(*building.vibration_percussive_m_s, 0.0015 * std::sqrt(energy_J) / std::pow(r, 1.3), 1e-7);
  EXPECT_NEAR(*building.vibration_distance_m_s,
              0.65 * 0.0254 * std::pow(25 * 0.3048 / r, 1.3) * std::sqrt(energy_J / 1.355818 / 36000), 1e-7);
  EXPECT_EQ(*building.vibration_m_s, std::max(*building.vibration_percussive_m_s, *building.vibration_distance_m_s));
  EXPECT_EQ(*building.vibration_limit_m_s, 0.005);
  EXPECT_FALSE(find(answer, "building.vibration")) << listed(answer);
}

TEST(BuildingVibration, NearAndFragile_IsACaution) {
  const Assessment near = judged(beside_house(1.5));
  const Finding* finding = find(near, "building.vibration", "f9");
  ASSERT_TRUE(finding) << listed(near);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_EQ(finding->unit, "m/s");
  EXPECT_NE(finding_text(*finding, UnitSystem::metric).find(" mm/s, 5.0 mm/s at most"), std::string::npos);
  EXPECT_NE(finding_text(*finding, UnitSystem::us).find(" in/s, 0.20 in/s at most"), std::string::npos);
  Crossing crossing = beside_house(2.5);
  crossing.site.surface.back().structure = "fragile";
  EXPECT_TRUE(find(judged(crossing), "building.vibration"));
  crossing = beside_house(1.5);
  crossing.site.surface.back().structure = "industrial";
  EXPECT_FALSE(find(judged(crossing), "building.vibration"));
}

// Not entered, deleted, misspelt, or more than the word: the strictest of the table, in any language.
TEST(BuildingVibration, KindNotKnown_TheStrictestCounts) {
  for (const std::optional<std::string>& structure :
       {std::optional<std::string>(), std::optional<std::string>(""), std::optional<std::string>("Listed chapel"),
        std::optional<std::string>("listed"), std::optional<std::string>("Kapelle"),
        std::optional<std::string>("medieval house"), std::optional<std::string>("dwellling")}) {
    Crossing crossing = beside_house(2.5);
    crossing.site.surface.back().structure = structure;
    const Assessment answer = judged(crossing);
    EXPECT_EQ(*answer.structures.front().vibration_limit_m_s, 0.003) << structure.value_or("nothing");
    EXPECT_TRUE(find(answer, "building.vibration")) << structure.value_or("nothing");
  }
  Crossing crossing = beside_house(2.5);
  crossing.site.surface.back().structure.reset();
  EXPECT_NE(find(judged(crossing), "building.vibration")->source.text.english().find("not known"), std::string::npos);
  for (const char* dwelling : {"dwelling", "Wohnhaus", "house"}) {
    crossing.site.surface.back().structure = dwelling;
    EXPECT_EQ(*judged(crossing).structures.front().vibration_limit_m_s, 0.005) << dwelling;
  }
}

// Without a founding level the footing may reach down to the bore: only the distance in plan counts.
TEST(BuildingVibration, NoFoundingLevel_CountsInPlan) {
  Crossing crossing = beside_house(2.5);
  crossing.site.surface.back().founding_elevation.reset();
  EXPECT_NEAR(*judged(crossing).structures.front().distance_m, 2.5, 1e-9);
  crossing.site.surface.back().outline.clear();
  EXPECT_TRUE(judged(crossing).structures.empty());  // nobody said where it stands
}

// Blows of some 50 J lie outside the form (1.5 to 85 kJ from 1 m on, BS 5228-2 Table E.1): no limit stands beside it.
TEST(UtilityVibration, FormMadeForHeavierBlows_IsNotJudged) {
  Crossing crossing = clean_crossing();
  EXPECT_FALSE(find(judged(crossing), "utility.vibration"));
  crossing.site.utilities.front() = water_main(4, 98.25);
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "utility.vibration", "u1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::note);
  EXPECT_EQ(*finding->measured, *answer.utilities.front().vibration_m_s);
  EXPECT_FALSE(finding->limit);
  EXPECT_FALSE(finding->margin);
  const std::string words = finding_text(*finding, UnitSystem::metric);
  EXPECT_EQ(words.find("not judged: "), 0u) << words;
  EXPECT_EQ(words.find("at most"), std::string::npos) << words;
  EXPECT_FALSE(working(answer, "utility.vibration")->limit);
  crossing.site.utilities.front() = water_main(4, 98.6);  // struck
  EXPECT_FALSE(judged(crossing).utilities.front().vibration_m_s);
}

// Within the form a limit that is broken is a caution, and the limit is that of the wall.
TEST(UtilityVibration, WithinTheForm_IsACaution) {
  Crossing crossing = clean_crossing();
  crossing.bore.tool.tool_class = "tool-180";
  crossing.bore.tool.stroke = Length{0.5};  // a long one: 1.5 kJ and more
  crossing.site.utilities.front() = water_main(4, 96.5);
  crossing.site.utilities.front().material = "steel";
  crossing.limits["vibration_steel_pipe_m_s"] = {0.0001, "its owner", {}};
  const Assessment answer = judged(crossing);
  const Working* step = working(answer, "utility.vibration");
  ASSERT_TRUE(step);
  ASSERT_GE(input(*step, "W"), 1500);
  EXPECT_EQ(*step->limit, 0.0001);
  const Finding* finding = find(answer, "utility.vibration", "u1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_EQ(*finding->limit, 0.0001);
}

// The plane 1 : 1 under the edge. The bore lies 0.4 m below the founding level: with the edge 2.5 m off it passes
// (2.5 − 0.4)/√2 − 0.0325 = 1.45 m from it, with the edge 0.5 m off 0.04 m, within three standard deviations.
TEST(FootingInfluence, PlaneUnderTheEdge_ByHand) {
  const Assessment far = judged(beside_house(2.5));
  EXPECT_FALSE(find(far, "footing.influence")) << listed(far);
  EXPECT_NEAR(*far.structures.front().spread_gap_m, 1.45, 0.02);
  const Assessment near = judged(beside_house(0.5));
  const Finding* finding = find(near, "footing.influence", "f9");
  ASSERT_TRUE(finding) << listed(near);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_LT(*finding->measured, *finding->limit);
  EXPECT_EQ(*finding->limit, *near.structures.front().spread_gap_wanted_m);
}

// Under the house it is a caution still, and the words say "inside".
TEST(FootingInfluence, UnderTheHouse_IsInside) {
  const Assessment answer = judged(beside_house(-1));
  const Finding* finding = find(answer, "footing.influence", "f9");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_NEAR(*finding->measured, -0.4 / std::sqrt(2.0) - 0.0325, 0.02);
  EXPECT_NE(finding_text(*finding, UnitSystem::metric).find("inside the ground that carries the house"),
            std::string::npos);
}

// A footing that reaches below the bore: its side counts, and above it nothing is safe because the bore is higher.
TEST(FootingInfluence, FoundedBelowTheBore_SideCounts) {
  Crossing crossing = beside_house(1);
  crossing.site.surface.back().founding_elevation = Length{96};
  EXPECT_NEAR(*judged(crossing).structures.front().spread_gap_m, 1 - 0.0325, 1e-9);
  crossing.site.surface.back() = house(-1);
  crossing.site.surface.back().founding_elevation = Length{96};
  EXPECT_NEAR(*judged(crossing).structures.front().spread_gap_m, -0.0325, 1e-9);
}

// The founding level that nobody entered is taken at the ground line, and the source says so.
TEST(FootingInfluence, NoFoundingLevel_TakenAtTheGround) {
  Crossing crossing = beside_house(1.2);
  EXPECT_FALSE(find(judged(crossing), "footing.influence"));
  crossing.site.surface.back().founding_elevation.reset();
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "footing.influence", "f9");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_NE(finding->source.text.english().find("founding level not entered"), std::string::npos);
}

// A wall drawn as a line, and one given by its stations alone.
TEST(FootingInfluence, WallAsALine) {
  Crossing crossing = clean_crossing();
  SurfaceFeature wall;
  wall.id = "w1";
  wall.kind = SurfaceKind::wall;
  wall.outline = {{3, 0.3}, {3, 6}};
  wall.founding_elevation = Length{99.2};
  crossing.site.surface.push_back(wall);
  EXPECT_TRUE(find(judged(crossing), "footing.influence", "w1"));
  crossing.site.surface.back().outline.clear();
  crossing.site.surface.back().from = Length{14};
  crossing.site.surface.back().to = Length{14.3};
  const Assessment answer = judged(crossing);
  EXPECT_FALSE(find(answer, "footing.influence"));
  EXPECT_NEAR(*answer.structures.front().distance_m, std::hypot(14 - answer.bore.points.back().x_m, 0.6), 0.05);
}

}  // namespace
}  // namespace burrow::test
