#pragma once
/// Places to which a drag is drawn, each with its reason: an edge, a level, clear of a utility with its limits kept.
/// They are found once, at the press; the drag then only compares numbers.

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
  std::string clear_of;  ///< the utility whose limits are kept there; empty: a line of another kind
  bool operator==(const SnapLine&) const = default;
};

/// For the launch, the exit and whole utilities; other parts have none. Evidence: Snap.*
std::vector<SnapLine> snap_lines(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                                 const ItemRef& part, UnitSystem units);

/// Draws the part of a crossing in which it was moved to the nearest lines within reach (in metres, along and up).
/// Locked members stay. The lines that hold it: at most a station and a height.
std::vector<SnapLine> snap(Crossing& moved, const std::vector<SnapLine>& lines, const ItemRef& part, Pane pane,
                           double reach_along_m, double reach_up_m);

/// The lines that hold; the readout says why.
void paint_snaps(QPainter& painter, const Scene& scene);

}  // namespace burrow
