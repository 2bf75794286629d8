#pragma once
/// What can be grasped on the drawing: points with a grip, lines, bodies. One list serves painting and picking.

#include <optional>
#include <vector>

#include "burrow/document/item.h"
#include "burrow/drawing/scene.h"

namespace burrow {

struct Handle {
  ItemRef part;
  Pane pane = Pane::none;
  QPointF at;
  enum class Shape { round, diamond, square } shape = Shape::square;
  bool always = true;  ///< shown also when its part is not picked
};

/// What texts keep clear of: the grip with some air, more when it is selected.
QRectF grip_box(const Handle& handle, const Style& style, bool selected);

/// Grips in the order of picking: the first within reach wins.
std::vector<Handle> handles(const Scene& scene);

/// The part under a point: grips first, then utilities, pits, surface, lines. `reach` in px.
ItemRef part_at(const Scene& scene, const QPointF& at, double reach);

/// The lower end of a test hole in the side elevation.
QPointF hole_end(const Scene& scene, const TestHole& hole);

/// Level of the bore's axis at a station, straight beyond the ends of the path.
double bore_level_at(const Assessment& assessment, const Crossing& crossing, double station_m);

/// Station of the grip that sets the launch grade (side elevation) and heading (plan).
double grade_grip_station(const Crossing& crossing);

}  // namespace burrow
