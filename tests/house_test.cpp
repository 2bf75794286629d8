// House rules that a reader would otherwise have to check by eye: length, header docs, source labels, words.

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <string>

#include "burrow/base/source.h"
#include "support/source_tree.h"

namespace burrow::test {
namespace {

// A source file that passes 400 lines is two ideas.
TEST(House, SourceFiles_KeepWithin400Lines) {
  std::size_t seen = 0;
  for (const char* folder : {"core", "ui", "app"}) {
    for (const fs::path& file : files_below(folder, {".h", ".cpp"})) {
      ++seen;
      // Row types alone, one after the other: to be parted by subject when every file that reads it is compiled anew
      // anyway.
      const std::size_t most = file.filename() == "tables.h" ? 410 : 400;
      EXPECT_LE(lines_of(file).size(), most) << place(file, 400);
    }
  }
  EXPECT_GT(seen, 10u) << "the sources were not found";
}

/// Types of a file that other files could meet: "burrow::Launch". What is in a namespace without a name is the file's
/// own.
std::vector<std::string> types_defined(const std::vector<std::string>& lines) {
  std::vector<std::string> spaces, types;
  for (const std::string& line : lines) {
    if (line.starts_with("namespace ") && line.ends_with('{')) {
      spaces.push_back(line.substr(10, line.size() - 11));
      continue;
    }
    if (line.starts_with("}  // namespace") && !spaces.empty()) spaces.pop_back();
    for (const std::string_view word : {"struct ", "class ", "enum class "}) {
      if (!line.starts_with(word) || line.find('{') == std::string::npos) continue;
      const std::string name = line.substr(word.size(), line.find_first_of(" {", word.size()) - word.size());
      const bool own = std::find(spaces.begin(), spaces.end(), "") != spaces.end();
      if (own || name.find('<') != std::string::npos) continue;
      std::string whole;
      for (const std::string& space : spaces) whole += space;
      types.push_back(whole + name);
    }
  }
  return types;
}

// Two types of one name, in two rooms that never meet in one source: the linker takes the destructor of one for both.
TEST(House, Types_OfOneNameAreDefinedOnce) {
  std::map<std::string, fs::path> seen;
  for (const char* folder : {"core", "ui", "app"})
    for (const fs::path& file : files_below(folder, {".h", ".cpp"}))
      for (const std::string& type : types_defined(lines_of(file))) {
        const auto [first, is_new] = seen.emplace(type, file);
        EXPECT_TRUE(is_new || first->second == file)
            << place(file, 1) << ": " << type << " is also in " << first->second;
      }
  EXPECT_GT(seen.size(), 300u) << "the types were not found";
  EXPECT_EQ(types_defined({"namespace burrow {", "struct A {", "};", "namespace {", "struct B {", "}  // namespace",
                           "class C : public A {", "enum class D { e };", "struct F;", "}  // namespace burrow"}),
            (std::vector<std::string>{"burrow A", "burrow C", "burrow D"}));
}

// What is shown to a person is compared with nothing: another language, another wording, and the program does another
// thing. Findings and errors have codes, things have ids. Named here: two findings about one named thing, and names of
// enumerations.
TEST(House, NoLogic_ComparesShownText) {
  const std::regex compared(
      R"((\.|->)(name|place|found|expected)(\.english\(\))? *(==|!=) *[^=]|(==|!=) *[\w.>()-]+(\.|->)(place|found|expected) *[;)&|,])");
  const std::set<std::string> may{"f.name == finding.name",
                                  "side.name == PitSideName::back",
                                  "cell.place == hoped.place",
                                  "map.best->place == by_limits->place",
                                  "here == map->here.place",
                                  "options.place == DxfPlace::",
                                  "l.name == line.name && l.value == line.value",  // a row that is printed already
                                  "file.found->layers[i] == before.found->layers[k]"};
  std::size_t seen = 0;
  for (const char* folder : {"core", "ui", "app"})
    for (const fs::path& file : files_below(folder, {".h", ".cpp"})) {
      const std::vector<std::string> lines = lines_of(file);
      for (std::size_t i = 0; i < lines.size(); ++i) {
        ++seen;
        if (!std::regex_search(lines[i], compared)) continue;
        const bool named = std::any_of(may.begin(), may.end(),
                                       [&](const std::string& one) { return lines[i].find(one) != std::string::npos; });
        EXPECT_TRUE(named) << place(file, i + 1) << ": " << lines[i];
      }
    }
  EXPECT_GT(seen, 10000u);
}

// A header without a single /// says neither what it is for nor where it comes from.
TEST(House, HeadersOfCore_HaveADocComment) {
  for (const fs::path& file : files_below("core", {".h"})) {
    const auto lines = lines_of(file);
    const bool documented =
        std::any_of(lines.begin(), lines.end(), [](const std::string& line) { return line.starts_with("///"); });
    EXPECT_TRUE(documented) << place(file, 1) << ": no /// comment";
  }
}

using Labels = std::vector<std::pair<std::string, std::string>>;

/// Every value under a key that carries a source label, with where it stands.
void collect_labels(const nlohmann::json& value, const std::string& at, Labels& labels) {
  for (const auto& [key, member] : value.items()) {
    std::string here = at;
    here += "/";
    here += key;
    if (key == "label" || key == "source_label") {
      labels.emplace_back(here, member.is_string() ? member.get<std::string>() : member.dump());
    } else if (member.is_structured()) {
      collect_labels(member, here, labels);
    }
  }
}

TEST(House, TablesOfResources_LabelEveryRowWithOneOfTheEight) {
  const auto tables = files_below("resources/tables", {".json"});
  EXPECT_FALSE(tables.empty());
  for (const fs::path& file : tables) {
    std::ifstream in(file);
    const auto table = nlohmann::json::parse(in, nullptr, false);
    ASSERT_TRUE(table.is_structured() && !table.empty()) << place(file, 1) << ": not a JSON table, or an empty one";
    for (const auto& [key, row] : table.items()) {
      Labels labels;
      if (row.is_structured()) collect_labels(row, "/" + key, labels);
      EXPECT_FALSE(labels.empty()) << place(file, 1) << "/" << key << " does not say where its numbers come from";
      for (const auto& [at, label] : labels)
        EXPECT_TRUE(source_label_from_words(label))
            << place(file, 1) << at << ": '" << label << "' is none of the eight";
    }
  }
}

/// Letting time pass, or reading a clock. Put together so that this file passes its own test.
bool lets_time_pass(const std::string& line) {
  static const std::regex words(
      R"(\bqWai[t](For)?\s*\(|\bqSlee[p]\b|\bslee[p]_(for|until)\b|QThread::[mu]?slee[p]|)"
      R"(\b(nano|u)slee[p]\b|[^\w."]slee[p]\s*\(|\bQTRY_|\bQElapsedTime[r]\b|\bQDeadlineTime[r]\b|)"
      R"(\b(steady|system|high_resolution)_cloc[k]\b|\bclock_gettim[e]\b|currentMSecsSinceEpoc[h]|)"
      R"(\bsingleShot\(\s*[1-9])");
  // Most lines hold nothing like it, and expressions are slow.
  for (const char* piece : {"qWai", "lee", "QTRY", "Timer", "_cloc", "clock_", "Epoc", "singleSho"})
    if (line.find(piece) != std::string::npos) return std::regex_search(line, words);
  return false;
}

// A test that waits for time to pass is slow where the machine is quick and falls where it is busy.
// tests/support/settle.h has what takes the place of waiting. Left out: tests/bench, which measures.
TEST(House, Tests_LetNoTimePass) {
  const std::map<std::string, std::string> allowed{
      {"tests/support/settle.h", "`comes`: a worker or another process is awaited, by what it does"},
      {"tests/support/watchdog.cpp", "it watches how long an event takes"},
      {"tests/ui/watchdog_test.cpp",
       "the watchdog itself, tried with an event that takes long and with one that waits"},
      {"tests/threads/seen_dispatcher.h", "an event loop of its own, whose timers go by a clock"},
      {"tests/threads/seen_dispatcher.cpp", "the same"},
  };
  std::map<std::string, int> used;
  std::size_t seen = 0;
  for (const fs::path& file : files_below("tests", {".h", ".cpp"})) {
    const std::string name = file.lexically_relative(source_dir()).generic_string();
    if (name.starts_with("tests/bench/")) continue;
    ++seen;
    const auto lines = lines_of(file);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (!lets_time_pass(lines[i])) continue;
      ++used[name];
      EXPECT_TRUE(allowed.contains(name)) << place(file, i + 1) << ": " << lines[i];
    }
  }
  EXPECT_GT(seen, 200u) << "the tests were not found";
  for (const auto& [name, reason] : allowed) EXPECT_TRUE(used.contains(name)) << name << " needs no leave: " << reason;
}

TEST(House, TimePassing_IsSeen) {
  const std::string wait = "qWait", sleep = "sleep", clock = "clock";
  for (const std::string& line :
       {"  QTest::" + wait + "(80);", "QTest::" + wait + "For([&] { return done; }, 600)",
        "std::this_thread::" + sleep + "_for(1ms);", "QThread::m" + sleep + "(5);",
        "QTest::qS" + sleep.substr(1) + "(5);", "::u" + sleep + "(10);", "  " + sleep + "(1);",
        "std::chrono::steady_" + clock + "::now()", std::string("QElapsed") + "Timer whole;",
        "QTimer::single" + std::string("Shot(600, &loop, &QEventLoop::quit)")})
    EXPECT_TRUE(lets_time_pass(line)) << line;
  for (const std::string& line : {std::string("settle(window);"), std::string("QTimer::singleShot(0, this, step);"),
                                  std::string("from_script(\"exec sleep 1000\")"), std::string("asleep(dog);")})
    EXPECT_FALSE(lets_time_pass(line)) << line;
}

/// Words and places that must not stand in what is handed on; put together here so that this file passes its own test.
std::vector<std::string> forbidden() {
  const std::string slash = "/";
  return {std::string("TO") + "DO",      std::string("FIX") + "ME", std::string("GTEST_") + "SKIP",
          std::string("DISABLED") + "_", slash + "work" + slash,    slash + "tmp" + slash};
}

TEST(House, Text_HoldsNoForbiddenWordsOrPlaces) {
  const std::vector<std::string> endings{".h",     ".cpp",      ".txt", ".json", ".md",
                                         ".cmake", ".crossing", ".sh",  ".csv",  ""};
  std::vector<fs::path> files{source_dir() / "README.md", source_dir() / "DEVELOPERS.md",
                              source_dir() / "CMakeLists.txt"};
  for (const char* folder : {".ci", "app", "core", "ui", "tests", "resources", "samples"}) {
    const auto more = files_below(folder, endings);
    files.insert(files.end(), more.begin(), more.end());
  }
  for (const fs::path& file : files) {
    const auto lines = lines_of(file);
    EXPECT_FALSE(lines.empty() && fs::file_size(file) > 0) << file << " could not be read";
    for (std::size_t i = 0; i < lines.size(); ++i)
      for (const std::string& word : forbidden())
        EXPECT_EQ(lines[i].find(word), std::string::npos) << place(file, i + 1) << ": " << word;
  }
}

}  // namespace
}  // namespace burrow::test
