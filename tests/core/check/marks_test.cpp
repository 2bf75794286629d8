// The run sheet: where the nose is at each mark of the hose, and what the crew is told there.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

bool has(const Mark& mark, MarkTask task) {
  return std::find(mark.tasks.begin(), mark.tasks.end(), task) != mark.tasks.end();
}

/// A level bore of 8 m that nothing turns: stations are arc lengths.
Crossing straight() {
  Crossing crossing = clean_crossing();
  crossing.bore.model.steer_constant.set(Ratio{0});
  return crossing;
}

constexpr double L_t = 1.19125;  ///< of tool-65

// By hand: the tool in at its length; then 1.5 m of hose for each mark, the nose a tool and 0.15 m ahead; arrival.
TEST(Marks, Nose_ByHand) {
  const std::vector<Mark> marks = judged(straight()).marks;
  ASSERT_EQ(marks.size(), 6u);
  EXPECT_FALSE(marks[0].hose_m);
  EXPECT_NEAR(*marks[0].nose_m, L_t, 1e-12);
  for (int k = 1; k <= 4; ++k) {
    EXPECT_NEAR(*marks[static_cast<std::size_t>(k)].hose_m, 1.5 * k, 1e-12);
    EXPECT_NEAR(*marks[static_cast<std::size_t>(k)].nose_m, 1.5 * k + L_t + 0.15, 1e-12);
    EXPECT_NEAR(*marks[static_cast<std::size_t>(k)].station_m, 1.5 * k + L_t + 0.15, 1e-9);
  }
  EXPECT_NEAR(*marks[5].nose_m, 8, 1e-9);
  EXPECT_NEAR(*marks[5].hose_m, 8 - L_t - 0.15, 1e-9);
  EXPECT_TRUE(has(marks[0], MarkTask::check_alignment));
  // The exit pit is empty from 2 m before its face (common practice, no source): the last mark before that.
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const bool last_before = *marks[i].nose_m <= 6 && (i + 1 == marks.size() || *marks[i + 1].nose_m > 6);
    EXPECT_EQ(has(marks[i], MarkTask::prepare_arrival), last_before) << i;
  }
  for (std::size_t i = 1; i < marks.size(); ++i) EXPECT_FALSE(has(marks[i], MarkTask::check_alignment));
}

TEST(Marks, SpacingAndFitting_AsEntered) {
  Crossing crossing = straight();
  crossing.air.mark_spacing.set(Length{2});
  crossing.air.tail_fitting.set(Length{0.3});
  const std::vector<Mark> marks = judged(crossing).marks;
  ASSERT_EQ(marks.size(), 5u);
  EXPECT_NEAR(*marks[2].hose_m, 4, 1e-12);
  EXPECT_NEAR(*marks[2].nose_m, 4 + L_t + 0.3, 1e-12);
}

// Five feet on a sheet in US units, unless something is entered.
TEST(Marks, Spacing_FiveFeetOnASheetInFeet) {
  Crossing crossing = straight();
  crossing.sheet.units = UnitSystem::us;
  EXPECT_NEAR(*judged(crossing).marks[1].hose_m, 1.524, 1e-12);
  crossing.air.mark_spacing.set(Length{1.5});
  EXPECT_NEAR(*judged(crossing).marks[1].hose_m, 1.5, 1e-12);
  crossing.air.mark_spacing = Air{}.mark_spacing;
  crossing.sheet.units = UnitSystem::metric;
  EXPECT_NEAR(*judged(crossing).marks[1].hose_m, 1.5, 1e-12);
}

// Depth of the axis below level ground at 100 m, nine in ten between the other two; times are those of the advance.
TEST(Marks, DepthBandAndTime_AreThoseOfThePath) {
  const Assessment answer = judged(straight());
  for (const Mark& mark : answer.marks) {
    EXPECT_NEAR(*mark.depth_m, 100 - *mark.elevation_m, 1e-9);
    EXPECT_NEAR(*mark.depth_high_m - *mark.depth_m, *mark.depth_m - *mark.depth_low_m, 1e-12);
    EXPECT_LE(*mark.time_s.p10, *mark.time_s.p50);
  }
  EXPECT_NEAR(*answer.marks.back().time_s.p50, *answer.advance_time_s.p50, 1e-9);
  EXPECT_NEAR(*answer.marks.back().time_s.p90, *answer.advance_time_s.p90, 1e-9);
  EXPECT_NEAR(*answer.marks.back().depth_high_m - *answer.marks.back().depth_m,
              1.645 * answer.bore.points.back().sd_vertical_m, 1e-12);
}

// Second route for the nose: a rope laid along the path, counted off point by point.
TEST(Marks, Nose_AlongTheCurve) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.grade = Ratio{-0.1};
  const Assessment answer = judged(crossing);
  for (const Mark& mark : answer.marks) {
    double rope = 0;
    const auto& points = answer.bore.points;
    for (std::size_t i = 1; i < points.size() && points[i - 1].x_m < *mark.station_m; ++i) {
      const double share = std::min(1.0, (*mark.station_m - points[i - 1].x_m) / (points[i].x_m - points[i - 1].x_m));
      rope += share * std::hypot(points[i].x_m - points[i - 1].x_m, points[i].y_m - points[i - 1].y_m,
                                 points[i].z_m - points[i - 1].z_m);
    }
    EXPECT_NEAR(rope, *mark.nose_m, 1e-4);
  }
}

// A main 0.5 m above the axis at station 4: near at the mark before it and until half a metre behind the nose.
TEST(Marks, Utility_NearAtItsMarks) {
  Crossing crossing = straight();
  crossing.site.utilities = {water_main(4, 99.1)};
  const std::vector<Mark> marks = judged(crossing).marks;
  ASSERT_EQ(marks.size(), 6u);         // noses 1.19, 2.84, 4.34, 5.84, 7.34, 8
  EXPECT_TRUE(marks[0].near.empty());  // the next mark lies more than a metre before it
  ASSERT_EQ(marks[1].near.size(), 1u);
  EXPECT_EQ(marks[1].near[0].id, "u1");
  EXPECT_NEAR(*marks[1].near[0].above_m, 0.5, 1e-6);
  EXPECT_NEAR(marks[1].near[0].ahead_m, 4 - 1.5 - L_t - 0.15, 1e-6);
  EXPECT_TRUE(has(marks[1], MarkTask::slow_down) && has(marks[1], MarkTask::listen));
  EXPECT_FALSE(has(marks[1], MarkTask::look));
  EXPECT_EQ(marks[2].near.size(), 1u);  // 0.34 m behind the nose
  EXPECT_TRUE(marks[3].near.empty());
  crossing.site.utilities[0].located.how.set(LocatedHow::exposed);
  EXPECT_TRUE(has(judged(crossing).marks[1], MarkTask::look));
  crossing.site.utilities[0].path = {{4, -8, 97.0}, {4, 8, 97.0}};  // far below
  for (const Mark& mark : judged(crossing).marks) EXPECT_TRUE(mark.near.empty());
}

// What is to be exposed stops the tool at the last mark before it. An unknown depth is never far away.
TEST(Marks, UnexposedInTheBand_StopsTheTool) {
  Crossing crossing = straight();
  crossing.site.utilities = {water_main(4, 98.75)};
  crossing.site.utilities[0].kind = UtilityKind::gas;
  const std::vector<Mark> marks = judged(crossing).marks;
  EXPECT_TRUE(has(marks[1], MarkTask::stop_until_exposed));
  EXPECT_FALSE(has(marks[2], MarkTask::stop_until_exposed));  // passed
  EXPECT_FALSE(has(marks[4], MarkTask::stop_until_exposed));
  crossing.site.utilities[0].path = {{4, -8, std::nullopt}, {4, 8, std::nullopt}};
  const std::vector<Mark> unknown = judged(crossing).marks;
  ASSERT_EQ(unknown[1].near.size(), 1u);
  EXPECT_FALSE(unknown[1].near[0].above_m);
  EXPECT_TRUE(has(unknown[1], MarkTask::stop_until_exposed));
}

// The lane from 2 to 6: watched from the mark before the nose enters to that where it is still under.
TEST(Marks, Road_IsLevelledWhileTheNoseIsUnderIt) {
  const std::vector<Mark> marks = judged(straight()).marks;
  const auto under = [&](std::size_t i) { return has(marks[i], MarkTask::check_heave); };
  EXPECT_TRUE(under(0) && under(1) && under(2) && under(3));  // 1.19 to 2.84 … 5.84 to 7.34
  EXPECT_FALSE(under(4) || under(5));
  EXPECT_EQ(marks[0].under, std::vector<std::string>{"f1"});
}

// A bore shorter than the tool has its arrival alone; one that does not arrive has none.
TEST(Marks, ShortBores) {
  Crossing crossing = straight();
  crossing.bore.exit.station = Length{1};
  const std::vector<Mark> marks = judged(crossing).marks;
  ASSERT_EQ(marks.size(), 1u);
  EXPECT_FALSE(marks[0].hose_m);
  EXPECT_NEAR(*marks[0].nose_m, 1, 1e-9);
  EXPECT_TRUE(has(marks[0], MarkTask::prepare_arrival));
  crossing = straight();
  crossing.bore.launch.grade = Ratio{0.3};
  const Assessment up = judged(crossing);
  ASSERT_EQ(up.bore.ends, PathEnd::daylight);
  ASSERT_FALSE(up.marks.empty());
  EXPECT_LT(*up.marks.back().nose_m, up.bore.length_m);
  for (const Mark& mark : up.marks) EXPECT_FALSE(has(mark, MarkTask::prepare_arrival));
  crossing.bore.launch.elevation = Length{101};  // in the air
  EXPECT_TRUE(judged(crossing).marks.empty());
}

// From where the tool would stop there is no time.
TEST(Marks, BeyondAStop_NoTime) {
  Crossing crossing = straight();
  crossing.bore.tool.pressure = Pressure{5e4};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(answer.refusal_station_m);
  EXPECT_FALSE(answer.marks.back().time_s.p50);
}

TEST(Marks, TooClose_IsToldAndWidened) {
  Crossing crossing = straight();
  crossing.air.mark_spacing.set(Length{0.01});
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "air.mark-spacing")) << listed(answer);
  EXPECT_NEAR(*answer.marks[2].hose_m - *answer.marks[1].hose_m, 0.25, 1e-9);
}

}  // namespace
}  // namespace burrow::test
