// Texts in another language: what is known is turned, the rest stays, values stand where the translation puts them.

#include "burrow/language/say.h"

#include <gtest/gtest.h>

#include <initializer_list>
#include <utility>

#include "burrow/base/quantity_text.h"

namespace burrow {
namespace {

/// English again when a test ends.
struct Speaks {
  explicit Speaks(std::initializer_list<std::pair<const std::string, std::string>> texts) {
    use_dictionary({"de", texts, {}, {}});
  }
  ~Speaks() { use_dictionary({}); }
};

TEST(Say, WithoutADictionary_EverythingIsEnglish) {
  EXPECT_EQ(dictionary().language, "en");
  EXPECT_STREQ(translated("cover"), "cover");
  EXPECT_EQ(say("cover {}, {:.1f} at least", "1.2 m", 1.25), "cover 1.2 m, 1.2 at least");
}

TEST(Say, KnownTexts_AreTurned_OthersStay) {
  const Speaks german({{"cover", "Überdeckung"}});
  EXPECT_STREQ(translated("cover"), "Überdeckung");
  EXPECT_EQ(translated(std::string_view("cover")), "Überdeckung");
  EXPECT_STREQ(translated("a text that nobody turned"), "a text that nobody turned");
}

TEST(Say, Patterns_MayPutTheirValuesInAnotherOrder) {
  const Speaks german({{"{} side of {}", "{1}, Seite {0}"}, {"{:.2f} of {:.0f}", "von {1:.0f}: {0:.2f}"}});
  EXPECT_EQ(say("{} side of {}", "left", "exit pit"), "exit pit, Seite left");
  EXPECT_EQ(say("{:.2f} of {:.0f}", 0.5, 12.0), "von 12: 0.50");
}

TEST(Say, LabelsOfParts_AreTurnedPartByPart) {
  const Speaks german({{"bore side", "Bohrseite"},
                       {"high", "hoch"},
                       {in_context("part of a label", "high"), "Höhe"},
                       {"floor, across", "Sohle, quer"}});
  EXPECT_EQ(translated_label("bore side, high"), "Bohrseite, Höhe");
  EXPECT_EQ(translated_label("floor, across"), "Sohle, quer") << "the whole goes before its parts";
  EXPECT_EQ(translated_label("bore side, unheard of"), "Bohrseite, unheard of");
  EXPECT_EQ(translated_label(""), "");
}

TEST(Say, PointersHandedOut_OutliveTheirDictionary) {
  const char* kept = nullptr;
  {
    const Speaks german({{"cover", "Überdeckung"}});
    kept = translated("cover");
  }
  EXPECT_STREQ(kept, "Überdeckung");
  EXPECT_STREQ(translated("cover"), "cover");
}

TEST(Say, CountedTexts_InEnglish_HaveTheirPluralInTheCode) {
  EXPECT_EQ(say_count("one pit", "{} pits", 1), "one pit");
  for (const int n : {0, 2, 5, 21}) EXPECT_EQ(say_count("one pit", "{} pits", n), fmt::format("{} pits", n));
  EXPECT_EQ(say_count("{} pit of {}", "{} pits of {}", std::size_t{1}, "seven"), "1 pit of seven");
}

TEST(Say, CountedTexts_HaveTheFormsOfTheDictionary) {
  struct English {
    ~English() { use_dictionary({}); }
  } const again;
  Dictionary invented;
  invented.language = "qx";
  invented.texts = {{"one pit", "jama"}};
  invented.counted = {{"one pit", {"{} jama", "{} jamy", "{} jam"}},
                      {in_context("dug", "one pit"), {"{} vykop", "{} vykopa", "{} vykopy"}},
                      {"{} of {}", {"a {1}: {0}", "b {1}: {0}", "c {1}: {0}"}}};
  invented.plural =
      *PluralRule::read("nplurals=3; plural=n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 : 2;");
  use_dictionary(invented);
  EXPECT_EQ(say_count("one pit", "{} pits", 0), "0 jam");
  EXPECT_EQ(say_count("one pit", "{} pits", 1), "1 jama");
  EXPECT_EQ(say_count("one pit", "{} pits", 2), "2 jamy");
  EXPECT_EQ(say_count("one pit", "{} pits", 5), "5 jam");
  EXPECT_EQ(say_count("one pit", "{} pits", 22), "22 jamy");
  EXPECT_EQ(say_count("{} of {}", "{} of {}", 3, "x"), "b x: 3");
  EXPECT_EQ(say_count_in("on a drawing", "one pit", "{} pits", 5), "5 jam");
  EXPECT_EQ(say_count_in("dug", "one pit", "{} pits", 5), "5 vykopy");
  EXPECT_EQ(say_count("a text", "{} that nobody turned", 3), "3 that nobody turned");
}

TEST(Say, Sentences_HaveOneBlankBetween) {
  EXPECT_EQ(sentences({"One.", "", "Two.", "Three.", ""}), "One. Two. Three.");
  EXPECT_EQ(sentences({"", "Two."}), "Two.");
  EXPECT_EQ(sentences({}), "");
}

TEST(Say, ATextWithTwoMeanings_IsTurnedByItsContext) {
  const Speaks german({{"level", "Höhe"}, {in_context("a line", "level"), "waagrecht"}});
  EXPECT_STREQ(translated("level"), "Höhe");
  EXPECT_STREQ(translated_in("a line", "level"), "waagrecht");
  EXPECT_STREQ(translated_in("another", "level"), "Höhe");
  EXPECT_STREQ(translated_in("a line", "cover"), "cover") << "the context is never shown";
}

// Numbers and their units are the same in every language, so that a number on the sheet is that of the file.
TEST(Say, Quantities_KeepTheDecimalPoint) {
  const Speaks german({{"nothing", "nichts"}});
  EXPECT_EQ(format(1.375, Dimension::length, UnitSystem::metric), "1.38 m");
}

}  // namespace
}  // namespace burrow
