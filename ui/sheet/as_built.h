#pragma once
/// The bore as it was built: what its drawing and its tables share.

#include "burrow/day/day.h"
#include "burrow/sheet/page.h"
#include "burrow/sheet/sheet.h"

namespace burrow {

struct AsBuilt {
  const Sheet& sheet;  ///< of the layout that was bored, with its assessment
  const DayRecord& record;
  const DayAnswer& day;
};

/// The believed place of the nose at an arc length of the smoothed path.
PathPoint built_at(const BorePath& path, double s_m);
/// Nose of each reading; empty where it has none and none came before it. What is asked about or struck through puts no
/// nose anywhere.
std::vector<std::optional<double>> noses_of(const AsBuilt& built);
/// Where somebody read how far aside, and how high, the bore lies. Further than two marks from such a reading it is
/// predicted, not measured; a grade, a heading and a hose mark read no place.   Evidence: AsBuilt.*
struct MeasuredPlaces {
  std::vector<double> aside_m, height_m;       ///< arc lengths
  bool out_aside = false, out_height = false;  ///< it was measured where it came out
  [[nodiscard]] bool any() const { return !aside_m.empty() || !height_m.empty(); }
  [[nodiscard]] bool aside(double s_m) const;
  [[nodiscard]] bool height(double s_m) const;
};
MeasuredPlaces measured_places(const AsBuilt& built);
/// Half of nine in ten of the clear gap to a utility, of both their spreads.
double gap_spread_m(const PathPoint& bore, const UtilityAnswer& utility);
/// Up to where the hole was made: everything behind the furthest nose.
std::vector<PathPoint> built_points(const AsBuilt& built);

/// Plan and side elevation into an area of the page, to the largest standard scale that fits; gives the scale.
/// Errors: no standard scale fits the paper.
Result<double> draw_as_built(Page& page, const AsBuilt& built, const QRectF& area);

/// Colours of what was built, for drawing and legend alike.
struct BuiltStyle {
  QColor path{0x10, 0x50, 0x9c}, band{0x10, 0x50, 0x9c, 46}, planned{0x90, 0x30, 0x20}, stop{0xb0, 0x18, 0x18};
};
/// The sign of a kind of reading; false: it stands in the table alone.
bool draw_reading_sign(Paper& paper, ReadingKind kind, const QPointF& at);

}  // namespace burrow
