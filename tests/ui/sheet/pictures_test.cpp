// A picture of each kind of page, compared with the one that is kept, square by square: tests/renew-pictures makes them
// anew.

#include <QDir>
#include <QPainter>

#include "burrow/sheet/page_out.h"
#include "support/picture_tiles.h"
#include "support/sheet_for_tests.h"

namespace burrow::test {
namespace {

void expect_like_kept(const Page& page, const char* name) {
  constexpr double px_per_mm = 3.2;
  QImage picture((page.size_mm * px_per_mm).toSize(), QImage::Format_RGB32);
  picture.fill(Qt::white);
  QPainter painter(&picture);
  painter.scale(px_per_mm, px_per_mm);
  paint_page(painter, page);
  painter.end();
  const QString folder = QStringLiteral(BURROW_SOURCE_DIR "/tests/ui/pictures");
  const QString path = QDir(folder).filePath(QStringLiteral("paper-%1.png").arg(QLatin1String(name)));
  if (qEnvironmentVariableIsSet("BURROW_RENEW_PICTURES")) {
    EXPECT_TRUE(picture.save(path, "PNG", 0)) << path.toStdString();
    return;
  }
  const QImage kept = QImage(path).convertToFormat(QImage::Format_RGB32);
  ASSERT_FALSE(kept.isNull()) << path.toStdString() << " is not there: run tests/renew-pictures and look at it";
  const std::vector<DifferingTile> found = differing_tiles(kept, picture);
  if (found.empty()) return;
  const QString seen =
      QDir(QDir::tempPath()).filePath(QStringLiteral("burrowline-paper-%1.png").arg(QLatin1String(name)));
  with_frames(picture, found).save(seen);
  ADD_FAILURE() << name << ": " << found.size() << " squares differ, they are framed in " << seen.toStdString();
}

TEST(PaperPictures, EachKindOfPage) {
  const Judged& j = judged_sample("house-service");
  const auto sheet = *sheet_pages(sheet_for(j, UnitSystem::metric, "a4"), SheetPart::sheet);
  expect_like_kept(sheet[0], "drawing-a4");
  expect_like_kept(sheet[1], "tables");
  expect_like_kept(sheet_pages(sheet_for(j, UnitSystem::us, "tabloid"), SheetPart::sheet)->front(), "drawing-us");
  expect_like_kept(sheet_pages(sheet_for(j, UnitSystem::metric, "a4"), SheetPart::working)->front(), "calculation");
}

}  // namespace
}  // namespace burrow::test
