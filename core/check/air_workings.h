#pragma once
/// Workings of the air line and the run sheet that belong to no finding.

#include "burrow/air/supply.h"
#include "judge.h"

namespace burrow {

/// What the tool takes; nothing where the compressor decides.
void show_demand(Judge& judge, const AirSupply& supply, const Tool& rated);
/// The part that loses most, and the older formula for the whole line, whose loss goes into the answer.
void show_line(Judge& judge, const AirSupply& supply);
void show_water(Judge& judge, const SiteAir& site, const AirSupply& supply);
void show_oil(Judge& judge);
/// The nose at a mark that stands at the face.
void show_mark(Judge& judge, const Mark& mark);

}  // namespace burrow
