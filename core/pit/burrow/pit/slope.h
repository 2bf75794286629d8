#pragma once
/// How steep the side of a pit may be cut.

#include <optional>

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/crossing/tables.h"

namespace burrow {

/// Least run for each unit of rise that the rules allow for a simple slope.
/// Source: rows of `resources/tables/excavation.json`. Under 29 CFR 1926 Subpart P App. B a pit in Type A soil that is
/// open for at most 24 h and at most 12 ft (3.67 m) deep may be cut 1/2 : 1 (read).
/// Range: depth ≥ 0; a known open time counts, an unknown one does not.
/// Errors: deeper than the row's limit (an engineer designs it); no row for that soil.
/// Evidence: PublishedSlope.Cfr1926_TableB1
Result<Ratio> least_run_per_rise(const ExcavationRuleSet& rules, ExcavationType type, Length depth,
                                 std::optional<Duration> open_time = std::nullopt);

/// The rules' row for an upright lower part without support in a pit of this type and depth; nothing where they offer
/// none.   Evidence: PitSides.UprightPart_*
const UprightPartRow* upright_part_row(const ExcavationRuleSet& rules, ExcavationType type, Length depth);

}  // namespace burrow
