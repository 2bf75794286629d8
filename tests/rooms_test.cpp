// Which room may include what: the table of DEVELOPERS.md, held against every #include and every compile command.

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <sstream>

#include "support/source_tree.h"

namespace burrow::test {
namespace {

using Words = std::set<std::string>;

/// Rooms and libraries each room may include; the standard library and the room itself always. `resources` is the
/// compiled-in text of the tables, `system` the calls of the system below the standard library (fsync, thread locale).
const std::map<std::string, Words>& may_include() {
  static const Words up_to_bore{"base", "crossing", "tables", "soil", "bore"};
  static const Words up_to_air{"base",   "crossing", "tables", "soil", "bore", "clearance",
                               "trials", "load",     "pipe",   "pit",  "air"};
  const auto with = [](Words words, const Words& more) {
    words.insert(more.begin(), more.end());
    return words;
  };
  static const std::map<std::string, Words> table{
      {"base", {"eigen", "boost-math", "expected", "fmt"}},
      {"crossing", {"base"}},
      {"tables", {"base", "crossing"}},
      {"soil", {"base", "crossing", "tables"}},
      {"bore", {"base", "crossing", "tables", "soil"}},
      {"clearance", up_to_bore},
      {"trials", with(up_to_bore, {"clearance"})},
      {"load", {"base", "crossing", "tables", "soil"}},
      {"pipe", with(up_to_bore, {"load"})},
      {"pit", up_to_bore},
      {"air", {"base", "crossing", "tables", "bore"}},
      {"check", up_to_air},
      {"search", with(up_to_air, {"check"})},
      {"day", with(up_to_air, {"check"})},
      {"practice", with(up_to_air, {"check", "day"})},
      {"crew", with(up_to_air, {"check"})},
      {"language", {"base"}},
      {"words", with(up_to_air, {"check", "search", "day", "practice", "crew", "language"})},
      {"file",
       {"base", "crossing", "tables", "check", "search", "day", "practice", "language", "words", "nlohmann",
        "resources", "system"}},
      {"export",
       {"base", "crossing", "tables", "bore", "pit", "check", "search", "day", "language", "words", "nlohmann"}},
      {"import",
       {"base", "crossing", "tables", "language", "gdal", "proj", "pugixml", "seccomp", "nlohmann", "resources",
        "system"}},
  };
  return table;
}

/// The rooms of the workbench, each above those before it; any of them may include all of core and Qt.
const std::map<std::string, Words>& workbench_may_include() {
  static const std::map<std::string, Words> table{
      {"document", {}},
      {"drawing", {"document"}},
      {"widgets", {"document"}},
      {"charts", {"document", "drawing"}},
      {"panels", {"document", "drawing", "widgets", "charts"}},
      {"sheet", {"document", "drawing"}},
      {"window", {"document", "drawing", "widgets", "charts", "panels", "sheet"}},
      {"app", {"document", "drawing", "widgets", "charts", "panels", "sheet", "window", "nlohmann"}},
  };
  return table;
}

/// Libraries a room gets with base, since base's own headers show them.
const Words libraries_of_base{"eigen", "boost-math", "expected", "fmt"};

std::vector<std::string> rooms_of(std::string_view folder) {
  std::vector<std::string> rooms;
  for (const auto& entry : fs::directory_iterator(source_dir() / folder))
    if (entry.is_directory()) rooms.push_back(entry.path().filename().string());
  std::sort(rooms.begin(), rooms.end());
  return rooms;
}

bool starts_with_any(const std::string& text, std::initializer_list<std::string_view> beginnings) {
  return std::any_of(beginnings.begin(), beginnings.end(),
                     [&](std::string_view beginning) { return text.starts_with(beginning); });
}

bool consists_of(std::string_view text, std::string_view allowed) {
  return !text.empty() && text.find_first_not_of(allowed) == std::string_view::npos;
}

/// QWidget, QtCore/QString, QtGlobal: a capital Q, then a capital or "t" and a capital.
bool is_qt_header(std::string_view include) {
  const auto capital = [&](std::size_t at) { return at < include.size() && include[at] >= 'A' && include[at] <= 'Z'; };
  return include.starts_with("Q") && (capital(1) || (include.substr(1).starts_with("t") && capital(2)));
}

/// The room or library an include belongs to: "burrow/soil/soil.h" → "soil", "QWidget" → "qt", "vector" → "std".
std::string owner_of(const std::string& include) {
  if (include.starts_with("burrow/")) return include.substr(7, include.find('/', 7) - 7);
  if (include == "burrow_resources.h") return "resources";
  if (consists_of(include, "abcdefghijklmnopqrstuvwxyz_0123456789")) return "std";
  if (is_qt_header(include)) return "qt";
  if (include.starts_with("Eigen/")) return "eigen";
  if (starts_with_any(include, {"boost/math/", "boost/container/", "boost/polygon/", "boost/random/"}))
    return "boost-math";
  if (include.starts_with("boost/geometry/")) return "boost-geometry";  // lines of a drawing, not of the calculation
  if (include == "tl/expected.hpp") return "expected";
  if (include.starts_with("fmt/")) return "fmt";
  if (include.starts_with("nlohmann/")) return "nlohmann";
  if (starts_with_any(include, {"gdal", "ogr", "cpl_"})) return "gdal";
  if (include == "proj.h") return "proj";
  if (include == "pugixml.hpp") return "pugixml";
  if (include == "seccomp.h") return "seccomp";
  if (include == "unistd.h" || include == "poll.h" || include == "fcntl.h" || include == "dlfcn.h" ||
      include == "locale.h" || include == "malloc.h" || include == "spawn.h" || include.starts_with("sys/") ||
      include.starts_with("linux/") || include.starts_with("sanitizer/"))
    return "system";
  return "unknown";
}

std::string_view without_blanks_before(std::string_view text) {
  return text.substr(std::min(text.find_first_not_of(" \t"), text.size()));
}

/// What stands between the brackets or quotes of an #include line.
std::optional<std::string> included_by(std::string_view line) {
  std::string_view rest = without_blanks_before(line);
  if (!rest.starts_with("#")) return std::nullopt;
  rest = without_blanks_before(rest.substr(1));
  if (!rest.starts_with("include")) return std::nullopt;
  rest = without_blanks_before(rest.substr(7));
  if (rest.empty() || (rest[0] != '<' && rest[0] != '"')) return std::nullopt;
  return std::string(rest.substr(1, rest.find_first_of(">\"", 1) - 1));
}

bool is_header(const fs::path& file) {
  return file.extension() == ".h";
}

/// A header beside the source, or, for a source in a folder of its room, in the room or another folder of it.
bool in_the_same_room(const fs::path& file, const std::string& include) {
  const fs::path folder = file.parent_path();
  if (fs::exists(folder / include)) return true;
  const fs::path core = source_dir() / "core";
  const fs::path room = folder.parent_path() == core ? folder : folder.parent_path();
  if (room.parent_path() != core) return false;
  if (fs::exists(room / include)) return true;
  return std::any_of(fs::directory_iterator(room), fs::directory_iterator(),
                     [&](const auto& entry) { return fs::exists(entry.path() / include); });
}

/// What is wrong with this line of a file of `room`; nothing if it may stand there.
std::optional<std::string> fault_in_core(const std::string& room, const fs::path& file, const std::string& line) {
  const auto include = included_by(line);
  if (!include) return std::nullopt;
  const std::string owner = owner_of(*include);
  if (owner == "qt") return "core must not see Qt: " + *include;
  if (owner == "std" || owner == room) return std::nullopt;
  if (owner == "unknown" && in_the_same_room(file, *include)) return std::nullopt;
  if ((owner == "resources" || owner == "system") && is_header(file)) return *include + " belongs into a .cpp";
  if (libraries_of_base.contains(owner)) return std::nullopt;
  if (may_include().at(room).contains(owner)) return std::nullopt;
  return room + " may not include " + *include + " (" + owner + ")";
}

/// The same for a room of the workbench and for the program itself.
std::optional<std::string> fault_in_workbench(const std::string& room, const fs::path& file, const std::string& line) {
  const auto include = included_by(line);
  if (!include) return std::nullopt;
  const std::string owner = owner_of(*include);
  if (owner == "std" || owner == "qt" || owner == "resources" || owner == room) return std::nullopt;
  if (libraries_of_base.contains(owner) || may_include().contains(owner)) return std::nullopt;
  if ((owner == "system" || owner == "boost-geometry") && !is_header(file)) return std::nullopt;
  if (owner == "unknown" && (include->ends_with(".moc") || fs::exists(file.parent_path() / *include)))
    return std::nullopt;
  if (workbench_may_include().at(room).contains(owner)) return std::nullopt;
  return room + " may not include " + *include + " (" + owner + ")";
}

TEST(Rooms, EveryFolder_IsInTheTable) {
  for (const std::string& room : rooms_of("core")) EXPECT_TRUE(may_include().contains(room)) << "core/" << room;
  for (const std::string& room : rooms_of("ui")) EXPECT_TRUE(workbench_may_include().contains(room)) << "ui/" << room;
}

/// Calls `fault_in` with each line below `folder`, reports its faults; returns how many includes were seen.
template <class FaultIn>
std::size_t report_faults(const std::string& folder, FaultIn fault_in) {
  std::size_t seen = 0;
  for (const fs::path& file : files_below(folder, {".h", ".cpp"})) {
    const auto lines = lines_of(file);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      seen += included_by(lines[i]) ? 1u : 0u;
      if (const auto fault = fault_in(file, lines[i])) ADD_FAILURE() << place(file, i + 1) << ": " << *fault;
    }
  }
  return seen;
}

TEST(Rooms, EveryIncludeOfCore_KeepsToTheTable) {
  std::size_t seen = 0;
  for (const std::string& room : rooms_of("core")) {
    if (!may_include().contains(room)) continue;
    seen += report_faults("core/" + room,
                          [&](const auto& file, const auto& line) { return fault_in_core(room, file, line); });
  }
  EXPECT_GT(seen, 50u) << "the includes were not found";
}

TEST(Rooms, EveryIncludeOfTheWorkbench_KeepsToTheTable) {
  std::size_t seen = 0;
  for (const auto& [room, allowed] : workbench_may_include()) {
    const std::string folder = room == "app" ? "app" : "ui/" + room;
    const std::string name = room;
    if (!fs::exists(source_dir() / folder)) continue;
    seen +=
        report_faults(folder, [&](const auto& file, const auto& line) { return fault_in_workbench(name, file, line); });
  }
  EXPECT_GT(seen, 20u) << "the includes were not found";
}

// The reader itself: a forbidden line is seen as one, an allowed one is not.
TEST(Rooms, Reader_TellsForbiddenFromAllowed) {
  const fs::path header = source_dir() / "core/soil/burrow/soil/soil.h";
  const fs::path source = source_dir() / "core/file/write.cpp";
  EXPECT_FALSE(fault_in_core("soil", header, "#include \"burrow/base/quantity.h\""));
  EXPECT_FALSE(fault_in_core("soil", header, "#include <boost/math/quadrature/gauss.hpp>  // nodes"));
  EXPECT_FALSE(fault_in_core("file", source, "#include \"burrow_resources.h\""));
  EXPECT_TRUE(fault_in_core("soil", header, "#include \"burrow/bore/path.h\""));
  EXPECT_TRUE(fault_in_core("soil", header, "  #  include <nlohmann/json.hpp>"));
  EXPECT_TRUE(fault_in_core("soil", header, "#include <boost/geometry.hpp>"));
  EXPECT_TRUE(fault_in_core("base", header, "#include <QString>"));
  EXPECT_TRUE(fault_in_core("check", header, "#include <QtCore/QString>"));
  EXPECT_TRUE(fault_in_core("check", header, "#include \"burrow/search/launch_map.h\""));
  EXPECT_TRUE(fault_in_core("check", header, "#include \"burrow/language/say.h\""))
      << "what computes knows no language";
  EXPECT_TRUE(fault_in_core("trials", header, "#include \"burrow/check/assess.h\""));
  EXPECT_TRUE(fault_in_core("file", header, "#include <unistd.h>"));
  EXPECT_FALSE(fault_in_workbench("panels", header, "#include \"burrow/drawing/theme.h\""));
  EXPECT_FALSE(fault_in_workbench("document", header, "#include <QUndoStack>"));
  EXPECT_TRUE(fault_in_workbench("document", header, "#include \"burrow/drawing/theme.h\""));
  EXPECT_TRUE(fault_in_workbench("window", header, "#include <nlohmann/json.hpp>"));
}

/// The folders named by -I and -isystem in a compile command, without the project's own path.
std::vector<std::string> include_folders(const std::string& command) {
  std::istringstream words(command);
  std::vector<std::string> folders;
  const std::string own = source_dir().string();
  for (std::string word; words >> word;) {
    std::string folder;
    if (word == "-isystem" || word == "-I") {
      words >> folder;
    } else if (word.starts_with("-I")) {
      folder = word.substr(2);
    } else {
      continue;
    }
    folders.push_back(folder.starts_with(own) ? folder.substr(own.size()) : folder);
  }
  return folders;
}

bool mentions_qt(const std::string& folder) {
  for (const fs::path& part : fs::path(folder)) {
    const std::string name = part.string();
    if (is_qt_header(name) ||
        (name.starts_with("qt") && (name.size() == 2 || consists_of(name.substr(2), "0123456789"))))
      return true;
  }
  return false;
}

TEST(Rooms, CompileCommandsOfCore_HaveNoQtOnTheIncludePath) {
  std::ifstream in(fs::path(BURROW_BUILD_DIR) / "compile_commands.json");
  const auto commands = nlohmann::json::parse(in, nullptr, false);
  ASSERT_TRUE(commands.is_array()) << "no compile_commands.json in " << BURROW_BUILD_DIR;
  Words rooms_seen;
  for (const auto& entry : commands) {
    const std::string file =
        fs::path(entry.at("file").get<std::string>()).lexically_relative(source_dir()).generic_string();
    if (!file.starts_with("core/")) continue;
    rooms_seen.insert(file.substr(5, file.find('/', 5) - 5));
    const std::string command = entry.at("command").get<std::string>();
    EXPECT_EQ(command.find("-DQT_"), std::string::npos) << file << " is compiled with Qt's definitions";
    for (const std::string& folder : include_folders(command))
      EXPECT_FALSE(mentions_qt(folder)) << file << ": " << folder;
  }
  const auto rooms = rooms_of("core");
  EXPECT_EQ(rooms_seen, Words(rooms.begin(), rooms.end())) << "a room without a compile command was not looked at";
}

TEST(Rooms, IncludePathReader_SeesQt) {
  const auto folders =
      include_folders("g++ -I/usr/include/eigen3 -isystem /usr/include/x86_64-linux-gnu/qt6/QtCore -c a.cpp");
  ASSERT_EQ(folders.size(), 2u);
  EXPECT_FALSE(mentions_qt(folders[0]));
  EXPECT_TRUE(mentions_qt(folders[1]));
}

}  // namespace
}  // namespace burrow::test
