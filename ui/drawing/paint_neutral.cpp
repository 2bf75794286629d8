/// The level at which a level tool runs straight: above it climbs, below it sags.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

constexpr double spread_sds = 2;  ///< the name may stand on the palest part of the bore's spread

/// The line on the screen, in pieces where it has no level.
std::vector<QPolygonF> pieces(const Scene& scene) {
  std::vector<QPolygonF> all(1);
  for (const NeutralPoint& p : scene.assessment.neutral_line) {
    if (p.elevation_m)
      all.back() << scene.frame.side(p.station_m, *p.elevation_m);
    else if (!all.back().isEmpty())
      all.emplace_back();
  }
  return all;
}

/// Highest and lowest point of a line between two places, in px; nothing where it does not reach over both.
struct Reach {
  double top = 1e300, bottom = -1e300;
};
std::optional<Reach> reach_of(const QPolygonF& line, double from, double to) {
  if (line.size() < 2 || line.first().x() > from || line.last().x() < to) return std::nullopt;
  Reach reach;
  for (qsizetype i = 1; i < line.size(); ++i) {
    const QPointF &a = line[i - 1], &b = line[i];
    if (b.x() < from || a.x() > to || !(b.x() > a.x())) continue;
    for (const double x : {std::max(from, a.x()), std::min(to, b.x())}) {
      const double y = a.y() + (x - a.x()) / (b.x() - a.x()) * (b.y() - a.y());
      reach.top = std::min(reach.top, y);
      reach.bottom = std::max(reach.bottom, y);
    }
  }
  return reach;
}

std::array<QString, 3> names() {
  return {QObject::tr("neutral cover: above it the tool climbs, below it sags"),
          QObject::tr("neutral cover: climbs above, sags below"), QObject::tr("neutral cover")};
}

QFont name_font(const Style& style) {
  return drawing_font(style.text * 0.92);
}

/// What the name must not cover: pits, utilities, the bore with its spread, the ground line, names that stand already.
struct Obstacles {
  std::vector<QRectF> pits, utilities, names;
  QPolygonF bore_top, bore_bottom;
};

Obstacles obstacles_of(const Scene& scene) {
  const Frame& f = scene.frame;
  Obstacles all;
  for (const PitShape* pit : {&scene.assessment.launch_pit, &scene.assessment.exit_pit}) {
    QPolygonF cut;
    for (const LevelPoint& p : pit->section) cut << f.side(p.station_m, p.elevation_m);
    all.pits.push_back(cut.boundingRect());
  }
  for (const Utility& utility : scene.crossing.site.utilities) {
    const UtilityMark mark = utility_mark(utility);
    if (utility.path.empty()) continue;
    const double r = std::max(scene.style.text * 0.5, utility.outside_diameter.value_or(Length{0}).m / 2 * f.px_per_m);
    const QPointF at = mark.depth_known ? f.side(mark.station_m, mark.elevation_m)
                                        : QPointF(f.px_x(mark.station_m), f.elevation.center().y());
    const double h = mark.depth_known ? r * f.exaggeration : f.elevation.height();
    all.utilities.emplace_back(at.x() - r, at.y() - h, 2 * r, 2 * h);
  }
  all.names = strata_name_boxes(scene);
  if (scene.layers.zones)
    for (const QRectF& box : zone_name_boxes(scene)) all.names.push_back(box);
  for (const PathPoint& p : scene.assessment.bore.points) {
    all.bore_top << f.side(p.x_m, p.z_m + spread_sds * p.sd_vertical_m);
    all.bore_bottom << f.side(p.x_m, p.z_m - spread_sds * p.sd_vertical_m);
  }
  return all;
}

bool is_free(const Scene& scene, const Obstacles& obstacles, const QRectF& box) {
  const Frame& f = scene.frame;
  const double air = scene.style.text * 0.3;
  if (!f.elevation.adjusted(air, air, -air, -scene.style.text * 1.8).contains(box)) return false;
  for (const double x : {box.left(), box.center().x(), box.right()})
    if (!scene.crossing.site.ground.empty() &&
        f.px_z(elevation_at(scene.crossing.site.ground, f.station_m(x))) + air > box.top())
      return false;
  const auto top = reach_of(obstacles.bore_top, box.left(), box.right());
  const auto bottom = reach_of(obstacles.bore_bottom, box.left(), box.right());
  if (top && bottom && top->top < box.bottom() && bottom->bottom > box.top()) return false;
  const auto covers = [&](const QRectF& taken) { return taken.adjusted(-air, 0, air, 0).intersects(box); };
  return std::none_of(obstacles.pits.begin(), obstacles.pits.end(), covers) &&
         std::none_of(obstacles.names.begin(), obstacles.names.end(), covers) &&
         std::none_of(obstacles.utilities.begin(), obstacles.utilities.end(), covers);
}

struct Name {
  QString text;
  QRectF box;
};

/// The longest wording that finds room along the line, above it rather than below, as far to the right as it can stand:
/// the names of the strata are on the left. Where none does, the shortest behind the line's end.
Name place_name(const Scene& scene) {
  const QFontMetricsF metrics(name_font(scene.style));
  const double text = scene.style.text;
  const double h = metrics.ascent() + metrics.descent();
  const std::vector<QPolygonF> lines = pieces(scene);
  const Obstacles obstacles = obstacles_of(scene);
  for (const QString& name : names()) {
    const double w = metrics.horizontalAdvance(name) + 4;
    for (const bool on_top : {true, false}) {
      for (const QPolygonF& line : lines) {
        if (line.size() < 2) continue;
        const double first = std::max(line.first().x(), scene.frame.elevation.left());
        const double last = std::min(line.last().x(), scene.frame.elevation.right()) - w;
        for (double x = last; x >= first; x -= text * 1.5) {
          const auto reach = reach_of(line, x, x + w);
          if (!reach) continue;
          const QRectF box(x, on_top ? reach->top - h - text * 0.15 : reach->bottom + text * 0.15, w, h);
          if (is_free(scene, obstacles, box)) return {name, box};
        }
      }
    }
  }
  if (lines.back().size() < 2) return {};
  const double w = metrics.horizontalAdvance(names().back()) + 4;
  const QRectF box(lines.back().last() + QPointF(text * 0.4, -h / 2), QSizeF(w, h));
  const bool clear =
      scene.frame.elevation.contains(box) && std::none_of(obstacles.utilities.begin(), obstacles.utilities.end(),
                                                          [&](const QRectF& taken) { return taken.intersects(box); });
  return clear ? Name{names().back(), box} : Name{};
}

}  // namespace

QRectF neutral_name_box(const Scene& scene) {
  return place_name(scene).box;
}

void paint_neutral_line(QPainter& painter, const Scene& scene) {
  if (!scene.layers.neutral_line) return;
  const Theme& theme = scene.style.theme;
  QPen pen(theme.bore, scene.style.hair * 1.1);
  pen.setDashPattern({9, 4, 1.5, 4});
  for (const QPolygonF& line : pieces(scene))
    if (line.size() > 1 && line.boundingRect().adjusted(0, -1, 0, 1).intersects(scene.frame.elevation))
      draw_run(painter, line, pen);
  const Name name = place_name(scene);
  if (name.text.isEmpty()) return;
  painter.setFont(name_font(scene.style));
  const double ascent = QFontMetricsF(painter.font()).ascent();
  std::string soil;
  for (const Stratum& s : scene.crossing.site.strata) {
    const double station = scene.frame.station_m(name.box.center().x());
    const bool above =
        s.top && !s.top->empty() && elevation_at(*s.top, station) < scene.frame.elevation_m(name.box.center().y());
    if (!above) soil = s.soil;
  }
  halo_text(painter, QPointF(name.box.left() + 2, name.box.top() + ascent), name.text, theme.ink_soft,
            soil_fill(soil, theme).tint);
  painter.setFont(drawing_font(scene.style.text));
}

}  // namespace burrow
