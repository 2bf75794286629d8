// What stands on the pages: inside the frame, nothing over anything else, every letter in the typeface.

#include <QMap>
#include <QRawFont>
#include <QRegularExpression>
#include <QSet>
#include <algorithm>
#include <cmath>

#include "burrow/base/display_precision.h"
#include "burrow/drawing/theme.h"
#include "burrow/sheet/page.h"
#include "support/sheet_for_tests.h"

namespace burrow::test {
namespace {

/// Calls with every page of every sample, paper and unit system.
template <class Look>
void each_page(Look look) {
  for (const std::string& name : sample_names())
    for (const PaperKind& kind : paper_kinds) {
      const auto pages = sheet_pages(sheet_for(judged_sample(name), kind.units, kind.paper), SheetPart::all);
      ASSERT_TRUE(pages) << name << " " << kind.paper << ": " << pages.error().english();
      int number = 0;
      for (const Page& page : *pages) look(page, name + ", " + kind.paper + ", page " + std::to_string(++number));
    }
}

TEST(SheetPages, Texts_StandInsideTheFrame) {
  each_page([](const Page& page, const std::string& where) { expect_inside_the_frame(page, where); });
}

TEST(SheetPages, Texts_DoNotOverlap) {
  each_page([](const Page& page, const std::string& where) { expect_texts_apart(page, where); });
}

// One digit more wherever a size stands.
TEST(SheetPages, FineNumbers_HaveRoom) {
  set_display_precision(DisplayPrecision::fine);
  each_page([](const Page& page, const std::string& where) {
    expect_inside_the_frame(page, where);
    expect_texts_apart(page, where);
  });
  set_display_precision(DisplayPrecision::usual);
}

// A letter that the bundled typeface lacks would be taken from another one, which need not be there.
TEST(SheetPages, Letters_AllInTheTypeface) {
  QMap<int, QRawFont> fonts;
  for (const QFont::Weight weight : {QFont::Normal, QFont::DemiBold, QFont::Bold})
    fonts[weight] = QRawFont::fromFont(paper_font(weight));
  QSet<QString> missing;
  each_page([&](const Page& page, const std::string&) {
    for (const PageItem& item : page.items) {
      if (item.kind != PageItemKind::text) continue;
      for (const uint c : item.text.toUcs4())
        if (!fonts[item.style.weight].supportsCharacter(c))
          missing << QString::fromUcs4(reinterpret_cast<const char32_t*>(&c), 1);
    }
  });
  EXPECT_TRUE(missing.isEmpty()) << QStringList(missing.values()).join(QLatin1Char(' ')).toStdString();
}

TEST(SheetPages, Everything_IsSaid) {
  for (const std::string& name : sample_names()) {
    const Judged& j = judged_sample(name);
    const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::sheet));
    const QString flat = QString(words).replace(QLatin1Char('\n'), QLatin1Char(' '));
    EXPECT_TRUE(flat.contains(QString::fromStdString(j.crossing.name))) << name;
    for (const char* heading :
         {"Findings, worst first", "Utilities", "Pits", "Pipe", "Air", "Cautions", "100 mm when printed at actual size",
          "scale", "checked", "Limits in force", "tool", "permit", "height system", "description", "Lines and signs"})
      EXPECT_TRUE(flat.contains(QLatin1String(heading))) << name << ": " << heading;
    // Long names break over lines, so their first words are looked for.
    for (const Utility& u : j.crossing.site.utilities)
      EXPECT_TRUE(words.contains(QString::fromStdString(u.name).section(QLatin1Char(' '), 0, 0))) << u.name;
    for (const Finding& f : j.answer.findings)
      EXPECT_TRUE(words.contains(QString::fromStdString(finding_text(f, UnitSystem::metric)).left(12)))
          << finding_text(f, UnitSystem::metric);
  }
}

// Sixty utilities over forty metres: each number stands in the side elevation and in the table.
TEST(SheetPages, SixtyUtilities_EachHasItsNumberOnTheDrawing) {
  const auto pages = *sheet_pages(sheet_for(judged_sample("sixty-utilities"), UnitSystem::metric), SheetPart::sheet);
  QMap<QString, int> seen;
  for (const PageItem& item : pages.front().items)
    if (item.kind == PageItemKind::text && item.style.weight == QFont::DemiBold) ++seen[item.text];
  for (int number = 1; number <= 60; ++number)
    EXPECT_GE(seen.value(QString::number(number)), 2) << number << " in elevation and plan";
}

TEST(SheetPages, MutedFinding_StandsWithItsReason) {
  Judged j = judged_sample("four-faults");
  ASSERT_FALSE(j.answer.findings.empty());
  j.answer.findings.back().muted = Muted{"cut and capped in spring", "A. Miller", "2025-05-02"};
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::sheet));
  EXPECT_TRUE(words.contains(QStringLiteral("Accepted findings")));
  EXPECT_TRUE(words.contains(QStringLiteral("cut and capped")));
}

TEST(SheetPages, MutedAndLoosened_StandOnSheetAndCard) {
  Judged j = judged_sample("house-service");
  j.answer.verdict = Verdict::caution;
  Finding gas;
  gas.code = "utility.expose";
  gas.severity = Severity::caution;
  gas.subject = "u1";
  gas.name = "gas main";
  gas.muted = Muted{"seen open", "A. Miller", "2026-02-14"};
  j.answer.findings.insert(j.answer.findings.begin(), gas);
  j.answer.loosened = {{"cover_diameters", "", "cover in tool diameters", 8, 10, "", "permit 12, line 4"}};
  for (const PaperKind& kind : paper_kinds) {
    const auto sheet = *sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::sheet);
    const QString on_sheet = words_of(sheet);
    EXPECT_TRUE(on_sheet.contains(QStringLiteral("Loosened limits"))) << kind.paper;
    EXPECT_TRUE(on_sheet.contains(QStringLiteral("permit 12, line 4"))) << kind.paper;
    const auto card = *sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::card);
    const QString front = words_of({card.front()});
    EXPECT_TRUE(front.contains(QStringLiteral("1 accepted, may hurt people: gas main"))) << front.toStdString();
    EXPECT_TRUE(front.contains(QStringLiteral("loosened"))) << front.toStdString();
    const QString back = words_of({card.begin() + 1, card.end()});
    EXPECT_TRUE(back.contains(QStringLiteral("permit 12, line 4"))) << kind.paper;
    EXPECT_TRUE(back.contains(QStringLiteral("seen open"))) << kind.paper;
  }
}

TEST(SheetPages, NorthArrow_OnlyWhereNorthIsKnown) {
  Judged j = judged_sample("house-service");
  const auto has = [&](const char* word) {
    const auto pages = sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::sheet);
    for (const PageItem& item : pages->front().items)
      if (item.kind == PageItemKind::text && item.text == QLatin1String(word)) return true;
    return false;
  };
  EXPECT_TRUE(has("bore"));
  EXPECT_FALSE(has("north"));
  Georeference geo;
  geo.crs = "EPSG:25832";
  geo.azimuth.set(Angle{0.7});
  j.crossing.site.georeference = geo;
  EXPECT_TRUE(has("north"));
}

TEST(SheetScale, TooLarge_NamesTheLargestThatFits) {
  Sheet sheet = sheet_for(judged_sample("house-service"), UnitSystem::metric, "a4");
  sheet.scale = 10;
  const auto pages = sheet_pages(sheet, SheetPart::sheet);
  ASSERT_FALSE(pages);
  EXPECT_NE(pages.error().expected.english().find("1:75"), std::string::npos) << pages.error().english();
}

// Against the table of the typeface's own widths: the letters of "Bore" one by one, no kerning between them.
TEST(Paper, TextWidth_IsTheSumOfItsLetters) {
  const QRawFont raw = QRawFont::fromFont(paper_font(QFont::Normal));
  double sum = 0;
  for (const QPointF& p : raw.advancesForGlyphIndexes(raw.glyphIndexesForString(QStringLiteral("mill")))) sum += p.x();
  EXPECT_NEAR(text_width_mm(QStringLiteral("mill"), {2.5}), sum * 2.5 / raw.pixelSize(), 0.01);
}

TEST(Paper, Wrapped_KeepsTheWordsAndTheWidth) {
  const TextStyle style{2.5};
  const QString words = QStringLiteral("expose it before the tool passes, then ring the owner of the main");
  for (const double width : {12.0, 25.0, 60.0, 500.0}) {
    const QStringList lines = wrapped(words, style, width);
    EXPECT_EQ(lines.join(QLatin1Char(' ')), words);
    for (const QString& line : lines) EXPECT_LE(text_width_mm(line, style), width);
  }
  const QStringList broken = wrapped(QString(200, QLatin1Char('m')), style, 20);
  EXPECT_EQ(broken.join(QString()).size(), 200);
  for (const QString& line : broken) EXPECT_LE(text_width_mm(line, style), 20);
}

}  // namespace
}  // namespace burrow::test
