// The German dictionary against the source: nothing missing, nothing left over, every placeholder in its place.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <string>

#include "texts_in_source.h"

namespace burrow::test {
namespace {

const std::map<std::string, std::string>& german() {
  static const std::map<std::string, std::string> texts =
      nlohmann::json::parse(read_all(source_dir() / "resources/words/de.json"))
          .at("texts")
          .get<std::map<std::string, std::string>>();
  return texts;
}

/// "{}", "{:.2f}", "%1", "%n", sorted; the number of "{1:.2f}" does not count, its format does.
std::vector<std::string> placeholders(const std::string& text) {
  static const std::regex any(R"(\{\d*(:[^}]*)?\}|%\d|%n)");
  std::vector<std::string> found;
  for (std::sregex_iterator it(text.begin(), text.end(), any), end; it != end; ++it) {
    std::string one = it->str();
    if (one[0] == '{') one = "{" + (*it)[1].str() + "}";
    found.push_back(one);
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::ptrdiff_t count_of(const std::string& text, char c) {
  return std::count(text.begin(), text.end(), c);
}

/// Keyboard letters: "&" before a letter, not "&&" and not "&amp;".
int mnemonics(const std::string& text) {
  static const std::regex one(R"((^|[^&])&[A-Za-zÄÖÜäöü](?![a-z]*;))");
  return static_cast<int>(std::distance(std::sregex_iterator(text.begin(), text.end(), one), std::sregex_iterator()));
}

TEST(Dictionary, EveryTextOfTheSource_IsInIt) {
  const Texts texts = texts_in_source();
  EXPECT_GT(texts.size(), 2000u) << "the texts were not found";
  for (const auto& [text, file] : texts) EXPECT_TRUE(german().contains(text)) << file << ": \"" << text << '"';
}

TEST(Dictionary, EveryEntry_IsATextOfTheSource) {
  const Texts texts = texts_in_source();
  for (const auto& [english, text] : german()) {
    const std::size_t bar = english.find('|');  // "context|text"
    EXPECT_TRUE(texts.contains(english) || (bar != std::string::npos && texts.contains(english.substr(bar + 1))))
        << "\"" << english << "\" is left over";
  }
}

TEST(Dictionary, Placeholders_AreThoseOfTheEnglishText) {
  static const std::regex numbered(R"(\{\d+(:[^}]*)?\})"), plain(R"(\{(:[^}]*)?\})");
  for (const auto& [english, text] : german()) {
    EXPECT_EQ(placeholders(english), placeholders(text)) << english << "\n" << text;
    EXPECT_FALSE(std::regex_search(text, numbered) && std::regex_search(text, plain))
        << "all numbered or none: " << text;
    // Where all have the same format their order may not be changed without numbers, which nobody could see here; where
    // the formats differ it is seen.
    if (!std::regex_search(text, numbered)) {
      std::vector<std::string> of_english, of_german;
      for (std::sregex_iterator it(english.begin(), english.end(), plain), end; it != end; ++it)
        of_english.push_back(it->str());
      for (std::sregex_iterator it(text.begin(), text.end(), plain), end; it != end; ++it)
        of_german.push_back(it->str());
      EXPECT_EQ(of_english, of_german) << english << "\n" << text;
    }
  }
}

TEST(Dictionary, BlanksLinesTagsAndKeyboardLetters_AreKept) {
  static const std::regex tag("<[^>]*>");
  const auto tags = [](const std::string& text) {
    return std::distance(std::sregex_iterator(text.begin(), text.end(), tag), std::sregex_iterator());
  };
  for (const auto& [english, text] : german()) {
    ASSERT_FALSE(text.empty()) << english;
    EXPECT_EQ(english.front() == ' ', text.front() == ' ') << '"' << english << "\" \"" << text << '"';
    EXPECT_EQ(english.back() == ' ', text.back() == ' ') << '"' << english << "\" \"" << text << '"';
    EXPECT_EQ(count_of(english, '\n'), count_of(text, '\n')) << english;
    EXPECT_EQ(tags(english), tags(text)) << english << "\n" << text;
    EXPECT_EQ(mnemonics(english), mnemonics(text)) << english << "\n" << text;
  }
}

// Words that no German text holds, and of which hardly an English sentence is free.
TEST(Dictionary, NoEnglishIsLeft) {
  static const std::regex english_words(
      R"((^|[^A-Za-z/-])(the|and|of|with|from|which|where|not|are|is|has|by)([^A-Za-z/-]|$))");
  for (const auto& [english, text] : german())
    EXPECT_FALSE(std::regex_search(text, english_words)) << english << "\n" << text;
}

}  // namespace
}  // namespace burrow::test
