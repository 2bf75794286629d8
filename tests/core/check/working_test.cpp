// The working: the number shown is the number of the answer, and it comes out again from the inputs shown.

#include "burrow/words/working_text.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

#include "burrow/base/decimal_mark.h"
#include "support/working_by_hand.h"

namespace burrow::test {
namespace {

Crossing busy_crossing() {
  Crossing crossing = clean_crossing();
  crossing.site.utilities.push_back(water_main(5, 98.1));
  crossing.site.utilities.back().id = "u2";
  crossing.site.utilities.back().name = "gas main";
  crossing.site.utilities.back().kind = UtilityKind::gas;
  SurfaceFeature siding = lane(2.5, 5);
  siding.id = "f2";
  siding.kind = SurfaceKind::track;
  siding.rule = "track-cover-66in-pit-25ft";
  crossing.site.surface.front().rule = "road-duct-cover-36in-pit-30ft";
  crossing.site.surface.push_back(siding);
  crossing.site.surface.push_back(house(4));
  LevelPeg peg;
  peg.station = Length{4};
  peg.before = Length{100};
  peg.after = Length{100.002};
  peg.settled = Length{99.997};
  crossing.site.surface.front().levels.pegs = {peg};
  crossing.site.utility_search.unknown_rate.set(RatePerArea{0.01});
  crossing.pits.exit.sides.bore.kind.set(SideKind::sloped);
  crossing.site.ground_points = {{-3, 4, 100.6}, {1, -3, 99.8}, {9, 5, 100.3}};
  crossing.pipe->insertion.set(Insertion::pushed);
  give_air(crossing);
  return crossing;
}

/// In dense sand the ground yields as far as the surface and the water main.
Crossing sandy_crossing() {
  Crossing crossing = clean_crossing();
  crossing.site.strata.front().soil = "dense-sand";
  crossing.site.utilities = {water_main(4, 98.2)};
  return crossing;
}

/// Pits 2 m deep in clay over sand that holds water, a machine and a tree beside them.
Crossing wet_crossing() {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{98.0325};
  crossing.site.water = LevelLine{{-8, 98.5}, {20, 98.5}};
  Stratum sand = crossing.site.strata.front();
  sand.id = "l2";
  sand.soil = "medium-sand";
  sand.top = LevelLine{{-8, 97.2}, {20, 97.2}};
  crossing.site.strata.push_back(sand);
  Plant digger;
  digger.id = "p1";
  digger.station = Length{-9};
  digger.length = Length{4};
  digger.width = Length{2};
  digger.load = Force{80e3};
  crossing.site.plant = {digger};
  Tree lime;
  lime.id = "t1";
  lime.station = Length{12};
  lime.offset = Length{6};
  lime.protection_radius = Length{3};
  crossing.site.trees = {lime};
  crossing.pipe->pull_by.set(PullBy::hose);
  crossing.pipe->hose_rating = Force{2000};
  crossing.pipe->operating_pressure.set(Pressure{6e5});
  return crossing;
}

/// Rates from records, and an exit pit of a typed depth under a path that sags.
Crossing calibrated_crossing() {
  Crossing crossing = clean_crossing();
  crossing.bore.model.calibrated_from.set(12);
  crossing.bore.model.calibrated_records = named_records(12);
  crossing.site.strata.front().values.refusal_rate = RatePerLength{0.002};
  crossing.pits.exit.floor_elevation = Length{98.2};
  return crossing;
}

/// Sides left to the program, behind the shield that is rated for them.
Crossing shielded_crossing() {
  Crossing crossing = clean_crossing();
  crossing.pits = Pits{};
  crossing.pits.launch.shield = {Length{3}, ExcavationType::c, "plate", ""};
  crossing.bore.launch.elevation = Length{98.3};
  return crossing;
}

TEST(Working, EachRecomputesFromItsInputs) {
  // Worked out again from the samples and random crossings alone: WorkingText.Printed_*.
  const std::set<std::string_view> elsewhere{"pit.slope", "pit.support-short", "pit.support-foot", "pit.trench-width",
                                             "pit.working-space"};
  std::vector<Working> all = judged(busy_crossing()).working;
  Crossing european = clean_crossing();
  european.site.surface.front().traffic = "en-1991-2";
  const std::vector<Working> lanes = judged(european).working;
  all.insert(all.end(), lanes.begin(), lanes.end());
  const std::vector<Working> wet = judged(wet_crossing()).working;
  all.insert(all.end(), wet.begin(), wet.end());
  const std::vector<Working> sandy = judged(sandy_crossing()).working;
  all.insert(all.end(), sandy.begin(), sandy.end());
  const std::vector<Working> calibrated = judged(calibrated_crossing()).working;
  all.insert(all.end(), calibrated.begin(), calibrated.end());
  const std::vector<Working> shielded = judged(shielded_crossing()).working;
  all.insert(all.end(), shielded.begin(), shielded.end());
  std::map<std::string_view, int> met;
  for (const Working& w : all) {
    const auto it = formulas().find(w.code);
    ASSERT_NE(it, formulas().end()) << w.code << " has no formula in this test";
    // A level bore crosses squarely; the stadium is then the band of the crossing formula to 1e-6.
    // Pressures: bracketing ends at the last digits of a double.
    const double tolerance = w.unit.empty() ? 2e-6 : w.unit == "Pa" ? 1e-9 * std::abs(w.value) : 1e-9;
    EXPECT_NEAR(w.value, it->second(w), tolerance) << w.code << " " << w.subject;
    ++met[w.code];
  }
  for (const auto& [code, formula] : formulas()) EXPECT_TRUE(met.contains(code) || elsewhere.contains(code)) << code;
}

TEST(WorkingText, Printed_ComesOutByHand) {
  int read = 0;
  slack = 5e-5;
  for (const Crossing& crossing :
       {busy_crossing(), wet_crossing(), sandy_crossing(), calibrated_crossing(), shielded_crossing()})
    for (const Working& w : judged(crossing).working) {
      const std::string wrong = what_does_not_come_out(w, UnitSystem::metric);
      EXPECT_TRUE(wrong.empty()) << wrong;
      ++read;
    }
  slack = 0;
  EXPECT_GT(read, 200);
}

// Levels to the millimetre: 102.3 − 101 − 0.0375 = 1.2625 once stood above a printed 1.292.
TEST(WorkingText, Printed_LevelsToTheMillimetre) {
  EXPECT_EQ(working_input({"z_ground", 102.3294, "m"}, UnitSystem::metric), "102.3294 m");
  EXPECT_EQ(working_input({"z_axis", 101, "m"}, UnitSystem::metric), "101.000 m");
  EXPECT_EQ(working_number(1234.56, "m", UnitSystem::metric), "1234.560 m");
  EXPECT_EQ(working_number(-0.0004, "m", UnitSystem::metric), "-0.0004 m");
  EXPECT_EQ(working_input({"P", 0.000968, ""}, UnitSystem::metric), "0.0968 %");
  EXPECT_EQ(working_input({"P", 1.5e-12, ""}, UnitSystem::metric), "1.5e-10 %");
  EXPECT_EQ(working_number(1.5e-12, "", UnitSystem::metric, "P"), "< 0.01 %");
}

TEST(Working, NumberIsThatOfTheAnswer) {
  const Assessment answer = judged(busy_crossing());
  const auto value = [&](std::string_view code, std::string_view subject) {
    const Working* w = working(answer, code, subject);
    EXPECT_TRUE(w) << code << subject;
    return w ? w->value : std::nan("");
  };
  EXPECT_EQ(value("bore.cover", "bore"), *answer.cover.least_m);
  EXPECT_EQ(value("bore.exit-window", "exit-pit"), *answer.arrival.chance_inside_exit_pit);
  EXPECT_EQ(value("pit.depth", "launch-pit"), answer.launch_pit.depth_m);
  EXPECT_EQ(value("pit.depth", "exit-pit"), answer.exit_pit.depth_m);
  EXPECT_EQ(value("bore.length", "bore"), 8);
  for (const UtilityAnswer& u : answer.utilities) {
    EXPECT_EQ(value("utility.separation", u.id), *u.separation_m);
    EXPECT_EQ(value("utility.gap-low", u.id), *u.gap_low_m);
    EXPECT_EQ(value("utility.contact", u.id), *u.contact_chance);
    EXPECT_EQ(value("utility.contact-worst", u.id), *u.contact_chance_worst);
    EXPECT_EQ(value("utility.encroachment", u.id), *u.encroachment_chance);
  }
}

// A finding and its working never tell two numbers or two limits.
TEST(Working, NumberIsThatOfTheFinding) {
  Crossing crossing = busy_crossing();
  crossing.bore.launch.elevation = Length{99.55};
  crossing.bore.exit.station = Length{19};
  crossing.pits.exit.floor_width = Length{0.05};
  const Assessment answer = judged(crossing);
  int compared = 0;
  for (const Finding& f : answer.findings) {
    std::string code = f.code == "utility.contact" ? "utility.contact-worst" : f.code;
    for (const Working& w : answer.working) {
      if (w.code != code || w.subject != f.subject || !f.measured) continue;
      if (f.code == "bore.length" && w.limit != f.limit) continue;  // one for the tool, one for any tool
      EXPECT_EQ(w.value, *f.measured) << f.code;
      if (w.limit) {
        EXPECT_EQ(w.limit, f.limit) << f.code;
      }
      ++compared;
    }
  }
  EXPECT_GE(compared, 4) << listed(answer);
}

TEST(WorkingText, Lines_FormulaInputsResultLimitSource) {
  const Working w{"utility.separation",
                  "u1",
                  "g = δ − R",
                  {{"δ", 0.5, "m"}, {"R", 0.0875, "m"}},
                  "g",
                  0.4125,
                  "m",
                  0.6,
                  {"least distance", SourceLabel::derived}};
  EXPECT_EQ(working_text(w, UnitSystem::metric),
            "g = δ − R\n  δ = 0.500 m\n  R = 0.0875 m\ng = 0.4125 m\nlimit 0.600 m\nfrom: least distance [derived]");
  EXPECT_EQ(working_text(w, UnitSystem::us),
            "g = δ − R\n  δ = 1.64042 ft\n  R = 0.287073 ft\ng = 1.353 ft\nlimit 1.969 ft\nfrom: least distance "
            "[derived]");
}

TEST(WorkingText, Formula_HasTheDecimalMarkOfTheLanguage) {
  Working w;
  w.formula = "g_low = δ − R − 1.645 √(s_bore² + s_utility²)";
  EXPECT_EQ(working_formula(w), w.formula);
  set_decimal_mark(DecimalMark::comma);
  EXPECT_EQ(working_formula(w), "g_low = δ − R − 1,645 √(s_bore² + s_utility²)");
  set_decimal_mark(DecimalMark::point);
}

TEST(WorkingText, Number_EachUnit) {
  EXPECT_EQ(working_number(pi / 4, "rad", UnitSystem::metric), "45°");
  EXPECT_EQ(working_number(0.012345, "", UnitSystem::us), "0.01235");
  EXPECT_EQ(working_number(69000, "Pa", UnitSystem::metric), "69 kPa");
  EXPECT_EQ(working_number(6894.757293168361, "Pa", UnitSystem::us), "1 psi");
  EXPECT_EQ(working_number(8.5, "Hz", UnitSystem::metric), "8.5 Hz");
  EXPECT_EQ(working_number(0.05, "m³/s", UnitSystem::metric), "3 m³/min");
  EXPECT_EQ(working_number(0.0471947443, "m³/s", UnitSystem::us), "100 ft³/min");
  EXPECT_EQ(working_number(288.15, "K", UnitSystem::us), "59 °F");
}

}  // namespace
}  // namespace burrow::test
