#include "burrow/soil/column.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {
/// ∫ τ dz over the height h below the top of a layer.
double slip_within(const Layer& layer, double h) {
  const Soil& soil = *layer.properties;
  if (!soil.drained) return soil.undrained_strength.Pa * h;
  const double effective_top = layer.vertical_Pa - layer.pore_Pa;
  const double effective_gradient = layer.unit_weight_N_m3 - layer.pore_gradient_Pa_m;
  return (soil.cohesion.Pa + layer.law->friction_tangent() * (effective_top + 0.5 * effective_gradient * h)) * h;
}

/// Mean of p_L′(mean − slope/u) over u from `u_low` to `u_low` + `width`.
template <std::size_t N>
double mean_limit(const LimitLaw& law, double mean, double slope, double u_low, double width) {
  std::array<double, N> limits;
  for (std::size_t i = 0; i < N; ++i) limits[i] = mean - slope / (u_low + 0.5 * width * (1 + GaussRule<N>::nodes[i]));
  law.effective_limits(limits);
  double sum = 0;
  for (std::size_t i = 0; i < N; ++i) sum += GaussRule<N>::weights[i] * limits[i];
  return 0.5 * sum;
}

/// ∫ q du over one layer, u = 1/r from `u_low` to `u_high`, on the ray z + sign · r.
double integral_over(const Layer& layer, double z, double sign, double u_low, double u_high) {
  const double depth = layer.top_m - z;  // of the axis below the top; the point at r lies at depth − sign · r
  const double width = u_high - u_low;
  const double log_ratio = std::log(u_high / u_low);  // ∫ r du
  const double share = layer.law->mean_share();
  const double vertical = layer.vertical_Pa + layer.unit_weight_N_m3 * depth;
  const double pore = layer.pore_Pa + layer.pore_gradient_Pa_m * depth;
  if (!layer.law->drained())
    return (layer.law->strength_part_Pa() + share * vertical) * width -
           sign * share * layer.unit_weight_N_m3 * log_ratio;

  const double mean = share * (vertical - pore);
  const double slope = sign * share * (layer.unit_weight_N_m3 - layer.pore_gradient_Pa_m);
  const double near_end = mean - slope / u_high, far_end = mean - slope / u_low;
  // Six points carry all digits that matter (1e-6 of q) where the stress changes less than twofold.
  const bool smooth = std::min(near_end, far_end) > 0.5 * std::max(near_end, far_end);
  const double effective = smooth ? mean_limit<6>(*layer.law, mean, slope, u_low, width)
                                  : mean_limit<12>(*layer.law, mean, slope, u_low, width);
  return (effective + pore) * width - sign * layer.pore_gradient_Pa_m * log_ratio;
}
}  // namespace

void Column::begin(double water_on_top_Pa) {
  layers_.clear();
  water_on_top_Pa_ = water_on_top_Pa;
}

void Column::add(double top_m, double bottom_m, bool wet, std::size_t soil, const Soil& properties,
                 const LimitLaw& law) {
  Layer layer{.top_m = top_m,
              .bottom_m = bottom_m,
              .unit_weight_N_m3 = wet ? properties.saturated_unit_weight.N_m3 : properties.unit_weight.N_m3,
              .pore_gradient_Pa_m = wet ? water_unit_weight_N_m3 : 0,
              .vertical_Pa = water_on_top_Pa_,
              .pore_Pa = water_on_top_Pa_,
              .slip_N_m = 0,
              .soil = soil,
              .properties = &properties,
              .law = &law};
  if (!layers_.empty()) {
    const Layer& above = layers_.back();
    const double h = above.top_m - above.bottom_m;
    layer.vertical_Pa = above.vertical_Pa + above.unit_weight_N_m3 * h;
    layer.pore_Pa = above.pore_Pa + above.pore_gradient_Pa_m * h;
    layer.slip_N_m = above.slip_N_m + slip_within(above, h);
  }
  layers_.push_back(layer);
}

const Layer& Column::layer_at(double z_m) const {
  for (const Layer& layer : layers_)
    if (z_m > layer.bottom_m) return layer;
  return layers_.back();
}

double Column::vertical_stress(double z_m) const {
  const Layer& layer = layer_at(z_m);
  return layer.vertical_Pa + layer.unit_weight_N_m3 * std::max(layer.top_m - z_m, 0.0);
}

double Column::pore_pressure(double z_m) const {
  const Layer& layer = layer_at(z_m);
  return layer.pore_Pa + layer.pore_gradient_Pa_m * std::max(layer.top_m - z_m, 0.0);
}

double Column::limit_pressure(double z_m) const {
  return limit_pressure_in(layer_at(z_m), z_m);
}

double Column::limit_pressure_in(const Layer& layer, double z_m) {
  const double h = std::max(layer.top_m - z_m, 0.0);
  const double vertical = layer.vertical_Pa + layer.unit_weight_N_m3 * h;
  const LimitLaw& law = *layer.law;
  if (!law.drained()) return law.strength_part_Pa() + law.mean_share() * vertical;
  const double pore = layer.pore_Pa + layer.pore_gradient_Pa_m * h;
  return law.effective_limit_Pa(law.mean_share() * (vertical - pore)) + pore;
}

double Column::roof_cap(double z_axis_m, double diameter_m) const {
  const double crown = z_axis_m + 0.5 * diameter_m;
  if (!(crown < surface_m())) return 0;
  const Layer& layer = layer_at(crown);
  const double h = layer.top_m - crown;
  return layer.vertical_Pa + layer.unit_weight_N_m3 * h + 2 / diameter_m * (layer.slip_N_m + slip_within(layer, h));
}

double Column::side(double z_m, double sign, double inner_m, double outer_m) const {
  if (!(outer_m > inner_m * (1 + 1e-9))) return limit_pressure(z_m + sign * inner_m);
  double integral = 0, weight = 0;
  for (const Layer& layer : layers_) {
    // Distances along the ray at which this layer begins and ends.
    const double to_top = sign * (layer.top_m - z_m), to_bottom = sign * (layer.bottom_m - z_m);
    const double near_end = std::max(std::min(to_top, to_bottom), inner_m);
    const double far_end = std::min(std::max(to_top, to_bottom), outer_m);
    if (!(far_end > near_end)) continue;
    const double u_low = 1 / far_end, u_high = 1 / near_end;
    integral += integral_over(layer, z_m, sign, u_low, u_high);
    weight += u_high - u_low;
  }
  return weight > 0 ? integral / weight : limit_pressure(z_m + sign * inner_m);
}

double Column::resistance_above(double z_m, double inner_m, double outer_m) const {
  return side(z_m, 1, inner_m, outer_m);
}

double Column::roof_resistance(double z_m, double inner_m, double outer_m, double cap_Pa) const {
  // Within a layer q falls toward the surface: the least of a layer stands at its top.
  const double from = z_m + inner_m, to = z_m + outer_m;
  bool cap_governs = true;
  for (const Layer& layer : layers_)
    if (layer.top_m >= from && layer.bottom_m < to && cap_governs)
      cap_governs = cap_Pa <= limit_pressure_in(layer, std::min(layer.top_m, to));
  return cap_governs ? cap_Pa : std::min(cap_Pa, resistance_above(z_m, inner_m, outer_m));
}

double Column::resistance_below(double z_m, double inner_m, double outer_m) const {
  return side(z_m, -1, inner_m, outer_m);
}

}  // namespace burrow
