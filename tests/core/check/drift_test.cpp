// Climb and sag by the ground, against the room to the least cover and the edges of the exit window.

#include <cmath>

#include "burrow/check/mute.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

/// Dense sand, a tool well above its neutral cover, a long bore: the model lets it climb.
Crossing climbing() {
  Crossing crossing = clean_crossing();
  crossing.site.ground = {{-12, 100}, {40, 100}};
  crossing.site.water = LevelLine{{-12, 90}, {40, 90}};
  crossing.site.strata[0].soil = "dense-sand";
  crossing.site.utilities = {water_main(4, 95.0)};
  crossing.bore.launch.elevation = Length{100 - 0.95 - 0.0325};
  crossing.bore.exit.station = Length{16};
  return crossing;
}

const PathPoint& end_of(const Assessment& answer) {
  return answer.bore.points.back();
}

// By hand: a level aim; the climb at each station against half of what the aim keeps over ten diameters.
TEST(Drift, Climb_HalfTheRoomByHand) {
  const Assessment answer = judged(climbing());
  double worst = 0, size = 0, most = 0;
  for (const PathPoint& p : answer.bore.points) {
    const double climb = p.z_m - answer.bore.points.front().z_m, room = p.cover_m + climb - 0.65;
    const double allowed = std::max(0.5 * room, 0.0325);
    if (climb / allowed > worst) {
      worst = climb / allowed;
      size = climb;
      most = allowed;
    }
  }
  ASSERT_GT(worst, 1) << listed(answer);
  const Finding* climb = find(answer, "bore.climb");
  ASSERT_TRUE(climb) << listed(answer);
  EXPECT_EQ(climb->severity, Severity::caution);
  EXPECT_EQ(climb->source.label, SourceLabel::our_default);
  EXPECT_NEAR(*climb->measured, size, 1e-12);
  EXPECT_NEAR(*climb->limit, most, 1e-12);
}

// Limit: a path that follows its aim has no drift; deeper there is more room, and the finding goes.
TEST(Drift, Limit_StraightOrDeepSaysNothing) {
  Crossing straight = climbing();
  straight.bore.model.steer_constant.set(Ratio{1e-9});
  EXPECT_FALSE(find(judged(straight), "bore.climb")) << listed(judged(straight));
  Crossing deep = climbing();
  deep.bore.launch.elevation = Length{98.0};
  EXPECT_FALSE(find(judged(deep), "bore.climb")) << listed(judged(deep));
}

// It only ever advises deeper: less than ten diameters stays a stop, whatever the drift.
TEST(Drift, TenDiameters_StayTheLeast) {
  Crossing crossing = climbing();
  crossing.limits["drift_share"] = {1.0, "crew watches the climb", {}};
  crossing.bore.launch.elevation = Length{100 - 0.60 - 0.0325};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "bore.cover")) << listed(answer);
  EXPECT_EQ(find(answer, "bore.cover")->severity, Severity::stop);
}

// Soft clay lets a heavy tool sag: against the floor of a typed exit pit a caution, in a pit left to the program none.
TEST(Drift, Sag_AgainstATypedFloor) {
  Crossing crossing = clean_crossing();
  crossing.site.strata[0].soil = "soft-clay";
  crossing.bore.tool.tool_class = "tool-130";
  crossing.site.utilities = {water_main(4, 95.0)};
  crossing.bore.launch.elevation = Length{98.2};
  crossing.site.ground = {{-12, 100}, {35, 100}};
  crossing.site.water = LevelLine{{-12, 90}, {35, 90}};
  crossing.bore.exit.station = Length{20};
  const Assessment free = judged(crossing);
  const double sag = free.bore.points.front().z_m - end_of(free).z_m;
  ASSERT_GT(sag, 0.1) << listed(free);
  EXPECT_FALSE(find(free, "bore.sag"));
  crossing.pits.exit.floor_elevation = Length{98.2 - 0.1 - 1.5 * sag};
  const Assessment typed = judged(crossing);
  const Finding* finding = find(typed, "bore.sag");
  ASSERT_TRUE(finding) << listed(typed);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_NEAR(*finding->measured, sag, 1e-9);
  EXPECT_NEAR(*finding->limit, std::max(0.75 * sag, 0.065), 1e-9);
  crossing.pits.exit.floor_elevation = Length{98.2 - 0.1 - 2.1 * sag};
  EXPECT_FALSE(find(judged(crossing), "bore.sag"));
}

// Not calibrated and calibrated alike: a caution at most, and it can be muted with a reason.
TEST(Drift, NeverAStop) {
  Crossing crossing = climbing();
  crossing.bore.model.calibrated_from.set(40);
  crossing.bore.model.calibrated_records = named_records(40);
  EXPECT_EQ(find(judged(crossing), "bore.climb")->severity, Severity::caution);
  const auto muted =
      with_mute(crossing, *find(judged(crossing), "bore.climb"), {"watched by locator", "A. Nobody", "2026-03-01"});
  ASSERT_TRUE(muted);
  crossing.muted = *muted;
  EXPECT_TRUE(find(judged(crossing), "bore.climb")->muted);
}

}  // namespace
}  // namespace burrow::test
