#pragma once
/// Things of a site as text, for the clipboard: copied from one crossing, put into another.

#include <string>
#include <string_view>

#include "burrow/base/result.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// The utilities, test holes, things on top, strata, boundaries, trees, machines and trenches of that site, as a
/// crossing's file writes them, under a format of their own.
std::string write_clip(const Site& clip);

/// What `write_clip` wrote, taken by the reader of crossings. What was established at its old place is left out: how
/// a line was located and by whom, agreements and permissions, how well a stratum is known, what a test hole showed (it
/// comes as one that is still to be dug). Errors: as `read_crossing`; another format, named.
/// Evidence: Clip.*
Result<Site> read_clip(std::string_view text, const Tables& tables);

/// Those things without what was established at their place, as `read_clip` gives them.
Site without_evidence(Site clip);

}  // namespace burrow
