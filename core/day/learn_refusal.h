#pragma once
/// The rate at which the ground of a class stops tools, from the bores through it.

#include <vector>

#include "burrow/bore/path.h"
#include "burrow/day/learn.h"
#include "timeline.h"

namespace burrow {

/// Posterior of one class, put into `learned`; nothing where no bore of known end went through it.
/// Evidence: LearnRefusal.*
void learn_refusal(const std::vector<const StopEvidence*>& stops, const LearnPrior& prior, LearnedSoil& learned);

/// What one record says, a row for each class it went through. Stopped: ended as *stuck*, or as *lost*: a tool that
/// never came out may have been stopped, and not knowing must not look safe. Backed out, daylight, a service struck and
/// arrived count as metres without a refusal. A record without an end says nothing: what stopped may be why.
std::vector<StopEvidence> stops_of(const DayRecord& record, const Crossing& crossing, const Tables& tables,
                                   const Ground& ground, const BorePath& path, const Timeline& timeline);

}  // namespace burrow
