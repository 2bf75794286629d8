// The third language: no code knows it, and the program holds no English when it is chosen.

#include <gtest/gtest.h>

#include "burrow/check/assess.h"
#include "burrow/document/language.h"
#include "burrow/file/crossing_file.h"
#include "burrow/language/say.h"
#include "burrow/window/help_window.h"
#include "burrow/words/headline.h"
#include "support/menus_for_tests.h"
#include "support/no_english.h"
#include "support/sheet_for_tests.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

TEST(Spanish, PagesAndMenus_HoldNoEnglish) {
  expect_pages_without_english({"house-service", "four-faults"});
}

TEST(Spanish, SettingsAndGuide_HoldNoEnglish) {
  expect_dialogs_without_english();
}

// Longer words than English: inside the frame, none over another, none English, on every paper of every sample.
TEST(Spanish, Paper_HoldsNoEnglishAndHasRoom) {
  for (const std::string& name : test::sample_names())
    for (const test::PaperKind& kind : test::paper_kinds) {
      EnglishFound found(name.c_str());
      const auto pages =
          sheet_pages(test::sheet_for(test::judged_sample(name), kind.units, kind.paper), SheetPart::all);
      ASSERT_TRUE(pages) << name << " " << kind.paper << ": " << pages.error().english();
      int number = 0;
      for (const Page& page : *pages) {
        const std::string where = name + ", " + kind.paper + ", page " + std::to_string(++number);
        test::expect_inside_the_frame(page, where);
        test::expect_texts_apart(page, where);
      }
      // The calculation names its checks by their codes; long names that somebody typed are broken into columns.
      if (name == "sixty-utilities" || name == "car-park-duct") continue;
      for (const SheetPart part : {SheetPart::sheet, SheetPart::card}) {
        const auto some = sheet_pages(test::sheet_for(test::judged_sample(name), kind.units, kind.paper), part);
        ASSERT_TRUE(some) << some.error().english();
        for (const Page& page : *some)
          found.look(words_of_page(page), QString::fromStdString(name + ", " + kind.paper));
      }
    }
}

TEST(Spanish, Menus_EveryLetterOnce) {
  TestWindow w("house-service");
  expect_letters_once(w.window);
}

TEST(Spanish, VerdictAndNumbers_AreAsSpanishHasThem) {
  EXPECT_EQ(dictionary().language, "es");
  EXPECT_EQ(verdict_title(Verdict::within_limits), "Dentro de los límites");
  EXPECT_EQ(format(1.25, Dimension::length, UnitSystem::metric), "1,25 m");
  EXPECT_FALSE(dictionary().read_twice) << "nobody has read it a second time: the choice says so";
  EXPECT_TRUE(language_name(QStringLiteral("es")).contains(QStringLiteral("sin segunda lectura")));
}

// The first page of the help is translated; the others say that they are not.
TEST(Spanish, Help_SaysWhatIsNotTranslated) {
  const std::vector<HelpPage> pages = help_pages();
  ASSERT_GE(pages.size(), 10u);
  const QString untranslated = QObject::tr("This page has no translation yet: it is in English.");
  EXPECT_FALSE(pages.front().text.contains(untranslated));
  for (std::size_t i = 1; i < pages.size(); ++i)
    EXPECT_TRUE(pages[i].text.contains(untranslated)) << pages[i].title.toStdString();
}

}  // namespace
}  // namespace burrow
