// The dictionaries against the source: nothing missing, nothing left over, every placeholder in its place, and the
// files as gettext's own tools write and accept them.

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <regex>
#include <string>

#include "burrow/file/dictionary_file.h"
#include "po_text.h"
#include "support/texts_in_source.h"

namespace burrow::test {
namespace {

const Texts& texts() {
  static const Texts all = texts_in_source();
  return all;
}

fs::path dictionary_path(const std::string& language) {
  return source_dir() / "resources/words" / (language + ".po");
}

/// The languages with a translation of every text: all but English.
std::vector<std::string> translations() {
  std::vector<std::string> all = languages_known();
  std::erase(all, "en");
  return all;
}

const std::map<TextKey, PoEntry>& entries_of(const std::string& language) {
  static std::map<std::string, std::map<TextKey, PoEntry>> known;
  const auto [it, is_new] = known.try_emplace(language);
  if (!is_new) return it->second;
  const Result<std::vector<PoEntry>> read = read_po(read_all(dictionary_path(language)));
  EXPECT_TRUE(read) << language << ": " << read.error().english();
  if (!read) return it->second;
  for (const PoEntry& entry : *read)
    if (!entry.text.empty()) it->second.emplace(TextKey{entry.context.value_or(""), entry.text}, entry);
  return it->second;
}

/// Each translated text with the English one it stands for: of a counted text the form for one beside the first, the
/// plural beside the others.
struct Pair {
  std::string english, text;
  bool for_one = false;
};
std::vector<Pair> pairs() {
  std::vector<Pair> all;
  for (const std::string& language : translations())
    for (const auto& [key, entry] : entries_of(language))
      for (std::size_t i = 0; i < entry.forms.size(); ++i)
        all.push_back({i > 0 && entry.plural ? *entry.plural : entry.text, entry.forms[i], i == 0 && entry.plural});
  return all;
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
  static const std::regex one(R"((^|[^&])&[A-Za-zÄÖÜÁÉÍÓÚÑäöüáéíóúñ](?![a-z]*;))");
  return static_cast<int>(std::distance(std::sregex_iterator(text.begin(), text.end(), one), std::sregex_iterator()));
}

TEST(Dictionary, EveryTextOfTheSource_IsInIt) {
  EXPECT_GT(texts().size(), 3000u) << "the texts were not found";
  for (const auto& [key, found] : texts()) {
    const std::string file = found.calls.empty() ? *found.other_files.begin() : *found.calls.begin();
    for (const std::string& language : translations()) {
      const auto it = entries_of(language).find(key);
      if (it == entries_of(language).end()) {
        ADD_FAILURE() << language << ", " << file << ": \"" << key.text
                      << "\" is missing: resources/words/update brings it in";
        continue;
      }
      EXPECT_FALSE(it->second.fuzzy) << language << ", " << file << ": \"" << key.text << "\" is marked fuzzy";
      EXPECT_EQ(it->second.plural.value_or(""), found.plural) << language << ", " << file << ": " << key.text;
      for (const std::string& form : it->second.forms)
        EXPECT_FALSE(form.empty()) << language << ", " << file << ": " << key.text;
    }
  }
}

TEST(Dictionary, EveryEntry_IsATextOfTheSource) {
  for (const std::string& language : translations())
    for (const auto& [key, entry] : entries_of(language))
      EXPECT_TRUE(texts().contains(key)) << language << ": \"" << key.text << "\" is left over";
}

// The forms of the pages' counted texts alone: tr() takes one text for all counts, the core's say_count two.
TEST(Dictionary, English_HoldsTheCountedTextsOfThePages) {
  const std::optional<Dictionary> english = dictionary_of("en");
  ASSERT_TRUE(english);
  std::size_t counted = 0;
  for (const auto& [key, found] : texts()) {
    if (found.plural != key.text || key.text.find("%n") == std::string::npos) continue;
    ++counted;
    EXPECT_TRUE(english->counted.contains(key.text)) << key.text;
  }
  EXPECT_EQ(english->counted.size(), counted);
  EXPECT_EQ(english->texts.size(), counted);
}

TEST(Dictionary, EnglishForms_KeepTheirPlaceholders) {
  const std::optional<Dictionary> english = dictionary_of("en");
  ASSERT_TRUE(english);
  for (const auto& [text, forms] : english->counted) {
    ASSERT_EQ(forms.size(), 2u) << text;
    EXPECT_EQ(placeholders(forms[1]), placeholders(text)) << text;
    std::vector<std::string> one = placeholders(text);
    if (forms[0].find("%n") == std::string::npos) std::erase(one, "%n");
    EXPECT_EQ(placeholders(forms[0]), one) << text;
    EXPECT_EQ(forms[0].find("(s)"), std::string::npos) << text;
  }
}

int run(const std::string& command) {
  return std::system(command.c_str());
}

TEST(Dictionary, Msgfmt_AcceptsThem) {
  for (const std::string& language : languages_known())
    EXPECT_EQ(run("msgfmt --check -o /dev/null " + dictionary_path(language).string()), 0) << language;
  const fs::path wrong = fs::temp_directory_path() / "burrow-wrong.po";
  std::ofstream(wrong) << "msgid \"\"\nmsgstr \"Plural-Forms: nplurals=1; plural=n;\\n\"\n";
  EXPECT_NE(run("msgfmt --check -o /dev/null " + wrong.string() + " 2>/dev/null"), 0);
  fs::remove(wrong);
}

// Found by xgettext, ordered and written by gettext: what the scanner of these tests finds must be the same texts.
TEST(Dictionary, UpdateHasNothingToDo) {
  const fs::path folder = fs::temp_directory_path() / ("burrow-words-" + std::to_string(::getpid()));
  fs::create_directories(folder);
  const std::string update = (source_dir() / "resources/words/update").string();
  ASSERT_EQ(run("WORDS_TO=" + folder.string() + " WORDS_POT=" BURROW_BUILD_DIR "/tests/words_pot " + update), 0);
  for (const std::string& language : languages_known())
    EXPECT_TRUE(read_all(folder / (language + ".po")) == read_all(dictionary_path(language)))
        << language << ".po is not as resources/words/update leaves it";
  fs::remove_all(folder);
}

// A sentence is whole, with placeholders: pieces put one after the other cannot be turned round in another language.
TEST(Dictionary, NoText_IsAPieceOfASentence) {
  for (const auto& [key, found] : texts()) {
    for (const std::string& text : {key.text, found.plural}) {
      if (text.empty()) continue;
      const bool piece = std::string_view(" \n\t,;:").find(text.front()) != std::string_view::npos ||
                         std::string_view(" \n\t,").find(text.back()) != std::string_view::npos;
      if (!piece) continue;
      for (const std::string& file : found.calls) ADD_FAILURE() << file << ": \"" << text << '"';
    }
  }
}

TEST(Dictionary, Placeholders_AreThoseOfTheEnglishText) {
  static const std::regex numbered(R"(\{\d+(:[^}]*)?\})"), plain(R"(\{(:[^}]*)?\})");
  for (const auto& [english, text, counted] : pairs()) {
    std::vector<std::string> wanted = placeholders(english);
    // "one pit": the form for one may say the number as a word, or not at all.
    if (counted && placeholders(text).size() + 1 == wanted.size())
      std::erase(wanted, english.find("%n") != std::string::npos ? "%n" : "{}");
    EXPECT_EQ(wanted, placeholders(text)) << english << "\n" << text;
    EXPECT_FALSE(std::regex_search(text, numbered) && std::regex_search(text, plain))
        << "all numbered or none: " << text;
    // Where all have the same format their order may not be changed without numbers, which nobody could see here; where
    // the formats differ it is seen.
    if (!std::regex_search(text, numbered)) {
      std::vector<std::string> of_english, of_translation;
      for (std::sregex_iterator it(english.begin(), english.end(), plain), end; it != end; ++it)
        of_english.push_back(it->str());
      for (std::sregex_iterator it(text.begin(), text.end(), plain), end; it != end; ++it)
        of_translation.push_back(it->str());
      EXPECT_EQ(of_english, of_translation) << english << "\n" << text;
    }
  }
}

TEST(Dictionary, LinesTagsAndKeyboardLetters_AreKept) {
  static const std::regex tag("<[^>]*>");
  const auto tags = [](const std::string& text) {
    return std::distance(std::sregex_iterator(text.begin(), text.end(), tag), std::sregex_iterator());
  };
  for (const auto& [english, text, for_one] : pairs()) {
    ASSERT_FALSE(text.empty()) << english;
    EXPECT_EQ(count_of(english, '\n'), count_of(text, '\n')) << english;
    EXPECT_EQ(tags(english), tags(text)) << english << "\n" << text;
    EXPECT_EQ(mnemonics(english), mnemonics(text)) << english << "\n" << text;
  }
}

// Words that no German or Spanish text holds, and of which hardly an English sentence is free.
TEST(Dictionary, NoEnglishIsLeft) {
  static const std::regex english_words(
      R"((^|[^A-Za-z/-])(the|and|of|with|from|which|where|not|are|is|has|by)([^A-Za-z/-]|$))");
  for (const auto& [english, text, for_one] : pairs())
    EXPECT_FALSE(std::regex_search(text, english_words)) << english << "\n" << text;
}

}  // namespace
}  // namespace burrow::test
