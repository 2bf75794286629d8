#pragma once
/// The one file that a drawing or exporting command works on, read and judged.

#include "burrow/base/quantity_text.h"
#include "burrow/base/result.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"
#include "options.h"

namespace burrow {

struct Opened {
  Tables tables;
  Crossing crossing;
  Assessment assessment;
};

/// Errors: not exactly one file; one that cannot be read.
Result<Opened> open_one(const Options& options);

/// Units of paper and of files for others: the command's, else the file's own, else metric.
Result<UnitSystem> sheet_units(const Options& options, const Crossing& crossing);

}  // namespace burrow
