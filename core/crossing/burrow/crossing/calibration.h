#pragma once
/// Whether the constants of the path model come from records.

#include "burrow/crossing/bore.h"

namespace burrow {

/// Only when the records are named, as many as are said to stand behind them: the program writes them when constants of
/// the library are taken over. A number typed by hand calibrates nothing.   Evidence: Calibration.*
inline bool calibrated(const ModelConstants& model) {
  return model.calibrated_from.value > 0 &&
         static_cast<std::int64_t>(model.calibrated_records.size()) >= model.calibrated_from.value;
}

}  // namespace burrow
