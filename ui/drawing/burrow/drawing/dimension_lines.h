#pragma once
/// Dimension lines: what is measured on the drawing, with its number, and a grip that sets it.

#include <QPointF>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "burrow/document/measures.h"
#include "burrow/drawing/frame.h"

class QPainter;

namespace burrow {

struct Scene;

struct DimensionLine {
  MeasureRef measure;
  Pane pane = Pane::elevation;
  QPointF from, to;            ///< ends of the line; the grip stands at `to`
  QPointF from_foot, to_foot;  ///< what they measure; thin lines lead there
  QPointF pull;                ///< way of the pointer for one metre more; null: dragging does not change it
  double value_m = 0;
  QString text;
  QRectF label;
  bool broken = false;  ///< less than what is required
  std::string lock;     ///< what keeps it from being dragged, as the pointer of the file; empty: nothing
};

/// The dimension lines of the picture: length, depths and cover under roads always, the gap to the selected utility or
/// to that of the worst finding, the floor of the selected pit. No label lies over a flag, another label, a utility or
/// what else stands there; one that finds no room, or whose line would be shorter than its number is high, is left out.
/// Far away only the length stays. Evidence: Dimensions.*
std::vector<DimensionLine> dimension_lines(const Scene& scene);

/// The line whose grip is within reach or whose label holds the point; null: none.
const DimensionLine* dimension_at(const std::vector<DimensionLine>& lines, const QPointF& at, double reach);

/// The measure when the pointer has moved by that much.
double pulled(const DimensionLine& line, const QPointF& by);

/// Why it is not dragged: "locked in the file; double-click to type it". Empty: it can be.
QString why_held(const DimensionLine& line);

void paint_dimension_lines(QPainter& painter, const Scene& scene);

}  // namespace burrow
