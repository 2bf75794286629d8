// The drawing page: what a plan and profile carries, and how large.

#include <QSet>

#include "burrow/base/decimal_mark.h"

#include "support/sheet_for_tests.h"
#include "views.h"

namespace burrow::test {
namespace {

Page front(const Judged& j, UnitSystem units = UnitSystem::metric, const char* paper = "a3") {
  return sheet_pages(sheet_for(j, units, paper), SheetPart::sheet)->front();
}

bool says(const Page& page, const QString& words) {
  return words_of({page}).contains(words);
}

// 2.5 mm for all texts, and more on a large paper.
TEST(SheetType, NoneIsSmallerThanAllowed) {
  for (const std::string& name : sample_names())
    for (const PaperKind& kind : paper_kinds)
      for (const SheetPart part : {SheetPart::sheet, SheetPart::working}) {
        const auto pages = *sheet_pages(sheet_for(judged_sample(name), kind.units, kind.paper), part);
        const double width = pages.front().size_mm.width();
        const double least = width > 800 ? 3.7 : width > 550 ? 3.1 : 2.5;
        for (const Page& page : pages)
          for (const PageItem& item : page.items)
            if (item.kind == PageItemKind::text && item.clip.isNull()) {  // the pictures of the pits have their own
              EXPECT_GE(item.style.size_mm, least - 1e-9)
                  << name << " " << kind.paper << ": " << item.text.toStdString();
            }
      }
}

// Widths of ISO 128 (from memory), 0.1 mm for the lines within tables.
TEST(SheetLines, WidthsOfTheStandard) {
  const Page page = front(judged_sample("house-service"));
  const QSet<int> allowed{10, 13, 18, 25, 35, 50, 70};
  for (const PageItem& item : page.items)
    if (item.kind != PageItemKind::text && item.stroke.width_mm > 0) {
      EXPECT_TRUE(allowed.contains(static_cast<int>(std::lround(item.stroke.width_mm * 100)))) << item.stroke.width_mm;
    }
}

TEST(SheetBand, LevelsAtFacesAndUtilities) {
  const Judged& j = judged_sample("house-service");
  const Page page = front(j);
  for (const char* row : {"ground, m", "axis, m", "grade"}) EXPECT_TRUE(says(page, QLatin1String(row))) << row;
  EXPECT_TRUE(says(page, QString::fromStdString(fixed_text(j.answer.bore.points.front().z_m, 2))));
  EXPECT_TRUE(says(page, QStringLiteral("14.00"))) << "chainage of the exit";
  // On a small paper as a table instead.
  const auto small = *sheet_pages(sheet_for(j, UnitSystem::metric, "a4"), SheetPart::sheet);
  EXPECT_TRUE(words_of(small).contains(QStringLiteral("Levels along the bore")));
  EXPECT_FALSE(says(small.front(), QStringLiteral("ground, m")));
}

// By hand: 14 m are 45.93 ft.
TEST(SheetStations, AsTheCountryWritesThem) {
  EXPECT_EQ(station_words(14, UnitSystem::metric), QStringLiteral("14.00"));
  EXPECT_EQ(station_words(14, UnitSystem::us), QStringLiteral("0+45.93"));
  EXPECT_EQ(station_words(0, UnitSystem::us), QStringLiteral("0+00.00"));
  EXPECT_EQ(station_words(-2, UnitSystem::us), QStringLiteral("−0+06.56"));
  EXPECT_EQ(station_words(30.4799, UnitSystem::us), QStringLiteral("1+00.00")) << "rounded before it is parted";
  EXPECT_TRUE(says(front(judged_sample("house-service"), UnitSystem::us, "tabloid"), QStringLiteral("0+")));
}

TEST(SheetTitle, ToolPipePermitsAndCoordinates) {
  Judged j = judged_sample("house-service");
  const QString words = words_of({front(j)});
  for (const char* what : {"client", "project", "location", "tool", "pipe", "height system"})
    EXPECT_TRUE(words.contains(QLatin1String(what))) << what;
  for (const SurfaceFeature& f : j.crossing.site.surface)
    if (!f.permit.empty()) {
      EXPECT_TRUE(words.contains(QString::fromStdString(f.permit).left(8))) << f.permit;
    }
  EXPECT_FALSE(words.contains(QStringLiteral("pit faces")));
  Georeference geo;
  geo.crs = "EPSG:25832";
  geo.origin = {691000, 5334000};
  geo.azimuth.set(Angle{0});
  geo.vertical = "DHHN2016";
  j.crossing.site.georeference = geo;
  const QString mapped = words_of({front(j)});
  EXPECT_TRUE(mapped.contains(QStringLiteral("DHHN2016")));
  EXPECT_TRUE(mapped.contains(QStringLiteral("N 5334014.00"))) << "the line runs north: the exit is 14 m on";
}

TEST(SheetLegend, OfAllThatIsDrawnAndNothingElse) {
  Judged j = judged_sample("house-service");
  const QString words = words_of({front(j)});
  for (const char* what :
       {"bore, hole as opened", "nine bores in ten", "ground", "boundary", "test hole, dug", "number in the table"})
    EXPECT_TRUE(words.contains(QLatin1String(what))) << what;
  j.crossing.site.boundaries.clear();
  EXPECT_FALSE(says(front(j), QStringLiteral("boundary")));
}

// Five pieces: their length on paper is what the number says at the scale of the sheet.
TEST(SheetBars, GroundBarIsToScale) {
  for (const PaperKind& kind : paper_kinds) {
    Sheet sheet = sheet_for(judged_sample("house-service"), kind.units, kind.paper);
    sheet.scale = kind.units == UnitSystem::us ? 240 : 200;
    const Page page = sheet_pages(sheet, SheetPart::sheet)->front();
    double black = 0;
    for (const PageItem& item : page.items)
      if (item.kind == PageItemKind::area && item.fill == QColor(Qt::black) && item.points.size() == 4 &&
          std::abs(item.points.boundingRect().height() - 1.5 * (item.stroke.width_mm / 0.18)) < 1e-6)
        black = item.points.boundingRect().width();
    ASSERT_GT(black, 0) << kind.paper;
    const double unit = kind.units == UnitSystem::us ? 304.8 : 1000;
    const double piece = black * sheet.scale / unit;  // 1, 2, 5 or ten times as much
    const double tens = std::pow(10, std::floor(std::log10(piece) + 1e-9));
    const double digit = piece / tens;
    EXPECT_TRUE(std::abs(digit - 1) < 1e-6 || std::abs(digit - 2) < 1e-6 || std::abs(digit - 5) < 1e-6) << piece;
  }
}

// The names of utilities stand on the profile where there are few of them.
TEST(SheetNames, OnTheProfile) {
  const Judged& j = judged_sample("house-service");
  const Page page = front(j);
  int named = 0;
  for (const Utility& u : j.crossing.site.utilities) named += says(page, QString::fromStdString(u.name).left(8));
  EXPECT_GE(named, static_cast<int>(j.crossing.site.utilities.size()) - 1);
}

TEST(SheetPaper, FourteenMetresAtFiftyOnA3) {
  Sheet sheet = sheet_for(judged_sample("house-service"), UnitSystem::metric, "a3");
  sheet.scale = 50;
  EXPECT_TRUE(sheet_pages(sheet, SheetPart::sheet));
}

// PDF/A-1 knows no transparency.
TEST(SheetPaper, EverythingIsOpaque) {
  for (const std::string& name : sample_names())
    for (const Page& page : *sheet_pages(sheet_for(judged_sample(name), UnitSystem::metric), SheetPart::all))
      for (const PageItem& item : page.items) {
        EXPECT_TRUE(!item.fill.isValid() || item.fill.alpha() == 255) << name;
        EXPECT_EQ(item.stroke.colour.alpha(), 255) << name;
      }
}

}  // namespace
}  // namespace burrow::test
