// Owners' rules beside cover and heave.

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing with_rule(const char* rule, double skew_rad = 0) {
  Crossing crossing = clean_crossing();
  crossing.site.surface[0].rule = rule;
  crossing.site.surface[0].skew.set(Angle{skew_rad});
  if (std::string_view(rule).starts_with("track")) crossing.site.surface[0].kind = SurfaceKind::track;
  return crossing;
}

// Wyoming utility rules ch. 8 s. 2 (read): pit face 30 ft from the traveled way. The lane lies from 2 to 6, pits at 0
// and 8 m.
TEST(CheckRules, Setback_NearerPitCounts) {
  Crossing crossing = with_rule("road-duct-cover-36in-pit-30ft");
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "surface.pit-setback", "f1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::stop);
  EXPECT_NEAR(*finding->measured, 2.0, 1e-12);
  EXPECT_NEAR(*finding->limit, 30 * 0.3048, 1e-9);
  crossing.site.surface[0].to = Length{7.5};
  EXPECT_NEAR(*find(judged(crossing), "surface.pit-setback")->measured, 0.5, 1e-12);
  crossing.site.surface[0].to = Length{9};  // the exit pit stands in the road
  EXPECT_NEAR(*find(judged(crossing), "surface.pit-setback")->measured, -1.0, 1e-12);
  EXPECT_FALSE(find(judged(clean_crossing()), "surface.pit-setback"));
}

// Square to the edge: a skewed road is nearer than along the line.
TEST(CheckRules, Setback_IsSquareToTheEdge) {
  const double skew = 0.4;
  EXPECT_NEAR(*find(judged(with_rule("road-duct-cover-36in-pit-30ft", skew)), "surface.pit-setback")->measured,
              2.0 * std::cos(skew), 1e-12);
}

// Texas railroad rules (read): 45 degrees or more.
TEST(CheckRules, Angle_FortyFiveDegrees) {
  EXPECT_FALSE(find(judged(with_rule("track-cover-72in", 0.78)), "surface.angle"));
  const Assessment answer = judged(with_rule("track-cover-72in", 0.80));
  const Finding* finding = find(answer, "surface.angle", "f1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_NEAR(*finding->measured, pi / 2 - 0.80, 1e-9);
  EXPECT_NE(finding_text(*finding, UnitSystem::metric).find("44.16°"), std::string::npos)
      << finding_text(*finding, UnitSystem::metric);
  Crossing at_an_angle = with_rule("track-cover-72in", 0.78);
  at_an_angle.bore.launch.heading.set(Angle{0.02});
  EXPECT_TRUE(find(judged(at_an_angle), "surface.angle"));
}

// Florida specification (read): closed-end driving to 3 in with 36 in of depth, to 5 in with 6 ft.
TEST(CheckRules, Driven_LargestHole) {
  Crossing crossing = with_rule("road-closed-end-36in");
  EXPECT_FALSE(find(judged(crossing), "surface.driven"));  // 65 mm
  crossing.bore.tool.tool_class = "tool-95";
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "surface.driven", "f1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(*finding->measured, 0.095);
  EXPECT_NEAR(*finding->limit, 3 * 0.0254, 1e-12);
}

TEST(CheckRules, Zones_ForTheDrawing) {
  Crossing crossing = with_rule("road-duct-cover-36in-pit-30ft");
  const Assessment answer = judged(crossing);
  ASSERT_EQ(answer.zones.size(), 1u);
  EXPECT_EQ(answer.zones[0].from_m, 2);
  EXPECT_NEAR(*answer.zones[0].cover_m, 36 * 0.0254, 1e-9);
  EXPECT_NEAR(*answer.zones[0].pit_setback_m, 9.144, 1e-9);
  crossing.site.surface[0].required_cover = Length{1.3};  // typed wins
  EXPECT_EQ(*judged(crossing).zones[0].cover_m, 1.3);
  crossing.site.surface[0].rule.reset();
  crossing.site.surface[0].required_cover.reset();
  EXPECT_TRUE(judged(crossing).zones.empty());
}

}  // namespace
}  // namespace burrow::test
