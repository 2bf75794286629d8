#pragma once
/// A panel with its document, and a person's hands at its entries and choices.

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLineEdit>
#include <QScrollArea>
#include <algorithm>

#include "burrow/file/crossing_file.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/form_panel.h"
#include "burrow/panels/text_form.h"
#include "support/window_for_tests.h"

namespace burrow {

/// A document with one panel beside it, shown.
template <class Panel>
struct PanelBeside {
  explicit PanelBeside(const char* sample, UnitSystem units = UnitSystem::metric)
      : document(tables_for_tests()), opened(document.open(sample_path(sample)).has_value()), panel(document) {
    panel.set_units(units);
    panel.set_theme(Theme::light());
    panel.resize(300, 800);
    panel.show();
  }
  const Crossing& crossing() { return document.crossing(); }
  int steps() { return document.undo_stack().index(); }
  bool finds(const char* code, const std::string& subject) {
    const auto& all = document.assessment().findings;
    return std::any_of(all.begin(), all.end(),
                       [&](const Finding& f) { return f.code == code && f.subject == subject; });
  }
  QComboBox* choice(const char* name) {
    for (QComboBox* combo : panel.template findChildren<QComboBox*>())
      if (combo->accessibleName() == QString::fromUtf8(name)) return combo;
    return nullptr;
  }
  void choose(const char* name, const char* word) {
    QComboBox* combo = choice(name);
    ASSERT_TRUE(combo) << name;
    const int exactly = combo->findText(QString::fromUtf8(word), Qt::MatchExactly);
    const int row = exactly >= 0 ? exactly : combo->findText(QString::fromUtf8(word), Qt::MatchStartsWith);
    ASSERT_GE(row, 0) << word;
    combo->setCurrentIndex(row);
    Q_EMIT combo->activated(row);
    panel.refresh_now();
  }
  void type_into(QLineEdit* entry, const char* text) {
    ASSERT_TRUE(entry);
    entry->setFocus();
    entry->selectAll();
    QTest::keyClick(entry, Qt::Key_Delete);
    QTest::keyClicks(entry, QString::fromUtf8(text));
    QTest::keyClick(entry, Qt::Key_Return);
    panel.refresh_now();
  }
  void type(EntryForm* form, const char* label, const char* text) {
    const int row = form->find(QString::fromUtf8(label));
    ASSERT_GE(row, 0) << label;
    type_into(form->entry(row), text);
  }
  void type(TextForm* form, const char* label, const char* text) {
    type_into(form->entry(QString::fromUtf8(label)), text);
  }
  /// Whether what stands could be written and read again.
  void expect_opens_again() {
    const Result<Crossing> again = read_crossing(write_crossing(document.crossing()), tables_for_tests());
    ASSERT_TRUE(again) << again.error().english();
    EXPECT_EQ(*again, document.crossing());
  }
  /// Nothing stands beyond the edge of the column, and no entry or short choice hides its words.
  void expect_inside(int width) {
    panel.resize(width, 700);
    QCoreApplication::processEvents();
    const auto* scroll = panel.template findChild<QScrollArea*>();
    EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width()) << width;
    for (const QLineEdit* entry : panel.template findChildren<QLineEdit*>()) {
      if (!entry->isVisibleTo(&panel) || qobject_cast<TextForm*>(entry->parentWidget())) continue;
      const QString text = entry->text().isEmpty() ? entry->placeholderText() : entry->text();
      EXPECT_LE(entry->fontMetrics().horizontalAdvance(text) + 8, entry->width())
          << width << " " << entry->accessibleName().toStdString() << ": " << text.toStdString();
      EXPECT_FALSE(entry->accessibleName().isEmpty());
    }
    for (const QComboBox* combo : panel.template findChildren<QComboBox*>()) {
      EXPECT_FALSE(combo->accessibleName().isEmpty());
      if (combo->minimumContentsLength() > 4) continue;  // long names stand below in full
      for (int i = 0; i < combo->count(); ++i)
        EXPECT_LE(combo->fontMetrics().horizontalAdvance(combo->itemText(i)) + 26, combo->width())
            << width << " " << combo->itemText(i).toStdString();
    }
  }

  Document document;
  bool opened;
  Panel panel;
};

}  // namespace burrow
