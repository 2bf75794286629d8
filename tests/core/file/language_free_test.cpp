// assess() and what it works with know no language: under each the answer is the same, and of its file only `text`
// differs.
#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "burrow/base/display_precision.h"
#include "burrow/check/assess.h"
#include "burrow/day/learn.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/dictionary_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "support/random_crossing.h"

namespace burrow {
namespace {

constexpr Date day{2026, 3, 2};

struct German {
  German() { use_dictionary(*dictionary_of("de")); }
  ~German() { use_dictionary({}); }
};

/// Counts the texts it takes out.
int without_text(nlohmann::json& json) {
  int taken = 0;
  if (json.is_object()) taken += static_cast<int>(json.erase("text"));
  if (json.is_structured())
    for (auto& member : json) taken += without_text(member);
  return taken;
}

std::string file_of(const Crossing& crossing, const Assessment& assessment) {
  AssessmentOptions options;
  options.working = true;
  return write_assessment(crossing, assessment, "one.crossing", options);
}

void expect_same(const Crossing& crossing, const std::string& which) {
  const Tables english_tables = load_tables(day);
  const Assessment english = assess(crossing, english_tables);
  nlohmann::json in_english = nlohmann::json::parse(file_of(crossing, english));
  const German german;
  const Tables german_tables = load_tables(day);
  const Assessment other = assess(crossing, german_tables);
  EXPECT_TRUE(english == other) << which;
  nlohmann::json in_german = nlohmann::json::parse(file_of(crossing, other));
  const std::string text = in_german.dump();
  EXPECT_EQ(without_text(in_english), without_text(in_german)) << which;
  EXPECT_NE(text, in_german.dump());
  EXPECT_EQ(in_english.dump(), in_german.dump()) << which;
}

TEST(LanguageFree, Tables_AreTheSame) {
  const Tables english = load_tables(day);
  const German german;
  EXPECT_TRUE(load_tables(day) == english);
}

TEST(LanguageFree, Samples_DifferInNothingButText) {
  int samples = 0;
  for (const auto& entry : std::filesystem::directory_iterator(BURROW_SOURCE_DIR "/samples")) {
    if (entry.path().extension() != ".crossing") continue;
    const auto crossing = read_crossing(*read_text_file(entry.path()), load_tables(day));
    ASSERT_TRUE(crossing) << entry.path();
    expect_same(*crossing, entry.path().filename());
    ++samples;
  }
  EXPECT_GE(samples, 10);
}

TEST(LanguageFree, RandomCrossings_DifferInNothingButText) {
  for (unsigned seed = 0; seed < 12; ++seed) expect_same(test::random_crossing(seed), std::to_string(seed));
}

// A text of the program that was taken for something entered would stay English.
TEST(LanguageFree, NotesOfThePipe_AndWhyARecordIsLeftOut_AreTranslated) {
  const Tables tables = load_tables(day);
  int notes = 0;
  for (const auto& entry : std::filesystem::directory_iterator(BURROW_SOURCE_DIR "/samples")) {
    if (entry.path().extension() != ".crossing") continue;
    const auto crossing = read_crossing(*read_text_file(entry.path()), tables);
    ASSERT_TRUE(crossing) << entry.path();
    const German german;
    for (const PipeCheck& check : assess(*crossing, tables).pipe_checks) {
      if (check.text.empty()) continue;
      ++notes;
      EXPECT_NE(translated_phrase(check.text), check.text.english()) << check.code;
    }
  }
  EXPECT_GT(notes, 20);

  auto bored = read_crossing(*read_text_file(BURROW_SOURCE_DIR "/samples/house-service.crossing"), tables);
  ASSERT_TRUE(bored);
  bored->record = {DayRecord{}};
  const Evidence evidence = evidence_of(*bored, tables);
  ASSERT_EQ(evidence.not_learnt.size(), 1u);
  const German german;
  EXPECT_NE(translated_phrase(evidence.not_learnt[0].why), evidence.not_learnt[0].why.english());
}

/// How fine numbers are shown is no business of what computes them either.
TEST(LanguageFree, DisplayPrecision_ChangesNothing) {
  const Tables tables = load_tables(day);
  const auto crossing = read_crossing(*read_text_file(BURROW_SOURCE_DIR "/samples/four-faults.crossing"), tables);
  ASSERT_TRUE(crossing);
  const Assessment usual = assess(*crossing, tables);
  const DisplayPrecision before = shown_fineness();
  set_display_precision(before == DisplayPrecision::fine ? DisplayPrecision::usual : DisplayPrecision::fine);
  EXPECT_TRUE(assess(*crossing, tables) == usual);
  set_display_precision(before);
}

}  // namespace
}  // namespace burrow
