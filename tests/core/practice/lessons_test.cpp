// The five lessons that stand ready: each is what its aim says.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/practice_file.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

struct Lesson {
  Crossing crossing;
  Practice practice;
  explicit Lesson(const std::string& name) {
    const auto text = read_text_file(BURROW_SOURCE_DIR "/samples/lesson-" + name + ".crossing");
    EXPECT_TRUE(text) << name;
    const auto read = read_crossing(text.value_or("{}"), tables());
    EXPECT_TRUE(read) << name;
    crossing = read.value_or(Crossing());
    const auto truth = read_practice(crossing.practice, tables());
    EXPECT_TRUE(truth) << name;
    practice = truth.value_or(Practice());
    EXPECT_FALSE(practice.title.empty() || practice.aim.empty() || practice.question.empty()) << name;
    EXPECT_TRUE(practice.question.ends_with('?')) << name;
  }
  [[nodiscard]] PracticeBore bored() const { return practice_bore(crossing, tables(), practice.truth); }
  /// The cause that cost most, across or up.
  [[nodiscard]] std::string_view main_cause() const {
    const Debrief d = debrief(crossing, tables(), practice.truth);
    return std::max_element(d.shares.begin(), d.shares.end(),
                            [](const MissShare& a, const MissShare& b) {
                              return std::hypot(a.left_m, a.up_m) < std::hypot(b.left_m, b.up_m);
                            })
        ->cause;
  }
};

TEST(Lessons, Level_CostsMostAndComesOutHigh) {
  const Lesson lesson("level");
  EXPECT_EQ(lesson.main_cause(), "level");
  EXPECT_GT(debrief(lesson.crossing, tables(), lesson.practice.truth).miss_up_m, 0.06);
  EXPECT_EQ(lesson.bored().end, PracticeEnd::arrived);
}

TEST(Lessons, Sight_CostsMostAndComesOutLeft) {
  const Lesson lesson("sight");
  EXPECT_EQ(lesson.main_cause(), "sight");
  EXPECT_GT(debrief(lesson.crossing, tables(), lesson.practice.truth).miss_left_m, 0.1);
}

TEST(Lessons, Sag_TheGroundCostsMostAndComesOutLow) {
  const Lesson lesson("sag");
  EXPECT_EQ(lesson.main_cause(), "ground");
  EXPECT_LT(debrief(lesson.crossing, tables(), lesson.practice.truth).miss_up_m, -0.1);
}

TEST(Lessons, Shallow_ComesOutOfTheGroundDeeperItDoesNot) {
  Lesson lesson("shallow");
  EXPECT_EQ(lesson.bored().end, PracticeEnd::daylight);
  lesson.crossing.bore.launch.elevation.m -= 0.55;
  EXPECT_EQ(lesson.bored().end, PracticeEnd::arrived);
}

TEST(Lessons, Mark_IsStruckThoughDrawnClear) {
  const Lesson lesson("mark");
  EXPECT_EQ(lesson.bored().end, PracticeEnd::struck);
  Lesson as_marked("mark");
  as_marked.practice.truth.services.clear();
  EXPECT_EQ(as_marked.bored().end, PracticeEnd::arrived);
}

}  // namespace
}  // namespace burrow::test
