#pragma once
/// How steep the side of a pit may be cut.

#include <optional>
#include <vector>

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/pit/side.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Whether a side without support must be cut back or held at this depth: 29 CFR 1926 from 5 ft on (read), DIN 4124
/// above 1.25 m (read in DGUV Information 201-052 4.2.1: upright to 1.25 m).
/// Range: a depth that is no number needs it.   Evidence: PublishedPits.*
bool protection_needed(const ExcavationRuleSet& rules, Length depth);
/// Whether a ladder must stand at this depth: 29 CFR 1926 from 4 ft on (read), DGUV Vorschrift 38 s. 31 above 1.25 m
/// (read).
bool ladder_needed(const ExcavationRuleSet& rules, Length depth);

/// Least run for each unit of rise that the rules allow for a simple slope.
/// Source: rows of `resources/tables/excavation.json`. Under 29 CFR 1926 Subpart P App. B a pit in Type A soil that is
/// open for at most 24 h and at most 12 ft (3.67 m) deep may be cut 1/2 : 1 (read).
/// Range: depth ≥ 0; a known open time counts, an unknown one does not.
/// Errors: deeper than the row's limit (an engineer designs it); no row for that soil.
/// Evidence: PublishedSlope.Cfr1926_TableB1
Result<Ratio> least_run_per_rise(const ExcavationRuleSet& rules, ExcavationType type, Length depth,
                                 std::optional<Duration> open_time = std::nullopt);

/// The steps that a benched side gets where none are entered: under 29 CFR 1926 `benches_within` the slope; under DIN
/// 4124 faces of that slope with a berm between them, as high and as wide as its rows say. Evidence: PitBenches.Own_*
std::vector<Bench> benches_by_rules(const ExcavationRuleSet& rules, double run_per_rise);

/// How far a berm reaches back at least; nothing where the rules name none.   Evidence: PitBenches.German_*
const DutyRow* berm_row(const ExcavationRuleSet& rules, bool only_walked);

/// The rules' row for an upright lower part without support in a pit of this type and depth; nothing where they offer
/// none.   Evidence: PitSides.UprightPart_*
const UprightPartRow* upright_part_row(const ExcavationRuleSet& rules, ExcavationType type, Length depth);

}  // namespace burrow
