// The whole program in German: what a person sees on the pages, in the windows and on paper holds no English.

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QComboBox>
#include <QGroupBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTest>
#include <QTextBrowser>

#include "burrow/check/assess.h"
#include "burrow/crew/checklist.h"
#include "burrow/document/language.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/language/say.h"
#include "burrow/sheet/sheet.h"
#include "burrow/window/guided_crossing.h"
#include "burrow/window/help_window.h"
#include "burrow/window/settings_dialog.h"
#include "burrow/words/headline.h"
#include "support/menus_for_tests.h"
#include "support/sheet_for_tests.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

/// Words that hardly an English sentence is free of and no German one holds ("in", "an", "so", "was" are both).
const QRegularExpression& english() {
  static const QRegularExpression words(QStringLiteral(
      R"((?<![A-Za-zÄÖÜäöüß/.-])(the|and|of|with|from|which|where|not|are|is|has|by|to|for|at|above|below|none|this|that|its|it|wanted|entered|known|level|depth|left|right|side|floor|pit|launch|bore|wall|soil)(?![A-Za-zÄÖÜäöüß/]))"));
  return words;
}

/// Strings of the crossing file are what its author wrote; citations stay in the language of their source.
class Found {
 public:
  explicit Found(const char* sample) {
    const auto text = read_text_file(sample_path(sample).toStdString());
    EXPECT_TRUE(text);
    QRegularExpressionMatchIterator it = QRegularExpression(QStringLiteral(R"re("((?:[^"\\]|\\.){4,})"(?!\s*:))re"))
                                             .globalMatch(QString::fromStdString(*text));
    while (it.hasNext()) {
      const QString one = it.next().captured(1);
      if (one.contains(QLatin1Char(' ')) || one.contains(QLatin1Char('-'))) own_ << one;
      // A name broken at its comma may have another column between its halves.
      for (const QString& part : one.split(QStringLiteral(", ")))
        if (part.contains(QLatin1Char(' '))) own_ << part;
    }
    std::sort(own_.begin(), own_.end(), [](const QString& a, const QString& b) { return a.size() > b.size(); });
  }

  void look(QString text, const QString& where) {
    static const QRegularExpression tag(QStringLiteral("<[^>]*>")), cited(QStringLiteral(R"(\[[^\]]*\])"));
    text.remove(tag);
    for (const QString& own : own_) text.replace(own, QStringLiteral("…"));
    const QRegularExpressionMatch match = english().match(text);
    if (!match.hasMatch() || seen_.contains(text)) return;
    seen_ << text;
    ADD_FAILURE() << where.toStdString() << ": “" << match.captured(1).toStdString() << "” in: " << text.toStdString();
  }

 private:
  QStringList own_, seen_;
};

void look_at_model(const QAbstractItemModel& model, const QModelIndex& parent, Found& found, const QString& where) {
  for (int c = 0; c < model.columnCount(parent); ++c) {
    found.look(model.headerData(c, Qt::Horizontal).toString(), where + QStringLiteral(" heading"));
    for (int r = 0; r < model.rowCount(parent); ++r) {
      const QModelIndex index = model.index(r, c, parent);
      found.look(index.data(Qt::DisplayRole).toString(), where);
      found.look(index.data(Qt::ToolTipRole).toString(), where + QStringLiteral(" tip"));
      if (c == 0) look_at_model(model, index, found, where);
    }
  }
}

void look_at(const QWidget& root, Found& found, const QString& where) {
  QList<QWidget*> all = root.findChildren<QWidget*>();
  all << const_cast<QWidget*>(&root);
  for (const QWidget* w : all) {
    found.look(w->toolTip(), where + QStringLiteral(" tip"));
    found.look(w->accessibleName(), where + QStringLiteral(" spoken name"));
    found.look(w->accessibleDescription(), where + QStringLiteral(" description"));
    found.look(w->windowTitle(), where + QStringLiteral(" title"));
    if (const auto* label = qobject_cast<const QLabel*>(w)) found.look(label->text(), where);
    if (const auto* button = qobject_cast<const QAbstractButton*>(w)) found.look(button->text(), where);
    if (const auto* group = qobject_cast<const QGroupBox*>(w)) found.look(group->title(), where);
    if (const auto* entry = qobject_cast<const QLineEdit*>(w)) found.look(entry->placeholderText(), where);
    if (const auto* box = qobject_cast<const QComboBox*>(w))
      for (int i = 0; i < box->count(); ++i) found.look(box->itemText(i), where + QStringLiteral(" choice"));
    if (const auto* view = qobject_cast<const QAbstractItemView*>(w); view && view->model())
      look_at_model(*view->model(), {}, found, where);
    for (const QAction* action : w->actions()) found.look(action->text(), where + QStringLiteral(" action"));
  }
}

TEST(German, PagesAndMenus_HoldNoEnglish) {
  for (const char* sample : {"house-service", "four-faults", "first-lesson"}) {
    TestWindow w(sample);
    ASSERT_TRUE(w.opened);
    Found found(sample);
    for (int page = 0; page < w.window.side().count(); ++page) {
      w.window.side().show_page(static_cast<SideColumn::Page>(page));
      settle(w.window);
      look_at(w.window, found, QStringLiteral("%1, page %2").arg(QLatin1String(sample)).arg(page));
    }
    for (const QAction* action : w.window.findChildren<QAction*>()) {
      found.look(action->text(), QStringLiteral("menu"));
      found.look(action->toolTip(), QStringLiteral("menu tip"));
      found.look(action->statusTip(), QStringLiteral("menu tip"));
    }
  }
}

TEST(German, SettingsAndGuide_HoldNoEnglish) {
  TestWindow w("house-service");
  Found found("house-service");
  const QTemporaryDir folder;
  const CrewDefaults own(folder.path(), tables_for_tests());
  ASSERT_TRUE(own.keep(w.crossing()));
  SettingsDialog settings({}, own, w.crossing(), &w.window);
  look_at(settings, found, QStringLiteral("settings"));
  GuidedCrossing guide(tables_for_tests(), Theme::light(), UnitSystem::metric, std::nullopt, &w.window);
  for (int question = 0; question < 6; ++question) {
    guide.go_to(question);
    look_at(guide, found, QStringLiteral("question %1").arg(question + 1));
  }
}

// Every finding that can be, in words, is asked of the samples by what they find; paper says the same and more.
TEST(German, Paper_HoldsNoEnglish) {
  for (const char* sample : {"house-service", "four-faults", "rail-siding", "car-park-duct", "first-lesson"}) {
    Found found(sample);
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
        // A line that is broken into two is read as one.
        for (const Page& page : *pages) {
          QStringList words;
          for (const PageItem& item : page.items)
            if (item.kind == PageItemKind::text) words << item.text;
          found.look(words.join(QLatin1Char(' ')), QStringLiteral("%1 on paper").arg(QLatin1String(sample)));
        }
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
