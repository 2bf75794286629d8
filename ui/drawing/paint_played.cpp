/// A bore as it happens: the tool to size with its hole, the ground rising over it, what it has passed, the miss at its
/// end.

#include <algorithm>
#include <cmath>

#include "burrow/bore/point_on_path.h"
#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "paint_miss.h"

namespace burrow {

namespace {

constexpr double least_body_px = 5;     ///< a tool of 65 mm over 45 m would be a hair
constexpr double cone_diameters = 1.3;  ///< length of the nose's cone

struct Body {
  std::vector<PathPoint> axis;
  double radius_m = 0;
};

QPointF place(const Frame& f, const PathPoint& p, Pane pane, double aside_m) {
  return pane == Pane::plan ? f.above(p.x_m, p.y_m + aside_m) : f.side(p.x_m, p.z_m + aside_m);
}

/// Half a tool's width on the screen may be more than true, never less than can be seen.
double shown_radius(const Frame& f, Pane pane, double radius_m) {
  const double px_per_m = f.px_per_m * (pane == Pane::plan ? 1.0 : f.exaggeration);
  return std::max(radius_m, least_body_px / 2 / px_per_m);
}

/// From its tail to its pointed nose.
QPolygonF outline(const Frame& f, Pane pane, const Body& body, bool pointed) {
  QPolygonF shape;
  const double tip = body.axis.back().s_m, cone = cone_diameters * 2 * body.radius_m;
  const double shown = shown_radius(f, pane, body.radius_m);
  const auto half = [&](double s) { return pointed && s > tip - cone ? shown * (tip - s) / cone : shown; };
  std::vector<PathPoint> axis = body.axis;
  if (pointed && axis.size() > 1) {  // a point where the cone begins
    const double neck = tip - cone;
    const auto after = std::find_if(axis.begin(), axis.end(), [&](const PathPoint& p) { return p.s_m > neck; });
    if (after != axis.begin() && after != axis.end()) {
      const PathPoint& before = *(after - 1);
      const double share = (neck - before.s_m) / std::max(1e-9, after->s_m - before.s_m);
      axis.insert(after, point_between(before, *after, share));
    }
  }
  for (const PathPoint& p : axis) shape << place(f, p, pane, half(p.s_m));
  for (auto p = axis.rbegin(); p != axis.rend(); ++p) shape << place(f, *p, pane, -half(p->s_m));
  return shape;
}

void paint_hole_and_tool(QPainter& painter, const Scene& scene, Pane pane, const Played& played, double nose_m) {
  const Playback& bore = *played.bore;
  const Theme& theme = scene.style.theme;
  const double radius = bore.tool_diameter_m / 2;
  const Body hole{axis_between(bore, 0, nose_m), radius};
  if (hole.axis.size() > 1) {
    QColor fill = theme.ink_soft;
    fill.setAlpha(played.in_truth ? 190 : 130);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    painter.drawPolygon(outline(scene.frame, pane, hole, false));
  }
  const Body tool{axis_between(bore, nose_m - bore.tool_length_m, nose_m), radius};
  painter.setPen(QPen(theme.field, scene.style.hair * 1.4));
  painter.setBrush(theme.ink);
  painter.drawPolygon(outline(scene.frame, pane, tool, true));
  painter.setBrush(Qt::NoBrush);
}

/// Another bore at the same time of it: outlines alone.
void paint_beside(QPainter& painter, const Scene& scene, Pane pane, const Playback& bore, double time_s) {
  if (bore.empty()) return;
  const double nose_m = nose_at(bore, time_s), radius = bore.tool_diameter_m / 2;
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(scene.style.theme.ghost, scene.style.hair * 1.4, Qt::DashLine));
  const Body hole{axis_between(bore, 0, nose_m), radius};
  if (hole.axis.size() > 1) painter.drawPolygon(outline(scene.frame, pane, hole, false));
  painter.setPen(QPen(scene.style.theme.ghost, scene.style.hair * 2.2));
  const Body tool{axis_between(bore, nose_m - bore.tool_length_m, nose_m), radius};
  painter.drawPolygon(outline(scene.frame, pane, tool, true));
}

/// A round number of times the true height: the greatest rise two lines of text high.
double times_drawn(const Scene& scene, double most_m) {
  const double times = 2.2 * scene.style.text / (most_m * scene.frame.px_per_m * scene.frame.exaggeration);
  const double power = std::pow(10.0, std::floor(std::log10(times)));
  double chosen = power;
  for (const double factor : {2.0, 5.0})
    if (factor * power <= times) chosen = factor * power;
  return std::max(1.0, chosen);
}

/// The ground as the nose passes, at the high estimate; with the factor by which it is drawn too high.
void paint_passing_heave(QPainter& painter, const Scene& scene, double nose_station_m) {
  const std::vector<HeavePoint>& rise = scene.assessment.heave;
  double most = 0;
  for (const HeavePoint& p : rise) most = std::max(most, p.high_m);
  if (rise.size() < 2 || !(most > 0)) return;
  const Frame& f = scene.frame;
  const double times = times_drawn(scene, most), px_per_m = times * f.px_per_m * f.exaggeration;
  QPolygonF top, area;
  double now = 0;
  for (const HeavePoint& p : rise) {
    const double share = p.depth_m > 0 ? heave_share(nose_station_m - p.station_m, p.depth_m) : 0;
    const QPointF ground = f.side(p.station_m, elevation_at(scene.crossing.site.ground, p.station_m));
    now = std::max(now, p.high_m * share);
    top << ground - QPointF(0, p.high_m * share * px_per_m);
    area.prepend(ground);
  }
  QColor fill = scene.style.theme.caution;
  fill.setAlpha(110);
  painter.setPen(Qt::NoPen);
  painter.setBrush(fill);
  painter.drawPolygon(top + area);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(scene.style.theme.ink_soft, scene.style.hair * 1.4));
  painter.drawPolyline(top);
  const QString words =
      QObject::tr("ground up %1 (drawn ×%2)")
          .arg(text_from(format(now, Dimension::small_length, scene.style.units)), QString::number(times, 'f', 0));
  painter.setFont(drawing_font(scene.style.text * 0.85));
  const double wide = QFontMetricsF(painter.font()).horizontalAdvance(words);
  const QPointF at = f.side(nose_station_m, elevation_at(scene.crossing.site.ground, nose_station_m));
  halo_text(painter,
            {std::clamp(at.x() - wide / 2, f.elevation.left() + 4, f.elevation.right() - wide - 4),
             std::max(f.elevation.top() + scene.style.text, at.y() - scene.style.text * 2.8)},
            words, scene.style.theme.ink, scene.style.theme.sky);
}

const std::vector<UtilityAnswer>& passed_answers(const Scene& scene) {
  const Played& played = *scene.layers.played;
  return played.passed ? *played.passed : scene.assessment.utilities;
}

const UtilityAnswer* passed_answer(const Scene& scene, const std::string& id) {
  for (const UtilityAnswer& answer : passed_answers(scene))
    if (answer.id == id) return &answer;
  return nullptr;
}

/// The worst that is said of a line: a distance that is kept is no all-clear while a stop or caution stands.
QColor passed_colour(const Scene& scene, const UtilityAnswer& u) {
  QColor ink = scene.style.theme.focus;
  if (u.required_m && *u.separation_m < *u.required_m) ink = scene.style.theme.stop;
  for (const Finding& finding : scene.assessment.findings) {
    if (finding.subject != u.id) continue;
    if (finding.severity == Severity::stop || finding.missing) return scene.style.theme.stop;
    if (finding.severity == Severity::caution && ink != scene.style.theme.stop) ink = scene.style.theme.caution;
  }
  return ink;
}

/// A line whose distance nobody knows is passed too, and says so.
void paint_passed_unknown(QPainter& painter, const Scene& scene, Pane pane, double nose_station_m) {
  for (const Utility& utility : scene.crossing.site.utilities) {
    const UtilityAnswer* answer = passed_answer(scene, utility.id);
    if (answer && answer->separation_m && answer->on_bore) continue;
    const UtilityMark mark = utility_mark(utility);
    if (mark.station_m > nose_station_m) continue;
    const PathPoint at = point_at(scene.layers.played->bore->path, std::max(0.0, mark.station_m));
    const QPointF there = place(scene.frame, at, pane, 0);
    const double ring = scene.style.text * 0.7;
    painter.setPen(QPen(scene.style.theme.stop, scene.style.hair * 2, Qt::DashLine));
    painter.drawEllipse(there, ring, ring);
    halo_text(painter, there + QPointF(ring * 1.2, -ring * 0.6), QStringLiteral("?"), scene.style.theme.stop,
              scene.style.theme.field);
  }
}

/// Lines that the nose has come to, with the clear distance the verdict has.
void paint_passed(QPainter& painter, const Scene& scene, Pane pane, double nose_station_m) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  painter.setFont(drawing_font(scene.style.text * 0.9, QFont::DemiBold));
  for (const UtilityAnswer& u : passed_answers(scene)) {
    if (!u.on_bore || !u.on_utility || !u.separation_m || u.on_bore->x_m > nose_station_m) continue;
    const bool plan = pane == Pane::plan;
    const QPointF a = plan ? f.above(u.on_bore->x_m, u.on_bore->y_m) : f.side(u.on_bore->x_m, u.on_bore->z_m);
    const QPointF b =
        plan ? f.above(u.on_utility->x_m, u.on_utility->y_m) : f.side(u.on_utility->x_m, u.on_utility->z_m);
    const QColor ink = passed_colour(scene, u);
    painter.setPen(QPen(ink, scene.style.hair * 2));
    painter.drawEllipse(b, scene.style.text * 0.55, scene.style.text * 0.55);
    if (plan || scene.layers.played->lines_elsewhere) continue;
    painter.drawLine(a, b);
    halo_text(painter, (a + b) / 2 + QPointF(scene.style.text * 0.5, scene.style.text * 0.3),
              text_from(format(*u.separation_m, Dimension::length, scene.style.units)), ink, theme.field);
  }
}

void paint_played(QPainter& painter, const Scene& scene, Pane pane) {
  if (!scene.layers.played || !scene.layers.played->bore || scene.layers.played->bore->empty()) return;
  const Played& played = *scene.layers.played;
  const double nose_m = nose_at(*played.bore, played.time_s);
  const PathPoint nose = point_at(played.bore->path, nose_m);
  if (pane == Pane::elevation && nose_m > 0) paint_passing_heave(painter, scene, nose.x_m);
  if (played.beside) paint_beside(painter, scene, pane, *played.beside, played.time_s);
  paint_hole_and_tool(painter, scene, pane, played, nose_m);
  paint_passed(painter, scene, pane, nose.x_m);
  paint_passed_unknown(painter, scene, pane, nose.x_m);
  const auto& predicted = scene.assessment.bore;  // at its end, how far it is from the one predicted
  if (played.tells_miss && played.time_s >= played.bore->end_s() && predicted.points.size() > 1)
    paint_miss(painter, scene, pane, point_at(predicted, std::min(nose.s_m, predicted.points.back().s_m)), nose);
}

}  // namespace

void paint_played_side(QPainter& painter, const Scene& scene) {
  paint_played(painter, scene, Pane::elevation);
}

void paint_played_plan(QPainter& painter, const Scene& scene) {
  paint_played(painter, scene, Pane::plan);
}

}  // namespace burrow
