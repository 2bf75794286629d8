#pragma once
/// Flags: each finding that has a place says so there, in plain words with the number and the limit.

#include <QRectF>
#include <QString>
#include <vector>

#include "burrow/drawing/scene.h"

namespace burrow {

struct Flag {
  int finding = -1;         ///< index into the findings
  std::vector<int> others;  ///< further findings at the same place, told by their numbers
  QRectF box;
  QPointF anchor;  ///< where the leader ends
  QString text;
};

/// Whether a finding stands on the drawing: it has a place and counts. A muted caution no longer counts; a muted stop
/// or a muted gap in the data still does.
bool flag_wanted(const Finding& finding);
/// Of the marks without words, in the overview strip.
double marks_row_height(const Style& style);

/// Flags of the findings on the screen, worst first, in rows in the sky, none over another, each wholly inside the side
/// elevation. What finds no room is left to the list: `left_out` says how many.
std::vector<Flag> place_flags(const Scene& scene, int* left_out = nullptr);

/// What stands for a finding beside its colour: an octagon (stop), a triangle (caution), a square (something is not
/// known), a disc (note).
enum class FindingMark { stop, caution, missing, note };
FindingMark mark_of(const Finding& finding);
void paint_finding_mark(QPainter& painter, const QRectF& box, FindingMark mark, const Theme& theme,
                        const QString& number);
QColor mark_colour(FindingMark mark, const Theme& theme);
/// For thin lines, which need more contrast than a filled mark.
QColor mark_line_colour(FindingMark mark, const Theme& theme);

}  // namespace burrow
