#include "burrow/drawing/pit_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/pit/outlines.h"

namespace burrow {

namespace {

/// Isometric: u ahead with the tool goes right and up, v to its left goes left and up, heights go up.
class Oblique {
 public:
  explicit Oblique(const PitPicture& picture) : picture_(picture) {}
  [[nodiscard]] QPointF plain(const Point3& p) const {
    const double sign = picture_.shape.bore_side_high ? 1 : -1;
    const double u = sign * (p.x_m - picture_.shape.face_station_m), v = sign * p.y_m;
    const double z = p.z_m - picture_.shape.floor_elevation_m;
    return {(u - v) * std::cos(pi / 6), -(u + v) / 2 - z};
  }
  /// Fits everything that will be painted into an area.
  void fit(const QRectF& area, const std::vector<Point3>& points) {
    QPolygonF all;
    for (const Point3& p : points) all << plain(p);
    const QRectF box = all.boundingRect();
    px_per_m_ = std::min(area.width() / std::max(box.width(), 0.1), area.height() / std::max(box.height(), 0.1));
    origin_ = area.center() - px_per_m_ * box.center();
  }
  [[nodiscard]] QPointF operator()(const Point3& p) const { return origin_ + px_per_m_ * plain(p); }
  [[nodiscard]] double scale() const { return px_per_m_; }

 private:
  const PitPicture& picture_;
  double px_per_m_ = 1;
  QPointF origin_;
};

QString text_of(const PitPicture& picture, double value_m) {
  return QString::fromStdString(format(value_m, Dimension::length, picture.look.units));
}

/// With its left end at `wanted`, or as near to that as the picture allows.
void write_from(QPainter& painter, const PitPicture& picture, QPointF wanted, const QString& text) {
  const QFontMetricsF metrics(painter.font());
  const QRectF within(painter.window());
  const double last = within.right() - metrics.horizontalAdvance(text) - 2;
  wanted.setX(std::max(within.left() + 2, std::min(wanted.x(), last)));
  halo_text(painter, wanted + QPointF(0, metrics.ascent() * 0.4), text, picture.look.theme.ink,
            picture.look.theme.paper);
}

void write(QPainter& painter, const PitPicture& picture, const QPointF& centre, const QString& text) {
  const double width = QFontMetricsF(painter.font()).horizontalAdvance(text);
  write_from(painter, picture, centre - QPointF(width / 2, 0), text);
}

/// Beside an edge of the floor, to the right of `from` or to the left of it.
void write_beside(QPainter& painter, const PitPicture& picture, const QPointF& from, bool to_the_left,
                  const QString& text) {
  const double width = to_the_left ? QFontMetricsF(painter.font()).horizontalAdvance(text) : 0;
  write_from(painter, picture, from - QPointF(width, 0), text);
}

/// A line with end ticks square to it and its length in words.
void dimension(QPainter& painter, const PitPicture& picture, const QPointF& from, const QPointF& to,
               const QString& text) {
  const QPointF along = to - from;
  const double length = std::hypot(along.x(), along.y());
  if (length < 2) return;
  const QPointF square(-along.y() / length * 4, along.x() / length * 4);
  painter.setPen(QPen(picture.look.theme.ink, picture.look.hair));
  painter.drawLine(from, to);
  for (const QPointF& end : {from, to}) painter.drawLine(end - square, end + square);
  write(painter, picture, (from + to) / 2, text);
}

QColor tint(const QColor& colour, int alpha) {
  QColor c = colour;
  c.setAlpha(alpha);
  return c;
}

/// Corners of a ring in the order: near right, far right, far left, near left, seen with the tool.
std::array<Point3, 4> with_the_tool(const PitRing& ring, bool ahead_is_high) {
  if (ahead_is_high) return ring;
  return {ring[2], ring[3], ring[0], ring[1]};
}

void paint_hole(QPainter& painter, const PitPicture& picture, const Oblique& at) {
  const PitShape& shape = picture.shape;
  QPolygonF circle;
  const double radius = std::max(picture.hole_diameter_m / 2, 2.0 / at.scale());
  for (int i = 0; i < 24; ++i) {
    const double turn = 2 * pi * i / 24;
    circle << at({shape.face_station_m, picture.axis_offset_m + radius * std::cos(turn),
                  shape.axis_elevation_m + radius * std::sin(turn)});
  }
  if (picture.tool_length_m > 0) {
    const double behind = shape.bore_side_high ? -picture.tool_length_m : picture.tool_length_m;
    painter.setPen(
        QPen(picture.look.theme.bore, std::max(2.0, picture.hole_diameter_m * at.scale()), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(at({shape.face_station_m, picture.axis_offset_m, shape.axis_elevation_m}),
                     at({shape.face_station_m + behind, picture.axis_offset_m, shape.axis_elevation_m}));
  }
  painter.setPen(QPen(picture.look.theme.ink, picture.look.hair));
  painter.setBrush(picture.look.theme.ink);
  painter.drawPolygon(circle);
  painter.setBrush(Qt::NoBrush);
}

}  // namespace

void paint_pit_oblique(QPainter& painter, const QRectF& area, const PitPicture& picture) {
  const PitShape& shape = picture.shape;
  const Theme& theme = picture.look.theme;
  const std::vector<PitRing> rings = pit_rings(shape, picture.ground);
  if (rings.size() < 2) return;
  std::vector<std::array<Point3, 4>> levels;
  std::vector<Point3> points;
  for (const PitRing& ring : rings) {
    levels.push_back(with_the_tool(ring, shape.bore_side_high));
    points.insert(points.end(), ring.begin(), ring.end());
  }
  const double text = picture.look.text;
  Oblique at(picture);
  at.fit(area.adjusted(text, text * 0.8, -text, -text * 0.8), points);
  const auto polygon = [&](const std::array<Point3, 4>& corners) {
    QPolygonF p;
    for (const Point3& corner : corners) p << at(corner);
    return p;
  };
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing, true);
  painter.setFont(drawing_font(text * 0.9));
  painter.setPen(Qt::NoPen);
  painter.setBrush(tint(theme.ground, 40));
  painter.drawPolygon(polygon(levels.back()));
  painter.setBrush(theme.pit);
  painter.drawPolygon(polygon(levels.front()));
  for (std::size_t i = 0; i + 1 < levels.size(); ++i) {
    const auto& low = levels[i];
    const auto& high = levels[i + 1];
    painter.setPen(QPen(theme.ink_soft, picture.look.hair * 0.8));
    painter.setBrush(tint(theme.ground, 90));  // the bore side
    painter.drawPolygon(QPolygonF{at(low[1]), at(low[2]), at(high[2]), at(high[1])});
    painter.setBrush(tint(theme.ground, 140));  // to the left of the tool
    painter.drawPolygon(QPolygonF{at(low[2]), at(low[3]), at(high[3]), at(high[2])});
    painter.setPen(QPen(theme.ink_soft, picture.look.hair * 0.8, Qt::DotLine));
    painter.drawLine(at(low[0]), at(high[0]));
    painter.setBrush(Qt::NoBrush);
    if (i > 0) painter.drawPolyline(QPolygonF{at(low[3]), at(low[0]), at(low[1])});
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.ink, picture.look.hair));
  painter.drawPolygon(polygon(levels.front()));
  paint_hole(painter, picture, at);
  painter.setPen(QPen(theme.ink, picture.look.hair * 1.8));
  painter.drawPolygon(polygon(levels.back()));

  const auto& floor = levels.front();
  write_beside(painter, picture, (at(floor[0]) + at(floor[1])) / 2 + QPointF(text * 0.6, text * 0.8), false,
               text_of(picture, shape.floor_length_m));
  write_beside(painter, picture, (at(floor[0]) + at(floor[3])) / 2 + QPointF(-text * 0.6, text * 0.8), true,
               text_of(picture, shape.floor_width_m));
  const Point3& foot = floor[1];
  dimension(painter, picture, at(foot), at({foot.x_m, foot.y_m, elevation_at(picture.ground, foot.x_m)}),
            text_of(picture, elevation_at(picture.ground, foot.x_m) - shape.floor_elevation_m));
  painter.restore();
}

void paint_pit_across(QPainter& painter, const QRectF& area, const PitPicture& picture) {
  const PitShape& shape = picture.shape;
  const Theme& theme = picture.look.theme;
  const double back = std::min(picture.tool_length_m, shape.floor_length_m) / 2;
  const double station = shape.face_station_m + (shape.bore_side_high ? -back : back);
  const LevelLine section = cross_section(shape, picture.ground, station);
  if (section.size() < 2) return;
  const double text = picture.look.text, surface = section.front().elevation_m;
  const double right = section.front().station_m, left = section.back().station_m;
  const double beside = 0.15 * (left - right) + 0.2, below = 0.25;
  const QRectF room = area.adjusted(text * 0.5, text * 2, -text * 4.5, -text * 2);
  const double px =
      std::min(room.width() / (left - right + 2 * beside), room.height() / (surface - shape.floor_elevation_m + below));
  const double middle = (left + right) / 2;
  const double top = room.center().y() - (surface - shape.floor_elevation_m + below) * px / 2;
  // Left of the line is left in the picture.
  const auto at = [&](double offset, double elevation) {
    return QPointF(room.center().x() - (offset - middle) * px, top + (surface - elevation) * px);
  };
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing, true);
  painter.setFont(drawing_font(text * 0.9));
  QPolygonF earth;
  for (const LevelPoint& p : section) earth << at(p.station_m, p.elevation_m);
  const QPolygonF cut = earth;
  const double deep = shape.floor_elevation_m - below;
  earth << at(left + beside, surface) << at(left + beside, deep) << at(right - beside, deep)
        << at(right - beside, surface);
  painter.setPen(Qt::NoPen);
  painter.setBrush(tint(theme.ground, 90));
  painter.drawPolygon(earth);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.ink, picture.look.hair * 1.6));
  painter.drawPolyline(cut);
  painter.drawLine(at(left, surface), at(left + beside, surface));
  painter.drawLine(at(right, surface), at(right - beside, surface));
  if (picture.work.water_head_m && *picture.work.water_head_m > -below) {
    const double water = shape.floor_elevation_m + *picture.work.water_head_m;
    painter.setPen(QPen(theme.water, picture.look.hair * 1.4, Qt::DashDotLine));
    if (water < surface) painter.drawLine(at(left + beside, water), at(right - beside, water));
  }
  painter.setPen(QPen(theme.ink, picture.look.hair));
  painter.setBrush(theme.bore);
  const double radius = std::max(2.0, picture.hole_diameter_m / 2 * px);
  painter.drawEllipse(at(picture.axis_offset_m, shape.axis_elevation_m), radius, radius);
  painter.setBrush(Qt::NoBrush);

  dimension(painter, picture, at(shape.floor_left_m, shape.floor_elevation_m) + QPointF(0, text * 1.1),
            at(shape.floor_right_m, shape.floor_elevation_m) + QPointF(0, text * 1.1),
            text_of(picture, shape.floor_width_m));
  dimension(painter, picture, at(left, surface) - QPointF(0, text), at(right, surface) - QPointF(0, text),
            text_of(picture, left - right));
  const QPointF side(at(right - beside, surface).x() + text * 2.2, 0);
  dimension(painter, picture, QPointF(side.x(), at(0, surface).y()),
            QPointF(side.x(), at(0, shape.floor_elevation_m).y()), text_of(picture, surface - shape.floor_elevation_m));
  painter.restore();
}

}  // namespace burrow
