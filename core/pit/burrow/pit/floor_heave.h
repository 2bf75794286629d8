#pragma once
/// Whether the floor of a pit rises: the clay beside flows under it, or water lifts it from below.

#include "burrow/base/quantity.h"

namespace burrow {

struct FloorLoad {
  Length depth, width, length;  ///< of the pit; width ≤ length
  Pressure strength;            ///< undrained, of the clay at and below the floor
  Pressure weight_beside;       ///< total stress at the level of the floor beside the pit
  Pressure surcharge;           ///< at the surface
};

/// N_c = 5 (1 + 0.2 d/B)(1 + 0.2 B/L), d/B at most 2.5.
/// Source: Skempton 1951 (from memory; its limit of 7.5 (1 + 0.2 B/L) second-hand), which Bjerrum & Eide 1956 take for
/// the floor of a rectangular or deep cut (second-hand).
/// Range: width > 0.   Evidence: PublishedStabilityNumber.*, FloorHeave.*
double stability_number(Length depth, Length width, Length length);

/// N_c s_u/(σ + q).   Source: Bjerrum & Eide 1956 (from memory).   Range: weight + surcharge > 0.
double base_heave_safety(const FloorLoad& load);

}  // namespace burrow
