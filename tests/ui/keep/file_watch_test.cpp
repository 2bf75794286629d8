// The open file, changed on the disk by another process while it is open here.

#include "burrow/document/file_watch.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QLabel>
#include <QProcess>
#include <QPushButton>
#include <QTemporaryDir>

#include "burrow/file/crossing_file.h"
#include "burrow/window/notice_line.h"
#include "support/window_for_tests.h"
#include "ui/keep/answers.h"

namespace burrow::test {
namespace {

class FileWatchTest : public ::testing::Test {
 protected:
  FileWatchTest() : test("first-lesson") {
    QDir().mkpath(folder.filePath(QStringLiteral("shared")));
    path = folder.filePath(QStringLiteral("shared/a.crossing"));
    other = folder.filePath(QStringLiteral("other"));
    same = folder.filePath(QStringLiteral("same"));
    EXPECT_TRUE(document().save_as(path));
    QFile::copy(path, same);
    Document theirs(tables_for_tests());
    EXPECT_TRUE(theirs.open(path));
    raise_launch(theirs, 0.05);
    EXPECT_TRUE(theirs.save_as(other));
    QObject::connect(watch(), &FileWatch::noticed, &test.window, [this](OnDisk state) { noticed.push_back(state); });
  }
  Document& document() { return test.window.document(); }
  NoticeLine& line() { return *test.window.findChild<NoticeLine*>(); }
  FileWatch* watch() { return test.window.findChild<FileWatch*>(); }
  /// Another process does this to the file ($1), with theirs ($2) and an exact copy of ours ($3) at hand.
  void elsewhere(const char* commands) {
    ASSERT_EQ(QProcess::execute(QStringLiteral("sh"), {QStringLiteral("-ec"), QLatin1String(commands),
                                                       QStringLiteral("sh"), path, other, same}),
              0);
  }
  bool becomes(OnDisk state) {
    return comes([&] { return watch()->state() == state; });
  }
  /// What has been told of the file until now is looked at now, not when more of it has come together.
  void look_now() { settle(test.window); }
  /// Something else is changed and noticed: what came before it would have been noticed too.
  void expect_it_is_watched() {
    elsewhere("rm \"$1\"");
    ASSERT_TRUE(becomes(OnDisk::gone));
  }
  QTemporaryDir folder;
  TestWindow test;
  QString path, other, same;
  std::vector<OnDisk> noticed;
};

TEST_F(FileWatchTest, RenamedOver_IsNoticedEachTime) {
  EXPECT_FALSE(line().isVisible());
  elsewhere("cp \"$2\" \"$1.new\"; mv \"$1.new\" \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::changed));
  EXPECT_TRUE(line().isVisible());
  EXPECT_TRUE(line().text().contains(QStringLiteral("a.crossing"))) << line().text().toStdString();
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr) << "nobody has to answer";
  elsewhere("cp \"$3\" \"$1.new\"; mv \"$1.new\" \"$1\"");  // and back: another file again to the system
  ASSERT_TRUE(becomes(OnDisk::as_known));
  EXPECT_FALSE(line().isVisible());
  elsewhere("cp \"$2\" \"$1.new\"; mv \"$1.new\" \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::changed));
}

TEST_F(FileWatchTest, EditedInPlace_IsNoticedEachTime) {
  elsewhere("cat \"$2\" > \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::changed));
  elsewhere("cat \"$3\" > \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::as_known));
  elsewhere("printf ' ' >> \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::changed));
}

TEST_F(FileWatchTest, Gone_AndBack) {
  EXPECT_FALSE(document().modified());
  elsewhere("rm \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::gone));
  EXPECT_TRUE(line().isVisible());
  EXPECT_TRUE(document().modified()) << "the screen alone holds the work";
  elsewhere("cp \"$3\" \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::as_known));
  EXPECT_FALSE(document().modified());
  EXPECT_FALSE(line().isVisible());
  elsewhere("rm \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::gone));
  elsewhere("cp \"$2\" \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::changed));
  EXPECT_EQ(line().action().text(), QStringLiteral("Take theirs"));
}

TEST_F(FileWatchTest, Gone_WithItsFolder_AndBack) {
  elsewhere("rm -r \"$(dirname \"$1\")\"");
  ASSERT_TRUE(becomes(OnDisk::gone));
  elsewhere("mkdir \"$(dirname \"$1\")\"; cp \"$3\" \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::as_known));
  elsewhere("cat \"$2\" > \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::changed)) << "it is watched again";
}

TEST_F(FileWatchTest, SameContent_SaysNothing) {
  elsewhere("touch \"$1\"");
  look_now();
  elsewhere("cp \"$3\" \"$1.new\"; mv \"$1.new\" \"$1\"");
  look_now();
  elsewhere("cat \"$3\" > \"$1.new\"; cat \"$1.new\" > \"$3\"; rm \"$1.new\"");
  elsewhere("chmod 600 \"$1\"");
  look_now();
  EXPECT_TRUE(noticed.empty());
  expect_it_is_watched();
  EXPECT_EQ(noticed, std::vector<OnDisk>{OnDisk::gone});
}

TEST_F(FileWatchTest, OwnSaves_SayNothing) {
  for (int i = 0; i < 5; ++i) {
    raise_launch(document(), 0.01);
    ASSERT_TRUE(test.window.save());
    look_now();
    EXPECT_TRUE(noticed.empty()) << i;
  }
  const QString elsewhere_too = folder.filePath(QStringLiteral("shared/b.crossing"));
  ASSERT_TRUE(document().save_as(elsewhere_too));
  elsewhere("cat \"$2\" > \"$1\"");  // the file before, which is no longer ours
  QFile::remove(elsewhere_too);
  ASSERT_TRUE(becomes(OnDisk::gone));
  EXPECT_EQ(noticed, std::vector<OnDisk>{OnDisk::gone});
}

TEST_F(FileWatchTest, Action_TakesTheirs) {
  const double start = test.crossing().bore.launch.elevation.m;
  elsewhere("cat \"$2\" > \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::changed));
  ASSERT_EQ(line().action().text(), QStringLiteral("Take theirs"));
  line().action().click();
  EXPECT_NEAR(test.crossing().bore.launch.elevation.m, start + 0.05, 1e-9);
  EXPECT_FALSE(line().isVisible());
}

// With work of one's own there is something to choose: the action compares, and saving asks as it always did.
TEST_F(FileWatchTest, Action_ComparesWhereThereIsWork) {
  const double start = test.crossing().bore.launch.elevation.m;
  elsewhere("cat \"$2\" > \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::changed));
  raise_launch(document(), 0.01);
  ASSERT_EQ(line().action().text(), QStringLiteral("Compare…"));
  {
    Answers answers({QStringLiteral("Cancel")});
    line().action().click();
    ASSERT_TRUE(answers.all_asked());
  }
  {
    Answers answers({QStringLiteral("Cancel")});
    EXPECT_FALSE(test.window.save());
    ASSERT_TRUE(answers.all_asked());
  }
  EXPECT_TRUE(line().isVisible());
  Answers answers({QStringLiteral("Keep mine")});
  line().action().click();
  ASSERT_TRUE(answers.all_asked());
  EXPECT_FALSE(line().isVisible());
  Document there(tables_for_tests());
  ASSERT_TRUE(there.open(path));
  EXPECT_NEAR(there.crossing().bore.launch.elevation.m, start + 0.01, 1e-9);
}

TEST_F(FileWatchTest, Action_WritesAgainWhatIsGone) {
  elsewhere("rm \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::gone));
  line().action().click();
  EXPECT_TRUE(QFile::exists(path));
  EXPECT_FALSE(document().modified());
  EXPECT_FALSE(line().isVisible());
}

// Closing with a file that is gone asks, as with any unsaved work.
TEST_F(FileWatchTest, Gone_ClosingAsks) {
  elsewhere("rm \"$1\"");
  ASSERT_TRUE(becomes(OnDisk::gone));
  Answers answers({QStringLiteral("Cancel")});
  test.window.close();
  EXPECT_TRUE(answers.all_asked());
  EXPECT_TRUE(test.window.isVisible());
}

}  // namespace
}  // namespace burrow::test
