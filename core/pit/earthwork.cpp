#include "burrow/pit/earthwork.h"

#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/base/quantity.h"

namespace burrow {

double heap_volume(double ridge_length_m, double ridge_width_m, double height_m, double run_per_rise) {
  const double base = run_per_rise * height_m;
  return ridge_length_m * ridge_width_m * height_m + (ridge_length_m + ridge_width_m) * base * height_m +
         pi / 3 * base * base * height_m;
}

HeapShape heap_of(double volume_m3, double side_length_m, double run_per_rise, double greatest_height_m) {
  BURROW_ENSURE(volume_m3 >= 0 && side_length_m > 0 && run_per_rise > 0 && greatest_height_m > 0);
  HeapShape heap;
  heap.volume_m3 = volume_m3;
  heap.ridge_length_m = side_length_m;
  const double sharp = heap_volume(side_length_m, 0, greatest_height_m, run_per_rise);
  if (volume_m3 > sharp) {
    heap.height_m = greatest_height_m;
    heap.ridge_width_m = (volume_m3 - sharp) / (greatest_height_m * (side_length_m + run_per_rise * greatest_height_m));
  } else {
    // The volume grows with the height: Newton from above comes down to the root without passing it.
    double height = greatest_height_m;
    for (int i = 0; i < 60; ++i) {
      const double slope =
          2 * side_length_m * run_per_rise * height + pi * run_per_rise * run_per_rise * height * height;
      if (!(slope > 0)) break;
      const double step = (heap_volume(side_length_m, 0, height, run_per_rise) - volume_m3) / slope;
      height -= step;
      if (std::abs(step) < 1e-12) break;
    }
    heap.height_m = volume_m3 > 0 ? height : 0;
  }
  heap.length_m = heap.ridge_length_m + 2 * run_per_rise * heap.height_m;
  heap.width_m = heap.ridge_width_m + 2 * run_per_rise * heap.height_m;
  return heap;
}

}  // namespace burrow
