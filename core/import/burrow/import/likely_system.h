#pragma once
/// The coordinate system of files that state none, guessed from one that does.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "burrow/import/into_crossing.h"

namespace burrow {

struct LikelySystem {
  std::string crs;                 ///< "EPSG:25832"
  std::size_t stated_by = 0;       ///< the file that states it, or of which a person said it
  std::vector<std::size_t> files;  ///< those that state none, and whose numbers lie beside its own
};

/// A guess, for a person to take or leave: numbers of a map projection hardly lie within a kilometre of those of
/// another file by chance. Not from degrees. Source: our default.   Evidence: LikelySystem.*
std::optional<LikelySystem> likely_system(const std::vector<ImportFile>& files);

}  // namespace burrow
