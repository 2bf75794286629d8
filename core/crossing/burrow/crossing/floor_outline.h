#pragma once
/// Which outlines can be the floor of a pit.

#include <cstddef>
#include <optional>

#include "burrow/base/geometry.h"
#include "burrow/base/phrase.h"

namespace burrow {

struct OutlineFault {
  std::size_t corner = 0;  ///< the one to mend
  Phrase what;             ///< "crosses the edge from corner 3"
  bool operator==(const OutlineFault&) const = default;
};

/// At least 3 corners, at most 24, all at or behind the face and within 100 m, none nearer than 5 cm to another, no two
/// edges that meet except at the corner they share, an area of at least 0.1 m², no corner sharper than 15°. The order
/// round does not matter.
/// Empty outline: a rectangle is meant, nothing is wrong.   Evidence: FloorOutline.*
std::optional<OutlineFault> fault_of_floor(const PlanLine& outline);

/// Counter-clockwise.
PlanLine wound_left(PlanLine outline);

}  // namespace burrow
