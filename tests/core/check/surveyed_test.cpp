// Judging on surveyed ground with the surface of an earlier answer taken on: the answer does not depend on it, whatever
// was changed in between.

#include <gtest/gtest.h>

#include <random>

#include "burrow/check/prepared_site.h"
#include "burrow/file/assessment_file.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing surveyed(unsigned seed) {
  Crossing c = clean_crossing();
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> x(-12, 24), y(-7, 7), rough(-0.15, 0.15);
  const int count = seed % 4 == 0 ? 1 : seed % 4 == 1 ? 25 : 160;
  for (int i = 0; i < count; ++i) {
    const double at = x(random), beside = seed % 5 == 4 ? std::abs(y(random)) + 0.1 : y(random);
    c.site.ground_points.push_back(
        {at, beside, elevation_at(c.site.ground, at) + (seed % 3 - 1.0) * 0.06 * beside + rough(random)});
  }
  if (seed % 2)
    for (Pit* pit : {&c.pits.launch, &c.pits.exit})
      for (PitSide* side : {&pit->sides.back, &pit->sides.left}) side->kind.set(SideKind::sloped);
  return c;
}

/// One thing after the other, as in a session of work.
std::vector<void (*)(Crossing&)> edits() {
  return {[](Crossing& c) { c.bore.launch.station.m -= 0.37; },
          [](Crossing& c) { c.bore.exit.station.m += 0.81; },
          [](Crossing& c) { c.bore.launch.offset.set(Length{0.3}); },
          [](Crossing& c) { c.site.ground_points.front().z_m += 0.2; },
          [](Crossing& c) { c.site.ground_points.back().y_m *= -1; },
          [](Crossing& c) { c.site.ground.front().elevation_m += 0.1; },
          [](Crossing& c) {
            c.site.ground_points.push_back({1.0, 2.0, 100.3});
          },
          [](Crossing& c) { c.pits.launch.floor_elevation = Length{98.2}; },
          [](Crossing& c) { c.site.ground_points.push_back(c.site.ground_points.front()); },
          [](Crossing& c) { c.site.ground_points.pop_back(); },
          [](Crossing& c) {
            c.pits.launch.floor_outline = {{0, -0.6}, {0, 0.9}, {1.2, 0.9}, {2.6, 0.5}, {2.6, -0.6}};
          },
          [](Crossing& c) { c.site.ground_points.clear(); },
          [](Crossing& c) {
            c.site.ground_points.push_back({-1.0, -2.0, 100.1});
          }};
}

std::string written(const Crossing& crossing, const Assessment& answer) {
  AssessmentOptions all;
  all.working = true;
  return write_assessment(crossing, answer, "", all);
}

TEST(Surveyed, SurfaceTakenOn_AnswerOfNone) {
  for (unsigned seed = 0; seed < 12; ++seed) {
    Crossing crossing = surveyed(seed);
    GroundSurface surface = assess(crossing, tables()).ground_surface;
    int number = 0;
    for (const auto& edit : edits()) {
      edit(crossing);
      const Assessment kept = assess(crossing, tables(), surface), afresh = assess(crossing, tables());
      EXPECT_TRUE(kept == afresh) << "seed " << seed << " edit " << number;
      EXPECT_EQ(written(crossing, kept), written(crossing, afresh)) << "seed " << seed << " edit " << number;
      surface = kept.ground_surface;
      ++number;
    }
  }
}

// A surface of quite another site, or none any more, changes nothing either.
TEST(Surveyed, SurfaceOfAnotherSite_AnswerOfNone) {
  const Crossing crossing = surveyed(2);
  const Assessment afresh = assess(crossing, tables());
  EXPECT_TRUE(assess(crossing, tables(), assess(surveyed(3), tables()).ground_surface) == afresh);
  EXPECT_TRUE(assess(crossing, tables(), GroundSurface({{0, 5}}, {{1, 1, 7}})) == afresh);
  Crossing plain = crossing;
  plain.site.ground_points.clear();
  EXPECT_TRUE(assess(plain, tables(), afresh.ground_surface) == assess(plain, tables()));
}

TEST(Surveyed, PreparedSite_PitsOfAssess) {
  for (unsigned seed = 0; seed < 6; ++seed) {
    const Crossing crossing = surveyed(seed);
    const Assessment plain = assess(crossing, tables());
    const JudgedLaunch judged = judge_launch(crossing, tables(), PreparedSite(crossing, tables()));
    EXPECT_TRUE(judged.answer.launch_pit == plain.launch_pit) << seed;
    EXPECT_TRUE(judged.answer.exit_pit == plain.exit_pit) << seed;
    EXPECT_EQ(judged.answer.verdict, plain.verdict) << seed;
  }
}

}  // namespace
}  // namespace burrow::test
