#include "near_lines.h"

#include <algorithm>
#include <cmath>

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

std::vector<std::vector<std::uint32_t>> features_by_layer(const Found& found) {
  std::vector<std::vector<std::uint32_t>> all(found.layers.size());
  for (std::size_t i = 0; i < found.features.size(); ++i)
    all[found.features[i].layer].push_back(static_cast<std::uint32_t>(i));
  return all;
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
          std::hypot(v.x_m - joined.path.back().x_m, v.y_m - joined.path.back().y_m) > longest_step_m)
        close();
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
