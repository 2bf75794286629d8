#pragma once
/// How far something has to move up or down until the bore keeps clear of a utility.

#include <optional>
#include <string>

#include "burrow/check/assess.h"

namespace burrow {

/// No limit of gap, encroachment or contact with the utility is broken. It says nothing of what is not known or still
/// to be exposed.
/// Evidence: LimitsKept.*
bool limits_kept(const Assessment& answer, const std::string& utility);

enum class Shifted { launch, utility };

struct ClearPlace {
  double shift_m = 0;  ///< upward positive
  double gap_m = 0;    ///< clear gap on the mean path there
};

/// Shift of the launch, or of the utility's whole line, at which the clear gap on the mean path is the gap required and
/// `spare_m` more: never short of it, at most 2 mm over. The bore stays on the side of the utility on which it is.
/// Source: secant steps on gap − required of `assess()` itself, so that it means what the findings mean.
/// Range: utilities whose depth, diameter and place are known, shifts within 5 m.   Errors: none within range: empty.
/// Evidence: JustClear.*
std::optional<ClearPlace> shift_just_clear(const Crossing& crossing, const Tables& tables, const Assessment& now,
                                           const std::string& utility, Shifted what, double spare_m = 0);

/// The nearest such shift at which every limit about the utility is kept (gap, encroachment, chance of contact) with at
/// least 50 mm of gap to spare, and that brings no stop which was not there. A line that is still to be exposed stays
/// so: that is not mended by moving.
/// Range: as above; to spare 50 mm to 0.5 m.   Errors: no such place: empty.   Evidence: LimitsKept.*
std::optional<ClearPlace> shift_limits_kept(const Crossing& crossing, const Tables& tables, const Assessment& now,
                                            const std::string& utility, Shifted what);

}  // namespace burrow
