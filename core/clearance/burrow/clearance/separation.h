#pragma once
/// Least distance between the axis of the bore and the axis of a utility.

#include <cstddef>
#include <optional>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/bore/path.h"

namespace burrow {

/// Nearest points of two straight segments, as shares of each (0 at the first end, 1 at the second).
struct SegmentApproach {
  double squared_distance_m2 = 0;
  double on_first = 0, on_second = 0;
};

/// Nearest points of the segments `a0 a1` and `b0 b1`.
/// Source: derived. The least distance is reached inside both, or at one of the four ends against the other segment;
/// all five are tried. The textbook form clamps a single solution of the 2×2 system, which loses digits when the
/// segments are nearly parallel; every candidate here is a true distance, so that can only cost the last digits.
/// Range: any, segments of no length included.
/// Evidence: SegmentDistance.*, PublishedSeparation.Cgal_SquaredDistance
SegmentApproach nearest(const Point3& a0, const Point3& a1, const Point3& b0, const Point3& b1);

/// Where a utility comes nearest to the bore.
struct Approach {
  double distance_m = 0;       ///< axis to axis; in plan only when `depth_unknown`
  bool depth_unknown = false;  ///< a stretch of unknown elevation may be nearer than all that is known
  std::size_t bore_segment = 0, utility_segment = 0;
  double on_bore_share = 0, on_utility_share = 0;  ///< place within the segments
  Point3 on_bore;
  PathVertex on_utility;
  std::optional<double> angle_rad;  ///< between the two lines, 0 … π/2; empty: the utility is a single point
};

/// The bore axis with boxes around its stretches, made once and asked for every utility.
class BoreAxis {
 public:
  explicit BoreAxis(const BorePath& path);

  /// Nearest approach of a utility's centre line. Segments that touch a vertex of unknown elevation have a distance in
  /// plan only; where that is less than the least distance of the known rest, the depth at the bore is unknown.
  /// Empty: no bore or no utility.   Evidence: Separation.*
  [[nodiscard]] std::optional<Approach> nearest_to(const std::vector<PathVertex>& utility) const;

  [[nodiscard]] const std::vector<Point3>& points() const { return points_; }
  [[nodiscard]] std::size_t segment_count() const;
  [[nodiscard]] const Point3& segment_end(std::size_t segment) const;

 private:
  struct Box {
    double low[3] = {}, high[3] = {};
  };
  struct Node {
    Box box;
    Point3 middle;                 ///< of the box
    double half_m = 0;             ///< of its diagonal
    std::size_t from = 0, to = 0;  ///< segments
    std::size_t second = 0;        ///< the other half; the first half follows directly; 0: a leaf
  };
  struct Query;
  std::size_t build(std::size_t from, std::size_t to);
  void search(Query& query, std::size_t utility_segment) const;

  std::vector<Point3> points_;
  std::vector<Node> nodes_;
};

}  // namespace burrow
