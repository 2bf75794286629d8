// Every finding has words, in both unit systems; the headline says the verdict in one sentence.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "burrow/words/headline.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

bool is_code(const std::string& word) {
  static const std::set<std::string, std::less<>> rooms{"bore", "utility", "surface",  "pit",     "site", "scope",
                                                        "file", "missing", "building", "footing", "pipe", "air"};
  const auto dot = word.find('.');
  return dot != std::string::npos && dot + 1 < word.size() && rooms.contains(word.substr(0, dot)) &&
         word.find_first_not_of("abcdefghijklmnopqrstuvwxyz-.") == std::string::npos;
}

/// The codes that the checks can emit, read from their source: quoted codes, and what `missing` and `ask` are called
/// with.
std::set<std::string> codes_of_the_checks() {
  std::set<std::string> codes{"bore.cover-low", "surface.cover-low"};  // made from the code of the mean
  for (const char* code : {"contact", "encroachment", "exit-window", "daylight"})
    codes.insert(std::string("trials.") + code);  // made by the room that holds the trials
  for (const auto& entry : std::filesystem::recursive_directory_iterator(BURROW_SOURCE_DIR "/core/check")) {
    if (entry.path().filename().string().rfind("check_", 0) != 0) continue;
    std::stringstream text;
    text << std::ifstream(entry.path()).rdbuf();
    const std::string source = text.str();
    for (auto open = source.find('"'); open != std::string::npos;) {
      const auto close = source.find('"', open + 1);
      if (close == std::string::npos) break;
      const std::string word = source.substr(open + 1, close - open - 1);
      const std::string before = source.substr(open < 8 ? 0 : open - 8, open < 8 ? open : 8);
      if (before == "missing(" || before.ends_with("ask(")) codes.insert("missing." + word);
      if (is_code(word)) codes.insert(word);
      open = source.find('"', close + 1);
    }
  }
  codes.erase("missing.newer-file");  // gets a code of its own
  codes.erase("missing.");
  // Told with the checks of pipe or path and never judged: they have a name there and no finding.
  for (const char* reported : {"pipe.earth", "pipe.earth-arched", "pipe.live", "pipe.safe-pull", "pipe.stretch",
                               "pipe.thermal", "pipe.float", "pipe.water", "bore.neutral-cover"})
    codes.erase(reported);
  return codes;
}

Finding made(const std::string& code) {
  Finding f;
  f.code = code;
  f.name = "Alder main";
  f.measured = 0.3048;
  f.limit = 0.6096;
  return f;
}

TEST(FindingText, EachCodeOfTheChecks_HasWords) {
  const std::set<std::string> codes = codes_of_the_checks();
  EXPECT_GE(codes.size(), 35u);
  EXPECT_TRUE(codes.contains("missing.utility-depth") && codes.contains("pit.water"));
  for (const std::string& code : codes)
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
      const std::string text = finding_text(made(code), units);
      EXPECT_NE(text, code);
      EXPECT_EQ(text.find(code), std::string::npos) << text;
      EXPECT_GE(text.size(), 12u) << code << ": " << text;
      EXPECT_NE(text.back(), '.') << text;
      EXPECT_EQ(text.find('{'), std::string::npos) << text;
    }
}

// A finding without numbers does not print a number.
TEST(FindingText, NoNumbers_NoneIsMadeUp) {
  for (const std::string& code : codes_of_the_checks()) {
    Finding f;
    f.code = code;
    f.name = "x";
    if (code == "file.newer") continue;  // always has both versions
    std::string text = finding_text(f, UnitSystem::metric);
    for (auto at = text.find(" : 1"); at != std::string::npos; at = text.find(" : 1")) text.erase(at, 4);  // a slope
    EXPECT_EQ(text.find_first_of("0123456789"), std::string::npos) << code << ": " << text;
  }
}

TEST(FindingText, Separation_MetricAndUs) {
  Finding f = made("utility.separation");
  f.measured = 0.31;
  f.limit = 0.60;
  f.name = "gas main";
  EXPECT_EQ(finding_text(f, UnitSystem::metric), "0.31 m clear of gas main, 0.60 m required");
  const std::string us = finding_text(f, UnitSystem::us);
  EXPECT_NE(us.find("1 ft"), std::string::npos) << us;
  EXPECT_EQ(us.find(" m "), std::string::npos) << us;
  f.limit_base = 0.50;
  EXPECT_EQ(finding_text(f, UnitSystem::metric),
            "0.31 m clear of gas main, 0.60 m required (0.50 m + 0.10 m location tolerance)");
  f.limit_base.reset();
  f.measured = -0.05;
  EXPECT_EQ(finding_text(f, UnitSystem::metric), "runs into gas main by 0.05 m, 0.60 m required");
}

TEST(FindingText, Lengths_SwitchWithTheUnits) {
  for (const char* code : {"bore.cover", "bore.cover-low", "surface.cover", "surface.heave", "surface.heave-high",
                           "bore.length", "bore.climb", "bore.sag", "pit.depth", "pit.water", "pit.unprotected"}) {
    const std::string metric = finding_text(made(code), UnitSystem::metric);
    const std::string us = finding_text(made(code), UnitSystem::us);
    EXPECT_NE(metric, us) << code;
    EXPECT_NE(metric.find('m'), std::string::npos) << metric;
    EXPECT_TRUE(us.find("ft") != std::string::npos || us.find(" in") != std::string::npos) << us;
  }
}

TEST(Advice, EveryStopAndEveryMissing_SaysWhatToDo) {
  for (const std::string& code : codes_of_the_checks())
    if (code != "bore.model") {
      EXPECT_FALSE(advice(made(code)).empty()) << code;
    }
}

TEST(Headline, EachVerdict) {
  EXPECT_EQ(verdict_title(Verdict::within_limits), "Within limits");
  EXPECT_EQ(verdict_title(Verdict::caution), "Caution");
  EXPECT_EQ(verdict_title(Verdict::stop), "Stop");
  EXPECT_EQ(verdict_title(Verdict::incomplete), "Incomplete");

  Crossing crossing = clean_crossing();
  crossing.site.surface = {lane(2.5, 3.5)};  // clear of sloped pits
  EXPECT_EQ(headline(judged(crossing), UnitSystem::metric), "Layout within limits: not a permit to bore.");
  crossing.pits.exit.sides.bore.kind.set(SideKind::sloped);
  EXPECT_EQ(
      headline(judged(crossing), UnitSystem::metric),
      "1 caution; first: bore side of exit pit is sloped: the roof is missing over the first 2.44 m of the bore.");
  crossing.pits.launch.sides.bore.kind.set(SideKind::sloped);
  EXPECT_EQ(headline(judged(crossing), UnitSystem::metric).find("2 cautions; first: "), 0u);
  crossing.site.water.reset();
  EXPECT_EQ(headline(judged(crossing), UnitSystem::metric), "1 thing is not known; first: water level not entered.");
  crossing.pipe.reset();
  EXPECT_EQ(headline(judged(crossing), UnitSystem::metric).find("2 things are not known; first: "), 0u);
  crossing.site.surface.front().permission.set(Permission::refused);
  EXPECT_EQ(headline(judged(crossing), UnitSystem::metric),
            "1 limit is broken; first: the owner of Alder Lane refuses unsteered work under it.");
}

// A muted caution is not counted.
TEST(Headline, MutedCaution_IsNotCounted) {
  Crossing crossing = clean_crossing();
  crossing.site.surface = {lane(2.5, 3.5)};
  crossing.pits.exit.sides.bore.kind.set(SideKind::sloped);
  crossing.pits.launch.sides.bore.kind.set(SideKind::sloped);
  crossing = with_muted(crossing, "pit.bore-side-sloped", "exit-pit", "shield follows");
  EXPECT_EQ(
      headline(judged(crossing), UnitSystem::metric),
      "1 caution; first: bore side of launch pit is sloped: the roof is missing over the first 2.15 m of the bore. "
      "1 accepted.");
}

}  // namespace
}  // namespace burrow::test
