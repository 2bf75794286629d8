#pragma once
/// The outside of a pipe of which the record gives the inside or a nominal size. Private to this room.

#include <optional>
#include <string_view>

#include "burrow/base/quantity.h"
#include "burrow/crossing/utility.h"

namespace burrow {

/// By the rows of `resources/tables/pipe_walls.json` (from memory): of the material the size that is the next larger
/// or equal, so that the pipe is never taken for thinner than it is. Outside diameters come back as they are. Empty:
/// the material is not known there, or no size reaches so far; then the diameter counts as missing.
/// Evidence: PipeWalls.*
std::optional<Length> outside_of(Length diameter, DiameterMeant meant, std::string_view material);

}  // namespace burrow
