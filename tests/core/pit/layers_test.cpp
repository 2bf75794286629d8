// Layers of the ground in a pit: slopes one above the other, volumes of each.

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/file/tables_file.h"
#include "burrow/pit/cut.h"
#include "burrow/pit/pit_shapes.h"

namespace burrow {
namespace {

constexpr double ft = 0.3048;

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

Tool tool() {
  Tool t;
  t.diameter = Length{0.065};
  t.length = Length{1.19};
  return t;
}

Stratum stratum(ExcavationType type, std::optional<LevelLine> top = std::nullopt) {
  Stratum s;
  s.soil = "firm-clay";
  s.top = std::move(top);
  s.values.excavation_type = type;
  return s;
}

/// Level ground at 0, floor at −depth, the upper stratum down to −thickness.
Crossing layered(ExcavationType over, double thickness_m, ExcavationType under, double depth_m) {
  Crossing c;
  c.site.ground = {{-40, 0}, {40, 0}};
  c.site.strata = {stratum(over), stratum(under, LevelLine{{-40, -thickness_m}, {40, -thickness_m}})};
  c.bore.launch.elevation = Length{-depth_m + 0.2};
  c.bore.exit.station = Length{8};
  c.pits.launch.floor_elevation = Length{-depth_m};
  for (PitSide* side : {&c.pits.launch.sides.back, &c.pits.launch.sides.left, &c.pits.launch.sides.right})
    side->kind.set(SideKind::sloped);
  c.pits.launch.confirmed_by = "A. Muster";  // strength not known: he may find any of the three types
  return c;
}

double set_back_ft(const Crossing& crossing) {
  const PitShape pit = launch_pit_shape(crossing, tool(), tables());
  return (pit.top_width_m - pit.floor_width_m) / 2 / ft;
}

// 29 CFR 1926 Subpart P App. B Fig. B-1.4, its six cases from memory: 10 ft deep.
TEST(PitLayers, FigureB14_SetBackAtTheGround) {
  using enum ExcavationType;
  EXPECT_NEAR(set_back_ft(layered(c, 4 * ft, a, 10 * ft)), 10.5, 1e-9);
  EXPECT_NEAR(set_back_ft(layered(a, 6 * ft, c, 10 * ft)), 15.0, 1e-9);
  EXPECT_NEAR(set_back_ft(layered(a, 5 * ft, b, 10 * ft)), 10.0, 1e-9);
  EXPECT_NEAR(set_back_ft(layered(c, 5 * ft, b, 10 * ft)), 12.5, 1e-9);
  EXPECT_NEAR(set_back_ft(layered(b, 5 * ft, a, 10 * ft)), 8.75, 1e-9);
  EXPECT_NEAR(set_back_ft(layered(b, 5 * ft, c, 10 * ft)), 15.0, 1e-9);
}

// DIN 4124 as in DGUV Information 201-052 s. 4.2.3 (read): 45°, 60°, 80° at 2 m depth.
TEST(PitLayers, Din4124_SetBackAtTheGround) {
  Crossing crossing = layered(ExcavationType::b, 1, ExcavationType::b, 2);
  crossing.pits.rules = Given<ExcavationRules>(ExcavationRules::din_4124);
  EXPECT_NEAR(set_back_ft(crossing) * ft, 2.000, 0.0005);
  for (Stratum& s : crossing.site.strata) s.values.excavation_type = ExcavationType::a;
  EXPECT_NEAR(set_back_ft(crossing) * ft, 1.155, 0.0005);
  for (Stratum& s : crossing.site.strata) s.values.excavation_type = ExcavationType::stable_rock;
  EXPECT_NEAR(set_back_ft(crossing) * ft, 2.000, 0.0005);  // a name makes no rock of clay
  Tables with_rock = tables();
  for (SoilClass& soil : with_rock.soils)
    if (soil.id == "firm-clay") soil.matter = ExcavationMatter::rock;
  const PitShape pit = launch_pit_shape(crossing, tool(), with_rock);
  EXPECT_NEAR((pit.top_width_m - pit.floor_width_m) / 2, 0.353, 0.0005);
}

// The short-term slope is one of a simple slope: layers end it. Distress makes every slope 1/2 : 1 flatter.
TEST(PitLayers, ShortTermAndDistress) {
  Crossing crossing = layered(ExcavationType::a, 5 * ft, ExcavationType::a, 12 * ft);
  crossing.pits.launch.open_time = Duration{24 * 3600.0};
  EXPECT_NEAR(set_back_ft(crossing), 9.0, 1e-9);
  crossing.site.strata.pop_back();
  EXPECT_NEAR(set_back_ft(crossing), 6.0, 1e-9);
  crossing.pits.launch.signs.distress = true;
  EXPECT_NEAR(set_back_ft(crossing), 12.0, 1e-9);
}

// Typed for the pit and for the stratum: the worse of both; neither, or nobody's name: Type C.
TEST(PitLayers, TypeInForce) {
  Crossing crossing = layered(ExcavationType::b, 1, ExcavationType::a, 2);
  crossing.pits.launch.soil_type = ExcavationType::b;
  PitShape pit = launch_pit_shape(crossing, tool(), tables());
  ASSERT_EQ(pit.layers.size(), 2U);
  EXPECT_EQ(pit.layers[0].type, ExcavationType::b);
  EXPECT_EQ(pit.layers[1].type, ExcavationType::b);
  crossing.pits.launch.soil_type.reset();
  crossing.site.strata[1].values.excavation_type.reset();
  pit = launch_pit_shape(crossing, tool(), tables());
  EXPECT_EQ(pit.layers[0].type, ExcavationType::b);
  EXPECT_EQ(pit.layers[1].type, ExcavationType::c);
  EXPECT_EQ(pit.soil_type, ExcavationType::c);
  crossing.pits.launch.confirmed_by = " - ";
  EXPECT_EQ(launch_pit_shape(crossing, tool(), tables()).layers[0].type, ExcavationType::c);
}

/// Second route: midpoints of a fine mesh in plan; each column of ground is shared out between the strata it passes.
std::vector<double> by_mesh(const Site& site, const PitShape& pit, double step) {
  std::vector<double> volumes(site.strata.size(), 0.0);
  const double reach = 4;
  const auto count = [&](double span) { return static_cast<int>(std::lround((span + 2 * reach) / step)); };
  for (int i = 0; i < count(pit.floor_length_m); ++i) {
    const double x = pit.floor_from_m - reach + (i + 0.5) * step;
    const double end = x < pit.floor_from_m ? pit.sides.low.height_at(pit.floor_from_m - x)
                       : x > pit.floor_to_m ? pit.sides.high.height_at(x - pit.floor_to_m)
                                            : 0;
    const double ground = elevation_at(site.ground, x);
    std::vector<double> tops{ground};
    for (std::size_t s = 1; s < site.strata.size(); ++s)
      tops.push_back(std::min(elevation_at(*site.strata[s].top, x), ground));
    for (int k = 0; k < count(pit.floor_width_m); ++k) {
      const double y = pit.floor_right_m - reach + (k + 0.5) * step;
      const double flank = y < pit.floor_right_m  ? pit.sides.right.height_at(pit.floor_right_m - y)
                           : y > pit.floor_left_m ? pit.sides.left.height_at(y - pit.floor_left_m)
                                                  : 0;
      double bottom = pit.floor_elevation_m + std::max(end, flank);
      if (!(bottom < ground)) continue;
      for (std::size_t s = tops.size(); s-- > 0;) {
        if (!(tops[s] > bottom)) continue;
        volumes[s] += step * step * (tops[s] - bottom);
        bottom = tops[s];
      }
    }
  }
  return volumes;
}

// Sloping ground, strata that dip and pinch out, sides that differ: each layer agrees with the mesh to 1e-6 of the pit.
TEST(PitLayers, Mesh_VolumeOfEachLayer) {
  Crossing c = layered(ExcavationType::c, 0.6, ExcavationType::b, 1.8);
  c.site.ground = {{-8, 0.3}, {-3.1, -0.1}, {-1.4, 0.2}, {0.9, 0.4}, {6, 0}};
  c.site.strata = {stratum(ExcavationType::c), stratum(ExcavationType::b, LevelLine{{-8, 0.1}, {-1, -0.9}, {6, -0.5}}),
                   stratum(ExcavationType::a, LevelLine{{-8, -0.2}, {-2, -0.7}, {6, -2.2}})};
  c.pits.launch.floor_length = Length{2.4};
  c.pits.launch.floor_width = Length{1.0};
  c.pits.launch.sides.back.run_per_rise = Ratio{0.8};
  c.pits.launch.sides.right.upright = Length{0.7};
  const PitShape pit = launch_pit_shape(c, tool(), tables());
  ASSERT_EQ(pit.layers.size(), 3U);
  double sum = 0;
  for (const PitLayer& layer : pit.layers) sum += layer.volume_m3;
  EXPECT_NEAR(sum, pit.volume_m3, 1e-12 * pit.volume_m3);
  const std::vector<double> mesh = by_mesh(c.site, pit, 0.0025);
  for (const PitLayer& layer : pit.layers)
    EXPECT_NEAR(layer.volume_m3, mesh[layer.stratum], 1e-6 * pit.volume_m3) << layer.stratum;
}

// Arithmetic: a shored box in two level layers.
TEST(PitLayers, Box_VolumeOfEachLayer) {
  Crossing c = layered(ExcavationType::c, 0.5, ExcavationType::b, 2);
  c.pits.launch.floor_length = Length{2};
  c.pits.launch.floor_width = Length{1};
  for (PitSide* side : {&c.pits.launch.sides.back, &c.pits.launch.sides.left, &c.pits.launch.sides.right})
    *side = shored_side();
  const PitShape pit = launch_pit_shape(c, tool(), tables());
  ASSERT_EQ(pit.layers.size(), 2U);
  EXPECT_NEAR(pit.layers[0].volume_m3, 1, 1e-12);
  EXPECT_NEAR(pit.layers[1].volume_m3, 3, 1e-12);
}

}  // namespace
}  // namespace burrow
