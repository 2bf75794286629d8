#pragma once
/// What the random trials of a crossing are asked: the exit window and the gaps of its assessment.

#include "burrow/check/assessment.h"
#include "burrow/trials/trials.h"

namespace burrow {

/// The exit window of the verdict: the floor's width, the widest the limits allow where the pit is left to the program,
/// from 0.1 m above the floor up to the ground; the gaps in force. So the trials count what the closed forms judge.
/// Source: help page Method.   Evidence: TrialsPlan.*
TrialsSetup trials_setup(const Crossing& crossing, const Tables& tables, const Assessment& assessment);

}  // namespace burrow
