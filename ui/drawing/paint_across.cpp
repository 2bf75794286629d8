#include <QObject>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "burrow/base/quantity_text.h"
#include "burrow/document/text.h"
#include "burrow/drawing/across.h"
#include "burrow/drawing/along.h"
#include "burrow/pit/pit_shapes.h"

namespace burrow {

namespace {

constexpr double near_plane_m = 0.5;  // a utility further off is not drawn
constexpr double least_half_m = 1.0;  // of the width shown, each way
constexpr double below_bore_m = 0.6;  // shown under the hole
constexpr double above_ground_m = 0.25;

QString number(double value, Dimension dimension, UnitSystem units) {
  return text_from(format(value, dimension, units));
}

/// From offsets and elevations to the box; looking along the bore, left is left.
struct View {
  QRectF area;
  double middle_m = 0, top_m = 0, px_per_m = 1;
  [[nodiscard]] QPointF at(double offset_m, double elevation_m) const {
    return {area.center().x() - (offset_m - middle_m) * px_per_m, area.top() + (top_m - elevation_m) * px_per_m};
  }
  [[nodiscard]] double half_width_m() const { return area.width() / 2 / px_per_m; }
};

/// Offsets at which the line x = station runs through an outline, in pairs of in and out.
std::vector<double> cuts_of(const PlanLine& outline, double station_m) {
  std::vector<double> cuts;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &a = outline[i], &b = outline[(i + 1) % outline.size()];
    if ((a.x_m > station_m) == (b.x_m > station_m)) continue;
    cuts.push_back(a.y_m + (station_m - a.x_m) / (b.x_m - a.x_m) * (b.y_m - a.y_m));
  }
  std::sort(cuts.begin(), cuts.end());
  return cuts;
}

/// Surveyed points near the plane, as small crosses.
void paint_surveyed(QPainter& painter, const Scene& scene, const View& view, double station) {
  painter.setPen(QPen(scene.style.theme.ground, scene.style.hair * 1.2));
  const double arm = scene.style.text * 0.25;
  for (const Point3& p : scene.crossing.site.ground_points) {
    if (std::abs(p.x_m - station) > near_plane_m) continue;
    const QPointF at = view.at(p.y_m, p.z_m);
    painter.drawLine(at - QPointF(arm, arm), at + QPointF(arm, arm));
    painter.drawLine(at - QPointF(arm, -arm), at + QPointF(arm, -arm));
  }
}

void paint_earth(QPainter& painter, const Scene& scene, const View& view, double station) {
  const Site& site = scene.crossing.site;
  const Theme& theme = scene.style.theme;
  const double left = view.middle_m + view.half_width_m(), right = view.middle_m - view.half_width_m();
  const LevelLine ground = ground_across(scene.assessment, site, station, right, left);
  QPolygonF surface, earth;  // from right to left
  for (const LevelPoint& p : ground) surface << view.at(p.station_m, p.elevation_m);
  earth = surface;
  earth << QPointF(surface.back().x(), view.area.bottom()) << QPointF(surface.front().x(), view.area.bottom());
  QPainterPath below_ground;
  below_ground.addPolygon(earth);
  below_ground.closeSubpath();
  painter.save();
  painter.setClipPath(below_ground, Qt::IntersectClip);
  painter.setPen(Qt::NoPen);
  for (std::size_t i = 0; i < site.strata.size(); ++i) {
    const Stratum& stratum = site.strata[i];
    painter.setBrush(soil_fill(stratum.soil, theme).tint);
    const bool to_the_ground = i == 0 || !stratum.top || stratum.top->empty();
    const QPointF corner = to_the_ground ? view.area.topLeft() : view.at(left, elevation_at(*stratum.top, station));
    painter.drawRect(QRectF(corner, view.area.bottomRight()));
  }
  for (const Strip& strip : site.strips) {
    const std::vector<double> cuts = cuts_of(strip.outline, station);
    painter.setBrush(soil_fill(strip.soil, theme).tint);
    painter.setPen(QPen(theme.ground, scene.style.hair, Qt::DotLine));
    const double top = strip.top_elevation ? strip.top_elevation->m : view.top_m;
    for (std::size_t i = 1; i < cuts.size(); i += 2)
      painter.drawRect(QRectF(view.at(cuts[i], top), view.at(cuts[i - 1], strip.bottom_elevation.m)));
  }
  painter.restore();
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.ground, scene.style.hair * 1.8));
  painter.drawPolyline(surface);
  paint_surveyed(painter, scene, view, station);
  if (site.water) {
    const double level = elevation_at(*site.water, station);
    painter.setPen(QPen(theme.water, scene.style.hair * 1.3, Qt::DashDotLine));
    painter.drawLine(view.at(left, level), view.at(right, level));
  }
}

void paint_utilities(QPainter& painter, const Scene& scene, const View& view, double station) {
  const Theme& theme = scene.style.theme;
  painter.setFont(drawing_font(scene.style.text * 0.85));
  const QFontMetricsF metrics(painter.font());
  std::vector<QRectF> taken;
  for (const AcrossUtility& near : utilities_across(scene.crossing.site, station, near_plane_m)) {
    const Utility& utility = *near.utility;
    const double wide = std::max(scene.style.hair * 3, utility.outside_diameter.value_or(Length{0}).m * view.px_per_m);
    std::optional<QPointF> name_at;
    for (const PlanLine& run : near.runs) {
      QPolygonF line;
      for (const PlanPoint& p : run) line << view.at(p.x_m, p.y_m);
      painter.setBrush(Qt::NoBrush);
      draw_run(painter, line, QPen(utility_colour(scene, utility.kind), wide));
      for (const QPointF& p : line)
        if (view.area.contains(p) && !name_at) name_at = p;
      if (!name_at && !line.isEmpty() && line.boundingRect().adjusted(-1, -1, 1, 1).intersects(view.area)) {
        const double share =
            (view.area.left() - line.front().x()) /
            (std::abs(line.back().x() - line.front().x()) > 1e-9 ? line.back().x() - line.front().x() : 1);
        name_at = line.front() + std::clamp(share, 0.0, 1.0) * (line.back() - line.front());
      }
    }
    if (near.passes && near.runs.empty()) {
      const QPointF at = view.at(near.passes->x_m, near.passes->y_m);
      painter.setPen(QPen(theme.ink, scene.style.hair));
      painter.setBrush(utility_colour(scene, utility.kind));
      painter.drawEllipse(at, wide / 2, wide / 2);
      name_at = at;
    }
    if (!name_at || !view.area.contains(*name_at + QPointF(1, 0))) continue;
    const QString name = metrics.elidedText(text_from(utility.name.empty() ? utility.id : utility.name), Qt::ElideRight,
                                            view.area.width() * 0.45);
    QRectF box(0, 0, metrics.horizontalAdvance(name) + 4, metrics.height());
    box.moveLeft(std::clamp(name_at->x() + 3, view.area.left() + 2, view.area.right() - box.width() - 2));
    box.moveBottom(name_at->y() - wide / 2 - 1);
    for (int tries = 0;
         tries < 6 && std::any_of(taken.begin(), taken.end(), [&](const QRectF& r) { return r.intersects(box); });
         ++tries)
      box.translate(0, -box.height());
    if (box.top() < view.area.top()) continue;
    taken.push_back(box);
    halo_text(painter, QPointF(box.left() + 2, box.top() + metrics.ascent()), name, theme.ink, theme.paper);
  }
}

void paint_hole(QPainter& painter, const Scene& scene, const View& view, const PathPoint& point, double diameter) {
  const Theme& theme = scene.style.theme;
  painter.setPen(Qt::NoPen);
  const QPointF middle = view.at(point.y_m, point.z_m);
  for (const RingShare& ring : ring_shares) {
    QColor band = theme.band;
    band.setAlpha(ring.strength);
    painter.setBrush(band);
    painter.drawEllipse(middle, ring.sds * point.sd_lateral_m * view.px_per_m,
                        ring.sds * point.sd_vertical_m * view.px_per_m);
  }
  // Which is which, below, where there is room for all three between them.
  const double small = scene.style.text * 0.85;
  if ((ring_shares[1].sds - ring_shares[2].sds) * point.sd_vertical_m * view.px_per_m >= small) {
    painter.setFont(drawing_font(small));
    painter.setPen(theme.ink);
    const QFontMetricsF metrics(painter.font());
    for (const RingShare& ring : ring_shares) {
      const QString name = QString::fromLatin1(ring.name);
      painter.drawText(QPointF(middle.x() - metrics.horizontalAdvance(name) / 2,
                               middle.y() + ring.sds * point.sd_vertical_m * view.px_per_m - metrics.descent()),
                       name);
    }
    painter.setFont(drawing_font(scene.style.text));
  }
  painter.setBrush(theme.paper);
  painter.setPen(QPen(theme.bore, scene.style.hair * 1.8));
  const double r = std::max(scene.style.hair * 2, diameter / 2 * view.px_per_m);
  painter.drawEllipse(view.at(point.y_m, point.z_m), r, r);
}

/// A bar of round length at the lower left.
void paint_bar(QPainter& painter, const Scene& scene, const View& view) {
  const double unit = shown_unit(Dimension::length, scene.style.units);
  const double step = tick_step(view.px_per_m, view.area.width() * 0.16, unit);
  const QPointF from = view.area.bottomLeft() + QPointF(scene.style.text * 0.6, -scene.style.text * 0.6);
  const QPointF to = from + QPointF(step * view.px_per_m, 0);
  painter.setPen(QPen(scene.style.theme.ink, scene.style.hair * 1.6));
  painter.drawLine(from, to);
  for (const QPointF& end : {from, to}) painter.drawLine(end - QPointF(0, 3), end + QPointF(0, 3));
  halo_text(painter, to + QPointF(scene.style.text * 0.4, scene.style.text * 0.35),
            number(step, Dimension::length, scene.style.units), scene.style.theme.ink, scene.style.theme.paper);
}

}  // namespace

std::vector<AcrossUtility> utilities_across(const Site& site, double station_m, double reach_m) {
  std::vector<AcrossUtility> found;
  for (const Utility& utility : site.utilities) {
    AcrossUtility near{&utility, {}, std::nullopt};
    PlanLine run;
    const auto close_run = [&] {
      if (run.size() > 1) near.runs.push_back(run);
      run.clear();
    };
    for (std::size_t i = 1; i < utility.path.size(); ++i) {
      const PathVertex &a = utility.path[i - 1], &b = utility.path[i];
      if (!a.z_m || !b.z_m) {
        close_run();
        continue;
      }
      const auto at = [&](double t) { return PlanPoint{a.y_m + t * (b.y_m - a.y_m), *a.z_m + t * (*b.z_m - *a.z_m)}; };
      const double dx = b.x_m - a.x_m;
      double from = 0, to = 1;
      if (std::abs(dx) < 1e-9) {
        if (std::abs(a.x_m - station_m) > reach_m) {
          close_run();
          continue;
        }
      } else {
        const double one = (station_m - reach_m - a.x_m) / dx, other = (station_m + reach_m - a.x_m) / dx;
        from = std::max(0.0, std::min(one, other));
        to = std::min(1.0, std::max(one, other));
        const double through = (station_m - a.x_m) / dx;
        if (through >= 0 && through <= 1) near.passes = at(through);
      }
      if (from > to) {
        close_run();
        continue;
      }
      if (run.empty()) run.push_back(at(from));
      run.push_back(at(to));
      if (to < 1) close_run();
    }
    close_run();
    // Seen end-on it is a disc, not a line.
    const double wide = utility.outside_diameter.value_or(Length{0.05}).m;
    std::erase_if(near.runs, [&](const PlanLine& r) {
      double low = r.front().x_m, high = low, least = r.front().y_m, most = least;
      for (const PlanPoint& p : r) {
        low = std::min(low, p.x_m);
        high = std::max(high, p.x_m);
        least = std::min(least, p.y_m);
        most = std::max(most, p.y_m);
      }
      return near.passes && std::hypot(high - low, most - least) < 2 * wide;
    });
    if (near.passes || !near.runs.empty()) found.push_back(std::move(near));
  }
  return found;
}

LevelLine ground_across(const Assessment& assessment, const Site& site, double station_m, double from_m, double to_m) {
  const GroundSurface& surface = assessment.ground_surface;
  const PlanPoint from{station_m, from_m}, to{station_m, to_m};
  if (!surface.surveyed() || !surface.surveyed_near({from, to}, surveyed_reach_m)) {
    const double level = elevation_at(site.ground, station_m);
    return {{from_m, level}, {to_m, level}};
  }
  LevelLine line = surface.along(from, to);
  for (LevelPoint& p : line) p.station_m += from_m;
  return line;
}

QRectF across_box(const Scene& scene) {
  if (!scene.layers.across_station_m || scene.crossing.site.ground.empty()) return {};
  const QRectF& plan = scene.frame.plan;
  const double text = scene.style.text;
  const double width = std::min(plan.width() * 0.38, text * 28), height = std::min(plan.height() - text, text * 22);
  if (!(width > text * 10 && height > text * 7)) return {};
  const bool left = scene.frame.px_x(*scene.layers.across_station_m) > plan.center().x();
  return {left ? plan.left() + text / 2 : plan.right() - width - text / 2, plan.bottom() - height - text / 2, width,
          height};
}

void paint_across_line(QPainter& painter, const Scene& scene) {
  if (across_box(scene).isEmpty()) return;
  const Frame& f = scene.frame;
  const double x = f.px_x(*scene.layers.across_station_m);
  painter.setPen(QPen(scene.style.theme.focus, scene.style.hair, Qt::DashLine));
  for (const QRectF& pane : {f.elevation, f.plan})
    if (x > pane.left() && x < pane.right()) painter.drawLine(QPointF(x, pane.top()), QPointF(x, pane.bottom()));
}

void paint_across(QPainter& painter, const Scene& scene) {
  const QRectF box = across_box(scene);
  if (box.isEmpty()) return;
  const Style& style = scene.style;
  const Theme& theme = style.theme;
  const double station = *scene.layers.across_station_m;
  painter.save();
  const std::optional<PathPoint> point = path_point_at(scene.assessment, station);
  const ToolClass* row = find_tool(scene.tables, scene.crossing.bore.tool.tool_class);
  const ToolChoice& plate = scene.crossing.bore.tool;
  const double diameter = plate.diameter ? plate.diameter->m : row ? row->diameter.m : 0;

  painter.setPen(QPen(theme.focus, style.hair * 1.4));
  painter.setBrush(theme.paper);
  painter.drawRect(box);
  painter.setFont(drawing_font(style.text * 0.9, QFont::DemiBold));
  const double line = QFontMetricsF(painter.font()).height();
  painter.setPen(theme.ink);
  painter.drawText(QPointF(box.left() + style.text * 0.5, box.top() + line),
                   QObject::tr("across at station %1, looking along the bore")
                       .arg(number(station, Dimension::station, style.units)));
  painter.setFont(drawing_font(style.text * 0.85));
  painter.setPen(theme.ink_soft);
  QStringList words{QObject::tr("no bore here")};
  if (point) {
    const double ground_m = elevation_at(scene.crossing.site.ground, station);
    const auto spread = [&](double sd_m) {
      return QStringLiteral("±") + number(ring_shares[1].sds * sd_m, Dimension::length, style.units);
    };
    words = {QObject::tr("axis %1 deep").arg(number(ground_m - point->z_m, Dimension::length, style.units)),
             QObject::tr("nine in ten in the ring: %1 across, %2 in height")
                 .arg(spread(point->sd_lateral_m), spread(point->sd_vertical_m))};
  }
  double y = box.top() + 2 * line;
  for (const QString& each : words) {
    painter.drawText(QPointF(box.left() + style.text * 0.5, y),
                     QFontMetricsF(painter.font()).elidedText(each, Qt::ElideRight, box.width() - style.text));
    y += line;
  }

  View view;
  view.area = box.adjusted(style.hair, 3.4 * line, -style.hair, -style.hair);
  painter.setClipRect(view.area);
  painter.fillRect(view.area, theme.sky);
  view.middle_m = point ? point->y_m : scene.crossing.bore.launch.offset->m;
  double ground = elevation_at(scene.crossing.site.ground, station);
  double lowest = ground;
  for (const LevelPoint& p : ground_across(scene.assessment, scene.crossing.site, station, view.middle_m - least_half_m,
                                           view.middle_m + least_half_m)) {
    ground = std::max(ground, p.elevation_m);
    lowest = std::min(lowest, p.elevation_m);
  }
  const double axis = point ? point->z_m : scene.crossing.bore.launch.elevation.m;
  const double reach = point ? 2.576 * point->sd_vertical_m + diameter / 2 : 0;
  view.top_m = std::max(ground, axis + reach) + above_ground_m;
  const double bottom = std::min(lowest, axis - reach) - below_bore_m;
  view.px_per_m =
      std::min(view.area.height() / std::max(0.5, view.top_m - bottom), view.area.width() / (2 * least_half_m));
  paint_earth(painter, scene, view, station);
  paint_utilities(painter, scene, view, station);
  if (point) paint_hole(painter, scene, view, *point, diameter);
  painter.setFont(drawing_font(style.text * 0.85));
  paint_bar(painter, scene, view);
  painter.restore();
}

}  // namespace burrow
