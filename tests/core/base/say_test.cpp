// Texts in another language: what is known is turned, the rest stays, values stand where the translation puts them.

#include "burrow/base/say.h"

#include <gtest/gtest.h>

#include <initializer_list>
#include <utility>

#include "burrow/base/quantity_text.h"

namespace burrow {
namespace {

/// English again when a test ends.
struct Speaks {
  explicit Speaks(std::initializer_list<std::pair<const std::string, std::string>> texts) { speak({"de", texts}); }
  ~Speaks() { speak({}); }
};

TEST(Say, WithoutADictionary_EverythingIsEnglish) {
  EXPECT_EQ(spoken().language, "en");
  EXPECT_STREQ(said("cover"), "cover");
  EXPECT_EQ(say("cover {}, {:.1f} wanted", "1.2 m", 1.25), "cover 1.2 m, 1.2 wanted");
}

TEST(Say, KnownTexts_AreTurned_OthersStay) {
  const Speaks german({{"cover", "Überdeckung"}});
  EXPECT_STREQ(said("cover"), "Überdeckung");
  EXPECT_EQ(said(std::string_view("cover")), "Überdeckung");
  EXPECT_STREQ(said("a text that nobody turned"), "a text that nobody turned");
}

TEST(Say, Patterns_MayPutTheirValuesInAnotherOrder) {
  const Speaks german({{"{} side of {}", "{1}, Seite {0}"}, {"{:.2f} of {:.0f}", "von {1:.0f}: {0:.2f}"}});
  EXPECT_EQ(say("{} side of {}", "left", "exit pit"), "exit pit, Seite left");
  EXPECT_EQ(say("{:.2f} of {:.0f}", 0.5, 12.0), "von 12: 0.50");
}

TEST(Say, LabelsOfParts_AreTurnedPartByPart) {
  const Speaks german({{"bore side", "Bohrseite"}, {", high", ", Höhe"}, {"floor, across", "Sohle, quer"}});
  EXPECT_EQ(said_label("bore side, high"), "Bohrseite, Höhe");
  EXPECT_EQ(said_label("floor, across"), "Sohle, quer") << "the whole goes before its parts";
  EXPECT_EQ(said_label("bore side, unheard of"), "Bohrseite, unheard of");
  EXPECT_EQ(said_label(""), "");
}

TEST(Say, PointersHandedOut_OutliveTheirDictionary) {
  const char* kept = nullptr;
  {
    const Speaks german({{"cover", "Überdeckung"}});
    kept = said("cover");
  }
  EXPECT_STREQ(kept, "Überdeckung");
  EXPECT_STREQ(said("cover"), "cover");
}

// Numbers and their units are the same in every language, so that a number on the sheet is that of the file.
TEST(Say, Quantities_KeepTheDecimalPoint) {
  const Speaks german({{"nothing", "nichts"}});
  EXPECT_EQ(format(1.375, Dimension::length, UnitSystem::metric), "1.38 m");
}

}  // namespace
}  // namespace burrow
