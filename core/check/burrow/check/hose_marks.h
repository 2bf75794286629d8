#pragma once
/// How far apart the marks on the hose are.

#include "burrow/crossing/crossing.h"

namespace burrow {

/// As entered; else 5 ft on a sheet in US units and 1.5 m on any other, so that a crew reads round numbers.
/// Source: our default.   Evidence: Marks.Spacing*
inline Length mark_spacing(const Crossing& crossing) {
  const auto& entered = crossing.air.mark_spacing;
  const bool feet = !entered.entered && crossing.sheet.units == UnitSystem::us;
  return feet ? Length{5 * 0.3048} : *entered;
}

}  // namespace burrow
