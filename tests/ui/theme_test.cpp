/// Colours: contrast by WCAG 2.1 (W3C Recommendation, success criteria 1.4.3 and 1.4.11: 4.5:1 for text, 3:1 for marks;
/// from memory).

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/drawing/frame.h"
#include "burrow/drawing/theme.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

TEST(Contrast, Wcag_BlackOnWhiteIs21) {
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
}

TEST(Contrast, Wcag_TextReads) {
  for (const Theme& t : {Theme::light(), Theme::night()}) {
    for (const QColor& ground : {t.paper, t.panel, t.field, t.raised, t.select}) {
      EXPECT_GE(contrast(t.ink, ground), 7.0);
      EXPECT_GE(contrast(t.ink_soft, ground), 4.5);
    }
    for (const Severity s : {Severity::stop, Severity::caution, Severity::note})
      EXPECT_GE(contrast(t.severity(s), t.on_severity(s)), 4.5);
    for (const Verdict v : {Verdict::stop, Verdict::incomplete, Verdict::caution, Verdict::within_limits})
      EXPECT_GE(contrast(t.verdict(v), t.on_verdict(v)), 4.5);
  }
}

// In bright sun half of the contrast is lost to glare: 7:1 for every text (WCAG 1.4.6, from memory), and what is a mark
// at 4.5:1.
TEST(Contrast, Sunlight_EveryTextAtSeven) {
  const Theme t = Theme::sunlight();
  for (const QColor& ground : {t.paper, t.panel, t.field, t.raised, t.select})
    for (const QColor& ink : {t.ink, t.ink_soft, t.stop, t.fine, t.focus, t.note})
      EXPECT_GE(contrast(ink, ground), 7.0);
  for (const Severity s : {Severity::stop, Severity::caution, Severity::note})
    EXPECT_GE(contrast(t.severity(s), t.on_severity(s)), 7.0);
  for (const Verdict v : {Verdict::stop, Verdict::incomplete, Verdict::caution, Verdict::within_limits})
    EXPECT_GE(contrast(t.verdict(v), t.on_verdict(v)), 7.0);
  EXPECT_GE(contrast(t.line, t.panel), 4.5);
}

TEST(Contrast, Wcag_UtilityColoursShow) {
  for (const UtilityKindRow& row : tables_for_tests().utilities) {
    EXPECT_GE(contrast(QColor(QString::fromStdString(row.colour)), Theme::light().paper), 3.0) << row.name.english();
    EXPECT_GE(contrast(QColor(QString::fromStdString(row.colour_dark)), Theme::night().paper), 3.0)
        << row.name.english();
  }
}

/// How a colour looks without the cones for red, or for green. Source: Machado, Oliveira, Fernandes 2009, "A
/// physiologically-based model for simulation of color vision deficiency", IEEE TVCG 15(6), matrices for severity 1.0
/// in linear RGB (second-hand, as restated by open code; each row adds up to 1).
using Matrix = std::array<std::array<double, 3>, 3>;
constexpr Matrix sees_all{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
constexpr Matrix without_red{
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix without_green{
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};

QColor seen(const QColor& colour, const Matrix& eye) {
  const auto linear = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
  const auto shown = [](double v) {
    v = std::clamp(v, 0.0, 1.0);
    return v <= 0.0031308 ? 12.92 * v : 1.055 * std::pow(v, 1 / 2.4) - 0.055;
  };
  const double in[3] = {linear(colour.redF()), linear(colour.greenF()), linear(colour.blueF())};
  double out[3] = {};
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t k = 0; k < 3; ++k) out[row] += eye[row][k] * in[k];
  return QColor::fromRgbF(static_cast<float>(shown(out[0])), static_cast<float>(shown(out[1])),
                          static_cast<float>(shown(out[2])));
}

std::vector<QColor> grounds(const Theme& theme) {
  std::vector<QColor> all{theme.paper, theme.sky, theme.panel, theme.field};
  for (const SoilClass& soil : tables_for_tests().soils) all.push_back(soil_fill(soil.id, theme).tint);
  return all;
}

TEST(ColourBlind, Machado2009_GreyStaysGrey) {
  for (const Matrix& eye : {without_red, without_green})
    for (const QColor& grey : {QColor(Qt::black), QColor(127, 127, 127), QColor(Qt::white)}) {
      const QColor now = seen(grey, eye);
      EXPECT_NEAR(now.redF(), grey.redF(), 0.002);
      EXPECT_NEAR(now.greenF(), grey.greenF(), 0.002);
      EXPECT_NEAR(now.blueF(), grey.blueF(), 0.002);
    }
  EXPECT_LT(contrast(seen(Qt::red, without_red), Qt::black), contrast(Qt::red, Qt::black)) << "red darkens without it";
}

TEST(ColourBlind, TextAndLinesReadOnEveryGround) {
  for (const Theme& t : {Theme::light(), Theme::night()})
    for (const Matrix& eye : {sees_all, without_red, without_green})
      for (const QColor& ground : grounds(t)) {
        for (const QColor& text : {t.ink, t.ink_soft})
          EXPECT_GE(contrast(seen(text, eye), seen(ground, eye)), 4.5)
              << text.name().toStdString() << " on " << ground.name().toStdString();
        for (const QColor& line :
             {t.ground, t.bore, t.water, t.road, t.ghost, t.focus, t.stop, t.caution_line, t.note, t.fine, t.band})
          EXPECT_GE(contrast(seen(line, eye), seen(ground, eye)), 3.0)
              << line.name().toStdString() << " on " << ground.name().toStdString();
      }
}

// Words on coloured blocks, for all eyes.
TEST(ColourBlind, WordsOnSeveritiesRead) {
  for (const Theme& t : {Theme::light(), Theme::night()})
    for (const Matrix& eye : {without_red, without_green}) {
      for (const Severity s : {Severity::stop, Severity::caution, Severity::note})
        EXPECT_GE(contrast(seen(t.severity(s), eye), seen(t.on_severity(s), eye)), 4.5);
      for (const Verdict v : {Verdict::stop, Verdict::incomplete, Verdict::caution, Verdict::within_limits})
        EXPECT_GE(contrast(seen(t.verdict(v), eye), seen(t.on_verdict(v), eye)), 4.5);
    }
}

// Colour is never the only carrier: what looks alike without red or green differs in letter, and its line in dash.
TEST(ColourBlind, UtilitiesDifferInLetterAndDash) {
  const auto& rows = tables_for_tests().utilities;
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      EXPECT_NE(rows[i].letter_code, rows[j].letter_code);
      EXPECT_NE(rows[i].dash, rows[j].dash) << rows[i].name.english() << " " << rows[j].name.english();
    }
}

TEST(Frame, MapsThereAndBack) {
  Frame f;
  LaneSizes lanes;
  lanes.gutter = 50;
  lanes.ruler = 30;
  lay_out(f, QRectF(0, 0, 1000, 700), 0.6, lanes);
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
