// Limits that somebody typed: a looser one counts only with a reason and is named; none beyond sense counts.

#include <gtest/gtest.h>

#include <cmath>

#include <filesystem>

#include "burrow/check/limits.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/words/headline.h"
#include "burrow/words/working_text.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

double in_force(const Crossing& crossing, const char* id) {
  return limit_of(crossing, tables(), id).value;
}

TEST(Limits, LoosenedWithoutAReason_DoesNotCountAndIsACaution) {
  for (const char* why : {"", "  ", "-"}) {
    Crossing crossing = clean_crossing();
    crossing.limits["cover_diameters"] = {8, why, {}};
    EXPECT_EQ(in_force(crossing, "cover_diameters"), 10);
    const Assessment answer = judged(crossing);
    const Finding* finding = find(answer, "limit.no-reason");
    ASSERT_TRUE(finding) << listed(answer);
    EXPECT_EQ(finding->severity, Severity::caution);
    EXPECT_EQ(answer.verdict, Verdict::caution) << listed(answer);
    EXPECT_TRUE(answer.loosened.empty());
    EXPECT_EQ(finding_text(*finding, UnitSystem::metric),
              "limit cover in tool diameters loosened to 8 without a reason: 10 stays in force");
  }
}

TEST(Limits, LoosenedWithAReason_CountsAndIsNamedInTheHeadline) {
  Crossing crossing = clean_crossing();
  crossing.site.surface = {lane(2.5, 3.5)};
  crossing.limits["cover_diameters"] = {8, "permit 12, line 4", {}};
  crossing.limits["contact_caution"] = {0.002, "owner agrees", {}};
  EXPECT_EQ(in_force(crossing, "cover_diameters"), 8);
  const Assessment answer = judged(crossing);
  EXPECT_EQ(answer.verdict, Verdict::within_limits) << listed(answer);
  ASSERT_EQ(answer.loosened.size(), 2u);
  EXPECT_EQ(answer.loosened[1].id, "cover_diameters");
  EXPECT_EQ(answer.loosened[1].table_value, 10);
  EXPECT_EQ(find(answer, "limit.loosened")->severity, Severity::note);
  EXPECT_EQ(headline(answer, UnitSystem::metric),
            "Layout within limits: not a permit to bore. Limits loosened: chance of contact, caution 0.002 instead of "
            "0.001 (owner agrees); cover in tool diameters 8 instead of 10 (permit 12, line 4).");
  // Small lengths in mm and inches: 10 mm, not 0.01 m.
  EXPECT_EQ(limit_number(0.01, "m", UnitSystem::metric), format(0.01, Dimension::small_length, UnitSystem::metric));
  EXPECT_EQ(limit_number(0.01, "m", UnitSystem::us), format(0.01, Dimension::small_length, UnitSystem::us));
  EXPECT_EQ(limit_number(32, "m", UnitSystem::metric), working_number(32, "m", UnitSystem::metric));
  const std::string json = write_assessment(crossing, answer, "a.crossing", {});
  EXPECT_NE(json.find(R"("loosened":[{"id":"contact_caution")"), std::string::npos) << json.substr(0, 400);
}

// The sense of each row tells which way is loose; the stricter way never wants a reason.
TEST(Limits, EachRow_LooserAndStricterByItsSense) {
  for (const LimitRow& row : tables().limits) {
    const double less = row.value * 0.99, more = row.value * 1.01;
    const double strict = row.at_least ? more : less, loose = row.at_least ? less : more;
    Crossing crossing = clean_crossing();
    crossing.limits[row.id] = {strict, "", {}};
    EXPECT_EQ(in_force(crossing, row.id.c_str()), strict) << row.id;
    crossing.limits[row.id] = {loose, "", {}};
    EXPECT_EQ(in_force(crossing, row.id.c_str()), row.value) << row.id;
    crossing.limits[row.id] = {loose, "agreed", {}};
    // A chance that the table has at one half already may not be loosened.
    const bool even = is_chance(row) && row.value == 0.5;
    EXPECT_EQ(in_force(crossing, row.id.c_str()), even ? row.value : loose) << row.id;
    crossing.limits[row.id] = {row.value, "", {}};
    EXPECT_EQ(judge_typed(row, crossing.limits[row.id]), TypedLimit::counts) << row.id;
  }
}

TEST(Limits, ChanceAboveOneHalf_IsAStopThatNamesIt) {
  for (const char* id :
       {"contact_caution", "contact_stop", "encroachment_caution", "encroachment_stop", "stuck_under_caution",
        "daylight_caution", "daylight_stop", "cover_low_chance", "refusal_caution", "refusal_stop"}) {
    Crossing crossing = clean_crossing();
    crossing.limits[id] = {0.51, "agreed", {}};
    const Assessment answer = judged(crossing);
    EXPECT_EQ(answer.verdict, Verdict::stop) << id;
    const Finding* finding = find(answer, "limit.impossible");
    ASSERT_TRUE(finding) << id;
    EXPECT_EQ(finding->name, find_limit(tables(), id)->name);
    EXPECT_EQ(in_force(crossing, id), find_limit(tables(), id)->value) << id;
    crossing.limits[id] = {0.5, "agreed", {}};
    EXPECT_FALSE(find(judged(crossing), "limit.impossible")) << id;
  }
  Crossing arrival = clean_crossing();  // a chance of missing the pit above one half
  arrival.limits["exit_window_chance"] = {0.49, "agreed", {}};
  EXPECT_TRUE(find(judged(arrival), "limit.impossible"));
}

// None of the table's chances is left out: a new row is asked too.
TEST(Limits, ChanceAboveOneHalf_EveryRowOfTheTable) {
  int chances = 0;
  for (const LimitRow& row : tables().limits) {
    const bool unit = row.unit.empty() && row.value <= 1;
    EXPECT_TRUE(unit || !is_chance(row)) << row.id;
    if (!is_chance(row) || row.id == "day_out_of_reach") continue;
    ++chances;
    LimitOverride typed;
    typed.why = "agreed";
    typed.value = row.at_least ? 0.49 : 0.51;
    EXPECT_EQ(judge_typed(row, typed), TypedLimit::impossible) << row.id;
    typed.value = std::nan("");
    EXPECT_EQ(judge_typed(row, typed), TypedLimit::impossible) << row.id;
  }
  EXPECT_GE(chances, 13);
}

TEST(Limits, GapBelowZero_IsAStopThatNamesIt) {
  for (const char* id : {"separation_exposed_m", "separation_traced_m", "separation_gas_m", "separation_power_m",
                         "separation_steam_m"}) {
    Crossing crossing = clean_crossing();
    crossing.limits[id] = {-0.001, "agreed", {}};
    const Assessment answer = judged(crossing);
    EXPECT_EQ(answer.verdict, Verdict::stop) << id;
    ASSERT_TRUE(find(answer, "limit.impossible")) << id;
    EXPECT_EQ(in_force(crossing, id), find_limit(tables(), id)->value) << id;
    // In a file it is read, so that the stop can name it.
    const Result<Crossing> again = read_crossing(write_crossing(crossing), tables());
    ASSERT_TRUE(again) << again.error().english();
    EXPECT_EQ(judged(*again).verdict, Verdict::stop) << id;
  }
}

TEST(Limits, CoverTypedLooserThanTheRule_WantsAPermit) {
  Crossing crossing = clean_crossing();
  const double rule = find_rule(tables(), *crossing.site.surface.front().rule)->cover->m;
  crossing.site.surface.front().required_cover = Length{rule - 0.3};
  crossing.site.surface.front().permit = "";
  const Assessment open = judged(crossing);
  EXPECT_TRUE(find(open, "limit.no-reason", "f1")) << listed(open);
  EXPECT_EQ(*working(open, "surface.cover", "f1")->limit, rule) << "the rule stays in force";
  crossing.site.surface.front().permit = "12/2026";
  const Assessment allowed = judged(crossing);
  EXPECT_FALSE(find(allowed, "limit.no-reason"));
  EXPECT_EQ(*working(allowed, "surface.cover", "f1")->limit, rule - 0.3);
  ASSERT_EQ(allowed.loosened.size(), 1u);
  EXPECT_NE(headline(allowed, UnitSystem::metric).find("cover of Alder Lane"), std::string::npos);
  EXPECT_NE(headline(allowed, UnitSystem::metric).find("permit 12/2026"), std::string::npos);
  crossing.site.surface.front().permit = "";
  crossing.site.surface.front().required_cover = Length{rule + 0.1};
  EXPECT_FALSE(find(judged(crossing), "limit.no-reason")) << "stricter";
}

TEST(Limits, HeaveTypedLooserThanTheTable_WantsAPermit) {
  Crossing crossing = clean_crossing();
  crossing.site.surface.front().heave_limit = Length{0.05};
  crossing.site.surface.front().permit = "";
  const Assessment open = judged(crossing);
  EXPECT_TRUE(find(open, "limit.no-reason", "f1")) << listed(open);
  EXPECT_EQ(*working(open, "surface.heave", "f1")->limit, 0.010) << "the table stays in force";
  crossing.site.surface.front().permit = "12/2026";
  EXPECT_EQ(judged(crossing).loosened.size(), 1u);
  EXPECT_EQ(*working(judged(crossing), "surface.heave", "f1")->limit, 0.05);
  crossing.site.surface.front().permit = "";
  crossing.site.surface.front().heave_limit = Length{0.004};
  EXPECT_FALSE(find(judged(crossing), "limit.no-reason")) << "stricter than the caution of the table";
}

TEST(Limits, GapTypedForAUtility_OnlyRaises) {
  Crossing crossing = clean_crossing();
  const double table = *judged(crossing).utilities.front().required_m;
  crossing.site.utilities.front().required_clearance = Length{0.01};
  EXPECT_EQ(*judged(crossing).utilities.front().required_m, table);
  crossing.site.utilities.front().required_clearance = Length{table + 0.2};
  EXPECT_GE(*judged(crossing).utilities.front().required_m, table + 0.2 - 1e-12);
}

/// No note carries a number beyond the limit beside it.
void expect_no_note_beyond_its_limit(const Crossing& crossing, const std::string& what) {
  for (const Finding& f : judged(crossing).findings) {
    if (f.severity != Severity::note || !f.measured || !f.limit) continue;
    EXPECT_FALSE(f.at_least ? *f.measured < *f.limit : *f.measured > *f.limit) << what << " " << f.code;
  }
}

TEST(Findings, Property_NumberOverItsLimitIsAtLeastACaution) {
  int samples = 0;
  for (const auto& entry : std::filesystem::directory_iterator(BURROW_SOURCE_DIR "/samples")) {
    if (entry.path().extension() != ".crossing") continue;
    const auto text = read_text_file(entry.path().string());
    ASSERT_TRUE(text);
    const Result<Crossing> crossing = read_crossing(*text, tables());
    ASSERT_TRUE(crossing) << entry.path() << crossing.error().english();
    expect_no_note_beyond_its_limit(*crossing, entry.path().filename());
    ++samples;
  }
  EXPECT_GE(samples, 5);
  const char* const materials[] = {"", "steel", "cast iron", "pe100", "clay", "armoured"};
  const char* const soils[] = {"soft-clay", "firm-clay", "loose-sand", "dense-sand"};
  const char* const tools[] = {"tool-45", "tool-65", "tool-95", "tool-130"};
  for (unsigned seed = 0; seed < 96; ++seed) {
    Crossing c = clean_crossing();
    give_air(c);
    const auto pick = [&](unsigned of, unsigned turn) { return (seed * 2654435761U >> (3 + turn)) % of; };
    c.site.strata.front().soil = soils[pick(4, 1)];
    c.bore.tool.tool_class = tools[pick(4, 4)];
    c.bore.launch.elevation = Length{98 + 0.15 * pick(9, 7)};
    c.site.utilities.front() = water_main(1 + pick(6, 9), 97 + 0.1 * pick(25, 11));
    c.site.utilities.front().material = materials[pick(6, 13)];
    c.site.utilities.front().outside_diameter = Length{0.05 + 0.1 * pick(5, 15)};
    c.air.line.front().length = Length{10.0 + 60 * pick(5, 17)};
    c.pipe->outside_diameter = Length{0.025 + 0.01 * pick(6, 19)};
    expect_no_note_beyond_its_limit(c, "seed " + std::to_string(seed));
  }
}

}  // namespace
}  // namespace burrow::test
