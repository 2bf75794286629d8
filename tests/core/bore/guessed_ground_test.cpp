#include "burrow/bore/guessed_ground.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/bore/neutral_cover.h"
#include "burrow/bore/steering.h"
#include "burrow/file/tables_file.h"

namespace burrow {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

struct Case {
  Site site;
  Bore bore;
  Tool tool;

  explicit Case(const char* soil, double z = -1.5, double length = 12) {
    site.ground = {{-5, 0}, {60, 0}};
    Stratum stratum;
    stratum.soil = soil;
    stratum.known.set(StratumEvidence::guess);
    site.strata = {stratum};
    bore.tool.tool_class = "tool-65";
    bore.launch.elevation = {z};
    bore.exit.station = {length};
    tool = resolve_tool(bore.tool, tables());
  }
  [[nodiscard]] BorePath path(const char* other = nullptr) const {
    Site drawn = site;
    if (other) drawn.strata[0].soil = other;
    return predict_path(Ground(drawn, tables()), tool, bore);
  }
  [[nodiscard]] GuessedPath guessed() const { return path_with_mistakes(site, tables(), tool, bore, path()); }
};

// Law of total variance over the three classes, put together from three paths at the fine step; a class that runs
// straighter than the one entered gets no credit for it: not knowing must not look safe.
TEST(GuessedGround, TotalVariance_ThreePathsByHand) {
  const Case c("medium-sand");
  const GuessedPath answer = c.guessed();
  const BorePath own = c.path(), weaker = c.path("loose-sand"), stiffer = c.path("dense-sand");
  ASSERT_EQ(own.ends, PathEnd::exit);
  ASSERT_EQ(weaker.ends, PathEnd::exit);
  ASSERT_EQ(stiffer.ends, PathEnd::exit);
  const PathPoint &o = own.points.back(), &w = weaker.points.back(), &s = stiffer.points.back();
  const auto with = [&](const PathPoint& k) {
    return 0.25 * (std::pow(std::max(k.sd_vertical_m, o.sd_vertical_m), 2) + std::pow(k.z_m - o.z_m, 2));
  };
  const double expected = 0.5 * o.sd_vertical_m * o.sd_vertical_m + with(w) + with(s);
  EXPECT_NEAR(answer.path.points.back().sd_vertical_m, std::sqrt(expected), 2e-5);
  EXPECT_EQ(answer.path.points.back().z_m, o.z_m);  // the mean path is that of the class entered
  ASSERT_EQ(answer.effects.size(), 1u);
  EXPECT_NEAR(answer.effects[0].shift_low_m, std::min({0.0, w.z_m - o.z_m, s.z_m - o.z_m}), 2e-4);
  EXPECT_NEAR(answer.effects[0].shift_high_m, std::max({0.0, w.z_m - o.z_m, s.z_m - o.z_m}), 2e-4);
  EXPECT_EQ(answer.chance_to_reach, 1);
}

// Not knowing must not look safe: over all classes no guess makes a band narrower than the class entered, at any point.
TEST(GuessedGround, Bound_NeverNarrowerThanSeen) {
  for (const SoilClass& soil : tables().soils) {
    const Case c(soil.id.c_str());
    const BorePath seen = c.path();
    const GuessedPath guessed = c.guessed();
    ASSERT_EQ(seen.points.size(), guessed.path.points.size());
    for (std::size_t i = 0; i < seen.points.size(); ++i) {
      EXPECT_GE(guessed.path.points[i].sd_vertical_m, seen.points[i].sd_vertical_m) << soil.id;
      EXPECT_GE(guessed.path.points[i].sd_lateral_m, seen.points[i].sd_lateral_m) << soil.id;
    }
    const Ground ground(c.site, tables());
    EXPECT_GE(StopChance(c.site, tables(), ground, seen).up_to({seen.length_m}),
              chance_of_refusal(ground, seen) - 1e-12)
        << soil.id;
  }
}

void expect_wider(const char* soil) {
  const Case c(soil);
  const BorePath seen = c.path();
  const GuessedPath guessed = c.guessed();
  ASSERT_EQ(seen.points.size(), guessed.path.points.size());
  ASSERT_EQ(guessed.effects.size(), 1u) << soil;
  EXPECT_GT(guessed.path.points.back().sd_vertical_m, seen.points.back().sd_vertical_m + 1e-4) << soil;
}

// Not knowing must not look safe: both stood in no order once, and a guess of them changed nothing.
TEST(GuessedGround, Peat_GuessWidensTheBand) {
  expect_wider("peat");
}
TEST(GuessedGround, WeatheredRock_GuessWidensTheBand) {
  expect_wider("weathered-rock");
}
// Its kind: every class of the table.
TEST(GuessedGround, EveryClass_GuessWidensTheBand) {
  for (const SoilClass& soil : tables().soils) expect_wider(soil.id.c_str());
}

// By hand: 12 m in medium sand (0.005 1/m) that may be loose (0.002) or dense (0.03), chances ½, ¼, ¼.
TEST(StopChance, Hand_ThreeClasses) {
  Case c("medium-sand");
  const BorePath path = c.path();
  const double L = path.length_m;
  const auto chance = [&](double arc) {
    return StopChance(c.site, tables(), Ground(c.site, tables()), path).up_to({arc});
  };
  const auto by_hand = [](double l) {
    return 1 - 0.5 * std::exp(-0.005 * l) - 0.25 * std::exp(-0.002 * l) - 0.25 * std::exp(-0.03 * l);
  };
  EXPECT_NEAR(chance(L), by_hand(L), 1e-12);
  EXPECT_NEAR(chance(5), by_hand(5), 1e-12);
  EXPECT_EQ(chance(0), 0);
  // Known: the plain integral; a typed rate is known, whatever the class.
  c.site.strata[0].values.refusal_rate = RatePerLength{0.01};
  EXPECT_NEAR(chance(L), 1 - std::exp(-0.01 * L), 1e-12);
  c.site.strata[0].values.refusal_rate.reset();
  c.site.strata[0].known.set(StratumEvidence::seen);
  EXPECT_NEAR(chance(L), chance_of_refusal(Ground(c.site, tables()), path), 1e-12);
}

TEST(GuessedGround, Limit_SeenOrBoredChangesNothing) {
  for (const StratumEvidence known : {StratumEvidence::seen, StratumEvidence::borehole}) {
    Case c("loose-sand");
    c.site.strata[0].known.set(known);
    EXPECT_EQ(c.guessed().path, c.path());
    EXPECT_TRUE(c.guessed().effects.empty());
  }
}

TEST(GuessedGround, Limit_OutOfReachChangesNothing) {
  Case c("firm-clay");
  c.site.strata[0].known.set(StratumEvidence::seen);
  Stratum deep;
  deep.soil = "dense-sand";
  deep.known.set(StratumEvidence::guess);
  deep.top = LevelLine{{-5, -6}, {60, -6}};
  c.site.strata.push_back(deep);
  EXPECT_EQ(c.guessed().path, c.path());
  c.site.strata[1].top = LevelLine{{-5, -1.56}, {60, -1.56}};  // now right under the tool
  EXPECT_EQ(c.guessed().effects.size(), 1u);
  EXPECT_GT(c.guessed().path.points.back().sd_vertical_m, c.path().points.back().sd_vertical_m);
}

TEST(GuessedGround, Loss_AClassInWhichItDaylights) {
  Case c("loose-sand", -0.8, 40);
  ASSERT_EQ(c.path("silt").ends, PathEnd::exit);
  ASSERT_EQ(c.path().ends, PathEnd::exit);
  ASSERT_EQ(c.path("medium-sand").ends, PathEnd::daylight);
  const GuessedPath answer = c.guessed();
  EXPECT_DOUBLE_EQ(answer.effects.at(0).chance_of_loss, 0.25);
  EXPECT_DOUBLE_EQ(answer.chance_to_reach, 0.75);
}

TEST(NeutralLine, UniformDryGround_IsTheNeutralCoverEverywhere) {
  const Case c("loose-sand", -1.5, 12);
  const Ground ground(c.site, tables());
  const double cover = *neutral_cover(ground.stratum_soil(0), c.tool);
  const auto line = neutral_line(ground, c.tool, c.path());
  ASSERT_GE(line.size(), 10u);
  EXPECT_EQ(line.front().station_m, 0);
  EXPECT_NEAR(line.back().station_m, 12, 1e-9);
  for (const NeutralPoint& p : line) EXPECT_NEAR(*p.elevation_m, -(cover + 0.5) * 0.065, 1e-6);
}

// On the line a level tool is in balance in the ground as it is: sloping surface, a layer, water.
TEST(NeutralLine, LayersAndWater_NoTurnOnTheLine) {
  Case c("firm-clay", -1.3, 15);
  c.site.ground = {{-5, 0.3}, {6, 0}, {20, -0.4}};
  c.site.water = LevelLine{{-5, -0.5}, {20, -0.9}};
  Stratum sand;
  sand.soil = "medium-sand";
  sand.known.set(StratumEvidence::seen);
  sand.top = LevelLine{{-5, -0.2}, {20, -1.4}};
  c.site.strata.push_back(sand);
  const Ground ground(c.site, tables());
  const Steering steering(ground, c.tool);
  int found = 0;
  for (const NeutralPoint& p : neutral_line(ground, c.tool, c.path())) {
    if (!p.elevation_m) continue;
    ++found;
    const Column column = ground.column(p.station_m, 0);
    // A jump of the soil may stand in place of a root: it climbs just above and sags just below.
    EXPECT_GE(steering.pitch(column, *p.elevation_m + 1e-5, 0).pitch_1_m, -1e-4) << p.station_m;
    EXPECT_LE(steering.pitch(column, *p.elevation_m - 1e-5, 0).pitch_1_m, 1e-4) << p.station_m;
  }
  EXPECT_GT(found, 5);
}

}  // namespace
}  // namespace burrow
