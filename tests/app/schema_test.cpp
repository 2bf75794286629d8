// The JSON Schemas: read by an independent validator (Debian's python3-jsonschema), against every sample, against files
// changed so that the reader refuses them, and against the answers of the program.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "burrow/file/crossing_file.h"
#include "burrow/file/tables_file.h"
#include "support/command_run.h"

namespace burrow::test {
namespace {

using nlohmann::ordered_json;
using ::testing::HasSubstr;

const std::vector<std::string>& samples() {
  static const std::vector<std::string> all = [] {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(BURROW_SOURCE_DIR "/samples"))
      if (entry.path().extension() == ".crossing") names.push_back(entry.path().stem().string());
    return names;
  }();
  return all;
}

struct Named {
  std::string name;
  ordered_json value;
};

/// The names of what does not fit, with the reason. Fails unless the validator has seen all.
std::map<std::string, std::string> misfits(const std::string& schema, const std::vector<Named>& all, bool strict) {
  const Folder folder;
  folder.write("schema.json", run("schema", {schema}).out);
  std::string text;
  for (const Named& one : all) text += ordered_json{{"name", one.name}, {"value", one.value}}.dump() + "\n";
  folder.write("lines", text);
  const Ran ran =
      run_shell("/usr/bin/python3 '" BURROW_SOURCE_DIR "/tests/support/fits_schema.py' '" + folder.path("schema.json") +
                "' '" + folder.path("lines") + "'" + (strict ? " strict" : ""));
  EXPECT_EQ(ran.code, 0) << ran.out;
  EXPECT_THAT(ran.out, HasSubstr("seen\t" + std::to_string(all.size()) + "\n"));
  std::map<std::string, std::string> found;
  for (const std::string& line : lines(ran.out))
    if (!line.starts_with("seen\t")) found[line.substr(0, line.find('\t'))] = line;
  return found;
}

TEST(Schema, Crossing_FitsEverySample) {
  std::vector<Named> all;
  for (const std::string& name : samples()) all.push_back({name, ordered_json::parse(std::ifstream(sample(name)))});
  EXPECT_GE(all.size(), 11u);
  for (const auto& [name, why] : misfits("crossing", all, false)) ADD_FAILURE() << why;
}

struct Leaf {
  ordered_json::json_pointer place;
  ordered_json value;
};
std::vector<Leaf> leaves_of(const ordered_json& crossing) {
  std::vector<Leaf> leaves;
  const ordered_json flat = crossing.flatten();
  for (const auto& [place, value] : flat.items()) leaves.push_back({ordered_json::json_pointer(place), value});
  return leaves;
}

// Each number of a file replaced by a word and by one that is too large, each word by a number and by another word,
// each member taken away in turn. What the reader takes the schema must take; a wrong kind of value, a number out of
// range and an unknown word of a list, which the reader refuses, the schema must refuse too.
TEST(Schema, Crossing_RefusesWhatTheReaderRefuses) {
  const Tables tables = load_tables();
  std::vector<Named> all;
  std::map<std::string, bool> taken;
  std::set<std::string> must_refuse;
  const auto add = [&](const std::string& name, const ordered_json& crossing, bool by_kind) {
    taken[name] = read_crossing(crossing.dump(), tables).has_value();
    if (!taken[name] && by_kind) must_refuse.insert(name);
    all.push_back({name, crossing});
  };
  for (const char* file : {"house-service", "rail-siding", "first-lesson"}) {
    const ordered_json crossing = ordered_json::parse(std::ifstream(sample(file)));
    const std::vector<Leaf> leaves = leaves_of(crossing);
    for (const Leaf& leaf : leaves) {
      const std::string name = std::string(file) + leaf.place.to_string();
      // References to other things: the reader alone knows what they may be.
      const bool reference =
          leaf.place.back() == "utility" || leaf.place.back() == "id" || leaf.place.to_string().starts_with("/locks");
      const auto change = [&](const char* what, const ordered_json& value) {
        ordered_json changed = crossing;
        changed[leaf.place] = value;
        add(name + " " + what, changed, !reference);
      };
      if (leaf.value.is_number()) {
        change("a word", "x");
        change("too large", 1e300);
      } else if (leaf.value.is_string()) {
        change("a number", 7);
        change("another word", "xyz");
      }
      ordered_json less = crossing;
      if (!less[leaf.place.parent_pointer()].is_object()) continue;
      less[leaf.place.parent_pointer()].erase(leaf.place.back());
      add(name + " gone", less, false);
    }
  }
  ASSERT_GT(all.size(), 300u);
  const auto found = misfits("crossing", all, false);
  for (const auto& [name, why] : found) EXPECT_FALSE(taken.at(name)) << "the reader takes it: " << why;
  for (const std::string& name : must_refuse) EXPECT_TRUE(found.contains(name)) << "the schema takes " << name;
  EXPECT_GT(must_refuse.size(), 150u);
}

// The members that must stand there are those of the contract.
TEST(Schema, Crossing_WantsWhatMustStandThere) {
  const ordered_json whole = ordered_json::parse(std::ifstream(sample("house-service")));
  std::vector<Named> all;
  for (const char* place :
       {"/format", "/version", "/site/ground", "/site/strata", "/bore/tool", "/bore/launch/station_m",
        "/bore/launch/elevation_m", "/bore/launch/grade", "/bore/exit/station_m"}) {
    ordered_json less = whole;
    const ordered_json::json_pointer at(place);
    ASSERT_TRUE(less.contains(at)) << place;
    less[at.parent_pointer()].erase(at.back());
    all.push_back({place, less});
  }
  EXPECT_EQ(misfits("crossing", all, false).size(), all.size());
}

// Strict: a member that the answer has and the schema does not name is found here.
TEST(Schema, Assessment_FitsEveryAnswer) {
  const Folder folder;
  ordered_json day = ordered_json::parse(std::ifstream(sample("house-service")));
  day["record"] = {{{"id", "d1"},
                    {"started", "2026-05-03T08:12:00+02:00"},
                    {"readings",
                     {{{"kind", "start"}, {"time_s", 0.0}},
                      {{"kind", "mark"}, {"time_s", 180.0}, {"nose_m", 1.5}},
                      {{"kind", "grade"}, {"time_s", 240.0}, {"nose_m", 1.9}, {"grade", -0.01}, {"sd_rad", 0.002}},
                      {{"kind", "fix"},
                       {"time_s", 900.0},
                       {"nose_m", 3.5},
                       {"offset_m", 0.05},
                       {"depth_m", 1.1},
                       {"sd_lateral_m", 0.05},
                       {"sd_vertical_m", 0.06}}}}}};
  day["muted"] = {{{"code", "utility.separation"}, {"subject", "u1"}, {"reason", "agreed"}}};
  day["limits"] = {{"cover_diameters", 8}};
  folder.write("day.crossing", day.dump());
  folder.write("broken.crossing", "{");
  std::vector<std::string> words{folder.path("day.crossing"), folder.path("broken.crossing"), "--json", "--working",
                                 "--trials"};
  for (const std::string& name : samples()) words.push_back(sample(name));
  std::vector<Named> all;
  for (const std::string& line : lines(run("check", words).out))
    all.push_back({std::to_string(all.size()), ordered_json::parse(line)});
  ASSERT_EQ(all.size(), samples().size() + 2);
  EXPECT_TRUE(all[0].value.at("day").at("nose_m").is_number());
  for (const auto& [name, why] : misfits("assessment", all, true)) ADD_FAILURE() << why;
}

TEST(Schema, Assessment_RefusesAnotherShape) {
  const ordered_json line = ordered_json::parse(run("check", {sample("first-lesson"), "--json"}).out);
  std::vector<Named> all;
  const auto with = [&](const char* place, const ordered_json& value) {
    ordered_json changed = line;
    changed[ordered_json::json_pointer(place)] = value;
    all.push_back({place, changed});
  };
  with("/verdict", "fine");
  with("/cover", nullptr);
  with("/cover/least_m", "1.2");
  with("/findings", ordered_json::object());
  with("/bore/path/0/x_m", true);
  with("/utilities/0/id", 3);
  for (const char* gone : {"verdict", "findings", "program"}) {
    ordered_json less = line;
    less.erase(gone);
    all.push_back({gone, less});
  }
  EXPECT_EQ(misfits("assessment", all, false).size(), all.size());
}

TEST(Schema, Command_WrongWord) {
  EXPECT_EQ(run("schema", {"sheet"}).code, 2);
  EXPECT_THAT(run("schema", {"sheet"}).err, HasSubstr("crossing, assessment"));
  EXPECT_EQ(run("schema", {"crossing", "assessment"}).code, 2);
  EXPECT_EQ(run("schema", {}).out, run("schema", {"crossing"}).out);
}

}  // namespace
}  // namespace burrow::test
