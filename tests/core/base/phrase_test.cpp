// Words without a language: what the program says is translated where it is shown, what somebody entered never is.
#include "burrow/base/phrase.h"

#include <gtest/gtest.h>

#include "burrow/language/say.h"

namespace burrow {
namespace {

struct Speaks {
  Speaks() {
    use_dictionary({"de",
                    {{"cover of {}", "Überdeckung von {}"},
                     {"{} side of {}", "{1}, Seite {0}"},
                     {"left", "links"},
                     {"gas main", "Gasleitung"}}});
  }
  ~Speaks() { use_dictionary({}); }
};

TEST(Phrase, OursIsTranslated_EnteredStays) {
  const Speaks german;
  EXPECT_EQ(translated_phrase(Phrase("gas main")), "Gasleitung");
  EXPECT_EQ(translated_phrase(Phrase(std::string("gas main"))), "gas main") << "somebody called it that";
  EXPECT_EQ(translated_phrase(Phrase::of_table("gas main")), "Gasleitung");
  EXPECT_EQ(Phrase("gas main").english(), "gas main") << "whatever is spoken";
  EXPECT_NE(Phrase("gas main"), Phrase(std::string("gas main")));
}

TEST(Phrase, PartsAreTranslatedByThemselves_InTheOrderOfTheLanguage) {
  const Speaks german;
  const Phrase side = phrase("{} side of {}", "left", std::string("pit {1} of the gas main"));
  EXPECT_EQ(translated_phrase(side), "pit {1} of the gas main, Seite links")
      << "braces that somebody typed are no places";
  EXPECT_EQ(translated_phrase(phrase("cover of {}", side)), "Überdeckung von pit {1} of the gas main, Seite links");
  EXPECT_EQ(side.english(), "left side of pit {1} of the gas main");
  EXPECT_TRUE(phrase("{} side of {}", "left", std::string("pit {1} of the gas main")) == side);
}

TEST(Phrase, Empty_SaysNothing) {
  EXPECT_TRUE(Phrase().empty());
  EXPECT_EQ(translated_phrase(Phrase()), "");
}

}  // namespace
}  // namespace burrow
