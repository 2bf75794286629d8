#pragma once
/// The ground on one side of its line.

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "box_tree.h"
#include "burrow/pit/ground_surface.h"
#include "convex.h"

namespace burrow {

struct GroundMesh;

/// Takes a plane part of the ground, convex, counter-clockwise.
using TakePiece = std::function<void(Corners, const GroundPlane&)>;

/// Everything as if it lay to the left of the line: y ≥ 0.
class GroundHalf {
 public:
  /// `points` with y > 0.
  GroundHalf(LevelLine line, std::vector<Point3> points);
  /// Made of these?
  [[nodiscard]] bool made_of(const LevelLine& line, const std::vector<Point3>& points) const {
    return line_ == line && entered_ == points;
  }

  /// Gives what covers the box `walls`, which lies in y ≥ 0, each piece as far as it lies within it; but only those
  /// that may reach into `within`, in the order in which they would come without that.
  void each_piece(const PlanBox& walls, const PlanBox& within, const TakePiece& take) const;
  /// The plane of the one piece that covers a box of a few millimetres; nothing: there may be several.
  [[nodiscard]] std::optional<GroundPlane> plane_over(const PlanBox& box) const;
  /// No place in the box is higher; places near it may be lower than that.
  [[nodiscard]] double highest_in(const PlanBox& box) const;
  [[nodiscard]] bool surveyed() const { return !by_station_.empty(); }
  [[nodiscard]] double highest_point_m() const { return highest_point_m_; }
  /// The points that count, by their stations.
  [[nodiscard]] const std::vector<PlanPoint>& by_station() const { return by_station_; }

 private:
  struct Triangle {
    std::array<PlanPoint, 3> corners;
    GroundPlane plane;
    std::uint32_t found = 0;  ///< as which it was found
  };
  /// Over edges and corners of the rim the ground goes on outwards.
  struct Beyond {
    std::array<HalfPlane, 3> keep;
    std::size_t bounds = 0;  ///< of `keep`
    GroundPlane plane;
    double high_m = 0;
  };
  void keep_triangles(const GroundMesh& mesh);
  void go_beyond(const GroundMesh& mesh);
  [[nodiscard]] std::uint32_t bin_of(double x_m) const;
  void each_level_piece(const PlanBox& walls, const TakePiece& take) const;
  [[nodiscard]] GroundPlane level_plane(double from_m, double to_m) const;  ///< without a point of the line between
  [[nodiscard]] std::vector<std::uint32_t> triangles_in(const PlanBox& walls, const PlanBox& within) const;

  LevelLine line_;
  std::vector<Point3> entered_;
  std::vector<PlanPoint> by_station_;
  double highest_point_m_ = 0;
  std::vector<Triangle> triangles_;      ///< by bins: pieces come by the stations at which they begin
  std::vector<std::uint32_t> bin_ends_;  ///< of each bin the number behind its last triangle
  BoxTree tree_;
  double bins_from_m_ = 0, bin_m_ = 1;
  std::size_t bins_ = 1;
  std::vector<Beyond> beyond_;
};

}  // namespace burrow
