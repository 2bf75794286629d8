/// The program itself, as a process: what main() does beyond the commands.

#include <gtest/gtest.h>

#include <sys/wait.h>
#include <algorithm>
#include <array>
#include <cstdio>
#include <string>

namespace {

struct Ran {
  int code = -1;
  std::string text;
};

/// Standard output and error together.
Ran run_line(const std::string& line) {
  Ran ran;
  std::FILE* pipe = popen((line + " 2>&1").c_str(), "r");
  if (!pipe) return ran;
  std::array<char, 4096> some{};
  while (const std::size_t n = std::fread(some.data(), 1, some.size(), pipe)) ran.text.append(some.data(), n);
  const int status = pclose(pipe);
  ran.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

/// Runs the program without a display.
Ran run(const std::string& args) {
  return run_line("env -u DISPLAY -u WAYLAND_DISPLAY -u QT_QPA_PLATFORM '" BURROW_PROGRAM "' " + args);
}

TEST(Process, HelpAndVersion) {
  const Ran help = run("--help");
  EXPECT_EQ(help.code, 0);
  EXPECT_NE(help.text.find("burrowline check FILE"), std::string::npos);
  const Ran version = run("--version");
  EXPECT_EQ(version.code, 0);
  EXPECT_EQ(version.text.rfind("burrowline ", 0), 0u);
}

TEST(Process, Version_NamesCommitAndTables) {
  const Ran version = run("--version");
  EXPECT_NE(version.text.find(", commit "), std::string::npos) << version.text;
  EXPECT_NE(version.text.find(", tables "), std::string::npos) << version.text;
}

TEST(Process, Help_OfEachCommandAndInGerman) {
  EXPECT_EQ(run("check --help").code, 0);
  EXPECT_EQ(run("sheet --help").code, 0);
  EXPECT_NE(run("--help --language de").text.find("öffnet"), std::string::npos);
}

// An answer that could not be written was not told.
TEST(Process, FullDisk_IsNotSuccess) {
  const Ran ran = run("check '" BURROW_SOURCE_DIR "/samples/first-lesson.crossing' >/dev/full");
  EXPECT_EQ(ran.code, 2) << ran.text;
}

// Each answer is there before the next line is sent: the two talk in turns over pipes.
TEST(Process, Stream_AnswersEachLineAtOnce) {
  const Ran ran = run_line(
      "python3 -c 'import json, subprocess, sys\n"
      "line = json.dumps(json.load(open(\"" BURROW_SOURCE_DIR
      "/samples/first-lesson.crossing\")))\n"
      "p = subprocess.Popen([sys.argv[1], \"check\", \"-\"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, "
      "text=True)\n"
      "for i in range(3):\n"
      "  p.stdin.write(line + chr(10)); p.stdin.flush()\n"
      "  print(json.loads(p.stdout.readline())[\"verdict\"])\n"
      "p.stdin.close()\n"
      "sys.exit(p.wait())' '" BURROW_PROGRAM "'");
  EXPECT_EQ(ran.code, 0) << ran.text;
  EXPECT_EQ(std::count(ran.text.begin(), ran.text.end(), '\n'), 3) << ran.text;
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
  EXPECT_NE(unknown.text.find("de, es"), std::string::npos) << unknown.text;
  EXPECT_EQ(run("check a.crossing --language").code, 2);
}

}  // namespace
