// Whatever the reader accepts is judged: no crash, nothing that is not finite, and nothing that looks safe by accident.

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/words/working_text.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

struct Odd {
  const char* what;
  void (*make)(Crossing&);
  bool may_be_within_limits;
};

Utility& only_utility(Crossing& c) {
  return c.site.utilities.front();
}

const Odd odd_inputs[] = {
    {"LaunchAboveGround", [](Crossing& c) { c.bore.launch.elevation = Length{101}; }, false},
    {"LaunchFarAboveGround", [](Crossing& c) { c.bore.launch.elevation = Length{1e4}; }, false},
    {"LaunchOnTheGroundLine", [](Crossing& c) { c.bore.launch.elevation = Length{100}; }, false},
    {"LaunchVeryDeep", [](Crossing& c) { c.bore.launch.elevation = Length{-1e4}; }, false},
    {"ExitHalfAMetreAway", [](Crossing& c) { c.bore.exit.station = Length{0.5}; }, true},
    {"ExitAMillimetreAway", [](Crossing& c) { c.bore.exit.station = Length{0.001}; }, true},
    {"Bore45m",
     [](Crossing& c) {
       c.site.ground = {{-8, 100}, {80, 100}};
       c.bore.exit.station = Length{45};
     },
     false},
    {"Bore5km", [](Crossing& c) { c.bore.exit.station = Length{5000}; }, false},
    {"Upward45Degrees", [](Crossing& c) { c.bore.launch.grade = Ratio{1}; }, false},
    {"Downward45Degrees", [](Crossing& c) { c.bore.launch.grade = Ratio{-1}; }, false},
    {"SquareToTheLine", [](Crossing& c) { c.bore.launch.heading.set(Angle{pi / 2}); }, false},
    {"UtilityWithoutPath", [](Crossing& c) { only_utility(c).path.clear(); }, false},
    {"UtilityOfOneVertex",
     [](Crossing& c) {
       only_utility(c).path = {{4, 0, 97.0}};
     },
     true},
    {"UtilityOfOneVertexOfUnknownDepth",
     [](Crossing& c) {
       only_utility(c).path = {{4, 0, std::nullopt}};
     },
     false},
    {"UtilityOfOneVertexThrice",
     [](Crossing& c) {
       only_utility(c).path = {{4, 0, 97.0}, {4, 0, 97.0}, {4, 0, 97.0}};
     },
     true},
    {"UtilityAlongTheBore",
     [](Crossing& c) {
       only_utility(c).path = {{-5, 0, 98.6}, {15, 0, 98.6}};
     },
     false},
    {"UtilityUpright",
     [](Crossing& c) {
       only_utility(c).path = {{4, 0, 90}, {4, 0, 100}};
     },
     false},
    {"NullElevations",
     [](Crossing& c) {
       for (PathVertex& v : only_utility(c).path) v.z_m.reset();
     },
     false},
    {"UtilityVeryFarAway",
     [](Crossing& c) {
       only_utility(c).path = {{1e5, 1e5, -1e4}, {1e5, -1e5, 1e4}};
     },
     true},
    {"UtilityHardlyLocated",
     [](Crossing& c) {
       only_utility(c).located.lateral_sd = Length{1e5};
       only_utility(c).located.vertical_sd = Length{1e5};
     },
     false},
    {"UtilityFiveMetresWide", [](Crossing& c) { only_utility(c).outside_diameter = Length{5}; }, false},
    {"NothingIsUncertain",
     [](Crossing& c) {
       c.bore.launch.position_sd.set(Length{0});
       c.bore.launch.level_sd.set(Angle{0});
       c.bore.launch.aim_sd.set(Angle{0});
       c.bore.model.steer_constant.set(Ratio{0});
       c.bore.model.steer_constant_sd.set(Ratio{0});
       c.site.strata.front().values.wander = Wander{0};
       only_utility(c).located.lateral_sd = Length{0};
       only_utility(c).located.vertical_sd = Length{0};
     },
     true},
    {"EverythingIsUncertain",
     [](Crossing& c) {
       c.bore.launch.position_sd.set(Length{1e5});
       c.bore.launch.level_sd.set(Angle{1.5});
       c.bore.launch.aim_sd.set(Angle{1.5});
     },
     false},
    {"WaterAboveGround",
     [](Crossing& c) {
       c.site.water = LevelLine{{-8, 103}, {20, 103}};
     },
     false},
    {"WaterOfOnePoint",
     [](Crossing& c) {
       c.site.water = LevelLine{{0, 92}};
     },
     true},
    {"GroundOfOnePoint",
     [](Crossing& c) {
       c.site.ground = {{0, 100}};
     },
     false},
    {"CliffInTheGround",
     [](Crossing& c) {
       c.site.ground = {{-8, 100}, {4, 100}, {4.0001, 90}, {20, 90}};
     },
     false},
    {"LowerStratumAboveGround",
     [](Crossing& c) {
       Stratum sand;
       sand.id = "l2";
       sand.soil = "loose-sand";
       sand.known.set(StratumEvidence::seen);
       sand.top = LevelLine{{0, 150}};
       c.site.strata.push_back(sand);
     },
     true},
    {"TrackWithoutPlace",
     [](Crossing& c) {
       c.site.surface.front().kind = SurfaceKind::track;
       c.site.surface.front().from.reset();
       c.site.surface.front().to.reset();
     },
     false},
    {"RoadOfNoWidth", [](Crossing& c) { c.site.surface.front().from = c.site.surface.front().to = Length{4.1}; }, true},
    {"PitsOfNoSize",
     [](Crossing& c) {
       for (Pit* pit : {&c.pits.launch, &c.pits.exit}) pit->floor_length = pit->floor_width = Length{0};
     },
     false},
    {"PitFloorAboveGround",
     [](Crossing& c) {
       for (Pit* pit : {&c.pits.launch, &c.pits.exit}) pit->floor_elevation = Length{105};
     },
     false},
    {"ToolOfTwoMetres",
     [](Crossing& c) {
       c.bore.tool.tool_class.clear();
       c.bore.tool.diameter = Length{2};
     },
     false},
    {"ToolOfAMillimetre",
     [](Crossing& c) {
       c.bore.tool.tool_class.clear();
       c.bore.tool.diameter = Length{0.001};
     },
     true},
    {"SoilOfNoStrength", [](Crossing& c) { c.site.strata.front().values.undrained_strength = Pressure{1e-6}; }, true},
    {"SoilLikeSteel", [](Crossing& c) { c.site.strata.front().values.undrained_strength = Pressure{1e12}; }, true},
    {"LimitsOfZero",
     [](Crossing& c) {
       for (const LimitRow& row : tables().limits) c.limits[row.id] = {0, "", {}};
     },
     false},
    {"NoSurfaceAtAll", [](Crossing& c) { c.site.surface.clear(); }, true},
};

class OddInput : public ::testing::TestWithParam<Odd> {};

void expect_finite(const Assessment& answer) {
  for (const Finding& f : answer.findings)
    for (const std::optional<double>& v : {f.measured, f.limit, f.margin, f.station_m, f.offset_m, f.elevation_m})
      if (v) {
        EXPECT_TRUE(std::isfinite(*v)) << f.code << " " << *v;
      }
  for (const Working& w : answer.working) {
    EXPECT_TRUE(std::isfinite(w.value)) << w.code;
    for (const WorkingInput& i : w.inputs) EXPECT_TRUE(std::isfinite(i.value)) << w.code << " " << i.symbol;
    EXPECT_EQ(working_text(w, UnitSystem::us).find("nan"), std::string::npos);
  }
  for (const PathPoint& p : answer.bore.points)
    EXPECT_TRUE(std::isfinite(p.x_m + p.y_m + p.z_m + p.sd_lateral_m + p.sd_vertical_m + p.cover_m)) << p.s_m;
}

TEST_P(OddInput, IsJudgedAndNeverLooksSafeByAccident) {
  Crossing made = clean_crossing();
  GetParam().make(made);
  const Result<Crossing> crossing = read_crossing(write_crossing(made), tables());
  if (!crossing) {  // the reader is stricter than this list: then it must say where
    EXPECT_EQ(crossing.error().place.english().find('/'), 0u) << crossing.error().english();
    return;
  }
  const Assessment answer = judged(*crossing);
  expect_finite(answer);
  EXPECT_EQ(judged(*crossing), answer);
  if (!GetParam().may_be_within_limits) {
    EXPECT_NE(answer.verdict, Verdict::within_limits) << listed(answer);
  }
  const std::string line = write_assessment(*crossing, answer, "x.crossing", {.working = true});
  EXPECT_EQ(nlohmann::json::parse(line).at("verdict"), std::string(word_of(answer.verdict)));
}

INSTANTIATE_TEST_SUITE_P(OddInputs, OddInput, ::testing::ValuesIn(odd_inputs),
                         [](const auto& one) { return std::string(one.param.what); });

}  // namespace
}  // namespace burrow::test
