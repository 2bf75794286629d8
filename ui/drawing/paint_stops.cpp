/// Where along the bore the ground may stop the tool, and whether one could dig it out there.

#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/drawing/along.h"
#include "burrow/drawing/flags.h"

namespace burrow {

namespace {

QColor colour_of(AboveBore above, const Theme& theme) {
  switch (above) {
    case AboveBore::diggable:
      return theme.note;  // that one may dig there is no all-clear
    case AboveBore::carriageway:
      return theme.road;
    case AboveBore::track:
      return theme.ink;
    case AboveBore::building:
      return theme.ground;
  }
  return theme.ink;
}

/// Second cue beside the colour: open ground bare, a carriageway with its centre line, a track with its sleepers, a
/// building hatched.
void paint_pattern(QPainter& painter, const Scene& scene, AboveBore above, const QRectF& box) {
  const Style& style = scene.style;
  const QColor colour = colour_of(above, style.theme);
  const double mid = box.center().y();
  switch (above) {
    case AboveBore::diggable:
      break;
    case AboveBore::carriageway: {
      QPen pen(colour, style.hair * 1.6, Qt::CustomDashLine, Qt::FlatCap);
      pen.setDashPattern({6, 4});
      painter.setPen(pen);
      painter.drawLine(QPointF(box.left(), mid), QPointF(box.right(), mid));
      break;
    }
    case AboveBore::track:
      painter.setPen(QPen(colour, style.hair * 2, Qt::SolidLine, Qt::FlatCap));
      for (double x = box.left() + style.text * 0.3; x < box.right(); x += style.text * 0.6)
        painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()));
      break;
    case AboveBore::building:
      painter.setPen(QPen(colour, style.hair));
      for (double x = box.left() - box.height(); x < box.right(); x += style.text * 0.5)
        painter.drawLine(QPointF(x, box.bottom()), QPointF(x + box.height(), box.top()));
      break;
  }
}

QString word(AboveBore above) {
  if (above == AboveBore::carriageway) return QObject::tr("under a carriageway");
  if (above == AboveBore::track) return QObject::tr("under a track");
  if (above == AboveBore::building) return QObject::tr("under a building");
  return QObject::tr("open ground above");
}

/// What is above, and the chance of stopping there once its rates are from records, on clear ground in the middle of
/// the stretch; as much as fits.
void paint_chance(QPainter& painter, const Scene& scene, const StopStretch& stretch, const QRectF& seen) {
  const double text = scene.style.text;
  const QFontMetricsF metrics(painter.font());
  const QString chance = text_from(format(stretch.chance, Dimension::chance, scene.style.units));
  QStringList texts{word(stretch.above)};
  if (scene.assessment.refusal_calibrated) texts = {chance + QStringLiteral(" · ") + texts.front(), chance};
  for (const QString& shown_text : texts) {
    const double w = metrics.horizontalAdvance(shown_text) + text * 0.6;
    if (w > seen.width() - text) continue;
    const QRectF ground(seen.center().x() - w / 2, seen.top() + scene.style.hair, w,
                        seen.height() - 2 * scene.style.hair);
    painter.fillRect(ground, scene.style.theme.panel);
    painter.setPen(scene.style.theme.ink);
    painter.drawText(ground, Qt::AlignCenter, shown_text);
    return;
  }
}

}  // namespace

void paint_stops(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  const QRectF row = stops_row(f, scene.style);
  painter.save();
  painter.setClipRect(row);
  painter.setFont(drawing_font(text * 0.85));
  for (const StopStretch& stretch : scene.assessment.stops) {
    const QRectF box(QPointF(f.px_x(stretch.from_m), row.top()), QPointF(f.px_x(stretch.to_m), row.bottom()));
    if (!box.intersects(row)) continue;
    QColor fill = colour_of(stretch.above, theme);
    fill.setAlpha(46);
    painter.fillRect(box, fill);
    painter.save();
    painter.setClipRect(box.intersected(row));
    paint_pattern(painter, scene, stretch.above, box);
    paint_chance(painter, scene, stretch, box.intersected(row));
    painter.restore();
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colour_of(stretch.above, theme), scene.style.hair));
    painter.drawRect(box.adjusted(0, 0, 0, -scene.style.hair));
  }
  painter.restore();
  painter.setFont(drawing_font(text));

  const std::optional<double> stop = scene.assessment.refusal_station_m;
  if (!stop || f.px_x(*stop) < f.elevation.left() || f.px_x(*stop) > f.elevation.right()) return;
  const double x = f.px_x(*stop);
  // As the finding says: a caution until the model is calibrated.
  const auto& findings = scene.assessment.findings;
  const auto shown_text =
      std::find_if(findings.begin(), findings.end(), [](const Finding& g) { return g.code == "bore.set"; });
  const FindingMark mark = shown_text != findings.end() ? mark_of(*shown_text) : FindingMark::caution;
  const QColor colour = mark_colour(mark, theme);
  painter.setPen(QPen(colour, scene.style.hair * 2.4, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(x, row.top()), QPointF(x, row.bottom()));
  const double r = text * 0.6;
  paint_finding_mark(painter, QRectF(x - r, row.center().y() - r, 2 * r, 2 * r), mark, theme, {});
  if (const std::optional<PathPoint> at = path_point_at(scene.assessment, *stop)) {
    const QPointF end = f.side(at->x_m, at->z_m);
    painter.save();
    painter.setClipRect(f.elevation);
    painter.setPen(QPen(colour, scene.style.hair * 2.4, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(end + QPointF(0, -text), end + QPointF(0, text));
    painter.restore();
  }
}

}  // namespace burrow
