#include "near_lines.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace burrow {

namespace {

/// Share of the way from a to b where the straight piece enters and leaves the box; nothing if it misses it.
std::optional<std::pair<double, double>> part_inside(const PathVertex& a, const PathVertex& b, const NearBox& box) {
  double enter = 0, leave = 1;
  const auto cut = [&](double from, double step, double low, double high) {
    if (step == 0) return from >= low && from <= high;
    double first = (low - from) / step, last = (high - from) / step;
    if (first > last) std::swap(first, last);
    enter = std::max(enter, first);
    leave = std::min(leave, last);
    return enter <= leave;
  };
  if (!cut(a.x_m, b.x_m - a.x_m, box.low_x, box.high_x)) return std::nullopt;
  if (!cut(a.y_m, b.y_m - a.y_m, box.low_y, box.high_y)) return std::nullopt;
  return std::pair{enter, leave};
}

PathVertex between(const PathVertex& a, const PathVertex& b, double t) {
  PathVertex v{a.x_m + t * (b.x_m - a.x_m), a.y_m + t * (b.y_m - a.y_m), std::nullopt};
  if (a.z_m && b.z_m) v.z_m = *a.z_m + t * (*b.z_m - *a.z_m);
  return v;
}

}  // namespace

std::vector<std::vector<PathVertex>> inside_box(const std::vector<PathVertex>& line, const NearBox& box) {
  std::vector<std::vector<PathVertex>> parts;
  bool open = false;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const PathVertex &a = line[i - 1], &b = line[i];
    const auto part = part_inside(a, b, box);
    if (!part) {
      open = false;
      continue;
    }
    const auto [enter, leave] = *part;
    if (!open || enter > 0) {
      parts.emplace_back();
      parts.back().push_back(enter > 0 ? between(a, b, enter) : a);
    }
    parts.back().push_back(leave < 1 ? between(a, b, leave) : b);
    open = leave >= 1;
  }
  std::erase_if(parts, [](const std::vector<PathVertex>& p) {
    return p.size() < 2 || (p.size() == 2 && p[0].x_m == p[1].x_m && p[0].y_m == p[1].y_m);
  });
  return parts;
}

double distance_from_crossing_m(const std::vector<PathVertex>& line, double length_m) {
  const auto to_crossing = [&](const PathVertex& p) {
    return std::hypot(std::max({0.0, -p.x_m, p.x_m - length_m}), p.y_m);
  };
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < line.size(); ++i) {
    const PathVertex &a = line[i], &b = line[std::min(i + 1, line.size() - 1)];
    const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, length2 = dx * dx + dy * dy;
    if ((a.y_m > 0) != (b.y_m > 0)) {
      const double x = a.x_m - a.y_m * dx / dy;
      if (x >= 0 && x <= length_m) return 0;
    }
    least = std::min({least, to_crossing(a), to_crossing(b)});
    for (const double end : {0.0, length_m}) {
      const double t = length2 > 0 ? std::clamp(((end - a.x_m) * dx - a.y_m * dy) / length2, 0.0, 1.0) : 0.0;
      least = std::min(least, std::hypot(end - a.x_m - t * dx, a.y_m + t * dy));
    }
  }
  return least;
}

std::vector<std::vector<std::uint32_t>> features_by_layer(const Found& found) {
  std::vector<std::vector<std::uint32_t>> all(found.layers.size());
  for (std::size_t i = 0; i < found.features.size(); ++i)
    all[found.features[i].layer].push_back(static_cast<std::uint32_t>(i));
  return all;
}

std::vector<std::vector<PathVertex>> faces_of_layer(const PlacedFile& file, std::uint32_t layer) {
  const Found& found = *file.file->found;
  std::vector<std::vector<PathVertex>> faces;
  for (std::size_t s = 0; s < found.surfaces.size(); ++s) {
    if (found.surfaces[s].layer != layer) continue;
    for (const auto& face : found.surfaces[s].faces) {
      std::vector<PathVertex> path;
      for (const std::size_t k : {face[0], face[1], face[2], face[0]}) {
        const PlanPoint& p = file.surfaces[s][k];
        path.push_back({p.x_m, p.y_m, found.surfaces[s].points[k].z_m * file.metres_of_height});
      }
      const auto has_place = [](const PathVertex& v) { return std::isfinite(v.x_m) && std::isfinite(v.y_m); };
      if (std::all_of(path.begin(), path.end(), has_place)) faces.push_back(std::move(path));
    }
  }
  return faces;
}

LayerLines lines_of_layer(const PlacedFile& file, std::uint32_t layer, const std::vector<std::uint32_t>& features) {
  // Points farther apart than this do not belong to one line.
  constexpr double longest_step_m = 30;
  const Found& found = *file.file->found;
  const bool join = file.file->layers.at(layer).join_points;
  LayerLines all;
  std::vector<LayerLine>& lines = all.lines;
  LayerLine joined;
  const auto close = [&] {
    if (joined.path.size() == 1)
      all.alone.push_back(static_cast<std::uint32_t>(joined.feature - found.features.data()));
    if (joined.path.size() > 1) lines.push_back(std::move(joined));
    joined = {};
  };
  for (const std::uint32_t number : features) {
    const FoundFeature& f = found.features[number];
    std::vector<PathVertex> path;
    for (std::size_t i = f.first; i < f.first + f.count; ++i) {
      PathVertex v{file.vertices[i].x_m, file.vertices[i].y_m, found.vertices[i].z_m};
      if (v.z_m) *v.z_m *= file.metres_of_height;
      path.push_back(v);
    }
    const auto has_place = [](const PathVertex& v) { return std::isfinite(v.x_m) && std::isfinite(v.y_m); };
    if (!std::all_of(path.begin(), path.end(), has_place)) {
      ++all.without_place;
      continue;
    }
    if (f.shape == Shape::point) {
      if (!join || f.is_text) continue;
      const PathVertex& v = path.front();
      if (!joined.path.empty() &&
          std::hypot(v.x_m - joined.path.back().x_m, v.y_m - joined.path.back().y_m) > longest_step_m) {
        all.gaps.push_back({joined.path.back(), v});
        close();
      }
      if (joined.path.empty()) joined.feature = &f;
      joined.path.push_back(v);
      continue;
    }
    if (f.shape == Shape::area) path.push_back(path.front());
    lines.push_back({&f, std::move(path)});
  }
  close();
  return all;
}

}  // namespace burrow
