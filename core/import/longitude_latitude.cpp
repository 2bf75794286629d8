#include "burrow/import/longitude_latitude.h"

#include <cmath>

#include "burrow/language/say.h"
#include "readers/readers.h"

namespace burrow {

namespace {

Result<std::vector<PlanPoint>> placed_in(const std::string& crs, const Georeference& georeference,
                                         std::vector<PlanPoint> local) {
  const Result<const Readers*> readers = load_readers();
  if (!readers) return tl::unexpected(readers.error());
  const LocalFrame frame{georeference.crs, georeference.origin.x_m, georeference.origin.y_m};
  // The direction of the line in the frame on the ground, from two places of the grid.
  const double reach = 10, azimuth = georeference.azimuth->rad;
  std::vector<PlanPoint> ends{
      georeference.origin,
      {georeference.origin.x_m + reach * std::sin(azimuth), georeference.origin.y_m + reach * std::cos(azimuth)}};
  const Result<Projected> done = (*readers)->project(georeference.crs, frame, ends);
  if (!done) return tl::unexpected(done.error());
  const double dx = ends[1].x_m - ends[0].x_m, dy = ends[1].y_m - ends[0].y_m;
  const double run = std::hypot(dx, dy);
  // Of a system in degrees the two places lie a quarter of the globe apart.
  if (!(run > 0.5 * reach && run < 2 * reach))
    return fail(translated("georeference"), georeference.crs,
                translated("a system in metres, for example \"EPSG:25832\""));
  for (PlanPoint& p : local) p = {(p.x_m * dx - p.y_m * dy) / run, (p.x_m * dy + p.y_m * dx) / run};
  const Result<Projected> out = (*readers)->unproject(crs, frame, local);
  if (!out) return tl::unexpected(out.error());
  return local;
}

}  // namespace

Result<std::vector<PlanPoint>> longitude_latitude(const Georeference& georeference, std::vector<PlanPoint> local) {
  return placed_in("EPSG:4326", georeference, std::move(local));
}

Result<std::vector<PlanPoint>> map_coordinates(const Georeference& georeference, std::vector<PlanPoint> local) {
  if (!georeference.crs.empty()) return placed_in(georeference.crs, georeference, std::move(local));
  const double east = std::sin(georeference.azimuth->rad), north = std::cos(georeference.azimuth->rad);
  for (PlanPoint& p : local)
    p = {georeference.origin.x_m + p.x_m * east - p.y_m * north,
         georeference.origin.y_m + p.x_m * north + p.y_m * east};
  return local;
}

}  // namespace burrow
