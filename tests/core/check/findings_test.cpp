// Muting, the order of the list, limits typed by the user, alternatives.

#include <gtest/gtest.h>

#include <set>

#include "burrow/check/limits.h"
#include "burrow/file/crossing_file.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

/// A bore whose neutral cover and gap are fine but whose cover may fall under a typed limit: one caution.
Crossing one_caution() {
  Crossing c = clean_crossing();
  const Assessment as_is = judged(c);
  c.limits["cover_diameters"] = {(*as_is.cover.least_m + *as_is.cover.least_low_m) / 2 / 0.065, "to be near it", {}};
  return c;
}

TEST(Muting, CautionMuted_DoesNotCountButStays) {
  Crossing crossing = one_caution();
  const Assessment open = judged(crossing);
  ASSERT_EQ(open.verdict, Verdict::caution) << listed(open);
  ASSERT_TRUE(find(open, "bore.cover-low", "bore")) << listed(open);
  crossing.muted = {mute("bore.cover-low", "bore", "level set by laser", find(open, "bore.cover-low")->measured)};
  crossing.muted.front().by = "J";
  crossing.muted.front().date = "2025-05-02";
  const Assessment muted = judged(crossing);
  EXPECT_EQ(muted.verdict, Verdict::within_limits) << listed(muted);
  const Finding* finding = find(muted, "bore.cover-low");
  ASSERT_TRUE(finding);
  EXPECT_EQ(finding->muted, (Muted{"level set by laser", "J", "2025-05-02"}));
}

TEST(Muting, OtherSubjectOrCode_IsNotMuted) {
  Crossing crossing = one_caution();
  crossing.muted = {mute("bore.cover-low", "f1", "x"), mute("bore.cover", "bore", "x")};
  EXPECT_EQ(judged(crossing).verdict, Verdict::caution);
}

TEST(Muting, LapsesWhenItGetsWorse) {
  Crossing crossing = one_caution();
  const double measured = *find(judged(crossing), "bore.cover-low")->measured;
  crossing.muted = {mute("bore.cover-low", "bore", "x", measured)};
  EXPECT_EQ(judged(crossing).verdict, Verdict::within_limits);
  crossing.muted.front().measured = measured - 0.05;  // it was worse when muted: still muted
  EXPECT_EQ(judged(crossing).verdict, Verdict::within_limits);
  crossing.muted.front().measured = measured + 0.05;  // cover has fallen by 5 cm since
  const Assessment lapsed = judged(crossing);
  EXPECT_EQ(lapsed.verdict, Verdict::caution);
  EXPECT_FALSE(find(lapsed, "bore.cover-low")->muted);
}

// A limit of the other sense: heave may not rise.
TEST(Muting, LapsesWhenHeaveGetsWorse) {
  Crossing crossing = clean_crossing();
  const double heave = *judged(crossing).surface.heave_m;
  crossing.limits["heave_road_caution_m"] = {heave * 0.9, "strict", {}};
  ASSERT_EQ(judged(crossing).verdict, Verdict::caution) << listed(judged(crossing));
  const double measured = *find(judged(crossing), "surface.heave", "f1")->measured;
  crossing.muted = {mute("surface.heave", "f1", "x", measured * 1.1)};
  EXPECT_EQ(judged(crossing).verdict, Verdict::within_limits);
  crossing.muted.front().measured = measured * 0.9;
  EXPECT_EQ(judged(crossing).verdict, Verdict::caution);
}

TEST(Muting, StopStillCounts) {
  Crossing crossing = clean_crossing();
  crossing.site.surface.front().permission.set(Permission::refused);
  crossing = with_muted(crossing, "surface.permission-refused", "f1", "he said so on the phone");
  const Assessment answer = judged(crossing);
  EXPECT_EQ(answer.verdict, Verdict::stop);
  EXPECT_TRUE(find(answer, "surface.permission-refused")->muted);
}

int rank(const Finding& f) {
  if (f.severity == Severity::stop) return 0;
  if (f.missing) return 1;
  if (f.severity == Severity::caution) return f.muted ? 3 : 2;
  return 4;
}

TEST(Findings, Order_WorstFirst) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{99.5};  // cover of 7 diameters
  crossing.site.surface.front().permission.set(Permission::refused);
  crossing.site.water.reset();
  crossing.pipe.reset();
  crossing.pits.launch.sides.bore.kind.set(SideKind::sloped);
  crossing.pits.exit.sides.bore.kind.set(SideKind::sloped);
  crossing.site.utilities.push_back(water_main(5, 99.2));
  crossing.site.utilities.back().id = "u2";
  crossing = with_muted(crossing, "pit.bore-side-sloped", "exit-pit", "shield follows");
  const Assessment answer = judged(crossing);
  ASSERT_GE(answer.findings.size(), 8u) << listed(answer);
  std::set<int> ranks;
  for (std::size_t i = 0; i < answer.findings.size(); ++i) {
    ranks.insert(rank(answer.findings[i]));
    if (i == 0) continue;
    const Finding &before = answer.findings[i - 1], &now = answer.findings[i];
    EXPECT_LE(rank(before), rank(now)) << listed(answer);
    // The clear gap stands where the worst finding of its utility would.
    if (rank(before) == rank(now) && before.code == "utility.separation" && now.subject == before.subject) {
      EXPECT_LE(now.margin.value_or(0), 0) << listed(answer);
    } else if (rank(before) == rank(now)) {
      EXPECT_LE(before.margin.value_or(0), now.margin.value_or(0)) << listed(answer);
    }
  }
  EXPECT_EQ(ranks, (std::set{0, 1, 2, 3, 4})) << listed(answer);
  EXPECT_EQ(answer.findings[0].code, "utility.separation") << listed(answer);
  EXPECT_EQ(answer.findings[1].code, "utility.encroachment") << "though its margin is the worse one";
  EXPECT_LT(*answer.findings[1].margin, *answer.findings[0].margin);
}

// Every finding with a limit says where it comes from; a number has a unit that the program can show.
TEST(Findings, Property_LimitHasASource) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{99.5};
  crossing.bore.exit.station = Length{30};
  crossing.site.utilities.push_back(water_main(5, 99.2));
  crossing.site.utilities.back().id = "u2";
  crossing.site.utilities.back().kind = UtilityKind::gas;
  for (const Finding& f : judged(crossing).findings) {
    if (!f.missing) {
      EXPECT_FALSE(f.source.text.empty()) << f.code;
    }
    if (f.limit && f.measured) {
      EXPECT_TRUE(f.unit == "m" || f.unit == "m/s" || f.unit == "N" || f.unit == "Pa" || f.unit.empty())
          << f.code << f.unit;
    }
  }
}

TEST(Limits, Table_EachHasItsValueSenseAndSource) {
  const Crossing crossing = clean_crossing();
  ASSERT_GE(tables().limits.size(), 20u);
  for (const LimitRow& row : tables().limits) {
    const Limit limit = limit_of(crossing, tables(), row.id);
    EXPECT_EQ(limit.value, row.value) << row.id;
    EXPECT_EQ(limit.at_least, row.at_least) << row.id;
    EXPECT_EQ(limit.source, row.source) << row.id;
  }
}

TEST(Limits, Override_CarriesItsReasonAndLabel) {
  Crossing crossing = clean_crossing();
  crossing.limits["cover_diameters"] = {20.5, "permit 12, line 4", {}};
  const Assessment answer = judged(crossing);
  EXPECT_NEAR(*answer.cover.required_m, 20.5 * 0.065, 1e-12);
  for (const Working& w : answer.working)
    if (w.code == "bore.cover") {
      EXPECT_EQ(w.limit_source, (Source{std::string("permit 12, line 4"), SourceLabel::owners_setting}));
    }
  crossing.limits["cover_diameters"] = {40, "", {}};
  const Finding* cover = find(judged(crossing), "bore.cover");
  const Assessment deep = judged(crossing);
  cover = find(deep, "bore.cover");
  ASSERT_TRUE(cover) << listed(deep);
  EXPECT_EQ(cover->source, (Source{"set in this crossing", SourceLabel::owners_setting}));
  EXPECT_NEAR(*cover->limit, 2.6, 1e-12);
}

// The gaps for gas, power and steam are limits of their own: each typed one counts for its kind alone.
TEST(Limits, Override_GapOfEachKind) {
  const std::pair<UtilityKind, const char*> kinds[] = {{UtilityKind::gas, "separation_gas_m"},
                                                       {UtilityKind::power, "separation_power_m"},
                                                       {UtilityKind::steam, "separation_steam_m"},
                                                       {UtilityKind::water, "separation_traced_m"}};
  for (const auto& [kind, mine] : kinds)
    for (const auto& [other, id] : kinds) {
      Crossing crossing = clean_crossing();
      crossing.site.utilities.front().kind = kind;
      const double before = *judged(crossing).utilities.front().required_m;
      crossing.limits[id] = {0.9, "typed", {}};
      const double after = *judged(crossing).utilities.front().required_m;
      EXPECT_NEAR(after - before, kind == other ? 0.3 : 0.0, 1e-9) << word_of(kind) << " " << id;
    }
}

TEST(Limits, UnknownId_IsRefusedWithTheKnown) {
  Crossing crossing = clean_crossing();
  crossing.limits["cover_in_boots"] = {2, "", {}};
  const Result<Crossing> read = read_crossing(write_crossing(crossing), tables());
  ASSERT_FALSE(read);
  EXPECT_NE(read.error().place.english().find("/limits"), std::string::npos) << read.error().english();
  EXPECT_NE(read.error().english().find("cover_in_boots"), std::string::npos) << read.error().english();
  EXPECT_NE(read.error().expected.english().find("cover_diameters"), std::string::npos) << read.error().english();
}

TEST(Limits, Margin_SignFollowsTheSense) {
  const Limit least{2, true, {}}, most{2, false, {}}, none{0, false, {}};
  EXPECT_NEAR(margin_of(3, least), 0.5, 1e-15);
  EXPECT_NEAR(margin_of(1, least), -0.5, 1e-15);
  EXPECT_NEAR(margin_of(3, most), -0.5, 1e-15);
  EXPECT_NEAR(margin_of(1, most), 0.5, 1e-15);
  EXPECT_NEAR(margin_of(0.3, none), -0.3, 1e-15);
  EXPECT_EQ(margin_of(2, least), 0);
}

TEST(Alternatives, MembersInForce_ChangeTheVerdict) {
  Crossing crossing = clean_crossing();
  Alternative shallow;
  shallow.id = "a1";
  shallow.bore = crossing.bore;
  shallow.bore->launch.elevation = Length{99.6};
  crossing.alternatives = {shallow};
  EXPECT_EQ(judged(crossing).verdict, Verdict::within_limits);
  EXPECT_EQ(judged(with_alternative(crossing, "a1")).verdict, Verdict::stop);
  EXPECT_EQ(judged(with_alternative(crossing, "a2")), judged(crossing));
}

TEST(Assess, SameInputTwice_SameAnswer) {
  Crossing crossing = clean_crossing();
  crossing.site.utilities.push_back(water_main(5, 99.0));
  crossing.site.utilities.back().id = "u2";
  const Crossing before = crossing;
  EXPECT_EQ(judged(crossing), judged(crossing));
  EXPECT_EQ(crossing, before);
}

}  // namespace
}  // namespace burrow::test
