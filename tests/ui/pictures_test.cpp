// Pictures of the main states against those kept in tests/ui/pictures. A difference is a reason to look, not always a
// fault: `tests/renew-pictures` draws them anew, and whoever renews them looks at each.

#include <gtest/gtest.h>

#include <QDir>
#include <QPainter>
#include <QPushButton>
#include <vector>

#include "burrow/sheet/page_out.h"
#include "burrow/sheet/sheet.h"
#include "burrow/window/guided_crossing.h"
#include "support/picture_tiles.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

void expect_like_kept(const QImage& now, const QString& name) {
  const QImage picture = now.convertToFormat(QImage::Format_RGB32);
  const QString folder = QStringLiteral(BURROW_SOURCE_DIR "/tests/ui/pictures");
  const QString path = QDir(folder).filePath(name + QStringLiteral(".png"));
  if (qEnvironmentVariableIsSet("BURROW_RENEW_PICTURES")) {
    QDir().mkpath(folder);
    EXPECT_TRUE(picture.save(path, "PNG", 0)) << path.toStdString();
    return;
  }
  const QImage kept = QImage(path).convertToFormat(QImage::Format_RGB32);
  ASSERT_FALSE(kept.isNull()) << path.toStdString() << " is not there: run tests/renew-pictures and look at it";
  const std::vector<DifferingTile> found = differing_tiles(kept, picture);
  if (found.empty()) return;
  const QString seen = QDir(QDir::tempPath()).filePath(QStringLiteral("burrowline-") + name + QStringLiteral(".png"));
  with_frames(picture, found).save(seen);
  const QRect first = found.front().where;
  ADD_FAILURE() << name.toStdString() << ": " << found.size() << " squares differ, the first at " << first.x() << ", "
                << first.y() << " by " << found.front().pixels << " pixels; they are framed in " << seen.toStdString();
}

struct Shot : TestWindow {
  explicit Shot(const char* sample) : TestWindow(sample, {1200, 760}) {}
  void expect(const char* name) {
    settle(window);
    window.drawing().clearFocus();
    QCoreApplication::processEvents();
    expect_like_kept(window.grab().toImage(), QLatin1String(name));
  }
};

TEST(Pictures, Opened) {
  Shot("house-service").expect("opened");
  Shot dark("house-service");
  dark.window.set_dark(true);
  dark.window.set_units(UnitSystem::us);
  dark.window.drawing().zoom_to_fit();
  dark.expect("opened-dark-us");
  dark.window.set_dark(false);
}

TEST(Pictures, Finding_WithItsWorking) {
  Shot w("four-faults");
  w.window.findings().pick(0);
  w.expect("finding");
}

TEST(Pictures, Drag_WithItsGhost) {
  Shot w("house-service");
  const QPointF launch = w.window.drawing().place_of({ItemKind::launch, {}, -1});
  w.press(launch);
  for (int i = 1; i <= 5; ++i) w.move(launch + QPointF(0, 6 * i));
  w.expect("drag");
  w.release(launch + QPointF(0, 30));
}

TEST(Pictures, SixtyUtilities) {
  Shot("sixty-utilities").expect("sixty-utilities");
}

TEST(Pictures, Pages) {
  using Page = SideColumn::Page;
  Shot w("house-service");
  for (const auto& [page, name] : {std::pair{Page::path, "page-path"},
                                   {Page::utilities, "page-utilities"},
                                   {Page::pits, "page-pits"},
                                   {Page::pipe, "page-pipe"},
                                   {Page::air, "page-air"},
                                   {Page::run, "page-run-sheet"}}) {
    w.window.side().show_page(page);
    w.expect(name);
  }
}

TEST(Pictures, Practice_Revealed) {
  Shot w("lesson-level");
  w.window.side().show_page(SideColumn::Page::practice);
  PracticePanel& practice = w.window.side().practice();
  practice.refresh_now();
  QTest::mouseClick(practice.button(QStringLiteral("Start boring")), Qt::LeftButton);
  for (int i = 0; i < 30 && practice.run() && !practice.run()->over(); ++i)
    QTest::mouseClick(practice.button(QStringLiteral("Drive")), Qt::LeftButton);
  practice.finish_reveal();
  w.expect("practice");
}

TEST(Pictures, Guide) {
  GuidedCrossing guide(tables_for_tests(), Theme::light(), UnitSystem::metric, std::nullopt, nullptr);
  guide.show();
  guide.go_to(3);
  for (QPushButton* b : guide.findChildren<QPushButton*>())
    if (b->text().contains(QLatin1String("dd a line"))) b->click();
  settle(guide);
  expect_like_kept(guide.grab().toImage(), QStringLiteral("guide"));
}

TEST(Pictures, Paper) {
  Shot w("house-service");
  for (const auto& [part, name] : {std::pair{SheetPart::sheet, "sheet"}, {SheetPart::card, "card"}}) {
    const auto sheet = sheet_of(w.crossing(), w.window.document().assessment(), tables_for_tests(), UnitSystem::metric);
    ASSERT_TRUE(sheet);
    const Page page = sheet_pages(*sheet, part)->front();
    constexpr double px_per_mm = 3.2;
    QImage image((page.size_mm * px_per_mm).toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(px_per_mm, px_per_mm);
    paint_page(painter, page);
    painter.end();
    expect_like_kept(image, QString::fromLatin1(name));
  }
}

}  // namespace
}  // namespace burrow
