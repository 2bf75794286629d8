// The whole program in German: what a person sees on the pages, in the windows and on paper holds no English.

#include <gtest/gtest.h>

#include <QMenuBar>
#include <QTest>
#include <QTextBrowser>

#include "burrow/check/assess.h"
#include "burrow/crew/checklist.h"
#include "burrow/document/language.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/language/say.h"
#include "burrow/sheet/sheet.h"
#include "burrow/window/help_window.h"
#include "burrow/words/headline.h"
#include "support/menus_for_tests.h"
#include "support/no_english.h"
#include "support/sheet_for_tests.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

TEST(German, PagesAndMenus_HoldNoEnglish) {
  expect_pages_without_english({"house-service", "four-faults", "first-lesson"});
}

TEST(German, SettingsAndGuide_HoldNoEnglish) {
  expect_dialogs_without_english();
}

// Every finding that can be, in words, is asked of the samples by what they find; paper says the same and more.
TEST(German, Paper_HoldsNoEnglish) {
  for (const char* sample : {"house-service", "four-faults", "rail-siding", "car-park-duct", "first-lesson"}) {
    EnglishFound found(sample);
    const auto text = read_text_file(sample_path(sample).toStdString());
    ASSERT_TRUE(text);
    const auto crossing = read_crossing(*text, tables_for_tests());
    ASSERT_TRUE(crossing);
    const Assessment answer = assess(*crossing, tables_for_tests());
    found.look(QString::fromStdString(headline(answer, UnitSystem::metric)), QStringLiteral("headline"));
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
      const auto sheet = sheet_of(*crossing, answer, tables_for_tests(), units);
      ASSERT_TRUE(sheet);
      for (const SheetPart part : {SheetPart::sheet, SheetPart::card}) {
        const auto pages = sheet_pages(*sheet, part);
        ASSERT_TRUE(pages) << pages.error().english();
        for (const Page& page : *pages)
          found.look(words_of_page(page), QStringLiteral("%1 on paper").arg(QLatin1String(sample)));
      }
    }
  }
}

// German words are longer: still inside the frame, and none over another, on every paper of every sample.
TEST(German, Paper_HasRoomForItsWords) {
  for (const std::string& name : test::sample_names())
    for (const test::PaperKind& kind : test::paper_kinds) {
      const auto pages =
          sheet_pages(test::sheet_for(test::judged_sample(name), kind.units, kind.paper), SheetPart::all);
      ASSERT_TRUE(pages) << name << " " << kind.paper << ": " << pages.error().english();
      int number = 0;
      for (const Page& page : *pages) {
        const std::string where = name + ", " + kind.paper + ", page " + std::to_string(++number);
        test::expect_inside_the_frame(page, where);
        test::expect_texts_apart(page, where);
      }
    }
}

TEST(German, Menus_EveryLetterOnce) {
  TestWindow w("house-service");
  expect_letters_once(w.window);
}

TEST(German, Verdict_IsSaidInGerman) {
  EXPECT_EQ(verdict_title(Verdict::within_limits), "Innerhalb der Grenzen");
  EXPECT_EQ(verdict_title(Verdict::stop), "Stopp");
  EXPECT_EQ(dictionary().language, "de");
}

// The same crossing read in German gives the same numbers: a language is words.
TEST(German, Findings_AreThoseOfTheEnglishProgram) {
  const auto text = read_text_file(sample_path("four-faults").toStdString());
  ASSERT_TRUE(text);
  const auto crossing = read_crossing(*text, tables_for_tests());
  ASSERT_TRUE(crossing);
  const Assessment german = assess(*crossing, tables_for_tests());
  speak_language(QStringLiteral("en"));
  const Tables tables = load_tables(Date{2026, 3, 2});
  const Assessment in_english = assess(*read_crossing(*text, tables), tables);
  speak_language(QStringLiteral("de"));
  ASSERT_EQ(german.findings.size(), in_english.findings.size());
  for (std::size_t i = 0; i < german.findings.size(); ++i) {
    EXPECT_EQ(german.findings[i].code, in_english.findings[i].code);
    EXPECT_EQ(german.findings[i].measured, in_english.findings[i].measured);
    EXPECT_EQ(german.findings[i].limit, in_english.findings[i].limit);
    EXPECT_EQ(german.findings[i].severity, in_english.findings[i].severity);
  }
}

TEST(German, UnknownLanguages_AreEnglish) {
  EXPECT_EQ(resolve_language(QStringLiteral("xx")), QStringLiteral("en"));
  EXPECT_EQ(resolve_language(QString()), QStringLiteral("en"));
  EXPECT_EQ(resolve_language(QStringLiteral("de")), QStringLiteral("de"));
}

// Each term stands in the catalogue of every language: none is a dash, and each of the three columns is there.
TEST(German, Help_HasEveryTermInEveryLanguage) {
  const std::vector<HelpPage> pages = help_pages();
  const QString text = pages.back().text;
  ASSERT_TRUE(text.contains(QStringLiteral("| English | Deutsch | Español (traducido sin segunda lectura) |")))
      << text.left(600).toStdString();
  int terms = 0;
  for (const QString& row : text.split(QLatin1Char('\n'))) {
    if (!row.startsWith(QLatin1String("| ")) || row.startsWith(QLatin1String("| ---"))) continue;
    EXPECT_EQ(row.count(QLatin1Char('|')), 4) << row.toStdString();
    EXPECT_FALSE(row.contains(QStringLiteral("| – |"))) << row.toStdString();
    ++terms;
  }
  EXPECT_GT(terms, 80);
}

TEST(German, Help_IsGermanPageForPage) {
  const std::vector<HelpPage> german = help_pages();
  speak_language(QStringLiteral("en"));
  const std::vector<HelpPage> in_english = help_pages();
  speak_language(QStringLiteral("de"));
  ASSERT_EQ(german.size(), in_english.size());
  for (std::size_t i = 0; i < german.size(); ++i) {
    EXPECT_NE(german[i].title, in_english[i].title);
    // The same headings, tables and numbers of paragraphs, so that nothing was left out.
    const auto lines = [](const QString& text, const char* start) {
      const QStringList all = text.split(QLatin1Char('\n'));
      return std::count_if(all.begin(), all.end(),
                           [&](const QString& l) { return l.startsWith(QLatin1String(start)); });
    };
    for (const char* start : {"#", "|", "- ", "```"})
      EXPECT_EQ(lines(german[i].text, start), lines(in_english[i].text, start))
          << german[i].title.toStdString() << ": lines that begin with " << start;
    EXPECT_GT(german[i].text.size(), in_english[i].text.size() * 8 / 10) << german[i].title.toStdString();
  }
}

}  // namespace
}  // namespace burrow
