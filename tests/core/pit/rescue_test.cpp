#include "burrow/pit/rescue.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/file/tables_file.h"

namespace burrow {
namespace {

TEST(RescuePit, Hand_LevelBoreInLevelGround) {
  const Tables tables = load_tables(Date{2026, 3, 2});
  Crossing crossing;
  crossing.site.ground = {{-5, 100}, {20, 100}};
  crossing.site.strata = {Stratum{}};
  crossing.site.strata[0].soil = "stiff-clay";
  crossing.bore.tool.tool_class = "tool-65";
  crossing.bore.model.steer_constant.set(Ratio{0});
  crossing.bore.launch.elevation = Length{98.5};
  crossing.bore.exit.station = Length{12};
  const Tool tool = resolve_tool(crossing.bore.tool, tables);
  const BorePath path = predict_path(Ground(crossing.site, tables), tool, crossing.bore);
  const PitShape pit = rescue_pit_shape(crossing, tool, tables, path, Length{6});
  EXPECT_NEAR(pit.floor_to_m, 6.5, 0.25);  // the path is recorded every 0.25 m
  EXPECT_NEAR(pit.floor_length_m, tool.length.m + 1.0, 1e-9);
  EXPECT_NEAR(pit.floor_width_m, 0.9, 1e-9);
  EXPECT_NEAR(pit.floor_elevation_m, 98.5 - 0.0325 - 0.2, 1e-9);
  EXPECT_NEAR(pit.depth_m, 1.7325, 1e-9);
  // Type C: 1.5 to 1 on every side (29 CFR 1926 Subpart P, Table B-1, read).
  EXPECT_NEAR(pit.top_width_m, 0.9 + 2 * 1.5 * pit.depth_m, 1e-6);
  EXPECT_NEAR(pit.top_length_m, pit.floor_length_m + 2 * 1.5 * pit.depth_m, 1e-6);
  crossing.pits.launch.soil_type = ExcavationType::b;
  crossing.pits.launch.confirmed_by = "A. Muster";
  EXPECT_NEAR(rescue_pit_shape(crossing, tool, tables, path, Length{6}).top_width_m, 0.9 + 2 * pit.depth_m, 1e-6);
}

TEST(RescuePit, Nose_IsHeldWithinThePath) {
  const Tables tables = load_tables(Date{2026, 3, 2});
  Crossing crossing;
  crossing.site.ground = {{-5, 100}, {20, 100}};
  crossing.site.strata = {Stratum{}};
  crossing.site.strata[0].soil = "soft-clay";
  crossing.bore.tool.tool_class = "tool-95";
  crossing.bore.launch.elevation = Length{98};
  crossing.bore.exit.station = Length{10};
  const Tool tool = resolve_tool(crossing.bore.tool, tables);
  const BorePath path = predict_path(Ground(crossing.site, tables), tool, crossing.bore);
  const auto pit = [&](double nose) { return rescue_pit_shape(crossing, tool, tables, path, Length{nose}); };
  EXPECT_EQ(pit(99), pit(path.length_m));
  EXPECT_EQ(pit(-3), pit(0));
  // It sags: the floor lies under the lowest part of the body.
  EXPECT_NEAR(pit(99).floor_elevation_m, path.points.back().z_m - 0.0475 - 0.2, 1e-9);
}

}  // namespace
}  // namespace burrow
