// The setup card, one sheet with two sides for a usual bore, and the permit to bore.

#include <algorithm>
#include <cmath>

#include "burrow/day/permit_lines.h"
#include "burrow/document/language.h"
#include "burrow/sheet/page.h"
#include "support/sheet_for_tests.h"

namespace burrow::test {
namespace {

TEST(Card, BestVerdict_IsNoPermitToBore) {
  Judged j = judged_sample("house-service");
  j.answer.verdict = Verdict::within_limits;
  for (const PaperKind& kind : paper_kinds) {
    const auto pages = *sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::card);
    EXPECT_TRUE(words_of({pages.front()}).contains(QStringLiteral("Layout within limits: not a permit to bore.")));
  }
}

// The card is read in the rain: 11 pt at least, what has to be set in 20 pt.
TEST(Card, Type_IsLargeEnough) {
  constexpr double pt = 25.4 / 72;
  for (const std::string& name : sample_names())
    for (const PaperKind& kind : paper_kinds) {
      const auto pages = *sheet_pages(sheet_for(judged_sample(name), kind.units, kind.paper), SheetPart::card);
      int large = 0;
      for (const Page& page : pages) {
        const bool us = kind.units == UnitSystem::us;
        EXPECT_EQ(page.size_mm, us ? QSizeF(139.7, 215.9) : QSizeF(148, 210));
        for (const PageItem& item : page.items) {
          if (item.kind != PageItemKind::text) continue;
          EXPECT_GE(item.style.size_mm, 11 * pt - 1e-9) << item.text.toStdString();
          if (item.style.size_mm >= 20 * pt - 1e-9) ++large;
        }
      }
      EXPECT_EQ(large, 6) << name << " " << kind.paper;
    }
}

// The front: what is set, length, tool, pressure, and the marks, each there or counted. The back: the other marks, when
// to shut the air, what to do when gas or power is struck, numbers, ticket, signatures.
TEST(Card, FrontAndBack_SayWhatTheCrewNeeds) {
  for (const std::string& name : sample_names())
    for (const PaperKind& kind : paper_kinds) {
      const Judged& j = judged_sample(name);
      const auto sides = *sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::card);
      ASSERT_GE(sides.size(), 2u);
      const QString front = words_of({sides[0]}), back = words_of({sides[1]});
      for (const char* what : {"Depth to axis", "Grade", "Depth of floor", "Packing", "Bore", "tool", "at the tool",
                               "predicted", "hose at"})
        EXPECT_TRUE(front.contains(QLatin1String(what))) << name << " " << kind.paper << ": " << what;
      for (const char* what :
           {"Air off at once", "Struck: Gas", "Struck: Power", "Anything else", "Emergency", "Locating service",
            "Competent person", "Ticket:", "Go: supervisor", "Go: crew", "At the air valve", "Watcher at the exit"})
        EXPECT_TRUE(back.contains(QLatin1String(what))) << name << " " << kind.paper << ": " << what;
      EXPECT_EQ(front.contains(QStringLiteral("do not bore")),
                j.answer.verdict == Verdict::stop || j.answer.verdict == Verdict::incomplete);
      // Each mark stands once on all the sides, by its depth.
      std::map<QString, int> wanted, found;
      for (const Mark& mark : j.answer.marks)
        ++wanted[QString::fromStdString(format(mark.depth_m.value_or(0), Dimension::length, kind.units))];
      for (const Page& side : sides)
        for (const PageItem& item : side.items)
          if (item.kind == PageItemKind::text && wanted.contains(item.text)) ++found[item.text];
      for (const auto& [depth, times] : wanted) EXPECT_GE(found[depth], times) << name << " " << depth.toStdString();
    }
}

// Bores to 20 m with marks of 1.5 m, or 5 ft, go on one sheet: both sides and no more.
TEST(Card, Twenty_OneSheetBothSides) {
  for (const char* name : {"house-service", "day-finished", "first-lesson", "four-faults"})
    for (const PaperKind& kind : paper_kinds) {
      Judged j = judged_sample(name);
      j.crossing.sheet.units = kind.units;
      j.answer = assess(j.crossing, tables());
      EXPECT_EQ(sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::card)->size(), 2u) << name << kind.paper;
    }
  Judged longest = judged_sample("day-finished");
  longest.crossing.bore.exit.station = Length{20};
  longest.answer = assess(longest.crossing, tables());
  ASSERT_GE(longest.answer.marks.size(), 13u);
  for (const PaperKind& kind : paper_kinds)
    EXPECT_EQ(sheet_pages(sheet_for(longest, kind.units, kind.paper), SheetPart::card)->size(), 2u) << kind.paper;
}

// Where the tool has to stop until something is exposed stands on the front, whatever finds no room: as a row, or named
// by its hose in large type.
TEST(Card, Front_NamesEveryStop) {
  int met = 0;
  for (const std::string& name : sample_names())
    for (const PaperKind& kind : paper_kinds) {
      const Judged& j = judged_sample(name);
      const Page front = sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::card)->front();
      const QString words = words_of({front});
      for (const Mark& mark : j.answer.marks) {
        const bool stops =
            std::find(mark.tasks.begin(), mark.tasks.end(), MarkTask::stop_until_exposed) != mark.tasks.end();
        if (!stops || !mark.hose_m) continue;
        ++met;
        const std::string hose = format(*mark.hose_m, Dimension::length, kind.units);
        EXPECT_TRUE(words.contains(QString::fromStdString(hose))) << name << " " << kind.paper << ": " << hose;
      }
      for (const PageItem& item : front.items)
        if (item.kind == PageItemKind::text && item.text.startsWith(QStringLiteral("STOP also"))) {
          EXPECT_GE(item.style.size_mm, 14 * 25.4 / 72 - 1e-9) << name;
        }
    }
  EXPECT_GT(met, 0);
}

// What was entered stands there; what was not has a line to write on, and nothing is made up.
// In German and Spanish too: one sheet, nothing beyond its frame or over another text, every STOP on the front.
TEST(Card, OtherLanguages_OneSheetAndEveryStop) {
  for (const char* language : {"de", "es"}) {
    speak_language(QString::fromLatin1(language));
    for (const char* name : {"house-service", "day-finished", "first-lesson", "four-faults", "sixty-utilities"})
      for (const PaperKind& kind : paper_kinds) {
        const std::string where = std::string(language) + " " + name + " " + kind.paper;
        Judged j = judged_sample(name);
        j.crossing.sheet.units = kind.units;
        j.answer = assess(j.crossing, tables());
        const auto sides = *sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::card);
        if (std::string_view(name) != "sixty-utilities") {
          EXPECT_EQ(sides.size(), 2u) << where;
        }
        for (const Page& side : sides) {
          expect_inside_the_frame(side, where);
          expect_texts_apart(side, where);
        }
        const QString front = words_of({sides.front()});
        for (const Mark& mark : j.answer.marks) {
          if (!mark.hose_m ||
              std::find(mark.tasks.begin(), mark.tasks.end(), MarkTask::stop_until_exposed) == mark.tasks.end())
            continue;
          const std::string hose = format(*mark.hose_m, Dimension::length, kind.units);
          EXPECT_TRUE(front.contains(QString::fromStdString(hose))) << where << ": " << hose;
        }
      }
  }
  speak_language(QStringLiteral("en"));
}

TEST(Card, Numbers_AsEnteredElseALine) {
  const QString done =
      words_of({(*sheet_pages(sheet_for(judged_sample("day-finished"), UnitSystem::metric), SheetPart::card))[1]});
  for (const char* number : {"0100 000 112", "0100 200 300", "0100 200 311", "request 31077", "D. Instance"})
    EXPECT_TRUE(done.contains(QLatin1String(number))) << number << done.toStdString();
  Judged none = judged_sample("day-finished");
  none.crossing.permit = {};
  none.crossing.site.utility_search.valid_to.reset();
  const QString empty = words_of({(*sheet_pages(sheet_for(none, UnitSystem::metric), SheetPart::card))[1]});
  EXPECT_FALSE(empty.contains(QStringLiteral("0100")));
  EXPECT_TRUE(empty.contains(QStringLiteral("record only, no advice")));
  // Signed on another day it is not signed.
  Judged old = judged_sample("day-finished");
  old.crossing.permit.supervisor.date = "2026-03-01";
  const auto count = [](const Judged& j) {
    return words_of({(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::card))[1]})
        .count(QStringLiteral("B. Example"));
  };
  EXPECT_LT(count(old), count(judged_sample("day-finished")));
}

// Every line of the permit stands on paper, what is open as OPEN, what nobody can take on as STOP.
TEST(PermitPaper, EveryLine_WithItsState) {
  for (const std::string& name : sample_names())
    for (const PaperKind& kind : paper_kinds) {
      const Judged& j = judged_sample(name);
      const auto pages = *sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::permit);
      int holds = 0, open = 0, stop = 0;
      for (const Page& page : pages) {
        const std::string where = name + ", " + kind.paper;
        expect_inside_the_frame(page, where);
        expect_texts_apart(page, where);
        for (const PageItem& item : page.items) {
          holds += item.text == QStringLiteral("holds");
          open += item.text == QStringLiteral("OPEN");
          stop += item.text == QStringLiteral("STOP");
        }
      }
      int wanted[3] = {};
      for (const PermitLine& line : permit_lines(j.crossing, j.answer, tables().judged_on))
        ++wanted[static_cast<int>(line.state)];
      EXPECT_EQ(holds, wanted[0]) << name;
      EXPECT_EQ(open, wanted[1]) << name;
      EXPECT_EQ(stop, wanted[2]) << name;
      EXPECT_TRUE(words_of(pages).contains(QStringLiteral("Supervisor: go / no-go")));
    }
}

}  // namespace
}  // namespace burrow::test
