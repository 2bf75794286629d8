#pragma once
/// The one computer: what stands of a crossing.

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Judges a crossing: path, spread, cover, clearance, heave, pits, findings worst first, verdict.
/// Pure and closed-form: no files, no clock, no globals; fast enough to run inside a mouse move.
/// Source: method of each part in its own header.   Range: a crossing that `read_crossing` accepts.
/// Evidence: Assess.*, and test_published.
/// `surface`: that of an earlier answer; it is taken as it is where ground line and points are the same ones, and made
/// again where they are not. The answer does not depend on it.
Assessment assess(const Crossing& crossing, const Tables& tables, const GroundSurface& surface = {});

}  // namespace burrow
