/// What an empty crossing says to begin with: three steps, each where it is done.

#include <algorithm>
#include <vector>

#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"
#include "taken_places.h"

namespace burrow {

namespace {

/// Round a place, nearest first, level by level.
std::vector<QRectF> places_round(const QPointF& at, const QSizeF& size, double step, bool to_the_right) {
  std::vector<QRectF> places;
  const double aside = 1.6 * step;
  const double x = to_the_right ? at.x() + aside : at.x() - aside - size.width();
  for (int level = 0; level < 10; ++level)
    for (const double y : {at.y() + level * step, at.y() - level * step})
      places.emplace_back(QPointF(x, y - size.height() / 2), size);
  return places;
}

}  // namespace

bool nothing_entered(const Crossing& crossing) {
  const Site& site = crossing.site;
  return site.utilities.empty() && site.surface.empty() && site.test_holes.empty() && site.strips.empty() &&
         site.background.empty() && site.ground_points.empty() && site.utility_search == UtilitySearch() &&
         site.nothing_above == Statement();
}

std::vector<PlacedText> place_first_steps(const Scene& scene, TakenPlaces& taken) {
  std::vector<PlacedText> all;
  if (!scene.style.handles || !nothing_entered(scene.crossing)) return all;
  const Frame& f = scene.frame;
  const Launch& launch = scene.crossing.bore.launch;
  const double exit_m = scene.crossing.bore.exit.station.m, step = scene.style.text * 0.9;
  const double exit_z = scene.assessment.arrival.elevation_m.value_or(launch.elevation.m);
  const auto add = [&](const QString& words, const QPointF& at, bool to_the_right) {
    const QSizeF size = size_of(TextRole::step, words, scene.style);
    const QRectF box = taken.first_free(places_round(at, size, step, to_the_right), f.elevation);
    keep_text(all, taken, {TextRole::step, words, box, at, {}});
  };
  add(QObject::tr("1  Drag the launch, or type its values with Enter"), f.side(launch.station.m, launch.elevation.m),
      true);
  add(QObject::tr("2  Drag the exit to where the bore is to arrive"), f.side(exit_m, exit_z), false);
  const double middle = (launch.station.m + exit_m) / 2;
  const QString words = QObject::tr("3  Insert what lies below: right click, or Ctrl+U");
  const QSizeF size = size_of(TextRole::step, words, scene.style);
  const double x = f.px_x(middle) - size.width() / 2;
  std::vector<QRectF> places;
  const double ground = f.px_z(elevation_at(scene.crossing.site.ground, middle));
  for (double y = ground + step; y + size.height() < f.elevation.bottom(); y += step)
    places.emplace_back(QPointF(x, y), size);
  keep_text(all, taken, {TextRole::step, words, taken.first_free(places, f.elevation), {}, {}});
  return all;
}

}  // namespace burrow
