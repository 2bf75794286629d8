// Muting with a reason: what goes into the file, and that it is never passed over in silence.

#include "burrow/check/mute.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <tuple>

#include "burrow/file/crossing_file.h"
#include "burrow/words/headline.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing sloped_exit() {
  Crossing crossing = clean_crossing();
  crossing.site.surface = {lane(2.5, 3.5)};
  crossing.pits.exit.sides.bore.kind.set(SideKind::sloped);
  return crossing;
}

Finding first_caution(const Crossing& crossing) {
  for (const Finding& f : judged(crossing).findings)
    if (f.severity == Severity::caution) return f;
  ADD_FAILURE() << "no caution";
  return {};
}

TEST(Mute, WithReason_ComesBackFromTheFileAndLowersTheVerdict) {
  Crossing crossing = sloped_exit();
  const Finding finding = first_caution(crossing);
  crossing.muted = *with_mute(crossing, finding, {"shield follows", "A. M.", "2026-02-14"});
  ASSERT_EQ(crossing.muted.size(), 1u);
  EXPECT_EQ(crossing.muted.front().code, finding.code);
  EXPECT_EQ(crossing.muted.front().measured, finding.measured);
  const Result<Crossing> again = read_crossing(write_crossing(crossing), tables());
  ASSERT_TRUE(again) << again.error().english();
  EXPECT_EQ(again->muted, crossing.muted);
  EXPECT_EQ(judged(*again).verdict, Verdict::within_limits);
}

TEST(Mute, EmptyReason_IsRefusedAndSaysWhatToDo) {
  const Crossing crossing = sloped_exit();
  const Finding finding = first_caution(crossing);
  for (const char* nothing : {"", "   ", "\t", "...", "-", "?!"}) {
    const auto muted = with_mute(crossing, finding, {nothing, "A", "2026-02-14"});
    ASSERT_FALSE(muted) << nothing;
    EXPECT_EQ(muted.error().place, "reason");
    EXPECT_NE(muted.error().expected.english().find("why"), std::string::npos);
    const auto nameless = with_mute(crossing, finding, {"cut", nothing, "2026-02-14"});
    ASSERT_FALSE(nameless) << nothing;
    EXPECT_EQ(nameless.error().place, "name");
  }
  EXPECT_EQ(with_mute(crossing, finding, {"cut", "A", "2026-02-30"}).error().place, "date");
  EXPECT_TRUE(with_mute(crossing, finding, {"gekappt", "A", "2026-02-14"}));
  EXPECT_TRUE(with_mute(crossing, finding, {"ü", "ü", "2026-02-14"})) << "letters of every alphabet";
}

TEST(Mute, Again_ReplacesTheReasonAndKeepsForeignKeys) {
  Crossing crossing = sloped_exit();
  const Finding finding = first_caution(crossing);
  crossing.muted = *with_mute(crossing, finding, {"one", "A", "2026-02-14"});
  crossing.muted.front().extra = R"({"foreign":1})";
  crossing.muted = *with_mute(crossing, finding, {"two", "B", "2026-02-15"});
  ASSERT_EQ(crossing.muted.size(), 1u);
  EXPECT_EQ(crossing.muted.front().reason, "two");
  EXPECT_EQ(crossing.muted.front().extra, R"({"foreign":1})");
  EXPECT_TRUE(without_mute(crossing, finding).empty());
  ASSERT_TRUE(mute_of(crossing, finding));
  EXPECT_EQ(mute_of(crossing, finding)->reason, "two");
}

TEST(Mute, Unmuting_LeavesOthersAlone) {
  Crossing crossing = sloped_exit();
  const Finding finding = first_caution(crossing);
  Finding other = finding;
  other.subject = "somewhere else";
  crossing.muted = *with_mute(crossing, other, {"other", "A", "2026-02-14"});
  crossing.muted = *with_mute(crossing, finding, {"this", "A", "2026-02-14"});
  const std::vector<Mute> left = without_mute(crossing, finding);
  ASSERT_EQ(left.size(), 1u);
  EXPECT_EQ(left.front().reason, "other");
}

int cautions(const Assessment& answer) {
  return static_cast<int>(std::count_if(answer.findings.begin(), answer.findings.end(), [](const Finding& f) {
    return f.severity == Severity::caution && !f.missing && counts_in_verdict(f);
  }));
}

std::string void_note(const Assessment& answer) {
  const Finding* note = find(answer, "file.mute-void");
  return note ? finding_text(*note, UnitSystem::metric) : std::string();
}

// Judged on 2 March 2026.
TEST(Mute, WithoutReasonNameOrDate_IsVoidAndListed) {
  const Crossing open = sloped_exit();
  const Finding finding = first_caution(open);
  const Crossing good = with_muted(open, finding.code, finding.subject, "shield follows");
  ASSERT_EQ(judged(good).verdict, Verdict::within_limits);
  EXPECT_EQ(void_note(judged(good)), "");
  struct Bad {
    void (*make)(Mute&);
    const char* why;
  };
  const Bad bad[] = {
      {[](Mute& m) { m.reason = " - "; }, "no reason"},   {[](Mute& m) { m.by = ""; }, "no name"},
      {[](Mute& m) { m.by = "?"; }, "no name"},           {[](Mute& m) { m.date = ""; }, "no date"},
      {[](Mute& m) { m.date = "last week"; }, "no date"}, {[](Mute& m) { m.date = "2026-02-30"; }, "no date"},
      {[](Mute& m) { m.date = "2026-03-03"; }, "no date"}};  // tomorrow
  for (const Bad& one : bad) {
    Crossing crossing = good;
    one.make(crossing.muted.front());
    const Assessment answer = judged(crossing);
    EXPECT_EQ(answer.verdict, Verdict::caution) << one.why;
    const Finding* note = find(answer, "file.mute-void", finding.subject);
    ASSERT_TRUE(note) << one.why << listed(answer);
    EXPECT_EQ(note->severity, Severity::note);
    EXPECT_NE(void_note(answer).find(finding.code), std::string::npos) << void_note(answer);
    EXPECT_NE(void_note(answer).find(one.why), std::string::npos) << void_note(answer);
  }
  Tables no_day = tables();
  no_day.judged_on.reset();
  EXPECT_EQ(assess(good, no_day).verdict, Verdict::incomplete);  // nobody said which day it is
  EXPECT_TRUE(find(assess(good, no_day), "file.mute-void", finding.subject));
}

TEST(Mute, WithoutAMeasuredValue_LapsesWithLayoutLocationAndTool) {
  Crossing base = clean_crossing();
  base.site.utility_search.laterals = Laterals::entered;
  base.site.utilities.front() = water_main(-1.0, 98.9);  // inside the launch pit
  base.site.utilities.front().material = "pe100";
  const Crossing muted = with_muted(base, "pit.utility", "u1", "slung from a beam");
  ASSERT_TRUE(find(judged(muted), "pit.utility", "u1")->muted);
  const auto lapses = [&](const char* what, auto change) {
    Crossing changed = muted;
    change(changed);
    const Assessment answer = judged(changed);
    const Finding* finding = find(answer, "pit.utility", "u1");
    ASSERT_TRUE(finding) << what << listed(answer);
    EXPECT_FALSE(finding->muted) << what;
    EXPECT_NE(void_note(answer).find("has changed"), std::string::npos) << what << void_note(answer);
  };
  lapses("layout", [](Crossing& c) { c.bore.launch.elevation.m -= 0.1; });
  lapses("pit", [](Crossing& c) { c.pits.launch.floor_width = Length{1.1}; });
  lapses("location", [](Crossing& c) { c.site.utilities.front().path[0].x_m += 0.1; });
  lapses("how located", [](Crossing& c) { c.site.utilities.front().located.how.set(LocatedHow::records); });
  lapses("tool", [](Crossing& c) { c.bore.tool.tool_class = "tool-75"; });
  Crossing renamed = muted;
  renamed.site.utilities.front().name = "old main";
  EXPECT_TRUE(find(judged(renamed), "pit.utility", "u1")->muted);
  Crossing without = muted;  // as a file of an older program has it
  without.muted.front().fingerprint.clear();
  EXPECT_FALSE(find(judged(without), "pit.utility", "u1")->muted);
  EXPECT_NE(void_note(judged(without)).find("not kept"), std::string::npos);
}

TEST(Mute, OfNothing_IsListed) {
  Crossing crossing = clean_crossing();
  crossing.muted = {mute("utility.expose", "u1", "seen open")};
  EXPECT_NE(void_note(judged(crossing)).find("no such finding"), std::string::npos);
}

// A measured value that was not kept with the mute cannot be seen to have got worse.
TEST(Mute, OfAMeasuredValueThatWasNotKept_IsVoid) {
  Crossing crossing = clean_crossing();
  crossing.pipe->outside_diameter = Length{0.063};
  crossing = with_muted(crossing, "pipe.hole", "pipe", "tried before");
  ASSERT_TRUE(find(judged(crossing), "pipe.hole")->muted);
  crossing.muted.front().measured.reset();
  crossing.muted.front().fingerprint.clear();
  EXPECT_FALSE(find(judged(crossing), "pipe.hole")->muted);
}

TEST(Mute, WhatMayHurt_CountsThoughMuted) {
  Crossing crossing = clean_crossing();
  crossing.site.utilities.front() = water_main(-1.0, 98.9);
  crossing.site.utilities.front().status.set(UtilityStatus::proposed);  // else a stop
  crossing.site.utilities.front().material = "pe100";
  const Assessment open = judged(crossing);
  const Assessment muted = judged(with_muted(crossing, "pit.utility", "u1", "slung from a beam"));
  ASSERT_TRUE(find(muted, "pit.utility", "u1")->muted);
  EXPECT_EQ(muted.verdict, open.verdict);
  EXPECT_EQ(cautions(muted), cautions(open));
  EXPECT_NE(headline(muted, UnitSystem::metric).find("slung from a beam"), std::string::npos);
}

// Whose utility it is decides: a movement of a water main under pressure may hurt, of a telephone cable not.
TEST(Mute, UtilityThatMayHurt_CountsWhateverTheFinding) {
  for (const auto& [kind, verdict] :
       {std::pair{UtilityKind::water, Verdict::caution}, std::pair{UtilityKind::gas, Verdict::caution},
        std::pair{UtilityKind::unknown, Verdict::caution}, std::pair{UtilityKind::telecom, Verdict::within_limits}}) {
    Crossing crossing = sloped_exit();
    crossing.pits.exit.sides.bore.kind.set(SideKind::shored);
    crossing.site.utilities.front().kind = kind;
    crossing.site.utilities.front().material = "pe100";
    crossing.limits["movement_utility_m"] = {1e-6, "strict", {}};
    ASSERT_TRUE(find(judged(crossing), "utility.movement", "u1"));
    const Assessment answer = judged(with_muted(crossing, "utility.movement", "u1", "its owner knows"));
    EXPECT_TRUE(find(answer, "utility.movement", "u1")->muted);
    EXPECT_EQ(answer.verdict, verdict) << word_of(kind) << listed(answer);
  }
}

// Each caution muted in turn: it alone goes from the count, or none does where somebody may come to harm.
TEST(Mute, Property_RemovesOnlyItsOwnCaution) {
  Crossing crossing = sloped_exit();
  crossing.pits.launch.sides.bore.kind.set(SideKind::sloped);
  crossing.site.surface = {lane(-3, 10)};  // both pits are cut into it
  crossing.site.strata.front().known.set(StratumEvidence::guess);
  crossing.site.utilities.push_back(water_main(2, 98.0));
  crossing.site.utilities.back().id = "u2";
  crossing.pipe->outside_diameter = Length{0.063};
  const Assessment open = judged(crossing);
  int taken = 0;
  for (const Finding& finding : open.findings) {
    if (finding.severity != Severity::caution || finding.missing) continue;
    Crossing muted = crossing;
    muted.muted = *with_mute(crossing, finding, {"looked at", "A. M.", "2026-02-14"});
    const Assessment answer = judged(muted);
    EXPECT_EQ(cautions(answer), cautions(open) - (can_hurt_people(finding) ? 0 : 1)) << finding.code;
    EXPECT_EQ(std::count_if(answer.findings.begin(), answer.findings.end(), [](const Finding& f) { return f.muted; }),
              1)
        << finding.code;
    for (const Finding& f : answer.findings)
      if (f.muted) {
        EXPECT_EQ(std::tie(f.code, f.subject, f.station_m), std::tie(finding.code, finding.subject, finding.station_m));
      }
    ++taken;
  }
  EXPECT_GE(taken, 5) << listed(open);
}

// Two findings of one code about one thing: each mute is its own.
TEST(Mute, BothPitsInOneRoad_AreMutedOneByOne) {
  Crossing crossing = clean_crossing();
  crossing.site.surface = {lane(-3, 12)};
  std::vector<Finding> both;
  for (const Finding& f : judged(crossing).findings)
    if (f.code == "pit.on-road") both.push_back(f);
  ASSERT_EQ(both.size(), 2u);
  crossing.muted = *with_mute(crossing, both[1], {"closed by permit", "A. M.", "2026-02-14"});
  Assessment answer = judged(crossing);
  for (const Finding& f : answer.findings)
    if (f.code == "pit.on-road") {
      EXPECT_EQ(f.muted.has_value(), f.station_m == both[1].station_m);
    }
  crossing.muted = *with_mute(crossing, both[0], {"closed as well", "A. M.", "2026-02-14"});
  ASSERT_EQ(crossing.muted.size(), 2u);
  answer = judged(crossing);
  EXPECT_FALSE(find(answer, "file.mute-void")) << listed(answer);
}

// A hazard to people is named in the headline with its reason.
TEST(Mute, Hazard_StaysInTheHeadline) {
  Finding gas;
  gas.code = "utility.expose";
  gas.severity = Severity::caution;
  gas.subject = "u1";
  gas.name = "gas main";
  ASSERT_TRUE(can_hurt_people(gas));
  gas.muted = Muted{"seen open", "", ""};
  Finding tree = gas;
  tree.code = "pit.tree";
  tree.subject = "launch-pit";
  tree.name = "launch pit";
  Assessment answer;
  answer.verdict = Verdict::caution;
  answer.findings = {gas};
  const std::string gas_text = finding_text(gas, UnitSystem::metric), gas_words = gas_text + " (seen open).";
  EXPECT_EQ(
      headline(answer, UnitSystem::metric),
      "1 caution; first: " + gas_text + ". 1 accepted that may hurt people and counts all the same: " + gas_words);
  answer.findings = {gas, tree};
  EXPECT_NE(headline(answer, UnitSystem::metric)
                .find(" 2 accepted, 1 of them may hurt people and counts all the same: " + gas_words),
            std::string::npos)
      << headline(answer, UnitSystem::metric);
}

TEST(Mute, HarmlessCaution_IsCountedButNotNamed) {
  Finding finding;
  finding.code = "pit.tree";
  finding.severity = Severity::caution;
  EXPECT_FALSE(can_hurt_people(finding));
  finding.muted = Muted{"felled", "", ""};
  Assessment answer;
  answer.verdict = Verdict::within_limits;
  answer.findings = {finding};
  EXPECT_EQ(headline(answer, UnitSystem::metric), "Layout within limits: not a permit to bore. 1 accepted.");
  finding.severity = Severity::note;
  finding.code = "utility.contact";
  EXPECT_FALSE(can_hurt_people(finding)) << "a note never";
}

TEST(Headline, EasedInShort_NamesMutesAndLimits) {
  Finding gas;
  gas.code = "utility.expose";
  gas.severity = Severity::caution;
  gas.name = "gas main";
  gas.muted = Muted{"seen open", "A", "2026-02-14"};
  Finding tree = gas;
  tree.code = "pit.tree";
  tree.name = "launch pit";
  Assessment answer;
  EXPECT_EQ(eased_in_short(answer), "");
  answer.findings = {gas, tree};
  EXPECT_EQ(eased_in_short(answer), "2 accepted, may hurt people: gas main.");
  answer.loosened = {{"cover_diameters", "", "cover in tool diameters", 8, 10, "", "permit 12"}};
  EXPECT_EQ(eased_in_short(answer), "2 accepted, may hurt people: gas main. Limits loosened: cover in tool diameters.");
  answer.findings.clear();
  EXPECT_EQ(eased_in_short(answer), "Limits loosened: cover in tool diameters.");
}

TEST(Mute, Stop_StillLeadsTheHeadline) {
  Crossing crossing = clean_crossing();
  crossing.site.surface.front().permission.set(Permission::refused);
  const Assessment open = judged(crossing);
  crossing.muted = *with_mute(crossing, open.findings.front(), {"he said so", "A. M.", "2026-02-14"});
  EXPECT_EQ(headline(judged(crossing), UnitSystem::metric), headline(open, UnitSystem::metric) + " 1 accepted.");
}

}  // namespace
}  // namespace burrow::test
