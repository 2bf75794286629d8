#include "burrow/import/found_in_frame.h"

#include <algorithm>
#include <cmath>

#include "burrow/language/say.h"
#include "readers/readers.h"

namespace burrow {

namespace {

bool placed(const PlanPoint& p) {
  return std::isfinite(p.x_m) && std::isfinite(p.y_m);
}

/// The corners of a grid are moved; between them it is drawn straight.
void move_grid(FoundRaster& raster, const std::array<PlanPoint, 3>& corners) {
  const auto& [first, last_column, last_row] = corners;
  raster.to_plan = {
      first.x_m, (last_column.x_m - first.x_m) / raster.columns, (last_row.x_m - first.x_m) / raster.rows,
      first.y_m, (last_column.y_m - first.y_m) / raster.columns, (last_row.y_m - first.y_m) / raster.rows};
}

/// All of them, in pieces, so that a person who has had enough need not wait.
std::optional<Error> move_points(const Readers& readers, const std::string& from, const std::string& to,
                                 const LocalFrame& local, std::vector<PlanPoint>& points,
                                 const std::function<bool()>& go_on) {
  constexpr std::size_t piece = 100'000;
  std::vector<PlanPoint> some;
  for (std::size_t first = 0; first < points.size(); first += piece) {
    if (go_on && !go_on())
      return Error{translated("import"), std::string(stopped_by_person), translated("to be carried to its end"),
                   stopped_by_person};
    const auto begin = points.begin() + static_cast<std::ptrdiff_t>(first);
    some.assign(begin, begin + static_cast<std::ptrdiff_t>(std::min(piece, points.size() - first)));
    if (const auto done = readers.project(from, local, some); !done) return done.error();
    if (const auto done = readers.unproject(to, local, some); !done) return done.error();
    std::copy(some.begin(), some.end(), begin);
  }
  return std::nullopt;
}

PlanPoint at(const FoundRaster& raster, double column, double row) {
  const auto& t = raster.to_plan;
  return {t[0] + column * t[1] + row * t[2], t[3] + column * t[4] + row * t[5]};
}

}  // namespace

Result<std::optional<Found>> found_in_frame(const Found& found, const FoundFrame& frame, PlanPoint near) {
  return found_in_frame(found, found.frame, 1, frame, near);
}

Result<std::optional<Found>> found_in_frame(const Found& found, const FoundFrame& own, double units,
                                            const FoundFrame& frame, PlanPoint near,
                                            const std::function<bool()>& go_on) {
  if (own.crs.empty() || frame.crs.empty() || (own.crs == frame.crs && units == 1)) return std::nullopt;
  const Result<const Readers*> readers = load_readers();
  if (!readers) return tl::unexpected(readers.error());

  // All places in one list: a transformation is dear to set up.
  std::vector<PlanPoint> points;
  for (const FoundVertex& v : found.vertices) points.push_back({v.x_m, v.y_m});
  for (const FoundSurface& s : found.surfaces)
    for (const Point3& p : s.points) points.push_back({p.x_m, p.y_m});
  for (const FoundRaster& r : found.rasters)
    for (const PlanPoint& corner : {at(r, 0, 0), at(r, r.columns, 0), at(r, 0, r.rows)}) points.push_back(corner);
  for (PlanPoint& p : points) p = {p.x_m * units, p.y_m * units};
  const LocalFrame local{frame.crs, near.x_m, near.y_m};
  if (auto error = move_points(**readers, own.crs, frame.crs, local, points, go_on)) return tl::unexpected(*error);

  Found seen = found;
  seen.frame = frame;
  seen.table = {};  // features may go
  auto next = points.cbegin();
  for (FoundVertex& v : seen.vertices) {
    v.x_m = next->x_m;
    v.y_m = (next++)->y_m;
  }
  std::erase_if(seen.features, [&](const FoundFeature& f) {
    const auto from = seen.vertices.begin() + static_cast<std::ptrdiff_t>(f.first);
    return !std::all_of(from, from + static_cast<std::ptrdiff_t>(f.count), [](const FoundVertex& v) {
      return placed({v.x_m, v.y_m});
    });
  });
  for (FoundSurface& s : seen.surfaces) {
    for (Point3& p : s.points) {
      p.x_m = next->x_m;
      p.y_m = (next++)->y_m;
    }
    std::erase_if(s.faces, [&](const auto& face) {
      return !std::all_of(face.begin(), face.end(), [&](std::uint32_t k) {
        return placed({s.points[k].x_m, s.points[k].y_m});
      });
    });
  }
  std::erase_if(seen.rasters, [&](FoundRaster& r) {
    const std::array<PlanPoint, 3> corners{next[0], next[1], next[2]};
    next += 3;
    if (!std::all_of(corners.begin(), corners.end(), placed)) return true;
    move_grid(r, corners);
    return false;
  });
  return seen;
}

}  // namespace burrow
