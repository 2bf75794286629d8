// Settlement that comes later, and the grout that would fill the gap.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

double least_depth(const Assessment& answer) {
  double least = 1e9;
  for (const PathPoint& p : answer.bore.points) least = std::min(least, 100 - p.z_m);
  return least;
}

// By hand: π/4 (0.065² − 0.055²) = 9.42478e-4 m²; spread over √(2π) 0.5 h.
TEST(LaterSettlement, FirmClay_ByHand) {
  const Assessment answer = judged(clean_crossing());
  const double h = least_depth(answer);
  EXPECT_NEAR(*answer.surface.settlement_m, 9.42478e-4 / (2.506628 * 0.5 * h), 5e-9);
  EXPECT_NEAR(*answer.surface.settlement_abandoned_m, 3.31831e-3 / (2.506628 * 0.5 * h), 2e-8);
  EXPECT_NEAR(*answer.surface.grout_annulus_m3, 9.42478e-4 * answer.bore.length_m, 1e-7);
  EXPECT_NEAR(*answer.surface.grout_hole_m3, 3.31831e-3 * answer.bore.length_m, 1e-7);
}

TEST(LaterSettlement, NoPipe_IsUnknown) {
  Crossing crossing = clean_crossing();
  crossing.pipe->outside_diameter.reset();
  EXPECT_FALSE(judged(crossing).surface.settlement_m);
  crossing.pipe.reset();
  const Assessment answer = judged(crossing);
  EXPECT_FALSE(answer.surface.settlement_m);
  EXPECT_FALSE(answer.surface.grout_annulus_m3);
  EXPECT_TRUE(answer.surface.settlement_abandoned_m);
}

TEST(LaterSettlement, OverTheCautionOfHeave_IsACaution) {
  Crossing crossing = clean_crossing();
  crossing.pipe->outside_diameter = Length{0.02};
  const double sinks = *judged(crossing).surface.settlement_m;
  crossing.limits["heave_road_caution_m"] = {sinks * 1.01, "owner", {}};
  EXPECT_FALSE(find(judged(crossing), "surface.settlement"));
  crossing.limits["heave_road_caution_m"] = {sinks * 0.8, "owner", {}};
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "surface.settlement", "f1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_LE(*finding->measured, sinks);
  EXPECT_EQ(*finding->limit, sinks * 0.8);
  // A limit typed for the road counts in its place.
  crossing.site.surface.front().heave_limit = Length{sinks * 2};
  EXPECT_FALSE(find(judged(crossing), "surface.settlement"));
}

// Loose ground passes on less of the gap, dilating ground not more than all of it.
TEST(LaterSettlement, ShareOfTheSoil_AtMostAll) {
  Crossing crossing = clean_crossing();
  const double all = *judged(crossing).surface.settlement_m;
  crossing.site.strata.front().values.heave_share = Ratio{0.4};
  EXPECT_NEAR(*judged(crossing).surface.settlement_m, 0.4 * all, 1e-12);
  crossing.site.strata.front().values.heave_share = Ratio{1.3};
  EXPECT_NEAR(*judged(crossing).surface.settlement_m, all, 1e-12);
}

}  // namespace
}  // namespace burrow::test
