#include "burrow/document/points.h"

#include <algorithm>
#include <cmath>

#include "burrow/crossing/find.h"
#include "burrow/document/surroundings.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

constexpr std::size_t least_of_line = 2, least_of_outline = 3;
constexpr double least_apart_m = 0.01;

LevelLine* level_line(Crossing& crossing, const ItemRef& part) {
  if (part.kind == ItemKind::ground) return &crossing.site.ground;
  if (part.kind == ItemKind::water) return crossing.site.water ? &*crossing.site.water : nullptr;
  Stratum* stratum = part.kind == ItemKind::stratum ? find_by_id(crossing.site.strata, part.id) : nullptr;
  return stratum && stratum->top ? &*stratum->top : nullptr;
}

/// The corners of an outline or boundary, whether they close to a ring, and the index of its first corner.
struct Corners {
  PlanLine* line = nullptr;
  bool ring = true;
  int first = 0;
};

Corners corners_of(Crossing& crossing, const ItemRef& part) {
  if (part.kind == ItemKind::surface) {
    SurfaceFeature* feature = find_by_id(crossing.site.surface, part.id);
    return feature ? Corners{&feature->outline, true, first_outline_corner} : Corners{};
  }
  if (part.kind != ItemKind::around) return {};
  if (Boundary* boundary = find_by_id(crossing.site.boundaries, part.id)) return {&boundary->line, false, 0};
  if (Strip* strip = find_by_id(crossing.site.strips, part.id)) return {&strip->outline, true, 0};
  return {};
}

template <class Points>
bool take_out(Points& points, int index, std::size_t least) {
  if (index < 0 || static_cast<std::size_t>(index) >= points.size() || points.size() <= least) return false;
  points.erase(points.begin() + index);
  return true;
}

/// Where along a piece a point lies nearest, 0 to 1, and how far away.
struct Nearest {
  std::size_t piece = 0;
  double share = 0, away_m = 1e300;
};

template <class Points>
Nearest nearest_piece(const Points& points, bool ring, const PlanPoint& to) {
  Nearest best;
  const std::size_t pieces = points.size() < 2 ? 0 : points.size() - (ring ? 0 : 1);
  for (std::size_t i = 0; i < pieces; ++i) {
    const auto &a = points[i], &b = points[(i + 1) % points.size()];
    const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, long2 = dx * dx + dy * dy;
    const double t = long2 > 0 ? std::clamp(((to.x_m - a.x_m) * dx + (to.y_m - a.y_m) * dy) / long2, 0.0, 1.0) : 0.0;
    const double away = std::hypot(to.x_m - a.x_m - t * dx, to.y_m - a.y_m - t * dy);
    if (away < best.away_m) best = {i, t, away};
  }
  return best;
}

bool too_near(const PlanPoint& one, double x_m, double y_m) {
  return std::hypot(one.x_m - x_m, one.y_m - y_m) < least_apart_m;
}

}  // namespace

Result<Crossing> without_point(const Crossing& crossing, const ItemRef& point) {
  Crossing draft = crossing;
  const auto stays = [&] {
    return fail(part_name(crossing, point), {}, translatable("more points than that, or the whole thing removed"));
  };
  if (LevelLine* line = level_line(draft, point)) {
    if (!take_out(*line, point.index, least_of_line)) return stays();
    return draft;
  }
  if (point.kind == ItemKind::utility) {
    Utility* utility = find_by_id(draft.site.utilities, point.id);
    const std::size_t last = utility ? utility->path.size() - 1 : 0;
    if (!utility || !take_out(utility->path, point.index, least_of_line)) return stays();
    // The line ends elsewhere now, and nobody said why there.
    if (point.index == 0) utility->ends.first.reset();
    if (static_cast<std::size_t>(point.index) == last) utility->ends.last.reset();
    return draft;
  }
  const Corners corners = corners_of(draft, point);
  const std::size_t least = corners.ring ? least_of_outline : least_of_line;
  if (!corners.line || !take_out(*corners.line, point.index - corners.first, least)) return stays();
  return draft;
}

std::optional<WithPoint> with_level_point(const Crossing& crossing, const ItemRef& line, double station_m) {
  WithPoint made{crossing, {line.kind, line.id, -1}};
  LevelLine* levels = level_line(made.crossing, line);
  if (!levels || levels->empty()) return std::nullopt;
  const auto after =
      std::find_if(levels->begin(), levels->end(), [&](const LevelPoint& p) { return p.station_m > station_m; });
  if (after != levels->end() && after->station_m - station_m < least_apart_m) return std::nullopt;
  if (after != levels->begin() && station_m - (after - 1)->station_m < least_apart_m) return std::nullopt;
  const double level = elevation_at(*levels, station_m);
  made.point.index = static_cast<int>(after - levels->begin());
  levels->insert(after, {station_m, level});
  return made;
}

std::optional<WithPoint> with_plan_point(const Crossing& crossing, const ItemRef& line, const PlanPoint& near) {
  WithPoint made{crossing, {line.kind, line.id, -1}};
  if (line.kind == ItemKind::utility) {
    Utility* utility = find_by_id(made.crossing.site.utilities, line.id);
    if (!utility || utility->path.size() < 2) return std::nullopt;
    std::vector<PathVertex>& path = utility->path;
    const Nearest at = nearest_piece(path, false, near);
    const PathVertex &a = path[at.piece], &b = path[at.piece + 1];
    PathVertex bend{a.x_m + at.share * (b.x_m - a.x_m), a.y_m + at.share * (b.y_m - a.y_m), std::nullopt};
    if (a.z_m && b.z_m) bend.z_m = *a.z_m + at.share * (*b.z_m - *a.z_m);
    if (too_near({a.x_m, a.y_m}, bend.x_m, bend.y_m) || too_near({b.x_m, b.y_m}, bend.x_m, bend.y_m))
      return std::nullopt;
    made.point.index = static_cast<int>(at.piece) + 1;
    path.insert(path.begin() + made.point.index, bend);
    return made;
  }
  const Corners corners = corners_of(made.crossing, line);
  if (!corners.line || corners.line->size() < 2) return std::nullopt;
  PlanLine& points = *corners.line;
  const Nearest at = nearest_piece(points, corners.ring, near);
  const PlanPoint a = points[at.piece], b = points[(at.piece + 1) % points.size()];
  const PlanPoint corner{a.x_m + at.share * (b.x_m - a.x_m), a.y_m + at.share * (b.y_m - a.y_m)};
  if (too_near(a, corner.x_m, corner.y_m) || too_near(b, corner.x_m, corner.y_m)) return std::nullopt;
  points.insert(points.begin() + static_cast<std::ptrdiff_t>(at.piece) + 1, corner);
  made.point.index = corners.first + static_cast<int>(at.piece) + 1;
  return made;
}

}  // namespace burrow
