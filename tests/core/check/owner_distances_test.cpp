// Owners' distances that count from the edge of an excavation, and what owners ask besides.

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

constexpr double ft = 0.3048;

void shore_all(Pit& pit) {
  for (PitSide* side : {&pit.sides.bore, &pit.sides.back, &pit.sides.left, &pit.sides.right})
    side->kind.set(SideKind::shored);
}

/// The lane from 6 to 10 m, pits at 0 and 16 m, shored all round, the cover typed: nothing but the pit is in question.
Crossing under_rule(const char* rule) {
  Crossing crossing = clean_crossing();
  crossing.site.surface = {lane(6, 10)};
  crossing.site.surface[0].rule = rule;
  crossing.site.surface[0].required_cover = Length{1.0};
  if (std::string_view(rule).starts_with("track")) crossing.site.surface[0].kind = SurfaceKind::track;
  crossing.bore.exit.station = Length{16};
  shore_all(crossing.pits.launch);
  shore_all(crossing.pits.exit);
  return crossing;
}

// 92 Ill. Adm. Code 530.500(b) (read): 10 ft from the pavement with shoring, 10 ft and the depth of the pit without.
TEST(OwnersDistances, WithoutShoring_TheDepthIsAdded) {
  Crossing crossing = under_rule("road-pit-10ft-and-depth");
  EXPECT_FALSE(find(judged(crossing), "surface.pit-edge")) << listed(judged(crossing));  // 6 m, 3.05 m wanted
  crossing.site.surface[0].from = Length{4.0};
  crossing.site.surface[0].to = Length{12.0};
  EXPECT_FALSE(find(judged(crossing), "surface.pit-edge"));
  crossing.pits.launch.sides.left.kind.set(SideKind::upright);
  crossing.pits.launch.signs.distress = false;
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "surface.pit-edge", "f1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::stop);
  EXPECT_NEAR(*finding->measured, 4.0, 1e-9);
  EXPECT_NEAR(*finding->limit, 10 * ft + 1.4325, 1e-9);
  crossing.pits.launch.sides.left.kind.set(SideKind::shielded);  // its rating is another question
  EXPECT_FALSE(find(judged(crossing), "surface.pit-edge"));
  crossing.site.surface[0].from = Length{3.0};
  ASSERT_TRUE(find(judged(crossing), "surface.pit-edge"));
  EXPECT_NEAR(*find(judged(crossing), "surface.pit-edge")->limit, 10 * ft, 1e-9);
}

// A slope towards the road takes the edge of the excavation nearer than the face.
TEST(OwnersDistances, CountsFromTheEdgeOfTheExcavation) {
  Crossing crossing = under_rule("road-opening-36in-shoulder-3ft");
  crossing.site.surface[0].from = Length{2.0};
  crossing.site.surface[0].to = Length{14.9};
  EXPECT_FALSE(find(judged(crossing), "surface.pit-edge")) << listed(judged(crossing));
  crossing.pits.launch.sides.bore.kind.set(SideKind::sloped);
  crossing.pits.launch.sides.bore.run_per_rise = Ratio{1.0};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "surface.pit-edge", "f1")) << listed(answer);
  EXPECT_NEAR(*find(answer, "surface.pit-edge")->measured, 2.0 - 1.4325, 1e-9);
  EXPECT_NEAR(*find(answer, "surface.pit-edge")->limit, 3 * ft, 1e-9);
  ASSERT_TRUE(working(answer, "surface.pit-edge", "f1"));
}

// 530.500(b): 30 ft on fully access-controlled highways; above 6 in with an auger alone (read).
TEST(OwnersDistances, AccessControlled_ThirtyFeet) {
  const Assessment answer = judged(under_rule("road-pit-30ft-access-controlled"));
  ASSERT_TRUE(find(answer, "surface.pit-edge")) << listed(answer);
  EXPECT_NEAR(*find(answer, "surface.pit-edge")->measured, 6.0, 1e-9);
  EXPECT_NEAR(*find(answer, "surface.pit-edge")->limit, 30 * ft, 1e-9);
  Crossing wide = under_rule("road-pit-30ft-access-controlled");
  wide.bore.tool.tool_class = "tool-180";
  EXPECT_NEAR(*find(judged(wide), "surface.driven")->limit, 6 * 0.0254, 1e-9);
}

// Florida (read): the pipe ends 4 ft from the pavement edge; its pit lies beyond, by the slope it cuts (derived).
TEST(OwnersDistances, Florida_PipeEndAndThePitBeyond) {
  Crossing crossing = under_rule("road-closed-end-36in");
  crossing.site.surface[0].from = Length{1.0};
  Assessment answer = judged(crossing);
  const Finding* end = find(answer, "surface.pipe-end", "f1");
  ASSERT_TRUE(end) << listed(answer);
  EXPECT_NEAR(*end->measured, 1.0, 1e-9);
  EXPECT_NEAR(*end->limit, 4 * ft, 1e-9);
  EXPECT_EQ(end->source.label, SourceLabel::read);
  crossing.site.surface[0].from = Length{1.3};
  answer = judged(crossing);
  EXPECT_FALSE(find(answer, "surface.pipe-end"));
  EXPECT_FALSE(find(answer, "surface.pit-edge"));
  crossing.pits.launch.sides.bore.kind.set(SideKind::sloped);
  answer = judged(crossing);
  EXPECT_FALSE(find(answer, "surface.pipe-end"));
  ASSERT_TRUE(find(answer, "surface.pit-edge")) << listed(answer);
  EXPECT_EQ(find(answer, "surface.pit-edge")->source.label, SourceLabel::derived);
}

// "Exceeding six feet" (read): 6 ft itself is not enough.
TEST(OwnersDistances, Florida_ExceedingSixFeet) {
  Crossing crossing = under_rule("road-closed-end-72in");
  crossing.site.surface[0].required_cover.reset();
  crossing.bore.model.steer_constant.set(Ratio{0});
  crossing.bore.model.steer_constant_sd.set(Ratio{0});
  const auto axis = [&](double cover) { crossing.bore.launch.elevation = Length{100 - cover - 0.0325}; };
  axis(6 * ft);
  EXPECT_TRUE(find(judged(crossing), "surface.cover", "f1")) << listed(judged(crossing));
  axis(6 * ft + 0.001);
  EXPECT_FALSE(find(judged(crossing), "surface.cover", "f1")) << listed(judged(crossing));
}

// A rule that says nothing of the cover leaves the cover open; so does one that the tables no longer know.
TEST(OwnersDistances, RuleWithoutCover_IsMissing) {
  Crossing crossing = under_rule("road-no-submittal-3in");
  EXPECT_FALSE(find(judged(crossing), "missing.rule"));  // typed
  crossing.site.surface[0].required_cover.reset();
  EXPECT_TRUE(find(judged(crossing), "missing.rule", "f1"));
  EXPECT_EQ(judged(crossing).verdict, Verdict::incomplete) << listed(judged(crossing));
  crossing.site.surface[0].rule = "a rule of another year";
  EXPECT_TRUE(find(judged(crossing), "missing.rule", "f1"));
}

// One railway (read): pits 30 ft from the centreline of the near track; two others: nothing within 12 ft. Ties 8 1/2 ft
// long (from memory): the centreline lies 4 1/4 ft inside the edge, of a narrow strip in its middle.
TEST(OwnersDistances, Track_FromItsCentreline) {
  Crossing crossing = under_rule("track-cover-66in-tie-pit-30ft");
  Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "surface.pit-edge")) << listed(answer);
  EXPECT_NEAR(*find(answer, "surface.pit-edge")->measured, 6.0 + 4.25 * ft, 1e-9);
  EXPECT_NEAR(*find(answer, "surface.pit-edge")->limit, 30 * ft, 1e-9);
  EXPECT_FALSE(find(answer, "surface.near-centre"));
  Plant excavator;
  excavator.id = "p1";
  excavator.name = "excavator";
  excavator.station = Length{3.5};
  excavator.offset = Length{4};
  excavator.length = Length{2};
  excavator.width = Length{1};
  crossing.site.plant = {excavator};
  answer = judged(crossing);
  const Finding* near = find(answer, "surface.near-centre", "f1");
  ASSERT_TRUE(near) << listed(answer);
  EXPECT_EQ(near->severity, Severity::stop);
  EXPECT_NEAR(*near->measured, 6.0 - 4.5 + 4.25 * ft, 1e-9);
  EXPECT_NEAR(*near->limit, 12 * ft, 1e-9);
}

TEST(OwnersDistances, WhatElseTheOwnerAsks_IsANote) {
  const Assessment answer = judged(under_rule("road-pit-10ft-and-depth"));
  const Finding* note = find(answer, "surface.owner-asks", "f1");
  ASSERT_TRUE(note) << listed(answer);
  EXPECT_EQ(note->severity, Severity::note);
  EXPECT_NE(finding_text(*note, UnitSystem::metric).find("48 hours"), std::string::npos);
  EXPECT_FALSE(find(judged(under_rule("road-prism-36in")), "surface.owner-asks"));
}

}  // namespace
}  // namespace burrow::test
