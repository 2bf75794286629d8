#pragma once
/// What random trials of a crossing as it stands change in its verdict: it may get worse, never better.

#include <vector>

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"
#include "burrow/trials/trials.h"

namespace burrow {

/// A finding `trials.contact`, `trials.encroachment`, `trials.exit-window` or `trials.daylight` for each limit that the
/// trials break with 95 % confidence (Clopper & Pearson 1934, one-sided), with the bound as its measured value; the
/// limits and severities of the closed forms. The exit window counts the bores that nothing in the ground stopped:
/// refusal is judged apart. Trials that were cancelled, or of none, change nothing: neither do trials that find less
/// than the closed forms.
/// `trials`: of this crossing as it stands, with the setup of `trials_setup`; the caller sees to that.
/// Source: our model.   Evidence: ConcludeTrials.*
Assessment conclude_trials(const Crossing& crossing, const Tables& tables, Assessment assessment, const Trials& trials);

/// Those findings alone, for whoever keeps them and puts them to a later assessment of the same crossing
/// (`with_findings`).
std::vector<Finding> trials_findings(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                                     const Trials& trials);

}  // namespace burrow
