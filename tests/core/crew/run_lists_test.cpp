// Equipment, checklist, stop signs and emergency steps: drawn from the crossing, in both unit systems.

#include <gtest/gtest.h>

#include <algorithm>

#include "burrow/check/assess.h"
#include "burrow/crew/checklist.h"
#include "burrow/crew/equipment.h"
#include "burrow/file/tables_file.h"
#include "burrow/words/run_text.h"

namespace burrow::test {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

Crossing simple() {
  Crossing c;
  c.site.ground = {{-8, 100}, {20, 100}};
  c.site.water = LevelLine{{-8, 90}, {20, 90}};
  Stratum clay;
  clay.id = "l1";
  clay.soil = "firm-clay";
  c.site.strata = {clay};
  c.bore.tool.tool_class = "tool-65";
  c.bore.launch.elevation = Length{98.6};
  c.bore.exit.station = Length{8};
  return c;
}

Utility line(UtilityKind kind, double z_m) {
  Utility u;
  u.id = "u1";
  u.name = "the line";
  u.owner = "Alder network";
  u.kind = kind;
  u.status.set(UtilityStatus::live);
  u.outside_diameter = Length{0.1};
  u.located.how.set(LocatedHow::traced);
  u.located.lateral_sd = u.located.vertical_sd = Length{0.05};
  u.path = {{4, -8, z_m}, {4, 8, z_m}};
  return u;
}

bool any(const std::vector<EquipmentItem>& items, const std::string& words) {
  return std::any_of(items.begin(), items.end(), [&](const EquipmentItem& item) {
    return (item.what.english() + " | " + item.detail.english()).find(words) != std::string::npos;
  });
}
bool any(const std::vector<ChecklistItem>& items, const std::string& words) {
  return std::any_of(items.begin(), items.end(), [&](const ChecklistItem& item) {
    return (item.what.english() + " | " + item.protects.english()).find(words) != std::string::npos;
  });
}

std::vector<EquipmentItem> equipment(const Crossing& c, UnitSystem units = UnitSystem::metric) {
  return equipment_list(c, tables(), assess(c, tables()), units);
}
std::vector<ChecklistItem> list(const Crossing& c) {
  return checklist(c, assess(c, tables()), UnitSystem::metric);
}

TEST(Equipment, FollowsTheCrossing) {
  Crossing c = simple();
  EXPECT_TRUE(any(equipment(c), "piercing tool, 65 mm across, 1.19 m long"));
  EXPECT_TRUE(any(equipment(c, UnitSystem::us), "piercing tool, 2.56 in across"));
  EXPECT_TRUE(any(equipment(c), "a restraint on every coupling"));
  EXPECT_FALSE(any(equipment(c), "gas detector"));
  EXPECT_FALSE(any(equipment(c), "expose utilities"));
  EXPECT_FALSE(any(equipment(c), "pump"));
  c.site.utilities = {line(UtilityKind::gas, 98.8)};
  c.air.compressor.name = "No. 3";
  c.air.compressor.free_air = VolumeFlow{0.05};
  c.air.compressor.pressure = Pressure{6.9e5};
  AirPart hose, couplings;
  hose.length = Length{20};
  hose.bore = Length{0.019};
  couplings.kind = AirPartKind::coupling;
  couplings.count.set(3);
  c.air.line = {hose, couplings};
  c.site.water = LevelLine{{-8, 99.5}, {20, 99.5}};
  EXPECT_TRUE(any(equipment(c), "gas detector"));
  EXPECT_TRUE(any(equipment(c), "expose utilities | the line"));
  EXPECT_TRUE(any(equipment(c), "compressor No. 3, 3.00 m³/min at 6.9 bar"));
  EXPECT_TRUE(any(equipment(c), "hose, 20.00 m of 19 mm bore"));
  EXPECT_TRUE(any(equipment(c), "3 couplings entered"));
  EXPECT_TRUE(any(equipment(c), "water separator"));
  EXPECT_TRUE(any(equipment(c), "launch pit: pump"));
  const auto groups = equipment(c);
  EXPECT_TRUE(std::is_sorted(groups.begin(), groups.end(),
                             [](const EquipmentItem& a, const EquipmentItem& b) { return a.group < b.group; }));
}

// What must stand on every list, whatever the crossing.
TEST(Checklist, UsualCautions_AlwaysStand) {
  const auto items = list(simple());
  for (const char* words :
       {"locating service", "restraint on every coupling", "Eye and ear protection", "Nobody in the exit pit",
        "bleed the line before any coupling", "Cap the tool", "before anybody goes in", "second person check"})
    EXPECT_TRUE(any(items, words)) << words;
  for (const ChecklistItem& item : items) {
    EXPECT_FALSE(item.protects.empty()) << item.what.english();
    EXPECT_TRUE(item.what.english().ends_with('.')) << item.what.english();
    EXPECT_FALSE(item.protects.english().ends_with('.')) << item.protects.english();
  }
  EXPECT_TRUE(std::is_sorted(items.begin(), items.end(),
                             [](const ChecklistItem& a, const ChecklistItem& b) { return a.phase < b.phase; }));
}

TEST(Checklist, CrossingCallsForMore) {
  Crossing c = simple();
  EXPECT_FALSE(any(list(c), "Dig test holes"));
  EXPECT_FALSE(any(list(c), "camera"));
  EXPECT_FALSE(any(list(c), "track's owner"));
  c.site.utilities = {line(UtilityKind::gas, 98.8), line(UtilityKind::sewer, 97)};
  c.site.utilities[1].id = "u2";
  SurfaceFeature track;
  track.id = "f1";
  track.kind = SurfaceKind::track;
  track.from = Length{3};
  track.to = Length{6};
  c.site.surface = {track};
  c.site.utility_search.reference = "LR 4711";
  EXPECT_TRUE(any(list(c), "Dig test holes by hand or suction to below the level of the bore at: the line"));
  EXPECT_TRUE(any(list(c), "camera"));
  EXPECT_TRUE(any(list(c), "track's owner"));
  EXPECT_TRUE(any(list(c), "LR 4711"));
  EXPECT_TRUE(any(list(c), "Shoot the pegs"));
}

TEST(Checklist, StopSigns_NameWhatIsUnexposed) {
  Crossing c = simple();
  const auto bare = stop_signs(c, assess(c, tables()), UnitSystem::metric);
  EXPECT_GE(bare.size(), 5u);
  c.site.utilities = {line(UtilityKind::gas, 98.8)};
  const auto signs = stop_signs(c, assess(c, tables()), UnitSystem::metric);
  EXPECT_NE(signs.front().english().find("the line"), std::string::npos);
}

// Gas and power always (nobody knows what was not drawn), others where they lie; whatever it is, last.
TEST(Checklist, Emergency_ByKind) {
  Crossing c = simple();
  auto steps = emergency_steps(c);
  ASSERT_EQ(steps.size(), 3u);
  EXPECT_EQ(steps[0].kind, UtilityKind::gas);
  EXPECT_EQ(steps[1].kind, UtilityKind::power);
  EXPECT_EQ(steps.back().kind, UtilityKind::unknown);
  c.site.utilities = {line(UtilityKind::reclaimed, 98), line(UtilityKind::gas, 98)};
  steps = emergency_steps(c);
  ASSERT_EQ(steps.size(), 4u);
  EXPECT_EQ(steps[0].owners, std::vector<std::string>{"Alder network"});
  EXPECT_EQ(steps[2].kind, UtilityKind::water);
  for (const EmergencySteps& one : steps) EXPECT_GE(one.steps.size(), 2u) << one.title.english();
  EXPECT_NE(steps.back().steps.front().english().find("Do not reverse"), std::string::npos);
}

// Half a card's width at 11 pt holds some thirty letters: a step in short takes two lines at most.
TEST(Checklist, InShort_SaysTheSameInFewWords) {
  Crossing c = simple();
  c.site.utilities = {line(UtilityKind::water, 98)};
  for (const EmergencySteps& one : emergency_steps(c)) {
    EXPECT_GE(one.in_short.size(), 1U) << one.title.english();
    EXPECT_LE(one.in_short.size(), one.steps.size()) << one.title.english();
    if (one.kind != UtilityKind::gas && one.kind != UtilityKind::power && one.kind != UtilityKind::unknown) continue;
    for (const Phrase& step : one.in_short) EXPECT_LE(step.english().size(), 52U) << step.english();
  }
  const Assessment answer = assess(c, tables());
  EXPECT_EQ(stop_signs_in_short(c, answer, UnitSystem::metric).size(),
            stop_signs(c, answer, UnitSystem::metric).size());
  Assessment hidden = answer;
  hidden.utilities.resize(1);
  hidden.utilities[0].expose = true;
  EXPECT_EQ(stop_signs_in_short(c, hidden, UnitSystem::metric).front(), "utility ahead not exposed");
}

// One card for whatever was struck: out, gas and live power, no metal, not back, ring.
TEST(Checklist, FirstSteps_ForWhateverItIs) {
  std::string all;
  for (const Phrase& step : first_steps()) all += step.english() + " ";
  for (const char* said :
       {"upwind", "gas and as live power", "nothing of metal", "valve, compressor or laptop", "owners"})
    EXPECT_NE(all.find(said), std::string::npos) << said;
}

TEST(RunText, MarkInShort_TheNextThing) {
  Mark mark;
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric), "");
  mark.near = {{"u1", 0.71, "gas main", 0.3, 1.16, true, 0.61}, {"u2", -1.0, "drain", 0.9, 2.0, false, 0.9}};
  mark.tasks = {MarkTask::stop_until_exposed, MarkTask::slow_down, MarkTask::check_heave};
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric), "STOP: expose gas main 0.61 m clear, above");
  mark.tasks = {MarkTask::check_alignment, MarkTask::slow_down};
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric),
            "check line, level; slow: gas main 0.61 m clear, above; drain 0.90 m clear, below");
  mark.near[0].clear_m = -0.02;
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric),
            "check line, level; slow: gas main meets it, above; drain 0.90 m clear, below");
  mark.near[0].clear_m.reset();  // never an axis distance without its name
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric),
            "check line, level; slow: gas main 0.71 m above, axis to axis; drain 0.90 m clear, below");
  mark.near[0].clear_m = 0.61;
  for (int i = 0; i < 3; ++i) mark.near.push_back({"u9", 0.5, "duct", 0.4, 2.5, false});
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric),
            "check line, level; slow: gas main 0.61 m clear, above; drain 0.90 m clear, below; 3 more");
  mark.near.resize(2);
  mark.tasks = {MarkTask::slow_down, MarkTask::look};
  mark.near[0].ahead_m = -0.2;  // passed by the nose, not by the tool
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric), "slow, watch in hole: drain 0.90 m clear, below");
  mark.near.pop_back();
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric), "slow");
  mark.tasks = {MarkTask::prepare_arrival};
  mark.near = {{"u3", std::nullopt, "", std::nullopt, 0.4, false}};
  EXPECT_EQ(mark_in_short(mark, UnitSystem::metric), "u3, depth not known; exit pit empty");
  mark.near.clear();
  mark.tasks = {MarkTask::stop_until_exposed};
  EXPECT_EQ(mark_in_short(mark, UnitSystem::us), "STOP until it is exposed");
}

TEST(RunText, Mark_InOneLine) {
  Crossing c = simple();
  SurfaceFeature lane;
  lane.id = "f1";
  lane.name = "Alder Lane";
  c.site.surface = {lane};
  Mark mark;
  mark.hose_m = 1.5;
  mark.nose_m = 2.84;
  mark.depth_m = 1.4;
  mark.depth_low_m = 1.35;
  mark.depth_high_m = 1.45;
  mark.time_s = {60.0, 180.0, 420.0};
  mark.near = {{"u1", -0.5, "water main", 0.3, 1.16, true}, {"u2", std::nullopt, "", std::nullopt, -0.34, false}};
  mark.tasks = {MarkTask::slow_down, MarkTask::check_heave};
  mark.under = {"f1"};
  EXPECT_EQ(
      mark_words(mark, c, UnitSystem::metric),
      "hose 1.50 m: nose 2.84 m, depth 1.40 m (1.35 m to 1.45 m), 3 min (1 min to 7 min); water main: 0.50 m "
      "below, axis to axis, in 1.16 m; u2: depth not known, passed by 0.34 m; slow down; shoot the pegs: Alder Lane");
  const std::string us = mark_words(mark, c, UnitSystem::us);
  EXPECT_NE(us.find("hose 4 ft 11.1 in"), std::string::npos) << us;
  mark.hose_m.reset();
  mark.time_s = {};
  EXPECT_EQ(mark_words(mark, c, UnitSystem::metric).find("no hose yet: nose 2.84 m"), 0u);
  EXPECT_NE(mark_words(mark, c, UnitSystem::metric).find("would have stopped"), std::string::npos);
}

TEST(RunText, Air_WithAndWithoutALine) {
  AirAnswer air;
  air.not_judged = "hose";
  air.pressure_worked_with_Pa = 6.9e5;
  air.oil.first_fill = {120e-6};
  EXPECT_EQ(air_words(air, UnitSystem::metric),
            "pressure at the tool not worked out (hose); 6.9 bar taken; oil 120 mL");
  air.supply = AirSupply{};
  air.pressure_at_tool_Pa = 6.5e5;
  air.free_air_m3_s = 0.02;
  air.oil.look_every = Duration{3600};
  EXPECT_EQ(air_words(air, UnitSystem::metric),
            "6.5 bar at the tool, 1.20 m³/min of free air; oil 120 mL, look at it every 1 h");
  air.pressure_typed = true;
  EXPECT_NE(air_words(air, UnitSystem::metric).find("(6.9 bar as typed counts)"), std::string::npos);
}

TEST(Checklist, TaskWords_EachItsOwn) {
  std::vector<std::string> all;
  for (const auto& [task, word] : EnumNames<MarkTask>::list) all.push_back(words_of_task(task).english());
  std::sort(all.begin(), all.end());
  EXPECT_EQ(std::adjacent_find(all.begin(), all.end()), all.end());
}

}  // namespace
}  // namespace burrow::test
