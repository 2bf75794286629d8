#include "views.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "parts.h"

namespace burrow {

namespace {

constexpr double gutter = 17;      // elevations left of the side elevation
constexpr double below_side = 13;  // dimensions below the bore
constexpr double ruler = 6.5;
constexpr double balloon_row = 5.4;

struct Extent {
  double from = 0, to = 0, bottom = 0, top = 0, right = 0, left = 0;
};

Extent extent_of(const Sheet& sheet) {
  const Assessment& a = sheet.assessment;
  const Bore& bore = sheet.crossing.bore;
  Extent e;
  e.from = bore.launch.station.m;
  e.to = bore.exit.station.m;
  e.right = std::min(bore.launch.offset->m, bore.exit.offset->m);
  e.left = std::max(bore.launch.offset->m, bore.exit.offset->m);
  e.bottom = bore.launch.elevation.m;
  for (const PitShape* pit : {&a.launch_pit, &a.exit_pit}) {
    for (const PlanLine* line : {&pit->floor, &pit->footprint})
      for (const PlanPoint& p : *line) {
        e.from = std::min(e.from, p.x_m);
        e.to = std::max(e.to, p.x_m);
        e.right = std::min(e.right, p.y_m);
        e.left = std::max(e.left, p.y_m);
      }
    if (!pit->section.empty()) e.bottom = std::min(e.bottom, pit->floor_elevation_m);
  }
  const double far = e.to;
  for (const PathPoint& p : a.bore.points) {
    if (p.x_m > far) break;
    e.bottom = std::min(e.bottom, p.z_m - 1.645 * p.sd_vertical_m);
    e.right = std::min(e.right, p.y_m - 1.645 * p.sd_lateral_m);
    e.left = std::max(e.left, p.y_m + 1.645 * p.sd_lateral_m);
  }
  const double beside = std::max(0.2, 0.005 * (e.to - e.from));
  e.from -= beside;
  e.to += beside;
  e.right -= 0.5;
  e.left += 0.5;
  e.bottom -= 0.3;
  e.top = std::max(elevation_at(sheet.crossing.site.ground, e.from), elevation_at(sheet.crossing.site.ground, e.to));
  for (const LevelPoint& p : sheet.crossing.site.ground)
    if (p.station_m > e.from && p.station_m < e.to) e.top = std::max(e.top, p.elevation_m);
  // Utilities a little deeper than the bore are shown too.
  const double reach = e.bottom - 1.5;
  for (const UtilityAnswer& u : a.utilities)
    if (u.on_utility && u.on_utility->z_m - 0.3 > reach) e.bottom = std::min(e.bottom, u.on_utility->z_m - 0.3);
  e.bottom = std::min(e.bottom, e.top - 0.5);
  return e;
}

/// Balloons in rows: in each row those that come next are moved aside until they stand clear.
bool spread(std::vector<Balloon>& balloons, const QRectF& room, int rows, double most_aside) {
  std::vector<std::vector<Balloon*>> by_row(static_cast<std::size_t>(rows));
  for (std::size_t i = 0; i < balloons.size(); ++i) by_row[i % by_row.size()].push_back(&balloons[i]);
  bool near = true;
  for (std::size_t r = 0; r < by_row.size(); ++r) {
    auto& row = by_row[r];
    const double left = room.left() + balloon_radius_mm, right = room.right() - balloon_radius_mm;
    double least = left;
    for (Balloon* b : row) {
      b->middle = {std::max(least, b->to_x), room.top() + balloon_row * (static_cast<double>(r) + 0.5)};
      least = b->middle.x() + balloon_pitch_mm;
    }
    double most = right;
    for (auto b = row.rbegin(); b != row.rend(); ++b) {
      (*b)->middle.setX(std::min((*b)->middle.x(), most));
      most = (*b)->middle.x() - balloon_pitch_mm;
      near = near && std::abs((*b)->middle.x() - (*b)->to_x) <= most_aside;
      if ((*b)->middle.x() < left - 1e-6) near = false;
    }
  }
  return near;
}

/// Those whose place lies on the sheet, from left to right.
std::vector<Balloon> balloons_of(const Sheet& sheet, const Frame& frame) {
  std::vector<Balloon> all;
  int number = 0;
  for (const Utility& u : sheet.crossing.site.utilities) {
    ++number;
    if (u.path.empty()) continue;
    const double x = frame.px_x(side_place(sheet, u).station_m);
    if (x < frame.elevation.left() + 0.5 || x > frame.elevation.right() - 0.5) continue;
    all.push_back({number, u.kind, {}, x});
  }
  std::stable_sort(all.begin(), all.end(), [](const Balloon& a, const Balloon& b) { return a.to_x < b.to_x; });
  return all;
}

int rows_for(const Sheet& sheet, double width_mm, double scale, const Extent& e) {
  Frame probe;
  probe.elevation = QRectF(0, 0, width_mm, 10);
  probe.px_per_m = 1000 / scale / sheet.enlarged;
  probe.left_station_m = (e.from + e.to) / 2 - width_mm / probe.px_per_m / 2;
  std::vector<Balloon> all = balloons_of(sheet, probe);
  for (int rows = 1; rows < 8; ++rows)
    if (spread(all, QRectF(0, 0, width_mm, 0), rows, 7)) return rows;
  return 8;
}

}  // namespace

std::vector<double> standard_scales(UnitSystem units) {
  if (units == UnitSystem::us)
    return {12,  24,  36,  48,   60,   72,   96,    120,   144,   180,    240,    300,    360,
            480, 600, 960, 1200, 2400, 6000, 12000, 24000, 60000, 120000, 240000, 600000, 1200000};
  return {10,   20,   25,   50,    75,    100,   125,    200,    250,    500,
          1000, 2000, 5000, 10000, 20000, 50000, 100000, 200000, 500000, 1000000};
}

QString scale_words(double scale, UnitSystem units) {
  const QString words = QStringLiteral("1 : %1").arg(text_from(significant_text(scale, 7)));
  const double feet = scale / 12;
  if (units == UnitSystem::us && std::abs(feet - std::round(feet)) < 1e-9)
    return QCoreApplication::translate("sheet", "%1 (1 in = %2 ft)").arg(words, QString::number(feet, 'f', 0));
  return words;
}

bool is_built(SurfaceKind kind) {
  return kind == SurfaceKind::building || kind == SurfaceKind::footing || kind == SurfaceKind::wall;
}

void test_hole_sign(Paper& paper, const QPointF& at) {
  paper.circle(at, 1, Qt::white, {0.25});
  paper.line(at - QPointF(1, 0), at + QPointF(1, 0), {0.18});
  paper.line(at - QPointF(0, 1), at + QPointF(0, 1), {0.18});
}

void exposure_sign(Paper& paper, const QPointF& at) {
  constexpr double half = 1.1;
  paper.rect(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half), Qt::white, {0.35});
  paper.line(at - QPointF(half, half), at + QPointF(half, half), {0.25});
  paper.line(at + QPointF(-half, half), at + QPointF(half, -half), {0.25});
}

SidePlace side_place(const Sheet& sheet, const Utility& utility) {
  for (const UtilityAnswer& u : sheet.assessment.utilities)
    if (u.id == utility.id && u.on_utility) return {u.on_utility->x_m, u.on_utility->z_m};
  const UtilityMark mark = utility_mark(utility);
  return {mark.station_m, mark.depth_known ? std::optional(mark.elevation_m) : std::nullopt};
}

Stroke utility_stroke(const Tables& tables, UtilityKind kind, double width_mm) {
  Stroke stroke{width_mm};
  for (const UtilityKindRow& row : tables.utilities)
    if (row.kind == kind) {
      stroke.colour = QColor(text_from(row.colour));
      for (const double length : row.dash) stroke.dash_mm << length * width_mm;
    }
  return stroke;
}

Result<SheetViews> place_views(const Sheet& sheet, const QRectF& area) {
  const Extent e = extent_of(sheet);
  const double times = std::max(1.0, sheet.crossing.sheet.vertical_exaggeration->v);
  const double width = area.width() - gutter, band = band_height(area.height());
  const double below = below_side + ruler + (band > 0 ? band + 1.5 : 0);
  const auto mm_per_m = [&](double scale) { return 1000 / scale / sheet.enlarged; };
  const auto sky_at = [&](double scale) { return 12 + balloon_row * rows_for(sheet, width, scale, e); };
  const auto side_height = [&](double scale) { return sky_at(scale) + (e.top - e.bottom) * mm_per_m(scale) * times; };
  const auto plan_height = [&](double scale) { return (e.left - e.right) * mm_per_m(scale) + 5; };
  const auto fits = [&](double scale) {
    return (e.to - e.from) * mm_per_m(scale) <= width &&
           side_height(scale) + below + plan_height(scale) <= area.height();
  };
  double best = 0;
  for (const double scale : standard_scales(sheet.units))
    if (fits(scale)) {
      best = scale;
      break;
    }
  if (best == 0) return fail("paper", "too small for the heights shown", "a larger paper, or less exaggeration");
  SheetViews views;
  views.area = area;
  views.scale = sheet.scale > 0 ? sheet.scale : best;
  if (!fits(views.scale))
    return fail("scale", QStringLiteral("1:%1").arg(views.scale).toStdString(),
                QStringLiteral("1:%1 or smaller: the drawing does not fit on this paper").arg(best).toStdString());
  Frame& f = views.frame;
  f.exaggeration = times;
  f.px_per_m = mm_per_m(views.scale);
  views.sky_mm = sky_at(views.scale);
  // What is left over goes to the plan as far as it has something to show, then to two metres of ground below, then to
  // the plan again.
  const double spare = area.height() - below - side_height(views.scale) - plan_height(views.scale);
  double wanted = 0;
  for (const Utility& u : sheet.crossing.site.utilities)
    for (const PathVertex& v : u.path) wanted = std::max(wanted, std::abs(v.y_m));
  const double half = std::max({e.left, -e.right, std::min(wanted, 5.0)});
  const double to_plan = std::clamp(2 * half * f.px_per_m + 5 - plan_height(views.scale), 0.0, spare);
  const double to_side = std::min(spare - to_plan, 2 * f.px_per_m * times);
  const double plan = plan_height(views.scale) + spare - to_side;
  const double side = area.height() - below - plan;
  f.elevation = QRectF(area.left() + gutter, area.top(), width, side);
  const double under = f.elevation.bottom() + below_side;
  if (band > 0) views.band = QRectF(area.left() + gutter, under + 1.5, width, band);
  f.ruler = QRectF(area.left() + gutter, under + below - below_side - ruler, width, ruler);
  f.plan = QRectF(area.left() + gutter, f.ruler.bottom(), width, plan);
  f.left_station_m = (e.from + e.to) / 2 - width / f.px_per_m / 2;
  f.top_elevation_m = e.top + views.sky_mm / (f.px_per_m * times);
  f.top_offset_m = (e.left + e.right) / 2 + plan / f.px_per_m / 2;
  views.balloons = balloons_of(sheet, f);
  const int rows = rows_for(sheet, width, views.scale, e);
  spread(views.balloons, QRectF(f.elevation.left() + 1, area.top() + 1, width - 2, balloon_row * rows), rows, 7);
  return views;
}

}  // namespace burrow
