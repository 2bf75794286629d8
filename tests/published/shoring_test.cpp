// 29 CFR 1926 Subpart P (read): worked examples of App. C and D as rows of the table; numbers of 651 and 652.
#include <gtest/gtest.h>

#include <algorithm>

#include "burrow/file/tables_file.h"

namespace burrow {
namespace {

constexpr double ft = 0.3048;

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

const ShoringRow& row(std::string_view id) {
  const auto it =
      std::find_if(tables().shoring.begin(), tables().shoring.end(), [&](const ShoringRow& r) { return r.id == id; });
  EXPECT_NE(it, tables().shoring.end()) << id;
  return it == tables().shoring.end() ? tables().shoring.front() : *it;
}

double duty_ft(std::string_view id) {
  const DutyRow* found = find_duty(row_of(tables(), ExcavationRules::us_1926), id);
  EXPECT_TRUE(found) << id;
  EXPECT_EQ(found->source.label, SourceLabel::read) << id;
  return found->value / ft;
}

// App. C, example 1: Type A, 13 ft deep, 5 ft wide, braces 6 ft apart: 4×4, no wale, 3×8 uprights every 6 ft.
TEST(PublishedShoring, Cfr1926_AppendixC_TypeA) {
  const ShoringRow& r = row("timber-a-13x5-6");
  EXPECT_EQ(r.type, ExcavationType::a);
  EXPECT_NEAR(r.depth.m / ft, 13, 1e-9);
  EXPECT_NEAR(r.width.m / ft, 5, 1e-9);
  EXPECT_EQ(r.brace, "4×4 in");
  EXPECT_NEAR(r.brace_spacing.m / ft, 6, 1e-9);
  EXPECT_NEAR(r.brace_rise.m / ft, 4, 1e-9);
  EXPECT_TRUE(r.wale.empty());
  EXPECT_EQ(r.upright, "3×8 in");
  EXPECT_NEAR(r.upright_spacing->m / ft, 6, 1e-9);
}

// App. C, example 2: Type B, 13 × 5 ft, braces 8 ft apart: 6×8, wale 10×10 every 5 ft, uprights 2×6 every 2 ft.
TEST(PublishedShoring, Cfr1926_AppendixC_TypeB) {
  const ShoringRow& r = row("timber-b-13x5-8");
  EXPECT_EQ(r.brace, "6×8 in");
  EXPECT_NEAR(r.brace_spacing.m / ft, 8, 1e-9);
  EXPECT_EQ(r.wale, "10×10 in");
  EXPECT_NEAR(r.wale_rise->m / ft, 5, 1e-9);
  EXPECT_EQ(r.upright, "2×6 in");
  EXPECT_NEAR(r.upright_spacing->m / ft, 2, 1e-9);
}

// App. C, examples 3 and 4: Type C, 13 × 5 ft, braces 6 ft: 8×8, wale 10×12, close sheeting; 20 × 11 ft: 8×10, 12×12.
TEST(PublishedShoring, Cfr1926_AppendixC_TypeC) {
  EXPECT_EQ(row("timber-c-13x5-6").brace, "8×8 in");
  EXPECT_EQ(row("timber-c-13x5-6").wale, "10×12 in");
  EXPECT_EQ(row("timber-c-13x5-6").upright_spacing->m, 0);
  const ShoringRow& deep = row("timber-c-20x11-6");
  EXPECT_NEAR(deep.depth.m / ft, 20, 1e-9);
  EXPECT_NEAR(deep.width.m / ft, 11, 1e-9);
  EXPECT_EQ(deep.brace, "8×10 in");
  EXPECT_EQ(deep.wale, "12×12 in");
  EXPECT_EQ(deep.upright, "3×6 in");
}

// App. D, example 1: Type A, 6 × 3 ft: 2 in cylinders, 8 ft by 4 ft; 2: Type B, 13 × 5 ft: 6.5 ft; 5: Type C, 9 × 4 ft.
TEST(PublishedShoring, Cfr1926_AppendixD_Hydraulic) {
  const ShoringRow& a = row("hydraulic-a-6x3");
  EXPECT_EQ(a.brace, "cylinder 2 in");
  EXPECT_NEAR(a.brace_spacing.m / ft, 8, 1e-9);
  EXPECT_NEAR(a.brace_rise.m / ft, 4, 1e-9);
  EXPECT_NEAR(row("hydraulic-b-13x5").brace_spacing.m / ft, 6.5, 1e-9);
  EXPECT_NEAR(row("hydraulic-b-16x9").brace_spacing.m / ft, 5.5, 1e-9);
  const ShoringRow& c = row("hydraulic-c-9x4-6.5");
  EXPECT_EQ(c.wale, "section modulus 7.0 in³");
  EXPECT_NEAR(c.brace_spacing.m / ft, 6.5, 1e-9);
  EXPECT_NEAR(row("hydraulic-c-9x4-10").brace_spacing.m / ft, 10, 1e-9);
  EXPECT_NEAR(row("hydraulic-c-18x12").brace_spacing.m / ft, 9, 1e-9);
}

TEST(PublishedShoring, WorkedExamplesAreRead_TheRestSaysThatItIsNot) {
  std::size_t read = 0, from_memory = 0;
  for (const ShoringRow& r : tables().shoring) {
    read += r.source.label == SourceLabel::read;
    from_memory += r.source.label == SourceLabel::from_memory;
    EXPECT_EQ(r.source.label == SourceLabel::read, r.source.text.english().find("Table D-") == std::string::npos)
        << r.id;
  }
  EXPECT_EQ(read, 16U);
  EXPECT_EQ(from_memory, 18U);
  EXPECT_EQ(read + from_memory, tables().shoring.size());
}

// Tables D-1.1 and D-1.2 (from memory): spacing 8, 8, 7 ft in type A and 8, 6.5, 5.5 ft in type B to 10, 15, 20 ft
// deep. The worked examples (read) lie within their rows: A 6 × 3 ft: 8 ft; B 13 × 5 ft: 6.5 ft; B 16 × 9 ft: 5.5 ft,
// oversleeve.
TEST(PublishedShoring, Cfr1926_TablesD11AndD12_AgreeWithTheExamples) {
  EXPECT_NEAR(row("hydraulic-a-10x8").brace_spacing.m, row("hydraulic-a-6x3").brace_spacing.m, 1e-9);
  EXPECT_EQ(row("hydraulic-a-10x8").brace, row("hydraulic-a-6x3").brace);
  EXPECT_NEAR(row("hydraulic-b-15x8").brace_spacing.m, row("hydraulic-b-13x5").brace_spacing.m, 1e-9);
  EXPECT_EQ(row("hydraulic-b-15x8").brace, row("hydraulic-b-13x5").brace);
  EXPECT_NEAR(row("hydraulic-b-20x12").brace_spacing.m, row("hydraulic-b-16x9").brace_spacing.m, 1e-9);
  EXPECT_EQ(row("hydraulic-b-20x12").brace, row("hydraulic-b-16x9").brace);
  EXPECT_NEAR(row("hydraulic-a-15x8").brace_spacing.m / ft, 8, 1e-3);
  EXPECT_NEAR(row("hydraulic-a-20x15").brace_spacing.m / ft, 7, 1e-3);
  EXPECT_NEAR(row("hydraulic-b-10x8").brace_spacing.m / ft, 8, 1e-3);
}

// 651(c)(2), (g)(1), (j)(2), (l); 652(a)(1), (e)(2)(i), (g)(2).
TEST(PublishedDuties, Cfr1926_Numbers) {
  const ExcavationRuleSet& rules = row_of(tables(), ExcavationRules::us_1926);
  EXPECT_NEAR(rules.protection_from.m / ft, 5, 1e-9);
  EXPECT_NEAR(rules.ladder_from.m / ft, 4, 1e-9);
  EXPECT_NEAR(rules.spoil_setback.m / ft, 2, 1e-9);
  EXPECT_NEAR(duty_ft("ladder-travel"), 25, 1e-9);
  EXPECT_NEAR(duty_ft("air-from"), 4, 1e-9);
  EXPECT_NEAR(duty_ft("guard-from"), 6, 1e-9);
  EXPECT_NEAR(duty_ft("shield-below"), 2, 1e-9);
  EXPECT_NEAR(duty_ft("support-above"), 1.5, 1e-9);
}

}  // namespace
}  // namespace burrow
