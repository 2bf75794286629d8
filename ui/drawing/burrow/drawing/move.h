#pragma once
/// What a part becomes when it is dragged or nudged on the drawing.

#include <QString>
#include <optional>
#include <vector>

#include "burrow/document/item.h"
#include "burrow/document/lens.h"
#include "burrow/drawing/frame.h"
#include "burrow/pit/shape.h"

namespace burrow {

struct Move {
  Pane pane = Pane::elevation;
  double by_station_m = 0;  ///< pointer now − pointer at the press
  double by_up_m = 0;       ///< elevation in the side elevation, offset in the plan
  double at_station_m = 0;  ///< pointer now
  double at_up_m = 0;
  double step_m = 0.01;  ///< results are rounded to whole steps; 0: free
  /// The pit as it stood at the press, for its edges: what is not typed stands only here.
  std::optional<PitShape> pit;
};

/// The change that moves the part, of the crossing as it stood at the press. Keeps what the file format demands
/// (stations in order, exit beyond launch, |grade| ≤ 1) by stopping at the limit. A locked member stays. Empty: this
/// part does not move in this view.
Edit moved(const Crossing& before, const ItemRef& part, const Move& move);

/// Several things as one: each as if it were moved alone, by the same whole steps. A locked one stays where it is.
/// Empty: none of them moves in this view.   Evidence: Group.*
Edit moved_together(const Crossing& before, const std::vector<ItemRef>& parts, const Move& move);

/// "Move gas main": the name of the undo step.
QString step_name(const Crossing& crossing, const ItemRef& part);

}  // namespace burrow
