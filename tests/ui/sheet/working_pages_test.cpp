// The calculation on paper: all of it, each thing once, in few pages.

#include <QRegularExpression>
#include <QSet>

#include "burrow/words/working_names.h"
#include "support/sheet_for_tests.h"

namespace burrow::test {
namespace {

std::vector<Page> working_of_sample(const char* name, const char* paper, UnitSystem units = UnitSystem::metric) {
  return *sheet_pages(sheet_for(judged_sample(name), units, paper), SheetPart::working);
}

QString in_a_row(const std::vector<Page>& pages) {
  return words_of(pages).replace(QLatin1Char('\n'), QLatin1Char(' ')).simplified();
}

// So many pages somebody checks; before, 14 and 69.
TEST(Working, Pages_FewEnoughToRead) {
  EXPECT_LE(working_of_sample("house-service", "a3").size(), 5u);
  EXPECT_LE(working_of_sample("sixty-utilities", "a3").size(), 20u);
  EXPECT_LE(working_of_sample("house-service", "tabloid", UnitSystem::us).size(), 6u);
}

TEST(Working, EachStep_UnderAPlainHeading) {
  for (const std::string& name : sample_names()) {
    const Judged& j = judged_sample(name);
    const QString words = in_a_row(working_of_sample(name.c_str(), "a3"));
    for (const Working& w : j.answer.working) {
      const QString title = QString::fromStdString(working_title(w.code));
      EXPECT_TRUE(words.contains(title.left(24))) << title.toStdString();
    }
    // No codes, no ids of the file.
    EXPECT_FALSE(words.contains(QRegularExpression(QStringLiteral("\\b(utility|surface|pit|bore|pipe|air)\\.[a-z]"))))
        << name;
  }
}

// A heading is printed once, and stands in the table of contents with the page on which it is found.
TEST(Working, Contents_NameTheRightPage) {
  for (const char* name : {"house-service", "sixty-utilities"}) {
    const auto pages = working_of_sample(name, "a4");
    int found = 0;
    for (std::size_t i = 0; i < pages.size(); ++i)
      for (const PageMark& mark : pages[i].marks) {
        int on_page = 0;
        for (const PageItem& item : pages[i].items)
          on_page += item.kind == PageItemKind::text && item.style.weight == QFont::Bold &&
                     item.text.contains(mark.words.left(12));
        EXPECT_GE(on_page, 1) << mark.words.toStdString() << " on page " << i + 1;
        ++found;
      }
    EXPECT_GT(found, 30) << name;
    QSet<QString> numbers;
    for (const PageItem& item : pages.front().items)
      if (item.kind == PageItemKind::text) numbers << item.text;
    EXPECT_TRUE(numbers.contains(QString::number(pages.size()))) << "the last page is named on the first";
  }
}

TEST(Working, Formula_PrintedOnceForAllCases) {
  const QString words = in_a_row(working_of_sample("sixty-utilities", "a3"));
  EXPECT_EQ(words.count(QStringLiteral("g = δ − R ")), 1);
  EXPECT_LE(words.count(QStringLiteral("R: radii of tool and utility together")), 6) << "once a section";
}

TEST(SheetLimits, EachInForce_WithItsDocument) {
  for (const std::string& name : sample_names()) {
    const Judged& j = judged_sample(name);
    const QString words = in_a_row(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::sheet));
    for (const LimitRow& row : tables().limits)
      EXPECT_TRUE(words.contains(QString::fromStdString(row.name.english()).section(QLatin1Char(' '), 0, 2)))
          << row.id << " in " << name;
    EXPECT_TRUE(words.contains(QStringLiteral("unverified: confirm with the owner"))) << name;
  }
}

// Counted by hand from limits.json: ten rows from memory.
TEST(SheetLimits, Unverified_CountedAtTheFootOfEachPage) {
  const Judged& j = judged_sample("first-lesson");
  std::size_t of_table = 0;
  for (const LimitRow& row : tables().limits) of_table += row.source.label == SourceLabel::from_memory;
  const auto pages = *sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::sheet);
  for (const Page& page : pages) {
    const QString words = words_of({page});
    const auto said =
        QRegularExpression(QStringLiteral("(\\d+) limits unverified: confirm with the owner")).match(words);
    ASSERT_TRUE(said.hasMatch());
    EXPECT_GE(said.captured(1).toUInt(), of_table);
  }
}

}  // namespace
}  // namespace burrow::test
