// The verdict: the first that holds of stop, incomplete, caution, within limits. What is missing never looks safe.

#include <gtest/gtest.h>

#include <random>
#include <tuple>

#include "burrow/check/with_findings.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

TEST(Verdict, CleanCrossing_IsWithinLimits) {
  const Assessment answer = judged(clean_crossing());
  EXPECT_EQ(answer.verdict, Verdict::within_limits) << listed(answer);
  for (const Finding& f : answer.findings) EXPECT_EQ(f.severity, Severity::note) << f.code;
}

struct TakenAway {
  const char* what;  ///< for the name of the case
  void (*take)(Crossing&);
  const char* code;
  const char* subject;
};

SurfaceFeature& only_feature(Crossing& c) {
  return c.site.surface.front();
}
Utility& only_utility(Crossing& c) {
  return c.site.utilities.front();
}

void put_house_nearby(Crossing& c) {
  SurfaceFeature house;
  house.id = "f2";
  house.kind = SurfaceKind::building;
  house.outline = {{9, 3}, {14, 3}, {14, 9}, {9, 9}};
  c.site.surface.push_back(house);
}

const TakenAway missing_data[] = {
    {"GroundAtLaunch",
     [](Crossing& c) {
       c.site.ground = {{0.5, 100}, {20, 100}};
     },
     "missing.ground", "site"},
    {"GroundAtExit",
     [](Crossing& c) {
       c.site.ground = {{-8, 100}, {7.5, 100}};
     },
     "missing.ground", "site"},
    {"Water", [](Crossing& c) { c.site.water.reset(); }, "missing.water", "site"},
    {"WaterLineOfNoPoints", [](Crossing& c) { c.site.water = LevelLine{}; }, "missing.water", "site"},
    {"SearchNotSaid", [](Crossing& c) { c.site.utility_search.done.reset(); }, "missing.utility-search", "site"},
    {"SearchNotDone", [](Crossing& c) { c.site.utility_search.done = false; }, "missing.utility-search", "site"},
    {"NoUtilities", [](Crossing& c) { c.site.utilities.clear(); }, "missing.utilities", "site"},
    {"LateralsNearHouse",
     [](Crossing& c) {
       put_house_nearby(c);
       c.site.utility_search.laterals.reset();
     },
     "missing.laterals", "site"},
    {"LateralsNotCheckedNearSewer",
     [](Crossing& c) {
       only_utility(c).kind = UtilityKind::sewer;
       c.site.utility_search.laterals = Laterals::not_checked;
     },
     "missing.laterals", "site"},
    {"UtilityDepth", [](Crossing& c) { only_utility(c).path[1].z_m.reset(); }, "missing.utility-depth", "u1"},
    {"UtilityAllDepths",
     [](Crossing& c) {
       for (PathVertex& v : only_utility(c).path) v.z_m.reset();
     },
     "missing.utility-depth", "u1"},
    {"UtilityPath", [](Crossing& c) { only_utility(c).path.clear(); }, "missing.utility-depth", "u1"},
    {"UtilityDiameter", [](Crossing& c) { only_utility(c).outside_diameter.reset(); }, "missing.utility-diameter",
     "u1"},
    {"UtilityLateralError",
     [](Crossing& c) { only_utility(c).located.lateral_sd.reset(), only_utility(c).located.level.reset(); },
     "missing.utility-location-error", "u1"},
    {"UtilityVerticalError",
     [](Crossing& c) { only_utility(c).located.vertical_sd.reset(), only_utility(c).located.level.reset(); },
     "missing.utility-location-error", "u1"},
    {"RoadRule", [](Crossing& c) { only_feature(c).rule.reset(); }, "missing.rule", "f1"},
    {"TrackRule",
     [](Crossing& c) {
       only_feature(c).kind = SurfaceKind::track;
       only_feature(c).rule.reset();
     },
     "missing.rule", "f1"},
    {"DitchRule",
     [](Crossing& c) {
       only_feature(c).kind = SurfaceKind::ditch;
       only_feature(c).rule.reset();
     },
     "missing.rule", "f1"},
    {"RoadPermission", [](Crossing& c) { only_feature(c).permission = {Permission::not_asked}; }, "missing.permission",
     "f1"},
    {"TrackPermission",
     [](Crossing& c) {
       only_feature(c).kind = SurfaceKind::track;
       only_feature(c).permission.set(Permission::not_asked);
     },
     "missing.permission", "f1"},
    {"RoadPlace", [](Crossing& c) { only_feature(c).from.reset(); }, "missing.surface-place", "f1"},
    {"TrackPlace",
     [](Crossing& c) {
       only_feature(c).kind = SurfaceKind::track;
       only_feature(c).from.reset();
       only_feature(c).to.reset();
     },
     "missing.surface-place", "f1"},
    {"Pipe", [](Crossing& c) { c.pipe.reset(); }, "missing.pipe", "pipe"},
    {"NewerFile", [](Crossing& c) { c.version = known_file_version + 1; }, "file.newer", "site"},
};

class TakeAway : public ::testing::TestWithParam<TakenAway> {};

TEST_P(TakeAway, MakesIncompleteAndNamesIt) {
  Crossing crossing = clean_crossing();
  GetParam().take(crossing);
  const Assessment answer = judged(crossing);
  EXPECT_EQ(answer.verdict, Verdict::incomplete) << listed(answer);
  const Finding* finding = find(answer, GetParam().code, GetParam().subject);
  ASSERT_NE(finding, nullptr) << listed(answer);
  EXPECT_TRUE(finding->missing);
  // Muting does not help: what is not known stays not known.
  const std::string code = finding->code, subject = finding->subject;
  crossing = with_muted(crossing, code, subject, "does not matter");
  const Assessment muted = judged(crossing);
  EXPECT_EQ(muted.verdict, Verdict::incomplete) << listed(muted);
  ASSERT_NE(find(muted, GetParam().code), nullptr);
  EXPECT_TRUE(find(muted, GetParam().code)->muted);
}

INSTANTIATE_TEST_SUITE_P(Verdict, TakeAway, ::testing::ValuesIn(missing_data),
                         [](const auto& one) { return std::string(one.param.what); });

// Nothing that is missing covers up for something else that is missing.
TEST(Verdict, EveryTwoMissing_AreIncomplete) {
  for (const TakenAway& one : missing_data)
    for (const TakenAway& other : missing_data) {
      Crossing crossing = clean_crossing();
      one.take(crossing);
      if (crossing.site.utilities.empty()) continue;  // the other may want one
      other.take(crossing);
      const Assessment answer = judged(crossing);
      EXPECT_EQ(answer.verdict, Verdict::incomplete) << one.what << " " << other.what << listed(answer);
      EXPECT_TRUE(find(answer, one.code) || find(answer, other.code)) << one.what << " " << other.what;
    }
}

TEST(Verdict, AskedAndAnswered_IsNotMissing) {
  Crossing none = clean_crossing();
  none.site.utilities.clear();
  none.site.utility_search.none_found.set(true);
  EXPECT_EQ(judged(none).verdict, Verdict::within_limits) << listed(judged(none));

  Crossing typed = clean_crossing();
  only_feature(typed).rule.reset();
  only_feature(typed).required_cover = Length{0.9};
  EXPECT_EQ(judged(typed).verdict, Verdict::within_limits) << listed(judged(typed));

  // "Entered" counts when one stands in the list.
  Crossing laterals = clean_crossing();
  laterals.site.utility_search.laterals = Laterals::entered;
  EXPECT_EQ(judged(laterals).verdict, Verdict::incomplete);
  laterals.site.utilities.front().ends.first = LineEnd::house_connection;
  EXPECT_EQ(judged(laterals).verdict, Verdict::within_limits) << listed(judged(laterals));
}

TEST(Verdict, StopComesBeforeIncomplete) {
  Crossing crossing = clean_crossing();
  crossing.site.water.reset();
  only_feature(crossing).permission.set(Permission::refused);
  const Assessment answer = judged(crossing);
  EXPECT_EQ(answer.verdict, Verdict::stop) << listed(answer);
  EXPECT_TRUE(find(answer, "missing.water"));
  EXPECT_TRUE(find(answer, "surface.permission-refused", "f1"));
}

TEST(Verdict, IncompleteComesBeforeCaution) {
  Crossing crossing = clean_crossing();
  crossing.site.strata.front().known.set(StratumEvidence::guess);
  EXPECT_EQ(judged(crossing).verdict, Verdict::caution) << listed(judged(crossing));
  crossing.site.water.reset();
  EXPECT_EQ(judged(crossing).verdict, Verdict::incomplete);
}

// Our model: a guessed stratum is a caution where the bore runs through it, nowhere else.
TEST(Verdict, GuessedSoil_WhereTheBoreRuns) {
  Crossing crossing = clean_crossing();
  Stratum deep;
  deep.id = "l2";
  deep.soil = "dense-sand";
  deep.top = LevelLine{{-8, 96}, {20, 96}};
  crossing.site.strata.push_back(deep);
  EXPECT_EQ(judged(crossing).verdict, Verdict::within_limits) << listed(judged(crossing));
  crossing.site.strata.back().top = LevelLine{{-8, 96}, {6, 99.5}, {20, 99.5}};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "site.soil-guessed", "l2")) << listed(answer);
  EXPECT_GT(*find(answer, "site.soil-guessed")->station_m, 1);
}

// A file of a newer program: never better than incomplete, and it says so.
TEST(Verdict, NewerFile_KeepsAStop) {
  Crossing crossing = clean_crossing();
  crossing.version = 7;
  only_feature(crossing).permission.set(Permission::refused);
  EXPECT_EQ(judged(crossing).verdict, Verdict::stop);
  EXPECT_EQ(finding_text(*find(judged(crossing), "file.newer"), UnitSystem::metric),
            "file version 7, this program knows 1: only what it knows is judged");
}

// Second route: each finding against every other. Worst first; a clear gap where the worst about its utility stands;
// what stands alike stays as it was.
TEST(Verdict, ManyFindings_InOrder) {
  std::mt19937 random(6);
  const Crossing crossing = clean_crossing();
  const char* codes[] = {"utility.separation", "utility.contact", "pit.depth", "missing.water"};
  std::vector<Finding> more;
  for (int i = 0; i < 400; ++i) {
    Finding& f = more.emplace_back();
    f.code = codes[random() % 4];
    f.severity = static_cast<Severity>(random() % 3);
    f.subject = "u" + std::to_string(random() % 40);
    f.missing = f.code == std::string("missing.water");
    if (random() % 5) f.margin = -static_cast<double>(random() % 20) / 20;
    f.station_m = i;  // tells them apart
  }
  const auto rank = [](const Finding& f) {
    if (f.severity == Severity::stop) return 0;
    if (f.missing) return 1;
    if (f.severity == Severity::caution) return counts_in_verdict(f) ? 2 : 3;
    return 4;
  };
  Assessment bare = judged(crossing);
  bare.findings.clear();
  const std::vector<Finding> sorted = with_findings(crossing, tables(), bare, more).findings;
  ASSERT_EQ(sorted.size(), more.size());
  const auto stands = [&](const Finding& f) {
    double margin = f.margin.value_or(0);
    if (f.code == "utility.separation")
      for (const Finding& other : sorted)
        if (other.subject == f.subject && rank(other) == rank(f)) margin = std::min(margin, other.margin.value_or(0));
    return std::tuple(rank(f), margin, f.code != "utility.separation", *f.station_m);
  };
  std::vector<bool> there(more.size(), false);
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    const auto number = static_cast<std::size_t>(*sorted[i].station_m);
    EXPECT_FALSE(there[number]);
    there[number] = true;
    EXPECT_EQ(sorted[i].subject, more[number].subject);
    EXPECT_EQ(sorted[i].code, more[number].code);
    if (i == 0) continue;
    EXPECT_LT(stands(sorted[i - 1]), stands(sorted[i])) << i;
  }
}

}  // namespace
}  // namespace burrow::test
