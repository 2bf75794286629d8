#include "burrow/air/oil.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

/// Nothing where the entries are so odd that the number is none.
template <class Quantity>
std::optional<Quantity> finite(double value) {
  return std::isfinite(value) ? std::optional(Quantity{value}) : std::nullopt;
}

}  // namespace

OilPlan oil_plan(const Oil& oil, VolumeFlow free_air, std::optional<double> half_s,
                 std::optional<double> nine_in_ten_s) {
  OilPlan plan;
  plan.rate_entered = oil.rate.has_value();
  plan.rate = oil.rate.value_or(VolumeFlow{oil_for_free_air * free_air.m3_s});
  plan.first_fill = *oil.first_fill;
  if (half_s) plan.for_half = finite<Volume>(plan.rate.m3_s * *half_s);
  if (nine_in_ten_s) plan.for_nine_in_ten = finite<Volume>(plan.rate.m3_s * *nine_in_ten_s);
  if (plan.rate.m3_s > 0 && plan.first_fill.m3 > 0) {
    plan.fill_lasts = finite<Duration>(plan.first_fill.m3 / plan.rate.m3_s);
    plan.look_every = Duration{plan.fill_lasts ? std::min(0.5 * plan.fill_lasts->s, shift_s) : shift_s};
  }
  return plan;
}

}  // namespace burrow
