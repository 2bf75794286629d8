// Two people and one file: nothing is overwritten or lost in silence.
#include <gtest/gtest.h>

#include <QFile>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTimer>

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
