#include "burrow/soil/rise_contour.h"

#include <cmath>

namespace burrow {

std::optional<Length> half_width_where(Length crest, Length axis_depth, Length level) {
  if (!(level.m > 0) || !(crest.m >= level.m) || !(axis_depth.m > 0)) return std::nullopt;
  return Length{axis_depth.m * std::sqrt(crest.m / level.m - 1)};
}

}  // namespace burrow
