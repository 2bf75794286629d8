#include "burrow/crossing/crew_defaults.h"

#include <utility>

#include "burrow/crossing/blank.h"

namespace burrow {

Crossing with_own_tool(Crossing crossing, const Crossing& own) {
  crossing.bore.tool = own.bore.tool;
  crossing.air.compressor = own.air.compressor;
  crossing.air.line = own.air.line;
  crossing.air.oil = own.air.oil;
  crossing.air.mark_spacing = own.air.mark_spacing;
  crossing.air.tail_fitting = own.air.tail_fitting;
  return crossing;
}

Crossing with_own_start(Crossing fresh, const Crossing& own) {
  fresh = with_own_tool(std::move(fresh), own);
  fresh.limits.insert(own.limits.begin(), own.limits.end());
  return fresh;
}

Crossing own_start_of(const Crossing& crossing) {
  Crossing own = with_own_start(blank_crossing(), crossing);
  own.name = "Own start";
  return own;
}

}  // namespace burrow
