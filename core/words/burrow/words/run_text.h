#pragma once
/// Air line and run sheet in words, for the command line, the panel and the card.

#include <string>

#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// "6.7 bar at the tool, 0.76 m³/min of free air; oil 120 mL and up to 5 mL more, look at it every 7 h 18 min".
std::string air_words(const AirAnswer& air, UnitSystem units);

/// "water main: 0.50 m clear, above, in 1.16 m"; "…: depth not known, passed by 0.34 m". Outside to outside, as in the
/// verdict.
std::string near_words(const MarkNear& near, UnitSystem units);

/// One or two things for the pit: "STOP: expose gas main 0.61 m clear, above", "slow, watch in hole: water main 0.49 m
/// clear, above", "exit pit empty". Names what the nose has not passed, two at most. Empty: go on.   Evidence:
/// RunText.MarkInShort_*
std::string mark_in_short(const Mark& mark, UnitSystem units);

/// "slow down; listen; shoot the pegs: Alder Lane". Names of the crossing stand for the ids.
std::string task_words(const Mark& mark, const Crossing& crossing);

/// "hose 1.50 m: nose 2.84 m, depth 1.40 m (1.35 m to 1.45 m), 3 min (1 min to 7 min)", then what is near and what to
/// do.   Evidence: RunText.*
std::string mark_words(const Mark& mark, const Crossing& crossing, UnitSystem units);

}  // namespace burrow
