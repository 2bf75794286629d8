#pragma once
/// Flags: each finding that has a place says so there, in plain words with the number and the limit.

#include <QRectF>
#include <QString>
#include <vector>

#include "burrow/base/finding.h"
#include "burrow/drawing/theme.h"

class QPainter;

namespace burrow {

struct Scene;
struct Style;

struct Flag {
  int finding = -1;         ///< index into the findings
  std::vector<int> others;  ///< further findings at the same place, told by their numbers
  QRectF box;
  QPointF anchor;      ///< where the stem ends
  double stem_x = 0;   ///< straight above it
  int row = 0;         ///< of the lane, from below
  QString text;        ///< all of it
  QString head, rest;  ///< the two lines; `rest` may be empty
};

/// A finding told by its number alone: a note with a place, or what found no room for words.
struct FlagDot {
  std::vector<int> findings;  ///< the worst first
  QRectF box;
  QPointF anchor;
  QString text;  ///< "4", "+2"
};

struct FlagLane {
  std::vector<Flag> flags;
  std::vector<FlagDot> dots;
};

/// Whether a finding stands on the drawing: it has a place and counts. A muted caution no longer counts; a muted stop
/// or a muted gap in the data still does.
bool flag_wanted(const Finding& finding);
/// Of the marks without words, in the overview strip.
double marks_row_height(const Style& style);

/// The lane of the findings: flags of those that count, worst first, each over its station as far as the others let it,
/// its stem upright there; what finds no room, and notes with a place, as numbered dots.   Evidence: Flags.*
FlagLane place_flag_lane(const Scene& scene);
/// Whether a second row of flags would give words to what has only its number.
bool wants_second_row(const Scene& scene, const FlagLane& lane);
void paint_flags(QPainter& painter, const Scene& scene);
/// Lines from the lane down to the places, behind the names of what lies on top.
void paint_flag_stems(QPainter& painter, const Scene& scene);

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
