#include "tries.h"

#include <algorithm>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/library_file.h"
#include "burrow/file/practice_file.h"
#include "burrow/file/tables_file.h"
#include "known_less.h"
#include "support/file_samples.h"
#include "support/finite_answers.h"

namespace burrow::test {

namespace {

long accepted_count = 0;

/// The same for the same text, whoever runs it: which of several costly things is tried with it.
unsigned draw_of(std::string_view text) {
  unsigned hash = 2166136261U;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 16777619U;
  return hash;
}

/// A refusal says what it found or what it wants, in text that can be shown.
std::string refused(const Error& error) {
  if (error.found.empty() && error.expected.empty()) return "refused without a word";
  if (!parse_json(write_failure("f", error))) return "refused in words that are no valid text: " + error.english();
  return {};
}

template <class T>
std::string came_back(const T& first, const Result<T>& again, const std::string& written) {
  if (!again) return "written and not read again: " + again.error().english() + "\n" + written;
  if (!(*again == first)) return "written and read again as something else:\n" + written;
  return {};
}

std::string try_crossing(std::string_view text) {
  const Result<Crossing> read = read_crossing(text, tables());
  if (!read) return refused(read.error());
  ++accepted_count;
  const std::string written = write_crossing(*read);
  const Result<Crossing> again = read_crossing(written, tables());
  if (std::string wrong = came_back(*read, again, written); !wrong.empty()) return wrong;
  return write_crossing(*again) == written ? "" : "written twice, two texts:\n" + written;
}

std::string try_library(std::string_view text) {
  const Result<LearnLibrary> read = read_library(text, tables());
  if (!read) return refused(read.error());
  ++accepted_count;
  const std::string written = write_library(*read);
  return came_back(*read, read_library(written, tables()), written);
}

std::string try_practice(std::string_view text) {
  const Result<Practice> read = read_practice(text, tables());
  if (!read) return refused(read.error());
  ++accepted_count;
  const std::string written = write_practice(*read);
  return came_back(*read, read_practice(written, tables()), written);
}

/// Every number of the answer is one, and its line is JSON.
std::string sound(const Crossing& crossing, const Assessment& answer, UnitSystem units) {
  if (const std::vector<std::string> odd = not_finite(answer); !odd.empty()) return "not a number: " + odd.front();
  const std::string line = write_assessment(crossing, answer, "f", {.units = units, .working = true});
  const Result<Json> json = parse_json(line);
  if (!json) return "an answer that is no JSON: " + json.error().english();
  for (const char* word : {" nan ", " inf ", "-nan", "-inf "})
    if (line.find(word) != std::string::npos) return "words with " + std::string(word) + ": " + line;
  return {};
}

std::string no_better_knowing_less(const Crossing& crossing, const Assessment& before, unsigned draw) {
  const Less& less = all_less()[draw % all_less().size()];
  Crossing after = crossing;
  if (!less.take(after, draw / 64)) return {};
  const Verdict then = assess(after, tables()).verdict;
  if (badness(then) >= badness(before.verdict)) return {};
  return "better without " + std::string(less.what) + ": " + std::string(word_of(before.verdict)) + " became " +
         std::string(word_of(then));
}

std::string try_assess(std::string_view text) {
  const Result<Crossing> read = read_crossing(text, tables());
  if (!read) return {};
  ++accepted_count;
  const unsigned draw = draw_of(text);
  const Assessment answer = assess(*read, tables());
  if (std::string wrong = sound(*read, answer, draw % 2 == 0 ? UnitSystem::metric : UnitSystem::us); !wrong.empty())
    return wrong;
  return draw % 4 == 0 ? no_better_knowing_less(*read, answer, draw / 4) : "";
}

/// "soils.json", the end of the line, then the text of the table. One in eight also judges.
std::string try_tables(std::string_view text) {
  const std::size_t end = std::min(text.find('\n'), text.size());
  const Result<Tables> laid = overlay_table(tables(), std::string(text.substr(0, end)),
                                            std::string(text.substr(std::min(end + 1, text.size()))));
  if (!laid) return refused(laid.error());
  ++accepted_count;
  const unsigned draw = draw_of(text);
  if (draw % 8 != 0) return {};
  static const std::array crossings{*read_crossing(least_text(), tables()), *read_crossing(full_text(), tables())};
  // By its written form, so that it holds what these tables let it hold.
  const Result<Crossing> crossing = read_crossing(write_crossing(crossings[draw / 8 % 2]), *laid);
  return crossing ? sound(*crossing, assess(*crossing, *laid), UnitSystem::metric) : refused(crossing.error());
}

constexpr std::array tries{Try{"crossing", try_crossing}, Try{"assess", try_assess}, Try{"tables", try_tables, true},
                           Try{"library", try_library}, Try{"practice", try_practice}};

}  // namespace

std::span<const Try> all_tries() {
  return tries;
}

const Try& try_of(std::string_view name) {
  const auto it = std::find_if(tries.begin(), tries.end(), [&](const Try& one) { return one.name == name; });
  BURROW_ENSURE(it != tries.end());
  return *it;
}

long accepted() {
  return accepted_count;
}

}  // namespace burrow::test
