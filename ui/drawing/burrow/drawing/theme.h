#pragma once
/// Colours and type of the drawing, light and dark. Utility colours come from the tables (uniform colour code).

#include <QColor>
#include <QFont>
#include <QString>
#include <string_view>

#include "burrow/base/finding.h"
#include "burrow/check/assessment.h"

namespace burrow {

struct Theme {
  bool dark = false;
  QColor paper;     ///< ground of the drawing
  QColor sky;       ///< above the ground line
  QColor panel;     ///< ground of panels
  QColor field;     ///< ground of entries and list rows
  QColor raised;    ///< ground of the lanes over and under the side elevation
  QColor select;    ///< ground of a pressed tool, and of the readout
  QColor line;      ///< hairlines between parts
  QColor ink;       ///< text and main lines
  QColor ink_soft;  ///< secondary text; passes 4.5:1 on paper
  QColor grid;      ///< station lines
  QColor ground;    ///< the ground line
  QColor bore;      ///< the predicted path
  QColor band;      ///< its spread, laid in three strengths
  QColor water;
  QColor road;
  QColor pit;                                    ///< inside of a pit
  QColor ghost;                                  ///< the state before a drag
  QColor focus;                                  ///< picked thing and keyboard focus
  QColor stop, caution, note, fine;              ///< severities; `fine` for within limits
  QColor caution_line;                           ///< thin lines of a caution, and the rim of its mark
  QColor on_stop, on_caution, on_note, on_fine;  ///< text on those

  static Theme light();
  static Theme night();
  /// For bright sun: white grounds, black ink, dark signals; every text at 7:1 or more.   Evidence: Contrast.Sunlight_*
  static Theme sunlight();
  [[nodiscard]] QColor severity(Severity s) const;
  [[nodiscard]] QColor on_severity(Severity s) const;
  [[nodiscard]] QColor verdict(Verdict v) const;
  [[nodiscard]] QColor on_verdict(Verdict v) const;
};

/// How a soil is filled: a tint and a kind of mark (second cue beside the colour).
enum class SoilMark { dashes, dots, rings, crosses, strokes, tufts };
struct SoilFill {
  QColor tint;
  SoilMark mark = SoilMark::dashes;
};
SoilFill soil_fill(std::string_view soil, const Theme& theme);

/// Colours that tell the regions of a map apart, told apart also by people who see few colours: hue and lightness
/// differ from one to the next. The last stands for all others.
inline constexpr int region_colours = 8;
QColor region_colour(int number, const Theme& theme);

/// Registers the bundled typeface; the family name to use. Safe to call often.
QString register_typeface();
QFont drawing_font(double pixels, QFont::Weight weight = QFont::Normal);

/// WCAG 2 contrast ratio of two opaque colours. Text wants 4.5, lines and marks 3: on paper, panels, entries and on
/// every soil, also as seen without red or green cones.   Evidence: Contrast.*, ColourBlind.*
double contrast(const QColor& a, const QColor& b);

}  // namespace burrow
