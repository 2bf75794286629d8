#pragma once
/// The limits as a person may set them for one crossing: each with the table's value beside it.

#include "burrow/document/fields.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// How a limit is shown and typed: chances in %, small lengths in mm, a speed of shaking as a plain number of mm/s or
/// in/s (see `limit_field`).   Evidence: LimitFields.*
Dimension limit_dimension(const LimitRow& row);

/// The value of one limit; empty goes back to the table's, and takes the reason away with it. Range: what the file
/// takes, and no gap below 0, no chance of harm above 0.5, no chance of arriving below it (`judge_typed`).
/// Evidence: LimitFields.*
Field limit_field(const Crossing& crossing, const LimitRow& row, UnitSystem units);

}  // namespace burrow
