// Sides that nobody entered; pieces of pipe on the floor.

#include "burrow/pit/proposal.h"

#include <gtest/gtest.h>

#include <random>

#include "burrow/file/tables_file.h"
#include "burrow/pit/pit_shapes.h"

namespace burrow {
namespace {

constexpr double ft = 0.3048;

const Tables& tables() {
  static const Tables loaded = load_tables();
  return loaded;
}
const ExcavationRuleSet& us() {
  return row_of(tables(), ExcavationRules::us_1926);
}

Crossing crossing(double depth_m) {
  Crossing c;
  c.site.ground = {{-30, 100}, {40, 100}};
  c.site.strata.emplace_back();
  c.site.strata.front().soil = "firm-clay";
  c.bore.launch.elevation = Length{100 - depth_m + 0.0325};
  c.bore.exit.station = Length{10};
  return c;
}

Tool tool() {
  Tool t;
  t.diameter = Length{0.065};
  t.length = Length{1.19};
  return t;
}

TEST(PitProposal, LeftToTheProgram_OnlyWhereNothingWasEntered) {
  EXPECT_TRUE(left_to_program(PitSide{}));
  PitSide side;
  side.run_per_rise = Ratio{1};
  EXPECT_FALSE(left_to_program(side));
  side = {};
  side.kind.set(SideKind::sloped);
  EXPECT_FALSE(left_to_program(side));
  side = {};
  side.support_top = Length{1};
  EXPECT_FALSE(left_to_program(side));
  side = {};
  side.benches = {{Length{1}, Length{1}, {}, ""}};
  EXPECT_FALSE(left_to_program(side));
}

// 29 CFR 1926.652(a)(1) (read): no protection below 5 ft where a competent person finds no indication of a cave-in.
TEST(PitProposal, Upright_BelowFiveFeetAndLookedAt) {
  Pit pit;
  EXPECT_FALSE(may_stand_upright(us(), pit, Length{1.0})) << "nobody looked";
  pit.signs.distress = true;
  EXPECT_FALSE(may_stand_upright(us(), pit, Length{1.0}));
  pit.signs.distress = false;
  EXPECT_TRUE(may_stand_upright(us(), pit, Length{1.0}));
  EXPECT_TRUE(may_stand_upright(us(), pit, Length{4.99 * ft}));
  EXPECT_FALSE(may_stand_upright(us(), pit, Length{5 * ft}));
  pit.signs.seeping = true;
  EXPECT_FALSE(may_stand_upright(us(), pit, Length{1.0}));
  pit.signs.seeping = false;
  pit.signs.fissured = true;
  EXPECT_FALSE(may_stand_upright(us(), pit, Length{1.0}));
}

// A pit left to the program takes the earth of its floor and no more: L W d.
TEST(PitProposal, LeastEarth_IsTheFloorStraightUp) {
  for (const double depth : {1.0, 1.4, 3.0}) {
    const PitShape pit = launch_pit_shape(crossing(depth), tool(), tables());
    EXPECT_EQ(pit.held.left, SideKind::shored) << depth;
    EXPECT_TRUE(pit.held.proposed);
    EXPECT_NEAR(pit.volume_m3, 2.19 * 0.9 * depth, 1e-9) << depth;
  }
  Crossing looked = crossing(1.0);
  looked.pits.launch.signs.distress = false;
  EXPECT_EQ(launch_pit_shape(looked, tool(), tables()).held.bore, SideKind::upright);
  looked.pits.launch.sides.left.kind.set(SideKind::sloped);  // wanted
  const PitShape wanted = launch_pit_shape(looked, tool(), tables());
  EXPECT_EQ(wanted.held.left, SideKind::sloped);
  EXPECT_EQ(wanted.held.right, SideKind::upright);
}

// Rock needs no protection (read); a name on clay does not make it rock.
TEST(PitProposal, Rock_OnlyWhereItIsDrawnAsRockAndNamed) {
  Crossing c = crossing(3);
  c.pits.launch.soil_type = ExcavationType::stable_rock;
  c.pits.launch.confirmed_by = "A. Muster";
  EXPECT_EQ(launch_pit_shape(c, tool(), tables()).held.left, SideKind::shored);
  for (const SoilClass& soil : tables().soils)
    if (soil.excavation_type == ExcavationType::stable_rock) {
      c.site.strata.front().soil = soil.id;
      EXPECT_EQ(launch_pit_shape(c, tool(), tables()).held.left, SideKind::upright) << soil.id;
      c.pits.launch.confirmed_by = " ";
      EXPECT_EQ(launch_pit_shape(c, tool(), tables()).held.left, SideKind::shored) << soil.id;
      c.pits.launch.confirmed_by = "A. Muster";
    }
}

// Over random pits: what is proposed never takes more earth than the slopes of the rules, and never stands bare where
// the rules want protection or nobody looked.
TEST(PitProposal, Random_NeverMoreEarthNorLessProtection) {
  std::mt19937 random(21);
  const auto u = [&] { return static_cast<double>(random()) / 4294967296.0; };
  for (int i = 0; i < 500; ++i) {
    Crossing c = crossing(0.4 + 3.6 * u());
    c.pits.rules.set(i % 2 ? ExcavationRules::us_1926 : ExcavationRules::din_4124);
    Pit& pit = c.pits.launch;
    pit.soil_type = static_cast<ExcavationType>(1 + random() % 3);
    if (random() % 3) pit.signs.distress = random() % 4 == 0;
    if (random() % 3 == 0) pit.signs.seeping = random() % 2 == 0;
    if (random() % 4 == 0)
      pit.shield = {Length{3 * u()}, static_cast<ExcavationType>(1 + random() % 3), random() % 2 ? "plate" : "", ""};
    const PitShape proposed = launch_pit_shape(c, tool(), tables());
    PitSides sloped = pit.sides;
    for (PitSide* side : {&sloped.back, &sloped.left, &sloped.right}) side->kind.set(SideKind::sloped);
    sloped.bore.kind.set(SideKind::shored);
    EXPECT_LE(proposed.volume_m3, launch_pit_m3(c, tool(), tables(), sloped) + 1e-9) << i;
    if (proposed.held.left == SideKind::upright) {
      const double from = i % 2 ? 5 * ft : 1.25;
      EXPECT_LE(proposed.depth_m, from) << i;
      EXPECT_TRUE(pit.signs.distress && !*pit.signs.distress && !pit.signs.seeping.value_or(false)) << i;
    }
    if (proposed.held.left == SideKind::shielded) {
      EXPECT_TRUE(pit.shield.depth->m >= proposed.depth_m && *pit.shield.soil_type >= proposed.soil_type &&
                  pit.shield.source == "plate")
          << i;
    }
  }
}

// Second route: the whole shape of a pit that was entered so.
TEST(PitProposal, OtherSides_EarthOfTheWholeShape) {
  std::mt19937 random(4);
  const auto u = [&] { return static_cast<double>(random()) / 4294967296.0; };
  for (int i = 0; i < 120; ++i) {
    Crossing c = crossing(0.6 + 2 * u());
    for (int k = 0; k < i % 3 * 8; ++k) c.site.ground_points.push_back({-6 + 20 * u(), -5 + 10 * u(), 99.5 + u()});
    if (i % 5 == 0) c.pits.launch.floor_outline = {{0, -0.6}, {2, -0.8}, {2.5, 1.5}, {1.9, 1.5}, {1.2, 0.4}, {0, 0.5}};
    PitSides sides = c.pits.launch.sides;
    for (PitSide* side : {&sides.bore, &sides.back, &sides.left, &sides.right})
      side->kind.set(random() % 2 ? SideKind::sloped : SideKind::shored);
    BorePath path;
    path.points.resize(2);
    path.points.back().x_m = 10;
    path.points.back().z_m = c.bore.launch.elevation.m;
    path.ends = PathEnd::exit;
    Crossing entered = c;
    entered.pits.launch.sides = entered.pits.exit.sides = sides;
    EXPECT_EQ(launch_pit_m3(c, tool(), tables(), sides), launch_pit_shape(entered, tool(), tables()).volume_m3) << i;
    EXPECT_EQ(exit_pit_m3(c, tool(), tables(), path, sides), exit_pit_shape(entered, tool(), tables(), path).volume_m3)
        << i;
    EXPECT_GT(launch_pit_m3(c, tool(), tables(), sides), 0) << i;
  }
}

TEST(RatedShield, Holds_ToItsDepthAndSoilAndWithASource) {
  RatedShield shield{Length{2.4}, ExcavationType::b, "plate", ""};
  EXPECT_TRUE(shield_holds(shield, ExcavationType::b, Length{2.4}));
  EXPECT_TRUE(shield_holds(shield, ExcavationType::a, Length{1}));
  EXPECT_FALSE(shield_holds(shield, ExcavationType::c, Length{1}));
  EXPECT_FALSE(shield_holds(shield, ExcavationType::b, Length{2.5}));
  shield.source = " ";
  EXPECT_FALSE(shield_holds(shield, ExcavationType::b, Length{1}));
  EXPECT_FALSE(shield_holds({}, ExcavationType::a, Length{1}));
}

// A 6 m stick wants a floor for it where it goes in; a coil wants none.
TEST(PipePieces, FloorsAsLongAsAPieceWhereItEnters) {
  Crossing c = crossing(1.4);
  const auto lengths = [&] {
    BorePath path;
    path.points.resize(2);
    path.points.back().x_m = 10;
    path.points.back().z_m = 98.6;
    path.ends = PathEnd::exit;
    return std::pair{launch_pit_shape(c, tool(), tables()).floor_length_m,
                     exit_pit_shape(c, tool(), tables(), path).floor_length_m};
  };
  c.pipe.emplace();
  EXPECT_NEAR(lengths().first, 2.19, 1e-12);
  c.pipe->piece_length = Length{6};
  for (const Insertion way : {Insertion::pushed, Insertion::towed}) {
    c.pipe->insertion.set(way);
    EXPECT_NEAR(lengths().first, 7.0, 1e-12) << word_of(way);
    EXPECT_NEAR(lengths().second, 2.19, 1e-12) << word_of(way);
  }
  c.pipe->insertion.set(Insertion::pulled_after);
  EXPECT_NEAR(lengths().first, 2.19, 1e-12);
  EXPECT_NEAR(lengths().second, 7.0, 1e-12);
  c.pits.launch.floor_length = Length{6.0};  // holds a piece: it is pulled in from there
  EXPECT_NEAR(lengths().second, 2.19, 1e-12);
  c.pits.launch.floor_length = Length{5.9};
  EXPECT_NEAR(lengths().second, 7.0, 1e-12);
  c.pipe->piece_length = Length{1.0};  // shorter than the tool
  EXPECT_NEAR(lengths().second, 2.19, 1e-12);
}

}  // namespace
}  // namespace burrow
