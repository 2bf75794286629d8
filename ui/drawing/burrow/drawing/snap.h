#pragma once
/// Places to which a drag is drawn, each with its reason: an edge, a level, just clear of a utility. They are found
/// once, at the press; the drag then only compares numbers.

#include <QString>
#include <vector>

#include "burrow/drawing/move.h"

class QPainter;

namespace burrow {

struct Scene;

struct SnapLine {
  Pane pane = Pane::elevation;
  bool upright = false;  ///< a station; otherwise an elevation or an offset
  double value = 0;
  QString reason;
  bool operator==(const SnapLine&) const = default;
};

/// For the launch, the exit and whole utilities; other parts have none. Evidence: Snap.*
std::vector<SnapLine> snap_lines(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                                 const ItemRef& part, UnitSystem units);

struct Snapped {
  ItemValue value;
  std::vector<SnapLine> lines;  ///< that hold it: at most a station and a height
};

/// The moved value, drawn to the nearest line within reach (in metres, along and up). Locked members stay.
Snapped snap(const std::vector<SnapLine>& lines, const Crossing& before, const ItemRef& part, ItemValue value,
             Pane pane, double reach_along_m, double reach_up_m);

/// The lines that hold, with their reasons.
void paint_snaps(QPainter& painter, const Scene& scene);

}  // namespace burrow
