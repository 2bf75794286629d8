#include "burrow/import/found.h"

#include <algorithm>

namespace burrow {

std::vector<LayerSummary> summaries(const Found& found) {
  std::vector<LayerSummary> all(found.layers.size());
  for (std::size_t i = 0; i < all.size(); ++i) all[i].name = found.layers[i];
  for (const FoundFeature& f : found.features) {
    LayerSummary& layer = all[f.layer];
    ++(f.shape == Shape::point ? layer.points : f.shape == Shape::line ? layer.lines : layer.areas);
    layer.texts += f.is_text ? 1u : 0u;
    layer.vertices += f.count;
    layer.level_stated = layer.level_stated || f.level.has_value();
    std::size_t with_height = 0;
    for (std::size_t i = f.first; i < f.first + f.count; ++i) with_height += found.vertices[i].z_m ? 1u : 0u;
    layer.with_height += with_height;
    layer.facets += f.shape == Shape::area && f.count <= 4 && with_height == f.count ? 1u : 0u;
  }
  for (const FoundSurface& s : found.surfaces) {
    all[s.layer].faces += s.faces.size();
    all[s.layer].vertices += s.points.size();
    all[s.layer].with_height += s.points.size();
  }
  for (const FoundRaster& r : found.rasters) ++all[r.layer].rasters;
  return all;
}

std::optional<PlanExtent> extent_of(const Found& found) {
  std::optional<PlanExtent> extent;
  const auto take = [&](double x, double y) {
    if (!extent) extent = PlanExtent{x, y, x, y};
    extent->low_x = std::min(extent->low_x, x);
    extent->low_y = std::min(extent->low_y, y);
    extent->high_x = std::max(extent->high_x, x);
    extent->high_y = std::max(extent->high_y, y);
  };
  for (const FoundVertex& v : found.vertices) take(v.x_m, v.y_m);
  for (const FoundSurface& s : found.surfaces)
    for (const Point3& p : s.points) take(p.x_m, p.y_m);
  for (const FoundRaster& r : found.rasters)
    for (const double column : {0.0, static_cast<double>(r.columns)})
      for (const double row : {0.0, static_cast<double>(r.rows)})
        take(r.to_plan[0] + column * r.to_plan[1] + row * r.to_plan[2],
             r.to_plan[3] + column * r.to_plan[4] + row * r.to_plan[5]);
  return extent;
}

}  // namespace burrow
