// The seven lessons that stand ready: each is what its aim says.
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

/// Who only ever presses *drive*.
PracticeRun driven_blind(const Lesson& lesson) {
  PracticeRun run(lesson.crossing, tables(), lesson.practice.truth);
  for (int i = 0; i < 40 && !run.over(); ++i) run.choose(PracticeChoice::go_on);
  return run;
}

// No lesson rewards blind driving, and none says its answer before it is asked.
TEST(Lessons, BlindDriving_IsNeverAllRight) {
  for (const char* name : {"level", "sight", "sag", "shallow", "mark", "stone", "trench"}) {
    const Lesson lesson(name);
    const PracticeRun run = driven_blind(lesson);
    ASSERT_TRUE(run.over()) << name;
    EXPECT_TRUE(std::any_of(run.decisions().begin(), run.decisions().end(), [](const PracticeDecision& d) {
      return !d.right();
    })) << name;
    EXPECT_FALSE(lesson.practice.rule.empty()) << name;
    for (const std::string& told : {lesson.practice.title, lesson.crossing.name, lesson.crossing.notes})
      for (const char* answer :
           {"lies", "past the stake", "soft clay", "shallow", "deeper", "half a degree", "stone", "trench"})
        EXPECT_EQ(told.find(answer), std::string::npos) << name << ": " << told;
  }
}

// On a layout that must stop no driving on is right, and stopping is.
TEST(Lessons, OnAStop_GoingOnIsWrongAndStoppingRight) {
  for (const char* name : {"shallow", "mark"}) {
    const Lesson lesson(name);
    const PracticeRun blind = driven_blind(lesson);
    for (const PracticeDecision& decision : blind.decisions())
      EXPECT_FALSE(decision.right()) << name << " at " << decision.nose_m;
    PracticeRun careful(lesson.crossing, tables(), lesson.practice.truth);
    careful.choose(PracticeChoice::turn_level);
    careful.choose(PracticeChoice::go_on);
    careful.choose(PracticeChoice::leave_and_expose);
    EXPECT_TRUE(careful.decisions().back().right()) << name;
    EXPECT_TRUE(careful.must_not_start());
  }
}

// The main that nobody has exposed: the run sheet says stop before it, and there the hole is right.
TEST(Lessons, Mark_TheRunSheetStopsBeforeTheMain) {
  const Lesson lesson("mark");
  const PracticeRun run = driven_blind(lesson);
  EXPECT_EQ(run.end(), PracticeEnd::struck);
  EXPECT_TRUE(std::any_of(run.decisions().begin(), run.decisions().end(), [](const PracticeDecision& d) {
    return d.reason == PracticeReason::run_sheet && d.advised == Advice::stop_until_exposed;
  }));
}

// Soft ground sounds soft and goes in quickly: at the first stops already, and looking there is right.
TEST(Lessons, Sag_PaceAndSoundTellAtTheFirstStops) {
  const Lesson lesson("sag");
  PracticeRun run(lesson.crossing, tables(), lesson.practice.truth);
  run.choose(PracticeChoice::turn_level);
  run.choose(PracticeChoice::go_on);
  ASSERT_TRUE(run.pace());
  EXPECT_LT(*run.pace(), 0.5);
  EXPECT_NE(run.sound().english().find("soft"), std::string::npos) << run.sound().english();
  run.choose(PracticeChoice::stop_and_look);
  EXPECT_TRUE(run.decisions().back().right());
  EXPECT_EQ(run.decisions().back().reason, PracticeReason::pace);
}

// A stone rings, takes three times the time and turns the tool: the stop behind it asks for a look.
TEST(Lessons, Stone_RingsAndTurnsTheTool) {
  const Lesson lesson("stone");
  EXPECT_EQ(lesson.main_cause(), "stones");
  EXPECT_LT(debrief(lesson.crossing, tables(), lesson.practice.truth).miss_left_m, -0.12);
  EXPECT_EQ(lesson.bored().end, PracticeEnd::arrived);
  PracticeRun run(lesson.crossing, tables(), lesson.practice.truth);
  run.choose(PracticeChoice::turn_level);
  bool rang = false;
  for (int i = 0; i < 40 && !run.over(); ++i) {
    const bool rings = run.sound().english().find("ringing") != std::string::npos;
    if (rings && !rang) {
      rang = true;
      EXPECT_GT(run.pace().value_or(0), 1.5);
      run.choose(PracticeChoice::stop_and_look);
      EXPECT_TRUE(run.decisions().back().right());
      EXPECT_NE(run.decisions().back().reason, PracticeReason::none);
    }
    run.choose(PracticeChoice::go_on);
  }
  EXPECT_TRUE(rang);
}

// Backfill is quick: the stop behind the trench asks for a look, and the drawn ground says nothing of it.
TEST(Lessons, Trench_TheToolRuns) {
  const Lesson lesson("trench");
  EXPECT_EQ(lesson.bored().end, PracticeEnd::arrived);
  PracticeRun run(lesson.crossing, tables(), lesson.practice.truth);
  run.choose(PracticeChoice::turn_level);
  double fastest = 10, there = 0;
  for (int i = 0; i < 40 && !run.over(); ++i) {
    if (run.pace() && *run.pace() < fastest) {
      fastest = *run.pace();
      there = run.nose_m();
    }
    run.choose(PracticeChoice::go_on);
  }
  EXPECT_LT(fastest, 0.67);
  EXPECT_GT(there, 4.3);
  EXPECT_LT(there, 7.3);
  EXPECT_TRUE(std::any_of(run.decisions().begin(), run.decisions().end(), [](const PracticeDecision& d) {
    return d.nose_m > 4.3 && d.nose_m < 7.3 && !d.right();
  })) << "whoever drove on there was wrong";
}

// A level that is turned on the cradle arrives ten times nearer.
TEST(Lessons, Level_TurnedOnTheCradleItArrives) {
  const Lesson lesson("level");
  PracticeRun run(lesson.crossing, tables(), lesson.practice.truth);
  run.choose(PracticeChoice::turn_level);
  while (!run.over()) run.choose(PracticeChoice::go_on);
  EXPECT_EQ(run.end(), PracticeEnd::arrived);
  EXPECT_LT(std::abs(debrief(lesson.crossing, tables(), run.conditions()).miss_up_m), 0.03);
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
