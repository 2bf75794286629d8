// Printing, driven as a person does: the entry of the menu, the preview, its pages.

#include <gtest/gtest.h>

#include <QFile>
#include <QMenu>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTimer>
#include <algorithm>

#include "burrow/sheet/page_out.h"
#include "burrow/sheet/sheet.h"
#include "support/menus_for_tests.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct Seen {
  int pages = 0;
  QImage picture;
};

/// Opens the preview, looks at it, closes it.
Seen preview(TestWindow& test, const QString& name) {
  Seen seen;
  QAction* action = entry(test.window, QStringLiteral("Print"), name);
  if (!action) return seen;
  QTimer style;
  QObject::connect(&style, &QTimer::timeout, [&] {
    auto* dialog = test.window.findChild<QPrintPreviewDialog*>();
    auto* pages = dialog ? dialog->findChild<QPrintPreviewWidget*>() : nullptr;
    if (!pages || !dialog->isVisible()) return;
    style.stop();
    dialog->resize(1100, 800);
    pages->setViewMode(QPrintPreviewWidget::AllPagesView);
    pages->fitInView();
    seen.pages = pages->pageCount();
    seen.picture = dialog->grab().toImage();
    if (const QString keep = qEnvironmentVariable("BURROW_KEEP_PREVIEW"); !keep.isEmpty()) seen.picture.save(keep);
    dialog->reject();
  });
  style.start(20);
  action->trigger();
  return seen;
}

/// Pixels that are neither paper nor the grey around it.
int inked(const QImage& picture) {
  int count = 0;
  for (int y = 0; y < picture.height(); ++y)
    for (int x = 0; x < picture.width(); ++x) count += picture.pixelColor(x, y).lightness() < 90;
  return count;
}

TEST(Printing, Preview_ShowsEachPage) {
  TestWindow test("house-service");
  ASSERT_TRUE(test.opened);
  Document& document = test.window.document();
  const auto sheet = sheet_of(document.crossing(), document.assessment(), document.tables(), UnitSystem::metric);
  ASSERT_TRUE(sheet);
  for (const auto& [name, part] : {std::pair{"Crossing sheet…", SheetPart::sheet}, {"Setup card…", SheetPart::card}}) {
    const Seen seen = preview(test, QString::fromUtf8(name));
    EXPECT_EQ(seen.pages, static_cast<int>(sheet_pages(*sheet, part)->size())) << name;
    EXPECT_GT(inked(seen.picture), 2000) << name;
  }
}

int complaints = 0;
void count_complaints(QtMsgType, const QMessageLogContext&, const QString& text) {
  if (text.contains(QLatin1String("Cannot be changed"))) ++complaints;
}

// Sheet and card have papers of their own: each page of a job keeps its size, and nobody complains.
TEST(Printing, PagesOfTwoSizes_KeepTheirs) {
  TestWindow test("house-service");
  ASSERT_TRUE(test.opened);
  Document& document = test.window.document();
  const auto sheet = sheet_of(document.crossing(), document.assessment(), document.tables(), UnitSystem::metric);
  ASSERT_TRUE(sheet);
  const auto pages = sheet_pages(*sheet, SheetPart::all);
  ASSERT_TRUE(pages);
  ASSERT_TRUE(std::any_of(pages->begin(), pages->end(),
                          [&](const Page& page) { return page.size_mm != pages->front().size_mm; }));
  complaints = 0;
  const auto before = qInstallMessageHandler(count_complaints);
  QTemporaryDir folder;
  QPrinter printer(QPrinter::HighResolution);
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(folder.filePath(QStringLiteral("job.pdf")));
  ASSERT_TRUE(print_pages(printer, *pages));
  const Seen seen = preview(test, QStringLiteral("All of it…"));
  qInstallMessageHandler(before);
  EXPECT_EQ(complaints, 0);
  EXPECT_EQ(seen.pages, static_cast<int>(pages->size()));

  QFile file(folder.filePath(QStringLiteral("job.pdf")));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromLatin1(file.readAll());
  static const QRegularExpression box(QStringLiteral("/MediaBox \\[0 0 ([0-9.]+) ([0-9.]+)\\]"));
  std::vector<QSizeF> sizes;
  for (auto it = box.globalMatch(text); it.hasNext();) {
    const auto match = it.next();
    constexpr double point_mm = 25.4 / 72;
    sizes.emplace_back(match.captured(1).toDouble() * point_mm, match.captured(2).toDouble() * point_mm);
  }
  ASSERT_EQ(sizes.size(), pages->size());
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    EXPECT_NEAR(sizes[i].width(), (*pages)[i].size_mm.width(), 0.5) << i;
    EXPECT_NEAR(sizes[i].height(), (*pages)[i].size_mm.height(), 0.5) << i;
  }
}

}  // namespace
}  // namespace burrow
