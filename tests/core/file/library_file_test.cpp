// The library of what was learnt: it comes back, and what is wrong is refused with its place.
#include "burrow/file/library_file.h"

#include <gtest/gtest.h>

#include "burrow/file/tables_file.h"

namespace burrow::test {
namespace {

const Tables& known() {
  static const Tables tables = load_tables(Date{2026, 3, 2});
  return tables;
}

LearnLibrary sample() {
  LearnLibrary library;
  library.soils = {
      {"firm-clay",
       12,
       9,
       {0.05, 0.04, 0.06, -3, 0.1},
       {0.003, 0.002, 0.004, -5.8, 0.2},
       {0.2, 0.15, 0.25, -1.6, 0.15},
       2,
       1500,
       LearnedRate{0.0123, 0.0031, 0.0257, 3, 2500},
       {"Alder Lane, d1", "Alder Lane, d2"}},
      {"silt", 1, 0, {0.03, 0.01, 0.09, -3.5, 0.6}, {0.0035, 0.002, 0.006, -5.6, 0.4}, {0.3, 0.1, 0.8, -1.2, 0.6}}};
  return library;
}

TEST(LibraryFile, RoundTrip_SameValueSameBytes) {
  const std::string text = write_library(sample());
  const Result<LearnLibrary> back = read_library(text, known());
  ASSERT_TRUE(back) << back.error().english();
  EXPECT_EQ(*back, sample());
  EXPECT_EQ(write_library(*back), text);
}

// A library from before rates were learnt: nothing is known of them.
TEST(LibraryFile, WithoutRates_StillRead) {
  LearnLibrary old = sample();
  old.soils.erase(old.soils.begin());
  const std::string text = write_library(old);
  EXPECT_EQ(text.find("refusal_rate"), std::string::npos);
  const Result<LearnLibrary> back = read_library(text, known());
  ASSERT_TRUE(back) << back.error().english();
  EXPECT_EQ(back->soils.at(0).bored_m, 0);
  EXPECT_FALSE(back->soils.at(0).refusal_rate);
}

TEST(LibraryFile, Unknown_IsKept) {
  std::string text = write_library(sample());
  text.insert(text.rfind('}'), ",\"later\":[1,2]");
  const Result<LearnLibrary> back = read_library(text, known());
  ASSERT_TRUE(back) << back.error().english();
  EXPECT_NE(write_library(*back).find("later"), std::string::npos);
}

TEST(LibraryFile, Rejection_NamesThePlace) {
  const std::string good = write_library(sample());
  const auto with = [&](const std::string& from, const std::string& to) {
    std::string text = good;
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
  };
  struct Wrong {
    std::string text, place;
  };
  for (const Wrong& wrong :
       {Wrong{with("burrowline-library", "something"), "/format"},
        Wrong{with("\"version\": 1", "\"version\": 2"), "/version"},
        Wrong{with("\"silt\"", "\"firm-clay\""), "/soils/1/soil"},
        Wrong{with("\"silt\"", "\"porridge\""), "/soils/1/soil"}, Wrong{with("0.04", "0.4"), "/soils/0/steer_constant"},
        Wrong{with("0.05", "-1"), "/soils/0/steer_constant/likeliest"},
        Wrong{with("0.0031", "0.31"), "/soils/0/refusal_rate"}, Wrong{with("2500", "1400"), "/soils/0/refusal_rate"},
        Wrong{with("1500", "-1"), "/soils/0/bored_m"}, Wrong{with("0.0123", "-1"), "/soils/0/refusal_rate/mean_1_m"}}) {
    const Result<LearnLibrary> back = read_library(wrong.text, known());
    ASSERT_FALSE(back) << wrong.place;
    EXPECT_EQ(back.error().place, wrong.place);
  }
  EXPECT_FALSE(read_library("[]", known()));
  EXPECT_FALSE(read_library("", known()));
}

}  // namespace
}  // namespace burrow::test
