#include "burrow/pit/floor_heave.h"

#include <algorithm>

#include "burrow/base/ensure.h"

namespace burrow {

double stability_number(Length depth, Length width, Length length) {
  BURROW_ENSURE(width.m > 0 && length.m >= width.m);
  constexpr double deepest_ratio = 2.5;
  const double ratio = std::clamp(depth.m / width.m, 0.0, deepest_ratio);
  return 5 * (1 + 0.2 * ratio) * (1 + 0.2 * width.m / length.m);
}

double base_heave_safety(const FloorLoad& load) {
  const double driving = load.weight_beside.Pa + load.surcharge.Pa;
  BURROW_ENSURE(driving > 0);
  return stability_number(load.depth, load.width, load.length) * load.strength.Pa / driving;
}

}  // namespace burrow
