// Many launches judged on one groundwork against assess() of each.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "burrow/check/prepared_site.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing sample(const std::string& name) {
  return *read_crossing(*read_text_file(BURROW_SOURCE_DIR "/samples/" + name + ".crossing"), tables());
}

const char* const samples[] = {"house-service", "four-faults",  "rail-siding",
                               "car-park-duct", "first-lesson", "sixty-utilities"};

/// What the search does not ask for taken out, and findings in an order of their own: a search does not rank them.
Assessment without_working(Assessment answer) {
  answer.working.clear();
  std::sort(answer.findings.begin(), answer.findings.end(), [](const Finding& a, const Finding& b) {
    const auto key = [](const Finding& f) { return std::tuple{f.code, f.subject, f.name.english(), f.station_m}; };
    return key(a) < key(b);
  });
  answer.marks.clear();
  answer.launch_pit_work.proposal.sloped_m3 = answer.exit_pit_work.proposal.sloped_m3 = std::nullopt;  // for the eye
  for (UtilityAnswer& u : answer.utilities) {
    u.expose_rank = u.chance_to_go_on = u.chance_after_hole = u.required_after_hole_m = std::nullopt;
    u.hole_station_m = u.hole_offset_m = u.hole_depth_low_m = u.hole_depth_high_m = std::nullopt;
  }
  return answer;
}

TEST(JudgedLaunch, Samples_TheVeryAnswerOfAssess) {
  for (const char* name : samples) {
    Crossing crossing = sample(name);
    const PreparedSite groundwork(crossing, tables());
    LaunchCache memory;
    for (const double lower_m : {0.0, 0.2, -0.4})
      for (const double grade : {0.0, -0.03}) {
        Crossing moved = crossing;
        moved.bore.launch.elevation.m -= lower_m;
        moved.bore.launch.grade.v += grade;
        const Assessment plain = without_working(judged(moved));
        EXPECT_TRUE(without_working(judge_launch(moved, tables(), groundwork).answer) == plain)
            << name << lower_m << grade;
        EXPECT_TRUE(without_working(judge_launch(moved, tables(), groundwork, &memory).answer) == plain)
            << name << lower_m << grade;
      }
  }
}

const Finding* kept(const JudgedLaunch& launch, std::string_view code, std::string_view subject) {
  for (const Finding& f : launch.passed)
    if (f.code == code && f.subject == subject) return &f;
  return nullptr;
}

// Each limit that is kept stands with the value that the answer holds; margin = (limit − value)/limit.
TEST(JudgedLaunch, LimitsKept_HaveTheValuesOfTheAnswer) {
  for (const char* name : samples) {
    const Crossing crossing = sample(name);
    const JudgedLaunch launch = judge_launch(crossing, tables(), PreparedSite(crossing, tables()));
    ASSERT_FALSE(launch.passed.empty());
    for (const Finding& f : launch.passed) {
      ASSERT_TRUE(f.measured && f.limit && f.margin) << f.code;
      const double scale = *f.limit == 0 ? 1 : std::abs(*f.limit);
      const double margin = (f.at_least ? *f.measured - *f.limit : *f.limit - *f.measured) / scale;
      EXPECT_NEAR(*f.margin, std::max(margin, 0.0), 1e-12) << name << f.code;
      EXPECT_GE(margin, -1e-8) << name << f.code;
    }
    for (const UtilityAnswer& u : launch.answer.utilities) {
      if (!u.separation_m) continue;
      const Finding* gap = kept(launch, "utility.separation", u.id);
      const Finding* broken = find(launch.answer, "utility.separation", u.id);
      ASSERT_NE(gap != nullptr, broken != nullptr) << name << u.id;
      if (gap) {
        EXPECT_EQ(*gap->measured, *u.separation_m);
        EXPECT_EQ(*gap->limit, *u.required_m);
      }
    }
    if (const Finding* cover = kept(launch, "bore.cover", "bore")) {
      EXPECT_EQ(*cover->measured, *launch.answer.cover.least_m);
    }
    if (const Finding* window = kept(launch, "bore.exit-window", "exit-pit")) {
      EXPECT_EQ(*window->measured, *launch.answer.arrival.chance_inside_exit_pit);
    }
  }
}

// With tables of the turning the path may differ by two millimetres, the band by a hundredth of itself; everything
// judged follows them.
TEST(JudgedLaunch, Tables_WithinTwoMillimetres) {
  for (const char* name : samples) {
    Crossing crossing = sample(name);
    const double from = crossing.bore.launch.station.m, to = crossing.bore.exit.station.m;
    const PreparedSite groundwork(crossing, tables(), {from, to, 6});
    EXPECT_EQ(groundwork.turns.has_value(), crossing.site.strips.empty());
    for (const double lower_m : {0.0, 0.4})
      for (const double grade : {0.0, -0.03, 0.03}) {
        Crossing moved = crossing;
        moved.bore.launch.elevation.m -= lower_m;
        moved.bore.launch.grade.v += grade;
        const Assessment plain = judged(moved);
        const Assessment quick = judge_launch(moved, tables(), groundwork).answer;
        ASSERT_EQ(quick.bore.ends, plain.bore.ends) << name;
        const PathPoint &a = quick.bore.points.back(), &b = plain.bore.points.back();
        EXPECT_NEAR(a.z_m, b.z_m, 2e-3) << name << lower_m << grade;
        EXPECT_NEAR(a.x_m, b.x_m, 2e-3) << name;
        EXPECT_NEAR(a.sd_vertical_m, b.sd_vertical_m, 0.01 * b.sd_vertical_m) << name;
        ASSERT_EQ(quick.neutral_line.size(), plain.neutral_line.size());
        for (std::size_t i = 0; i < quick.neutral_line.size(); ++i) {
          ASSERT_EQ(quick.neutral_line[i].cover_m.has_value(), plain.neutral_line[i].cover_m.has_value()) << name;
          if (!quick.neutral_line[i].cover_m) continue;
          EXPECT_NEAR(*quick.neutral_line[i].cover_m, *plain.neutral_line[i].cover_m, 2e-3) << name << i;
        }
      }
  }
}

}  // namespace
}  // namespace burrow::test
