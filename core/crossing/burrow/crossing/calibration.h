#pragma once
/// Whether the constants of the path model come from records.

#include <set>
#include <string>

#include "burrow/crossing/bore.h"

namespace burrow {

/// Only when the records are named, as many different ones as are said to stand behind them: the program writes them
/// when constants of the library are taken over. A number typed by hand calibrates nothing.   Evidence: Typed.*
inline bool calibrated(const ModelConstants& model) {
  if (model.calibrated_from.value <= 0) return false;
  const std::set<std::string> named(model.calibrated_records.begin(), model.calibrated_records.end());
  return static_cast<std::int64_t>(named.size()) >= model.calibrated_from.value;
}

}  // namespace burrow
