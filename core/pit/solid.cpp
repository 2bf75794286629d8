#include "burrow/pit/solid.h"

#include <algorithm>

#include "burrow/base/ensure.h"
#include "convex.h"
#include "digger.h"

namespace burrow {

std::vector<SolidPiece> dig_out(const PitFloor& floor, const GroundSurface& ground) {
  std::vector<SolidPiece> body;
  Digger(floor, ground).each([&](Corners outline, const GroundPlane& top, const GroundPlane& bottom) {
    body.push_back({{outline.begin(), outline.end()}, top, bottom});
  });
  return body;
}

std::vector<SolidPiece> dig_out_at(const PitFloor& floor, const GroundSurface& ground, double station_m) {
  std::vector<SolidPiece> body;
  const PlanBox at{station_m, station_m, -1e300, 1e300};
  Digger(floor, ground)
      .each(
          [&](Corners outline, const GroundPlane& top, const GroundPlane& bottom) {
            body.push_back({{outline.begin(), outline.end()}, top, bottom});
          },
          &at);
  return body;
}

double volume_dug(const PitFloor& floor, const GroundSurface& ground) {
  double volume = 0;
  Digger(floor, ground).each([&](Corners outline, const GroundPlane& top, const GroundPlane& bottom) {
    volume += prism_volume(outline, top, bottom);
  });
  return volume;
}

double volume_of(const std::vector<SolidPiece>& body) {
  double volume = 0;
  for (const SolidPiece& piece : body) volume += prism_volume(piece.outline, piece.ground, piece.bottom);
  return volume;
}

double area_of(const std::vector<SolidPiece>& body) {
  double area = 0;
  for (const SolidPiece& piece : body) area += signed_area(piece.outline);
  return area;
}

double volume_below(const std::vector<SolidPiece>& body, const LevelLine& line) {
  BURROW_ENSURE(!line.empty());
  double volume = 0;
  OutlineStore store;
  // Before the first point, between points, behind the last.
  for (std::size_t i = 0; i <= line.size(); ++i) {
    const bool first = i == 0, last = i == line.size();
    const LevelPoint &a = line[first ? 0 : i - 1], &b = line[last ? i - 1 : i];
    const double slope = first || last ? 0 : (b.elevation_m - a.elevation_m) / (b.station_m - a.station_m);
    const GroundPlane top{slope, 0, a.elevation_m - slope * a.station_m};
    for (const SolidPiece& piece : body) {
      store.clear();
      StoredOutline here = store.add(piece.outline);
      if (!first) here = store.clipped(here, HalfPlane{1, 0, -a.station_m});
      if (!last && !here.empty()) here = store.clipped(here, HalfPlane{-1, 0, b.station_m});
      if (here.empty()) continue;
      const HalfPlane ground_higher = above(piece.ground, top);
      const HalfPlane under_top[] = {ground_higher, above(top, piece.bottom)};
      volume += prism_volume(store.corners(store.clipped(here, under_top)), top, piece.bottom);
      if (ground_higher.a == 0 && ground_higher.b == 0 && ground_higher.c == 0) continue;
      const StoredOutline lower = store.clipped(here, ground_higher.opposite());
      volume += prism_volume(store.corners(lower), piece.ground, piece.bottom);
    }
  }
  return volume;
}

double depth_of(const std::vector<SolidPiece>& body, const PitFloor& floor) {
  double depth = 0;
  for (const SolidPiece& piece : body) {
    const PlanPoint middle = middle_of(piece.outline);
    if (!inside(floor.corners, middle.x_m, middle.y_m)) continue;
    for (const PlanPoint& p : piece.outline) depth = std::max(depth, piece.ground.at(p.x_m, p.y_m) - floor.elevation_m);
  }
  return depth;
}

}  // namespace burrow
