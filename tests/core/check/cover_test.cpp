// Cover: mean and band, owners' rules under each road, neutral cover.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

constexpr double D = 0.065, a = D / 2;

const PathPoint& least_cover_point(const Assessment& answer) {
  return *std::min_element(answer.bore.points.begin(), answer.bore.points.end(),
                           [](const PathPoint& p, const PathPoint& q) { return p.cover_m < q.cover_m; });
}

// Level ground: the launch is the shallowest place of a sagging bore; C = 100 − z − D/2.
TEST(Cover, MeanBelowTheLimit_IsAStop) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{99.40};
  const Assessment answer = judged(crossing);
  const Finding* cover = find(answer, "bore.cover", "bore");
  ASSERT_TRUE(cover) << listed(answer);
  EXPECT_EQ(cover->severity, Severity::stop);
  const PathPoint& p = least_cover_point(answer);
  EXPECT_NEAR(*cover->measured, 100 - p.z_m - a, 1e-12);
  EXPECT_NEAR(*cover->limit, 10 * D, 1e-12);
  EXPECT_NEAR(*cover->margin, (*cover->measured - 0.65) / 0.65, 1e-12);
  EXPECT_EQ(*cover->station_m, p.x_m);
  EXPECT_FALSE(find(answer, "bore.cover-low"));  // one finding about cover is enough
}

TEST(Cover, OnlyTheBandBelow_IsACaution) {
  Crossing crossing = clean_crossing();
  const Assessment as_is = judged(crossing);
  double low = 1e9;
  for (const PathPoint& p : as_is.bore.points) low = std::min(low, p.cover_m - 1.645 * p.sd_vertical_m);
  EXPECT_NEAR(*as_is.cover.least_low_m, low, 1e-12);
  ASSERT_LT(low, *as_is.cover.least_m);
  crossing.limits["cover_diameters"] = {(low + *as_is.cover.least_m) / 2 / D, "between", {}};
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "bore.cover-low");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_NEAR(*finding->measured, low, 1e-12);
  EXPECT_FALSE(find(answer, "bore.cover"));
  crossing.limits["cover_diameters"] = {(low - 0.001) / D, "just kept", {}};
  EXPECT_FALSE(find(judged(crossing), "bore.cover-low"));
}

TEST(Cover, OwnersRule_CountsUnderTheRoadAlone) {
  Crossing crossing = clean_crossing();
  crossing.site.ground = {{-8, 100}, {1, 100}, {2, 99.45}, {6, 99.45}, {7, 100}, {20, 100}};
  Assessment answer = judged(crossing);
  const Finding* cover = find(answer, "surface.cover", "f1");  // 36 in = 0.9144 m wanted
  ASSERT_TRUE(cover) << listed(answer);
  EXPECT_EQ(cover->severity, Severity::stop);
  EXPECT_NEAR(*cover->limit, 0.9144, 1e-9);
  EXPECT_GE(*cover->station_m, 2);
  EXPECT_LE(*cover->station_m, 6);
  EXPECT_LT(*cover->measured, 0.9144);
  crossing.site.surface.front().from = Length{7.2};
  crossing.site.surface.front().to = Length{7.9};
  EXPECT_FALSE(find(judged(crossing), "surface.cover", "f1"));
  crossing.site.surface.front().required_cover = Length{2};
  answer = judged(crossing);
  ASSERT_TRUE(find(answer, "surface.cover", "f1"));
  EXPECT_EQ(find(answer, "surface.cover")->source.label, SourceLabel::owners_setting);
}

// However it is entered, a thing on top is judged: stations the wrong way round, narrower than the spacing of the
// path, or as an outline in plan; beside the bore or beyond it, it is not.
TEST(Cover, StretchOfAFeature_NeverSlipsThrough) {
  Crossing crossing = clean_crossing();
  SurfaceFeature& road = crossing.site.surface.front();
  road.required_cover = Length{3};
  const auto judged_at = [&](std::optional<double> from, std::optional<double> to, PlanLine outline = {}) {
    road.from = from ? std::optional(Length{*from}) : std::nullopt;
    road.to = to ? std::optional(Length{*to}) : std::nullopt;
    road.outline = std::move(outline);
    const Finding* finding = nullptr;
    const Assessment answer = judged(crossing);
    finding = find(answer, "surface.cover", "f1");
    return finding ? finding->station_m : std::nullopt;
  };
  ASSERT_TRUE(judged_at(2, 6));
  EXPECT_EQ(judged_at(6, 2), judged_at(2, 6));
  for (double from = 1; from < 2; from += 0.07) {
    const auto station = judged_at(from, from + 0.01);
    ASSERT_TRUE(station) << from;
    EXPECT_NEAR(*station, from, 0.14);
  }
  const auto under = judged_at({}, {}, {{2, -5}, {6, -5}, {6, 5}, {2, 5}});
  ASSERT_TRUE(under);
  EXPECT_NEAR(*under, *judged_at(2, 6), 0.26);
  EXPECT_FALSE(judged_at({}, {}, {{2, 2}, {6, 2}, {6, 5}, {2, 5}}));
  EXPECT_FALSE(judged_at(9, 12));
  EXPECT_FALSE(judged_at(-5, -1));
}

// Loose sand: the neutral cover of the 65 mm tool is about 12 D (method table 12.3), more than the ten of the trade. To
// be above it is no fault by itself: what it does to the path is (`Drift.*`).
TEST(Cover, NeutralCover_IsToldButNoFinding) {
  Crossing crossing = clean_crossing();
  crossing.site.strata.front().soil = "loose-sand";
  crossing.bore.launch.elevation = Length{100 - a - 11.3 * D};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(answer.neutral_cover_m);
  EXPECT_NEAR(*answer.neutral_cover_m / D, 12.3, 0.05);
  EXPECT_LT(*answer.cover.least_m, *answer.neutral_cover_m);
  EXPECT_FALSE(find(answer, "bore.neutral-cover")) << listed(answer);
  EXPECT_TRUE(working(answer, "bore.neutral-cover"));
  // The ten diameters stay the least.
  crossing.bore.launch.elevation = Length{100 - a - 9.9 * D};
  EXPECT_EQ(find(judged(crossing), "bore.cover")->severity, Severity::stop);
}

// In the ground as it is: made ground over clay, launched in the clay. The line, not the soil at the launch, decides.
TEST(Cover, NeutralCover_IsThatOfTheLine) {
  Crossing crossing = clean_crossing();
  Stratum fill = crossing.site.strata.front();
  fill.id = "l0";
  fill.soil = "made-ground";
  crossing.site.strata.front().top = LevelLine{{-8, 99.45}, {20, 99.45}};
  crossing.site.strata.insert(crossing.site.strata.begin(), fill);
  crossing.bore.launch.elevation = Length{99.40};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(answer.neutral_cover_m && answer.neutral_station_m) << listed(answer);
  const auto on_line = std::find_if(answer.neutral_line.begin(), answer.neutral_line.end(),
                                    [&](const NeutralPoint& p) { return p.station_m == *answer.neutral_station_m; });
  ASSERT_NE(on_line, answer.neutral_line.end());
  EXPECT_EQ(on_line->cover_m, answer.neutral_cover_m);
  const bool climbs = answer.bore.points.front().curvature_1_m > 0;
  EXPECT_TRUE(climbs);
  crossing.bore.launch.elevation = Length{98.60};
  const Assessment deep = judged(crossing);
  EXPECT_LT(deep.bore.points.front().curvature_1_m, 0);
}

}  // namespace
}  // namespace burrow::test
