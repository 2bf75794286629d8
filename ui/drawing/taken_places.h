#pragma once
/// What texts of the drawing keep clear of: boxes, and lines with some air. Who comes first stays; who comes later
/// looks for room.

#include <QPolygonF>
#include <QRectF>
#include <algorithm>
#include <vector>

#include "overlaps.h"

namespace burrow {

class TakenPlaces {
 public:
  void take(const QRectF& box) {
    if (!box.isEmpty()) boxes_.push_back(box);
  }
  /// A line that goes from left to right, kept clear of by `air` above and below.
  void take_line(const QPolygonF& line, double air) {
    if (line.size() > 1) lines_.push_back({line, air});
  }

  [[nodiscard]] bool free(const QRectF& box) const {
    return std::none_of(boxes_.begin(), boxes_.end(), [&](const QRectF& r) { return lie_over(r, box); }) &&
           std::none_of(lines_.begin(), lines_.end(), [&](const Line& line) { return crossed(line, box); });
  }

  /// The first of these places that is free and lies within the area; an empty box: none.
  template <class Boxes>
  [[nodiscard]] QRectF first_free(const Boxes& places, const QRectF& area) const {
    const auto at =
        std::find_if(places.begin(), places.end(), [&](const QRectF& box) { return area.contains(box) && free(box); });
    return at == places.end() ? QRectF() : *at;
  }

 private:
  struct Line {
    QPolygonF points;
    double air = 0;
  };

  static bool crossed(const Line& line, const QRectF& box) {
    for (qsizetype i = 1; i < line.points.size(); ++i) {
      const QPointF &a = line.points[i - 1], &b = line.points[i];
      if (b.x() < box.left() || a.x() > box.right()) continue;
      const double from = std::max(a.x(), box.left()), to = std::min(b.x(), box.right());
      const double slope = b.x() > a.x() ? (b.y() - a.y()) / (b.x() - a.x()) : 0;
      const double y0 = a.y() + (from - a.x()) * slope, y1 = a.y() + (to - a.x()) * slope;
      if (std::min(y0, y1) - line.air < box.bottom() && std::max(y0, y1) + line.air > box.top()) return true;
    }
    return false;
  }

  std::vector<QRectF> boxes_;
  std::vector<Line> lines_;
};

}  // namespace burrow
