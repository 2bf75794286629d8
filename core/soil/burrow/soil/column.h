#pragma once
/// The ground straight above and below one point in plan: its layers with the stress summed from the surface down.

#include <cstddef>
#include <limits>
#include <vector>

#include "burrow/soil/limit_law.h"

namespace burrow {

/// A slice of one soil that is wholly above or wholly below water. Plain suffixed doubles: the inner loop's own record.
struct Layer {
  double top_m = 0;
  double bottom_m = 0;  ///< of the lowest: minus infinity
  double unit_weight_N_m3 = 0;
  double pore_gradient_Pa_m = 0;
  double vertical_Pa = 0;  ///< total vertical stress at the top
  double pore_Pa = 0;      ///< at the top
  double slip_N_m = 0;     ///< ∫ τ dz on an upright slip from the surface to the top
  std::size_t soil = 0;    ///< number of the soil in its `Ground`
  const Soil* properties = nullptr;
  const LimitLaw* law = nullptr;
};

/// Valid as long as the `Ground` it was taken from. Above the surface all stresses are those of the surface.
/// Source: our model (help page Method); water hydrostatic.   Evidence: Column.*
class Column {
 public:
  [[nodiscard]] double surface_m() const { return layers_.front().top_m; }
  [[nodiscard]] const std::vector<Layer>& layers() const { return layers_; }
  [[nodiscard]] const Layer& layer_at(double z_m) const;

  [[nodiscard]] double vertical_stress(double z_m) const;  ///< total σ_v, Pa
  [[nodiscard]] double pore_pressure(double z_m) const;    ///< u, Pa
  [[nodiscard]] double limit_pressure(double z_m) const;   ///< total q, Pa

  /// Pressure at which a roof of the width D lifts between two upright slips, summed by layer from crown to surface:
  /// ∫γ dz + (2/D) ∫τ dz, τ = s_u or c′ + σ_v′ tan φ′ (K = 1).   Source: Majer 1955 (from memory).
  /// Evidence: RoofCap.*
  [[nodiscard]] double roof_cap(double z_axis_m, double diameter_m) const;

  /// Mean resistance on the upper and on the lower side of an axis at z, r from `inner` to `outer`:
  /// ∫ q r⁻² dr / ∫ r⁻² dr. With u = 1/r the weight is even. Cut at every boundary of layers and at the water; in each
  /// piece a closed form where q is a straight line, else 12 Gauss points, 6 where the stress changes less than
  /// twofold. Source: our model (help page Method).   Range: 0 < inner; outer ≤ inner gives q at `inner`. Evidence:
  /// SideResistance.*
  [[nodiscard]] double resistance_above(double z_m, double inner_m, double outer_m) const;
  [[nodiscard]] double resistance_below(double z_m, double inner_m, double outer_m) const;
  /// The lesser of `resistance_above` and the roof cap; the integral is left out where the cap plainly governs.
  [[nodiscard]] double roof_resistance(double z_m, double inner_m, double outer_m, double cap_Pa) const;

 private:
  friend class Ground;
  [[nodiscard]] static double limit_pressure_in(const Layer& layer, double z_m);
  [[nodiscard]] double side(double z_m, double sign, double inner_m, double outer_m) const;
  void begin(double water_on_top_Pa);
  void add(double top_m, double bottom_m, bool wet, std::size_t soil, const Soil& properties, const LimitLaw& law);

  std::vector<Layer> layers_;
  double water_on_top_Pa_ = 0;
};

}  // namespace burrow
