#pragma once
/// What becomes of the soil dug out of a pit: its heap.

namespace burrow {

/// A heap with a level ridge and all slopes alike, its ends rounded. `length` and `width` over all, on the ground.
struct HeapShape {
  double height_m = 0, length_m = 0, width_m = 0;
  double ridge_length_m = 0, ridge_width_m = 0;
  double volume_m3 = 0;
  bool operator==(const HeapShape&) const = default;
};

/// Volume over a ridge of the length L and the width b, height h, slope n (run for one of rise): every place within
/// n h of the ridge is covered, the height falling with the distance from it:
/// L b h + (L + b) n h² + (π/3) n² h³.   Source: derived.   Evidence: Heap.*
double heap_volume(double ridge_length_m, double ridge_width_m, double height_m, double run_per_rise);

/// Heap of a volume along a side of that length, no longer than it or than a cone of that volume: as high as its slopes
/// make it on a sharp ridge, at most `greatest_height_m`; what is left widens the ridge.
/// Source: our model.   Range: volume ≥ 0; length, slope, height > 0.   Evidence: Heap.*
HeapShape heap_of(double volume_m3, double side_length_m, double run_per_rise, double greatest_height_m);

}  // namespace burrow
