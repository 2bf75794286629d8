#include "burrow/pit/earthwork.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace burrow {
namespace {

/// Second route: the height over each place of a fine mesh, by its distance from the ridge.
double by_mesh(const HeapShape& heap, double n) {
  const double step = 0.005;
  double volume = 0;
  for (double x = -heap.length_m / 2 + step / 2; x < heap.length_m / 2; x += step)
    for (double y = -heap.width_m / 2 + step / 2; y < heap.width_m / 2; y += step) {
      const double dx = std::max(std::abs(x) - heap.ridge_length_m / 2, 0.0);
      const double dy = std::max(std::abs(y) - heap.ridge_width_m / 2, 0.0);
      volume += step * step * std::max(heap.height_m - std::hypot(dx, dy) / n, 0.0);
    }
  return volume;
}

TEST(Heap, Mesh_VolumeOfASharpAndOfAWideRidge) {
  for (const double volume : {2.0, 8.0, 20.0}) {
    const HeapShape heap = heap_of(volume, 3.0, 1.5, 1.2);
    EXPECT_NEAR(heap_volume(heap.ridge_length_m, heap.ridge_width_m, heap.height_m, 1.5), volume, 1e-9);
    EXPECT_NEAR(by_mesh(heap, 1.5), volume, 1e-4 * volume);
    EXPECT_LE(heap.height_m, 1.2);
    EXPECT_EQ(heap.ridge_width_m > 0, heap.height_m == 1.2) << volume;
  }
}

// Arithmetic: without length it is a cone, V = π n² h³/3.
TEST(Heap, Limit_AShortRidgeIsACone) {
  const HeapShape heap = heap_of(std::numbers::pi / 3 * 1.5 * 1.5, 1e-9, 1.5, 5);
  EXPECT_NEAR(heap.height_m, 1, 1e-6);
}

TEST(Heap, Nothing_HasNoHeight) {
  const HeapShape heap = heap_of(0, 3, 1.5, 1.5);
  EXPECT_EQ(heap.height_m, 0);
  EXPECT_EQ(heap.width_m, 0);
}

}  // namespace
}  // namespace burrow
