#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "burrow/language/say.h"
#include "front_page.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

const QColor grey(0xc4, 0xc4, 0xc4), soft(0x55, 0x55, 0x55);

QString tr(const char* text) {
  return QCoreApplication::translate("sheet", text);
}

class Plan {
 public:
  Plan(Page& page, const Sheet& sheet, const SheetViews& views)
      : paper_(page), sheet_(sheet), f_(views.frame), places_(views.frame.plan) {}

  void draw() {
    paper_.clip(f_.plan);
    surface();
    paper_.clip({});
    grid();
    paper_.clip(f_.plan);
    band();
    zones();
    site();
    pits();
    utilities();
    bore();
    paper_.clip({});
    direction();
    numbers();
    labels();
    paper_.rect(f_.plan, {}, {0.25});
  }

 private:
  QPolygonF points(const PlanLine& line) const {
    QPolygonF all;
    for (const PlanPoint& p : line) all << f_.above(p.x_m, p.y_m);
    return all;
  }

  void grid() {
    const double unit = shown_unit(Dimension::station, sheet_.units);
    const double along = tick_step(f_.px_per_m, 12, unit);
    for (const double x : ticks(f_.left_station_m, f_.right_station_m(), along))
      paper_.line({f_.px_x(x), f_.plan.top()}, {f_.px_x(x), f_.plan.bottom()}, {0.13, grey});
    const double across = tick_step(f_.px_per_m, 8, unit);
    for (const double y : ticks(f_.offset_m(f_.plan.bottom()), f_.top_offset_m, across)) {
      const double px = f_.px_y(y);
      paper_.line({f_.plan.left(), px}, {f_.plan.right(), px}, {0.13, grey});
      if (px < f_.plan.top() + 1.6 || px > f_.plan.bottom() - 1) continue;
      paper_.text({f_.plan.left() - 1, px + 0.75}, tick_text(y, across, unit), label_style, Align::right);
    }
    if (f_.plan.height() > 34)
      paper_.text({f_.plan.left() - 14.4, f_.plan.center().y()},
                  tr("offset, left up, %1").arg(text_from(unit_name(Dimension::station, sheet_.units))), label_style,
                  Align::centre, 90);
  }

  void surface() {
    for (const SurfaceFeature& feature : sheet_.crossing.site.surface) {
      QPolygonF outline = points(feature.outline);
      if (outline.isEmpty() && feature.from && feature.to) {
        const double top = f_.top_offset_m, bottom = f_.offset_m(f_.plan.bottom());
        const double lean = std::tan(std::clamp(feature.skew->rad, -1.4, 1.4));
        const double from = feature.from->m, to = feature.to->m;
        outline << f_.above(from - top * lean, top) << f_.above(to - top * lean, top)
                << f_.above(to - bottom * lean, bottom) << f_.above(from - bottom * lean, bottom);
      }
      paper_.area(outline, is_built(feature.kind) ? building_grey : surface_grey, {0.18, soft});
    }
  }

  void site() {
    const Site& site = sheet_.crossing.site;
    for (const Background& background : site.background)
      for (const PlanLine& line : background.lines) paper_.line(points(line), {0.13, soft});
    for (const Strip& strip : site.strips) paper_.area(points(strip.outline), {}, {0.18, soft, {0.6, 0.6}});
    for (const Boundary& boundary : site.boundaries)
      paper_.line(points(boundary.line), {0.35, Qt::black, {5, 1, 0.8, 1, 0.8, 1}});
    for (const Tree& tree : site.trees) {
      paper_.circle(f_.above(tree.station.m, tree.offset.m), tree.protection_radius.m * f_.px_per_m, {},
                    {0.18, tree_green, {1, 0.6}});
      paper_.circle(f_.above(tree.station.m, tree.offset.m), 0.8, tree_green);
    }
    for (const Plant& plant : site.plant) {
      const QPointF at = f_.above(plant.station.m, plant.offset.m);
      const QSizeF size(plant.length.m * f_.px_per_m, plant.width.m * f_.px_per_m);
      paper_.rect(QRectF(at - QPointF(size.width() / 2, size.height() / 2), size), {}, {0.25});
    }
  }

  void pits() {
    for (const PitShape* pit : {&sheet_.assessment.launch_pit, &sheet_.assessment.exit_pit}) {
      paper_.area(points(pit->footprint), Qt::white, {0.35, Qt::black, {2, 0.8}});
      paper_.area(points(pit->floor), {}, {0.35});
    }
  }

  void utilities() {
    for (const Utility& u : sheet_.crossing.site.utilities) {
      QPolygonF line;
      for (const PathVertex& v : u.path) line << f_.above(v.x_m, v.y_m);
      paper_.line(line, utility_stroke(sheet_.tables, u.kind, 0.5));
    }
    for (const TestHole& hole : sheet_.crossing.site.test_holes) {
      test_hole_sign(paper_, f_.above(hole.station.m, hole.offset.m));
    }
    for (const UtilityAnswer& u : sheet_.assessment.utilities)
      if (u.expose && u.hole_station_m && u.hole_offset_m)
        exposure_sign(paper_, f_.above(*u.hole_station_m, *u.hole_offset_m));
  }

  /// No pit may stand within these lines.
  void zones() {
    for (const RuleZone& zone : sheet_.assessment.zones) {
      if (!zone.pit_setback_m) continue;
      for (const double x : {zone.from_m - *zone.pit_setback_m, zone.to_m + *zone.pit_setback_m})
        paper_.line({f_.px_x(x), f_.plan.top()}, {f_.px_x(x), f_.plan.bottom()}, {0.25, zone_red, {1.5, 0.8}});
    }
  }

  void bore() {
    QPolygonF axis;
    for (const PathPoint& p : sheet_.assessment.bore.points) axis << f_.above(p.x_m, p.y_m);
    paper_.line(axis, {0.35, bore_red});
    paper_.line(f_.above(f_.left_station_m, 0), f_.above(f_.right_station_m(), 0), {0.13, soft, {4, 1, 0.6, 1}});
  }

  void band() {
    QPolygonF left, right;
    for (const PathPoint& p : sheet_.assessment.bore.points) {
      left << f_.above(p.x_m, p.y_m + 1.645 * p.sd_lateral_m);
      right << f_.above(p.x_m, p.y_m - 1.645 * p.sd_lateral_m);
    }
    std::reverse(right.begin(), right.end());
    paper_.area(left + right, band_tint, {0.13, band_edge});
  }

  /// North where it is known, else the way of the crossing line.
  void direction() {
    const auto& geo = sheet_.crossing.site.georeference;
    const bool north = geo && geo->azimuth.entered;
    // Grid north stands to the left of the line by its azimuth.
    const double turn = north ? geo->azimuth->rad : 0;
    const QPointF along(std::cos(turn), -std::sin(turn));
    const double r = 5;
    const QRectF box(f_.plan.right() - 2 * r - 3, f_.plan.top() + 1.5, 2 * r + 1.5, 2 * r + 4.5);
    places_.take(box);
    paper_.rect(box, QColor(255, 255, 255, 225), {0.18, soft});
    const QPointF middle(box.center().x(), box.top() + r + 0.6);
    const QPointF tip = middle + along * (r - 0.6), tail = middle - along * (r - 0.6);
    const QPointF across(-along.y(), along.x());
    paper_.area(QPolygonF{tip, middle - along * 1.5 + across * 1.7, middle - along * 0.6}, Qt::black);
    paper_.area(QPolygonF{tip, middle - along * 1.5 - across * 1.7, middle - along * 0.6}, Qt::white, {0.18});
    paper_.line(middle - along * 0.6, tail, {0.25});
    paper_.text({box.center().x(), box.bottom() - 0.9},
                north ? QCoreApplication::translate("sheet", "north") : QCoreApplication::translate("sheet", "bore"),
                {2.5, QFont::DemiBold}, Align::centre);
  }

  /// The number of each utility on its own line, wherever there is room.
  void numbers() {
    int number = 0;
    for (const Utility& u : sheet_.crossing.site.utilities) {
      ++number;
      const QColor colour = utility_stroke(sheet_.tables, u.kind, 1).colour;
      const TextStyle style{2.5, QFont::DemiBold};
      const QString words = QString::number(number);
      for (const QPointF& at : along(u)) {
        const QRectF ring(at.x() - balloon_radius_mm, at.y() - balloon_radius_mm, 2 * balloon_radius_mm,
                          2 * balloon_radius_mm);
        if (!places_.free(ring)) continue;
        paper_.circle(at, balloon_radius_mm, Qt::white, {0.25, colour});
        paper_.text(at + QPointF(0, 0.9), words, style, Align::centre);
        places_.take(ring);
        break;
      }
    }
  }

  /// Places along a utility within the plan, from its ends to the middle.
  std::vector<QPointF> along(const Utility& u) const {
    std::vector<QPointF> inside;
    for (std::size_t i = 1; i < u.path.size(); ++i) {
      const QPointF a = f_.above(u.path[i - 1].x_m, u.path[i - 1].y_m), b = f_.above(u.path[i].x_m, u.path[i].y_m);
      const double run = std::hypot(b.x() - a.x(), b.y() - a.y());
      const int steps = static_cast<int>(std::clamp(run / 2.5, 1.0, 400.0));
      for (int k = 0; k <= steps; ++k) {
        const QPointF p = a + (b - a) * k / steps;
        if (f_.plan.adjusted(2.5, 2.5, -2.5, -2.5).contains(p)) inside.push_back(p);
      }
    }
    std::vector<QPointF> all;
    for (std::size_t k = 0; k < (inside.size() + 1) / 2; ++k) {
      all.push_back(inside[inside.size() - 1 - k]);
      all.push_back(inside[k]);
    }
    return all;
  }

  void labels() {
    const auto named = [&](const PitShape& pit, const char* name) {
      if (pit.footprint.empty()) return;
      const QPointF middle = f_.above((pit.floor_from_m + pit.floor_to_m) / 2, pit.floor_left_m);
      const QString words = QCoreApplication::translate("sheet", name);
      const QString size = QStringLiteral("%1 × %2").arg(shown(pit.floor_length_m, Dimension::length, sheet_.units),
                                                         shown(pit.floor_width_m, Dimension::length, sheet_.units));
      std::vector<QPointF> at;
      for (const double up : {1.0, 3.8, 6.6, 9.4, -3.0, -6.0}) at.push_back(middle - QPointF(0, up));
      places_.label(paper_, at, words + QStringLiteral(" ") + size, label_style, Align::centre);
    };
    named(sheet_.assessment.launch_pit, "launch pit");
    named(sheet_.assessment.exit_pit, "exit pit");
    for (const SurfaceFeature& feature : sheet_.crossing.site.surface) {
      QPointF middle;
      if (!feature.outline.empty())
        middle = points(feature.outline).boundingRect().intersected(f_.plan).center();
      else if (feature.from && feature.to)
        middle = {f_.px_x((feature.from->m + feature.to->m) / 2), f_.plan.bottom() - 3};
      else
        continue;
      const QString words = feature.name.empty() ? choice_words(feature.kind) : text_from(feature.name);
      std::vector<QPointF> at;
      for (const double up : {0.0, 3.0, 6.0, -3.0, 9.0, 12.0, 16.0, 20.0})
        for (const double aside : {0.0, 6.0, -6.0}) at.push_back(middle + QPointF(aside, -up));
      places_.label(paper_, at, words, {2.5, QFont::Normal, soft}, Align::centre);
    }
    for (const Tree& tree : sheet_.crossing.site.trees) {
      const QPointF p = f_.above(tree.station.m, tree.offset.m);
      places_.label(paper_, {p + QPointF(1.6, 0.8), p + QPointF(1.6, 3.4), p + QPointF(1.6, -2)},
                    tree.name.empty() ? QCoreApplication::translate("sheet", "tree") : text_from(tree.name),
                    label_style);
    }
  }

  Paper paper_;
  const Sheet& sheet_;
  const Frame& f_;
  Places places_;
};

}  // namespace

void draw_plan(Page& page, const Sheet& sheet, const SheetViews& views) {
  Plan(page, sheet, views).draw();
}

}  // namespace burrow
