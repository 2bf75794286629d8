#include "burrow/drawing/along.h"

#include <algorithm>
#include <cmath>

#include "burrow/bore/point_on_path.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

QString number(double value, Dimension dimension, UnitSystem units) {
  return text_from(format(value, dimension, units));
}

}  // namespace

std::optional<PathPoint> path_point_at(const Assessment& assessment, double station_m) {
  const auto& points = assessment.bore.points;
  if (points.size() < 2 || !(station_m >= points.front().x_m && station_m <= points.back().x_m)) return std::nullopt;
  const auto right = std::lower_bound(points.begin() + 1, points.end() - 1, station_m,
                                      [](const PathPoint& p, double x) { return p.x_m < x; });
  const PathPoint &a = *(right - 1), &b = *right;
  const double t = (station_m - a.x_m) / std::max(1e-12, b.x_m - a.x_m);
  return point_between(a, b, t);
}

QStringList turning_numbers(const Assessment& assessment, double station_m, UnitSystem units) {
  const std::optional<PathPoint> at = path_point_at(assessment, station_m);
  if (!at) return {};
  // What a crew can picture: how far the grade has changed after 10 m or 10 ft.
  const double run_m = 10 * shown_unit(Dimension::station, units);
  const QString run = units == UnitSystem::us ? QObject::tr("in 10 ft") : QObject::tr("in 10 m");
  const auto grade = [&](double curvature) { return number(curvature * run_m, Dimension::grade, units); };
  return {QObject::tr("station %1").arg(number(station_m, Dimension::station, units)),
          QObject::tr("resists %1 above, %2 below")
              .arg(number(at->resistance_above_Pa, Dimension::pressure, units),
                   number(at->resistance_below_Pa, Dimension::pressure, units)),
          (at->curvature_1_m >= 0 ? QObject::tr("turns up: grade +%1 %2") : QObject::tr("sags: grade %1 %2"))
              .arg(grade(at->curvature_1_m), run),
          QObject::tr("by its weight alone %1 %2").arg(grade(-at->sag_curvature_1_m), run)};
}

QRectF stops_row(const Frame& frame, const Style& style) {
  return {frame.ruler.left(), frame.ruler.top(), frame.ruler.width(),
          std::min(style.text * 1.25, frame.ruler.height())};
}

std::optional<std::size_t> stop_at(const Scene& scene, const QPointF& at) {
  if (!stops_row(scene.frame, scene.style).contains(at)) return std::nullopt;
  const double station = scene.frame.station_m(at.x());
  const auto& stops = scene.assessment.stops;
  const auto it = std::find_if(stops.begin(), stops.end(),
                               [&](const StopStretch& s) { return station >= s.from_m && station <= s.to_m; });
  if (it == stops.end()) return std::nullopt;
  return static_cast<std::size_t>(it - stops.begin());
}

QString stop_text(const Crossing& crossing, const StopStretch& stretch, bool calibrated, UnitSystem units) {
  const QString chance = number(stretch.chance, Dimension::chance, units);
  if (stretch.above == AboveBore::diggable)
    return calibrated ? QObject::tr(
                            "under open ground: %1 chance that the ground stops the tool; to be dug out by hand near "
                            "utilities")
                            .arg(chance)
                      : QObject::tr("under open ground: a tool that stops is to be dug out by hand near utilities");
  QString name;
  for (const SurfaceFeature& feature : crossing.site.surface)
    if (feature.id == stretch.id) name = text_from(feature.name.empty() ? translated_word(feature.kind) : feature.name);
  if (name.isEmpty()) name = text_from(translated_word(stretch.above));
  return calibrated
             ? QObject::tr("under %1: %2 chance that the ground stops the tool; not to be dug out").arg(name, chance)
             : QObject::tr("under %1: a tool that stops is not to be dug out").arg(name);
}

QStringList pointer_words(const Scene& scene, const QPointF& at) {
  const Frame& f = scene.frame;
  if (scene.layers.turning && f.pane_at(at) == Pane::turning)
    return turning_numbers(scene.assessment, f.station_m(at.x()), scene.style.units);
  if (const auto stop = stop_at(scene, at)) {
    const StopStretch& stretch = scene.assessment.stops[*stop];
    const auto station = [&](double m) { return number(m, Dimension::station, scene.style.units); };
    QStringList words{QObject::tr("station %1 to %2").arg(station(stretch.from_m), station(stretch.to_m))};
    return words << stop_text(scene.crossing, stretch, scene.assessment.refusal_calibrated, scene.style.units)
                        .split(QStringLiteral("; "));
  }
  return {};
}

}  // namespace burrow
