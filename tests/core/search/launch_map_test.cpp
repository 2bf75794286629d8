// The map of launches against assess() of every launch on it, its sides, locks, threads.

#include "burrow/search/launch_map.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/check/limits.h"
#include "burrow/check/prepared_site.h"
#include "burrow/crossing/locks.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/words/launch_text.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing sample(const std::string& name) {
  return *read_crossing(*read_text_file(BURROW_SOURCE_DIR "/samples/" + name + ".crossing"), tables());
}

LaunchMapOptions coarse(int cells, unsigned threads = 2) {
  LaunchMapOptions options;
  options.cells = cells;
  options.threads = threads;
  options.refine = false;
  return options;
}

bool among(const std::vector<Finding>& all, const Finding& f) {
  return std::any_of(all.begin(), all.end(), [&](const Finding& one) {
    return one.code == f.code && one.subject == f.subject && one.severity == f.severity;
  });
}

/// The chance to arrive counts by its complement; none counts by more than one.
double margin_in_map(const Finding& f) {
  if (f.code == "bore.exit-window") return bounded_margin((*f.measured - *f.limit) / (1 - *f.limit));
  return f.limit && f.margin ? bounded_margin(*f.margin) : -1;
}

struct ByBruteForce {
  Verdict verdict = Verdict::within_limits;
  double stop_margin = 0;     ///< least of the stops broken
  double caution_margin = 0;  ///< least of the cautions broken that have a measure
};

ByBruteForce brute_force(const Crossing& crossing, const LaunchMap& map, const MapPlace& place) {
  Crossing moved = crossing;
  moved.bore.launch = launch_at(crossing, map.over, place);
  ByBruteForce answer;
  for (const Finding& f : judged(moved).findings) {
    if (f.missing || f.severity == Severity::note || f.muted || among(map.everywhere, f)) continue;
    if (f.severity == Severity::stop) {
      answer.verdict = Verdict::stop;
      answer.stop_margin = std::min(answer.stop_margin, margin_in_map(f));
    } else {
      if (answer.verdict != Verdict::stop) answer.verdict = Verdict::caution;
      if (f.limit && f.margin) answer.caution_margin = std::min(answer.caution_margin, margin_in_map(f));
    }
  }
  return answer;
}

// The table of the turning moves a path by less than 2 mm and a band by less than 1 %: a margin by less than 2 %. A
// verdict may differ only where a margin is that near to nothing.
constexpr double hair = 0.02;

TEST(LaunchMap, EveryCell_AsAssessOfTheCrossingMovedThere) {
  for (const char* name : {"house-service", "four-faults", "rail-siding", "first-lesson"}) {
    const Crossing crossing = sample(name);
    const LaunchMap map = search_launches(crossing, tables(), coarse(9));
    ASSERT_EQ(map.cells.size(), 81U);
    for (const LaunchCell& cell : map.cells) {
      const ByBruteForce plain = brute_force(crossing, map, cell.place);
      if (cell.verdict != plain.verdict) {
        EXPECT_LT(std::min(std::abs(cell.margin), std::abs(std::min(plain.stop_margin, plain.caution_margin))), hair)
            << name << cell.place.across << " " << cell.place.down;
        continue;
      }
      if (cell.verdict == Verdict::stop) {
        EXPECT_NEAR(cell.margin, plain.stop_margin, hair * (1 + std::abs(plain.stop_margin))) << name;
      } else if (plain.caution_margin < 0) {
        EXPECT_NEAR(cell.margin, plain.caution_margin, hair * (1 + std::abs(plain.caution_margin))) << name;
      } else {
        EXPECT_GE(cell.margin, 0) << name;
      }
    }
  }
}

// Where nothing is broken the least margin is that of the limits judged and kept, one by one, by the exact path.
TEST(LaunchMap, CellsWithinLimits_LeastMarginOfAllThatIsKept) {
  const Crossing crossing = sample("first-lesson");
  const LaunchMap map = search_launches(crossing, tables(), coarse(9));
  const PreparedSite groundwork(crossing, tables());
  int compared = 0;
  for (const LaunchCell& cell : map.cells) {
    if (cell.verdict != Verdict::within_limits) continue;
    Crossing moved = crossing;
    moved.bore.launch = launch_at(crossing, map.over, cell.place);
    const JudgedLaunch launch = judge_launch(moved, tables(), groundwork);
    ASSERT_GE(cell.binds, 0);
    const Finding& binds = map.limits[static_cast<std::size_t>(cell.binds)];
    double of_it = 2;
    for (const Finding& f : launch.passed) {
      if (f.severity == Severity::note) continue;
      if (f.code == binds.code && f.subject == binds.subject && f.severity == binds.severity)
        of_it = std::min(of_it, margin_in_map(f));
    }
    EXPECT_NEAR(cell.margin, of_it, hair) << binds.code;
    ++compared;
  }
  EXPECT_GT(compared, 3);
}

TEST(LaunchMap, AnyNumberOfThreads_TheSameMap) {
  for (const char* name : {"house-service", "four-faults"}) {
    const Crossing crossing = sample(name);
    LaunchMapOptions options = coarse(12, 1);
    options.refine = true;
    const LaunchMap one = search_launches(crossing, tables(), options);
    for (const unsigned threads : {2U, 3U, 7U}) {
      options.threads = threads;
      EXPECT_TRUE(search_launches(crossing, tables(), options) == one) << name << threads;
    }
  }
}

TEST(LaunchMap, StoppedBefore_NothingClaimed) {
  std::stop_source source;
  source.request_stop();
  const LaunchMap map = search_launches(sample("house-service"), tables(), coarse(8), source.get_token());
  EXPECT_TRUE(map.cancelled);
  EXPECT_TRUE(map.cells.empty());
  EXPECT_FALSE(map.best);
  EXPECT_FALSE(map.works);
}

TEST(LaunchMap, StoppedOnTheWay_NothingClaimed) {
  std::stop_source source;
  const LaunchMap map =
      search_launches(sample("house-service"), tables(), coarse(24, 1), source.get_token(), [&](double share) {
        if (share > 0.3) source.request_stop();
      });
  EXPECT_TRUE(map.cancelled);
  EXPECT_FALSE(map.works);
}

TEST(LaunchMap, MissingData_NamedAndIncompleteButInNoMargin) {
  Crossing crossing = clean_crossing();
  const LaunchMap full = search_launches(crossing, tables(), coarse(6));
  EXPECT_TRUE(full.missing.empty());
  crossing.site.water.reset();
  crossing.pipe.reset();
  const LaunchMap map = search_launches(crossing, tables(), coarse(6));
  ASSERT_EQ(map.missing.size(), 2U);
  EXPECT_EQ(map.missing[0].code, "missing.water");
  EXPECT_EQ(map.missing[1].code, "missing.pipe");
  // The margins leave it out; the verdict that is shown does not.
  for (const LaunchCell& cell : map.cells) {
    EXPECT_NE(cell.verdict, Verdict::incomplete);
    EXPECT_EQ(cell.assessed, cell.verdict == Verdict::stop ? Verdict::stop : Verdict::incomplete);
    EXPECT_EQ(cell.missing, 2);
  }
}

TEST(LaunchMap, SameAtEveryLaunch_SaidOnce) {
  Crossing crossing = clean_crossing();
  crossing.bore.exit.station = Length{19};  // 18 m at most for this tool
  const LaunchMap map = search_launches(crossing, tables(), coarse(6));
  ASSERT_FALSE(map.everywhere.empty());
  EXPECT_EQ(map.everywhere.front().code, "bore.length");
  EXPECT_FALSE(map.works);
  for (const LaunchCell& cell : map.cells)
    if (cell.binds >= 0) {
      EXPECT_NE(map.limits[static_cast<std::size_t>(cell.binds)].code, "bore.length");
    }
  EXPECT_NE(search_headline(map, UnitSystem::metric).find("wherever the launch is"), std::string::npos);
}

TEST(LaunchMap, ChanceOfACleanBore_ArrivalTimesNoContact) {
  const Crossing crossing = sample("house-service");
  const LaunchMap map = search_launches(crossing, tables(), coarse(5));
  const Assessment here = judged(crossing);
  EXPECT_NEAR(*map.here.chance_clean,
              *here.arrival.chance_inside_exit_pit * (1 - *here.chance_of_refusal) * (1 - *here.contact_chance_any) *
                  (1 - here.chance_unknown_service.value_or(0)),
              2e-3);
  for (const LaunchCell& cell : map.cells)
    if (cell.chance_clean) {
      EXPECT_GE(*cell.chance_clean, 0);
      EXPECT_LE(*cell.chance_clean, 1);
    }
}

TEST(MapAxes, HoldTheLaunchAsItStands) {
  Crossing crossing = clean_crossing();
  for (const double depth : {0.05, 1.4, 4.5, 7.0})
    for (const double grade : {0.0, 0.3, -0.99}) {
      crossing.bore.launch.elevation = Length{100 - depth};
      crossing.bore.launch.grade = Ratio{grade};
      const auto [across, down] = map_axes(crossing, tables(), {});
      EXPECT_LE(across.from, grade);
      EXPECT_GE(across.to, grade);
      EXPECT_GE(across.from, -1);
      EXPECT_LE(across.to, 1);
      EXPECT_LE(down.from, depth + 1e-9);
      EXPECT_GE(down.to, depth - 1e-9);
      EXPECT_EQ(across.count, 64);
      EXPECT_EQ(across.at(0), across.from);
      EXPECT_EQ(across.at(63), across.to);
    }
}

TEST(MapAxes, Locked_HasItsValueAlone) {
  Crossing crossing = clean_crossing();
  crossing.locks = {"/bore/launch/elevation_m"};
  const LaunchMap map = search_launches(crossing, tables(), coarse(7));
  EXPECT_EQ(map.down.count, 1);
  EXPECT_TRUE(map.down.locked);
  EXPECT_EQ(map.across.count, 7);
  for (const LaunchCell& cell : map.cells) EXPECT_NEAR(cell.place.down, 1.4, 1e-12);
  ASSERT_TRUE(map.best);
  EXPECT_NEAR(launch_at(crossing, map.over, map.best->place).elevation.m, 98.6, 1e-12);
  crossing.locks = {"/bore"};
  const LaunchMap one = search_launches(crossing, tables(), coarse(7));
  ASSERT_EQ(one.cells.size(), 1U);
  EXPECT_TRUE(one.everywhere.empty());
}

TEST(MapAxes, PlaceAndLaunch_ThereAndBack) {
  const Crossing crossing = sample("house-service");
  for (const MapOver over : {MapOver::depth_and_grade, MapOver::station_and_offset}) {
    const Launch launch = launch_at(crossing, over, place_of(crossing, over));
    EXPECT_NEAR(launch.elevation.m, crossing.bore.launch.elevation.m, 1e-12);
    EXPECT_EQ(launch.grade, crossing.bore.launch.grade);
    EXPECT_EQ(launch.station, crossing.bore.launch.station);
    EXPECT_EQ(launch.offset, crossing.bore.launch.offset);
  }
}

TEST(LaunchMap, StationAndOffset_EveryCellAsAssess) {
  const Crossing crossing = sample("house-service");
  LaunchMapOptions options = coarse(6);
  options.over = MapOver::station_and_offset;
  const LaunchMap map = search_launches(crossing, tables(), options);
  for (const LaunchCell& cell : map.cells) {
    const ByBruteForce plain = brute_force(crossing, map, cell.place);
    if (cell.verdict == plain.verdict && plain.verdict == Verdict::stop) {
      EXPECT_NEAR(cell.margin, plain.stop_margin, hair * (1 + std::abs(plain.stop_margin)));
    } else if (cell.verdict != plain.verdict) {
      EXPECT_LT(std::min(std::abs(cell.margin), std::abs(std::min(plain.stop_margin, plain.caution_margin))), hair);
    }
  }
}

}  // namespace
}  // namespace burrow::test
