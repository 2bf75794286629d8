// Planted crossings whose best launch, or whose smallest relaxation, is known by closed form.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "burrow/search/launch_choice.h"
#include "burrow/search/launch_map.h"
#include "burrow/words/launch_text.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

constexpr double radius = 0.065 / 2, pipe = 0.11 / 2, wanted = 0.6;

/// The tables with no limit of chance, window or cover: what is planted here alone binds.
const Tables& tables() {
  static const Tables planted = [] {
    Tables all = test::tables();
    for (LimitRow& row : all.limits) {
      if (row.id.starts_with("contact_") || row.id.starts_with("encroachment_")) row.value = 1;
      if (row.id == "exit_window_chance") row.value = 0.01;
      if (row.id == "cover_diameters") row.value = 0.5;
    }
    return all;
  }();
  return planted;
}

/// A bore that runs straight (c = 0) and level between an upper and a lower main; only the two gaps, cover and the
/// depth of the pits are limits that can be broken.
Crossing between_mains(double upper_m, double lower_m) {
  Crossing c = clean_crossing();
  c.site.surface.clear();
  c.site.nothing_above = {"walked over", "A. Nobody", "2026-03-01", ""};
  c.bore.model.steer_constant.set(Ratio{0});
  c.bore.model.steer_constant_sd.set(Ratio{0});
  c.locks = {"/bore/launch/grade"};
  c.site.utilities = {water_main(4, upper_m), water_main(4, lower_m)};
  c.site.utilities[0].id = "upper";
  c.site.utilities[0].name = "upper main";
  c.site.utilities[1].id = "lower";
  c.site.utilities[1].name = "lower main";
  for (double below = lower_m - 0.7; below > 93; below -= 0.7) {
    c.site.utilities.push_back(water_main(4, below));
    c.site.utilities.back().id = "deep" + std::to_string(c.site.utilities.size());
  }
  return c;
}

double elevation(const Crossing& c, const MapPlace& place) {
  return launch_at(c, MapOver::depth_and_grade, place).elevation.m;
}

// Closed form: half way between the mains both gaps are (z_u − z_l)/2 − D/2 − d/2, margin = gap/0.6 − 1.
TEST(BestLaunch, TwoMains_HalfWay) {
  const Crossing c = between_mains(99.3, 97.6);
  const LaunchMap map = search_launches(c, tables());
  ASSERT_TRUE(map.works) << search_headline(map, UnitSystem::metric);
  EXPECT_NEAR(elevation(c, map.best->place), (99.3 + 97.6) / 2, 1e-3);
  EXPECT_NEAR(map.best->margin, ((99.3 - 97.6) / 2 - radius - pipe) / wanted - 1, 2e-3);
  EXPECT_EQ(map.limits[static_cast<std::size_t>(map.best->binds)].code, "utility.separation");
}

// Closed form: the upper main alone wants the bore deep; by the greatest least margin it goes down until the pit's
// margin 1 − d/6.096 meets that of the gap: (z_u − z − D/2 − d/2)/0.6 − 1 = 1 − (100 − z + D/2 + band + 0.1)/6.096.
TEST(BestLaunch, MainAgainstPitDepth_WhereTheirMarginsMeet) {
  Crossing c = between_mains(98.9, 80);
  c.bore.launch.elevation = Length{97.5};
  c.site.utilities.resize(1);
  c.pipe->material = "steel";  // its pull does not bind
  c.pipe->sdr.reset();
  c.pipe->wall = Length{0.003};
  const LaunchMap map = search_launches(c, tables());
  // The exit pit is the deeper one: its floor takes in the band and 0.1 m.
  Crossing moved = c;
  moved.bore.launch = launch_at(c, map.over, map.best->place);
  const double below = radius + 1.645 * *judged(moved).arrival.sd_vertical_m + 0.1, deepest = 6.096;
  const double z = ((98.9 - radius - pipe) / wanted - 2 + (100 + below) / deepest) / (1 / wanted + 1 / deepest);
  ASSERT_TRUE(map.best);
  EXPECT_NEAR(map.best->margin, (98.9 - z - radius - pipe) / wanted - 1, 0.01)
      << binding_text(map, *map.best, UnitSystem::metric) << place_text(map.over, map.best->place, UnitSystem::metric);
  EXPECT_NEAR(elevation(c, map.best->place), z, 0.02);
}

// Of launches that are equally good the least earth wins: what the pits cost is never the least margin here.
TEST(BestLaunch, EquallyGood_LeastEarth) {
  Crossing c = between_mains(99.3, 97.6);
  const LaunchMap map = search_launches(c, tables());
  for (const LaunchCell& cell : map.cells) {
    if (cell.verdict == map.best->verdict && cell.margin >= map.best->margin) {
      EXPECT_GE(cell.earth_m3, map.best->earth_m3 - 0.02);
    }
    EXPECT_LE(cell.margin, map.best->margin + 1e-3 + (cell.verdict != map.best->verdict ? 2 : 0));
  }
}

// Closed form: with the upper gap kept exactly, the lower one is z_u − z_l − 2 (D/2 + d/2) − 0.6, and the other way
// round. Either main alone would have to give way by 0.6 less that.
TEST(Relaxations, TwoMainsTooNear_EitherGivesWay) {
  const double upper = 99.3, lower = 98.0;
  const Crossing c = between_mains(upper, lower);
  const LaunchMap map = search_launches(c, tables());
  EXPECT_FALSE(map.works);
  ASSERT_GE(map.relaxations.size(), 2U);
  const double left = upper - lower - 2 * (radius + pipe) - wanted;
  for (const Relaxation& r : {map.relaxations[0], map.relaxations[1]}) {
    ASSERT_EQ(r.limits.size(), 1U) << r.limits[1].code;
    EXPECT_EQ(r.limits[0].code, "utility.separation");
    EXPECT_NEAR(*r.limits[0].measured, left, 2e-3);
    EXPECT_NEAR(*r.limits[0].limit, wanted, 1e-9);
    EXPECT_NEAR(r.worst_margin, left / wanted - 1, 4e-3);
  }
  EXPECT_NE(map.relaxations[0].limits[0].subject, map.relaxations[1].limits[0].subject);
  const std::string conflict = conflict_text(map);
  EXPECT_NE(conflict.find("upper main"), std::string::npos) << conflict;
  EXPECT_NE(conflict.find("lower main"), std::string::npos) << conflict;
  // Such a relaxation opens a launch: typed as a limit of the crossing, the search finds it.
  Crossing relaxed = c;
  relaxed.limits["separation_traced_m"] = {left - 0.005, "asked of the owner", ""};
  EXPECT_TRUE(search_launches(relaxed, tables()).works);
}

// An exposed main wants 0.30 m: that is enough between mains 1.2 m apart (0.6 + 0.3 + 2 (D/2 + d/2) = 1.075).
TEST(Relaxations, Exposing_OpensALaunch) {
  const Crossing c = between_mains(99.2, 98.0);
  const LaunchMap map = search_launches(c, tables());
  ASSERT_FALSE(map.works);
  const std::vector<Exposure> dug = exposures(c, tables(), map);
  ASSERT_GE(dug.size(), 2U);
  for (const Exposure& e : dug) EXPECT_EQ(e.works, e.utility == "upper" || e.utility == "lower") << e.utility;
  EXPECT_TRUE(dug[0].works && dug[1].works);
  const std::vector<Exposure> closer = [&] {
    const Crossing tight = between_mains(99.75, 98.85);  // 0.9 apart: not even then
    return exposures(tight, tables(), search_launches(tight, tables()));
  }();
  ASSERT_FALSE(closer.empty());
  for (const Exposure& e : closer) EXPECT_FALSE(e.works) << e.utility;
}

// A hole of D between mains 1.37 m apart: D + d + 2 · 0.6 ≤ 1.37 for D ≤ 60 mm.
TEST(ToolTable, MainsThatOnlyASmallHolePasses) {
  Crossing c = between_mains(99.3, 97.93);
  c.pipe->outside_diameter = Length{0.05};
  const std::vector<ToolRow> rows = choose_tool(c, tables());
  ASSERT_EQ(rows.size(), tables().tools.size() * 3);
  for (const ToolRow& row : rows) {
    EXPECT_EQ(row.works, row.diameter_m <= 0.06 && row.pipe_fits) << row.tool << tool_text(row, UnitSystem::metric);
    EXPECT_EQ(row.pipe_fits, row.diameter_m >= 0.05) << row.tool;
    EXPECT_FALSE(tool_text(row, UnitSystem::metric).empty()) << row.tool;
  }
  EXPECT_EQ(std::count_if(rows.begin(), rows.end(), [](const ToolRow& row) { return row.in_force; }), 1);
}

TEST(LaunchText, EveryLimitThatBinds_HasWords) {
  const LaunchMap map = search_launches(clean_crossing(), tables());
  for (const Finding& limit : map.limits) {
    EXPECT_EQ(limit_title(limit).find('.'), std::string::npos) << limit_title(limit);
    EXPECT_EQ(limit_title(limit).find('{'), std::string::npos) << limit_title(limit);
  }
  Finding strange;
  strange.code = "orbit.too-high";
  strange.name = "moon";
  EXPECT_EQ(limit_title(strange), "orbit too high, moon");
}

// The words of findings are of broken limits: none of those that would be wrong of a kept one may be told.
TEST(LaunchText, KeptLimit_IsNotToldAsBroken) {
  LaunchMap map;
  for (const char* code : {"bore.climb", "bore.sag", "bore.set", "pit.unprotected"}) {
    Finding limit;
    limit.code = code;
    limit.name = "bore";
    limit.unit = "m";
    map.limits = {limit};
    LaunchCell cell;
    cell.binds = 0;
    cell.margin = 0.5;
    cell.measured = 1.5;
    cell.limit = 1.0;
    const std::string text = binding_text(map, cell, UnitSystem::metric);
    EXPECT_EQ(text.find("less than"), std::string::npos) << text;
    EXPECT_EQ(text.find("would stop"), std::string::npos) << text;
    EXPECT_NE(text.find("1.50 m, 1.00 m required"), std::string::npos) << text;
  }
  map.limits[0].code = "pit.water";
  map.limits[0].name = "exit pit";
  LaunchCell dry;
  dry.binds = 0;
  dry.margin = 0.62;
  dry.measured = -0.62;
  dry.limit = 0;
  EXPECT_EQ(binding_text(map, dry, UnitSystem::metric), "floor of exit pit 0.62 m above the water level");
}

TEST(LaunchText, Words) {
  EXPECT_EQ(margin_text(0.123), "margin 12 %");
  EXPECT_EQ(margin_text(-0.31), "31 % short");
  EXPECT_EQ(margin_text(-0.001), "1 % short");
  // A number beyond the limit itself tells nobody anything.
  EXPECT_EQ(margin_text(-0.98), "98 % short");
  EXPECT_EQ(margin_text(-1), "far short");
  EXPECT_EQ(margin_text(-88), "far short");
  LaunchCell cell;
  cell.margin = -1;
  EXPECT_EQ(margin_text(cell), "not kept");  // without a measure: gas main inside a pit
  cell.limit = 0.6;
  EXPECT_EQ(margin_text(cell), "far short");
  cell.arrives = false;
  EXPECT_EQ(margin_text(cell), "does not arrive");
  EXPECT_EQ(place_text(MapOver::depth_and_grade, {-0.012, 1.42}, UnitSystem::metric), "1.42 m deep at −1.20 %");
}

}  // namespace
}  // namespace burrow::test
