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

/// For each column whether a 0 in it is a height: of elevations and inverts where another value lies within 1 m of 0.
/// Else a 0 is how records say that nobody knows.   Evidence: FieldsOfFiles.Inverts_OfZeroAreNotGiven
std::vector<bool> zero_heights_count(const ImportFile& file);

/// `path` in the local frame, heights in metres as the file means them; `ground` for depths below it.
/// Diameters: the person's outside one, else the file's own, else the attribute; inside and nominal ones through the
/// rows of walls. Heights: attribute, else those of the vertices. A status says no more than that a line is live or
/// abandoned: one that is proposed stays unknown, since nobody confirmed that it is not built yet. `zero_counts` as
/// `zero_heights_count` gives it.   Evidence: IntoCrossing.*, Fields.*
MadeUtility utility_from(const ImportFile& file, const FoundFeature& feature, UtilityKind kind,
                         std::vector<PathVertex> path, bool whole_line, const std::vector<bool>& zero_counts,
                         const LevelLine& ground, const std::string& where);

}  // namespace burrow
