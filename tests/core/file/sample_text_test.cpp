// Samples in the language spoken: words alone change.

#include "burrow/file/sample_text.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "burrow/check/assess.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/dictionary_file.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "support/file_samples.h"
#include "support/source_tree.h"

namespace burrow {
namespace {

/// English again when a test ends.
struct Speaks {
  explicit Speaks(const std::string& language) { use_dictionary(dictionary_of(language).value()); }
  ~Speaks() { use_dictionary(Dictionary()); }
};

std::string sample(const std::string& name) {
  std::ifstream in(test::source_dir() / "samples" / name);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::string> samples() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(test::source_dir() / "samples"))
    if (entry.path().extension() == ".crossing") names.push_back(entry.path().filename().string());
  return names;
}

TEST(SampleText, English_IsAsItIsKept) {
  for (const std::string& name : samples()) EXPECT_EQ(sample_in_language(sample(name)), sample(name));
}

TEST(SampleText, Names_AreInTheLanguage) {
  const Speaks german("de");
  const auto house = nlohmann::json::parse(sample_in_language(sample("house-service.crossing")));
  EXPECT_EQ(house["site"]["utilities"][1]["name"], "Gasleitung");
  EXPECT_EQ(house["site"]["utilities"][2]["kind"], "sewer") << "a word of the file";
  EXPECT_NE(house["name"].get<std::string>().find("Hausanschluss"), std::string::npos) << house["name"];
  const auto sixty = nlohmann::json::parse(sample_in_language(sample("sixty-utilities.crossing")));
  for (const auto& utility : sixty["site"]["utilities"]) {
    const std::string name = utility["name"];
    EXPECT_EQ(name.find(" of the "), std::string::npos) << name;
    EXPECT_NE(name.find_first_of("0123456789"), std::string::npos) << name << ": the number is kept";
  }
}

// The same verdict, findings and numbers in every language.
TEST(SampleText, Answers_AreTheSame) {
  const Tables tables = load_tables(Date{2026, 3, 2});
  for (const std::string& name : samples()) {
    const auto english = read_crossing(sample(name), tables);
    ASSERT_TRUE(english) << name;
    const Assessment want = assess(*english, tables);
    for (const std::string& language : languages_known()) {
      if (language == "en") continue;
      const Speaks now(language);
      const auto crossing = read_crossing(sample_in_language(sample(name)), tables);
      ASSERT_TRUE(crossing) << name << " " << language << ": " << crossing.error().english();
      const Assessment have = assess(*crossing, tables);
      EXPECT_EQ(have.verdict, want.verdict) << name << " " << language;
      ASSERT_EQ(have.findings.size(), want.findings.size()) << name << " " << language;
      for (std::size_t i = 0; i < have.findings.size(); ++i) {
        EXPECT_EQ(have.findings[i].code, want.findings[i].code);
        EXPECT_EQ(have.findings[i].subject, want.findings[i].subject);
        EXPECT_EQ(have.findings[i].measured, want.findings[i].measured);
        EXPECT_EQ(have.findings[i].limit, want.findings[i].limit);
      }
    }
  }
}

TEST(SampleText, WhatIsNoSample_StaysAsItIs) {
  const Speaks german("de");
  EXPECT_EQ(sample_in_language("no JSON"), "no JSON");
  EXPECT_EQ(nlohmann::json::parse(sample_in_language(R"({"name":"my own words","utilities":[{"kind":"gas"}]})")),
            nlohmann::json::parse(R"({"name":"my own words","utilities":[{"kind":"gas"}]})"));
}

}  // namespace
}  // namespace burrow
