#pragma once
/// Plan and side elevation on the sheet, to scale. Frame lengths are millimetres on paper.

#include "burrow/drawing/frame.h"
#include "burrow/sheet/page.h"
#include "burrow/sheet/sheet.h"
#include "flow.h"

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
  QRectF band;        ///< of levels below the side elevation; null where the paper has no room for it
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
inline const TextStyle label_style{2.5};

// Colours and widths of what the legend explains. Widths are those of ISO 128: 0.13, 0.18, 0.25, 0.35, 0.5, 0.7 (from
// memory). Tints are opaque: what lies below is drawn after them.
inline const QColor bore_red(0xb0, 0x20, 0x10), band_tint(0xf9, 0xe3, 0xde), band_edge(0xd8, 0x4a, 0x2a);
inline const QColor zone_red(0xb0, 0x18, 0x18), line_grey(0x55, 0x55, 0x55), tree_green(0x20, 0x80, 0x30);
inline const QColor surface_grey(0xec, 0xec, 0xec), building_grey(0xb8, 0xb8, 0xb8), ground_tint(0xfa, 0xf8, 0xf4);

/// A building, or what carries one.
bool is_built(SurfaceKind kind);
void test_hole_sign(Paper& paper, const QPointF& at);
void exposure_sign(Paper& paper, const QPointF& at);

/// A station as the sheet's country writes it: "14.00", of American units "0+45.93".   Evidence: SheetStations.*
QString station_words(double station_m, UnitSystem units);

/// Levels along the bore: where there is something to tell. Heights of the rows together, 0: no room.
double band_height(double area_height_mm);
void draw_band(Page& page, const Sheet& sheet, const SheetViews& views);
/// As a table, for a paper that is too small for the band.
void add_levels(Flow& flow, const Sheet& sheet);

}  // namespace burrow
