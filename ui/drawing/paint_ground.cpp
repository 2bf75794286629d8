#include <QImage>
#include <QPainterPath>
#include <algorithm>
#include <array>

#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

/// A small tile of marks, the second cue beside the tint.
QImage soil_tile(SoilMark mark, const QColor& ink) {
  QImage tile(36, 36, QImage::Format_ARGB32_Premultiplied);
  tile.fill(Qt::transparent);
  QPainter p(&tile);
  p.setRenderHint(QPainter::Antialiasing);
  p.setPen(QPen(ink, 1));
  p.setBrush(Qt::NoBrush);
  const auto at = [&](double x, double y) {
    switch (mark) {
      case SoilMark::dashes:
        p.drawLine(QPointF(x - 4, y), QPointF(x + 4, y));
        break;
      case SoilMark::dots:
        p.drawEllipse(QPointF(x, y), 0.6, 0.6);
        break;
      case SoilMark::rings:
        p.drawEllipse(QPointF(x, y), 2.6, 2.0);
        break;
      case SoilMark::crosses:
        p.drawLine(QPointF(x - 2, y - 2), QPointF(x + 2, y + 2));
        p.drawLine(QPointF(x - 2, y + 2), QPointF(x + 2, y - 2));
        break;
      case SoilMark::strokes:
        p.drawLine(QPointF(x, y - 2.5), QPointF(x, y + 2.5));
        break;
      case SoilMark::tufts:
        p.drawLine(QPointF(x - 3, y - 2), QPointF(x, y + 2));
        p.drawLine(QPointF(x + 3, y - 2), QPointF(x, y + 2));
        break;
    }
  };
  at(8, 9);
  at(26, 27);
  if (mark == SoilMark::dots || mark == SoilMark::strokes) {
    at(27, 6);
    at(14, 19);
    at(5, 30);
    at(32, 16);
  }
  return tile;
}

const QImage& cached_tile(SoilMark mark, const Theme& theme) {
  static std::array<std::array<QImage, 6>, 2> tiles;
  QImage& tile = tiles[theme.dark ? 1 : 0][static_cast<std::size_t>(mark)];
  if (tile.isNull()) {
    QColor ink = theme.ink;
    ink.setAlpha(theme.dark ? 46 : 58);
    tile = soil_tile(mark, ink);
  }
  return tile;
}

/// Stations at which a line must be followed: view edges and every vertex between.
void add_stations(std::vector<double>& stations, const LevelLine& line, double from, double to) {
  for (const LevelPoint& p : line)
    if (p.station_m > from && p.station_m < to) stations.push_back(p.station_m);
}

double top_of(const Crossing& crossing, const Stratum& stratum, double station) {
  const double ground = elevation_at(crossing.site.ground, station);
  if (!stratum.top || stratum.top->empty()) return ground;
  return std::min(ground, elevation_at(*stratum.top, station));
}

}  // namespace

void paint_ground(QPainter& painter, const Scene& scene) {
  const Crossing& crossing = scene.crossing;
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  if (crossing.site.ground.empty() || crossing.site.strata.empty()) return;
  const double from = f.left_station_m;
  const double to = f.right_station_m();

  std::vector<double> stations{from, to};
  add_stations(stations, crossing.site.ground, from, to);
  for (const Stratum& s : crossing.site.strata)
    if (s.top) add_stations(stations, *s.top, from, to);
  std::sort(stations.begin(), stations.end());

  // Each stratum fills everything below its top; the next one is painted over it.
  QPolygonF body;
  for (std::size_t i = 0; i < crossing.site.strata.size(); ++i) {
    const Stratum& stratum = crossing.site.strata[i];
    body.clear();
    for (const double x : stations) {
      const double top = i == 0 ? elevation_at(crossing.site.ground, x) : top_of(crossing, stratum, x);
      body << f.side(x, top);
    }
    body << f.elevation.bottomRight() << f.elevation.bottomLeft();
    const SoilFill fill = soil_fill(stratum.soil, theme);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill.tint);
    painter.drawPolygon(body);
    if (scene.style.textures) {
      painter.setBrush(QBrush(cached_tile(fill.mark, theme)));
      painter.drawPolygon(body);
    }
    if (i == 0) continue;
    QPen edge(theme.ground, scene.style.hair,
              stratum.known.value == StratumEvidence::guess ? Qt::DashLine : Qt::SolidLine);
    painter.setPen(edge);
    body.resize(body.size() - 2);
    painter.drawPolyline(body);
  }

  for (const Strip& strip : crossing.site.strips) {
    double left = 1e300;
    double right = -1e300;
    for (std::size_t i = 0, j = strip.outline.size() - 1; i < strip.outline.size(); j = i++) {
      const PlanPoint& a = strip.outline[j];
      const PlanPoint& b = strip.outline[i];
      if ((a.y_m > 0) == (b.y_m > 0)) continue;
      const double x = a.x_m + a.y_m / (a.y_m - b.y_m) * (b.x_m - a.x_m);
      left = std::min(left, x);
      right = std::max(right, x);
    }
    if (left >= right) continue;
    const double high_left = strip.top_elevation ? strip.top_elevation->m : elevation_at(crossing.site.ground, left);
    const double high_right = strip.top_elevation ? strip.top_elevation->m : elevation_at(crossing.site.ground, right);
    const QPolygonF box{QList<QPointF>{f.side(left, high_left), f.side(right, high_right),
                                       f.side(right, strip.bottom_elevation.m),
                                       f.side(left, strip.bottom_elevation.m)}};
    const SoilFill fill = soil_fill(strip.soil, theme);
    painter.setPen(QPen(theme.ground, scene.style.hair, Qt::DotLine));
    painter.setBrush(fill.tint.lighter(theme.dark ? 125 : 104));
    painter.drawPolygon(box);
  }

  if (crossing.site.water && !crossing.site.water->empty()) {
    QPolygonF line;
    line << f.side(from, elevation_at(*crossing.site.water, from));
    for (const LevelPoint& p : *crossing.site.water)
      if (p.station_m > from && p.station_m < to) line << f.side(p.station_m, p.elevation_m);
    line << f.side(to, elevation_at(*crossing.site.water, to));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.water, scene.style.hair * 1.4, Qt::DashDotLine));
    painter.drawPolyline(line);
    const double x = f.station_m(f.elevation.right() - scene.style.text * 7);
    const QPointF at = f.side(x, elevation_at(*crossing.site.water, x));
    const double w = scene.style.text * 0.45;
    painter.setPen(QPen(theme.water, scene.style.hair * 1.2));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolygon(QPolygonF(QList<QPointF>{at, at + QPointF(-w, -w * 1.5), at + QPointF(w, -w * 1.5)}));
  }

  QPolygonF surface;
  for (const double x : stations) surface << f.side(x, elevation_at(crossing.site.ground, x));
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.ground, scene.style.hair * 2.2, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  painter.drawPolyline(surface);
}

void paint_surface(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  const LevelLine& ground = scene.crossing.site.ground;
  if (ground.empty()) return;
  const double text = scene.style.text;
  for (const SurfaceFeature& feature : scene.crossing.site.surface) {
    double from = feature.from ? feature.from->m : 1e300;
    double to = feature.to ? feature.to->m : -1e300;
    for (const PlanPoint& p : feature.outline) {
      from = std::min(from, p.x_m);
      to = std::max(to, p.x_m);
    }
    if (!(from < to)) continue;
    const double middle = (from + to) / 2;
    const bool block = feature.kind == SurfaceKind::footing || feature.kind == SurfaceKind::building ||
                       feature.kind == SurfaceKind::wall;
    if (block) {
      const double base = feature.founding_elevation ? feature.founding_elevation->m : elevation_at(ground, middle);
      const double px_top =
          f.px_z(elevation_at(ground, middle)) - (feature.kind == SurfaceKind::footing ? 0 : text * 1.6);
      const QRectF body(QPointF(f.px_x(from), px_top), QPointF(f.px_x(to), f.px_z(base)));
      painter.setPen(QPen(theme.road, scene.style.hair * 1.2));
      QColor fill = theme.road;
      fill.setAlpha(70);
      painter.setBrush(fill);
      painter.drawRect(body);
    } else {
      QPolygonF band;
      band << f.side(from, elevation_at(ground, from));
      for (const LevelPoint& p : ground)
        if (p.station_m > from && p.station_m < to) band << f.side(p.station_m, p.elevation_m);
      band << f.side(to, elevation_at(ground, to));
      painter.setBrush(Qt::NoBrush);
      const double width =
          feature.kind == SurfaceKind::ditch || feature.kind == SurfaceKind::footway ? text * 0.25 : text * 0.5;
      QPen pen(feature.kind == SurfaceKind::ditch ? theme.water : theme.road, width, Qt::SolidLine, Qt::FlatCap);
      if (feature.kind == SurfaceKind::track) pen.setDashPattern({0.5, 0.6});
      painter.setPen(pen);
      painter.drawPolyline(band.translated(0, -width / 2));
      if (feature.kind == SurfaceKind::track) {
        painter.setPen(QPen(theme.ink, scene.style.hair * 2));
        painter.drawPolyline(band.translated(0, -width));
      }
    }
  }
}

}  // namespace burrow
