#pragma once
/// A distance measured on the drawing: two ends in one of the views, kept until the next one or Esc.

#include <QPainter>
#include <QStringList>

#include "burrow/base/quantity_text.h"
#include "burrow/drawing/frame.h"

namespace burrow {

struct Scene;

struct Tape {
  Pane pane = Pane::elevation;
  double from_station_m = 0, from_up_m = 0;  ///< elevation in the side elevation, offset in the plan
  double to_station_m = 0, to_up_m = 0;
  bool operator==(const Tape&) const = default;
};

/// The point of the view under the pointer; takes the place of a grip, or of a utility's middle, within `reach` px.
QPointF tape_end(const Scene& scene, Pane pane, const QPointF& at, double reach);

/// "3.42 m", "along 3.40 m", "up 0.35 m", "grade +10.3 %" (side elevation) or "to the left 0.35 m" (plan).
/// Evidence: Tape.*
QStringList tape_words(const Tape& tape, UnitSystem units);

void paint_tape(QPainter& painter, const Scene& scene);

}  // namespace burrow
