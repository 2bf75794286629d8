#pragma once
/// Flags: each finding that has a place says so there, in plain words with the number and the limit.

#include <QRectF>
#include <QString>
#include <vector>

#include "burrow/drawing/picture.h"

namespace burrow {

struct Flag {
  int finding = -1;  ///< index into the findings
  QRectF box;
  QPointF anchor;  ///< where the leader ends
  QString text;
};

/// Flags of the findings on the screen, worst first, in rows in the sky, none over another, each wholly inside the side
/// elevation. What finds no room is left to the list: `left_out` says how many.
std::vector<Flag> place_flags(const Picture& picture, int* left_out = nullptr);

/// Draws the shape that stands for a severity: an octagon, a triangle, a disc (second cue beside the colour).
void paint_severity_mark(QPainter& painter, const QRectF& box, Severity severity, const Theme& theme,
                         const QString& number);

}  // namespace burrow
