/// Names beside the marks of utilities: none over another, those that matter first, letters where it is crowded.

#include "burrow/drawing/utility_names.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/window_for_tests.h"

namespace burrow {
namespace {

Scene shown(TestWindow& w, const Interaction& focus = {}) {
  DrawingView& drawing = w.window.drawing();
  Scene scene{
      w.crossing(), w.window.document().assessment(), w.window.document().tables(), drawing.frame(), drawing.style(),
      focus};
  scene.dimensions = dimension_lines(scene);
  return scene;
}

TEST(UtilityNames, NoneLiesOverAnotherOrADimension) {
  for (const char* sample : {"house-service", "four-faults", "sixty-utilities", "rail-siding"})
    for (const double factor : {0.4, 1.0, 3.0}) {
      TestWindow w(sample);
      w.window.drawing().zoom_by(factor);
      const Scene scene = shown(w);
      const auto names = place_utility_names(scene);
      for (std::size_t i = 0; i < names.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) EXPECT_FALSE(names[i].box.intersects(names[j].box)) << sample;
        for (const DimensionLine& line : scene.dimensions) {
          if (line.pane == Pane::elevation) {
            EXPECT_FALSE(names[i].box.intersects(line.label)) << sample;
          }
        }
      }
    }
}

TEST(UtilityNames, SixtyOfThem_LettersButForThoseThatMatter) {
  TestWindow w("sixty-utilities");
  ASSERT_GE(w.crossing().site.utilities.size(), 60u);
  Interaction focus;
  focus.picked = {ItemKind::utility, w.crossing().site.utilities.back().id, -1};
  const Scene scene = shown(w, focus);
  const auto names = place_utility_names(scene);
  ASSERT_GT(names.size(), 10u);
  ASSERT_EQ(names.front().id, focus.picked.id) << "what is picked comes first";
  EXPECT_TRUE(names.front().whole);
  const auto& findings = scene.assessment.findings;
  for (const UtilityName& name : names) {
    const bool matters =
        name.id == focus.picked.id || std::any_of(findings.begin(), findings.end(), [&](const Finding& f) {
          return f.subject == name.id && f.severity != Severity::note;
        });
    if (name.whole) {
      EXPECT_TRUE(matters) << name.text.toStdString();
    }
    if (!matters) {
      EXPECT_LE(name.text.size(), 2) << name.text.toStdString();
    }
  }
}

TEST(UtilityNames, LongName_LosesItsMiddleAndKeepsItsEnds) {
  TestWindow w("house-service");
  Crossing c = w.crossing();
  c.site.utilities = {c.site.utilities.front()};
  c.site.utilities.front().name = "high pressure transmission main, north side";
  w.window.document().start_from(c, false);
  const auto names = place_utility_names(shown(w));
  ASSERT_EQ(names.size(), 1u);
  EXPECT_LE(names.front().box.width(), w.window.drawing().style().text * 19 + 8);
  EXPECT_TRUE(names.front().text.contains(QChar(0x2026)));
}

}  // namespace
}  // namespace burrow
