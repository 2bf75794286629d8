#pragma once
/// The pipe as it is drawn in: wall, area, and the widest thing that goes through the hole.

#include <optional>

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/crossing/pipe.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Where a wall comes from.
enum class WallFrom { typed, table, ratio };

struct PipeSection {
  double diameter_m = 0;  ///< D, outside
  double wall_m = 0;      ///< t, least
  double ratio = 0;       ///< D/t
  double area_m2 = 0;     ///< of one wall, π t (D − t)
  double count = 1;
  WallFrom wall_from = WallFrom::typed;
  [[nodiscard]] double bore_m() const { return diameter_m - 2 * wall_m; }
};

/// The size of a material's series with this outside diameter, to 0.1 mm.
const PipeSize* find_size(const Tables& tables, std::string_view material, Length outside_diameter);

/// Wall as typed; else that of the size table for the ratio entered, or the one wall of the size; else diameter over
/// ratio. A trap: metric PE walls are not diameter over ratio rounded up.
/// Errors: no diameter, nothing to tell the wall by, a wall of half the diameter or more.
/// Evidence: PipeSection.*
Result<PipeSection> pipe_section(const Pipe& pipe, const Tables& tables);

/// Diameter of the circle round n equal pipes side by side: best known packings to 12 (from memory), above that whole
/// rings of six, which is never less.   Range: n ≥ 1.   Evidence: Bundle.*
Result<Length> bundle_diameter(Length pipe, double count);

/// The widest of what is drawn in: the bundle by the largest diameter its tolerance allows, couplings, pulling head.
/// Nothing without a diameter.   Evidence: PipeSection.Widest_*
std::optional<Length> widest_drawn(const Pipe& pipe, const Tables& tables);

}  // namespace burrow
