#include "burrow/air/oil.h"

#include <algorithm>

namespace burrow {

OilPlan oil_plan(const Oil& oil, VolumeFlow free_air, std::optional<double> half_s,
                 std::optional<double> nine_in_ten_s) {
  OilPlan plan;
  plan.rate_entered = oil.rate.has_value();
  plan.rate = oil.rate.value_or(VolumeFlow{oil_for_free_air * free_air.m3_s});
  plan.first_fill = *oil.first_fill;
  if (half_s) plan.for_half = Volume{plan.rate.m3_s * *half_s};
  if (nine_in_ten_s) plan.for_nine_in_ten = Volume{plan.rate.m3_s * *nine_in_ten_s};
  if (plan.rate.m3_s > 0 && plan.first_fill.m3 > 0) {
    plan.fill_lasts = Duration{plan.first_fill.m3 / plan.rate.m3_s};
    plan.look_every = Duration{std::min(0.5 * plan.fill_lasts->s, shift_s)};
  }
  return plan;
}

}  // namespace burrow
