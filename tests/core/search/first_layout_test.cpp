// A crossing from six answers.

#include "burrow/search/first_layout.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/tables_file.h"

namespace burrow::test {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

FirstAnswers all_known() {
  FirstAnswers a;
  a.name = "A lane";
  a.rule = "road-duct-cover-36in";
  a.permission = Permission::allowed;
  a.known = StratumEvidence::seen;
  a.water_depth = Length{3};
  a.searched = true;
  a.permit = "permit 4";
  a.reference = "17";
  a.search_date = a.valid_from = "2026-02-24";
  a.valid_to = "2026-03-24";
  a.marks_visible = true;
  a.laterals = Laterals::none_here;
  a.lines = {{UtilityKind::gas, Length{4}, Length{0.8}, Length{0.11}, LocatedHow::traced}};
  return a;
}

std::size_t missing(const Crossing& c) {
  const Assessment answer = assess(c, tables());
  return static_cast<std::size_t>(
      std::count_if(answer.findings.begin(), answer.findings.end(), [](const Finding& f) { return f.missing; }));
}

TEST(FirstLayout, AllAnswered_NothingIsMissing) {
  const auto made = first_layout(all_known(), tables());
  ASSERT_TRUE(made) << made.error().english();
  // What the gas line is made of is asked on its page: a brittle one would not bear the ground to move so, and a
  // plastic one would have to say what its tracing followed.
  EXPECT_EQ(missing(*made), 2U);
  Crossing reported = *made;
  reported.site.utilities[0].material = "steel";
  EXPECT_EQ(missing(reported), 0U);
  EXPECT_NE(assess(reported, tables()).verdict, Verdict::incomplete);
  // What it makes is a file like any other.
  const auto again = read_crossing(write_crossing(*made), tables());
  ASSERT_TRUE(again) << again.error().english();
  EXPECT_EQ(*again, *made);
}

TEST(FirstLayout, NothingAnswered_SaysWhatIsMissing) {
  const auto made = first_layout({}, tables());
  ASSERT_TRUE(made);
  EXPECT_EQ(assess(*made, tables()).verdict, Verdict::incomplete);
  EXPECT_GE(missing(*made), 4U);  // water, search, rule and permission of the road
}

// By hand: 1 in 30 up over 12 m, the line at 4 m lies under ground of 100 + 0.4·4/12; its centre 0.8 m and half of
// 110 mm below.
TEST(FirstLayout, Places_ByHand) {
  FirstAnswers a = all_known();
  a.rise = Length{0.4};
  a.crossed_width = Length{5};
  a.depth = Length{1.5};
  const auto made = first_layout(a, tables());
  ASSERT_TRUE(made);
  const Crossing& c = *made;
  EXPECT_DOUBLE_EQ(elevation_at(c.site.ground, 12), 100.4);
  EXPECT_DOUBLE_EQ(elevation_at(*c.site.water, 6), 100.2 - 3);
  EXPECT_DOUBLE_EQ(c.site.surface[0].from->m, 3.5);
  EXPECT_DOUBLE_EQ(c.site.surface[0].to->m, 8.5);
  EXPECT_NEAR(*c.site.utilities[0].path[0].z_m, 100 + 0.4 * 4 / 12 - 0.8 - 0.055, 1e-12);
  EXPECT_DOUBLE_EQ(c.bore.launch.elevation.m, 98.5);
  EXPECT_DOUBLE_EQ(c.bore.exit.station.m, 12);
}

// 36 in of cover and half of the tool are more than ten of its diameters here; without a rule ten diameters hold, and
// 1.2 m at least.
TEST(FirstLayout, Depth_OwnersCoverOrTenDiameters) {
  FirstAnswers a = all_known();
  a.tool = "tool-65";
  a.rule = "road-closed-end-72in";
  EXPECT_NEAR(100 - first_layout(a, tables())->bore.launch.elevation.m, 72 * 0.0254 + 0.0325, 1e-12);
  a.rule.clear();
  EXPECT_NEAR(100 - first_layout(a, tables())->bore.launch.elevation.m, 1.2, 1e-12);
  a.tool = "tool-130";
  if (find_tool(tables(), a.tool)) {
    EXPECT_NEAR(100 - first_layout(a, tables())->bore.launch.elevation.m, 10.5 * 0.13, 1e-12);
  }
}

// ISTT guideline: the hole 15 to 25 % over the pipe. 63 mm want 72.5 mm: of 45, 55, 65, 75 … the 75.
TEST(FirstLayout, Tool_IsttFifteenPercentOverThePipe) {
  EXPECT_EQ(tool_for(tables(), Length{0.063}), "tool-75");
  EXPECT_EQ(tool_for(tables(), Length{0.032}), "tool-45");
  EXPECT_EQ(tool_for(tables(), std::nullopt), tables().tools.front().id);
  const auto largest = std::max_element(tables().tools.begin(), tables().tools.end(),
                                        [](const ToolClass& x, const ToolClass& y) { return x.diameter < y.diameter; });
  EXPECT_EQ(tool_for(tables(), Length{0.4}), largest->id);
}

TEST(FirstLayout, NoLines_FoundOrNotAsked) {
  FirstAnswers a = all_known();
  a.lines.clear();
  EXPECT_TRUE(first_layout(a, tables())->site.utility_search.none_found.value);
  EXPECT_EQ(missing(*first_layout(a, tables())), 0U);
  a.searched = false;
  EXPECT_FALSE(first_layout(a, tables())->site.utility_search.none_found.value);
  EXPECT_EQ(missing(*first_layout(a, tables())), 1U);
  a.searched = true;
  a.lines = {{UtilityKind::power, Length{6}, std::nullopt, std::nullopt, LocatedHow::records}};
  EXPECT_FALSE(first_layout(a, tables())->site.utilities[0].path[0].z_m);
  EXPECT_GE(missing(*first_layout(a, tables())), 1U);
}

TEST(FirstLayout, Impossible_RefusedByTheQuestion) {
  const double nan = std::nan("");
  const auto refused = [&](const char* place, auto&& change) {
    FirstAnswers a = all_known();
    change(a);
    const auto made = first_layout(a, tables());
    ASSERT_FALSE(made) << place;
    EXPECT_EQ(made.error().place, place);
    EXPECT_FALSE(made.error().expected.empty());
  };
  for (const double bad : {0.0, -3.0, nan, 1e9}) {
    refused("length of the bore", [&](FirstAnswers& a) { a.length = Length{bad}; });
    refused("width of what is crossed", [&](FirstAnswers& a) { a.crossed_width = Length{bad}; });
    refused("depth of the axis", [&](FirstAnswers& a) { a.depth = Length{bad}; });
    refused("depth of a line", [&](FirstAnswers& a) { a.lines[0].depth = Length{bad}; });
    refused("diameter of a line", [&](FirstAnswers& a) { a.lines[0].outside_diameter = Length{bad}; });
    refused("diameter of the pipe", [&](FirstAnswers& a) { a.pipe_diameter = Length{bad}; });
  }
  refused("width of what is crossed", [](FirstAnswers& a) { a.crossed_width = Length{12}; });
  refused("depth of the water", [&](FirstAnswers& a) { a.water_depth = Length{nan}; });
  refused("rise of the ground", [](FirstAnswers& a) { a.rise = Length{13}; });
  refused("where a line is crossed", [&](FirstAnswers& a) { a.lines[0].along = Length{nan}; });
  refused("ground", [](FirstAnswers& a) { a.soil = "custard"; });
  refused("rule of the owner", [](FirstAnswers& a) { a.rule = "none such"; });
  refused("pipe", [](FirstAnswers& a) { a.material = "wood"; });
  refused("tool", [](FirstAnswers& a) { a.tool = "spoon"; });
}

}  // namespace
}  // namespace burrow::test
