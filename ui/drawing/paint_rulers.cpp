#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/along.h"

namespace burrow {

double shown_unit(Dimension dimension, UnitSystem units) {
  return parse("1", dimension, units).value_or(1.0);
}

QString tick_text(double value, double step, double unit) {
  const int digits = std::clamp(static_cast<int>(std::ceil(-std::log10(step / unit) - 1e-9)), 0, 3);
  double layers = value / unit;
  if (std::abs(layers) < 1e-9) layers = 0;
  return text_from(fixed_text(layers, digits)).replace(QLatin1Char('-'), QChar(0x2212));
}

namespace {

double unit_m(UnitSystem units) {
  return units == UnitSystem::us ? 0.3048 : 1.0;
}

QString unit_word(UnitSystem units) {
  return units == UnitSystem::us ? QStringLiteral("ft") : QStringLiteral("m");
}

}  // namespace

void paint_ruler(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  painter.fillRect(f.ruler, theme.panel);
  painter.setPen(QPen(theme.ink_soft, scene.style.hair));
  painter.drawLine(f.ruler.topLeft(), f.ruler.topRight());
  painter.drawLine(f.ruler.bottomLeft(), f.ruler.bottomRight());

  const double top = stops_row(f, scene.style).bottom();
  painter.drawLine(QPointF(f.ruler.left(), top), QPointF(f.ruler.right(), top));
  const double step = tick_step(f.px_per_m, text * 5, unit_m(scene.style.units));
  const double minor = step / 5;
  painter.save();
  painter.setClipRect(f.ruler);
  painter.setPen(QPen(theme.ink_soft, scene.style.hair * 0.8));
  for (const double s : ticks(f.left_station_m, f.right_station_m(), minor)) {
    const double x = f.px_x(s);
    painter.drawLine(QPointF(x, top), QPointF(x, top + text * 0.3));
    painter.drawLine(QPointF(x, f.ruler.bottom()), QPointF(x, f.ruler.bottom() - text * 0.3));
  }
  const double launch = f.px_x(scene.crossing.bore.launch.station.m);
  const double exit = f.px_x(scene.crossing.bore.exit.station.m);
  painter.setFont(drawing_font(text * 0.95));
  const QFontMetricsF metrics(painter.font());
  for (const double s : ticks(f.left_station_m - step, f.right_station_m() + step, step)) {
    const double x = f.px_x(s);
    painter.setPen(QPen(theme.ink, scene.style.hair));
    painter.drawLine(QPointF(x, top), QPointF(x, top + text * 0.55));
    painter.drawLine(QPointF(x, f.ruler.bottom()), QPointF(x, f.ruler.bottom() - text * 0.55));
    const QString number = tick_text(s, step, unit_m(scene.style.units));
    if (x - metrics.horizontalAdvance(number) / 2 < f.ruler.left()) continue;
    painter.drawText(
        QPointF(x - metrics.horizontalAdvance(number) / 2, (top + f.ruler.bottom()) / 2 + metrics.ascent() * 0.36),
        number);
  }
  painter.setBrush(theme.bore);
  painter.setPen(Qt::NoPen);
  const double w = text * 0.42;
  for (const double x : {launch, exit})
    for (const auto& [y, dir] : {std::pair{top, 1.0}, std::pair{f.ruler.bottom(), -1.0}})
      painter.drawPolygon(QPolygonF(QList<QPointF>{{x - w, y}, {x + w, y}, {x, y + dir * w * 1.3}}));
  painter.restore();
}

void paint_grid(QPainter& painter, const Scene& scene, const QRectF& pane) {
  const Frame& f = scene.frame;
  const bool side = pane == f.elevation;
  const double unit = unit_m(scene.style.units);
  painter.save();
  // Level and upright lines need no smoothing, and are much faster without.
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.setPen(QPen(scene.style.theme.grid, scene.style.hair));
  for (const double s : ticks(f.left_station_m, f.right_station_m(), tick_step(f.px_per_m, scene.style.text * 5, unit)))
    painter.drawLine(QPointF(f.px_x(s), pane.top()), QPointF(f.px_x(s), pane.bottom()));
  const double scale = f.px_per_m * (side ? f.exaggeration : 1.0);
  const double low = side ? f.elevation_m(pane.bottom()) : f.offset_m(pane.bottom());
  const double high = side ? f.elevation_m(pane.top()) : f.offset_m(pane.top());
  for (const double v : ticks(low, high, tick_step(scale, scene.style.text * 2.2, unit))) {
    const double y = side ? f.px_z(v) : f.px_y(v);
    painter.drawLine(QPointF(pane.left(), y), QPointF(pane.right(), y));
  }
  painter.restore();
}

void paint_axes(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  const double gutter = gutter_width(scene.style);
  const double left = f.elevation.left() - gutter;
  const double top = f.flags.isEmpty() ? f.elevation.top() : f.flags.top();
  painter.fillRect(QRectF(left, top, gutter, f.plan.bottom() - top), theme.panel);
  painter.setFont(drawing_font(text * 0.95));
  const QFontMetricsF metrics(painter.font());

  const auto axis = [&](const QRectF& pane, double high, double low, double px_per_m, auto px_of) {
    const double step = tick_step(px_per_m, text * 2.2, unit_m(scene.style.units));
    for (const double v : ticks(low, high, step)) {
      const double y = px_of(v);
      if (y < pane.top() + text * 0.6 || y > pane.bottom() - text * 0.4) continue;
      painter.setPen(QPen(theme.ink_soft, scene.style.hair));
      painter.drawLine(QPointF(pane.left() - text * 0.35, y), QPointF(pane.left(), y));
      const QString number = tick_text(v, step, unit_m(scene.style.units));
      if (y < pane.top() + text * 2.4) continue;  // room for the heading
      painter.setPen(theme.ink);
      painter.drawText(
          QPointF(pane.left() - text * 0.55 - metrics.horizontalAdvance(number), y + metrics.ascent() * 0.36), number);
    }
  };
  axis(f.elevation, f.elevation_m(f.elevation.top()), f.elevation_m(f.elevation.bottom()), f.px_per_m * f.exaggeration,
       [&](double z) { return f.px_z(z); });
  axis(f.plan, f.offset_m(f.plan.top()), f.offset_m(f.plan.bottom()), f.px_per_m, [&](double y) { return f.px_y(y); });

  painter.setPen(theme.ink_soft);
  painter.setFont(drawing_font(text * 0.85, QFont::DemiBold));
  const QString unit = unit_word(scene.style.units);
  const QFontMetricsF names(painter.font());
  // Names of the lanes: set narrower where a language is longer, never cut.
  const auto name = [&](double y, const QString& words) {
    painter.save();
    const double room = gutter - text * 0.6;
    painter.translate(left + text * 0.4, y);
    if (const double wide = names.horizontalAdvance(words); wide > room) painter.scale(room / wide, 1);
    painter.drawText(QPointF(0, 0), words);
    painter.restore();
  };
  if (!f.flags.isEmpty()) name(f.flags.top() + text * 1.3, QObject::tr("Findings"));
  if (!f.on_top.isEmpty()) name(f.on_top.center().y() + text * 0.3, QObject::tr("On top"));
  if (!f.elevation.isEmpty()) name(f.elevation.top() + text * 1.3, QObject::tr("Level, %1").arg(unit));
  if (!f.names.isEmpty()) name(f.names.bottom() - text * 0.8, QObject::tr("Utilities"));
  name(f.ruler.top() + text * 0.95, QObject::tr("Stuck risk"));
  name(f.ruler.bottom() - text * 1.1, QObject::tr("Station, %1").arg(unit));
  if (!f.plan.isEmpty()) name(f.plan.top() + text * 1.3, QObject::tr("Offset, %1").arg(unit));
  painter.setPen(QPen(theme.line, scene.style.hair));
  for (const QRectF* lane : {&f.on_top, &f.elevation, &f.names})
    if (!lane->isEmpty()) painter.drawLine(QPointF(left, lane->top()), QPointF(lane->left(), lane->top()));
  painter.setFont(drawing_font(text));
}

void paint_pointer(QPainter& painter, const Scene& scene) {
  if (scene.focus.pointer_lines.isEmpty()) return;
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  painter.setFont(drawing_font(text, QFont::DemiBold));
  const QFontMetricsF metrics(painter.font());
  double width = 0;
  for (const QString& line : scene.focus.pointer_lines) width = std::max(width, metrics.horizontalAdvance(line));
  const double h = metrics.lineSpacing() * static_cast<double>(scene.focus.pointer_lines.size());
  QRectF box(scene.focus.pointer + QPointF(text * 1.4, text * 1.2), QSizeF(width + text, h + text * 0.6));
  const QRectF whole = scene.frame.elevation.united(scene.frame.plan);
  if (box.right() > whole.right()) box.moveRight(scene.focus.pointer.x() - text);
  box.moveLeft(std::max(box.left(), whole.left()));
  if (box.bottom() > whole.bottom()) box.moveBottom(scene.focus.pointer.y() - text);
  painter.setPen(QPen(theme.focus, scene.style.hair * 1.4));
  painter.setBrush(theme.field);
  painter.drawRoundedRect(box, text * 0.3, text * 0.3);
  painter.setPen(theme.ink);
  double y = box.top() + text * 0.3 + metrics.ascent();
  for (const QString& line : scene.focus.pointer_lines) {
    painter.drawText(QPointF(box.left() + text * 0.5, y), line);
    y += metrics.lineSpacing();
  }
  painter.setFont(drawing_font(text));
}

/// The level of what is dragged, in the gutter; the numbers of the axis beside it make room.
void paint_level_tag(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  if (!scene.focus.live_level_m) return;
  const double y = f.px_z(*scene.focus.live_level_m), text = scene.style.text;
  if (y < f.elevation.top() || y > f.elevation.bottom()) return;
  const Theme& theme = scene.style.theme;
  const double gutter = gutter_width(scene.style), left = f.elevation.left() - gutter;
  const double step = tick_step(f.px_per_m * f.exaggeration, text * 2.2, unit_m(scene.style.units));
  for (const double level : ticks(f.elevation_m(f.elevation.bottom()), f.elevation_m(f.elevation.top()), step)) {
    const double beside = f.px_z(level);
    if (std::abs(beside - y) < text * 1.7)
      painter.fillRect(QRectF(left, beside - text * 0.75, gutter - text * 0.5, text * 1.5), theme.panel);
  }
  const QRectF tag(left + text * 0.2, y - text * 0.85, gutter - text * 0.4, text * 1.7);
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme.focus);
  painter.drawRoundedRect(tag, 4, 4);
  painter.setFont(drawing_font(text * 0.95, QFont::DemiBold));
  painter.setPen(theme.dark ? theme.paper : QColor(Qt::white));
  painter.drawText(tag, Qt::AlignCenter,
                   text_from(format(*scene.focus.live_level_m, Dimension::station, scene.style.units)));
  painter.setFont(drawing_font(text));
}

}  // namespace burrow
