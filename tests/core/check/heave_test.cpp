// Heave against hand-worked values, and the limits of roads and tracks.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

constexpr double a = 0.065 / 2;

// w = f_v a²/h with f_v = 1 in firm clay (table): a = 32.5 mm at h = 1.40 m gives 0.754 mm.
TEST(Heave, FirmClay_ByHand) {
  Crossing crossing = clean_crossing();
  const Assessment answer = judged(crossing);
  ASSERT_FALSE(answer.heave.empty());
  EXPECT_NEAR(answer.heave.front().low_m, 0.0325 * 0.0325 / 1.40, 1e-12);
  double greatest = 0;
  for (const PathPoint& p : answer.bore.points) greatest = std::max(greatest, a * a / (100 - p.z_m));
  EXPECT_NEAR(*answer.surface.heave_m, greatest, 1e-12);
}

struct HeaveCase {
  SurfaceKind kind;
  double caution_m, stop_m;
};

// Limits (owner's setting): road 6 and 10 mm, track 3 and 6 mm. A tool of 180 mm in firm clay: h = a²/w.
TEST(Heave, RoadAndTrack_CautionThenStop) {
  for (const HeaveCase& one : {HeaveCase{SurfaceKind::road, 0.006, 0.010}, {SurfaceKind::track, 0.003, 0.006}}) {
    Crossing crossing = clean_crossing();
    crossing.bore.tool.tool_class = "tool-180";
    crossing.limits["cover_diameters"] = {1, "heave is looked at here", {}};
    SurfaceFeature& f = crossing.site.surface.front();
    f.kind = one.kind;
    f.rule.reset();
    f.required_cover = Length{0.1};
    f.from = Length{-1};
    f.to = Length{0.1};  // the launch alone, where the depth is as typed
    const auto at = [&](double heave) {
      crossing.bore.launch.elevation = Length{100 - 0.09 * 0.09 / heave};
      const Assessment answer = judged(crossing);
      const Finding* finding = find(answer, "surface.heave", "f1");
      if (finding) {
        EXPECT_NEAR(*finding->measured, heave, 1e-9);
      }
      return finding ? std::optional(finding->severity) : std::nullopt;
    };
    EXPECT_EQ(at(one.caution_m * 0.99), std::nullopt);
    EXPECT_EQ(at(one.caution_m * 1.01), Severity::caution);
    EXPECT_EQ(at(one.stop_m * 0.99), Severity::caution);
    EXPECT_EQ(at(one.stop_m * 1.01), Severity::stop);
  }
}

// High estimate, Gaussian: f π a²/(√(2π) i), i = 0.5 h, that is √(2π) = 2.507 times the low one, if the roof holds.
TEST(Heave, HighEstimateOverTheLimit_IsACaution) {
  Crossing crossing = clean_crossing();
  const Assessment as_is = judged(crossing);
  const double low = *as_is.surface.heave_m;
  EXPECT_GE(*as_is.surface.heave_high_m, low * std::sqrt(2 * pi) * (1 - 1e-9));
  crossing.site.surface.front().heave_limit = Length{low * 1.5};
  const Assessment answer = judged(crossing);
  const Finding* high = find(answer, "surface.heave-high", "f1");
  ASSERT_TRUE(high) << listed(answer);
  EXPECT_EQ(high->severity, Severity::caution);
  EXPECT_FALSE(find(answer, "surface.heave"));
  EXPECT_NEAR(*answer.surface.limit_m, low * 1.5, 1e-12);
  crossing.site.surface.front().heave_limit = Length{low * 0.9};
  EXPECT_EQ(judged(crossing).verdict, Verdict::stop);
}

TEST(Heave, RuleOfTheOwner_ReplacesTheCaution) {
  Crossing crossing = clean_crossing();
  SurfaceFeature& f = crossing.site.surface.front();
  f.kind = SurfaceKind::track;
  f.rule = "track-cover-72in";  // movement reported from 1/4 in = 6.35 mm, more than the stop at 6 mm
  crossing.bore.tool.tool_class = "tool-180";
  crossing.limits["cover_diameters"] = {1, "heave is looked at here", {}};
  crossing.bore.launch.elevation = Length{100 - 0.09 * 0.09 / 0.0062};
  f.from = Length{-1};
  f.to = Length{0.1};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "surface.heave", "f1")) << listed(answer);
  EXPECT_EQ(find(answer, "surface.heave")->severity, Severity::stop);
}

}  // namespace
}  // namespace burrow::test
