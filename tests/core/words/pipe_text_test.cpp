// Numbers of the pipe's checks for people, and which working belongs to which finding.

#include "burrow/words/pipe_text.h"

#include "burrow/words/working_text.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

PipeCheck made(const char* code, const char* unit, double value, std::optional<double> limit = {}) {
  PipeCheck c;
  c.code = code;
  c.unit = unit;
  c.value = value;
  c.limit = limit;
  if (limit) c.utilisation = value / *limit;
  return c;
}

TEST(PipeText, EachUnit_InBothSystems) {
  EXPECT_EQ(value_text(made("pipe.pull", "N", 34750), UnitSystem::metric),
            format(34750, Dimension::force, UnitSystem::metric));
  EXPECT_EQ(value_text(made("pipe.earth", "Pa", 26500), UnitSystem::us),
            format(26500, Dimension::pressure, UnitSystem::us));
  EXPECT_EQ(value_text(made("pipe.ring", "Pa", 3e5, 8e6), UnitSystem::metric),
            format(3e5, Dimension::big_pressure, UnitSystem::metric));
  EXPECT_EQ(value_text(made("pipe.deflection", "", 0.0304), UnitSystem::us), "3.04 %");
  EXPECT_EQ(value_text(made("pipe.hole", "", 1.171), UnitSystem::metric), "1.17");
  EXPECT_EQ(value_text(made("pipe.bend", "m", 3349.28, 1.575), UnitSystem::us), "10988 ft");
  EXPECT_EQ(limit_text(made("pipe.bend", "m", 3349.28, 1.575), UnitSystem::metric), "1.57 m at most");
  EXPECT_EQ(value_text(made("pipe.stretch", "m", 0.012), UnitSystem::metric),
            format(0.012, Dimension::small_length, UnitSystem::metric));
}

TEST(PipeText, LimitAndUse) {
  PipeCheck c = made("pipe.hole", "", 1.17, 1.15);
  c.at_least = true;
  EXPECT_EQ(limit_text(c, UnitSystem::metric), "1.15 at least");
  EXPECT_EQ(limit_text(made("pipe.deflection", "", 0.01, 0.05), UnitSystem::metric), "5.00 % at most");
  EXPECT_EQ(utilisation_text(made("pipe.pull", "N", 50, 100)), "50 %");
  EXPECT_EQ(utilisation_text(made("pipe.pull", "N", 0.1, 100)), "< 1 %");
  EXPECT_EQ(utilisation_text(made("pipe.pull", "N", 1e6, 100)), "> 999 %");
  EXPECT_EQ(utilisation_text(made("pipe.earth", "Pa", 1)), "");
  PipeCheck left_out;
  EXPECT_EQ(value_text(left_out, UnitSystem::metric), "");
  EXPECT_EQ(limit_text(left_out, UnitSystem::metric), "");
}

// A finding that shares its step with another shows that step.
TEST(WorkingOf, FindingsOfThePipe) {
  Crossing crossing = clean_crossing();
  crossing.pipe->outside_diameter = Length{0.04};
  crossing.site.water = LevelLine{{-8, 99.5}, {20, 99.5}};
  crossing.pipe->operating_pressure.set(Pressure{8e6 / 5 * 0.95});
  const Assessment answer = judged(crossing);
  const auto code_of = [&](const char* code) {
    const Finding* finding = find(answer, code);
    const Working* step = finding ? working_of(answer, *finding) : nullptr;
    return step ? step->code : std::string_view("none");
  };
  EXPECT_EQ(code_of("pipe.hole-wide"), "pipe.hole");
  EXPECT_EQ(code_of("pipe.floats"), "pipe.float");
  EXPECT_EQ(code_of("pipe.near"), "pipe.pressure");
  Finding unknown;
  unknown.code = "missing.water";
  EXPECT_EQ(working_of(answer, unknown), nullptr);
}

// The working as text holds what an engineer asks for: formula, each number with its unit, result, limit, both sources.
TEST(WorkingOf, EveryJudgedCheck_HasAWholeText) {
  const Assessment answer = judged(clean_crossing());
  for (const PipeCheck& c : answer.pipe_checks) {
    if (!c.value) continue;
    const Working* step = working(answer, c.code, "pipe");
    ASSERT_TRUE(step) << c.code;
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
      const std::string text = working_text(*step, units);
      EXPECT_NE(text.find(step->formula), std::string::npos);
      for (const WorkingInput& input : step->inputs)
        EXPECT_NE(text.find("  " + std::string(input.symbol) + " = "), std::string::npos) << c.code << input.symbol;
      EXPECT_EQ(text.find("\nlimit ") != std::string::npos, c.limit.has_value()) << c.code;
      EXPECT_NE(text.find("from: "), std::string::npos);
    }
  }
}

TEST(WorkingText, Number_UnitsOfThePipe) {
  EXPECT_EQ(working_number(4.4482216152605, "N", UnitSystem::us), "1 lbf");
  EXPECT_EQ(working_number(14.593902937, "N/m", UnitSystem::us), "1 lb/ft");
  EXPECT_EQ(working_number(6.4516e-4, "m²", UnitSystem::us), "1 in²");
  EXPECT_EQ(working_number(6.4516e-4, "m²", UnitSystem::metric), "6.452 cm²");
  EXPECT_EQ(working_number(2e8, "Pa", UnitSystem::metric), "200 MPa");
  EXPECT_EQ(working_number(2e8, "Pa", UnitSystem::us), "29.01 ksi");
  EXPECT_EQ(working_number(10, "K", UnitSystem::us, "ΔT"), "18 °F");
  EXPECT_EQ(working_number(1.8e-4, "1/K", UnitSystem::us), "0.0001 1/°F");
  EXPECT_EQ(working_number(0.3048, "1/m", UnitSystem::us), "0.0929 1/ft");
}

}  // namespace
}  // namespace burrow::test
