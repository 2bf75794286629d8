// Ctrl+Z in a field: what is being typed goes back as text, what was taken over goes back as a step of the crossing.
#include <gtest/gtest.h>

#include <QLineEdit>

#include "support/window_for_tests.h"

namespace burrow {
namespace {

void undo_in(QWidget* field) {
  QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier);
  QCoreApplication::processEvents();
}

TEST(FieldUndo, ATypedValueGoesBackFromItsOwnField) {
  TestWindow w("house-service");
  ASSERT_TRUE(w.opened);
  QApplication::setActiveWindow(&w.window);
  w.window.side().show_page(SideColumn::Page::setup);
  QCoreApplication::processEvents();
  const Crossing before = w.crossing();
  int tried = 0;
  for (QLineEdit* field : w.window.side().currentWidget()->findChildren<QLineEdit*>()) {
    if (!field->isVisible() || !field->isEnabled() || field->text().isEmpty()) continue;
    const int steps = w.window.document().undo_stack().index();
    const QString shown = field->text();
    field->setFocus();
    field->selectAll();
    QTest::keyClicks(field, QStringLiteral("1.234"));
    QTest::keyClick(field, Qt::Key_Return);
    QCoreApplication::processEvents();
    if (w.window.document().undo_stack().index() == steps) continue;  // the same value, or no number
    ++tried;
    undo_in(field);
    EXPECT_EQ(w.window.document().undo_stack().index(), steps) << field->accessibleName().toStdString();
    settle(w.window);
    EXPECT_EQ(field->text().toStdString(), shown.toStdString()) << field->accessibleName().toStdString();
    EXPECT_TRUE(w.crossing() == before);
    // Redo takes it back, from the same field.
    QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    QCoreApplication::processEvents();
    EXPECT_EQ(w.window.document().undo_stack().index(), steps + 1);
    undo_in(field);
  }
  EXPECT_GT(tried, 1);
}

TEST(FieldUndo, WhatIsBeingTypedGoesBackAsText) {
  TestWindow w("house-service");
  ASSERT_TRUE(w.opened);
  QApplication::setActiveWindow(&w.window);
  w.window.side().show_page(SideColumn::Page::setup);
  QCoreApplication::processEvents();
  for (QLineEdit* field : w.window.side().currentWidget()->findChildren<QLineEdit*>()) {
    if (!field->isVisible() || !field->isEnabled() || field->text().isEmpty()) continue;
    const int steps = w.window.document().undo_stack().index();
    const QString shown = field->text();
    field->setFocus();
    field->setCursorPosition(0);
    QTest::keyClicks(field, QStringLiteral("7"));
    ASSERT_NE(field->text(), shown);
    undo_in(field);
    EXPECT_EQ(field->text(), shown);
    EXPECT_EQ(w.window.document().undo_stack().index(), steps);
    return;
  }
  FAIL() << "no field";
}

}  // namespace
}  // namespace burrow
