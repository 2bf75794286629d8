#pragma once
/// The bore from the other side: what was the exit becomes the launch.

#include "burrow/base/phrase.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// Why it cannot be bored from the other side; empty: it can. Readings and a practice bore belong to the layout that
/// they were taken on.
Phrase why_not_reversed(const Crossing& crossing);

/// The same site looked at from the other end, so that the new launch is again at the lower station: stations run back
/// about the middle of the bore, left becomes right. The launch begins where the straight axis of the old one meets
/// the exit, with the opposite grade; each pit keeps its place, and with it its floor, sides, signs and locks, and
/// what was accepted about it. What says how well the launch is set stays with the launch. Locks on level, grade and
/// heading of the launch are opened: they were of the other end. Other layouts are turned along.
/// Evidence: Reversed.*
Crossing reversed(const Crossing& crossing);

}  // namespace burrow
