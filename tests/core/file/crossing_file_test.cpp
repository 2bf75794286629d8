// Reading and writing a crossing: nothing is lost, nothing is invented, the same bytes each time.

#include "burrow/file/crossing_file.h"

#include <gtest/gtest.h>

#include <clocale>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <locale>
#include <nlohmann/json.hpp>
#include <random>
#include <string>

#include "support/random_crossing.h"

namespace burrow::test {
namespace {

Crossing read_or_fail(const std::string& text) {
  Result<Crossing> read = read_crossing(text, tables());
  if (!read) {
    ADD_FAILURE() << read.error().english();
    return {};
  }
  return *read;
}

TEST(CrossingFile, Least_KeepsDefaultsAsDefaults) {
  const Crossing c = read_or_fail(least_text());
  EXPECT_EQ(c.site.strata[0].soil, "firm-clay");
  EXPECT_EQ(c.bore.launch.elevation.m, 101);
  EXPECT_EQ(c.bore.launch.level_sd.value.rad, 0.005);
  EXPECT_FALSE(c.bore.launch.level_sd.entered);
  EXPECT_FALSE(c.site.water);
  EXPECT_FALSE(c.pipe);
  EXPECT_EQ(write_crossing(c).find("level_sd_rad"), std::string::npos);
  EXPECT_NE(write_crossing(c).find("\"water\": null"), std::string::npos);
}

TEST(CrossingFile, Entered_EqualToTheDefaultStaysEntered) {
  const Crossing c = read_or_fail(full_text());
  EXPECT_TRUE(c.bore.launch.level_sd.entered);
  EXPECT_NE(write_crossing(c).find("\"level_sd_rad\": 0.005"), std::string::npos);
}

// Every leaf of the full text is in the text written from it, with the same value; {}, [], null and "" say nothing.
TEST(CrossingFile, Full_WritesEveryValueBack) {
  const auto before = nlohmann::json::parse(full_text()).flatten();
  const auto after = nlohmann::json::parse(write_crossing(read_or_fail(full_text()))).flatten();
  for (const auto& [place, value] : before.items()) {
    if (value.is_null() || value == "") continue;
    EXPECT_TRUE(after.contains(place)) << place;
    if (after.contains(place)) {
      EXPECT_EQ(after[place], value) << place;
    }
  }
}

TEST(CrossingFile, Values_ArriveInTheirMembers) {
  const Crossing c = read_or_fail(full_text());
  EXPECT_EQ(c.site.ground[1], (LevelPoint{0, 102.05}));
  EXPECT_FALSE(c.site.strata[0].top);
  EXPECT_EQ(c.site.strata[1].values.undrained_strength->Pa, 45000);
  EXPECT_EQ(c.site.utilities[0].path[0].z_m, 101.15);
  EXPECT_FALSE(c.site.utilities[0].path[1].z_m);
  EXPECT_EQ(c.site.surface[0].required_cover->m, 1.2);
  EXPECT_EQ(c.pits.launch.sides.right.benches[0].tread.m, 1.2);
  EXPECT_EQ(c.pits.exit.allowance.value.m, 0.10);
  EXPECT_EQ(c.record[0].readings[4].vertical_sd->m, 0.06);
  EXPECT_EQ(c.limits.at("cover_diameters").value, 12);
  EXPECT_EQ(c.limits.at("separation_gas_m").why, "permit 12, line 4");
  EXPECT_FALSE(c.alternatives[0].bore);  // {} is the same as absent
  EXPECT_TRUE(c.alternatives[0].pits);
  EXPECT_EQ(c.practice, R"({"any":[1,{"thing":null}]})");
}

// A record of before has nothing of layout, of who took it on, of what came after: it opens, and is written as it was.
TEST(CrossingFile, RecordOfBefore_OpensAndStaysAsItWas) {
  const std::string record = R"("record":[{"id":"d1","started":"2025-05-03T08:12:00","readings":[
      {"kind":"start","time_s":0},{"kind":"mark","time_s":180,"nose_m":1.5},
      {"kind":"end","time_s":900,"nose_m":3,"how":"backed-out"}]}],)";
  const Crossing c = read_or_fail(with(least_text(), R"("site")", record + R"("site")"));
  ASSERT_EQ(c.record.size(), 1u);
  EXPECT_EQ(c.record[0].layout, KeptLayout{});
  EXPECT_FALSE(c.record[0].taken_on);
  EXPECT_EQ(c.record[0].aftermath, Aftermath{});
  EXPECT_FALSE(c.record[0].readings[1].confirmed);
  EXPECT_FALSE(c.record[0].readings[1].cancelled);
  for (const char* added : {"layout", "taken_on", "aftermath", "confirmed", "cancelled", "tasks", "sign"})
    EXPECT_EQ(write_crossing(c).find(added), std::string::npos) << added;
}

// A later program's members of what is kept with a record stay.
TEST(CrossingFile, RecordOfLater_KeepsWhatItDoesNotKnow) {
  const std::string text = with(with(full_text(), R"("hole":"grouted")", R"("hole":"grouted","grout_m3":0.2)"),
                                R"("by":"b","why":"w")", R"("by":"b","why":"w","badge":7)");
  const std::string written = write_crossing(read_or_fail(text));
  EXPECT_NE(written.find("grout_m3"), std::string::npos);
  EXPECT_NE(written.find("badge"), std::string::npos);
}

TEST(CrossingFile, ByteOrderMark_IsAllowed) {
  EXPECT_EQ(read_or_fail("\xEF\xBB\xBF" + least_text()), read_or_fail(least_text()));
}

TEST(CrossingFile, Ids_AreGivenInFileOrderAndOnce) {
  const std::string text = with(least_text(), R"([{"soil":"firm-clay"}])",
                                R"([{"soil":"firm-clay"},{"id":"l1","soil":"firm-clay"},{"soil":"firm-clay"}],
      "trees":[{},{"id":"u2"}],"utilities":[{},{},{"id":"l2"}],"test_holes":[{"utility":"u3"}])");
  const Crossing c = read_or_fail(text);
  EXPECT_EQ(c.site.strata[0].id, "l3");  // l1 and l2 are taken
  EXPECT_EQ(c.site.strata[2].id, "l4");
  EXPECT_EQ(c.site.trees[0].id, "w1");
  EXPECT_EQ(c.site.utilities[0].id, "u1");
  EXPECT_EQ(c.site.utilities[1].id, "u3");
  EXPECT_EQ(c.site.test_holes[0].id, "h1");
  EXPECT_NE(write_crossing(c).find("\"id\":\"u3\""), std::string::npos);
}

TEST(CrossingFile, WholeNumbers_MayBeSpeltAsTheyLike) {
  EXPECT_EQ(*read_or_fail(with(full_text(), "20000", "2e4")).bore.trials.count, 20000);
  EXPECT_EQ(*read_or_fail(with(full_text(), "20000", "20000.0")).bore.trials.count, 20000);
  const Crossing largest = read_or_fail(with(full_text(), "\"seed\":1", "\"seed\":9223372036854775807"));
  EXPECT_EQ(*largest.bore.trials.seed, 9223372036854775807LL);
  EXPECT_EQ(read_or_fail(write_crossing(largest)), largest);
}

TEST(CrossingFile, NewerVersion_KeepsWhatItDoesNotKnow) {
  const std::string text = with(with(with(full_text(), "\"version\": 1", "\"version\": 2"), R"("cover_diameters":12)",
                                     R"("cover_diameters":12,"limit_of_tomorrow":3)"),
                                R"("notes": "n")", R"("notes": "n", "tomorrow": [1, 2.50])");
  const Crossing c = read_or_fail(text);
  EXPECT_EQ(c.version, 2);
  EXPECT_EQ(c.limits.at("limit_of_tomorrow").value, 3);
  EXPECT_EQ(c.extra, R"({"tomorrow":[1,2.50]})");
  EXPECT_EQ(read_or_fail(write_crossing(c)), c);
}

// An unknown key beside the known ones, in every object of the file, comes back at the same place.
TEST(CrossingFile, UnknownKeys_StayWithTheirObjectAtEveryLevel) {
  const nlohmann::json whole = nlohmann::json::parse(full_text());
  std::vector<nlohmann::json::json_pointer> objects;
  const auto collect = [&](const auto& self, const nlohmann::json& value,
                           const nlohmann::json::json_pointer& at) -> void {
    if (at.to_string() == "/practice" || at.to_string() == "/limits" || at.to_string() == "/alternatives/0/bore")
      return;
    if (value.is_object()) objects.push_back(at);
    if (value.is_structured())
      for (const auto& [key, member] : value.items())
        value.is_array() ? self(self, member, at / std::stoul(key)) : self(self, member, at / key);
  };
  collect(collect, whole, nlohmann::json::json_pointer());
  ASSERT_GT(objects.size(), 60u);
  nlohmann::json with_unknown = whole;
  for (const auto& place : objects)
    with_unknown[place]["unknown_to_us"] = {{"of", place.to_string()}, {"n", {1.5, nullptr}}};
  const Crossing c = read_or_fail(with_unknown.dump());
  const nlohmann::json after = nlohmann::json::parse(write_crossing(c));
  for (const auto& place : objects) {
    ASSERT_TRUE(after.contains(place / "unknown_to_us")) << place.to_string();
    EXPECT_EQ(after[place]["unknown_to_us"], with_unknown[place]["unknown_to_us"]) << place.to_string();
  }
  EXPECT_EQ(read_or_fail(write_crossing(c)), c);
}

TEST(CrossingFile, UnknownNumbers_KeepTheirDigits) {
  const std::string text =
      with(least_text(), "\"version\":1", R"("version":1,"n":[1.10,123456789012345678901,-0,2E+3])");
  EXPECT_EQ(read_or_fail(text).extra, R"({"n":[1.10,123456789012345678901,0,2E+3]})");
}

TEST(CrossingFile, Layout_IsReadable) {
  const std::string text = write_crossing(read_or_fail(full_text()));
  EXPECT_NE(text.find("    \"ground\": [[-4,102.1],[0,102.05],[14,102.3]],\n"), std::string::npos) << text;
  EXPECT_NE(text.find("\n        {\"kind\":\"start\",\"time_s\":0},\n"), std::string::npos) << text;
  EXPECT_EQ(text.back(), '\n');
}

TEST(CrossingRoundTrip, Random_ReadOfWriteIsTheSame) {
  for (unsigned seed = 1; seed <= 150; ++seed) {
    const Crossing c = random_crossing(seed);
    const std::string text = write_crossing(c);
    const Result<Crossing> read = read_crossing(text, tables());
    ASSERT_TRUE(read.has_value()) << "seed " << seed << ": " << read.error().english();
    ASSERT_EQ(*read, c) << "seed " << seed << "\n" << text << "\nagain:\n" << write_crossing(*read);
    ASSERT_EQ(write_crossing(*read), text) << "seed " << seed;
  }
}

// Doubles of every size that is read come back to the last bit.
TEST(CrossingRoundTrip, Random_DoublesToTheLastBit) {
  std::mt19937_64 random(7);
  Crossing c = read_or_fail(full_text());
  for (int i = 0; i < 1000; ++i) {
    double value = 0;
    const std::uint64_t bits = random();
    std::memcpy(&value, &bits, sizeof value);
    if (!(std::abs(value) <= 1e15)) continue;  // larger ones are refused
    c.muted[0].measured = value;
    ASSERT_EQ(read_or_fail(write_crossing(c)).muted[0].measured, value);
  }
}

struct CommaPunctuation : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

/// Sets a German LC_NUMERIC, built on the spot where the system has none; false: it has no means to.
bool set_comma_locale() {
  if (std::setlocale(LC_ALL, "de_DE.UTF-8")) return true;
  const std::string folder = testing::TempDir() + "burrow-locale";
  std::filesystem::create_directories(folder);
  const std::string build = "localedef --no-archive -i de_DE -f UTF-8 " + folder + "/de_DE.UTF-8 >/dev/null 2>&1";
  if (std::system(build.c_str()) != 0) return false;  // NOLINT
  ::setenv("LOCPATH", folder.c_str(), 1);
  return std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr;
}

TEST(CrossingFile, CommaLocale_ChangesNothing) {
  const Crossing before = read_or_fail(full_text());
  const std::string text = write_crossing(before);
  const std::locale global = std::locale::global(std::locale(std::locale::classic(), new CommaPunctuation));
  const bool has_locale = set_comma_locale();
  if (has_locale) {
    EXPECT_STREQ(std::localeconv()->decimal_point, ",");
  }
  const Result<Crossing> read = read_crossing(full_text(), tables());
  const std::string written = write_crossing(before);
  if (has_locale) {
    EXPECT_STREQ(std::localeconv()->decimal_point, ",") << "it is left as it was";
  }
  std::setlocale(LC_ALL, "C");
  std::locale::global(global);
  ASSERT_TRUE(read.has_value()) << read.error().english();
  EXPECT_EQ(*read, before);
  EXPECT_EQ(written, text);
}

}  // namespace
}  // namespace burrow::test
