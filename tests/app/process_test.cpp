/// The program itself, as a process: what main() does beyond the commands.

#include <gtest/gtest.h>

#include <sys/wait.h>
#include <array>
#include <cstdio>
#include <string>

namespace {

struct Ran {
  int code = -1;
  std::string text;
};

/// Runs the program without a display; standard output and error together.
Ran run(const std::string& args) {
  const std::string line =
      "env -u DISPLAY -u WAYLAND_DISPLAY -u QT_QPA_PLATFORM '" BURROW_PROGRAM "' " + args + " 2>&1";
  Ran ran;
  std::FILE* pipe = popen(line.c_str(), "r");
  if (!pipe) return ran;
  std::array<char, 4096> some{};
  while (const std::size_t n = std::fread(some.data(), 1, some.size(), pipe)) ran.text.append(some.data(), n);
  const int status = pclose(pipe);
  ran.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

TEST(Process, HelpAndVersion) {
  const Ran help = run("--help");
  EXPECT_EQ(help.code, 0);
  EXPECT_NE(help.text.find("burrowline check FILE"), std::string::npos);
  const Ran version = run("--version");
  EXPECT_EQ(version.code, 0);
  EXPECT_EQ(version.text.rfind("burrowline ", 0), 0u);
}

TEST(Process, WrongWordIsExitCode2) {
  EXPECT_EQ(run("--frobnicate").code, 2);
  EXPECT_EQ(run("check").code, 2);
  EXPECT_EQ(run("check /nowhere/at-all.crossing").code, 2);
}

TEST(Process, ChecksWithoutADisplay) {
  const Ran stop = run("check '" BURROW_SOURCE_DIR "/samples/four-faults.crossing'");
  EXPECT_EQ(stop.code, 1);
  EXPECT_NE(stop.text.find("Stop"), std::string::npos);
  EXPECT_EQ(run("check '" BURROW_SOURCE_DIR "/samples/first-lesson.crossing'").code, 0);
}

TEST(Process, WorkbenchWithoutADisplaySaysSo) {
  const Ran ran = run("");
  EXPECT_EQ(ran.code, 2);
  EXPECT_NE(ran.text.find("no display"), std::string::npos);
}

// The words of every command in German, on request; what other programs read is the same.
TEST(Process, Language_IsThatAskedFor) {
  const Ran german = run("check --language de '" BURROW_SOURCE_DIR "/samples/house-service.crossing'");
  EXPECT_EQ(german.code, 1) << german.text;
  EXPECT_NE(german.text.find("Stopp. 2 Grenzwerte verletzt"), std::string::npos) << german.text;
  const Ran english = run("check '" BURROW_SOURCE_DIR "/samples/house-service.crossing'");
  EXPECT_NE(english.text.find("Stop. 2 limits are broken"), std::string::npos) << english.text;
  const Ran unknown = run("check --language xx a.crossing");
  EXPECT_EQ(unknown.code, 2);
  EXPECT_NE(unknown.text.find("en or de"), std::string::npos) << unknown.text;
  EXPECT_EQ(run("check a.crossing --language").code, 2);
}

}  // namespace
