#pragma once
/// What is done and what is left after a bore, line by line; and how a record stands, in a few words.

#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

struct AfterLine {
  std::string what;   ///< "Pull-in"
  std::string found;  ///< what was entered, or what is missing
  bool done = false;
};

/// Pull-in, closed around the pipe, camera through what was crossed, levels when settled, photos; of a bore that was
/// given up the state of its hole instead of a pull-in. What nobody entered is not done.
/// Source: common practice (no source).   Evidence: AfterText.*
std::vector<AfterLine> after_lines(const Crossing& crossing, const DayRecord& record, UnitSystem units);

/// "under way, nose 4.40 m of 14.00 m", "arrived", "struck something: not released"; empty: no record with readings.
/// Evidence: AfterText.State_*
std::string record_state(const Crossing& crossing, UnitSystem units);

}  // namespace burrow
