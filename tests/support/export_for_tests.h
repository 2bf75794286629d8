#pragma once
/// The samples, read and judged once.

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <vector>

#include "burrow/check/assess.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"

namespace burrow::test {

inline const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

inline const std::vector<std::string>& sample_names() {
  static const std::vector<std::string> names{"car-park-duct", "first-lesson", "four-faults",
                                              "house-service", "rail-siding",  "sixty-utilities"};
  return names;
}

struct Judged {
  Crossing crossing;
  Assessment answer;
};

inline const Judged& judged_sample(const std::string& name) {
  static std::map<std::string, Judged> all;
  const auto found = all.find(name);
  if (found != all.end()) return found->second;
  const auto text = read_text_file(BURROW_SOURCE_DIR "/samples/" + name + ".crossing");
  EXPECT_TRUE(text) << name;
  const auto crossing = read_crossing(text.value_or("{}"), tables());
  EXPECT_TRUE(crossing) << name;
  Judged judged;
  judged.crossing = crossing.value_or(Crossing{});
  judged.answer = assess(judged.crossing, tables());
  return all.emplace(name, std::move(judged)).first->second;
}

}  // namespace burrow::test
