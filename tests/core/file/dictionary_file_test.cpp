#include "burrow/file/dictionary_file.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "po_text.h"

namespace burrow {
namespace {

const std::string header =
    "msgid \"\"\nmsgstr \"\"\n\"Language: qx\\n\"\n\"Content-Type: text/plain; charset=UTF-8\\n\"\n"
    "\"Plural-Forms: nplurals=3; plural=n==1 ? 0 : n==2 ? 1 : 2;\\n\"\n\n";

TEST(DictionaryFile, Texts_AreRead) {
  const auto read = read_dictionary(
      header +
      "# a word to the translator\n#: core/a.cpp core/b.cpp\nmsgid \"cover\"\n"
      "msgstr \"Überdeckung\"\n\n"
      "msgctxt \"a line\"\nmsgid \"level\"\nmsgstr \"waagrecht\"\n\n"
      "msgid \"\"\n\"first \\\"line\\\"\\n\"\n\"second\\\\\"\nmsgstr \"\"\n\"eins\\n\"\n\"zwei\\t\"\n\n"
      "#, fuzzy\n#| msgid \"old\"\nmsgid \"doubtful\"\nmsgstr \"zweifelhaft\"\n\n"
      "msgid \"not yet\"\nmsgstr \"\"\n\n"
      "msgid \"one pit\"\nmsgid_plural \"{} pits\"\nmsgstr[0] \"a\"\nmsgstr[1] \"b\"\nmsgstr[2] \"c\"\n\n"
      "#~ msgid \"gone\"\n#~ msgstr \"fort\"\n");
  ASSERT_TRUE(read) << read.error().english();
  EXPECT_EQ(read->language, "qx");
  EXPECT_EQ(read->plural.forms(), 3u);
  EXPECT_EQ(read->texts.size(), 4u);
  EXPECT_EQ(read->texts.at("cover"), "Überdeckung");
  EXPECT_EQ(read->texts.at(in_context("a line", "level")), "waagrecht");
  EXPECT_EQ(read->texts.at("first \"line\"\nsecond\\"), "eins\nzwei\t");
  EXPECT_EQ(read->texts.at("one pit"), "a") << "asked without a count";
  EXPECT_EQ(read->counted.at("one pit"), (std::vector<std::string>{"a", "b", "c"}));
  EXPECT_FALSE(read->texts.contains("doubtful") || read->texts.contains("not yet")) << "these stay English";
}

TEST(DictionaryFile, Header_TellsTheDecimalMarkAndWhetherItWasReadTwice) {
  const auto with = [](const std::string& line) {
    std::string text = header;
    return read_dictionary(text.insert(text.find("\n\n") + 1, line));
  };
  EXPECT_EQ(with("")->mark, DecimalMark::point);
  EXPECT_TRUE(with("")->read_twice);
  EXPECT_EQ(with("\"X-Decimal-Mark: ,\\n\"\n")->mark, DecimalMark::comma);
  EXPECT_FALSE(with("\"X-Second-Reader: none\\n\"\n")->read_twice);
  EXPECT_FALSE(with("\"X-Decimal-Mark: ;\\n\"\n"));
}

// No code names a language: what lies in resources/words is there.
TEST(DictionaryFile, EveryCatalogueIsALanguage) {
  const std::vector<std::string> known = languages_known();
  ASSERT_GE(known.size(), 3u);
  EXPECT_EQ(known.front(), "en");
  EXPECT_TRUE(std::is_sorted(known.begin() + 1, known.end()));
  for (const std::string& one : known) {
    const auto dictionary = dictionary_of(one);
    ASSERT_TRUE(dictionary) << one;
    EXPECT_EQ(dictionary->language, one);
  }
}

TEST(DictionaryFile, LinesEndAsOnOtherSystems) {
  EXPECT_EQ(read_dictionary(header + "msgid \"a\"\r\nmsgstr \"b\"\r\n\r\n")->texts.at("a"), "b");
  EXPECT_EQ(read_dictionary(header + "msgid \"a\"\nmsgstr \"b\"")->texts.at("a"), "b");
}

TEST(DictionaryFile, WhatIsNoCatalogue_IsRefusedWithItsLine) {
  for (const char* rest :
       {"words\n", "{\"texts\": {}}\n", "msgid \"a\"\n", "msgid \"a\"\n\nmsgid \"b\"\nmsgstr \"c\"\n", "msgstr \"a\"\n",
        "msgid \"a\nmsgstr \"b\"\n", "msgid a\nmsgstr \"b\"\n", "msgid \"a\"\nmsgstr \"b\\q\"\n",
        "msgid \"a\"\nmsgstr \"b\\\"\n", "msgid \"a\"\nmsgstr \"b\" c\n", "\"a\"\n", "msgid \"a\"\nmsgstr[0] \"b\"\n",
        "msgctxt \"c\"\nmsgstr \"b\"\n", "msgid \"a\"\nmsgid_plural \"b\"\nmsgstr[1] \"c\"\n",
        "msgid \"a\"\nmsgid_plural \"b\"\nmsgstr \"c\"\n", "msgctxt \"c\"\n"})
    EXPECT_FALSE(read_po(std::string("\n\n") + rest)) << rest;
  EXPECT_EQ(read_po("msgid \"a\"\nmsgstr \"b\"\n\nwords here\n").error().place, "line 4");
}

TEST(DictionaryFile, WhatIsNoDictionary_IsRefused) {
  const auto refused = [](std::string text, const std::string& without) {
    const std::size_t at = text.find(without);
    EXPECT_NE(at, std::string::npos) << without;
    return !read_dictionary(text.erase(at, without.size()));
  };
  EXPECT_FALSE(read_dictionary(""));
  EXPECT_FALSE(read_dictionary("msgid \"a\"\nmsgstr \"b\"\n")) << "no header";
  EXPECT_TRUE(refused(header, "Language: qx\\n")) << "no language";
  EXPECT_TRUE(refused(header, "charset=UTF-8")) << "no character set";
  EXPECT_TRUE(refused(header, "nplurals=3; ")) << "no plural rule";
  const auto twice = read_dictionary(header + "msgid \"a\"\nmsgstr \"b\"\n\nmsgid \"a\"\nmsgstr \"c\"\n");
  ASSERT_FALSE(twice) << "a text twice";
  EXPECT_EQ(twice.error().found, "a");
  EXPECT_FALSE(read_dictionary(header + "msgid \"a\"\nmsgid_plural \"b\"\nmsgstr[0] \"c\"\nmsgstr[1] \"d\"\n"))
      << "two of three forms";
  EXPECT_FALSE(read_dictionary(header + header)) << "two headers";
}

TEST(DictionaryFile, GermanComesWithTheProgram) {
  const auto german = dictionary_of("de");
  ASSERT_TRUE(german);
  EXPECT_EQ(german->language, "de");
  EXPECT_EQ(german->plural.forms(), 2u);
  EXPECT_GT(german->texts.size(), 3000u);
  EXPECT_GT(german->counted.size(), 10u);
  EXPECT_FALSE(dictionary_of("core/tables/soils"));
  EXPECT_FALSE(dictionary_of("fr"));
}

}  // namespace
}  // namespace burrow
