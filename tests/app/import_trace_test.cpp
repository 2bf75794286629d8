// The whole import command under a trace of its system calls: no process of it goes to the network, and the program
// itself never opens the foreign files; the process that does is started anew for each.

#include <gtest/gtest.h>

#include <cstdlib>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "support/command_run.h"

namespace burrow::test {
namespace {

TEST(ImportTrace, ProgramOpensNoForeignFile) {
  const Folder folder;
  folder.write("a.csv", "1,200,100,55.5,GND\n2,210,120,55.25,GND\n3,190,110,55,GND\n");
  folder.write("b.geojson", R"({"type":"LineString","coordinates":[[100,190,55],[120,210,55]]})");
  folder.write("c.asc", "ncols 3\nnrows 2\nxllcorner 90\nyllcorner 180\ncellsize 20\n51 52 53\n54 55 56\n");
  const std::string command = "ASAN_OPTIONS=detect_leaks=0 strace -f -qq -s 4096 -o '" + folder.path("log") +
                              "' -e trace=open,openat,execve,%network '" BURROW_PROGRAM "' import '" +
                              folder.path("a.csv") + "' '" + folder.path("b.geojson") + "' '" + folder.path("c.asc") +
                              "' -o '" + folder.path("o.crossing") + "' --line 100,195,118,205 2>'" +
                              folder.path("said") + "'";
  ASSERT_EQ(std::system(command.c_str()), 0) << folder.read("said");
  static const std::regex form(R"re(^(\d+) +(\w+)\((?:AT_FDCWD, )?"?([^",]*).*$)re");
  std::map<std::string, std::string> program;  // of each process
  std::map<std::string, std::set<std::string>> opened;
  std::istringstream lines(folder.read("log"));
  for (std::string line; std::getline(lines, line);) {
    std::smatch parts;
    if (!std::regex_match(line, parts, form)) continue;
    const std::string process = parts[1], call = parts[2], what = parts[3];
    if (call == "execve") {
      program[process] = what;
    } else if (call == "open" || call == "openat") {
      opened[process].insert(what);
    } else {
      EXPECT_TRUE(call.starts_with("exit")) << line;  // all else is of the network
    }
  }
  std::map<std::string, int> readers;
  for (const auto& [process, files] : opened)
    for (const char* name : {"a.csv", "b.geojson", "c.asc"})
      if (files.contains(folder.path(name))) {
        ++readers[name];
        EXPECT_TRUE(program[process].ends_with("/burrowline-reader")) << name << " by " << program[process];
      }
  EXPECT_EQ(readers["a.csv"], 1);
  EXPECT_EQ(readers["b.geojson"], 1);
  EXPECT_GE(readers["c.asc"], 1) << "once to read it, once more for heights along the line";
  EXPECT_GE(program.size(), 4u);
}

}  // namespace
}  // namespace burrow::test
