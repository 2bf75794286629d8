#include "paint_marks.h"

#include <cmath>
#include <vector>

namespace burrow {

void paint_marks_side(QPainter& painter, const Scene& scene) {
  const std::vector<Mark>& marks = scene.assessment.marks;
  const Frame& f = scene.frame;
  const double tick = scene.style.text * 0.5, closest = scene.style.text * 0.9;
  // The last line of the sheet is the arrival: no tape stands on the hose there.
  const std::size_t count =
      scene.assessment.bore.ends == PathEnd::exit && !marks.empty() ? marks.size() - 1 : marks.size();
  std::vector<QPointF> ends;
  for (std::size_t i = 0; i < count; ++i)
    if (marks[i].hose_m && marks[i].station_m && marks[i].elevation_m)
      ends.push_back(f.side(*marks[i].station_m, *marks[i].elevation_m));
  if (ends.size() > 1 && !(std::abs(ends[1].x() - ends[0].x()) >= closest)) return;
  painter.setPen(QPen(scene.style.theme.bore, scene.style.hair * 1.5, Qt::SolidLine, Qt::FlatCap));
  for (const QPointF& at : ends) painter.drawLine(at + QPointF(0, scene.style.hair), at + QPointF(0, tick));
}

}  // namespace burrow
