#pragma once
/// How far something has to move up or down until the bore is just clear of a utility.

#include <optional>
#include <string>

#include "burrow/check/assess.h"

namespace burrow {

enum class Shifted { launch, utility };

/// Shift of the launch, or of the utility's whole line, upward positive, at which the clear gap on the mean path equals
/// the gap wanted: never short of it, at most 2 mm more. The bore stays on the side of the utility on which it is.
/// Source: secant steps on gap − wanted of `assess()` itself, so that it means what the findings mean.
/// Range: utilities whose depth, diameter and place are known, shifts within 5 m.   Errors: none within range: empty.
/// Evidence: JustClear.*
std::optional<double> shift_just_clear(const Crossing& crossing, const Tables& tables, const Assessment& now,
                                       const std::string& utility, Shifted what);

}  // namespace burrow
