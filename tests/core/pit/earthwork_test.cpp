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
  for (const double volume : {1.5, 8.0, 20.0}) {
    const HeapShape heap = heap_of(volume, 4.0, 1.5, 1.2);
    EXPECT_NEAR(heap_volume(heap.ridge_length_m, heap.ridge_width_m, heap.height_m, 1.5), volume, 1e-9);
    EXPECT_NEAR(by_mesh(heap, 1.5), volume, 1e-4 * volume);
    EXPECT_LE(heap.height_m, 1.2);
    EXPECT_NEAR(heap.length_m, 4.0, 1e-12);  // as long as the side
    EXPECT_EQ(heap.ridge_width_m > 0, volume > 4) << volume;
  }
}

// Arithmetic: at half the side over the slope it is a cone, V = π n² h³/3; what is more widens it.
TEST(Heap, Limit_ACone) {
  const double cone = std::numbers::pi / 3 * 1.5 * 1.5;
  const HeapShape heap = heap_of(cone, 3, 1.5, 5);
  EXPECT_NEAR(heap.height_m, 1, 1e-9);
  EXPECT_NEAR(heap.ridge_length_m, 0, 1e-9);
  // Behind a narrow side it grows longer than the side, up to a cone; one too high for that is widened.
  EXPECT_NEAR(heap_of(8 * cone, 0.9, 1.5, 5).length_m, 6, 1e-9);
  const HeapShape wide = heap_of(cone + 1.5, 0.9, 1.5, 1);
  EXPECT_NEAR(wide.height_m, 1, 1e-12);
  EXPECT_NEAR(wide.length_m, 3, 1e-12);
  EXPECT_NEAR(wide.ridge_width_m, 1.5 / (1.5 * 1), 1e-9);
}

TEST(Heap, Nothing_HasNoHeight) {
  const HeapShape heap = heap_of(0, 3, 1.5, 1.5);
  EXPECT_EQ(heap.height_m, 0);
  EXPECT_EQ(heap.width_m, 0);
}

}  // namespace
}  // namespace burrow
