#pragma once
/// Mutates a valid file and reads it: it must be refused with words that are valid UTF-8, or read into a crossing that
/// survives being written and read again. The sanitizers watch over the rest.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <random>
#include <string>

#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "support/file_samples.h"

namespace burrow::test {

class Mutator {
 public:
  explicit Mutator(unsigned seed) : random_(seed) {}

  std::string mutate(std::string text) {
    for (auto n = 1 + pick(4); n > 0 && !text.empty(); --n) change(text);
    return text;
  }

 private:
  std::size_t pick(std::size_t below) { return random_() % below; }

  void change(std::string& text) {
    static const char* const pieces[] = {"null",
                                         "-1",
                                         "1e308",
                                         "1e999",
                                         "\"\"",
                                         "{}",
                                         "[]",
                                         "[",
                                         "}",
                                         ",",
                                         "\"id\":\"u1\"",
                                         "true",
                                         "0.1",
                                         "\\u0000",
                                         "\xff",
                                         "-0",
                                         "99999999999999999999",
                                         "[[]]"};
    const std::size_t at = pick(text.size());
    switch (pick(6)) {
      case 0:
        text[at] = static_cast<char>(static_cast<unsigned char>(text[at]) ^ (1U << pick(8)));
        break;
      case 1:
        if (pick(4) == 0) text.resize(at);
        break;
      case 2:
        text.erase(at, 1 + pick(20));
        break;
      case 3:
        text.insert(pick(text.size()), text.substr(at, 1 + pick(200)));
        break;
      case 4:
        text.insert(at, pieces[pick(std::size(pieces))]);
        break;
      default:
        replace_value(text, at, pieces[pick(std::size(pieces))]);
        break;
    }
  }

  /// The value after the next colon, up to the next comma or bracket: mutations that stay JSON.
  static void replace_value(std::string& text, std::size_t at, const std::string& piece) {
    const std::size_t colon = text.find(':', at);
    if (colon == std::string::npos) return;
    const std::size_t end = text.find_first_of(",}]", colon);
    if (end != std::string::npos) text.replace(colon + 1, end - colon - 1, piece);
  }

  std::mt19937 random_;
};

inline void fuzz_reader(int count, unsigned seed) {
  Mutator mutator(seed);
  const std::string full = full_text();
  int accepted = 0;
  for (int i = 0; i < count; ++i) {
    const std::string text = mutator.mutate(i % 3 == 0 ? least_text() : full);
    const Result<Crossing> read = read_crossing(text, tables());
    if (!read) {
      ASSERT_FALSE(read.error().found.empty() && read.error().expected.empty()) << text;
      ASSERT_TRUE(nlohmann::json::accept(write_failure("f", read.error()))) << text;
      continue;
    }
    ++accepted;
    const std::string written = write_crossing(*read);
    const Result<Crossing> again = read_crossing(written, tables());
    ASSERT_TRUE(again.has_value()) << again.error().english() << "\n" << text << "\n" << written;
    ASSERT_EQ(*again, *read) << text << "\n" << written;
  }
  EXPECT_GT(accepted, 0);
  EXPECT_LT(accepted, count);
}

}  // namespace burrow::test
