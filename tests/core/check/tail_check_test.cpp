// Findings that come of the steering constant's long tail: daylight, low cover, contact.
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing in_sand(double depth_m, double length_m) {
  Crossing c = clean_crossing();
  c.site.strata[0].soil = "dense-sand";
  c.site.utilities.clear();
  c.site.utility_search.none_found.set(true);
  c.site.surface.clear();
  c.bore.launch.elevation = Length{100 - depth_m};
  c.bore.exit.station = Length{length_m};
  return c;
}

// Our model: as the bore starts shallower the chance to come out grows from nothing over a caution to a stop, while the
// mean path still arrives; the working tells the number of the finding.
TEST(DaylightChance, Model_ShallowerIsWorse) {
  double last = -1;
  int cautions = 0, stops = 0;
  for (double depth = 3; depth > 0.5; depth -= 0.05) {
    const Assessment answer = judged(in_sand(depth, 10));
    ASSERT_TRUE(answer.chance_of_daylight);
    EXPECT_GE(*answer.chance_of_daylight, last - 1e-6) << depth;
    last = *answer.chance_of_daylight;
    if (answer.bore.ends != PathEnd::exit) break;
    const Finding* finding = find(answer, "bore.daylight-chance", "bore");
    EXPECT_EQ(finding != nullptr, last > 0.01) << depth;
    EXPECT_EQ(working(answer, "bore.daylight-chance")->value, last);
    if (!finding) continue;
    EXPECT_EQ(*finding->measured, last);
    EXPECT_EQ(finding->severity, last > 0.05 ? Severity::stop : Severity::caution);
    (finding->severity == Severity::stop ? stops : cautions) += 1;
  }
  EXPECT_GT(cautions, 0);
  EXPECT_GT(stops, 0);
  EXPECT_GT(last, 0.05);
}

// A mean path that comes out is one finding, and its chance is told all the same.
TEST(DaylightChance, Model_MeanPathComesOut) {
  const Assessment answer = judged(in_sand(0.6, 18));
  ASSERT_EQ(answer.bore.ends, PathEnd::daylight);
  EXPECT_TRUE(find(answer, "bore.daylight"));
  EXPECT_FALSE(find(answer, "bore.daylight-chance"));
  EXPECT_GT(*answer.chance_of_daylight, 0.3);
}

// Nobody may read safety off what is not there: no path, no chance.
TEST(DaylightChance, Rejection_NoPath) {
  Crossing crossing = in_sand(1.5, 10);
  crossing.bore.launch.elevation = Length{101};
  const Assessment answer = judged(crossing);
  EXPECT_FALSE(answer.chance_of_daylight);
  EXPECT_EQ(answer.verdict, Verdict::stop);
}

// A guess never makes it look better than half of what the class itself gives (its own share), and what is typed for
// the limits counts with its label.
TEST(DaylightChance, Model_GuessAndTypedLimit) {
  Crossing crossing = in_sand(1.2, 12);
  const double seen = *judged(crossing).chance_of_daylight;
  crossing.site.strata[0].known.set(StratumEvidence::guess);
  const Assessment guessed = judged(crossing);
  EXPECT_GE(*guessed.chance_of_daylight, 0.5 * seen);
  crossing.limits["daylight_stop"] = {1e-9, "the owner wants none", ""};
  const Assessment strict = judged(crossing);
  const Finding* finding = find(strict, "bore.daylight-chance");
  ASSERT_TRUE(finding) << listed(strict);
  EXPECT_EQ(finding->severity, Severity::stop);
  EXPECT_EQ(finding->source.label, SourceLabel::owners_setting);
}

// Low cover: where neither mean path nor band breaks the wanted cover but more than one bore in twenty does, the chance
// is a caution of its own; where one of them does, it is not said twice.
TEST(CoverChance, Model_SaidOnce) {
  int alone = 0, with_band = 0;
  for (double depth = 2.2; depth > 0.6; depth -= 0.02) {
    const Assessment answer = judged(in_sand(depth, 10));
    if (answer.bore.ends != PathEnd::exit) break;
    const bool shown_text = find(answer, "bore.cover") || find(answer, "bore.cover-low");
    const bool chance = find(answer, "bore.cover-chance");
    EXPECT_FALSE(shown_text && chance) << depth;
    ASSERT_TRUE(answer.cover.chance_below);
    EXPECT_TRUE(shown_text || chance == (*answer.cover.chance_below > 0.05)) << depth;
    alone += chance ? 1 : 0;
    with_band += shown_text ? 1 : 0;
  }
  EXPECT_GT(with_band, 0);
  RecordProperty("alone", alone);
}

}  // namespace
}  // namespace burrow::test
