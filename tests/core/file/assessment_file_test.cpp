// The JSON of an assessment: every object and list of the contract, null for what is unknown.

#include "burrow/file/assessment_file.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

namespace burrow::test {
namespace {

using nlohmann::json;

std::vector<std::string> keys(const json& object) {
  std::vector<std::string> all;
  for (const auto& [key, value] : object.items()) all.push_back(key);
  return all;
}

json written(const Assessment& assessment, const AssessmentOptions& options = {}) {
  Crossing crossing;
  crossing.name = "Alder \"Lane\"";
  const std::string line = write_assessment(crossing, assessment, "a/b.crossing", options);
  EXPECT_EQ(line.find('\n'), std::string::npos);
  return json::parse(line);
}

TEST(AssessmentFile, Contract_EveryObjectAndListIsPresent) {
  const json j = written({});
  const json want = json::parse(R"({"format":"burrowline-assessment","version":1,"file":"a/b.crossing",
    "crossing":"Alder \"Lane\"","program":{"version":null,"commit":null,"tables":null},"verdict":"incomplete","judged_on":null,
    "bore":{"length_m":null,"ends":null,"path":[],
      "arrival":{"offset_m":null,"elevation_m":null,"sd_lateral_m":null,"sd_vertical_m":null,"chance_inside_exit_pit":null},
      "neutral_cover_m":null,"neutral_station_m":null,"neutral_line":[],"chance_of_refusal":null,"chance_of_daylight":null,"refusal_calibrated":false,"refusal_station_m":null,
      "advance_time_s":{"p10":null,"p50":null,"p90":null},
      "least_grip":null,"hold_until_m":null,"stops":[],"guesses":[],"calibrated_from":0},
    "cover":{"least_m":null,"least_low_m":null,"station_m":null,"required_m":null,"chance_below":null},
    "utilities":[],
    "surface":{"heave_m":null,"heave_high_m":null,"station_m":null,"limit_m":null,"settlement_m":null,
      "settlement_abandoned_m":null,"grout_annulus_m3":null,"grout_hole_m3":null},
    "services":{"contact_chance_any":null,"chance_unknown_service":null},
    "structures":[],
    "pits":{
      "launch":{"depth_m":null,"floor_length_m":null,"floor_width_m":null,"floor_corners":null,"top_length_m":null,"top_width_m":null,"volume_m3":null,"ground":null,"soil_type":null,"proposed_best":null,"proposed_worst":null,"confirmed":false,"proposal":{"made":false,"kind":null,"upright_allowed":null,"straight_m3":null,"sloped_m3":null},"layers":[],"roof_missing_m":null,
        "loose_m3":null,"compacted_m3":null,"refill_m3":null,"truck_loads":null,"surface":[],
        "heap":{"side":null,"setback_m":null,"length_m":null,"width_m":null,"height_m":null,"volume_m3":null},
        "duties":[],"ladder_travel_m":null,"shoring":[],"shoring_width_m":null,"edge_load_gap_m":null,"water_head_m":null,
        "base_heave_safety":null,"uplift_safety":null},
      "exit":{"depth_m":null,"floor_length_m":null,"floor_width_m":null,"floor_corners":null,"top_length_m":null,"top_width_m":null,"volume_m3":null,"ground":null,"soil_type":null,"proposed_best":null,"proposed_worst":null,"confirmed":false,"proposal":{"made":false,"kind":null,"upright_allowed":null,"straight_m3":null,"sloped_m3":null},"layers":[],"roof_missing_m":null,
        "loose_m3":null,"compacted_m3":null,"refill_m3":null,"truck_loads":null,"surface":[],
        "heap":{"side":null,"setback_m":null,"length_m":null,"width_m":null,"height_m":null,"volume_m3":null},
        "duties":[],"ladder_travel_m":null,"shoring":[],"shoring_width_m":null,"edge_load_gap_m":null,"water_head_m":null,
        "base_heave_safety":null,"uplift_safety":null}},
    "pipe":{"checks":[],"loads":[]},
    "air":{"pressure_at_tool_pa":null,"free_air_m3_s":null,"standing_pressure_pa":null,"pressure_worked_with_pa":null,"pressure_typed":false,
      "not_judged":null,"pressure_at_compressor_pa":null,"compressor_pressure_pa":null,"wanted_free_air_m3_s":null,
      "ambient_pa":null,"held_by":null,"loss_harris_pa":null,
      "iteration":{"ended":null,"steps":null,"residual":null},"along":[],
      "water":{"humidity":null,"humidity_known":null,"drawn_in_kg_s":null,"comes_out_kg_s":null,"exhaust_ideal_k":null,"icing":null},
      "oil":{"rate_m3_s":null,"rate_entered":false,"first_fill_m3":null,"for_p50_m3":null,"for_p90_m3":null,
        "fill_lasts_s":null,"look_every_s":null}},
    "marks":[],
    "day":{"record":null,"nose_m":null,"advice":null,
      "arrival":{"offset_m":null,"elevation_m":null,"sd_lateral_m":null,"sd_vertical_m":null,"chance_inside_exit_pit":null},
      "utilities":[],"near":[],"reasons":[],"next":[],"time_left_s":{"p10":null,"p50":null,"p90":null},"rate":[],
      "odd":[],"left_out":[],"queried":[],"path":[],"may_back_out":false,"bands_in_doubt":false,
      "layout_stands":true,"with_care":false,"tasks":[],"to_expose":[]},
    "loosened":[],"findings":[]})");
  EXPECT_EQ(j, want) << j.dump(1);
  EXPECT_TRUE(written({}, {.working = true}).at("working").is_array());
}

TEST(AssessmentFile, Values_StandUnderTheKeysOfTheContract) {
  Assessment a;
  a.verdict = Verdict::within_limits;
  PathPoint p;
  p.s_m = 1;
  p.grade_rad = std::atan(0.25);
  a.bore = {{p}, 12.5, PathEnd::exit};
  a.arrival.offset_m = 0.5;
  UtilityAnswer u;
  u.id = "u1";
  u.contact_chance = 0.01;
  u.by = ContactBy::bound;
  a.utilities = {u};
  Mark mark;
  mark.hose_m = 1.5;
  mark.near = {{"u1", 0.25, "gas main", std::nullopt, 0.8, true}};
  mark.tasks = {MarkTask::stop_until_exposed, MarkTask::listen};
  mark.under = {"f1"};
  a.marks = {mark};
  StructureAnswer house;
  house.id = "f4";
  house.vibration_m_s = 0.004;
  a.structures = {house};
  a.pipe_checks = {{"ring deflection", 0.01, 0.05, "", 3.0}};
  a.loads = {{3, 1.4, 27e3, 6e3, 31e3, 0, "f1"}};
  a.working = {{"cover", "bore", "C = d - a", {{"d", 1.25, "m"}}, "C", 1.0, "m", 0.5, {"x", SourceLabel::derived}}};
  const json j = written(a, {.working = true});
  EXPECT_EQ(j["verdict"], "within-limits");
  EXPECT_EQ(keys(j["bore"]["path"][0]),
            (std::vector<std::string>{"cover_m", "curvature_1_m", "grade", "grip", "heading_rad", "resistance_above_pa",
                                      "resistance_below_pa", "s_m", "sag_curvature_1_m", "sd_lateral_m",
                                      "sd_vertical_m", "set_m", "time_s", "x_m", "y_m", "z_m"}));
  EXPECT_TRUE(j["bore"]["path"][0]["set_m"].is_null());                 // nothing is known about its advance
  EXPECT_DOUBLE_EQ(j["bore"]["path"][0]["grade"].get<double>(), 0.25);  // rise over run, not an angle
  EXPECT_EQ(j["bore"]["arrival"]["offset_m"], 0.5);
  EXPECT_EQ(keys(j["utilities"][0]), (std::vector<std::string>{"angle_rad",
                                                               "by",
                                                               "chance_after_hole",
                                                               "chance_to_go_on",
                                                               "contact_chance",
                                                               "contact_chance_worst",
                                                               "elevation_m",
                                                               "encroachment_chance",
                                                               "expose",
                                                               "expose_rank",
                                                               "gap_low_m",
                                                               "ground_movement_m",
                                                               "hole_depth_high_m",
                                                               "hole_depth_low_m",
                                                               "hole_offset_m",
                                                               "hole_station_m",
                                                               "id",
                                                               "lateral_sd_m",
                                                               "name",
                                                               "offset_m",
                                                               "required_after_hole_m",
                                                               "required_m",
                                                               "separation_m",
                                                               "station_m",
                                                               "strain",
                                                               "vertical_sd_m",
                                                               "vibration_m_s"}));
  EXPECT_EQ(j["utilities"][0]["by"], "bound");
  EXPECT_EQ(keys(j["structures"][0]),
            (std::vector<std::string>{"distance_m", "id", "name", "spread_gap_m", "spread_gap_wanted_m", "station_m",
                                      "vibration_distance_m_s", "vibration_limit_m_s", "vibration_m_s",
                                      "vibration_percussive_m_s"}));
  EXPECT_EQ(j["structures"][0]["vibration_m_s"], 0.004);
  EXPECT_EQ(j["marks"][0]["near"][0], json({{"id", "u1"},
                                            {"above_m", 0.25},
                                            {"clear_m", nullptr},
                                            {"name", "gas main"},
                                            {"gap_m", nullptr},
                                            {"ahead_m", 0.8},
                                            {"expose", true}}));
  EXPECT_EQ(j["marks"][0]["tasks"], json({"stop-until-exposed", "listen"}));
  EXPECT_EQ(j["marks"][0]["under"], json({"f1"}));
  EXPECT_EQ(keys(j["marks"][0]),
            (std::vector<std::string>{"depth_high_m", "depth_low_m", "depth_m", "elevation_m", "hose_m", "near",
                                      "nose_m", "offset_m", "station_m", "tasks", "time_s", "under"}));
  EXPECT_EQ(j["marks"][0]["time_s"], json({{"p10", nullptr}, {"p50", nullptr}, {"p90", nullptr}}));
  EXPECT_EQ(j["pipe"]["checks"][0]["name"], "ring deflection");
  EXPECT_EQ(keys(j["pipe"]["checks"][0]),
            (std::vector<std::string>{"at_least", "code", "limit", "name", "source", "source_label", "station_m",
                                      "text", "unit", "utilisation", "value"}));
  EXPECT_TRUE(j["pipe"]["checks"][0]["utilisation"].is_null());
  EXPECT_TRUE(j["pipe"]["checks"][0]["source_label"].is_null());
  EXPECT_EQ(j["pipe"]["loads"][0], json({{"station_m", 3.0},
                                         {"depth_m", 1.4},
                                         {"earth_pa", 27e3},
                                         {"earth_arched_pa", 6e3},
                                         {"live_pa", 31e3},
                                         {"water_pa", 0.0},
                                         {"live", "f1"}}));
  EXPECT_EQ(j["working"][0]["inputs"][0], json({{"symbol", "d"}, {"value", 1.25}, {"unit", "m"}}));
  EXPECT_EQ(j["working"][0]["source_label"], "derived");
}

TEST(AssessmentFile, Advance_StandsWithThePath) {
  Assessment a;
  a.bore = {{PathPoint{}, PathPoint{}}, 1, PathEnd::exit};
  AdvancePoint going, stopped;
  going.set_m = 0.003;
  going.rate_m_s = 0.01;
  going.time = {10, 20, 40};
  stopped.set_m = 0.0001;
  stopped.time = {10, 20, 40};
  a.advance.points = {going, stopped};
  a.stops = {{0, 1, AboveBore::carriageway, "f1", 0.02}};
  a.neutral_line = {{0.5, std::nullopt, std::nullopt}};
  const json j = written(a);
  EXPECT_EQ(j["bore"]["path"][0]["time_s"], json({{"p10", 10.0}, {"p50", 20.0}, {"p90", 40.0}}));
  EXPECT_TRUE(j["bore"]["path"][1]["time_s"]["p50"].is_null());  // from a stop on there is no time
  EXPECT_EQ(j["bore"]["path"][1]["set_m"], 0.0001);
  EXPECT_EQ(j["bore"]["stops"][0],
            json({{"from_m", 0.0}, {"to_m", 1.0}, {"above", "carriageway"}, {"id", "f1"}, {"chance", 0.02}}));
  EXPECT_TRUE(j["bore"]["neutral_line"][0]["z_m"].is_null());
}

TEST(AssessmentFile, Air_LineWaterAndOil) {
  Crossing crossing;
  crossing.air.line = {AirPart{}};
  Assessment a;
  AirSupply supply;
  supply.ambient = {1e5};
  supply.at_compressor = {6e5};
  supply.held_by = AirHeldBy::compressor;
  supply.along = {{0, 7e5, 6.5e5, 12.5, false}};
  supply.iteration = {IterationEnd::step_small, 7, 1e-12};
  a.air.supply = supply;
  a.air.pressure_at_tool_Pa = 5.5e5;
  a.air.water = AirWater{};
  a.air.water->icing = Icing::possible;
  a.air.oil.rate = {2e-9};
  a.air.oil.for_nine_in_ten = Volume{1e-5};
  const json air = json::parse(write_assessment(crossing, a, "x", {}))["air"];
  EXPECT_EQ(air["held_by"], "compressor");
  EXPECT_EQ(air["along"][0],
            json({{"kind", "hose"}, {"inlet_pa", 6e5}, {"outlet_pa", 5.5e5}, {"speed_m_s", 12.5}, {"choked", false}}));
  EXPECT_EQ(air["iteration"]["ended"], "step-small");
  EXPECT_EQ(air["iteration"]["steps"], 7);
  EXPECT_EQ(air["water"]["icing"], "possible");
  EXPECT_EQ(air["oil"]["for_p90_m3"], 1e-5);
  EXPECT_TRUE(air["oil"]["for_p50_m3"].is_null());
}

TEST(AssessmentFile, Trials_CountsWithTheirUncertainty) {
  Trials trials;
  trials.count = 1000;
  trials.seed = 7;
  trials.arrived = {900, 1000};
  trials.contact = {0, 1000};
  trials.sd_elevation_m = Estimate{0.1, 0.002};
  trials.utilities = {{"u1", false, {0, 1000}, {40, 1000}}};
  const json j = written({}, {.trials = &trials}).at("trials");
  for (const char* key : {"count", "seed", "arrived", "inside_exit_pit", "daylight", "refused", "mean_offset_m",
                          "mean_elevation_m", "sd_lateral_m", "sd_vertical_m", "utilities"})
    EXPECT_TRUE(j.contains(key)) << key;
  EXPECT_EQ(j["arrived"], 900);
  EXPECT_DOUBLE_EQ(j["chances"]["arrived"]["standard_error"].get<double>(), std::sqrt(0.9 * 0.1 / 1000));
  EXPECT_NEAR(j["chances"]["contact"]["upper_95"].get<double>(), 1 - std::pow(0.05, 1.0 / 1000), 1e-12);
  EXPECT_TRUE(j["mean_offset_m"].is_null());
  EXPECT_EQ(j["standard_errors"]["sd_vertical_m"], 0.002);
  EXPECT_EQ(j["utilities"][0]["encroachment"], 40);
  EXPECT_FALSE(written({}).contains("trials"));
}

// The day: what was read and advised, under the keys of the contract and beside them.
TEST(AssessmentFile, Day_AdviceArrivalUtilities) {
  DayAnswer day;
  day.record = "d1";
  day.nose_m = 3.5;
  day.advice = Advice::leave_and_expose;
  day.arrival.offset_m = 0.1;
  DayUtility ahead;
  ahead.id = "u1";
  ahead.separation_m = 0.4;
  ahead.contact_chance = 0.02;
  ahead.by = ContactBy::bound;
  day.utilities = {ahead};
  day.near = {{"u1", "gas main", 0.4, false, true}};
  DayReason reason;
  reason.code = "day.contact";
  reason.leads_to = Advice::leave_and_expose;
  reason.broken = true;
  day.reasons = {reason};
  day.rate.pieces = {{0, 1.5, 100, 50}};
  day.rate.odds = {{{OddRate::stone, 0.7}, {OddRate::as_before, 0.3}}};
  day.odd = {{2, 3.1}};
  day.left_out = {{4, ReadingTrouble::runs_back}};
  const json j = written({}, {.day = &day}).at("day");
  EXPECT_EQ(j["advice"], "leave-and-expose");
  EXPECT_EQ(j["nose_m"], 3.5);
  EXPECT_EQ(j["arrival"]["offset_m"], 0.1);
  EXPECT_EQ(j["utilities"][0]["separation_m"], 0.4);
  EXPECT_EQ(j["utilities"][0]["by"], "bound");
  EXPECT_EQ(j["near"][0]["within_band"], true);
  EXPECT_EQ(j["reasons"][0]["code"], "day.contact");
  EXPECT_EQ(j["rate"][0]["odds"][0], json({{"what", "a stone"}, {"chance", 0.7}}));
  EXPECT_EQ(j["odd"][0]["in_sd"], 3.1);
  EXPECT_EQ(j["left_out"][0]["why"], "runs-back");
  EXPECT_TRUE(j["time_left_s"]["p50"].is_null());
}

TEST(AssessmentFile, NotAtTheExitFace_ArrivalIsNull) {
  Assessment a;
  a.bore = {{PathPoint{}}, 3.0, PathEnd::daylight};
  a.arrival = {0.1, 0.2, 0.3, 0.4, 0.5};
  const json j = written(a);
  EXPECT_EQ(j["bore"]["ends"], "daylight");
  for (const auto& [key, value] : j["bore"]["arrival"].items()) EXPECT_TRUE(value.is_null()) << key;
}

TEST(AssessmentFile, Pit_SoilEarthAndDuties) {
  Assessment a;
  a.launch_pit.floor_length_m = 2;
  a.launch_pit.soil_type = ExcavationType::b;
  PitAnswer& work = a.launch_pit_work;
  PitLayerAnswer layer;
  layer.stratum = "l1";
  layer.bank_m3 = 3;
  layer.proposed = {ExcavationType::a,
                    ExcavationType::c,
                    {{"why", "clause", SourceLabel::read, ExcavationType::a, ExcavationType::c}}};
  work.layers = {layer};
  work.proposed_best = ExcavationType::a;
  work.proposed_worst = ExcavationType::c;
  work.cuts = {{"f1", "the lane", 1.5}, {"", "verge", 2.5}};
  work.heap.outline = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
  work.heap.height_m = 0.7;
  work.duties = {{"ladder", true, 1.5, 1.2, {"x", SourceLabel::read}}};
  work.shoring = {"timber-a-13x5-6"};
  work.base_heave_safety = 1.9;
  const json pit = written(a)["pits"]["launch"];
  EXPECT_EQ(pit["soil_type"], "B");
  EXPECT_EQ(pit["proposed_best"], "A");
  EXPECT_EQ(pit["layers"][0]["reasons"][0]["source_label"], "read");
  EXPECT_EQ(pit["layers"][0]["bank_m3"], 3.0);
  EXPECT_EQ(pit["surface"][0]["id"], "f1");
  EXPECT_TRUE(pit["surface"][1]["id"].is_null());
  EXPECT_EQ(pit["heap"]["height_m"], 0.7);
  EXPECT_EQ(pit["heap"]["side"], "left");
  EXPECT_EQ(pit["duties"][0]["code"], "ladder");
  EXPECT_EQ(pit["shoring"][0], "timber-a-13x5-6");
  EXPECT_EQ(pit["base_heave_safety"], 1.9);
}

TEST(AssessmentFile, NotFinite_IsNull) {
  Assessment a;
  a.cover.least_m = std::numeric_limits<double>::quiet_NaN();
  a.cover.required_m = std::numeric_limits<double>::infinity();
  const json j = written(a);
  EXPECT_TRUE(j["cover"]["least_m"].is_null());
  EXPECT_TRUE(j["cover"]["required_m"].is_null());
}

TEST(AssessmentFile, Failure_SaysPointerFoundExpected) {
  EXPECT_EQ(json::parse(write_failure("x.crossing", {"/bore", "nothing", "an object"})),
            json::parse(R"({"format":"burrowline-assessment","version":1,"file":"x.crossing",
              "error":{"pointer":"/bore","found":"nothing","expected":"an object"}})"));
}

// A path of the file system may be any bytes; the line must be JSON all the same.
TEST(AssessmentFile, FileNameThatIsNotUtf8_StillGivesJson) {
  EXPECT_NO_THROW({
    const json j = json::parse(write_failure("a\xff\xfe.crossing", {"", "\xc3", "x"}));
    EXPECT_EQ(j["file"], "a\xEF\xBF\xBD\xEF\xBF\xBD.crossing");
  });
}

}  // namespace
}  // namespace burrow::test
