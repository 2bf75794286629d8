// Printing, driven as a person does: the entry of the menu, the preview, its pages.

#include <gtest/gtest.h>

#include <QMenu>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QTimer>

#include "burrow/sheet/sheet.h"
#include "window_for_tests.h"

namespace burrow {
namespace {

QAction* entry(MainWindow& window, const QString& menu, const QString& name) {
  for (QMenu* m : window.findChildren<QMenu*>()) {
    if (m->title().remove(QLatin1Char('&')) != menu) continue;
    for (QAction* action : m->actions())
      if (action->text().remove(QLatin1Char('&')) == name) return action;
  }
  ADD_FAILURE() << "no entry " << name.toStdString();
  return nullptr;
}

struct Seen {
  int pages = 0;
  QImage picture;
};

/// Opens the preview, looks at it, closes it.
Seen preview(TestWindow& test, const QString& name) {
  Seen seen;
  QAction* action = entry(test.window, QStringLiteral("Print"), name);
  if (!action) return seen;
  QTimer look;
  QObject::connect(&look, &QTimer::timeout, [&] {
    auto* dialog = test.window.findChild<QPrintPreviewDialog*>();
    auto* pages = dialog ? dialog->findChild<QPrintPreviewWidget*>() : nullptr;
    if (!pages || !dialog->isVisible()) return;
    look.stop();
    dialog->resize(1100, 800);
    pages->setViewMode(QPrintPreviewWidget::AllPagesView);
    pages->fitInView();
    seen.pages = pages->pageCount();
    seen.picture = dialog->grab().toImage();
    if (const QString keep = qEnvironmentVariable("BURROW_KEEP_PREVIEW"); !keep.isEmpty()) seen.picture.save(keep);
    dialog->reject();
  });
  look.start(20);
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

}  // namespace
}  // namespace burrow
