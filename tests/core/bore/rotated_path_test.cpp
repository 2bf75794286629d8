// Paths, neutral covers and guessed grounds by tables made once, against those made anew for each path.

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/bore/guessed_ground.h"
#include "burrow/bore/neutral_cover.h"
#include "burrow/bore/turn_table.h"
#include "burrow/file/tables_file.h"

namespace burrow {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

struct Layered {
  Site site;
  Bore bore;
  Tool tool;

  explicit Layered(StratumEvidence known) {
    site.ground = {{-5, 0}, {6, 0.2}, {30, -0.3}};
    site.water = LevelLine{{-5, -2.2}, {30, -2.0}};
    const char* soils[] = {"made-ground", "firm-clay", "medium-sand"};
    for (int i = 0; i < 3; ++i) {
      Stratum stratum;
      stratum.id = "l" + std::to_string(i);
      stratum.soil = soils[i];
      stratum.known.set(known);
      if (i > 0) stratum.top = LevelLine{{-5, -0.9 * i}, {30, -0.7 * i}};
      site.strata.push_back(stratum);
    }
    bore.tool.tool_class = "tool-65";
    bore.exit.station = {14};
    tool = resolve_tool(bore.tool, tables());
  }
};

// Second route: the same path with the turning computed at every step. Half a millimetre: a twentieth of a level's
// error.
TEST(TurnedPath, LayersAndWater_WithinHalfAMillimetre) {
  Layered c(StratumEvidence::seen);
  const Ground ground(c.site, tables());
  const TurnTable turns(c.site, ground, Steering(ground, c.tool), c.tool, {0, 14, 6}, 0);
  for (const double z : {-0.6, -1.0, -1.4, -2.2, -3.5})
    for (const double grade : {-0.06, 0.0, 0.02}) {
      c.bore.launch.elevation = {z};
      c.bore.launch.grade = Ratio{grade};
      const BorePath exact = predict_path(ground, c.tool, c.bore),
                     quick = predict_path(ground, c.tool, c.bore, {}, &turns);
      ASSERT_EQ(quick.ends, exact.ends) << z << grade;
      ASSERT_EQ(quick.points.size(), exact.points.size());
      for (std::size_t i = 0; i < exact.points.size(); ++i) {
        EXPECT_NEAR(quick.points[i].z_m, exact.points[i].z_m, 2e-3) << z << grade << i;
        EXPECT_NEAR(quick.points[i].sd_vertical_m, exact.points[i].sd_vertical_m, 0.01 * exact.points[i].sd_vertical_m)
            << z << grade << i;
        EXPECT_NEAR(quick.points[i].sd_lateral_m, exact.points[i].sd_lateral_m, 0.01 * exact.points[i].sd_lateral_m)
            << z << grade << i;
      }
    }
}

TEST(NeutralTable, AlongTheLine_AsTheRootThere) {
  Layered c(StratumEvidence::seen);
  const Ground ground(c.site, tables());
  const NeutralTable table(ground, c.tool, 0, 14, 0);
  c.bore.launch.elevation = {-1.4};
  const BorePath path = predict_path(ground, c.tool, c.bore);
  const std::vector<NeutralPoint> exact = neutral_line(ground, c.tool, path),
                                  quick = neutral_line(ground, table, c.tool, path);
  ASSERT_EQ(exact.size(), quick.size());
  int compared = 0;
  for (std::size_t i = 0; i < exact.size(); ++i) {
    ASSERT_EQ(exact[i].cover_m.has_value(), quick[i].cover_m.has_value()) << i;
    if (!exact[i].cover_m) continue;
    EXPECT_NEAR(*quick[i].cover_m, *exact[i].cover_m, 1e-3) << i;
    EXPECT_NEAR(*quick[i].elevation_m, *exact[i].elevation_m, 1e-3) << i;
    ++compared;
  }
  EXPECT_GT(compared, 5);
}

TEST(GuessedGround, ReadyGrounds_TheSame) {
  Layered c(StratumEvidence::guess);
  c.bore.launch.elevation = {-1.4};
  const Ground ground(c.site, tables());
  GuessedGrounds ready(c.site, tables(), ground);
  EXPECT_EQ(ready.all().size(), 3U);
  const BorePath path = predict_path(ground, c.tool, c.bore);
  const GuessedPath anew = path_with_mistakes(c.site, tables(), c.tool, c.bore, path);
  const GuessedPath there = path_with_mistakes(ground, ready, c.tool, c.bore, path);
  EXPECT_EQ(there.path, anew.path);
  EXPECT_EQ(there.effects, anew.effects);
  EXPECT_EQ(there.chance_to_reach, anew.chance_to_reach);
  ready.tabulate(c.site, c.tool, {0, 14, 6}, 0);
  const TurnTable turns(c.site, ground, Steering(ground, c.tool), c.tool, {0, 14, 6}, 0);
  const GuessedPath quick = path_with_mistakes(ground, ready, c.tool, c.bore, path, &turns);
  EXPECT_NEAR(quick.path.points.back().sd_vertical_m, anew.path.points.back().sd_vertical_m, 1e-3);
  EXPECT_NEAR(quick.chance_to_reach, anew.chance_to_reach, 1e-12);
}

}  // namespace
}  // namespace burrow
