// Muting with a reason: what goes into the file, and that it is never passed over in silence.

#include "burrow/check/mute.h"

#include <gtest/gtest.h>

#include "burrow/check/headline.h"
#include "burrow/file/crossing_file.h"
#include "clean_crossing.h"

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
  crossing.muted = *with_mute(crossing, finding, {"shield follows", "A. M.", "2026-03-14"});
  ASSERT_EQ(crossing.muted.size(), 1u);
  EXPECT_EQ(crossing.muted.front().code, finding.code);
  EXPECT_EQ(crossing.muted.front().measured, finding.measured);
  const Result<Crossing> again = read_crossing(write_crossing(crossing), tables());
  ASSERT_TRUE(again) << again.error().text();
  EXPECT_EQ(again->muted, crossing.muted);
  EXPECT_EQ(judged(*again).verdict, Verdict::within_limits);
}

TEST(Mute, EmptyReason_IsRefusedAndSaysWhatToDo) {
  const Crossing crossing = sloped_exit();
  const Finding finding = first_caution(crossing);
  for (const char* nothing : {"", "   ", "\t", "...", "-", "?!"}) {
    const auto muted = with_mute(crossing, finding, {nothing, "A", "2026-03-14"});
    ASSERT_FALSE(muted) << nothing;
    EXPECT_EQ(muted.error().place, "reason");
    EXPECT_NE(muted.error().expected.find("why"), std::string::npos);
  }
  EXPECT_TRUE(with_mute(crossing, finding, {"gekappt", "", ""}));
  EXPECT_TRUE(with_mute(crossing, finding, {"ü", "", ""})) << "letters of every alphabet";
}

TEST(Mute, Again_ReplacesTheReasonAndKeepsForeignKeys) {
  Crossing crossing = sloped_exit();
  const Finding finding = first_caution(crossing);
  crossing.muted = *with_mute(crossing, finding, {"one", "", ""});
  crossing.muted.front().extra = R"({"foreign":1})";
  crossing.muted = *with_mute(crossing, finding, {"two", "B", "2026-03-15"});
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
  crossing.muted = *with_mute(crossing, other, {"other", "", ""});
  crossing.muted = *with_mute(crossing, finding, {"this", "", ""});
  const std::vector<Mute> left = without_mute(crossing, finding);
  ASSERT_EQ(left.size(), 1u);
  EXPECT_EQ(left.front().reason, "other");
}

// A hazard to people is named in the headline with its reason; a lapsed mute counts as before.
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
  answer.verdict = Verdict::within_limits;
  answer.findings = {gas};
  const std::string gas_words = finding_text(gas, UnitSystem::metric) + " (seen open).";
  EXPECT_EQ(headline(answer, UnitSystem::metric), "All limits judged here are kept. 1 muted that may hurt people: " +
                                                      gas_words + " Locate, expose and protect as always.");
  answer.findings = {tree, gas};
  EXPECT_NE(headline(answer, UnitSystem::metric).find(" 2 muted, 1 of them may hurt people: " + gas_words),
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
  EXPECT_EQ(headline(answer, UnitSystem::metric),
            "All limits judged here are kept. 1 muted. Locate, expose and protect as always.");
  finding.severity = Severity::note;
  finding.code = "utility.contact";
  EXPECT_FALSE(can_hurt_people(finding)) << "a note never";
}

TEST(Mute, Stop_StillLeadsTheHeadline) {
  Crossing crossing = clean_crossing();
  crossing.site.surface.front().permission.set(Permission::refused);
  const Assessment open = judged(crossing);
  crossing.muted = *with_mute(crossing, open.findings.front(), {"he said so", "", ""});
  EXPECT_EQ(headline(judged(crossing), UnitSystem::metric), headline(open, UnitSystem::metric) + " 1 muted.");
}

}  // namespace
}  // namespace burrow::test
