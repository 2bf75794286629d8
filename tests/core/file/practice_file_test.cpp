// A practice bore in its file: it comes back, and what is wrong is refused with its place.
#include "burrow/file/practice_file.h"

#include <gtest/gtest.h>

#include "burrow/file/crossing_file.h"
#include "burrow/file/tables_file.h"

namespace burrow::test {
namespace {

const Tables& known() {
  static const Tables tables = load_tables(Date{2026, 3, 2});
  return tables;
}

Practice sample() {
  Practice practice;
  practice.title = "The level lies";
  practice.aim = "See what half a degree does.";
  practice.question = "How much of the miss is the level?";
  practice.sonde = false;
  practice.truth.seed = 42;
  practice.truth.errors = {0.0087, -0.002, 0.01, -0.01};
  practice.truth.soils = {{"l1", "soft-clay"}};
  Strip trench;
  trench.id = "t1";
  trench.soil = "trench-backfill";
  trench.outline = {{3, -4}, {4, -4}, {4, 4}, {3, 4}};
  trench.bottom_elevation = Length{97.5};
  practice.truth.trenches = {trench};
  practice.truth.stones = {{2.5, 0.01, -0.02}};
  practice.truth.services = {{"u1", 0.3, 0}};
  practice.results = {{"group 2", "arrived", 0.1, -0.2, 4, 5}};
  return practice;
}

TEST(PracticeFile, RoundTrip_SameValueSameBytes) {
  const std::string text = write_practice(sample());
  const Result<Practice> back = read_practice(text, known());
  ASSERT_TRUE(back) << back.error().english();
  EXPECT_EQ(*back, sample());
  EXPECT_EQ(write_practice(*back), text);
}

TEST(PracticeFile, Defaults_EmptyObject) {
  const Result<Practice> back = read_practice("{}", known());
  ASSERT_TRUE(back) << back.error().english();
  EXPECT_EQ(*back, Practice());
}

TEST(PracticeFile, Rejection_NamesThePlace) {
  struct Wrong {
    const char *text, *place;
  };
  for (const Wrong& wrong :
       {Wrong{R"({"truth":{"soils":[{"stratum":"l1","soil":"porridge"}]}})", "/truth/soils/0/soil"},
        Wrong{R"({"truth":{"level_error_rad":5}})", "/truth/level_error_rad"},
        Wrong{R"({"truth":{"stones":[{}]}})", "/truth/stones/0/nose_m"}, Wrong{R"({"sonde":3})", "/sonde"},
        Wrong{R"({"truth":{"seed":-1}})", "/truth/seed"}}) {
    const Result<Practice> back = read_practice(wrong.text, known());
    ASSERT_FALSE(back) << wrong.text;
    EXPECT_EQ(back.error().place, wrong.place);
  }
  EXPECT_FALSE(read_practice("[1]", known()));
}

}  // namespace
}  // namespace burrow::test
