/// The site log after a bore: what was pulled in, closed up and photographed, and what is left to do.

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTemporaryDir>

#include "burrow/document/record_fields.h"
#include "burrow/panels/day_panel.h"
#include "burrow/panels/entry_form.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

struct AfterPage : PanelBeside<DayPanel> {
  explicit AfterPage(const char* sample) : PanelBeside<DayPanel>(sample, UnitSystem::metric) {
    panel.set_clock([] { return QDateTime(QDate(2026, 3, 2), QTime(12, 0), Qt::UTC); });
    panel.refresh_now();
  }
  QLineEdit* field(const char* begins) {
    for (QLineEdit* one : panel.findChildren<QLineEdit*>())
      if (one->accessibleName().startsWith(QLatin1String(begins)) && one->isVisibleTo(&panel)) return one;
    return nullptr;
  }
  EntryForm* pull() {
    for (EntryForm* form : panel.findChildren<EntryForm*>())
      if (form->find(QStringLiteral("most pull")) >= 0) return form;
    return nullptr;
  }
  QString left_to_do() {
    for (const QLabel* one : panel.findChildren<QLabel*>())
      if (one->accessibleName() == QStringLiteral("What is left to do")) return one->text();
    return {};
  }
  const Aftermath& after() { return document.crossing().record.back().aftermath; }
};

TEST(AfterBore, PullInAndGrout_Typed) {
  AfterPage w("day-finished");
  ASSERT_TRUE(w.opened);
  w.document.change(QStringLiteral("none"), [](Crossing& c) { c.record.back().aftermath = {}; });
  w.panel.refresh_now();
  EXPECT_TRUE(w.left_to_do().contains(QStringLiteral("Pull-in"))) << w.left_to_do().toStdString();
  EXPECT_FALSE(w.left_to_do().contains(QStringLiteral("✓ Pull-in")));
  ASSERT_TRUE(w.field("pulled in") && w.field("pulled in on") && w.field("closed around"));
  w.type_into(w.field("pulled in"), "14 m PE 63");
  w.type_into(w.field("pulled in on"), "2026-03-02");
  ASSERT_TRUE(w.pull());
  w.type(w.pull(), "most pull", "2.1 kN");
  w.type_into(w.field("closed around"), "grouted");
  EXPECT_EQ(w.after().pull_in.what, "14 m PE 63");
  EXPECT_NEAR(w.after().pull_in.peak->N, 2100, 1e-6);
  EXPECT_EQ(w.after().grouted.how, "grouted");
  EXPECT_FALSE(w.left_to_do().contains(QStringLiteral("✓ Pull-in"))) << "nobody watched for strikes";
  ASSERT_TRUE(w.field("watched for strikes"));
  w.type_into(w.field("watched for strikes"), "A. Nobody");
  EXPECT_TRUE(w.left_to_do().contains(QStringLiteral("✓ Pull-in"))) << w.left_to_do().toStdString();
  w.expect_opens_again();
}

// Numbers of a record that is gone are none.
TEST(AfterBore, Fields_OfARecordThatIsThere) {
  AfterPage w("day-finished");
  EXPECT_EQ(pull_in_fields(w.crossing(), "d1").size(), 2u);
  EXPECT_TRUE(pull_in_fields(w.crossing(), "d99").empty());
}

// Before the end there is nothing after it.
TEST(AfterBore, UnderWay_IsHidden) {
  AfterPage w("day-under-way");
  EXPECT_FALSE(w.field("pulled in"));
}

// The path from the folder of the crossing, and a small picture beside it.
TEST(AfterBore, Photo_PathAndPreview) {
  const QTemporaryDir folder;
  const QString crossing = folder.filePath(QStringLiteral("hazel.crossing"));
  ASSERT_TRUE(QFile::copy(sample_path("day-finished"), crossing));
  QImage picture(1600, 1200, QImage::Format_RGB32);
  picture.fill(Qt::darkGreen);
  ASSERT_TRUE(picture.save(folder.filePath(QStringLiteral("exit.jpg"))));
  AfterPage w("day-finished");
  ASSERT_TRUE(w.document.open(crossing));
  w.panel.refresh_now();
  const std::size_t before = w.after().photos.size();
  w.panel.take_photo(folder.filePath(QStringLiteral("exit.jpg")));
  w.type_into(w.field("What it shows"), "the exit");
  ASSERT_EQ(w.after().photos.size(), before + 1);
  EXPECT_EQ(w.after().photos.back().path, "exit.jpg");
  EXPECT_EQ(w.after().photos.back().what, "the exit");
  const QImage small(folder.filePath(QStringLiteral("hazel-photos/exit-small.jpg")));
  ASSERT_FALSE(small.isNull());
  EXPECT_EQ(std::max(small.width(), small.height()), 320);
  // One that cannot be read is kept by its path, and that there is no preview is said.
  QFile(folder.filePath(QStringLiteral("broken.jpg"))).open(QIODevice::WriteOnly);
  w.panel.take_photo(folder.filePath(QStringLiteral("broken.jpg")));
  w.type_into(w.field("What it shows"), "broken");
  EXPECT_EQ(w.after().photos.back().path, "broken.jpg");
  EXPECT_FALSE(QFile::exists(folder.filePath(QStringLiteral("hazel-photos/broken-small.jpg"))));
}

}  // namespace
}  // namespace burrow
