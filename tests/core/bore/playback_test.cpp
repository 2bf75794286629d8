// A bore as it happens: place and time of the tool.

#include "burrow/bore/playback.h"

#include <gtest/gtest.h>

#include <cmath>

namespace burrow {
namespace {

/// Ten metres straight, 1 % down; the first half takes 100 s, the second 300 s.
Playback ten_metres() {
  Playback bore;
  for (int i = 0; i <= 20; ++i) {
    PathPoint p;
    p.s_m = 0.5 * i;
    p.grade_rad = std::atan(-0.01);
    p.x_m = p.s_m * std::cos(p.grade_rad);
    p.z_m = 100 + p.s_m * std::sin(p.grade_rad);
    bore.path.points.push_back(p);
    bore.time_s.push_back(i <= 10 ? 10.0 * i : 100 + 30.0 * (i - 10));
  }
  bore.path.length_m = 10;
  bore.marks_m = {1.5, 3, 4.5, 6, 7.5, 9};
  bore.tool_length_m = 1.2;
  bore.tool_diameter_m = 0.065;
  return bore;
}

TEST(Playback, NoseAndTime_AreEachOthersInverse) {
  const Playback bore = ten_metres();
  EXPECT_DOUBLE_EQ(nose_at(bore, 0), 0);
  EXPECT_DOUBLE_EQ(nose_at(bore, 50), 2.5);
  EXPECT_DOUBLE_EQ(nose_at(bore, 100), 5);
  EXPECT_DOUBLE_EQ(nose_at(bore, 250), 7.5);
  for (double t = 0; t <= 400; t += 3.7) EXPECT_NEAR(time_at(bore, nose_at(bore, t)), t, 1e-9);
  EXPECT_DOUBLE_EQ(nose_at(bore, -5), 0) << "before the start";
  EXPECT_DOUBLE_EQ(nose_at(bore, 1e6), 10) << "after the end";
}

TEST(Playback, Pace_IsThatOfTheStretch) {
  const Playback bore = ten_metres();
  EXPECT_DOUBLE_EQ(pace_at(bore, 30), 0.05);
  EXPECT_DOUBLE_EQ(pace_at(bore, 200), 0.5 / 30);
  EXPECT_EQ(pace_at(bore, -1), 0);
  EXPECT_EQ(pace_at(bore, 400), 0);
}

// The body is as long as the tool, on the cradle and in the ground.
TEST(Playback, Axis_IsAsLongAsAskedAndGoesOnBehindTheFace) {
  const Playback bore = ten_metres();
  for (const double nose : {0.0, 0.4, 1.2, 6.3, 10.0}) {
    const auto body = axis_between(bore, nose - bore.tool_length_m, nose);
    ASSERT_GE(body.size(), 2u);
    double length = 0;
    for (std::size_t i = 1; i < body.size(); ++i)
      length += std::hypot(body[i].x_m - body[i - 1].x_m, body[i].y_m - body[i - 1].y_m, body[i].z_m - body[i - 1].z_m);
    EXPECT_NEAR(length, bore.tool_length_m, 1e-9) << nose;
  }
  const auto cradle = axis_between(bore, -1.2, 0);
  EXPECT_NEAR(cradle.front().z_m, 100 + 1.2 * std::sin(std::atan(0.01)), 1e-12)
      << "the tail lies higher: it points down";
  EXPECT_TRUE(axis_between(bore, 2, 2).empty());
}

// Half under the nose, all of it far behind, none far ahead; and the sum of what each short piece of hole does, by
// adding them up: a source at distance r lifts the ground by a share of h/r³.
TEST(Playback, Heave_IsTheSumOverTheHole) {
  EXPECT_DOUBLE_EQ(heave_share(0, 1.3), 0.5);
  EXPECT_NEAR(heave_share(1000, 1.3), 1, 1e-6);
  EXPECT_NEAR(heave_share(-1000, 1.3), 0, 1e-6);
  const double h = 1.3, step = 0.001;
  for (const double u : {-2.0, -0.5, 0.3, 1.0, 4.0}) {
    double behind = 0, whole = 0;
    for (double x = -200; x < 200; x += step) {
      const double lift = h / std::pow((x + step / 2) * (x + step / 2) + h * h, 1.5) * step;
      whole += lift;
      if (x < u) behind += lift;
    }
    EXPECT_NEAR(heave_share(u, h), behind / whole, 2e-4) << u;
  }
}

TEST(Playback, Marks_LastAndNext) {
  const Playback bore = ten_metres();
  EXPECT_EQ(last_mark(bore, 0), -1);
  EXPECT_EQ(next_mark(bore, 0), 0);
  EXPECT_EQ(last_mark(bore, 3.0), 1) << "at the mark it is passed";
  EXPECT_EQ(next_mark(bore, 3.0), 2);
  EXPECT_EQ(next_mark(bore, 9.5), -1);
}

TEST(Playback, Readings_AreStraightInBetween) {
  const Playback bore = ten_metres();
  const auto times = times_between(bore.path, {0, 5, 10}, {0, 100, 400});
  ASSERT_EQ(times.size(), bore.time_s.size());
  for (std::size_t i = 0; i < times.size(); ++i) EXPECT_NEAR(times[i], bore.time_s[i], 1e-9);
}

}  // namespace
}  // namespace burrow
