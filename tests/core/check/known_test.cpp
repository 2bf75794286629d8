/// Nothing unknown looks safe: what the verdict says where it was not entered, not proved, old, or hardly possible.
/// Rules of this program (our default) unless said otherwise; each case once came out within limits.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Utility gas_main(std::vector<PathVertex> path) {
  Utility u = water_main(4, 97);
  u.id = "u2";
  u.name = "gas main";
  u.kind = UtilityKind::gas;
  u.located.how.set(LocatedHow::records);
  u.located.level = "checked-at-hole";
  u.path = std::move(path);
  return u;
}

Crossing with_line(Utility u) {
  Crossing c = clean_crossing();
  c.site.utilities.push_back(std::move(u));
  return c;
}

Crossing with_path(std::vector<PathVertex> path) {
  return with_line(gas_main(std::move(path)));
}

/// A gas main square over the bore, that far above its axis, exposed with all that proves it.
Crossing with_exposed_main(double above_m) {
  Utility u = gas_main({{4, -8, 98.6 + above_m}, {4, 8, 98.6 + above_m}});
  u.located.how.set(LocatedHow::exposed);
  Crossing c = with_line(u);
  TestHole hole;
  hole.id = "h1";
  hole.utility = "u2";
  hole.station = Length{4};
  hole.level.set(LevelMeant::centre);
  hole.elevation = Length{98.6 + above_m};
  hole.date = "2026-02-26";
  hole.by = "A. Nobody";
  c.site.test_holes = {hole};
  return c;
}

bool asks(const Crossing& c, std::string_view what, std::string_view subject = {}) {
  return find(judged(c), "missing." + std::string(what), subject) != nullptr;
}

TEST(StratumEvidence, CleanCrossing_IsWithinLimits) {
  const Assessment answer = judged(clean_crossing());
  EXPECT_EQ(answer.verdict, Verdict::within_limits) << listed(answer);
}

// A gas main from records that just ends short of the bore, at its level, pointing at it.
TEST(UtilityCourse, OurDefault_LineThatEndsShortOfTheBoreIsAsked) {
  for (const double short_by : {0.8, 1.2, 3.0}) {
    const Crossing c = with_path({{4, -9, 98.6}, {4, -short_by, 98.6}});
    const Assessment answer = judged(c);
    EXPECT_TRUE(find(answer, "missing.utility-course", "u2")) << short_by << listed(answer);
    EXPECT_NE(answer.verdict, Verdict::within_limits) << short_by;
  }
  EXPECT_TRUE(asks(with_path({{4, 2.5, 98.6}}), "utility-course", "u2"));                      // a lone vertex
  EXPECT_TRUE(asks(with_path({{3, -9, 98.6}, {4, -3, 98.6}}), "utility-course", "u2"));        // aslant
  EXPECT_TRUE(asks(with_path({{-1.5, -9, 98.6}, {-1.5, -3, 98.6}}), "utility-course", "u2"));  // at the launch pit
  EXPECT_TRUE(asks(with_path({{4, -9, {}}, {4, -3, {}}}), "utility-course", "u2"));            // its level unknown too
  // It runs off, or beside at a distance, or lies far below, or has crossed already.
  EXPECT_FALSE(asks(with_path({{4, -3, 98.6}, {4, -9, 98.6}, {-30, -9, 98.6}}), "nothing"));
  EXPECT_FALSE(asks(with_path({{4, -19, 98.6}, {4, -14, 98.6}}), "utility-course"));
  EXPECT_FALSE(asks(with_path({{4, -9, 90}, {4, -3, 90}}), "utility-course"));
  EXPECT_FALSE(asks(with_path({{4, -9, 97}, {4, 3, 97}}), "utility-course"));
}

TEST(UtilityCourse, OurDefault_ADeclaredEndIsNotAsked_EdgeOfRecordGoesOn) {
  Utility u = gas_main({{4, -9, 98.6}, {4, -1.2, 98.6}});
  u.located.lateral_sd = Length{0.02};
  for (const auto& [end, word] : EnumNames<LineEnd>::list) {
    u.ends.last = end;
    const Assessment answer = judged(with_line(u));
    EXPECT_FALSE(find(answer, "missing.utility-course", "u2")) << word;
    if (end == LineEnd::edge_of_record) {
      EXPECT_EQ(answer.verdict, Verdict::stop) << listed(answer);  // it runs through the bore
      EXPECT_LT(*answer.utilities[1].separation_m, 0);
    }
  }
  u.ends.last.reset();
  u.ends.first = LineEnd::cap;  // the other end says nothing of this one
  EXPECT_TRUE(asks(with_line(u), "utility-course", "u2"));
}

// One click declares all ends: a lone vertex, or one entered twice, still does not tell which way it runs on.
TEST(UtilityCourse, EdgeOfRecord_LoneOrDoubledVertex) {
  const auto both = [](std::vector<PathVertex> path, LineEnd end) {
    Utility u = gas_main(std::move(path));
    u.ends = {end, end, ""};
    return judged(with_line(u));
  };
  for (const auto& path : {std::vector<PathVertex>{{4, 2.5, 98.6}}, {{4, 2.5, 98.6}, {4, 2.5, 98.6}}}) {
    const Assessment open = both(path, LineEnd::edge_of_record);
    EXPECT_TRUE(find(open, "missing.utility-course", "u2")) << listed(open);
    EXPECT_NE(open.verdict, Verdict::within_limits);
    EXPECT_FALSE(find(both(path, LineEnd::cap), "missing.utility-course", "u2"));
  }
  // Its last vertex twice: it goes on as the one before shows.
  const Assessment through = both({{4, -9, 98.6}, {4, -1.2, 98.6}, {4, -1.2, 98.6}}, LineEnd::edge_of_record);
  EXPECT_EQ(through.verdict, Verdict::stop) << listed(through);
  EXPECT_LT(*through.utilities[1].separation_m, 0);
  EXPECT_TRUE(asks(with_path({{4, -9, 98.6}, {4, -3, 98.6}, {4, -3, 98.6}}), "utility-course", "u2"));
}

// A declared end is no better known along the line than across it.
TEST(UtilityCourse, OurModel_ADeclaredEndHasAnErrorAlong) {
  Utility u = gas_main({{4, -9, 98.6}, {4, -1.2, 98.6}});
  u.ends.last = LineEnd::cap;
  u.located.lateral_sd = Length{0.02};
  const double well = *judged(with_line(u)).utilities[1].separation_m;
  u.located.lateral_sd = Length{0.4};
  EXPECT_NEAR(*judged(with_line(u)).utilities[1].separation_m, well - 1.645 * 0.38, 0.01);
}

// Deleting the kind never betters anything: unknown is the strictest.
TEST(Kind, OurDefault_UnknownIsTheStrictest) {
  for (const double level : {96.0, 97.0, 97.5, 97.8, 98.0, 98.2, 98.6, 99.0, 99.4})
    for (const LocatedHow how : {LocatedHow::traced, LocatedHow::records, LocatedHow::unknown})
      for (const auto& [kind, word] : EnumNames<UtilityKind>::list) {
        Utility u = gas_main({{4, -8, level}, {4, 8, level}});
        u.kind = kind;
        u.located.how.set(how);
        const Verdict known = judged(with_line(u)).verdict;
        u.kind = UtilityKind::unknown;
        const Verdict unknown = judged(with_line(u)).verdict;
        if (known == Verdict::stop) {
          EXPECT_EQ(unknown, Verdict::stop) << word << " at " << level;
        }
        if (known != Verdict::within_limits) {
          EXPECT_NE(unknown, Verdict::within_limits) << word << " at " << level;
        }
      }
}

// A bore straight through an abandoned main.
TEST(Status, OurDefault_OverlapIsAStopWhateverTheStatus) {
  for (const auto& [status, word] : EnumNames<UtilityStatus>::list) {
    Utility u = gas_main({{4, -8, 98.6}, {4, 8, 98.6}});
    u.status.set(status);
    u.abandonment = {"cut and capped at both ends", "A. Nobody", "2026-01-15", ""};
    EXPECT_EQ(judged(with_line(u)).verdict, Verdict::stop) << word;
  }
}

TEST(Status, OurDefault_AbandonedCountsAsLiveUntilProved) {
  Utility u = gas_main({{4, -8, 97.85}, {4, 8, 97.85}});
  u.status.set(UtilityStatus::live);
  const Finding* live = nullptr;
  const Assessment of_live = judged(with_line(u));
  live = find(of_live, "utility.separation", "u2");
  ASSERT_TRUE(live) << listed(of_live);
  EXPECT_EQ(live->severity, Severity::stop);
  u.status.set(UtilityStatus::abandoned);
  for (const Statement& proof :
       {Statement{}, Statement{"cut and capped", "", "2026-01-15", ""}, Statement{"", "A. Nobody", "2026-01-15", ""},
        Statement{"cut", "A. Nobody", {}, ""}, Statement{"cut", "A. Nobody", "2027-01-15", ""}}) {
    u.abandonment = proof;
    const Assessment answer = judged(with_line(u));
    EXPECT_EQ(find(answer, "utility.separation", "u2")->severity, Severity::stop);
  }
  u.abandonment = {"cut and capped at both ends, letter of the owner", "A. Nobody", "2026-01-15", ""};
  const Assessment proved = judged(with_line(u));
  EXPECT_EQ(find(proved, "utility.separation", "u2")->severity, Severity::caution);
}

TEST(Exposure, OurDefault_WantsAHoleWithLevelDateAndName) {
  const Crossing proved = with_exposed_main(-0.8);
  EXPECT_FALSE(asks(proved, "exposure")) << listed(judged(proved));
  EXPECT_EQ(judged(proved).verdict, Verdict::within_limits) << listed(judged(proved));
  std::vector<Crossing> others(6, proved);
  others[0].site.test_holes.clear();
  others[1].site.test_holes[0].date.reset();
  others[2].site.test_holes[0].by = "  ";
  others[3].site.test_holes[0].elevation.reset();
  others[4].site.test_holes[0].offset = Length{0.7};
  others[5].site.test_holes[0].sd.set(Length{0.3});  // measured so badly that it shows no place
  for (const Crossing& other : others) {
    const Assessment answer = judged(other);
    EXPECT_TRUE(find(answer, "missing.exposure", "u2")) << listed(answer);
    EXPECT_TRUE(answer.verdict == Verdict::incomplete || answer.verdict == Verdict::stop);
  }
  // Two clicks no longer turn a stop into within limits.
  Crossing clicked = with_path({{4, -8, 97.95}, {4, 8, 97.95}});
  EXPECT_EQ(judged(clicked).verdict, Verdict::stop);
  clicked.site.utilities[1].located.how.set(LocatedHow::exposed);
  EXPECT_EQ(judged(clicked).verdict, Verdict::stop);
}

// Common practice, no source: expose before passing.
TEST(Exposure, CommonPractice_ALiveGasLineCrossedWithinTheGapStaysACaution) {
  Crossing c = with_path({{4, -8, 97.0}, {4, 8, 97.0}});
  Assessment answer = judged(c);
  const Finding* expose = find(answer, "utility.expose", "u2");
  ASSERT_TRUE(expose) << listed(answer);
  EXPECT_EQ(expose->severity, Severity::caution);
  EXPECT_DOUBLE_EQ(*expose->limit, 1.5);
  c.limits["expose_within_m"] = {0.2, "the owner's letter of 3 January", ""};
  EXPECT_FALSE(find(judged(c), "utility.expose", "u2"));
  c = with_path({{4, -8, 95.5}, {4, 8, 95.5}});
  EXPECT_FALSE(find(judged(c), "utility.expose", "u2"));
}

TEST(Located, OurDefault_PlasticWantsItsTracer) {
  Utility u = water_main(4, 97);
  u.id = "u2";
  u.material = "pe100";
  for (const LocatedHow how : {LocatedHow::traced, LocatedHow::traced_twice}) {
    u.located.how.set(how);
    u.located.tracer.reset();
    EXPECT_TRUE(asks(with_line(u), "utility-tracer", "u2"));
    u.located.tracer = TracedBy::none;
    EXPECT_TRUE(asks(with_line(u), "utility-tracer", "u2"));
    u.located.tracer = TracedBy::wire;
    EXPECT_FALSE(asks(with_line(u), "utility-tracer", "u2"));
  }
  u.located.tracer.reset();
  u.material = "steel";
  EXPECT_FALSE(asks(with_line(u), "utility-tracer", "u2"));
  u.material.clear();  // nobody knows what it is made of: it may be plastic
  EXPECT_TRUE(asks(with_line(u), "utility-tracer", "u2"));
  EXPECT_NE(judged(with_line(u)).verdict, Verdict::within_limits);
  u.kind = UtilityKind::power;  // a cable carries the tracing by itself
  EXPECT_FALSE(asks(with_line(u), "utility-tracer", "u2"));
}

// common practice, no source: what was dragged on the drawing since it was located is located no more. A later day of
// locating says where it is; an unreadable day says nothing.
TEST(Located, Moved_ItsPlaceIsAskedFor) {
  Utility u = water_main(4, 97);
  u.id = "u2";
  u.located.how.set(LocatedHow::traced);
  u.located.date = "2026-02-01";
  EXPECT_FALSE(asks(with_line(u), "utility-moved", "u2"));
  u.located.moved = "2026-02-20";
  EXPECT_TRUE(asks(with_line(u), "utility-moved", "u2"));
  u.located.date = "2026-02-20";
  EXPECT_TRUE(asks(with_line(u), "utility-moved", "u2")) << "the same day tells nothing of the order";
  u.located.date = "2026-02-21";
  EXPECT_FALSE(asks(with_line(u), "utility-moved", "u2"));
  u.located.moved = "yesterday";
  EXPECT_TRUE(asks(with_line(u), "utility-moved", "u2"));
  u.located.moved = "2026-02-20";
  u.located.date.reset();
  EXPECT_TRUE(asks(with_line(u), "utility-moved", "u2"));
  // Dragged out of sight of the bore it is asked about all the same.
  for (PathVertex& v : u.path) {
    v.x_m += 60;
    *v.z_m -= 20;
  }
  const Crossing far = with_line(u);
  EXPECT_TRUE(asks(far, "utility-moved", "u2"));
  EXPECT_FALSE(asks(far, "utility-tracer", "u2")) << "nothing else is asked of a line so far off";
  EXPECT_NE(judged(far).verdict, Verdict::within_limits);
}

// PAS 128, two methods that agree: 15 % of the depth (second-hand).
TEST(Located, Pas128_ABetterHeightThanTracingGivesWantsALevel) {
  Utility u = water_main(4, 97);
  u.id = "u2";
  u.located.level.reset();
  EXPECT_TRUE(asks(with_line(u), "utility-depth-error", "u2"));
  u.located.vertical_sd = Length{0.15 * 3.0};
  EXPECT_FALSE(asks(with_line(u), "utility-depth-error", "u2"));
  u.located.vertical_sd = Length{0.06};
  u.located.level = "pas128-b2";
  EXPECT_TRUE(asks(with_line(u), "utility-depth-error", "u2"));
  u.located.level = "checked-at-hole";
  EXPECT_FALSE(asks(with_line(u), "utility-depth-error", "u2"));
}

// Two clicks are no proof: a level of what was laid bare says nothing of a line that nobody has exposed.
TEST(Located, Pas128_ALevelOfWhatWasExposedWantsItsHole) {
  Utility u = water_main(4, 97);
  u.id = "u2";
  for (const char* level : {"pas128-a", "asce38-a"})
    for (const LocatedHow how : {LocatedHow::traced, LocatedHow::traced_twice, LocatedHow::records}) {
      u.located.how.set(how);
      u.located.level = level;
      u.located.lateral_sd = Length{0.05};
      u.located.vertical_sd = Length{0.06};
      EXPECT_TRUE(asks(with_line(u), "utility-depth-error", "u2")) << level;
      u.located.lateral_sd.reset();  // the level's own errors
      u.located.vertical_sd.reset();
      EXPECT_TRUE(asks(with_line(u), "utility-depth-error", "u2")) << level;
      EXPECT_EQ(judged(with_line(u)).verdict, Verdict::incomplete);
    }
  // Across: nobody locates from the surface better than somebody measures what lies bare.
  u = water_main(4, 97);
  u.id = "u2";
  u.located.lateral_sd = Length{0.001};
  EXPECT_TRUE(asks(with_line(u), "utility-depth-error", "u2"));
  u.located.lateral_sd = Length{0.05};
  EXPECT_FALSE(asks(with_line(u), "utility-depth-error", "u2"));
}

TEST(Located, OurDefault_AnErrorOfNothingCountsAsNotKnown) {
  Utility u = water_main(4, 97);
  u.id = "u2";
  u.located.lateral_sd = Length{0};
  EXPECT_TRUE(asks(with_line(u), "utility-location-error", "u2"));
  u = water_main(4, 97);
  u.id = "u2";
  u.located.vertical_sd = Length{0};
  EXPECT_TRUE(asks(with_line(u), "utility-location-error", "u2"));
  Crossing exposed = with_exposed_main(-0.8);
  exposed.site.utilities[1].located.vertical_sd = Length{0};
  EXPECT_FALSE(asks(exposed, "utility-location-error", "u2"));
}

// 7.4 m typed for 0.74: the hole contradicts its record.
TEST(Holes, OurDefault_AContradictionIsDecidedBySomebodyAndLowersNoAlarm) {
  Crossing c = with_path({{4, -8, 98.75}, {4, 8, 98.75}});
  ASSERT_EQ(judged(c).verdict, Verdict::stop);
  TestHole hole;
  hole.id = "h1";
  hole.utility = "u2";
  hole.station = Length{4};
  hole.elevation = Length{100 - 7.4};
  hole.date = "2026-02-26";
  hole.by = "A. Nobody";
  c.site.test_holes = {hole};
  Assessment answer = judged(c);
  EXPECT_EQ(answer.verdict, Verdict::stop) << listed(answer);
  EXPECT_TRUE(find(answer, "missing.utility-agreed", "u2")) << listed(answer);
  c.site.test_holes[0].agreed = {"dug twice, the record is wrong", "A. Nobody", "2026-02-27", ""};
  answer = judged(c);
  EXPECT_FALSE(find(answer, "missing.utility-agreed", "u2"));
  EXPECT_NE(answer.verdict, Verdict::stop) << listed(answer);
  // However poor the record is said to be, a metre off is asked about.
  c.site.test_holes[0].agreed = {};
  c.site.utilities[1].located.vertical_sd = Length{5};
  EXPECT_TRUE(asks(c, "utility-agreed", "u2"));
}

TEST(Holes, OurDefault_AHoleByTheBoreWithoutAUtilityIsAsked) {
  Crossing c = clean_crossing();
  TestHole hole;
  hole.id = "h1";
  hole.station = Length{4};
  c.site.test_holes = {hole};
  EXPECT_TRUE(asks(c, "hole-utility", "h1"));
  c.site.test_holes[0].offset = Length{30};
  EXPECT_FALSE(asks(c, "hole-utility"));
}

// A hole speaks for 10 m of its line at most.
TEST(Holes, OurDefault_ReachAtMostTenMetres) {
  Crossing c = with_exposed_main(-0.8);
  c.site.test_holes[0].offset = Length{7};
  c.site.test_holes[0].reach.set(Length{10});
  const auto at_ten = judged(c).utilities[1].vertical_sd_m;
  c.site.test_holes[0].reach.set(Length{5000});
  EXPECT_EQ(judged(c).utilities[1].vertical_sd_m, at_ten);
}

// A typed 1.2 taken as a datum level lay 99.67 m clear, without a word.
TEST(Plausible, OurDefault_LevelsThatCanHardlyBe) {
  const auto says = [](double level) {
    Utility u = gas_main({{4, -8, level}, {4, 8, level}});
    return judged(with_line(u));
  };
  EXPECT_TRUE(find(says(1.2), "utility.deep", "u2"));
  EXPECT_NE(says(1.2).verdict, Verdict::within_limits);
  EXPECT_TRUE(find(says(101.2), "utility.above-ground", "u2"));
  EXPECT_TRUE(find(says(86), "utility.far-apart", "u2"));
  EXPECT_FALSE(find(says(97), "utility.far-apart", "u2"));
  Crossing c = clean_crossing();
  c.site.water = LevelLine{{-8, 8}, {20, 8}};
  EXPECT_TRUE(find(judged(c), "site.water-deep"));
  EXPECT_NE(judged(c).verdict, Verdict::within_limits);
  c.site.water = LevelLine{{-8, 103}, {20, 103}};
  EXPECT_TRUE(find(judged(c), "site.water-above"));
}

TEST(Search, OurDefault_CountsWithItsTicket) {
  const auto with = [](auto change) {
    Crossing c = clean_crossing();
    change(c.site.utility_search);
    return c;
  };
  EXPECT_TRUE(asks(with([](auto& s) { s.reference = " - "; }), "search-reference"));
  for (const char* date : {"", "soon", "2026-02-30", "2026-03-03"})
    EXPECT_TRUE(asks(with([&](auto& s) { s.date = date; }), "search-date")) << date;
  EXPECT_TRUE(asks(with([](auto& s) { s.date.reset(); }), "search-date"));
  for (const char* date : {"", "never", "2026-03-01"})
    EXPECT_TRUE(asks(with([&](auto& s) { s.valid_to = date; }), "search-validity")) << date;
  EXPECT_TRUE(asks(with([](auto& s) { s.valid_to.reset(); }), "search-validity"));
  EXPECT_TRUE(asks(with([](auto& s) { s.valid_from = "2026-03-05"; }), "search-validity"));
  EXPECT_TRUE(asks(with([](auto& s) { s.marks_visible.reset(); }), "search-marks"));
  EXPECT_TRUE(asks(with([](auto& s) { s.marks_visible = false; }), "search-marks"));
  EXPECT_FALSE(asks(with([](auto& s) { s.valid_to = "2026-03-02"; }), "search-validity"));  // its last day
}

// The day is an argument: the same file on the day after.
TEST(Search, OurDefault_TheDayIsAnArgument) {
  Crossing c = clean_crossing();
  Tables later = tables();
  later.judged_on = Date{2026, 3, 25};
  EXPECT_EQ(assess(c, later).verdict, Verdict::incomplete);
  later.judged_on.reset();
  EXPECT_EQ(assess(c, later).verdict, Verdict::incomplete);
  EXPECT_TRUE(find(assess(c, later), "missing.day"));
}

TEST(Search, OurDefault_LateralsAreAskedAlways) {
  Crossing c = clean_crossing();
  for (const auto& answer :
       {std::optional<Laterals>{}, std::optional(Laterals::not_checked), std::optional(Laterals::entered)}) {
    c.site.utility_search.laterals = answer;
    EXPECT_TRUE(asks(c, "laterals"));
  }
  Utility service = gas_main({{9, 20, 97}, {9, 9, 97}});
  service.ends.last = LineEnd::house_connection;
  c.site.utilities.push_back(service);
  EXPECT_FALSE(asks(c, "laterals"));
}

TEST(Above, OurDefault_NothingEnteredIsAsked) {
  Crossing c = clean_crossing();
  c.site.surface.clear();
  EXPECT_TRUE(asks(c, "surface"));
  EXPECT_EQ(judged(c).verdict, Verdict::incomplete);
  c.site.nothing_above = {"walked over", "A. Nobody", "2026-03-01", ""};
  EXPECT_FALSE(asks(c, "surface"));
  c.site.nothing_above.by = "";
  EXPECT_TRUE(asks(c, "surface"));
}

// A path whose stations miss the bore leaves what stands above it open.
TEST(Above, OurDefault_WhatLiesElsewhereIsNotAbove) {
  Crossing c = clean_crossing();
  ASSERT_EQ(c.site.surface.size(), 1U);
  c.site.surface[0].kind = SurfaceKind::footway;
  c.site.surface[0].outline.clear();
  c.site.surface[0].from = Length{100};
  c.site.surface[0].to = Length{104};
  EXPECT_TRUE(asks(c, "surface"));
  c.site.surface[0].to = Length{1};  // typed the other way round
  EXPECT_FALSE(asks(c, "surface"));
}

// What stands nobody knows where answers nothing, whatever it is: it is asked where it stands.
TEST(Above, OurDefault_WithoutAPlaceItIsAsked) {
  for (const auto& [kind, word] : EnumNames<SurfaceKind>::list) {
    Crossing c = clean_crossing();
    c.site.surface[0].kind = kind;
    c.site.surface[0].outline.clear();
    c.site.surface[0].from.reset();
    EXPECT_TRUE(asks(c, "surface-place", "f1")) << word;
    EXPECT_NE(judged(c).verdict, Verdict::within_limits) << word;
    c.site.surface[0].to.reset();
    EXPECT_TRUE(asks(c, "surface-place", "f1")) << word;
  }
}

TEST(Above, OurDefault_APermissionWantsItsPermit) {
  Crossing c = clean_crossing();
  c.site.surface[0].permit = " ";
  EXPECT_TRUE(asks(c, "permit", "f1"));
}

TEST(Above, OurDefault_ARoadThatTheBoreNeverMeetsIsAFinding) {
  Crossing c = clean_crossing();
  c.site.surface[0].from = Length{-30};
  c.site.surface[0].to = Length{-20};
  const Assessment answer = judged(c);
  EXPECT_TRUE(find(answer, "surface.off-the-bore", "f1"));
  EXPECT_NE(answer.verdict, Verdict::within_limits);
}

TEST(Background, OurDefault_ALineThatTheBoreMeetsIsAsked) {
  Crossing c = clean_crossing();
  Background line;
  line.id = "g1";
  line.layer = "MISC";
  line.lines = {{{4, -5}, {4, 5}}};
  c.site.background = {line};
  EXPECT_TRUE(asks(c, "background-line", "g1"));
  EXPECT_EQ(judged(c).verdict, Verdict::incomplete);
  c.site.background[0].not_a_service = {"", "A. Nobody", "2026-03-01", ""};
  EXPECT_FALSE(asks(c, "background-line"));
  c.site.background[0].not_a_service = {};
  c.site.background[0].lines = {{{4, 9}, {4, 25}}};
  EXPECT_FALSE(asks(c, "background-line"));
  c.site.background[0].lines = {{{4, 3}, {4, 25}}};  // drawn so far, and it may go on
  EXPECT_TRUE(asks(c, "background-line", "g1"));
  c.site.background[0].lines = {{{4, 3}, {4, 6}, {6, 6}, {6, 3}, {4, 3}}};  // an outline ends nowhere
  EXPECT_FALSE(asks(c, "background-line"));
  c.site.background[0].lines = {{{-1, -5}, {-1, 5}}};  // through the launch pit
  EXPECT_TRUE(asks(c, "background-line", "g1"));
}

TEST(Typed, OurDefault_ErrorsOfNothingAreSaid) {
  const auto with = [](auto change) {
    Crossing c = clean_crossing();
    change(c);
    return judged(c);
  };
  EXPECT_TRUE(find(with([](Crossing& c) { c.bore.launch.level_sd.set(Angle{0}); }), "bore.errors-none"));
  EXPECT_TRUE(find(with([](Crossing& c) { c.bore.launch.aim_sd.set(Angle{0}); }), "bore.errors-none"));
  EXPECT_TRUE(find(with([](Crossing& c) { c.bore.launch.position_sd.set(Length{0}); }), "bore.errors-none"));
  EXPECT_TRUE(find(with([](Crossing& c) { c.bore.model.steer_constant_sd.set(Ratio{0}); }), "bore.errors-none"));
  EXPECT_TRUE(find(with([](Crossing& c) { c.site.strata[0].values.wander = Wander{0}; }), "bore.errors-none", "l1"));
  // Next to nothing is no better.
  EXPECT_TRUE(find(with([](Crossing& c) { c.bore.launch.level_sd.set(Angle{1e-6}); }), "bore.errors-none"));
  EXPECT_FALSE(find(with([](Crossing& c) { c.bore.launch.level_sd.set(Angle{0.001}); }), "bore.errors-none"));
  EXPECT_TRUE(find(with([](Crossing& c) { c.bore.model.steer_constant.set(Ratio{0.001}); }), "bore.errors-none"));
  EXPECT_TRUE(
      find(with([](Crossing& c) { c.site.strata[0].values.heave_share = Ratio{0}; }), "bore.errors-none", "l1"));
  EXPECT_TRUE(find(with([](Crossing& c) { c.site.strata[0].values.refusal_rate = RatePerLength{0}; }),
                   "bore.errors-none", "l1"));
}

// Room to work that was typed away, bad air in a shallow pit: both were silent.
TEST(Typed, OurDefault_WorkRoomAndBadAirAreSaid) {
  Crossing c = clean_crossing();
  c.pits.launch.working_length.set(Length{0});
  EXPECT_TRUE(find(judged(c), "limit.no-reason", "launch-pit"));
  c.pits.launch.working_length.set(Length{1.2});
  EXPECT_FALSE(find(judged(c), "limit.no-reason", "launch-pit"));
  c.pits.launch.signs.bad_air = true;
  EXPECT_TRUE(find(judged(c), "pit.air", "launch-pit"));
  c.pits.rules.set(ExcavationRules::din_4124);  // which name no depth for it
  EXPECT_TRUE(find(judged(c), "pit.air", "launch-pit"));
}

TEST(Typed, OurDefault_ACalibrationTypedByHandIsAFindingAndCalibratesNothing) {
  Crossing c = clean_crossing();
  c.bore.model.calibrated_from.set(12);
  const Assessment answer = judged(c);
  ASSERT_TRUE(find(answer, "bore.calibration-unproved")) << listed(answer);
  EXPECT_EQ(answer.verdict, Verdict::caution);
  c.bore.model.calibrated_records.assign(12, "one record");
  EXPECT_TRUE(find(judged(c), "bore.calibration-unproved")) << "one record twelve times is one";
  c.bore.model.calibrated_records = named_records(12);
  EXPECT_FALSE(find(judged(c), "bore.calibration-unproved"));
}

TEST(UnknownKeys, OurDefault_AMisspeltKeyCapsTheVerdict) {
  Crossing c = clean_crossing();
  c.unknown_keys = {{"/site", "utilitys", "utilities"}};
  const Assessment answer = judged(c);
  EXPECT_EQ(answer.verdict, Verdict::incomplete);
  ASSERT_TRUE(find(answer, "file.unknown-key"));
  EXPECT_THAT(finding_text(*find(answer, "file.unknown-key"), UnitSystem::metric), testing::HasSubstr("utilitys"));
}

// Far off, nothing is asked; near, everything.
TEST(Questions, OurDefault_OnlyAboutWhatLiesNear) {
  Utility far = gas_main({{-3, 20, {}}, {30, 20, {}}});
  far.outside_diameter.reset();
  far.located = {};
  EXPECT_EQ(judged(with_line(far)).verdict, Verdict::within_limits) << listed(judged(with_line(far)));
  far.path = {{-3, 4, {}}, {30, 4, {}}};
  EXPECT_EQ(judged(with_line(far)).verdict, Verdict::incomplete);
}

}  // namespace
}  // namespace burrow::test
