#pragma once
/// Plan and side elevation on the sheet, to scale. Frame lengths are millimetres on paper.

#include "burrow/drawing/frame.h"
#include "burrow/sheet/page.h"
#include "burrow/sheet/sheet.h"

namespace burrow {

/// A number in a circle that stands for a utility of the table.
struct Balloon {
  int number = 0;  ///< from 1, in the order of the file
  UtilityKind kind = UtilityKind::unknown;
  QPointF middle;   ///< on the sheet
  double to_x = 0;  ///< where its leader ends
};

struct SheetViews {
  Frame frame;
  double scale = 100;
  QRectF area;        ///< both views with rulers
  double sky_mm = 0;  ///< above the highest ground
  std::vector<Balloon> balloons;
};

/// Scales in use: metric 1:10 … ; of American units whole feet to the inch.   Evidence: SheetScale.*
std::vector<double> standard_scales(UnitSystem units);
/// "1 : 48 (1 in = 4 ft)".
QString scale_words(double scale, UnitSystem units);

/// Errors: the scale asked for is too large for the paper; names the largest standard one that fits.
Result<SheetViews> place_views(const Sheet& sheet, const QRectF& area);

void draw_side(Page& page, const Sheet& sheet, const SheetViews& views);
void draw_plan(Page& page, const Sheet& sheet, const SheetViews& views);

/// Colour and dash of a kind of utility on white paper.
Stroke utility_stroke(const Tables& tables, UtilityKind kind, double width_mm);
/// Where a utility is drawn in the side elevation: where it comes nearest to the bore, else where it meets the line.
struct SidePlace {
  double station_m = 0;
  std::optional<double> elevation_m;
};
SidePlace side_place(const Sheet& sheet, const Utility& utility);

/// Least room between the middles of two balloons of a row.
inline constexpr double balloon_pitch_mm = 5.2;
inline constexpr double balloon_radius_mm = 2.2;
inline const TextStyle label_style{2.2};

}  // namespace burrow
