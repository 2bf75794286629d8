/// The mark at an end of a line that a finding asks about.

#include <gtest/gtest.h>

#include <QPainter>

#include "burrow/drawing/scene.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

// Our own mark: only what the findings say is drawn, at the place they say.
TEST(OpenEnds, DrawnWhereAFindingAsks_InBothViews) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  Style style;
  Frame frame;
  lay_out(frame, QRectF(0, 0, 1160, 820), 0.58, lane_sizes(style, 820));
  fit(frame, document.crossing(), document.assessment(), true);
  const auto image = [&](const Assessment& assessment, bool plan) {
    QImage all(1160, 820, QImage::Format_RGB32);
    all.fill(style.theme.paper);
    QPainter painter(&all);
    const Scene scene{document.crossing(), assessment, document.tables(), frame, style, Interaction{}};
    if (plan)
      paint_open_ends_plan(painter, scene);
    else
      paint_open_ends_side(painter, scene);
    return all;
  };
  Assessment silent = document.assessment();
  std::erase_if(silent.findings, [](const Finding& f) { return f.code == "missing.utility-course"; });
  Assessment asks = silent;
  Finding finding;
  finding.code = "missing.utility-course";
  finding.subject = "u2";
  finding.missing = true;
  finding.station_m = 6;
  finding.offset_m = 2;
  finding.elevation_m = 101;
  asks.findings.push_back(finding);
  for (const bool plan : {true, false}) {
    const QImage without = image(silent, plan), with = image(asks, plan);
    QImage empty = without;
    empty.fill(style.theme.paper);
    EXPECT_EQ(without, empty) << "nothing is asked, nothing is drawn";
    ASSERT_NE(with, without);
    const QPointF at = plan ? frame.above(6, 2) : frame.side(6, 101);
    QRectF changed;
    for (int y = 0; y < with.height(); ++y)
      for (int x = 0; x < with.width(); ++x)
        if (with.pixel(x, y) != without.pixel(x, y)) changed |= QRectF(x, y, 1, 1);
    EXPECT_TRUE(changed.contains(at));
    EXPECT_LT(changed.width(), 3 * style.text) << "small";
  }
  asks.findings.back().elevation_m.reset();
  EXPECT_EQ(image(asks, false), image(silent, false)) << "no level is made up for it";
}

}  // namespace
}  // namespace burrow
