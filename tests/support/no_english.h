#pragma once
/// Looks for English on what a person sees, where another language is spoken.

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAction>
#include <QComboBox>
#include <QGroupBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <algorithm>
#include <initializer_list>

#include "burrow/file/disk.h"
#include "burrow/sheet/sheet.h"
#include "burrow/window/guided_crossing.h"
#include "burrow/window/settings_dialog.h"
#include "support/window_for_tests.h"

namespace burrow {

/// Words that hardly an English sentence is free of and no German or Spanish one holds ("in", "an", "so", "was" are
/// both).
inline const QRegularExpression& english() {
  static const QRegularExpression words(QStringLiteral(
      R"((?<![A-Za-zÄÖÜäöüß/.-])(the|and|of|with|from|which|where|not|are|is|has|by|to|for|at|above|below|none|this|that|its|it|wanted|entered|known|level|depth|left|right|side|floor|pit|launch|bore|wall|soil)(?![A-Za-zÄÖÜäöüß/]))"));
  return words;
}

/// Strings of the crossing file are what its author wrote; citations stay in the language of their source.
class EnglishFound {
 public:
  explicit EnglishFound(const char* sample) {
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
    text.replace(QChar(QChar::Nbsp), QLatin1Char(' '));
    for (const QString& own : own_) text.replace(own, QStringLiteral("…"));
    const QRegularExpressionMatch match = english().match(text);
    if (!match.hasMatch() || seen_.contains(text)) return;
    seen_ << text;
    ADD_FAILURE() << where.toStdString() << ": “" << match.captured(1).toStdString() << "” in: " << text.toStdString();
  }

 private:
  QStringList own_, seen_;
};

inline void look_at_model(const QAbstractItemModel& model, const QModelIndex& parent, EnglishFound& found,
                          const QString& where) {
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

inline void look_at(const QWidget& root, EnglishFound& found, const QString& where) {
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

/// The words of a page of paper; a line that is broken into two is read as one.
inline QString words_of_page(const Page& page) {
  QStringList words;
  for (const PageItem& item : page.items)
    if (item.kind == PageItemKind::text) words << item.text;
  return words.join(QLatin1Char(' '));
}

/// Every page, menu and tip of the window on each of the samples.
inline void expect_pages_without_english(std::initializer_list<const char*> samples) {
  for (const char* sample : samples) {
    TestWindow w(sample);
    ASSERT_TRUE(w.opened);
    EnglishFound found(sample);
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

/// The settings, and each question of the guided crossing.
inline void expect_dialogs_without_english() {
  TestWindow w("house-service");
  EnglishFound found("house-service");
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

}  // namespace burrow
