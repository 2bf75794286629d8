#pragma once
/// Workings of the air line and the run sheet that belong to no finding.

#include "burrow/air/supply.h"
#include "check_run.h"

namespace burrow {

/// What the tool takes; nothing where the compressor decides.
void show_demand(CheckRun& run, const AirSupply& supply, const Tool& rated);
/// The part that loses most, and the older formula for the whole line, whose loss goes into the answer.
void show_line(CheckRun& run, const AirSupply& supply);
void show_water(CheckRun& run, const SiteAir& site, const AirSupply& supply);
void show_oil(CheckRun& run);
/// The nose at a mark that stands at the face.
void show_mark(CheckRun& run, const Mark& mark);

}  // namespace burrow
