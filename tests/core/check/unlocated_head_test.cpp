// DGUV Information 203-017 (02/2019) 6.4 (read): without running location of the head only where no line in service
// lies in the working area; with displacing methods the gap is set with the owners.

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing german() {
  Crossing crossing = clean_crossing();
  crossing.pits.rules.set(ExcavationRules::din_4124);
  return crossing;
}

void answer_all(Crossing& crossing) {
  crossing.bore.head_located = {"transmitter in the head, received above it", "B. Muster", "2026-02-27", ""};
  for (Utility& u : crossing.site.utilities) u.agreed = {Length{0.5}, "the water company", "2026-02-26", ""};
}

TEST(UnlocatedHead, LineInService_IsAStop) {
  EXPECT_FALSE(find(judged(clean_crossing()), "bore.head-unlocated"));  // no German rules
  const Assessment answer = judged(german());
  const Finding* finding = find(answer, "bore.head-unlocated", "bore");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::stop);
  EXPECT_EQ(finding->source.label, SourceLabel::read);
  EXPECT_TRUE(find(answer, "missing.agreed-gap", "u1"));
  Crossing answered = german();
  answer_all(answered);
  EXPECT_FALSE(find(judged(answered), "bore.head-unlocated")) << listed(judged(answered));
  EXPECT_FALSE(find(judged(answered), "missing.agreed-gap"));
}

// Not entered, half entered, of a day to come: it stays a stop. Muted: it still counts.
TEST(UnlocatedHead, HalfAnswersDoNotCount) {
  for (const Statement& half :
       {Statement{"", "B. Muster", "2026-02-27", ""}, Statement{"by ear", " ", "2026-02-27", ""},
        Statement{"transmitter", "B. Muster", std::nullopt, ""},
        Statement{"transmitter", "B. Muster", "2027-02-27", ""}}) {
    Crossing crossing = german();
    answer_all(crossing);
    crossing.bore.head_located = half;
    EXPECT_TRUE(find(judged(crossing), "bore.head-unlocated")) << half.how << half.by;
  }
  Crossing muted = german();
  muted.muted = {mute("bore.head-unlocated", "bore", "as always", 1.0)};
  EXPECT_EQ(judged(muted).verdict, Verdict::stop);
}

TEST(UnlocatedHead, LineOutOfService_OnlyWhenProved) {
  Crossing crossing = german();
  crossing.site.utilities.front().status.set(UtilityStatus::abandoned);
  EXPECT_TRUE(find(judged(crossing), "bore.head-unlocated"));
  crossing.site.utilities.front().status.set(UtilityStatus::unknown);
  EXPECT_TRUE(find(judged(crossing), "bore.head-unlocated"));
  crossing.site.utilities.front().status.set(UtilityStatus::abandoned);
  crossing.site.utilities.front().abandonment = {"cut and capped on both sides", "the owner", "2026-02-20", ""};
  EXPECT_FALSE(find(judged(crossing), "bore.head-unlocated")) << listed(judged(crossing));
  crossing = german();
  for (PathVertex& v : crossing.site.utilities.front().path) v.x_m = 200;  // far from bore and pits
  EXPECT_FALSE(find(judged(crossing), "bore.head-unlocated"));
}

// The gap agreed counts where it is the larger one, and wants a name and a day.
TEST(UnlocatedHead, AgreedGap_Counts) {
  Crossing crossing = german();
  answer_all(crossing);
  AgreedGap& agreed = crossing.site.utilities.front().agreed;
  EXPECT_FALSE(find(judged(crossing), "utility.separation"));
  agreed.distance = Length{3};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "utility.separation", "u1")) << listed(answer);
  EXPECT_EQ(find(answer, "utility.separation")->source.label, SourceLabel::owners_setting);
  EXPECT_GE(*find(answer, "utility.separation")->limit, 3);
  agreed = {Length{0.5}, "-", "2026-02-26", ""};
  EXPECT_TRUE(find(judged(crossing), "missing.agreed-gap", "u1"));
  agreed = {Length{0.5}, "the water company", std::nullopt, ""};
  EXPECT_TRUE(find(judged(crossing), "missing.agreed-gap", "u1"));
  agreed = {std::nullopt, "the water company", "2026-02-26", ""};
  EXPECT_TRUE(find(judged(crossing), "missing.agreed-gap", "u1"));
  EXPECT_NE(judged(crossing).verdict, Verdict::within_limits);
}

}  // namespace
}  // namespace burrow::test
