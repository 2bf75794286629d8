// check - and search -: crossings on standard input.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <signal.h>

#include <nlohmann/json.hpp>

#include "support/command_run.h"
#include "texts_in.h"
#include "workers.h"

namespace burrow::test {
namespace {

using nlohmann::json;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

std::string text_of(const std::string& name) {
  std::ostringstream text;
  text << std::ifstream(sample(name)).rdbuf();
  return text.str();
}
std::string line_of(const std::string& name) {
  return json::parse(text_of(name)).dump();
}

std::vector<std::string> names_in(const std::string& input, std::size_t* faults = nullptr) {
  std::istringstream in(input);
  TextsIn texts(in);
  std::vector<std::string> names;
  while (const auto one = texts.next()) {
    names.push_back(one->name);
    if (faults && one->error) ++*faults;
  }
  return names;
}

TEST(TextsIn, OneALine_OrOneOverManyLines) {
  EXPECT_THAT(names_in("{}\n{}\n"), ElementsAre("-:1", "-:2"));
  EXPECT_THAT(names_in("\n \r\n{}\n\n{}"), ElementsAre("-:3", "-:5"));
  EXPECT_THAT(names_in("{\n  \"a\": [1,\n2]\n}\n"), ElementsAre("-"));
  EXPECT_THAT(names_in("{\"a\": \"}\\\"\",\n\"b\": 1}\n"), ElementsAre("-"));
  EXPECT_THAT(names_in("nonsense\n{}\n"), ElementsAre("-:1", "-:2"));
}

// A first line cut short must not swallow those after it.
TEST(TextsIn, FirstLineCutShort_LosesNone) {
  EXPECT_THAT(names_in("{\"format\": \"bur\n{}\n{}\n"), ElementsAre("-:1", "-:2", "-:3"));
}

TEST(TextsIn, Nothing_IsAFault) {
  for (const char* input : {"", "\n\n", "  \n\t"}) {
    std::size_t faults = 0;
    EXPECT_THAT(names_in(input, &faults), ElementsAre("-")) << input;
    EXPECT_EQ(faults, 1u);
  }
}

TEST(TextsIn, BrokenStream_IsAFault) {
  struct Breaks : std::streambuf {
    int left = 4;
    int uflow() override {
      if (left-- > 0) return left == 2 ? '\n' : '7';
      throw std::ios::failure("gone");
    }
    int underflow() override { return '7'; }
  } bytes;
  std::istream in(&bytes);
  TextsIn texts(in);
  bool told = false;
  while (const auto one = texts.next()) told = told || one->error.has_value();
  EXPECT_TRUE(told);
}

TEST(CheckStream, EachLine_AsTheFileAlone) {
  std::string input;
  const std::vector<std::string> names{"first-lesson", "four-faults", "house-service"};
  for (const std::string& name : names) input += line_of(name) + "\n";
  const Ran ran = run_with(input, "check", {"-"});
  EXPECT_EQ(ran.code, 1) << ran.err;
  const auto answers = lines(ran.out);
  ASSERT_EQ(answers.size(), names.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    json streamed = json::parse(answers[i]), alone = json::parse(run("check", {sample(names[i]), "--json"}).out);
    EXPECT_EQ(streamed.at("file"), "-:" + std::to_string(i + 1));
    streamed.erase("file");
    alone.erase("file");
    EXPECT_EQ(streamed, alone) << names[i];
  }
  EXPECT_EQ(run_with(line_of("first-lesson"), "check", {"-"}).code, 0);
}

TEST(CheckStream, OneCrossingOverManyLines) {
  const Ran ran = run_with(text_of("first-lesson"), "check", {"-"});
  EXPECT_EQ(ran.code, 0) << ran.err;
  ASSERT_EQ(lines(ran.out).size(), 1u);
  EXPECT_EQ(json::parse(ran.out).at("file"), "-");
}

// What cannot be judged is told in its place, and the whole never ends as if all were.
TEST(CheckStream, NotJudged_IsTwo) {
  const std::string good = line_of("first-lesson") + "\n";
  for (const std::string& bad : {std::string("{\"format\":\n"), std::string("7\n"), std::string("{}\n")}) {
    for (const std::string& input : {bad + good, good + bad}) {
      const Ran ran = run_with(input, "check", {"-"});
      EXPECT_EQ(ran.code, 2) << input.substr(0, 40);
      const auto answers = lines(ran.out);
      ASSERT_EQ(answers.size(), 2u) << input.substr(0, 40);
      EXPECT_NE(json::parse(answers[0]).contains("error"), json::parse(answers[1]).contains("error"));
    }
  }
  EXPECT_EQ(run_with("", "check", {"-"}).code, 2);
  EXPECT_THAT(run_with("", "check", {"-"}).out, HasSubstr("nothing on standard input"));
}

TEST(CheckStream, StandsAlone) {
  EXPECT_EQ(run_with("", "check", {"-", sample("first-lesson")}).code, 2);
  EXPECT_EQ(run_with("", "check", {"-", "--csv"}).code, 2);
  EXPECT_EQ(run_with("", "check", {"-", "--part", "1/2"}).code, 2);
  EXPECT_EQ(run("check", {"--", "-"}).code, 2) << "a file of that name, which is not there";
  EXPECT_EQ(run("check", {"--", "-"}).err.find("-: "), 0u);
}

TEST(SearchStream, EachLine_AsTheFileAlone) {
  const Ran ran = run_with(line_of("first-lesson") + "\n7\n", "search", {"-", "--grid", "4", "--jobs", "1"});
  EXPECT_EQ(ran.code, 2);
  const auto answers = lines(ran.out);
  ASSERT_EQ(answers.size(), 2u);
  json streamed = json::parse(answers[0]);
  json alone = json::parse(run("search", {sample("first-lesson"), "--json", "--grid", "4", "--jobs", "1"}).out);
  streamed.erase("file");
  alone.erase("file");
  EXPECT_EQ(streamed, alone);
  EXPECT_TRUE(json::parse(answers[1]).contains("error"));
  EXPECT_EQ(run_with(line_of("first-lesson"), "search", {"-", "--grid", "4"}).code, 0);
}

// One that kills its worker is one failure; the next has a new worker.
TEST(TextWorker, Killed_IsOneFailure) {
  TextWorker worker(
      WorkerLimits{},
      [](const std::string& text) {
        if (text == "kill") ::raise(SIGKILL);
        if (text == "exit") ::_exit(0);
        return Answer{"answer to " + text, "", 0};
      },
      [](const Error& error) {
        return Answer{"", error.english(), 2};
      });
  EXPECT_EQ(worker.answer("one").out, "answer to one");
  const Answer killed = worker.answer("kill");
  EXPECT_EQ(killed.code, 2);
  EXPECT_THAT(killed.err, HasSubstr("signal 9"));
  EXPECT_EQ(worker.answer("exit").code, 2) << "ended well, and answered nothing";
  EXPECT_EQ(worker.answer("").out, "answer to ");
  const std::string large(3'000'000, 'x');
  EXPECT_EQ(worker.answer(large).out.size(), large.size() + 10);
}

}  // namespace
}  // namespace burrow::test
