// What earlier runs left behind: looked at, taken back, kept for later, thrown away.

#include "burrow/window/left_work_dialog.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTemporaryDir>

#include "burrow/document/open_mark.h"
#include "burrow/file/crossing_file.h"
#include "support/window_for_tests.h"

namespace burrow::test {
namespace {

class LeftWorkTest : public ::testing::Test {
 protected:
  /// As a run leaves it that was killed after an edit; `name` empty: never saved.
  void leave(const QString& name, double raised_by_m) {
    Document document(tables_for_tests());
    const QString path = name.isEmpty() ? QString() : folder.filePath(name);
    ASSERT_TRUE(document.open(sample_path("first-lesson")));
    if (!path.isEmpty()) {
      ASSERT_TRUE(document.save_as(path));
    } else {
      document.start_from(document.crossing(), true);
    }
    Recovery recovery(document, kept, 60'000);
    Launch launch = document.crossing().bore.launch;
    launch.elevation.m += raised_by_m;
    document.change(QStringLiteral("raise"), [&](Crossing& to) { to.bore.launch = launch; });
    ASSERT_TRUE(recovery.keep_for_later());
  }
  static QPushButton* button(QDialog& dialog, const char* name) {
    for (auto* one : dialog.findChildren<QPushButton*>())
      if (one->text().remove(QLatin1Char('&')) == QLatin1String(name)) return one;
    ADD_FAILURE() << "no button " << name;
    return nullptr;
  }
  std::vector<LeftWork> left() const { return Recovery::left_work(kept); }
  QStringList texts(const QDialog& dialog) const {
    QStringList all;
    for (const auto* label : dialog.findChildren<QLabel*>())
      if (label->isVisibleTo(&dialog)) all << label->text();
    return all;
  }
  QTemporaryDir folder;
  QString kept = folder.filePath(QStringLiteral("unsaved"));
};

TEST_F(LeftWorkTest, Look_ChangesNothing) {
  leave(QStringLiteral("a.crossing"), 0.05);
  const auto before = left();
  ASSERT_EQ(before.size(), 1u);
  const auto copy = read_text_file(before.front().copy.toStdString());
  LeftWorkDialog dialog(tables_for_tests(), before, UnitSystem::metric, false);
  dialog.show();
  QCoreApplication::processEvents();
  const QString differences = dialog.findChild<QPlainTextEdit*>()->toPlainText();
  EXPECT_TRUE(differences.contains(QStringLiteral("bore/launch/elevation_m"))) << differences.toStdString();
  EXPECT_TRUE(texts(dialog).join(QLatin1Char('\n')).contains(QStringLiteral("a.crossing")));
  const QImage seen = dialog.grab().toImage();
  int inked = 0;
  for (int y = 0; y < seen.height(); y += 2)
    for (int x = 0; x < seen.width(); x += 2) inked += seen.pixelColor(x, y).saturation() > 60;
  EXPECT_GT(inked, 1000) << "the crossing is drawn";
  button(dialog, "Decide later")->click();
  EXPECT_FALSE(dialog.taken());
  const auto after = left();
  ASSERT_EQ(after.size(), 1u);
  EXPECT_EQ(read_text_file(after.front().copy.toStdString()), copy);
}

TEST_F(LeftWorkTest, Several_AreListed_OneIsTaken_OneThrownAway) {
  leave(QStringLiteral("a.crossing"), 0.05);
  leave(QStringLiteral("b.crossing"), 0.06);
  leave(QString(), 0.07);
  auto works = left();
  ASSERT_EQ(works.size(), 3u);
  LeftWorkDialog dialog(tables_for_tests(), works, UnitSystem::metric, true);
  dialog.show();
  auto* list = dialog.findChild<QListWidget*>();
  ASSERT_TRUE(list->isVisible());
  ASSERT_EQ(list->count(), 3);
  list->setCurrentRow(1);
  button(dialog, "Discard")->click();
  EXPECT_EQ(list->count(), 2);
  EXPECT_TRUE(dialog.isVisible());
  EXPECT_EQ(left().size(), 2u);
  EXPECT_FALSE(QFile::exists(works[1].copy));
  list->setCurrentRow(0);
  button(dialog, "Recover")->click();
  ASSERT_TRUE(dialog.taken());
  EXPECT_EQ(dialog.taken()->copy, works[0].copy);
  EXPECT_EQ(left().size(), 2u) << "taking is the window's business";
}

TEST_F(LeftWorkTest, Unreadable_CanBeKeptButNotTaken) {
  leave(QStringLiteral("a.crossing"), 0.05);
  QFile copy(left().front().copy);
  ASSERT_TRUE(copy.open(QIODevice::WriteOnly));
  copy.write("{ half");
  copy.close();
  LeftWorkDialog dialog(tables_for_tests(), left(), UnitSystem::metric, false);
  dialog.show();
  EXPECT_FALSE(button(dialog, "Recover")->isEnabled());
  EXPECT_TRUE(texts(dialog).join(QLatin1Char('\n')).contains(QStringLiteral("cannot be read")));
  button(dialog, "Decide later")->click();
  EXPECT_EQ(left().size(), 1u);
}

TEST_F(LeftWorkTest, FileNewerOrGone_IsSaid) {
  leave(QStringLiteral("a.crossing"), 0.05);
  const QString path = folder.filePath(QStringLiteral("a.crossing"));
  Document theirs(tables_for_tests());
  ASSERT_TRUE(theirs.open(path));
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadWrite));
  ASSERT_TRUE(file.setFileTime(QDateTime::currentDateTime().addSecs(3600), QFileDevice::FileModificationTime));
  file.close();
  LeftWorkDialog newer(tables_for_tests(), left(), UnitSystem::metric, false);
  EXPECT_TRUE(texts(newer).join(QLatin1Char('\n')).contains(QStringLiteral("newer")));
  QFile::remove(path);
  LeftWorkDialog gone(tables_for_tests(), left(), UnitSystem::metric, false);
  EXPECT_TRUE(texts(gone).join(QLatin1Char('\n')).contains(QStringLiteral("no such file")));
}

// Killed between the saving and the removal of the copy: there is nothing to offer.
TEST_F(LeftWorkTest, SavedAlready_IsNotOffered) {
  leave(QStringLiteral("a.crossing"), 0.05);
  ASSERT_EQ(left().size(), 1u);
  const QString path = folder.filePath(QStringLiteral("a.crossing"));
  QFile::remove(path);
  ASSERT_TRUE(QFile::copy(left().front().copy, path));
  EXPECT_TRUE(left().empty());
  EXPECT_EQ(QDir(kept).entryList(QDir::Files | QDir::Hidden), QStringList());
}

// Whoever removes the folder takes the lock along: it is made again with the next copy, and nobody else is offered it.
TEST_F(LeftWorkTest, FolderRemovedMeanwhile_RunningWorkIsNotOffered) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  Recovery recovery(document, kept, 60'000);
  ASSERT_TRUE(QDir(kept).removeRecursively());
  document.start_from(document.crossing(), true);
  ASSERT_TRUE(recovery.keep_now());
  EXPECT_TRUE(left().empty()) << "a running program holds it";
}

}  // namespace
}  // namespace burrow::test
