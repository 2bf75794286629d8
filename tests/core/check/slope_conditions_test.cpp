// What DIN 4124 wants a calculation for (DGUV Information 201-052 s. 4.2, BG BAU; read), asked of each pit: there, not
// answered, answered one by one or for all at once; and what else is entered that speaks against the answer.

#include "burrow/pit/slope_conditions.h"

#include <gtest/gtest.h>

#include <functional>

#include "burrow/pit/slope.h"
#include "support/pit_for_tests.h"

namespace burrow::test {
namespace {

using enum ExcavationType;
constexpr auto german = ExcavationRules::din_4124;

const std::pair<SlopeCondition, std::optional<bool> PitSigns::*> answers[] = {
    {SlopeCondition::joints, &PitSigns::joints},
    {SlopeCondition::dips_inward, &PitSigns::dips_inward},
    {SlopeCondition::loose_fill, &PitSigns::loose_fill},
    {SlopeCondition::soft_deposit, &PitSigns::soft_deposit},
    {SlopeCondition::open_drainage, &PitSigns::open_drainage},
    {SlopeCondition::seeping, &PitSigns::seeping},
    {SlopeCondition::flowing, &PitSigns::flowing},
    {SlopeCondition::vibrated, &PitSigns::vibrated},
    {SlopeCondition::steep_heap, &PitSigns::steep_heap},
    {SlopeCondition::steep_ground, &PitSigns::steep_ground},
    {SlopeCondition::distress, &PitSigns::distress}};

/// 2 m deep in firm clay, the left side sloped 1 : 1, all answered no.
Crossing sloped_pit() {
  Crossing c = pit_in("firm-clay", 2, std::nullopt, german);
  c.pits.launch.sides.left = sloped(1.0);
  return c;
}

void forget_all(Pit& pit) {
  for (const auto& [condition, member] : answers) pit.signs.*member = std::nullopt;
}

Statement none_seen(const char* by, const char* date) {
  return {"", by, date, ""};
}

enum class SlopeStanding { allowed, not_answered, by_calculation };

/// As the findings tell it: of a slope that DIN 4124 asks nothing about, to 1.25 m, it is allowed; deeper than its
/// slopes hold, by calculation only.
SlopeStanding standing(const Crossing& c) {
  const Assessment answer = judged(c);
  const ExcavationRuleSet& rules = row_of(tables(), *c.pits.rules);
  const Length depth{answer.launch_pit.depth_m};
  if (rules.rules != german || !protection_needed(rules, depth)) return SlopeStanding::allowed;
  const SlopeConditions conditions = slope_conditions(c, c.pits.launch, tables(), place_of(answer.launch_pit));
  if (!conditions.present.empty() || !least_run_per_rise(rules, ExcavationType::c, depth))
    return SlopeStanding::by_calculation;
  return conditions.open.empty() ? SlopeStanding::allowed : SlopeStanding::not_answered;
}

TEST(SlopeConditions, AllAnswered_TheAngleStands) {
  const Crossing c = sloped_pit();
  EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 0) << listed(judged(c));
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 0);
  EXPECT_EQ(standing(c), SlopeStanding::allowed);
}

TEST(SlopeConditions, EachIsAStop_AndEachNotAnsweredToo) {
  ASSERT_EQ(std::size(answers), std::size(EnumNames<SlopeCondition>::list));
  for (const auto& [condition, member] : answers) {
    Crossing c = sloped_pit();
    c.pits.launch.signs.*member = std::nullopt;
    EXPECT_EQ(stops(c, "pit.slope-conditions"), 1) << word_of(condition);
    EXPECT_EQ(standing(c), SlopeStanding::not_answered) << word_of(condition);
    c.pits.launch.signs.*member = true;
    EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 1) << word_of(condition);
    EXPECT_EQ(stops(c, "pit.slope-conditions"), 0) << word_of(condition);
    EXPECT_EQ(standing(c), SlopeStanding::by_calculation) << word_of(condition);
    c.pits.launch.signs.none_seen = none_seen("A. Muster", "2026-02-27");  // it does not speak against an answer
    EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 1) << word_of(condition);
    c.pits.launch.sides.left = sloped();  // left to the program
    EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 1) << word_of(condition);
    c.pits.launch.sides.left = shored_side();
    EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 0) << word_of(condition);
  }
}

// One action answers all that have no answer, of one pit, on a day that has come.
TEST(SlopeConditions, NoneOfTheseSeen_AnswersAllOfOnePit) {
  Crossing c = sloped_pit();
  forget_all(c.pits.launch);
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 1);
  c.pits.exit.signs.none_seen = none_seen("A. Muster", "2026-02-27");
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 1);
  c.pits.launch.signs.none_seen = none_seen("A. Muster", "2026-02-27");
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 0) << listed(judged(c));
  EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 0);
  for (const auto& [by, date] :
       {std::pair{"", "2026-02-27"}, std::pair{" - ", "2026-02-27"}, std::pair{"A. Muster", ""},
        std::pair{"A. Muster", "2026-03-03"}, std::pair{"A. Muster", "yesterday"}}) {
    c.pits.launch.signs.none_seen = none_seen(by, date);
    EXPECT_EQ(stops(c, "pit.slope-conditions"), 1) << by << date;
  }
}

// What else is entered speaks louder than "none" and "no".
TEST(SlopeConditions, FactsEnteredElsewhere) {
  const std::pair<const char*, std::function<void(Crossing&)>> facts[] = {
      {"water above the floor",
       [](Crossing& c) {
         c.site.water = LevelLine{{-8, 98.1}, {20, 98.1}};
       }},
      {"peat", [](Crossing& c) { c.site.strata.front().soil = "peat"; }},
      {"paste", [](Crossing& c) { c.site.strata.front().values.undrained_strength = Pressure{14e3}; }},
      {"dip", [](Crossing& c) { c.pits.launch.signs.dip_run_per_rise = Ratio{20}; }},
      {"rise behind",
       [](Crossing& c) {
         c.site.ground = {{-8, 100.9}, {-3, 100}, {20, 100}};
       }},
      {"rise beside", [](Crossing& c) {
         for (const double x : {-8.0, 0.0, 8.0}) {
           c.site.ground_points.push_back({x, 6, 101});
           c.site.ground_points.push_back({x, -6, 100});
         }
       }}};
  for (const auto& [what, happens] : facts) {
    Crossing c = sloped_pit();
    c.pits.launch.signs.none_seen = none_seen("A. Muster", "2026-02-27");
    happens(c);
    EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 1) << what << listed(judged(c));
  }
}

// Fill: "none" does not say that it is not loose; an answer of its own does.
TEST(SlopeConditions, FillWantsItsOwnAnswer) {
  Crossing c = sloped_pit();
  c.site.strata.front().soil = "made-ground";
  forget_all(c.pits.launch);
  c.pits.launch.signs.none_seen = none_seen("A. Muster", "2026-02-27");
  EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 1);
  c.pits.launch.signs.loose_fill = false;
  EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 0) << listed(judged(c));
}

// 1 : 10, in stiff cohesive soil 1 : 2 (read); a kerb is none (our default). Falling ground is none.
TEST(SlopeConditions, SteepGround_ByTheLineEntered) {
  const auto rises = [](Crossing c, double rise_over_5m) {
    c.site.ground = {{-10, 100 + rise_over_5m}, {-5, 100 + rise_over_5m}, {0, 100}, {20, 100}};
    c.pits.launch.floor_elevation = Length{98};
    return stops(c, "pit.slope-by-calculation") == 1;
  };
  EXPECT_FALSE(rises(sloped_pit(), 0.49));
  EXPECT_TRUE(rises(sloped_pit(), 0.51));
  EXPECT_FALSE(rises(sloped_pit(), -1));
  Crossing stiff = sloped_pit();
  stiff.site.strata.front().soil = "hard-clay";
  stiff.pits.launch.soil_type = a;
  EXPECT_FALSE(rises(stiff, 2.4));
  EXPECT_TRUE(rises(stiff, 2.6));
  stiff.pits.launch.confirmed_by = "";
  EXPECT_TRUE(rises(stiff, 2.4));
  Crossing kerb = sloped_pit();
  kerb.site.ground = {{-10, 100.12}, {-3.001, 100.12}, {-3, 100}, {20, 100}};
  EXPECT_EQ(stops(kerb, "pit.slope-by-calculation"), 0) << listed(judged(kerb));
}

// BG BAU C 469 (read): upright to 1.25 m where nothing of the kind endangers it. A side no steeper than its soil allows
// is asked nothing there.
TEST(SlopeConditions, Shallow_AskedOfSteepSides) {
  Crossing c = pit_in("firm-clay", 1.25, std::nullopt, german);
  c.pits.launch.sides.left.kind.set(SideKind::upright);
  forget_all(c.pits.launch);
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 1);
  EXPECT_TRUE(find(judged(c), "missing.pit-signs", "launch-pit"));
  EXPECT_EQ(standing(c), SlopeStanding::allowed);  // of a slope
  c.pits.launch.sides.left = sloped(1.0);
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 0);
  c.pits.launch.sides.left = sloped(0.9);
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 1);
  c.pits.launch.signs.none_seen = none_seen("A. Muster", "2026-02-27");
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 0);
  EXPECT_FALSE(find(judged(c), "missing.pit-signs", "launch-pit"));
  c.pits.launch.signs.flowing = true;
  EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 1);
  c.pits.launch.sides.left.kind.set(SideKind::upright);
  c.pits.launch.signs.flowing.reset();
  c.pits.launch.signs.distress = true;
  EXPECT_EQ(stops(c, "pit.unprotected"), 1);
}

// C 469 (read): upright to 1.25 m beside ground of 1 : 2 in cohesive soil (taken for stiff), 1 : 10 in other.
TEST(SlopeConditions, Shallow_SteepGround) {
  const auto stop = [](const char* soil, std::optional<ExcavationType> type) {
    Crossing c = pit_in(soil, 1.2, type, german);
    c.pits.launch.sides.left.kind.set(SideKind::upright);
    c.site.ground = {{-10, 101}, {-2.2, 100}, {20, 100}};  // 1 : 7.8
    return stops(c, "pit.slope-by-calculation");
  };
  EXPECT_EQ(stop("hard-clay", a), 0);
  EXPECT_EQ(stop("medium-sand", std::nullopt), 1);
}

TEST(SlopeConditions, AmericanRulesAskNone) {
  Crossing c = sloped_pit();
  c.pits.rules.set(ExcavationRules::us_1926);
  forget_all(c.pits.launch);
  EXPECT_EQ(stops(c, "pit.slope-conditions"), 0);
  EXPECT_EQ(standing(c), SlopeStanding::allowed);
}

TEST(SlopeConditions, DeeperThanTheSlopesHold) {
  Crossing c = sloped_pit();
  c.pits.launch.floor_elevation = Length{94.99};
  EXPECT_EQ(standing(c), SlopeStanding::by_calculation);
  c.pits.launch.floor_elevation = Length{95};
  EXPECT_EQ(standing(c), SlopeStanding::allowed);
}

TEST(SlopeConditions, NamedInTheFinding_WithWorking) {
  Crossing c = sloped_pit();
  c.pits.launch.signs.joints = c.pits.launch.signs.flowing = true;
  const Assessment answer = judged(c);
  EXPECT_EQ(finding_text(*find(answer, "pit.slope-by-calculation"), UnitSystem::metric),
            "sides without support need a calculation in launch pit (faults or joints, soil that flows)");
  EXPECT_TRUE(working(answer, "pit.slope-by-calculation", "launch-pit"));
}

}  // namespace
}  // namespace burrow::test
