// Where the fuzzers start from, and what their mutator knows.

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "burrow/check/assessment.h"
#include "burrow/file/library_file.h"
#include "burrow/file/practice_file.h"
#include "burrow/tables/tables.h"
#include "support/file_samples.h"
#include "tries.h"

namespace burrow::test {

namespace {

const std::filesystem::path source = BURROW_SOURCE_DIR;

std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// In the order of their names, so that a seed gives the same run everywhere.
std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  std::error_code none;
  for (const auto& entry : std::filesystem::directory_iterator(folder, none))
    if (entry.is_regular_file()) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

void add_tables(std::vector<std::string>& seeds) {
  for (const auto& file : files_in(source / "resources/tables"))
    seeds.push_back(file.filename().string() + "\n" + text_of(file));
}

std::string some_practice() {
  Practice practice;
  practice.title = "t";
  practice.aim = "a";
  practice.question = "q";
  practice.truth.soils = {{"l1", "soft-clay"}};
  practice.truth.stones = {{2.5, 0.01, -0.01}};
  practice.truth.services = {{"u1", 0.3, -0.1}};
  Strip trench;
  trench.id = "t1";
  trench.name = "old";
  trench.soil = "loose-sand";
  trench.outline = {{1, -3}, {2, -3}, {2, 3}, {1, 3}};
  practice.truth.trenches = {trench};
  practice.results = {{"A. Nobody", "arrived", 0.05, -0.02, 5, 6}};
  return write_practice(practice);
}

std::string some_library() {
  LearnLibrary library;
  library.soils = {{"firm-clay",
                    12,
                    9,
                    {0.05, 0.04, 0.06, -3, 0.1},
                    {0.003, 0.002, 0.004, -5.8, 0.2},
                    {0.2, 0.15, 0.25, -1.6, 0.15},
                    2,
                    1500,
                    LearnedRate{0.0123, 0.0031, 0.0257, 3, 2500},
                    {"Alder Lane, d1"}}};
  return write_library(library);
}

template <class... Choices>
std::vector<std::string> words_of_choices() {
  std::vector<std::string> words;
  const auto add = [&](const auto& list) {
    for (const auto& [value, word] : list) words.emplace_back(word);
  };
  (add(EnumNames<Choices>::list), ...);
  return words;
}

template <class Rows>
void add_ids(std::vector<std::string>& words, const Rows& rows) {
  for (const auto& row : rows) words.push_back(row.id);
}

std::vector<std::string> words_of_the_format() {
  std::vector<std::string> words =
      words_of_choices<ExcavationRules, SideKind, PitSideName, ExcavationMatter, UtilityWall, SetbackSpan,
                       ShoringMethod, PipeLaw, StratumEvidence, ExcavationType, SurfaceKind, Permission, BoundaryKind,
                       AirPartKind, Insertion, PullBy, UtilityKind, UtilityStatus, LocatedHow, DiameterMeant,
                       LevelMeant, DepthFrom, TracedBy, LineEnd, Laterals, CameraResult, ReadingKind, EndHow>();
  const Tables& all = tables();
  add_ids(words, all.soils);
  add_ids(words, all.tools);
  add_ids(words, all.pipes);
  add_ids(words, all.locating);
  add_ids(words, all.limits);
  add_ids(words, all.surface_rules);
  add_ids(words, all.structures);
  for (const char* word : {"highway", "none", "u1", "u2", "l1", "f1", "f2", "a1", "bore", "left", "right", "back"})
    words.emplace_back(word);
  return words;
}

std::size_t length_of_head(const Try& one, std::string_view text) {
  return one.headed ? std::min(text.find('\n'), text.size() - 1) + 1 : 0;
}

std::string behind(const Try& one, std::string_view text, std::string changed) {
  return changed.empty() ? changed : std::string(text.substr(0, length_of_head(one, text))) + changed;
}

std::string_view body(const Try& one, std::string_view text) {
  return text.substr(length_of_head(one, text));
}

}  // namespace

std::vector<std::string> seeds_of(const Try& one) {
  std::vector<std::string> seeds;
  if (one.name == "tables") {
    add_tables(seeds);
  } else if (one.name == "library") {
    seeds.push_back(some_library());
  } else if (one.name == "practice") {
    seeds.push_back(some_practice());
  } else {
    seeds = {full_text(), least_text()};
    for (const auto& file : files_in(source / "samples")) seeds.push_back(text_of(file));
  }
  for (const char* folder : {"tests/fuzz/corpus", "tests/fuzz/found"})
    for (const auto& file : files_in(source / folder / one.name)) seeds.push_back(text_of(file));
  return seeds;
}

FormatMutator mutator_of(const Try& one, const std::vector<std::string>& seeds) {
  std::vector<std::string> donors;
  for (const std::string& seed : seeds) donors.emplace_back(body(one, seed));
  return {donors, words_of_the_format()};
}

std::string mutated(const Try& one, const FormatMutator& mutator, std::string_view text, unsigned seed) {
  return text.empty() ? "" : behind(one, text, mutator.mutate(body(one, text), seed));
}

std::string spliced(const Try& one, const FormatMutator& mutator, std::string_view text, std::string_view other,
                    unsigned seed) {
  if (text.empty() || other.empty()) return {};
  return behind(one, text, mutator.splice(body(one, text), body(one, other), seed));
}

}  // namespace burrow::test
