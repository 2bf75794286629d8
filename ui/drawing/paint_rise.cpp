/// How the surface rises over the bore: a profile above the ground line, and lines of equal rise in the plan.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "burrow/soil/rise_contour.h"

namespace burrow {

namespace {

/// Painter's units for a metre of rise: a round number of times the true height, the greatest rise some lines of text
/// high.
double times_of(const Scene& scene, double most_m) {
  const double room = 3.0 * scene.style.text;
  const double times = room / (most_m * scene.frame.px_per_m * scene.frame.exaggeration);
  const double power = std::pow(10.0, std::floor(std::log10(times)));
  double chosen = power;
  for (const double factor : {2.0, 5.0})
    if (factor * power <= times) chosen = factor * power;
  return std::max(1.0, chosen);
}

double most_of(const std::vector<HeavePoint>& rise) {
  double most = 0;
  for (const HeavePoint& p : rise) most = std::max(most, p.high_m);
  return most;
}

QString translated(const Scene& scene, double rise_m) {
  return text_from(format(rise_m, Dimension::small_length, scene.style.units));
}

}  // namespace

void paint_rise_side(QPainter& painter, const Scene& scene) {
  const std::vector<HeavePoint>& rise = scene.assessment.heave;
  const double most = most_of(rise);
  if (rise.size() < 2 || !(most > 0)) return;
  const Frame& f = scene.frame;
  const double times = times_of(scene, most);
  const double px_per_m = times * f.px_per_m * f.exaggeration;
  QPolygonF ground, low, high;
  for (const HeavePoint& p : rise) {
    const QPointF at = f.side(p.station_m, elevation_at(scene.crossing.site.ground, p.station_m));
    ground << at;
    low << at - QPointF(0, p.low_m * px_per_m);
    high << at - QPointF(0, p.high_m * px_per_m);
  }
  QPolygonF area = low;
  for (qsizetype i = ground.size(); i-- > 0;) area << ground[i];
  QColor fill = scene.style.theme.caution;
  fill.setAlpha(90);
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.setPen(Qt::NoPen);
  painter.setBrush(fill);
  painter.drawPolygon(area);
  painter.setRenderHint(QPainter::Antialiasing, true);
  painter.setBrush(Qt::NoBrush);
  const QColor ink = scene.style.theme.ink_soft;
  painter.setPen(QPen(ink, scene.style.hair * 1.3));
  painter.drawPolyline(low);
  painter.setPen(QPen(ink, scene.style.hair, Qt::DashLine));
  painter.drawPolyline(high);

  const auto greatest = std::max_element(rise.begin(), rise.end(),
                                         [](const HeavePoint& a, const HeavePoint& b) { return a.low_m < b.low_m; });
  const QString text = QObject::tr("surface rises %1, up to %2 (drawn ×%3)")
                           .arg(translated(scene, greatest->low_m), translated(scene, most))
                           .arg(times, 0, 'f', 0);
  painter.setFont(drawing_font(scene.style.text * 0.85));
  const double wide = QFontMetricsF(painter.font()).horizontalAdvance(text);
  const QRectF box = high.boundingRect();
  const double x = std::clamp(box.center().x() - wide / 2, f.elevation.left() + 4, f.elevation.right() - wide - 4);
  halo_text(painter, QPointF(x, box.top() - scene.style.text * 0.4), text, ink, scene.style.theme.sky);
  painter.setFont(drawing_font(scene.style.text));
}

void paint_rise_plan(QPainter& painter, const Scene& scene) {
  const std::vector<HeavePoint>& rise = scene.assessment.heave;
  if (rise.size() < 2) return;
  const Frame& f = scene.frame;
  const bool us = scene.style.units == UnitSystem::us;
  // Round in the unit shown: 1, 2, 5, 10, 20 mm; 1/16, 1/8, 1/4, 1/2, 1 in.
  const std::array<double, 5> levels = us ? std::array{0.0254 / 16, 0.0254 / 8, 0.0254 / 4, 0.0254 / 2, 0.0254}
                                          : std::array{0.001, 0.002, 0.005, 0.010, 0.020};
  painter.setBrush(Qt::NoBrush);
  painter.setFont(drawing_font(scene.style.text * 0.8));
  const QColor ink = scene.style.theme.caution_line;
  for (const double level : levels) {
    for (const double side : {1.0, -1.0}) {
      QPolygonF line;
      QPointF widest;
      double most = 0;
      const auto finish = [&] {
        if (line.size() < 2) return line.clear();
        painter.setPen(QPen(ink, scene.style.hair, Qt::DotLine));
        painter.drawPolyline(line);
        line.clear();
      };
      for (const HeavePoint& p : rise) {
        const auto half = half_width_where(Length{p.low_m}, Length{p.depth_m}, Length{level});
        if (!half) {
          finish();
          continue;
        }
        line << f.above(p.station_m, p.offset_m + side * half->m);
        if (half->m >= most) {
          most = half->m;
          widest = line.back();
        }
      }
      finish();
      if (side > 0 && most > 0)
        halo_text(painter, widest + QPointF(3, -3), translated(scene, level), ink, scene.style.theme.paper);
    }
  }
  painter.setFont(drawing_font(scene.style.text));
}

}  // namespace burrow
