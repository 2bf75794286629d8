// Tool, air and limits of a crew, taken from crossing to crossing.

#include "burrow/crossing/crew_defaults.h"

#include <gtest/gtest.h>

#include "burrow/crossing/blank.h"

namespace burrow {
namespace {

Crossing crew() {
  Crossing c = blank_crossing();
  c.name = "A street";
  c.site.ground = {{0, 5}, {30, 6}};
  c.bore.exit.station = Length{25};
  c.bore.tool.tool_class = "tool-95";
  c.air.compressor.free_air = VolumeFlow{0.05};
  c.air.line.resize(2);
  c.air.altitude.set(Length{900});
  c.air.mark_spacing.set(Length{1});
  c.limits["separation_gas_m"] = {0.8, "own handbook", {}};
  return c;
}

// Picked for one job: the limits of the crew stay where they are.
TEST(CrewDefaults, OwnTool_TakesNoLimits) {
  Crossing job = blank_crossing();
  job.name = "a job";
  const Crossing with = with_own_tool(job, own_start_of(crew()));
  EXPECT_EQ(with.bore.tool.tool_class, "tool-95");
  EXPECT_EQ(with.air.compressor.free_air, VolumeFlow{0.05});
  EXPECT_TRUE(with.limits.empty());
  EXPECT_EQ(with.name, "a job");
  EXPECT_EQ(with.bore.exit, job.bore.exit);
}

TEST(CrewDefaults, ToolAirAndLimits_NothingOfThePlace) {
  const Crossing own = own_start_of(crew());
  EXPECT_EQ(own.site, blank_crossing().site);
  EXPECT_EQ(own.bore.exit, blank_crossing().bore.exit);
  Crossing next = blank_crossing();
  next.limits["separation_gas_m"] = {1.0, "this owner", {}};
  next.limits["pit_depth_m"] = {4.0, {}, {}};
  next.air.altitude.set(Length{10});
  next = with_own_start(next, own);
  EXPECT_EQ(next.bore.tool.tool_class, "tool-95");
  EXPECT_EQ(next.air.compressor.free_air, VolumeFlow{0.05});
  EXPECT_EQ(next.air.line.size(), 2U);
  EXPECT_EQ(next.air.mark_spacing->m, 1);
  EXPECT_EQ(next.air.altitude->m, 10) << "the place's own";
  EXPECT_EQ(next.limits.at("separation_gas_m").value, 1.0) << "what was typed for it stays";
  EXPECT_EQ(next.limits.size(), 2U);
  EXPECT_EQ(next.site, blank_crossing().site);
}

// Twice is once.
TEST(CrewDefaults, TakenTwice_TheSame) {
  const Crossing own = own_start_of(crew());
  EXPECT_EQ(own_start_of(own), own);
  EXPECT_EQ(with_own_start(with_own_start(blank_crossing(), own), own), with_own_start(blank_crossing(), own));
}

}  // namespace
}  // namespace burrow
