// Rules of the pipe and of what presses on it: temperatures, safety against buckling, water table, width of a road.

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

const PipeCheck* check(const Assessment& answer, std::string_view code) {
  const auto it = std::find_if(answer.pipe_checks.begin(), answer.pipe_checks.end(),
                               [&](const PipeCheck& c) { return c.code == code; });
  return it == answer.pipe_checks.end() ? nullptr : &*it;
}

// The day's temperature decides the pull, the one in service the ring: a pull in winter passes nothing for a warm
// summer.
TEST(PipeChecks, Temperature_OfTheDayAndInService) {
  Crossing crossing = clean_crossing();
  crossing.pipe->operating_pressure.set(Pressure{4e5});
  const auto limit = [&](const char* code) { return *check(judged(crossing), code)->limit; };
  const auto value = [&](const char* code) { return *check(judged(crossing), code)->value; };
  const double pull = value("pipe.safe-pull"), ring = limit("pipe.ring"), buckling = limit("pipe.buckling"),
               pressed = limit("pipe.pressure"), flat = value("pipe.deflection");
  crossing.pipe->temperature.set(Temperature{311});
  EXPECT_LT(value("pipe.safe-pull"), pull);
  EXPECT_EQ(limit("pipe.ring"), ring);
  EXPECT_EQ(limit("pipe.buckling"), buckling);
  EXPECT_EQ(limit("pipe.pressure"), pressed);
  EXPECT_EQ(value("pipe.deflection"), flat);
  crossing.pipe->temperature = Pipe{}.temperature;
  crossing.pipe->service_temperature = Temperature{311};
  EXPECT_EQ(value("pipe.safe-pull"), pull);
  EXPECT_LT(limit("pipe.ring"), ring);
  EXPECT_LT(limit("pipe.buckling"), buckling);
  EXPECT_LT(limit("pipe.pressure"), pressed);
  EXPECT_GT(value("pipe.deflection"), flat);
  EXPECT_EQ(input(*working(judged(crossing), "pipe.deflection"), "T_service"), 311);
  crossing.pipe->service_temperature = Temperature{360};
  EXPECT_TRUE(find(judged(crossing), "pipe.beyond"));
}

// Not entered or deleted: the warmest that the material tells, which no entry within its rows undercuts, and it is
// said.
TEST(PipeChecks, ServiceTemperature_NotEnteredIsTheWarmest) {
  Crossing crossing = clean_crossing();
  crossing.pipe->operating_pressure.set(Pressure{4e5});
  crossing.pipe->service_temperature.reset();
  const Assessment unknown = judged(crossing);
  const Finding* taken = find(unknown, "pipe.service-taken", "pipe");
  ASSERT_TRUE(taken) << listed(unknown);
  EXPECT_EQ(taken->severity, Severity::note);
  EXPECT_EQ(*taken->measured, 333.15);
  for (const double kelvin : {263.0, 283.0, 296.0, 311.0, 333.15}) {
    crossing.pipe->service_temperature = Temperature{kelvin};
    const Assessment entered = judged(crossing);
    EXPECT_FALSE(find(entered, "pipe.service-taken"));
    for (const char* code : {"pipe.ring", "pipe.buckling", "pipe.buckling-bare", "pipe.pressure", "pipe.deflection"})
      EXPECT_GE(*check(unknown, code)->utilisation, *check(entered, code)->utilisation - 1e-12) << code << kelvin;
  }
  crossing.pipe->service_temperature.reset();
  crossing.pipe->material = "steel-sch40";  // warmth does not matter to it
  crossing.pipe->wall = Length{0.004};
  EXPECT_FALSE(find(judged(crossing), "pipe.service-taken"));
}

// Moser & Folkman, Buried Pipe Design, p 113 (read): 2.5 from two diameters of cover on, 3.0 below.
TEST(PipeChecks, Buckling_SafetyByCover) {
  Crossing crossing = clean_crossing();
  for (const char* code : {"pipe.buckling", "pipe.buckling-bare"}) {
    const Assessment deep = judged(crossing);
    EXPECT_EQ(input(*working(deep, code), "N"), 2.5);
    EXPECT_GT(input(*working(deep, code), "H/D"), 2);
    EXPECT_EQ(check(deep, code)->source.label, SourceLabel::read);
  }
  Crossing shallow = clean_crossing();
  shallow.bore.tool.tool_class = "tool-180";
  shallow.pipe->outside_diameter = Length{0.16};
  shallow.bore.launch.elevation = Length{99.66};
  shallow.site.surface.clear();
  const Assessment answer = judged(shallow);
  for (const char* code : {"pipe.buckling", "pipe.buckling-bare"}) {
    ASSERT_TRUE(working(answer, code)) << code;
    EXPECT_LT(input(*working(answer, code), "H/D"), 2);
    EXPECT_EQ(input(*working(answer, code), "N"), 3.0);
  }
  crossing.limits["pipe_buckling_safety"] = {2.0, "", ""};  // less than the handbook asks, and nobody says why
  EXPECT_EQ(input(*working(judged(crossing), "pipe.buckling"), "N"), 2.5);
  crossing.limits["pipe_buckling_safety"] = {2.0, "PE pipe design", ""};
  EXPECT_EQ(input(*working(judged(crossing), "pipe.buckling"), "N"), 2.0);
}

// The bore falls through the water table: wet as far as the geometry says, not as far as a piece reaches.
TEST(PipeChecks, WaterTable_SplitsThePiece) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.grade = Ratio{-0.05};
  crossing.bore.model.steer_constant.set(Ratio{0});
  const Assessment whole = judged(crossing);
  ASSERT_FALSE(whole.bore.points.empty());
  const double length = whole.bore.points.back().s_m;
  double before = 0;
  for (double station = 0.31; station < 7.9; station += 0.53) {
    const double water = 98.60 - 0.05 * station;
    crossing.site.water = LevelLine{{-8, water}, {20, water}};
    const Assessment answer = judged(crossing);
    const double wet = input(*working(answer, "pipe.pull"), "L_wet");
    EXPECT_NEAR(wet, length - station * std::sqrt(1 + 0.05 * 0.05), 0.01) << station;
    if (before > 0) {
      EXPECT_NEAR(before - wet, 0.53 * std::sqrt(1 + 0.05 * 0.05), 0.01) << station;
    }
    before = wet;
  }
}

/// A square road by its outline, its edges between the points of the path.
Crossing with_road(double from_m, double to_m, double skew_m = 0) {
  Crossing crossing = clean_crossing();
  SurfaceFeature& road = crossing.site.surface.front();
  road.traffic = "en-1991-2";
  road.from.reset();
  road.to.reset();
  road.outline = {{from_m - skew_m, -6}, {to_m - skew_m, -6}, {to_m + skew_m, 6}, {from_m + skew_m, 6}};
  return crossing;
}

// 6.1 m by its outline are two lanes, however the points of the path fall; the stations give the same.
TEST(RoadWidth, ByTheOutline) {
  for (const double from : {0.8, 0.93, 1.01, 1.117}) {
    const Assessment answer = judged(with_road(from, from + 6.1));
    const Working* live = working(answer, "pipe.live");
    ASSERT_TRUE(live);
    EXPECT_NEAR(input(*live, "w"), 6.1, 1e-9) << from;
    EXPECT_EQ(input(*live, "n"), 2) << from;
    Crossing stations = with_road(from, from + 6.1);
    stations.site.surface.front().outline.clear();
    stations.site.surface.front().from = Length{from};
    stations.site.surface.front().to = Length{from + 6.1};
    const Assessment by_stations = judged(stations);
    EXPECT_NEAR(input(*working(by_stations, "pipe.live"), "w"), 6.1, 1e-9);
    EXPECT_NEAR(*check(answer, "pipe.live")->value, *check(by_stations, "pipe.live")->value,
                1e-6 * *check(by_stations, "pipe.live")->value);
  }
}

// The bore ends under the road, or crosses it askew, or clips its end: never fewer lanes than the road has.
TEST(RoadWidth, PartOfItAndAskew_CountWhole) {
  EXPECT_NEAR(input(*working(judged(with_road(4, 13.5)), "pipe.live"), "w"), 9.5, 1e-9);
  EXPECT_EQ(input(*working(judged(with_road(4, 13.5)), "pipe.live"), "n"), 3);
  EXPECT_GE(input(*working(judged(with_road(1, 7.1, 0.8)), "pipe.live"), "w"), 6.1 - 1e-9);
  Crossing corner = with_road(1, 7.1);
  corner.site.surface.front().outline = {{1, -6}, {7.1, -6}, {7.1, -0.1}, {3.2, 0.05}, {2.9, 0.05}, {1, -0.1}};
  EXPECT_NEAR(input(*working(judged(corner), "pipe.live"), "w"), 6.1, 1e-9);
  EXPECT_EQ(input(*working(judged(with_road(1, 6.7)), "pipe.live"), "n"), 2);  // 5.7 m: two of 2.85 m
  EXPECT_NEAR(input(*working(judged(with_road(1, 6.7)), "pipe.live"), "b"), 2.85, 1e-9);
}

// An outline narrower than a step of the path is met all the same.
TEST(RoadWidth, NarrowOutline_IsMet) {
  const Assessment answer = judged(with_road(3.03, 3.08));
  EXPECT_GT(*check(answer, "pipe.live")->value, 0);
}

}  // namespace
}  // namespace burrow::test
