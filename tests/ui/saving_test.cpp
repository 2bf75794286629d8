// Two people and one file: nothing is overwritten or lost in silence.
#include <gtest/gtest.h>

#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QStatusBar>
#include <QTemporaryDir>
#include <QTimer>

#include "burrow/panels/entry_form.h"
#include "burrow/panels/sheet_panel.h"
#include "burrow/panels/text_form.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct Asked {
  QString text, details;
};

/// Answers the next question with the button of this name.
class Answer {
 public:
  explicit Answer(const QString& button) {
    QObject::connect(&style_, &QTimer::timeout, [this, button] {
      auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
      if (!box) return;
      asked.text = box->text();
      asked.details = box->detailedText();
      for (QAbstractButton* one : box->buttons())
        if (one->text().remove(QLatin1Char('&')) == button) {
          style_.stop();
          one->click();
          return;
        }
    });
    style_.start(10);
  }
  Asked asked;

 private:
  QTimer style_;
};

double elevation_in(const QString& path) {
  Document document(tables_for_tests());
  EXPECT_TRUE(document.open(path));
  return document.crossing().bore.launch.elevation.m;
}

class Saving : public ::testing::Test {
 protected:
  Saving() : window("first-lesson") {
    path = folder.filePath(QStringLiteral("shared.crossing"));
    QFile::copy(sample_path("first-lesson"), path);
    QFile(path).setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner);
    opened = window.window.open_file(path);
    start = window.crossing().bore.launch.elevation.m;
  }
  void colleague_raises(double by_m) {
    Document theirs(tables_for_tests());
    ASSERT_TRUE(theirs.open(path));
    raise_launch(theirs, by_m);
    ASSERT_TRUE(theirs.save_as(path));
  }
  QTemporaryDir folder;
  TestWindow window;
  QString path;
  bool opened = false;
  double start = 0;
};

TEST_F(Saving, Alone_AsksNothing) {
  ASSERT_TRUE(opened);
  raise_launch(window.window.document(), 0.01);
  EXPECT_TRUE(window.window.save());
  EXPECT_NEAR(elevation_in(path), start + 0.01, 1e-9);
  EXPECT_TRUE(window.window.save());
}

TEST_F(Saving, ChangedByAnother_IsAsked) {
  ASSERT_TRUE(opened);
  raise_launch(window.window.document(), 0.01);
  colleague_raises(0.05);
  {
    const Answer answer(QStringLiteral("Cancel"));
    EXPECT_FALSE(window.window.save());
    EXPECT_TRUE(answer.asked.text.contains(QStringLiteral("somebody else"))) << answer.asked.text.toStdString();
    EXPECT_TRUE(answer.asked.details.contains(QStringLiteral("elevation_m"))) << answer.asked.details.toStdString();
  }
  EXPECT_NEAR(elevation_in(path), start + 0.05, 1e-9);
  EXPECT_NEAR(window.crossing().bore.launch.elevation.m, start + 0.01, 1e-9);
  {
    const Answer answer(QStringLiteral("Keep mine"));
    EXPECT_TRUE(window.window.save());
  }
  EXPECT_NEAR(elevation_in(path), start + 0.01, 1e-9);

  raise_launch(window.window.document(), 0.01);
  colleague_raises(0.07);
  const Answer answer(QStringLiteral("Take theirs"));
  EXPECT_TRUE(window.window.save());
  EXPECT_NEAR(window.crossing().bore.launch.elevation.m, start + 0.08, 1e-9);
}

TEST_F(Saving, RemovedMeanwhile_IsAsked) {
  ASSERT_TRUE(opened);
  raise_launch(window.window.document(), 0.01);
  QFile::remove(path);
  {
    const Answer answer(QStringLiteral("Cancel"));
    EXPECT_FALSE(window.window.save());
  }
  EXPECT_FALSE(QFile::exists(path));
  const Answer answer(QStringLiteral("Write it again"));
  EXPECT_TRUE(window.window.save());
  EXPECT_NEAR(elevation_in(path), start + 0.01, 1e-9);
}

/// A field of the page *Set-up* in which a number stands and something else is typed now, without Enter.
QLineEdit* begin_typing(TestWindow& w, const QString& text) {
  w.window.side().show_page(SideColumn::Page::setup);
  settle(w.window);
  for (EntryForm* form : w.window.side().currentWidget()->findChildren<EntryForm*>()) {
    const int row = form->find(QStringLiteral("sight error"));
    if (row < 0 || !form->entry(row)->isVisible()) continue;
    form->entry(row)->setFocus();
    form->entry(row)->selectAll();
    QTest::keyClicks(form->entry(row), text);
    return form->entry(row);
  }
  return nullptr;
}

// A value that shows on the screen and was not entered by Enter is in what is saved, closed over, or put on paper.
TEST_F(Saving, Typing_IsTakenBeforeAnythingIsSaved) {
  ASSERT_TRUE(opened);
  const auto sight_in = [](const QString& file) {
    Document document(tables_for_tests());
    EXPECT_TRUE(document.open(file));
    return document.crossing().bore.launch.aim_sd->rad;
  };
  const auto now = [&] { return window.crossing().bore.launch.aim_sd->rad; };
  const double before = now();
  ASSERT_TRUE(begin_typing(window, QStringLiteral("0.41")));
  EXPECT_EQ(now(), before);
  EXPECT_TRUE(window.window.save());
  EXPECT_NE(now(), before);
  EXPECT_EQ(sight_in(path), now());
  // Closing asks about it.
  const double saved = now();
  ASSERT_TRUE(begin_typing(window, QStringLiteral("0.57")));
  {
    const Answer answer(QStringLiteral("Cancel"));
    EXPECT_FALSE(window.window.close());
    EXPECT_TRUE(answer.asked.text.contains(QStringLiteral("not saved"))) << answer.asked.text.toStdString();
  }
  EXPECT_GT(now(), saved);
  EXPECT_TRUE(window.window.save());
  EXPECT_EQ(sight_in(path), now());
}

// What is refused stays where it was typed; the rest is saved, and no paper is made that would show another value.
TEST_F(Saving, Typing_RefusedIsSaid) {
  ASSERT_TRUE(opened);
  QLineEdit* field = begin_typing(window, QStringLiteral("abc"));
  ASSERT_TRUE(field);
  EXPECT_TRUE(window.window.save());
  EXPECT_TRUE(window.window.statusBar()->currentMessage().contains(QStringLiteral("not taken")));
  EXPECT_NEAR(elevation_in(path), start, 1e-9);
  EXPECT_EQ(field->text(), QStringLiteral("abc"));
  EXPECT_FALSE(take_typing_in(window.window));
  QTest::keyClick(field, Qt::Key_Escape);
  EXPECT_TRUE(take_typing_in(window.window));
  // A day that is none, left on a page that is no longer shown: nothing on the screen says otherwise than the paper.
  window.window.side().show_page(SideColumn::Page::sheet);
  settle(window.window);
  QLineEdit* day = window.window.findChild<SheetPanel*>()->texts()->entry(QStringLiteral("date"));
  ASSERT_TRUE(day);
  day->setFocus();
  day->selectAll();
  QTest::keyClicks(day, QStringLiteral("yesterday"));
  EXPECT_FALSE(take_typing_in(window.window));
  window.window.side().show_page(SideColumn::Page::findings);
  settle(window.window);
  EXPECT_TRUE(take_typing_in(window.window));
}

// While the question stands, a colleague saves once more: what was shown is not what would be written over.
TEST_F(Saving, ChangedAgainWhileAsked_IsAskedAgain) {
  ASSERT_TRUE(opened);
  raise_launch(window.window.document(), 0.01);
  colleague_raises(0.05);
  int asked = 0;
  QTimer clicks;
  QObject::connect(&clicks, &QTimer::timeout, [&] {
    auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
    if (!box) return;
    if (++asked == 1) colleague_raises(0.07);
    for (QAbstractButton* one : box->buttons())
      if (one->text().remove(QLatin1Char('&')) == (asked == 1 ? QStringLiteral("Keep mine") : QStringLiteral("Cancel")))
        return one->click();
  });
  clicks.start(10);
  EXPECT_FALSE(window.window.save());
  EXPECT_EQ(asked, 2);
  EXPECT_NEAR(elevation_in(path), start + 0.12, 1e-9);
}

// Notes under the cursor: an undo from the menu shows, and leaving the field does not write the old words again;
// another crossing never gets them.
TEST_F(Saving, Typing_NotesFollowUndoAndStayWithTheirCrossing) {
  ASSERT_TRUE(opened);
  window.window.side().show_page(SideColumn::Page::sheet);
  settle(window.window);
  auto* panel = window.window.findChild<SheetPanel*>();
  ASSERT_TRUE(panel);
  const std::string before = window.crossing().notes;
  panel->notes()->setFocus();
  panel->notes()->selectAll();
  QTest::keyClicks(panel->notes(), QStringLiteral("by the gate"));
  EXPECT_TRUE(window.window.save());
  EXPECT_EQ(window.crossing().notes, "by the gate");
  window.window.document().undo_stack().undo();
  settle(window.window);
  EXPECT_EQ(panel->notes()->toPlainText().toStdString(), before);
  panel->notes()->clearFocus();
  EXPECT_EQ(window.crossing().notes, before);
  panel->notes()->selectAll();
  QTest::keyClicks(panel->notes(), QStringLiteral("of the other"));
  ASSERT_TRUE(window.window.document().open(sample_path("house-service")));
  const std::string theirs = window.crossing().notes;
  settle(window.window);
  panel->take_typing();
  EXPECT_EQ(window.crossing().notes, theirs);
}

TEST_F(Saving, OpenElsewhere_IsShown) {
  ASSERT_TRUE(opened);
  EXPECT_TRUE(QFile::exists(OpenMark::mark_of(path)));
  const QString second = folder.filePath(QStringLiteral("second.crossing"));
  QFile::copy(path, second);
  QFile mark(OpenMark::mark_of(second));
  ASSERT_TRUE(mark.open(QIODevice::WriteOnly));
  mark.write(("anna\n" + QSysInfo::machineHostName() + "\n1\n2026-11-29T08:00:00").toUtf8());
  mark.close();
  ASSERT_TRUE(window.window.open_file(second));
  EXPECT_FALSE(QFile::exists(OpenMark::mark_of(path))) << "the one before is left";
  bool shown = false;
  for (const QLabel* label : window.window.findChildren<QLabel*>())
    shown = shown || (label->isVisible() && label->text().contains(QStringLiteral("anna")));
  EXPECT_TRUE(shown);
}

}  // namespace
}  // namespace burrow
