#pragma once
/// A utility from a feature of a file: what its attributes and the person say of it. Private to this room.

#include <string>
#include <vector>

#include "placed_plan.h"

namespace burrow {

struct MadeUtility {
  Utility utility;
  std::vector<LeftOut> left_out;  ///< what the file gave and could not be used
};

/// `path` in the local frame, heights in metres as the file means them; `ground` for depths below it.
/// Diameters: the person's outside one, else the file's own, else the attribute; inside and nominal ones through the
/// rows of walls. Heights: attribute, else those of the vertices.   Evidence: IntoCrossing.*, Fields.*
MadeUtility utility_from(const ImportFile& file, const FoundFeature& feature, UtilityKind kind,
                         std::vector<PathVertex> path, bool whole_line, const LevelLine& ground,
                         const std::string& where);

}  // namespace burrow
