#include "burrow/file/dictionary_file.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

TEST(DictionaryFile, Texts_AreRead) {
  const auto read = read_dictionary(R"({"language": "de", "texts": {"cover": "Überdeckung", "{} deep": "{} tief"}})");
  ASSERT_TRUE(read) << read.error().text();
  EXPECT_EQ(read->language, "de");
  EXPECT_EQ(read->texts.size(), 2u);
  EXPECT_EQ(read->texts.at("cover"), "Überdeckung");
}

TEST(DictionaryFile, WhatIsNoDictionary_IsRefusedWithItsPlace) {
  EXPECT_FALSE(read_dictionary(""));
  EXPECT_FALSE(read_dictionary("[]"));
  const auto empty = read_dictionary(R"({"language": "de", "texts": {"cover": ""}})");
  ASSERT_FALSE(empty);
  EXPECT_EQ(empty.error().place, "/texts/cover");
  EXPECT_FALSE(read_dictionary(R"({"language": "de", "texts": {"cover": 1}})"));
  EXPECT_FALSE(read_dictionary(R"({"language": "de", "texts": ["cover"]})"));
  EXPECT_FALSE(read_dictionary(R"({"texts": {}})")) << "no language";
  EXPECT_FALSE(read_dictionary(R"({"language": "de", "texts": {"a": "b", "a": "c"}})")) << "a text twice";
}

TEST(DictionaryFile, GermanComesWithTheProgram) {
  const auto german = dictionary_of("de");
  ASSERT_TRUE(german);
  EXPECT_EQ(german->language, "de");
  EXPECT_GT(german->texts.size(), 3000u);
  EXPECT_FALSE(dictionary_of("en")) << "the texts of the code are the English ones";
  EXPECT_FALSE(dictionary_of("../tables/soils"));
}

}  // namespace
}  // namespace burrow
