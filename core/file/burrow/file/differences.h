#pragma once
/// Where two versions of a crossing file differ: for a person who has to choose between them.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"

namespace burrow {

struct Difference {
  std::string where;  ///< "bore/launch/elevation_m"; of things with an id their id: "site/utilities/gas/depth_m"
  std::string one;    ///< the value in the file's own words, long ones cut; empty: not there
  std::string other;
};

/// In the order of the file. None: the same crossing, however it is spaced.
/// Errors: one of them is no JSON text (`place` says where in it).   Evidence: Differences.*
Result<std::vector<Difference>> differences(std::string_view one, std::string_view other);

}  // namespace burrow
