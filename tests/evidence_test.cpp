// What a comment or a page of the manual names is there: the tests given as evidence, and the files.

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "support/source_tree.h"

namespace burrow::test {
namespace {

using Names = std::set<std::string>;

/// "Suite.Name" of every test that a text defines.
Names tests_in(const std::string& text) {
  static const std::regex test(R"(\bTEST(?:_F|_P)?\(\s*(\w+)\s*,\s*(\w+)\s*\))");
  Names found;
  for (std::sregex_iterator at(text.begin(), text.end(), test), end; at != end; ++at)
    found.insert((*at)[1].str() + "." + (*at)[2].str());
  return found;
}

/// The lines with which tests begin, each with the next, where its name may stand.
std::string beginnings_of_tests(const std::vector<std::string>& lines) {
  std::string text;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (lines[i].starts_with("TEST")) text += lines[i] + "\n" + (i + 1 < lines.size() ? lines[i + 1] + "\n" : "");
  return text;
}

/// The text of a comment line without its slashes; nothing where there is none.
std::optional<std::string> comment_of(const std::string& line) {
  const std::size_t at = line.find("//");
  if (at == std::string::npos) return std::nullopt;
  return line.substr(std::min(line.find_first_not_of("/<", at), line.size()));
}

/// The names after an "Evidence:", as far as they are names: "A.B_*, .C and more words" gives "A.B_*" and "A.C".
std::vector<std::string> names_of(const std::string& text) {
  static const std::regex name(R"(^[\s,;]*(?:and )?\s*([A-Z]\w*)?\.(\w+\*?|\*))");
  std::vector<std::string> found;
  std::string suite;
  std::string rest = text;
  for (std::smatch match; std::regex_search(rest, match, name); rest = match.suffix()) {
    if (match[1].matched) suite = match[1];
    found.push_back(suite + "." + match[2].str());
  }
  return found;
}

struct Evidence {
  std::size_t line = 0;
  std::vector<std::string> names;
};

/// Each "Evidence:" in the comments of a file; it may go on in the comment lines that follow.
std::vector<Evidence> evidence_in(const std::vector<std::string>& lines) {
  static const std::string word = "Evidence:";
  std::vector<Evidence> found;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto comment = comment_of(lines[i]);
    const std::size_t at = comment ? comment->find(word) : std::string::npos;
    if (at == std::string::npos) continue;
    std::string text = comment->substr(at + word.size());
    for (std::size_t next = i + 1; next < lines.size(); ++next) {
      const auto more = comment_of(lines[next]);
      if (!more || lines[next].find("//") != lines[next].find_first_not_of(' ') ||
          more->find(word) != std::string::npos)
        break;
      text += " " + *more;
    }
    found.push_back({i + 1, names_of(text)});
  }
  return found;
}

/// Whether a name is a test, or with a star at its end the beginning of one.
bool is_there(const std::string& name, const Names& tests) {
  if (!name.ends_with('*')) return tests.contains(name);
  const std::string begin = name.substr(0, name.size() - 1);
  const auto at = tests.lower_bound(begin);
  return at != tests.end() && at->starts_with(begin);
}

TEST(Evidence, OfEveryHeader_IsATestThatExists) {
  Names tests;
  for (const fs::path& file : files_below("tests", {".h", ".cpp"}))
    tests.merge(tests_in(beginnings_of_tests(lines_of(file))));
  EXPECT_GT(tests.size(), 1500u) << "the tests were not found";
  std::size_t seen = 0;
  for (const char* folder : {"core", "ui", "app", "tests/support"})
    for (const fs::path& file : files_below(folder, {".h", ".cpp"}))
      for (const Evidence& evidence : evidence_in(lines_of(file))) {
        EXPECT_FALSE(evidence.names.empty()) << place(file, evidence.line) << " names no test";
        for (const std::string& name : evidence.names) {
          ++seen;
          EXPECT_TRUE(is_there(name, tests)) << place(file, evidence.line) << ": there is no test " << name;
        }
      }
  EXPECT_GT(seen, 400u) << "the evidence was not found";
}

TEST(Evidence, Reader_SeesNamesAndTheirEnd) {
  const auto found = evidence_in({"/// Range: z > 0.   Evidence: Moon.Space_*, .Corner,", "/// Tide.* of the same size",
                                  "double f();", "int n;  ///< Evidence: Tide.Oval", "/// Evidence: none yet"});
  ASSERT_EQ(found.size(), 3u);
  EXPECT_EQ(found[0].line, 1u);
  EXPECT_EQ(found[0].names, (std::vector<std::string>{"Moon.Space_*", "Moon.Corner", "Tide.*"}));
  EXPECT_EQ(found[1].names, std::vector<std::string>{"Tide.Oval"});
  EXPECT_TRUE(found[2].names.empty());
  const Names tests = tests_in("TEST(Moon, Space_AtZero) {}\nTEST_F(Tide,\n       Oval) {}");
  EXPECT_EQ(tests, (Names{"Moon.Space_AtZero", "Tide.Oval"}));
  EXPECT_TRUE(is_there("Moon.Space_*", tests));
  EXPECT_TRUE(is_there("Tide.*", tests));
  EXPECT_TRUE(is_there("Tide.Oval", tests));
  for (const char* missing : {"Moon.Space", "Moon.Spacer_*", "Rin.*", "Tide.Ova", "Zone.*"})
    EXPECT_FALSE(is_there(missing, tests)) << missing;
}

/// Paths of the project in a line: below one of its folders, not the end of a longer path.
std::vector<std::string> paths_in(const std::string& line) {
  static const std::regex path(R"((^|[^\w./}$-])((?:core|ui|app|tests|resources|samples|\.ci)/(?:[\w./<>*+-]|…)+))");
  std::vector<std::string> found;
  for (std::sregex_iterator at(line.begin(), line.end(), path), end; at != end; ++at) {
    std::string name = (*at)[2];
    while (name.ends_with('.') || name.ends_with('/')) name.pop_back();
    found.push_back(name);
  }
  return found;
}

/// A file or folder, or one of a kind: <room>, NAME, xx (a language), * and … stand for any name in that place.
bool exists(const std::string& path) {
  static const std::regex any(R"(<\w+>|NAME|\bxx\b|\*|…)");
  std::smatch match;
  if (!std::regex_search(path, match, any)) return fs::exists(source_dir() / path);
  const std::string before = match.prefix(), after = match.suffix();
  const std::string folder = before.substr(0, before.rfind('/'));
  if (!fs::is_directory(source_dir() / folder)) return false;
  const auto all = fs::recursive_directory_iterator(source_dir() / folder);
  return std::any_of(begin(all), end(all), [&](const fs::directory_entry& entry) {
    const std::string name = entry.path().lexically_relative(source_dir()).generic_string();
    return name.starts_with(before) && name.ends_with(after);
  });
}

/// Made by tests/fuzz/run when it has something to keep; until then nothing lies there.
bool is_made_later(const std::string& path) {
  return path.starts_with("tests/fuzz/corpus") || path.starts_with("tests/fuzz/found");
}

TEST(Evidence, PathsNamed_AreThere) {
  std::size_t seen = 0;
  const auto look_at = [&](const fs::path& file, std::size_t line, const std::string& text) {
    for (const std::string& path : paths_in(text)) {
      ++seen;
      EXPECT_TRUE(exists(path) || is_made_later(path)) << place(file, line) << ": there is no " << path;
    }
  };
  for (const char* folder : {"core", "ui", "app", "tests"})
    for (const fs::path& file : files_below(folder, {".h", ".cpp"})) {
      const auto lines = lines_of(file);
      for (std::size_t i = 0; i < lines.size(); ++i)
        if (const auto comment = comment_of(lines[i])) look_at(file, i + 1, *comment);
    }
  std::vector<fs::path> pages{source_dir() / "README.md", source_dir() / "DEVELOPERS.md", source_dir() / ".ci/run",
                              source_dir() / "tests/run", source_dir() / "app/packages.sh"};
  const auto help = files_below("resources/help", {".md", ".html"});
  pages.insert(pages.end(), help.begin(), help.end());
  for (const fs::path& file : pages) {
    const auto lines = lines_of(file);
    EXPECT_FALSE(lines.empty()) << file;
    for (std::size_t i = 0; i < lines.size(); ++i) look_at(file, i + 1, lines[i]);
  }
  EXPECT_GT(seen, 60u) << "the paths were not found";
}

TEST(Evidence, PathReader_TellsWhatIsThere) {
  EXPECT_EQ(paths_in("see `tests/rooms_test.cpp`, core/base/…/source.h and tests/run."),
            (std::vector<std::string>{"tests/rooms_test.cpp", "core/base/…/source.h", "tests/run"}));
  EXPECT_EQ(paths_in("build/dev/tests/test_soil holds/core/nothing $build/app/burrowline"), std::vector<std::string>{});
  for (const char* there : {"tests/run", "core/base", "core/base/…/source.h", "tests/core/<room>", "tests/*.cpp",
                            "tests/bench/NAME_bench.cpp"})
    EXPECT_TRUE(exists(there)) << there;
  for (const char* gone : {"tests/walk", "core/base/source.h", "core/base/…/sauce.h", "tests/<room>/run.cpp",
                           "tests/bench/NAME_bank.cpp", "core/NAME/*.py"})
    EXPECT_FALSE(exists(gone)) << gone;
}

}  // namespace
}  // namespace burrow::test
