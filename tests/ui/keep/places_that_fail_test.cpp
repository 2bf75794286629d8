// Full, read-only and vanished places, and a disk that does not confirm: nothing is lost in silence, on any way out.

#include <gtest/gtest.h>

#include <QDir>
#include <QLabel>
#include <QMenu>
#include <QPrinter>
#include <QTemporaryDir>
#include <cerrno>
#include <fstream>
#include <iterator>

#include "burrow/document/recovery.h"
#include "burrow/sheet/page_out.h"
#include "burrow/sheet/sheet.h"
#include "support/failing_disk.h"
#include "support/menus_for_tests.h"
#include "support/window_for_tests.h"
#include "ui/keep/answers.h"

namespace burrow::test {
namespace {

std::string bytes_of(const QString& path) {
  std::ifstream in(path.toStdString(), std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

struct Place {
  DiskCall call;
  int error;
  const char* shown_text;
};
/// As a read-only folder, one that may not be entered, a full disk, a vanished folder, a disk that fails.
constexpr Place places[] = {{DiskCall::open, EROFS, "a read-only disk"},
                            {DiskCall::open, EACCES, "no permission"},
                            {DiskCall::write, ENOSPC, "a full disk"},
                            {DiskCall::open, ENOENT, "no such file or folder"},
                            {DiskCall::fsync_file, EIO, "did not confirm the new content"}};

class PlacesThatFail : public ::testing::Test {
 protected:
  PlacesThatFail() : test("house-service") {
    QDir().mkpath(folder.filePath(QStringLiteral("shared")));
    path = folder.filePath(QStringLiteral("shared/a.crossing"));
    other = folder.filePath(QStringLiteral("b.crossing"));
    EXPECT_TRUE(test.window.document().save_as(path));
  }
  Document& document() { return test.window.document(); }
  QTemporaryDir folder;
  TestWindow test;
  QString path, other;
};

TEST_F(PlacesThatFail, Save_IsTold_AndTheWorkStays) {
  const std::string before = bytes_of(path);
  raise_launch(document(), 0.01);
  const Crossing mine = document().crossing();
  for (const Place& place : places) {
    const Failing failing(place.call, place.error);
    Answers answers({QStringLiteral("Cancel")});
    EXPECT_FALSE(test.window.save());
    ASSERT_TRUE(answers.all_asked());
    EXPECT_TRUE(answers.shown_text.front().startsWith(QStringLiteral("Not saved")))
        << answers.shown_text.front().toStdString();
    EXPECT_TRUE(answers.shown_text.front().contains(QLatin1String(place.shown_text)))
        << answers.shown_text.front().toStdString();
    EXPECT_EQ(bytes_of(path), before);
    EXPECT_TRUE(document().modified());
    EXPECT_EQ(document().crossing(), mine);
  }
  const Failing failing(DiskCall::write, ENOSPC, 1);
  Answers answers({QStringLiteral("Save as…"), other});
  EXPECT_TRUE(test.window.save());
  EXPECT_EQ(document().path(), other);
  EXPECT_FALSE(document().modified());
  EXPECT_EQ(bytes_of(path), before);
}

TEST_F(PlacesThatFail, Save_UnconfirmedFolder_StaysUnsavedWork) {
  raise_launch(document(), 0.01);
  {
    const Failing failing(DiskCall::fsync_folder, EIO);
    Answers answers({QStringLiteral("Cancel")});
    EXPECT_FALSE(test.window.save());
    ASSERT_TRUE(answers.all_asked());
    EXPECT_TRUE(answers.shown_text.front().contains(QStringLiteral("did not confirm")))
        << answers.shown_text.front().toStdString();
    EXPECT_TRUE(document().modified());
    EXPECT_EQ(document().on_disk(), OnDisk::as_known) << "it is our own content";
  }
  EXPECT_TRUE(test.window.save());
  EXPECT_FALSE(document().modified());
}

TEST_F(PlacesThatFail, Save_VanishedFolder_OffersAnotherPlace) {
  raise_launch(document(), 0.01);
  ASSERT_TRUE(QDir(folder.filePath(QStringLiteral("shared"))).removeRecursively());
  Answers answers({QStringLiteral("Write it again"), QStringLiteral("Save as…"), other});
  EXPECT_TRUE(test.window.save());
  ASSERT_TRUE(answers.all_asked());
  EXPECT_TRUE(answers.shown_text[1].contains(QStringLiteral("no such file or folder")))
      << answers.shown_text[1].toStdString();
  EXPECT_FALSE(document().modified());
}

// Leaving with work that cannot be saved: the window stays.
TEST_F(PlacesThatFail, Closing_DoesNotThrowTheWorkAway) {
  raise_launch(document(), 0.01);
  const Failing failing(DiskCall::write, ENOSPC);
  Answers answers({QStringLiteral("Save"), QStringLiteral("Cancel")});
  test.window.close();
  EXPECT_TRUE(answers.all_asked());
  EXPECT_TRUE(test.window.isVisible());
  EXPECT_TRUE(document().modified());
}

TEST_F(PlacesThatFail, Copies_AreTriedAgain_AndTheLineSaysSo) {
  MainWindow window(tables_for_tests(), folder.filePath(QStringLiteral("unsaved")));
  window.show();
  ASSERT_TRUE(window.open_file(path));
  auto* recovery = window.findChild<Recovery*>();
  recovery->set_pause(5);
  const auto reported = [&] {
    for (const QLabel* label : window.findChildren<QLabel*>())
      if (label->isVisible() && label->text().contains(QStringLiteral("cannot be kept: a full disk"))) return true;
    return false;
  };
  {
    const Failing failing(DiskCall::write, ENOSPC);
    raise_launch(window.document(), 0.01);
    ASSERT_TRUE(comes(reported));
  }
  ASSERT_TRUE(comes([&] { return !reported(); })) << "it is tried again without a change";
  EXPECT_TRUE(QFile::exists(recovery->copy_path()));
}

// What was written there before is whole after each failure.
TEST_F(PlacesThatFail, PaperPicturesAndFilesForOthers_AreTold) {
  struct Way {
    const char *menu, *name, *ending;
  };
  const Way ways[] = {{"Sheet as PDF", "Crossing sheet…", "pdf"},
                      {"File", "Picture as PNG…", "png"},
                      {"Export", "Drawing as DXF, in metres…", "dxf"},
                      {"Export", "Drawing to scale as SVG…", "svg"},
                      {"Export", "Table of the path as CSV…", "csv"}};
  for (const Way& way : ways) {
    QAction* action = entry(test.window, QString::fromUtf8(way.menu), QString::fromUtf8(way.name));
    ASSERT_TRUE(action);
    const QString out = folder.filePath(QStringLiteral("out.") + QLatin1String(way.ending));
    {
      Answers answers({out});
      action->trigger();
    }
    const std::string before = bytes_of(out);
    ASSERT_GT(before.size(), 100u) << way.name;
    for (const Place& place : places) {
      if (place.error == EACCES) continue;
      const Failing failing(place.call, place.error);
      Answers answers({out, QStringLiteral("Yes"), QStringLiteral("OK")});
      action->trigger();
      ASSERT_TRUE(answers.all_asked()) << way.name << ": " << place.shown_text;
      EXPECT_TRUE(answers.shown_text.last().contains(QStringLiteral("was not written")))
          << answers.shown_text.last().toStdString();
      EXPECT_TRUE(answers.shown_text.last().contains(QLatin1String(place.shown_text)))
          << answers.shown_text.last().toStdString();
      EXPECT_EQ(bytes_of(out), before) << way.name << ": " << place.shown_text;
    }
  }
}

TEST_F(PlacesThatFail, Print_ToAFile_IsTold) {
  const auto sheet = sheet_of(document().crossing(), document().assessment(), document().tables(), UnitSystem::metric);
  ASSERT_TRUE(sheet);
  const auto pages = sheet_pages(*sheet, SheetPart::card);
  ASSERT_TRUE(pages);
  const auto print = [&](const QString& to) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(to);
    return print_pages(printer, *pages);
  };
  EXPECT_TRUE(print(folder.filePath(QStringLiteral("job.pdf"))));
  EXPECT_FALSE(print(folder.filePath(QStringLiteral("none/job.pdf"))));
  const Failing failing(DiskCall::write, ENOSPC);
  EXPECT_FALSE(print(folder.filePath(QStringLiteral("full.pdf"))));
}

}  // namespace
}  // namespace burrow::test
