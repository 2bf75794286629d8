#include "burrow/drawing/pit_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/pit/outlines.h"

namespace burrow {

namespace {

/// Isometric: u ahead with the tool goes right and up, v to its left goes left and up, heights go up.
class Oblique {
 public:
  explicit Oblique(const PitPicture& scene) : picture_(scene) {}
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

QString text_of(const PitPicture& scene, double value_m) {
  return text_from(format(value_m, Dimension::length, scene.style.units));
}

/// One pit has one depth, the greatest: where the ground hardly slopes it stands here too, not one of its neighbours.
QString depth_text(const PitPicture& scene, double here_m) {
  constexpr double same_m = 0.05;
  return text_of(scene, std::abs(here_m - scene.shape.depth_m) < same_m ? scene.shape.depth_m : here_m);
}

/// With its left end at `wanted`, or as near to that as the picture allows.
void write_from(QPainter& painter, const PitPicture& scene, QPointF wanted, const QString& text) {
  const QFontMetricsF metrics(painter.font());
  const QRectF within(painter.window());
  const double last = within.right() - metrics.horizontalAdvance(text) - 2;
  wanted.setX(std::max(within.left() + 2, std::min(wanted.x(), last)));
  halo_text(painter, wanted + QPointF(0, metrics.ascent() * 0.4), text, scene.style.theme.ink, scene.style.theme.paper);
}

void write(QPainter& painter, const PitPicture& scene, const QPointF& centre, const QString& text) {
  const double width = QFontMetricsF(painter.font()).horizontalAdvance(text);
  write_from(painter, scene, centre - QPointF(width / 2, 0), text);
}

/// Beside an edge of the floor, to the right of `from` or to the left of it.
void write_beside(QPainter& painter, const PitPicture& scene, const QPointF& from, bool to_the_left,
                  const QString& text) {
  const double width = to_the_left ? QFontMetricsF(painter.font()).horizontalAdvance(text) : 0;
  write_from(painter, scene, from - QPointF(width, 0), text);
}

/// A line with end ticks square to it and its length in words.
void dimension(QPainter& painter, const PitPicture& scene, const QPointF& from, const QPointF& to,
               const QString& text) {
  const QPointF along = to - from;
  const double length = std::hypot(along.x(), along.y());
  if (length < 2) return;
  const QPointF square(-along.y() / length * 4, along.x() / length * 4);
  painter.setPen(QPen(scene.style.theme.ink, scene.style.hair));
  painter.drawLine(from, to);
  for (const QPointF& end : {from, to}) painter.drawLine(end - square, end + square);
  write(painter, scene, (from + to) / 2, text);
}

QColor tint(const QColor& colour, int alpha) {
  QColor c = colour;
  c.setAlpha(alpha);
  return c;
}

/// A side of the pit that stands at the back of the picture: the one the tool passes, or the one to the tool's left.
enum class Stands { at_the_back, at_the_left, in_front };
Stands stands(const PitShape& shape, std::size_t edge) {
  const PitSideName name = side_name(shape, edge);
  if (name == PitSideName::bore) return Stands::at_the_back;
  return name == (shape.bore_side_high ? PitSideName::left : PitSideName::right) ? Stands::at_the_left
                                                                                 : Stands::in_front;
}

void paint_hole(QPainter& painter, const PitPicture& scene, const Oblique& at) {
  const PitShape& shape = scene.shape;
  QPolygonF circle;
  const double radius = std::max(scene.hole_diameter_m / 2, 2.0 / at.scale());
  for (int i = 0; i < 24; ++i) {
    const double turn = 2 * pi * i / 24;
    circle << at({shape.face_station_m, scene.axis_offset_m + radius * std::cos(turn),
                  shape.axis_elevation_m + radius * std::sin(turn)});
  }
  if (scene.tool_length_m > 0) {
    const double behind = shape.bore_side_high ? -scene.tool_length_m : scene.tool_length_m;
    painter.setPen(
        QPen(scene.style.theme.bore, std::max(2.0, scene.hole_diameter_m * at.scale()), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(at({shape.face_station_m, scene.axis_offset_m, shape.axis_elevation_m}),
                     at({shape.face_station_m + behind, scene.axis_offset_m, shape.axis_elevation_m}));
  }
  painter.setPen(QPen(scene.style.theme.ink, scene.style.hair));
  painter.setBrush(scene.style.theme.ink);
  painter.drawPolygon(circle);
  painter.setBrush(Qt::NoBrush);
}

}  // namespace

void paint_pit_oblique(QPainter& painter, const QRectF& area, const PitPicture& scene) {
  const PitShape& shape = scene.shape;
  const Theme& theme = scene.style.theme;
  const std::vector<PitRing> rings = pit_rings(shape, scene.ground);
  if (rings.size() < 2) return;
  std::vector<Point3> points;
  for (const PitRing& ring : rings) points.insert(points.end(), ring.begin(), ring.end());
  const double text = scene.style.text;
  Oblique at(scene);
  at.fit(area.adjusted(text, text * 0.8, -text, -text * 0.8), points);
  const auto polygon = [&](const PitRing& corners) {
    QPolygonF p;
    for (const Point3& corner : corners) p << at(corner);
    return p;
  };
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing, true);
  painter.setFont(drawing_font(text * 0.9));
  painter.setPen(Qt::NoPen);
  painter.setBrush(tint(theme.ground, 40));
  painter.drawPolygon(polygon(rings.back()));
  painter.setBrush(theme.pit);
  painter.drawPolygon(polygon(rings.front()));
  const std::size_t corners = rings.front().size();
  for (std::size_t i = 0; i + 1 < rings.size(); ++i) {
    const PitRing& low = rings[i];
    const PitRing& high = rings[i + 1];
    painter.setPen(QPen(theme.ink_soft, scene.style.hair * 0.8));
    for (std::size_t a = 0; a < corners; ++a) {
      const std::size_t b = (a + 1) % corners;
      const Stands side = stands(shape, a);
      if (side == Stands::in_front) continue;
      painter.setBrush(tint(theme.ground, side == Stands::at_the_back ? 90 : 140));
      painter.drawPolygon(QPolygonF{at(low[a]), at(low[b]), at(high[b]), at(high[a])});
    }
    painter.setPen(QPen(theme.ink_soft, scene.style.hair * 0.8, Qt::DotLine));
    for (std::size_t a = 0; a < corners; ++a) {
      if (stands(shape, a) != Stands::in_front) continue;
      if (stands(shape, (a + corners - 1) % corners) == Stands::in_front) painter.drawLine(at(low[a]), at(high[a]));
      if (i > 0) painter.drawLine(at(low[a]), at(low[(a + 1) % corners]));
    }
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.ink, scene.style.hair));
  painter.drawPolygon(polygon(rings.front()));
  paint_hole(painter, scene, at);
  painter.setPen(QPen(theme.ink, scene.style.hair * 1.8));
  painter.drawPolygon(polygon(rings.back()));

  // Corners of the rectangle that holds the floor, seen with the tool: near right, far right, near left.
  const bool high = shape.bore_side_high;
  const double near_x = high ? shape.floor_from_m : shape.floor_to_m,
               far_x = high ? shape.floor_to_m : shape.floor_from_m;
  const double right_y = high ? shape.floor_right_m : shape.floor_left_m,
               left_y = high ? shape.floor_left_m : shape.floor_right_m;
  const Point3 floor[] = {{near_x, right_y, shape.floor_elevation_m},
                          {far_x, right_y, shape.floor_elevation_m},
                          {near_x, left_y, shape.floor_elevation_m}};
  write_beside(painter, scene, (at(floor[0]) + at(floor[1])) / 2 + QPointF(text * 0.6, text * 0.8), false,
               text_of(scene, shape.floor_length_m));
  write_beside(painter, scene, (at(floor[0]) + at(floor[2])) / 2 + QPointF(-text * 0.6, text * 0.8), true,
               text_of(scene, shape.floor_width_m));
  const Point3& foot = floor[1];
  const double above =
      shape.ground.there() ? shape.ground.height_at(foot.x_m, foot.y_m) : elevation_at(scene.ground, foot.x_m);
  dimension(painter, scene, at(foot), at({foot.x_m, foot.y_m, above}),
            depth_text(scene, above - shape.floor_elevation_m));
  painter.restore();
}

void paint_pit_across(QPainter& painter, const QRectF& area, const PitPicture& scene) {
  const PitShape& shape = scene.shape;
  const Theme& theme = scene.style.theme;
  const double back = std::min(scene.tool_length_m, shape.floor_length_m) / 2;
  const double station = shape.face_station_m + (shape.bore_side_high ? -back : back);
  const LevelLine section = cross_section(shape, scene.ground, station);
  if (section.size() < 2) return;
  const double text = scene.style.text;
  const double right = section.front().station_m, left = section.back().station_m;
  const double beside = 0.15 * (left - right) + 0.2, below = 0.25;
  // The ground beside the cut: level, or as it was surveyed.
  LevelLine ground{{right - beside, section.front().elevation_m}, {left + beside, section.back().elevation_m}};
  if (shape.ground.there()) {
    ground = shape.ground.along({station, right - beside}, {station, left + beside});
    for (LevelPoint& p : ground) p.station_m += right - beside;
  }
  double surface = ground.front().elevation_m;
  for (const LevelPoint& p : ground) surface = std::max(surface, p.elevation_m);
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
  for (const LevelPoint& p : ground)
    if (p.station_m > left) earth << at(p.station_m, p.elevation_m);
  earth << at(left + beside, deep) << at(right - beside, deep);
  for (const LevelPoint& p : ground)
    if (p.station_m < right) earth << at(p.station_m, p.elevation_m);
  painter.setPen(Qt::NoPen);
  painter.setBrush(tint(theme.ground, 90));
  painter.drawPolygon(earth);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.ink, scene.style.hair * 1.6));
  painter.drawPolyline(cut);
  QPolygonF beside_left{at(left, elevation_at(ground, left))}, beside_right;
  for (const LevelPoint& p : ground) {
    if (p.station_m > left) beside_left << at(p.station_m, p.elevation_m);
    if (p.station_m < right) beside_right << at(p.station_m, p.elevation_m);
  }
  beside_right << at(right, elevation_at(ground, right));
  painter.drawPolyline(beside_left);
  painter.drawPolyline(beside_right);
  if (shape.ground.surveyed()) {  // what the ground was before
    painter.setPen(QPen(theme.ground, scene.style.hair, Qt::DashLine));
    QPolygonF before;
    for (const LevelPoint& p : ground)
      if (p.station_m > right && p.station_m < left) before << at(p.station_m, p.elevation_m);
    before.prepend(beside_right.back());
    before << beside_left.front();
    painter.drawPolyline(before);
  }
  if (scene.work.water_head_m && *scene.work.water_head_m > -below) {
    const double water = shape.floor_elevation_m + *scene.work.water_head_m;
    painter.setPen(QPen(theme.water, scene.style.hair * 1.4, Qt::DashDotLine));
    if (water < surface) painter.drawLine(at(left + beside, water), at(right - beside, water));
  }
  painter.setPen(QPen(theme.ink, scene.style.hair));
  painter.setBrush(theme.bore);
  const double radius = std::max(2.0, scene.hole_diameter_m / 2 * px);
  painter.drawEllipse(at(scene.axis_offset_m, shape.axis_elevation_m), radius, radius);
  painter.setBrush(Qt::NoBrush);

  dimension(painter, scene, at(shape.floor_left_m, shape.floor_elevation_m) + QPointF(0, text * 1.1),
            at(shape.floor_right_m, shape.floor_elevation_m) + QPointF(0, text * 1.1),
            text_of(scene, shape.floor_width_m));
  dimension(painter, scene, at(left, surface) - QPointF(0, text), at(right, surface) - QPointF(0, text),
            text_of(scene, left - right));
  const QPointF side(at(right - beside, surface).x() + text * 2.2, 0);
  dimension(painter, scene, QPointF(side.x(), at(0, surface).y()),
            QPointF(side.x(), at(0, shape.floor_elevation_m).y()),
            depth_text(scene, surface - shape.floor_elevation_m));
  painter.restore();
}

}  // namespace burrow
