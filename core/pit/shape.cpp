#include "burrow/pit/shape.h"

#include <cmath>

#include "burrow/pit/solid.h"

namespace burrow {

PitSideName side_name(const PitShape& shape, std::size_t edge) {
  const PlanPoint &p = shape.floor[edge], &q = shape.floor[(edge + 1) % shape.floor.size()];
  const double ahead = q.y_m - p.y_m, to_the_left = p.x_m - q.x_m;  // outwards, the corners going counter-clockwise
  if (std::abs(ahead) > std::abs(to_the_left))
    return (ahead > 0) == shape.bore_side_high ? PitSideName::bore : PitSideName::back;
  return to_the_left > 0 ? PitSideName::left : PitSideName::right;
}

const SideProfile& side_over(const PitShape& shape, std::size_t edge) {
  switch (side_name(shape, edge)) {
    case PitSideName::bore:
      return shape.bore_side_high ? shape.sides.high : shape.sides.low;
    case PitSideName::back:
      return shape.bore_side_high ? shape.sides.low : shape.sides.high;
    case PitSideName::left:
      return shape.sides.left;
    case PitSideName::right:
      break;
  }
  return shape.sides.right;
}

PitFloor floor_of(const PitShape& shape) {
  PitFloor floor{shape.floor, {}, shape.floor_elevation_m};
  for (std::size_t i = 0; i < shape.floor.size(); ++i) floor.sides.push_back(&side_over(shape, i));
  return floor;
}

}  // namespace burrow
