#include "burrow/pipe/section.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace burrow {

namespace {

struct FoundWall {
  double m = 0;
  WallFrom from = WallFrom::typed;
};

const PipeWall* wall_in(const PipeSize& size, const std::optional<Ratio>& ratio) {
  constexpr double same_ratio = 0.05;
  for (const PipeWall& wall : size.walls) {
    if (!ratio && size.walls.size() == 1) return &wall;
    if (ratio && wall.sdr && std::abs(wall.sdr->v - ratio->v) < same_ratio) return &wall;
  }
  return nullptr;
}

std::optional<FoundWall> wall_of(const Pipe& pipe, const Tables& tables) {
  if (pipe.wall) return FoundWall{pipe.wall->m, WallFrom::typed};
  if (const PipeSize* size = find_size(tables, pipe.material, *pipe.outside_diameter))
    if (const PipeWall* wall = wall_in(*size, pipe.sdr)) return FoundWall{wall->wall.m, WallFrom::table};
  if (pipe.sdr) return FoundWall{pipe.outside_diameter->m / pipe.sdr->v, WallFrom::ratio};
  return std::nullopt;
}

}  // namespace

const PipeSize* find_size(const Tables& tables, std::string_view material, Length outside_diameter) {
  constexpr double same_m = 1e-4;
  for (const PipeSeries& series : tables.pipe_sizes) {
    if (std::find(series.materials.begin(), series.materials.end(), material) == series.materials.end()) continue;
    for (const PipeSize& size : series.sizes)
      if (std::abs(size.outside_diameter.m - outside_diameter.m) < same_m) return &size;
  }
  return nullptr;
}

Result<PipeSection> pipe_section(const Pipe& pipe, const Tables& tables) {
  if (!pipe.outside_diameter) return fail("outside diameter", "nothing", "a diameter");
  const double diameter = pipe.outside_diameter->m;
  constexpr double least_m = 1e-4;  // below it areas vanish in rounding
  if (!(diameter >= least_m) || !std::isfinite(diameter))
    return out_of_range("outside diameter", diameter, ">= 0.0001 m");
  const std::optional<FoundWall> wall = wall_of(pipe, tables);
  if (!wall) return fail("wall", "nothing", "a wall, or the ratio of diameter to wall");
  if (!(wall->m > 1e-6 * diameter && wall->m < 0.499 * diameter))
    return out_of_range("wall", wall->m, "less than half the diameter");
  PipeSection section;
  section.diameter_m = diameter;
  section.wall_m = wall->m;
  section.ratio = diameter / wall->m;
  section.area_m2 = pi * wall->m * (diameter - wall->m);
  section.count = static_cast<double>(*pipe.count);
  section.wall_from = wall->from;
  return section;
}

Result<Length> bundle_diameter(Length pipe, double count) {
  if (!(pipe.m > 0)) return out_of_range("diameter", pipe.m, "> 0 m");
  if (!(count >= 1)) return out_of_range("count", count, ">= 1");
  constexpr std::array packed{1.0, 2.0, 2.1547, 2.4142, 2.7013, 3.0, 3.0, 3.3048, 3.6131, 3.8130, 3.9238, 4.0296};
  if (count <= packed.size()) return Length{pipe.m * packed[static_cast<std::size_t>(std::ceil(count)) - 1]};
  const double rings = std::ceil((std::sqrt(12 * count - 3) - 3) / 6 - 1e-9);  // n ≤ 1 + 3 k (k + 1)
  return Length{pipe.m * (2 * rings + 1)};
}

std::optional<Length> widest_drawn(const Pipe& pipe, const Tables& tables) {
  if (!pipe.outside_diameter || !(pipe.outside_diameter->m > 0)) return std::nullopt;
  const PipeSize* size = find_size(tables, pipe.material, *pipe.outside_diameter);
  const Length one = size && size->largest_outside_diameter
                         ? std::max(*size->largest_outside_diameter, *pipe.outside_diameter)
                         : *pipe.outside_diameter;
  const Result<Length> bundle = bundle_diameter(one, static_cast<double>(*pipe.count));
  if (!bundle) return std::nullopt;
  Length widest = *bundle;
  if (pipe.coupling_diameter) widest = std::max(widest, *pipe.coupling_diameter);
  if (pipe.head_diameter) widest = std::max(widest, *pipe.head_diameter);
  return widest;
}

}  // namespace burrow
