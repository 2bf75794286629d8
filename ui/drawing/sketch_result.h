#pragma once
/// What a sketch becomes in the crossing.

#include <optional>
#include <string>
#include <vector>

#include "burrow/drawing/sketch.h"

namespace burrow {

struct Sketched {
  SketchKind kind = SketchKind::utility;
  std::string soil;
  const std::vector<SketchPoint>& points;  ///< as many as the kind needs
  std::optional<double> number;            ///< SI: radius of a tree, load of a machine
};

/// The crossing with that thing.
Drawn sketch_result(const Crossing& crossing, const Sketched& sketched);

}  // namespace burrow
