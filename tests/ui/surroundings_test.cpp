/// Boundaries, trees, machines and trenches, and the map: each can be added, typed and taken out, and what was only
/// added does not look harmless.

#include "burrow/document/surroundings.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>

#include "burrow/check/assess.h"
#include "burrow/document/map_fields.h"
#include "burrow/file/crossing_file.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/corner_form.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct SiteWindow : TestWindow {
  SiteWindow() : TestWindow("house-service") {
    window.side().show_page(SideColumn::Page::surroundings);
    settle(window);
  }
  SurroundingsPanel& page() { return window.side().surroundings(); }
  int steps() { return window.document().undo_stack().index(); }
  static void type(QLineEdit* entry, const char* text) {
    entry->setFocus();
    entry->selectAll();
    QTest::keyClicks(entry, QString::fromUtf8(text));
    QTest::keyClick(entry, Qt::Key_Return);
  }
};

TEST(SurroundingsPage, EachKind_AddedTypedTakenOut_OneStepEach) {
  SiteWindow w;
  const auto before = surroundings(w.crossing()).size();
  for (const auto& [kind, word] : EnumNames<AroundKind>::list) {
    const int steps = w.steps();
    QTest::mouseClick(w.page().button(static_cast<std::size_t>(kind)), Qt::LeftButton);
    ASSERT_EQ(w.steps(), steps + 1) << word;
    ASSERT_EQ(w.page().picked().kind, kind);
    settle(w.window);
    SiteWindow::type(w.page().name()->entry(QStringLiteral("name")), "a name of its own");
    EXPECT_EQ(*around_name(w.page().picked())(w.crossing()), "a name of its own");
    for (int row = 0; row < w.page().values()->count(); ++row) {
      const int then = w.steps();
      SiteWindow::type(w.page().values()->entry(row), "3.5");
      EXPECT_EQ(w.steps(), then + 1) << word << " " << row << w.page().values()->complaint(row).toStdString();
    }
    if (w.page().corners()->isVisible()) {
      const std::size_t corners = w.page().corners()->list()->cards().size();
      SiteWindow::type(w.page().corners()->values()->entry(0), "4.25");
      QTest::mouseClick(w.page().corners()->add(), Qt::LeftButton);
      EXPECT_EQ(w.page().corners()->list()->cards().size(), corners + 1) << word;
      QTest::mouseClick(w.page().corners()->remove(), Qt::LeftButton);
      EXPECT_EQ(w.page().corners()->list()->cards().size(), corners) << word;
      const PlanLine* line = around_line(w.page().picked())(w.crossing());
      ASSERT_TRUE(line);
      EXPECT_EQ(line->front().x_m, 4.25) << word;
    }
    const Result<Crossing> again = read_crossing(write_crossing(w.crossing()), tables_for_tests());
    ASSERT_TRUE(again) << word << ": " << again.error().english();
    EXPECT_EQ(again->site, w.crossing().site) << word;
  }
  EXPECT_EQ(surroundings(w.crossing()).size(), before + 4);
  while (surroundings(w.crossing()).size() > before) {
    const auto all = surroundings(w.crossing()).size();
    QTest::mouseClick(w.page().button(4), Qt::LeftButton);
    ASSERT_EQ(surroundings(w.crossing()).size(), all - 1);
    settle(w.window);
  }
}

// What was only added, and not yet typed, never makes the verdict milder.
TEST(Surroundings, Added_NeverLooksBetter) {
  const auto rank = [](Verdict v) {
    return v == Verdict::stop ? 3 : v == Verdict::incomplete ? 2 : v == Verdict::caution ? 1 : 0;
  };
  for (const char* sample : {"house-service", "car-park-duct", "first-lesson"}) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    for (const auto& [kind, word] : EnumNames<AroundKind>::list) {
      Crossing with = document.crossing();
      add_around(with, kind);
      EXPECT_GE(rank(assess(with, tables_for_tests()).verdict), rank(document.assessment().verdict))
          << sample << " " << word;
    }
  }
}

TEST(Surroundings, Corner_HalfwayToTheNext_OrOnAsBefore) {
  PlanLine line{{0, 0}, {4, 2}};
  add_corner(line, 0);
  ASSERT_EQ(line.size(), 3u);
  EXPECT_EQ(line[1], (PlanPoint{2, 1}));
  add_corner(line, 2);
  EXPECT_EQ(line[3], (PlanPoint{6, 3}));
  PlanLine none;
  add_corner(none, 0);
  EXPECT_EQ(none.size(), 1u);
}

TEST(MapFields, MadeByTheFirstEntry_GoneWithTheLast) {
  Crossing c;
  EXPECT_FALSE(c.site.georeference);
  for (const Field& field : map_fields(c)) EXPECT_FALSE(field.value) << "not known is not 0";
  map_fields(c)[0].apply(c, 500'123.5);
  ASSERT_TRUE(c.site.georeference);
  EXPECT_EQ(c.site.georeference->origin.x_m, 500'123.5);
  map_fields(c)[2].apply(c, 0.5);
  EXPECT_EQ(c.site.georeference->azimuth->rad, 0.5);
  set_map_text(c, &Georeference::crs, "EPSG:25832");
  EXPECT_EQ(c.site.georeference->crs, "EPSG:25832");
  set_map_text(c, &Georeference::crs, "");
  map_fields(c)[2].apply(c, std::nullopt);
  map_fields(c)[0].apply(c, std::nullopt);
  EXPECT_FALSE(c.site.georeference);
  set_map_text(c, &Georeference::vertical, "");
  EXPECT_FALSE(c.site.georeference);
}

TEST(SurfacePage, FoundingAndPressure_CanBeTyped) {
  Crossing c;
  SurfaceFeature house;
  house.id = "f1";
  house.kind = SurfaceKind::building;
  c.site.surface = {house};
  int met = 0;
  for (const Field& field : fields_of(c, {ItemKind::surface, "f1", -1})) {
    if (field.label == "founding level") field.apply(c, 99.2), ++met;
    if (field.label == "pressure under its footing") field.apply(c, 120e3), ++met;
  }
  EXPECT_EQ(met, 2);
  EXPECT_EQ(c.site.surface[0].founding_elevation->m, 99.2);
  EXPECT_EQ(c.site.surface[0].bearing_pressure->Pa, 120e3);
}

}  // namespace
}  // namespace burrow
