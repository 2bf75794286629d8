#pragma once
/// How the views lie on the screen or on paper: lanes for findings and for what lies on top, the side elevation, a lane
/// for the names of utilities, on demand the strip that tells why the tool turns, the station ruler, the plan; one
/// horizontal scale for all. Lengths in the painter's own units ("px"): screen pixels or millimetres.

#include <QPointF>
#include <QRectF>
#include <vector>

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

enum class Pane { none, lane, elevation, turning, ruler, plan };

struct Frame {
  QRectF flags;      ///< lane of the findings; without height where there is none, as the other lanes
  QRectF on_top;     ///< lane of what lies on top of the ground
  QRectF elevation;  ///< area of the side elevation
  QRectF names;      ///< lane of the utilities
  QRectF turning;    ///< why the tool turns; without height when off
  QRectF ruler;
  QRectF plan;
  double px_per_m = 40;
  double exaggeration = 1;     ///< of heights in the side elevation
  double left_station_m = 0;   ///< station at the left edge
  double top_elevation_m = 0;  ///< elevation at the top edge of the side elevation
  double top_offset_m = 0;     ///< offset at the top edge of the plan (left is up)

  [[nodiscard]] double px_x(double station_m) const {
    return elevation.left() + (station_m - left_station_m) * px_per_m;
  }
  [[nodiscard]] double px_z(double elevation_m) const {
    return elevation.top() + (top_elevation_m - elevation_m) * px_per_m * exaggeration;
  }
  [[nodiscard]] double px_y(double offset_m) const { return plan.top() + (top_offset_m - offset_m) * px_per_m; }
  [[nodiscard]] double station_m(double px) const { return left_station_m + (px - elevation.left()) / px_per_m; }
  [[nodiscard]] double elevation_m(double px) const {
    return top_elevation_m - (px - elevation.top()) / (px_per_m * exaggeration);
  }
  [[nodiscard]] double offset_m(double px) const { return top_offset_m - (px - plan.top()) / px_per_m; }
  [[nodiscard]] QPointF side(double station, double elev) const { return {px_x(station), px_z(elev)}; }
  [[nodiscard]] QPointF above(double station, double offset) const { return {px_x(station), px_y(offset)}; }
  [[nodiscard]] double right_station_m() const { return station_m(elevation.right()); }
  [[nodiscard]] Pane pane_at(const QPointF& p) const;

  /// Changes the scale about a point that stays where it is.
  void zoom(const QPointF& at, double factor);
  void pan(const QPointF& by);
  bool operator==(const Frame&) const = default;
};

/// Heights of what stands over, between and under the views, and the width of the gutter at their left.
struct LaneSizes {
  double gutter = 0, flags = 0, on_top = 0, names = 0, turning = 0, ruler = 0;
};

/// Where there is no height for both views, one at a time.
enum class Views { both, side, plan };

/// Divides `area` into lanes and panes, from above: findings, on top, side elevation, utilities, strip, ruler, plan.
/// `split` is the share of the side elevation of what the lanes leave. The strip gets at most 22 % of the height. A
/// view that is not shown has no height.   Evidence: Heights.*, Folding.*
void lay_out(Frame& frame, const QRectF& area, double split, const LaneSizes& lanes, Views views = Views::both);

/// The share of the side elevation that brings the middle of the ruler to the height `y`; the inverse of `lay_out`.
double split_at(const Frame& frame, double y);

/// The levels worth showing: ground, pits, the bore with its spread, utilities near it, water near it.
struct LevelBand {
  double low_m = 0, high_m = 1;
};
LevelBand levels_to_show(const Crossing& crossing, const Assessment& assessment, double from_m, double to_m);

/// Factors by which heights may be exaggerated: round ones, which can be said.
inline constexpr double height_factors[] = {1, 1.5, 2, 2.5, 3, 4, 5};

/// Scale and position that show the whole bore with both pits. `automatic`: the largest factor of heights at which the
/// levels worth showing still fit; otherwise the factor stays.   Evidence: Heights.*
void fit(Frame& frame, const Crossing& crossing, const Assessment& assessment, bool automatic);

/// Heights exaggerated until so small a miss can be seen: the smallest round factor, not below the one it has, at which
/// it is `least_miss_px` high, as far as levels from low to high still fit. These then stand in the middle. False: it
/// could be seen already, or no greater factor fits.   Evidence: Heights.Miss_*
inline constexpr double least_miss_px = 60;
bool raise_heights(Frame& frame, double miss_m, const LevelBand& shown);

/// Round tick spacing (1, 2, 5 × 10ⁿ of the shown unit) at least `least_px` apart; `unit_m` is the shown unit in
/// metres.
double tick_step(double px_per_m, double least_px, double unit_m);
std::vector<double> ticks(double from, double to, double step);

}  // namespace burrow
