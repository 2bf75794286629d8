#include "burrow/search/just_clear.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing sample_crossing(const std::string& name) {
  return *read_crossing(*read_text_file(BURROW_SOURCE_DIR "/samples/" + name + ".crossing"), tables());
}

const UtilityAnswer& first(const Assessment& answer) {
  return answer.utilities.at(0);
}

// The shift found is where the finding goes away: second route, `assess()` at the shifted level, and 3 mm short of it.
TEST(JustClear, LaunchBelowAMain_AssessedThereAgrees) {
  for (const double main_m : {98.9, 99.3}) {
    Crossing c = clean_crossing();
    c.site.utilities = {water_main(6, main_m)};
    const Assessment now = judged(c);
    const auto shift = shift_just_clear(c, tables(), now, c.site.utilities[0].id, Shifted::launch);
    ASSERT_TRUE(shift) << main_m;
    Crossing there = c;
    there.bore.launch.elevation.m += shift->shift_m;
    const Assessment after = judged(there);
    EXPECT_GE(*first(after).separation_m, *first(after).required_m);
    EXPECT_LE(*first(after).separation_m, *first(after).required_m + 0.003);
    there.bore.launch.elevation.m += 0.005;  // back up, toward the main
    EXPECT_LT(*first(judged(there)).separation_m, *first(after).required_m);
  }
}

TEST(JustClear, UtilityBelowTheBore_MovesDown) {
  Crossing c = clean_crossing();
  c.site.utilities = {water_main(6, 98.3)};
  const Assessment now = judged(c);
  ASSERT_LT(first(now).on_utility->z_m, first(now).on_bore->z_m);
  const auto shift = shift_just_clear(c, tables(), now, c.site.utilities[0].id, Shifted::utility);
  ASSERT_TRUE(shift);
  for (PathVertex& v : c.site.utilities[0].path)
    if (v.z_m) *v.z_m += shift->shift_m;
  const Assessment after = judged(c);
  EXPECT_GE(*first(after).separation_m, *first(after).required_m);
  EXPECT_LE(*first(after).separation_m, *first(after).required_m + 0.003);
}

// Second route: `assess()` there. Every limit about the line is kept with 50 mm of gap to spare, no stop has come that
// was not there, and where nothing is offered, no level within the spare that is tried does it (walked by 10 mm).
TEST(LimitsKept, EveryUtilityOfTheSamples_AssessedThereAgrees) {
  int offered = 0, refused = 0;
  for (const char* sample : {"house-service", "four-faults", "rail-siding", "car-park-duct"}) {
    const Crossing c = sample_crossing(sample);
    const Assessment now = judged(c);
    for (const UtilityAnswer& u : now.utilities) {
      if (!u.separation_m || !u.required_m) continue;
      const auto place = shift_limits_kept(c, tables(), now, u.id, Shifted::launch);
      if (!place) {
        ++refused;
        continue;
      }
      ++offered;
      Crossing there = c;
      there.bore.launch.elevation.m += place->shift_m;
      const Assessment after = judged(there);
      for (const UtilityAnswer& a : after.utilities)
        if (a.id == u.id) {
          EXPECT_GE(*a.separation_m, *a.required_m + 0.05 - 1e-9) << sample << " " << u.id;
          EXPECT_NEAR(*a.separation_m, place->gap_m, 1e-9);
        }
      EXPECT_TRUE(limits_kept(after, u.id)) << sample << " " << u.id;
      const auto stops = [](const Assessment& a) {
        return std::count_if(a.findings.begin(), a.findings.end(),
                             [](const Finding& f) { return f.severity == Severity::stop; });
      };
      EXPECT_LE(stops(after), stops(now)) << sample << " " << u.id;
    }
  }
  EXPECT_GE(offered, 4);
  EXPECT_GE(refused, 1) << "the test met a line that no lowering mends";
}

// What is not known is not called kept by a shift: without a depth there is no place.
TEST(JustClear, UnknownDepth_SaysNothing) {
  Crossing c = clean_crossing();
  c.site.utilities = {water_main(6, 98.9)};
  for (PathVertex& v : c.site.utilities[0].path) v.z_m.reset();
  EXPECT_FALSE(shift_just_clear(c, tables(), judged(c), c.site.utilities[0].id, Shifted::launch));
  EXPECT_FALSE(shift_just_clear(c, tables(), judged(c), "nobody", Shifted::launch));
}

}  // namespace
}  // namespace burrow::test
