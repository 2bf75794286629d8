#pragma once
/// What to expose first, and what a hole would buy.

#include <vector>

#include "burrow/clearance/clearance.h"
#include "check_run.h"

namespace burrow {

/// Fills the answers about test holes to dig; `all` in the order of `run.answer.utilities`.
void rank_holes(CheckRun& run, const std::vector<Clearance>& all);

/// What is odd about test holes that were entered, and those that do not count.
void check_holes(CheckRun& run, const Clearance& clearance, const Phrase& name);

/// The chance to touch any utility drawn, and apart from it one that nobody drew.
void check_any_contact(CheckRun& run, const std::vector<Clearance>& all);

}  // namespace burrow
