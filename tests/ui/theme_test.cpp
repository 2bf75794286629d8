/// Colours: contrast by WCAG 2.1 (W3C Recommendation, success criteria 1.4.3 and 1.4.11: 4.5:1 for text, 3:1 for marks;
/// from memory).

#include <gtest/gtest.h>

#include "burrow/drawing/frame.h"
#include "burrow/drawing/theme.h"
#include "window_for_tests.h"

namespace burrow {
namespace {

TEST(Contrast, Wcag_BlackOnWhiteIs21) {
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
}

TEST(Contrast, Wcag_TextReads) {
  for (const Theme& t : {Theme::light(), Theme::night()}) {
    for (const QColor& ground : {t.paper, t.panel, t.field}) {
      EXPECT_GE(contrast(t.ink, ground), 7.0);
      EXPECT_GE(contrast(t.ink_soft, ground), 4.5);
    }
    for (const Severity s : {Severity::stop, Severity::caution, Severity::note})
      EXPECT_GE(contrast(t.severity(s), t.on_severity(s)), 4.5);
    for (const Verdict v : {Verdict::stop, Verdict::incomplete, Verdict::caution, Verdict::within_limits})
      EXPECT_GE(contrast(t.verdict(v), t.on_verdict(v)), 4.5);
  }
}

TEST(Contrast, Wcag_UtilityColoursShow) {
  for (const UtilityKindRow& row : tables_for_tests().utilities) {
    EXPECT_GE(contrast(QColor(QString::fromStdString(row.colour)), Theme::light().paper), 3.0) << row.name;
    EXPECT_GE(contrast(QColor(QString::fromStdString(row.colour_dark)), Theme::night().paper), 3.0) << row.name;
  }
}

TEST(Frame, MapsThereAndBack) {
  Frame f;
  lay_out(f, QRectF(0, 0, 1000, 700), 0.6, 50, 30);
  f.px_per_m = 37;
  f.exaggeration = 2.5;
  f.left_station_m = -3;
  f.top_elevation_m = 104;
  f.top_offset_m = 4;
  EXPECT_NEAR(f.station_m(f.px_x(7.25)), 7.25, 1e-12);
  EXPECT_NEAR(f.elevation_m(f.px_z(101.5)), 101.5, 1e-12);
  EXPECT_NEAR(f.offset_m(f.px_y(-1.25)), -1.25, 1e-12);
}

TEST(Ticks, AreRoundInTheShownUnit) {
  EXPECT_DOUBLE_EQ(tick_step(50, 60, 1.0), 2.0);
  EXPECT_NEAR(tick_step(50, 60, 0.3048), 5 * 0.3048, 1e-12);
  EXPECT_EQ(ticks(0.9, 3.1, 1.0), (std::vector<double>{1, 2, 3}));
}

}  // namespace
}  // namespace burrow
