#include "burrow/crossing/crew_defaults.h"

#include "burrow/crossing/blank.h"

namespace burrow {

Crossing with_own_start(Crossing fresh, const Crossing& own) {
  fresh.bore.tool = own.bore.tool;
  fresh.air.compressor = own.air.compressor;
  fresh.air.line = own.air.line;
  fresh.air.oil = own.air.oil;
  fresh.air.mark_spacing = own.air.mark_spacing;
  fresh.air.tail_fitting = own.air.tail_fitting;
  fresh.limits.insert(own.limits.begin(), own.limits.end());
  return fresh;
}

Crossing own_start_of(const Crossing& crossing) {
  Crossing own = with_own_start(blank_crossing(), crossing);
  own.name = "Own start";
  return own;
}

}  // namespace burrow
