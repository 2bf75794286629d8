// Another soil near the bore: where a chance stands not far below its limit, the verdict says so.
// How far the closed forms may be off there: against trials, in TailLong.Trials_BoundariesInTheBand.
#include <gtest/gtest.h>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

/// A duct above the bore that is touched with a chance of between half and all of the limit of the caution.
Crossing nearly_touching() {
  Crossing c = clean_crossing();
  const double limit = find_limit(tables(), "contact_caution")->value;
  for (double above_m = 0.12; above_m < 0.9; above_m += 0.005) {
    c.site.utilities[0].path = {{4, -8, 98.6 + above_m}, {4, 8, 98.6 + above_m}};
    const double chance = *judged(c).utilities[0].contact_chance_worst;
    if (chance < limit && chance > limit / 2) return c;
  }
  ADD_FAILURE() << "no such place";
  return c;
}

void add_stratum(Crossing& c, double top_m, const std::string& soil) {
  Stratum lower = c.site.strata[0];
  lower.id = "l2";
  lower.soil = soil;
  lower.top = LevelLine{{-20, top_m}, {40, top_m}};
  c.site.strata.push_back(lower);
}

TEST(Boundary, OurModel_AChanceThatFourTimesWouldBreakItsLimitIsSaid) {
  Crossing c = nearly_touching();
  EXPECT_FALSE(find(judged(c), "bore.boundary-near"));
  const double alone = *judged(c).utilities[0].contact_chance_worst;
  add_stratum(c, 98.0, "stiff-clay");
  Assessment answer = judged(c);
  const Finding* finding = find(answer, "bore.boundary-near", "u1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_DOUBLE_EQ(*finding->measured, 4 * *answer.utilities[0].contact_chance_worst);
  EXPECT_NEAR(*answer.utilities[0].contact_chance_worst, alone, 0.5 * alone);
  EXPECT_EQ(*finding->limit, find_limit(tables(), "contact_caution")->value);

  c.site.strata[1].top = LevelLine{{-20, 96.0}, {40, 96.0}};  // far below
  EXPECT_FALSE(find(judged(c), "bore.boundary-near"));
}

TEST(Boundary, OurModel_AStripBesideTheBoreIsOne) {
  Crossing c = nearly_touching();
  Strip strip;
  strip.id = "s1";
  strip.soil = "loose-sand";
  strip.outline = {{1, 0.5}, {6, 0.5}, {6, 3}, {1, 3}};
  strip.bottom_elevation = Length{96};
  c.site.strips = {strip};
  const Assessment answer = judged(c);
  EXPECT_TRUE(find(answer, "bore.boundary-near") || find(answer, "utility.contact")) << listed(answer);
}

// Far from all limits a boundary changes nothing.
TEST(Boundary, OurModel_WhereNothingIsNearALimitNothingIsSaid) {
  Crossing c = clean_crossing();
  add_stratum(c, 98.0, "stiff-clay");
  for (const Finding& finding : judged(c).findings)
    if (finding.code == "bore.boundary-near") {
      EXPECT_NE(finding.subject, "u1") << *finding.measured;
    }
}

}  // namespace
}  // namespace burrow::test
