#pragma once
/// How much room a pit's floor leaves the tool that lies on it, its axis square to the face.

#include "burrow/base/quantity.h"
#include "burrow/pit/shape.h"

namespace burrow {

/// `length_m`: from the face on, as far as the axis stays over the floor; 0 where it does not begin at the face.
/// `width_m`: least across the floor over the tool's length (what of it there is); twice the way to the nearer edge
/// where the tool does not fit beside it.
struct FloorRoom {
  double length_m = 0;
  double width_m = 0;
};

/// Source: derived; the floor's corners as they are, whether a rectangle or an outline. Where the axis runs along an
/// edge of the floor it counts as beside it.
/// Range: at least 3 corners, else no room.   Evidence: FloorRoom.*
FloorRoom floor_room(const PitShape& pit, Length axis_offset, Length tool_length, Length tool_diameter);

}  // namespace burrow
