#pragma once
/// The triangles on one side of the ground line.

#include <array>
#include <vector>

#include "burrow/pit/ground_surface.h"

namespace burrow {

/// Everything as if it lay to the left of the line: y ≥ 0.
class GroundHalf {
 public:
  /// `points` with y > 0.
  GroundHalf(LevelLine line, const std::vector<Point3>& points);
  /// Adds what covers the box, which lies in y ≥ 0.
  void add_pieces(const PlanBox& box, std::vector<GroundPiece>& pieces) const;
  [[nodiscard]] const std::vector<Point3>& points() const { return points_; }

 private:
  struct Triangle {
    std::array<std::size_t, 3> node;
    PlanBox box;
  };
  void add_level(const PlanBox& box, std::vector<GroundPiece>& pieces) const;
  void add_beyond(const PlanBox& box, std::vector<GroundPiece>& pieces) const;
  void find_rim();
  void sort_into_bins();
  [[nodiscard]] std::size_t bin_of(double x_m) const;

  LevelLine line_;
  std::vector<Point3> points_;  ///< those that count
  std::vector<Point3> nodes_;
  std::vector<Triangle> triangles_;
  std::vector<std::vector<std::size_t>> bins_;  ///< triangles by station, so that few have to be looked at
  double bins_from_m_ = 0, bin_m_ = 1;
  std::vector<std::size_t> rim_;  ///< nodes from the line's far end over the outermost points back to its near end
};

}  // namespace burrow
