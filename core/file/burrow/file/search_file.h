#pragma once
/// The JSON of `search --json`: one line, always SI.

#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/crossing/crossing.h"
#include "burrow/search/launch_choice.h"
#include "burrow/search/launch_map.h"

namespace burrow {

struct SearchAnswer {
  LaunchMap map;
  std::vector<Exposure> exposures;
  std::vector<ToolRow> tools;
};

struct SearchOptions {
  UnitSystem units = UnitSystem::metric;  ///< of the words only
  bool tools = false;                     ///< add the table of tools
};

/// One line without its end. Cells lie row by row, from the first grade to the last, from the shallowest down; each of
/// the lists under `cells` has one entry for each. What is unknown or not finite is null.   Evidence: SearchCommand.*
std::string write_search(const Crossing& crossing, const SearchAnswer& answer, const std::string& file,
                         const SearchOptions& options);

/// The same for a file that could not be read.
std::string write_search_failure(const std::string& file, const Error& error);

}  // namespace burrow
