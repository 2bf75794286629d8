#include "burrow/pit/earthwork.h"

#include <algorithm>
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
  const double cone = std::min(std::cbrt(3 * volume_m3 / (pi * run_per_rise * run_per_rise)), greatest_height_m);
  const double length = std::max(side_length_m, 2 * run_per_rise * cone);
  // The ridge is as much shorter as the rounded ends are long; the volume grows up to where the heap is a cone.
  const auto ridge = [&](double height) { return std::max(length - 2 * run_per_rise * height, 0.0); };
  const auto sharp = [&](double height) { return heap_volume(ridge(height), 0, height, run_per_rise); };
  double high = std::min(greatest_height_m, length / (2 * run_per_rise));
  if (volume_m3 > sharp(high) * (1 + 1e-12)) {
    heap.height_m = high;
    heap.ridge_width_m = (volume_m3 - sharp(high)) / (high * (ridge(high) + run_per_rise * high));
  } else {
    double low = 0;
    for (int i = 0; i < 60; ++i) {
      const double middle = (low + high) / 2;
      (sharp(middle) < volume_m3 ? low : high) = middle;
    }
    heap.height_m = volume_m3 > 0 ? (low + high) / 2 : 0;
  }
  heap.ridge_length_m = ridge(heap.height_m);
  heap.length_m = heap.ridge_length_m + 2 * run_per_rise * heap.height_m;
  heap.width_m = heap.ridge_width_m + 2 * run_per_rise * heap.height_m;
  return heap;
}

}  // namespace burrow
