#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "burrow/bore/tool.h"
#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "burrow/language/say.h"
#include "front_page.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

const QColor grey(0xc4, 0xc4, 0xc4), soft(0x55, 0x55, 0x55);
constexpr std::size_t most_named = 24;  ///< utilities; of more the numbers alone

QString tr(const char* text) {
  return QCoreApplication::translate("sheet", text);
}

class Side {
 public:
  Side(Page& page, const Sheet& sheet, const SheetViews& views)
      : paper_(page), sheet_(sheet), views_(views), f_(views.frame), places_(views.frame.elevation) {}

  void draw() {
    for (const Balloon& b : views_.balloons)
      places_.take(QRectF(b.middle.x() - balloon_radius_mm, b.middle.y() - balloon_radius_mm, 2 * balloon_radius_mm,
                          2 * balloon_radius_mm));
    paper_.clip(f_.elevation);
    ground_fill();
    paper_.clip({});
    grid();
    paper_.clip(f_.elevation);
    band();
    ground_line();
    zones();
    strata();
    pits();
    bore();
    surface();
    utilities();
    paper_.clip({});
    balloons();
    dimensions();
    labels();
    paper_.rect(f_.elevation, {}, {0.25});
  }

 private:
  QString length(double m, Dimension d = Dimension::length) const { return text_from(format(m, d, sheet_.units)); }
  QPolygonF line_of(const LevelLine& line) const {
    QPolygonF points;
    if (line.empty()) return points;
    // Held level beyond its ends.
    points << f_.side(std::min(f_.left_station_m, line.front().station_m), line.front().elevation_m);
    for (const LevelPoint& p : line) points << f_.side(p.station_m, p.elevation_m);
    points << f_.side(std::max(f_.right_station_m(), line.back().station_m), line.back().elevation_m);
    return points;
  }

  void grid() {
    const double unit = shown_unit(Dimension::station, sheet_.units);
    const double bottom = f_.elevation_m(f_.elevation.bottom());
    const double ground_top = f_.top_elevation_m - views_.sky_mm / (f_.px_per_m * f_.exaggeration);
    const double up = tick_step(f_.px_per_m * f_.exaggeration, 8, unit);
    for (const double z : ticks(bottom, ground_top + 0.001, up)) {
      const double y = f_.px_z(z);
      paper_.line({f_.elevation.left(), y}, {f_.elevation.right(), y}, {0.13, grey});
      if (y > f_.elevation.bottom() - 1.5) continue;
      paper_.text({f_.elevation.left() - 1, y + 0.75}, tick_text(z, up, unit), label_style, Align::right);
    }
    const QString name = tr("elevation, %1").arg(text_from(unit_name(Dimension::station, sheet_.units)));
    paper_.text({views_.area.left() + 2.4, f_.elevation.center().y()}, name, label_style, Align::centre, 90);
    const double along = tick_step(f_.px_per_m, sheet_.units == UnitSystem::us ? 16 : 12, unit);
    for (const double x : ticks(f_.left_station_m, f_.right_station_m(), along)) {
      const double px = f_.px_x(x);
      paper_.line({px, f_.px_z(ground_top)}, {px, f_.elevation.bottom()}, {0.13, grey});
      paper_.line({px, f_.ruler.top()}, {px, f_.ruler.top() + 1.2}, {0.18});
      const QString words = sheet_.units == UnitSystem::us ? station_words(x, sheet_.units) : tick_text(x, along, unit);
      const double half = text_width_mm(words, label_style) / 2;
      if (px - half < f_.ruler.left() || px + half > f_.ruler.right()) continue;
      paper_.text({px, f_.ruler.top() + 4.2}, words, label_style, Align::centre);
    }
    paper_.line(f_.ruler.topLeft(), f_.ruler.topRight(), {0.25});
    paper_.text({f_.ruler.left() - 1, f_.ruler.top() + 4.2},
                tr("station, %1").arg(text_from(unit_name(Dimension::station, sheet_.units))), label_style,
                Align::right);
  }

  void ground_fill() {
    QPolygonF below = line_of(sheet_.crossing.site.ground);
    if (below.size() < 2) return;
    below << QPointF(below.back().x(), f_.elevation.bottom()) << QPointF(below.front().x(), f_.elevation.bottom());
    paper_.area(below, ground_tint);
  }
  void ground_line() { paper_.line(line_of(sheet_.crossing.site.ground), {0.5, QColor(0x4a, 0x3a, 0x20)}); }

  /// Nothing of the bore may stand above this line.
  void zones() {
    const LevelLine& ground = sheet_.crossing.site.ground;
    for (const RuleZone& zone : sheet_.assessment.zones) {
      if (!zone.cover_m || ground.empty()) continue;
      QPolygonF lower;
      const auto add = [&](double x) { lower << f_.side(x, elevation_at(ground, x) - *zone.cover_m); };
      add(zone.from_m);
      for (const LevelPoint& p : ground)
        if (p.station_m > zone.from_m && p.station_m < zone.to_m) add(p.station_m);
      add(zone.to_m);
      paper_.line(lower, {0.25, zone_red, {1.5, 0.8}});
      for (const double x : {zone.from_m, zone.to_m})
        paper_.line({f_.px_x(x), f_.px_z(elevation_at(ground, x))},
                    {f_.px_x(x), f_.px_z(elevation_at(ground, x) - *zone.cover_m)}, {0.25, zone_red, {1.5, 0.8}});
    }
  }

  void pits() {
    for (const PitShape* pit : {&sheet_.assessment.launch_pit, &sheet_.assessment.exit_pit}) {
      QPolygonF cut;
      for (const LevelPoint& p : pit->section) cut << f_.side(p.station_m, p.elevation_m);
      paper_.area(cut, Qt::white);
      paper_.line(cut, {0.35});
    }
  }

  void bore() {
    const double radius = resolve_tool(sheet_.crossing.bore.tool, sheet_.tables).diameter.m / 2;
    QPolygonF crown, invert, axis;
    for (const PathPoint& p : sheet_.assessment.bore.points) {
      const double half = radius / std::max(0.05, std::cos(p.grade_rad));
      axis << f_.side(p.x_m, p.z_m);
      crown << f_.side(p.x_m, p.z_m + half);
      invert << f_.side(p.x_m, p.z_m - half);
    }
    paper_.line(crown, {0.35, bore_red});
    paper_.line(invert, {0.35, bore_red});
    paper_.line(axis, {0.18, bore_red, {4, 1, 0.6, 1}});
  }

  void band() {
    QPolygonF high, low;
    for (const PathPoint& p : sheet_.assessment.bore.points) {
      high << f_.side(p.x_m, p.z_m + 1.645 * p.sd_vertical_m);
      low << f_.side(p.x_m, p.z_m - 1.645 * p.sd_vertical_m);
    }
    std::reverse(low.begin(), low.end());
    paper_.area(high + low, band_tint, {0.13, band_edge});
  }

  void strata() {
    for (const Stratum& stratum : sheet_.crossing.site.strata)
      if (stratum.top) paper_.line(line_of(*stratum.top), {0.18, QColor(0x80, 0x60, 0x30), {2, 1}});
    if (sheet_.crossing.site.water)
      paper_.line(line_of(*sheet_.crossing.site.water), {0.25, QColor(0x18, 0x60, 0xb0), {3, 1, 0.5, 1}});
  }

  void surface() {
    for (const SurfaceFeature& feature : sheet_.crossing.site.surface) {
      if (!feature.from || !feature.to) continue;
      QPolygonF top, bar;
      const double from = feature.from->m, to = feature.to->m;
      top << f_.side(from, elevation_at(sheet_.crossing.site.ground, from));
      for (const LevelPoint& p : sheet_.crossing.site.ground)
        if (p.station_m > from && p.station_m < to) top << f_.side(p.station_m, p.elevation_m);
      top << f_.side(to, elevation_at(sheet_.crossing.site.ground, to));
      bar = top;
      for (auto p = top.rbegin(); p != top.rend(); ++p) bar << *p - QPointF(0, 0.9);
      paper_.area(bar, QColor(0x60, 0x60, 0x60), {0.18});
    }
  }

  void utilities() {
    for (const Utility& u : sheet_.crossing.site.utilities) {
      if (u.path.empty()) continue;
      const SidePlace at = side_place(sheet_, u);
      const Stroke stroke = utility_stroke(sheet_.tables, u.kind, 0.35);
      if (!at.elevation_m) {
        paper_.line(f_.side(at.station_m, f_.top_elevation_m), {f_.px_x(at.station_m), f_.elevation.bottom()},
                    {0.25, stroke.colour, {1, 1}});
        continue;
      }
      const double r_m = u.outside_diameter ? u.outside_diameter->m / 2 : 0.02;
      const double rx = r_m * f_.px_per_m, ry = rx * f_.exaggeration;
      const QPointF middle = f_.side(at.station_m, *at.elevation_m);
      const auto judged = std::find_if(sheet_.assessment.utilities.begin(), sheet_.assessment.utilities.end(),
                                       [&](const UtilityAnswer& a) { return a.id == u.id; });
      if (judged != sheet_.assessment.utilities.end() && judged->vertical_sd_m) {
        const double up = 1.645 * *judged->vertical_sd_m * f_.px_per_m * f_.exaggeration + ry;
        paper_.line(middle - QPointF(0, up), middle + QPointF(0, up), {0.18, stroke.colour});
      }
      ellipse(middle, std::max(rx, 0.35), std::max(ry, 0.35), stroke.colour);
      const double keep = std::max({rx, ry, 0.8});
      places_.take(QRectF(middle.x() - keep, middle.y() - keep, 2 * keep, 2 * keep));
    }
  }

  void ellipse(const QPointF& middle, double rx, double ry, const QColor& colour) {
    QPolygonF ring;
    for (int i = 0; i < 32; ++i) ring << middle + QPointF(rx * std::cos(i * pi / 16), ry * std::sin(i * pi / 16));
    paper_.area(ring, Qt::white, {0.25, colour});
  }

  void balloons() {
    for (const Balloon& b : views_.balloons) {
      const Utility& u = sheet_.crossing.site.utilities[static_cast<std::size_t>(b.number - 1)];
      const SidePlace at = side_place(sheet_, u);
      const double to_y = at.elevation_m ? f_.px_z(*at.elevation_m) : f_.elevation.bottom();
      const double end = std::clamp(to_y, f_.elevation.top(), f_.elevation.bottom());
      const QColor colour = utility_stroke(sheet_.tables, u.kind, 1).colour;
      // Straight down from where the rows of balloons end, so that leaders do not cross.
      const double knee = f_.elevation.top() + views_.sky_mm - 8.5;
      paper_.line(QPolygonF{b.middle + QPointF(0, balloon_radius_mm), {b.to_x, knee}, {b.to_x, std::max(knee, end)}},
                  {0.13, colour});
    }
    for (const Balloon& b : views_.balloons) {
      const QColor colour = utility_stroke(sheet_.tables, b.kind, 1).colour;
      paper_.circle(b.middle, balloon_radius_mm, Qt::white, {0.25, colour});
      paper_.text(b.middle + QPointF(0, 0.9), QString::number(b.number), {2.5, QFont::DemiBold}, Align::centre);
    }
  }

  /// A dimension between two stations on a line below the drawing.
  void dimension(double from_m, double to_m, double y, const QString& words) {
    const double a = f_.px_x(from_m), b = f_.px_x(to_m);
    paper_.line({a, y}, {b, y}, {0.18});
    for (const double x : {a, b}) {
      paper_.line({x, f_.elevation.bottom() + 0.8}, {x, y + 1}, {0.13, soft});
      paper_.line({x - 0.8, y + 0.8}, {x + 0.8, y - 0.8}, {0.25});
    }
    const double width = text_width_mm(words, label_style);
    if (width + 1.5 < b - a) paper_.text({(a + b) / 2, y - 0.8}, words, label_style, Align::centre);
  }

  void dimensions() {
    const Assessment& a = sheet_.assessment;
    const double y = f_.elevation.bottom() + 4.4;
    const double launch = sheet_.crossing.bore.launch.station.m, exit = sheet_.crossing.bore.exit.station.m;
    if (!a.launch_pit.floor.empty())
      dimension(a.launch_pit.floor_from_m, launch, y, length(a.launch_pit.floor_length_m));
    if (!a.exit_pit.floor.empty()) dimension(exit, a.exit_pit.floor_to_m, y, length(a.exit_pit.floor_length_m));
    dimension(launch, exit, y, tr("bore %1").arg(length(exit - launch)));
    const double from = a.launch_pit.floor.empty() ? launch : a.launch_pit.floor_from_m;
    const double to = a.exit_pit.floor.empty() ? exit : a.exit_pit.floor_to_m;
    dimension(from, to, y + 4.6, length(to - from));
  }

  void labels() {
    const Assessment& a = sheet_.assessment;
    const LevelLine& ground = sheet_.crossing.site.ground;
    // What stands on top, just above the ground.
    for (const SurfaceFeature& feature : sheet_.crossing.site.surface) {
      if (!feature.from || !feature.to) continue;
      const double middle = (feature.from->m + feature.to->m) / 2;
      const double y = f_.px_z(elevation_at(ground, middle));
      const QString words = feature.name.empty() ? choice_words(feature.kind) : text_from(feature.name);
      std::vector<QPointF> at;
      for (const double up : {1.9, 4.3})
        for (const double aside : {0.0, 4.0, -4.0, 8.0, -8.0}) at.push_back({f_.px_x(middle) + aside, y - up});
      places_.label(paper_, at, words, label_style, Align::centre);
    }
    pit_label(a.launch_pit, tr("launch pit"));
    pit_label(a.exit_pit, tr("exit pit"));
    deep_ones();
    covers();
    names();
    if (a.cover.least_m && a.cover.station_m) {
      const double x = f_.px_x(*a.cover.station_m);
      const double top = f_.px_z(elevation_at(ground, *a.cover.station_m));
      const double bottom = top + *a.cover.least_m * f_.px_per_m * f_.exaggeration;
      paper_.line({x, top}, {x, bottom}, {0.18});
      for (const double y : {top, bottom}) paper_.line({x - 0.8, y + 0.8}, {x + 0.8, y - 0.8}, {0.25});
      around(x, (top + bottom) / 2, tr("cover %1").arg(length(*a.cover.least_m)));
    }
    std::vector<QPointF> stations;
    for (const double share : {0.5, 0.35, 0.65, 0.25, 0.8, 0.15})
      stations.push_back({f_.elevation.left() + share * f_.elevation.width(), 0});
    const auto on_line = [&](const LevelLine& line, const QString& words, double down) {
      std::vector<QPointF> at;
      for (const QPointF& p : stations) at.push_back({p.x(), f_.px_z(elevation_at(line, f_.station_m(p.x()))) + down});
      places_.label(paper_, at, words, {2.5, QFont::Normal, soft});
    };
    for (const Stratum& stratum : sheet_.crossing.site.strata) {
      QString words = text_from(stratum.soil);
      if (const SoilClass* soil = find_soil(sheet_.tables, stratum.soil)) words = text_from(soil->name);
      words += QStringLiteral(" (") + choice_words(*stratum.known) + QLatin1Char(')');
      on_line(stratum.top ? *stratum.top : ground, words, 3.0);
    }
    if (sheet_.crossing.site.water) on_line(*sheet_.crossing.site.water, tr("water"), -0.9);
  }

  /// Least cover under each road and track.
  void covers() {
    const LevelLine& ground = sheet_.crossing.site.ground;
    for (const SurfaceFeature& feature : sheet_.crossing.site.surface) {
      if (!feature.from || !feature.to || is_built(feature.kind)) continue;
      const PathPoint* least = nullptr;
      for (const PathPoint& p : sheet_.assessment.bore.points)
        if (p.x_m >= feature.from->m && p.x_m <= feature.to->m && (!least || p.cover_m < least->cover_m)) least = &p;
      if (!least) continue;
      const double x = f_.px_x(least->x_m), top = f_.px_z(elevation_at(ground, least->x_m));
      const double bottom = top + least->cover_m * f_.px_per_m * f_.exaggeration;
      paper_.line({x, top}, {x, bottom}, {0.18, soft});
      for (const double y : {top, bottom}) paper_.line({x - 0.8, y + 0.8}, {x + 0.8, y - 0.8}, {0.25});
      around(x, (top + bottom) / 2, length(least->cover_m));
    }
  }

  void names() {
    if (sheet_.crossing.site.utilities.size() > most_named) return;
    for (const Balloon& b : views_.balloons) {
      const Utility& u = sheet_.crossing.site.utilities[static_cast<std::size_t>(b.number - 1)];
      const SidePlace at = side_place(sheet_, u);
      if (!at.elevation_m || f_.px_z(*at.elevation_m) > f_.elevation.bottom() - 1) continue;
      around(b.to_x + 1, f_.px_z(*at.elevation_m), cut_to(utility_name(u), label_style, 34));
    }
  }

  void around(double x, double y, const QString& words) {
    const double w = text_width_mm(words, label_style);
    std::vector<QPointF> at;
    for (const double down : {0.7, -2.2, 3.6, -5.0, 6.4, 9.2})
      for (const double aside : {1.4, -w - 1.4}) at.push_back({x + aside, y + down});
    places_.label(paper_, at, words, label_style);
  }

  void pit_label(const PitShape& pit, const QString& name) {
    if (pit.section.empty()) return;
    const double x = f_.px_x((pit.floor_from_m + pit.floor_to_m) / 2);
    const double floor = f_.px_z(pit.floor_elevation_m);
    const double width = (pit.floor_to_m - pit.floor_from_m) * f_.px_per_m - 1.5;
    const QString lines[] = {name, tr("%1 deep").arg(length(pit.depth_m)),
                             tr("floor %1").arg(length(pit.floor_elevation_m, Dimension::station))};
    bool inside = floor - f_.px_z(pit.floor_elevation_m + pit.depth_m) > 10.5;
    for (const QString& words : lines) inside = inside && text_width_mm(words, label_style) < width;
    for (int i = 0; i < 3; ++i) {
      std::vector<QPointF> at;
      if (inside) at.push_back({x, floor - 1 - 3.3 * (2 - i)});
      for (const double down : {0.0, 3.3, 6.6, 9.9}) at.push_back({x, floor + 3.4 + 3.3 * i + down});
      places_.label(paper_, at, lines[i], label_style, Align::centre, false);
    }
  }

  /// A utility below what is shown: an arrow at the edge, with its level.
  void deep_ones() {
    for (const Balloon& b : views_.balloons) {
      const Utility& u = sheet_.crossing.site.utilities[static_cast<std::size_t>(b.number - 1)];
      const SidePlace at = side_place(sheet_, u);
      if (!at.elevation_m || f_.px_z(*at.elevation_m) <= f_.elevation.bottom()) continue;
      const QColor colour = utility_stroke(sheet_.tables, u.kind, 1).colour;
      const QPointF tip(b.to_x, f_.elevation.bottom() - 0.3);
      paper_.area(QPolygonF{tip, tip + QPointF(-0.9, -2), tip + QPointF(0.9, -2)}, colour);
      const QString words = tr("%1 at %2").arg(b.number).arg(length(*at.elevation_m, Dimension::station));
      const double w = text_width_mm(words, label_style);
      places_.label(paper_,
                    {tip + QPointF(1.6, -0.6), tip + QPointF(-1.6 - w, -0.6), tip + QPointF(1.6, -3.4),
                     tip + QPointF(-1.6 - w, -3.4)},
                    words, label_style);
    }
  }

  Paper paper_;
  const Sheet& sheet_;
  const SheetViews& views_;
  const Frame& f_;
  Places places_;
};

}  // namespace

void draw_side(Page& page, const Sheet& sheet, const SheetViews& views) {
  Side(page, sheet, views).draw();
}

}  // namespace burrow
