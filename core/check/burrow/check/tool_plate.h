#pragma once
/// Whether a tool as chosen can exist at all.

#include "burrow/base/result.h"
#include "burrow/crossing/bore.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// The striker moves inside the tool and must be lighter than the whole of it, class values filled in. Everything else
/// of a plate is a matter of ranges.
/// Errors: names the member, what would stand and what is wanted.   Range: a known class or a diameter.
/// Evidence: Refusals.Striker_*, ToolPanel.EmptyMass_*
Result<void> check_tool_plate(const ToolChoice& choice, const Tables& tables);

}  // namespace burrow
