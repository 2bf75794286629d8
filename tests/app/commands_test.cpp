// The table of commands against what the commands take, and man page and completion against the table.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "burrow/document/language.h"
#include "command_table.h"
#include "support/command_run.h"
#include "version.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

/// What a command says it knows when it meets an option that it does not.
std::set<std::string> options_taken(const Command& command) {
  const std::string err = run(command.name, {"--no-such-option"}).err;
  std::istringstream words(err.substr(std::min(err.find("expected ") + 9, err.size())));
  std::set<std::string> taken;
  for (std::string word; words >> word;)
    if (word.front() == '-') taken.insert(word);
  return taken;
}

TEST(Commands, Table_HasWhatEachCommandTakes) {
  EXPECT_GE(commands().size(), 11u);
  for (const Command& command : commands()) {
    std::set<std::string> told;
    for (const CommandOption& option : command.options) told.insert(option.name);
    EXPECT_EQ(told, options_taken(command)) << command.name;
    EXPECT_EQ(run(command.name, {"--no-such-option"}).code, 2) << command.name;
  }
}

TEST(Commands, Help_IsTheSameAskedEitherWay) {
  for (const Command& command : commands()) {
    const Ran asked = run(command.name, {"anything", "--help"});
    EXPECT_EQ(asked.code, 0) << command.name;
    EXPECT_EQ(asked.out, run("help", {command.name}).out) << command.name;
    EXPECT_EQ(asked.out, run(command.name, {"-h"}).out) << command.name;
    for (const CommandOption& option : command.options) EXPECT_THAT(asked.out, HasSubstr(option.name)) << command.name;
    EXPECT_THAT(asked.out, HasSubstr("Exit code: ")) << command.name;
    EXPECT_THAT(usage(), HasSubstr("burrowline " + std::string(command.name))) << command.name;
    for (const std::string& line : lines(asked.out)) EXPECT_LE(line.size(), 130u) << line;
  }
  EXPECT_EQ(run("check", {"--", "--help"}).code, 2) << "a file of that name";
  EXPECT_EQ(run("help", {}).out, usage());
  EXPECT_EQ(run("help", {"dig"}).code, 2);
  EXPECT_THAT(run("help", {"dig"}).err, HasSubstr("check, search"));
  EXPECT_EQ(run("help", {"check", "search"}).code, 2);
}

TEST(Commands, Help_SpeaksGerman) {
  const std::string english = run("help", {"make"}).out;
  speak_language(QStringLiteral("de"));
  const std::string german = run("help", {"make"}).out;
  const std::string german_usage = usage();
  speak_language(QStringLiteral("en"));
  EXPECT_NE(english, german);
  EXPECT_THAT(german, HasSubstr("Endwert"));
  EXPECT_THAT(german_usage, HasSubstr("öffnet"));
  EXPECT_EQ(english, run("help", {"make"}).out);
}

std::string packaged(const char* name) {
  std::ostringstream text;
  text << std::ifstream(BURROW_SOURCE_DIR "/resources/package/" + std::string(name)).rdbuf();
  return text.str();
}

TEST(Commands, ManPage_HasEachOption) {
  const std::string page = packaged("burrowline.1");
  for (const Command& command : commands()) {
    const std::size_t from = page.find(".SS burrowline " + std::string(command.name) + " ");
    ASSERT_NE(from, std::string::npos) << command.name;
    const std::string part = page.substr(from, page.find("\n.S", from + 1) - from);
    for (const CommandOption& option : command.options) {
      std::string typed;
      for (const char* c = option.name; *c; ++c) typed += *c == '-' ? std::string("\\-") : std::string(1, *c);
      EXPECT_THAT(part, HasSubstr("\\fB" + typed + "\\fR")) << command.name;
    }
  }
}

// The completion itself, run by the shell it is for.
TEST(Commands, Completion_KnowsEachOption) {
  for (const Command& command : commands()) {
    if (command.options.empty()) continue;
    const Ran ran = run_shell("bash -c 'source \"" BURROW_SOURCE_DIR
                              "/resources/package/burrowline.bash\"; COMP_WORDS=(burrowline " +
                              std::string(command.name) + " -); COMP_CWORD=2; _burrowline; echo ${COMPREPLY[@]}'");
    EXPECT_EQ(ran.code, 0) << ran.out;
    std::istringstream words(ran.out);
    std::set<std::string> offered;
    for (std::string word; words >> word;) offered.insert(word);
    for (const CommandOption& option : command.options)
      EXPECT_TRUE(offered.contains(option.name)) << command.name << ran.out;
    EXPECT_EQ(offered.size(), command.options.size() + 2) << ran.out;
  }
  const Folder empty;
  const Ran first = run_shell("cd '" + empty.path() +
                              "' && bash -c 'source \"" BURROW_SOURCE_DIR
                              "/resources/package/burrowline.bash\"; COMP_WORDS=(burrowline ma); COMP_CWORD=1; "
                              "_burrowline; echo ${COMPREPLY[@]}'");
  EXPECT_EQ(first.out, "make\n");
}

TEST(Commands, Import_ToStandardOutput) {
  const Folder folder;
  folder.write("s.csv", "1,0,0,100,g\n2,0,10,100.5,g\n3,5,5,100,g\n");
  const std::vector<std::string> words{folder.path("s.csv"), "--order", "pnezd", "--line", "0,0,10,0", "-o"};
  std::vector<std::string> to_file = words, to_output = words;
  to_file.push_back(folder.path("out.crossing"));
  to_output.emplace_back("-");
  const Ran file = run("import", to_file), piped = run("import", to_output);
  ASSERT_EQ(file.code, 0) << file.err;
  EXPECT_EQ(piped.code, 0) << piped.err;
  EXPECT_EQ(piped.out, folder.read("out.crossing"));
  EXPECT_FALSE(std::filesystem::exists("-"));
  const Ran wrong = run("import", {folder.path("none.csv"), "-o", "-"});
  EXPECT_EQ(wrong.code, 2);
  EXPECT_TRUE(wrong.out.empty());
}

TEST(Commands, Version_IsInEveryAssessment) {
  const ProgramVersion program = program_version();
  EXPECT_EQ(program.tables.size(), 12u);
  const std::string line = run("check", {sample("first-lesson"), "--json"}).out;
  EXPECT_THAT(line, HasSubstr("\"program\":{\"version\":\"" + program.version + "\""));
  EXPECT_THAT(line, HasSubstr("\"tables\":\"" + program.tables + "\""));
  EXPECT_THAT(version_line(), HasSubstr(program.version));
}

}  // namespace
}  // namespace burrow::test
