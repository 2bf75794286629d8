#pragma once
/// The ground as a surface: the ground line along the bore, and surveyed points beside it.

#include <functional>
#include <memory>
#include <span>
#include <vector>

#include "burrow/base/geometry.h"

namespace burrow {

/// z = a x + b y + c.
struct GroundPlane {
  double a = 0, b = 0, c = 0;
  [[nodiscard]] double at(double x_m, double y_m) const { return a * x_m + b * y_m + c; }
};

/// A part of the surface that is plane.
struct GroundPiece {
  PlanLine outline;  ///< convex, counter-clockwise
  GroundPlane plane;
};

struct PlanBox {
  double x_low_m = 0, x_high_m = 0, y_low_m = 0, y_high_m = 0;
};

/// Triangles through the points of the ground line and the surveyed points. On the bore line itself (offset 0) it is
/// the ground line, exactly, held level beyond its ends. On a side without points the ground is level across, as
/// without any; beyond the outermost points it keeps the height of the nearest place that is surveyed.
/// Source: triangles after Delaunay 1934, each side of the line by itself: its points are then corners of the hull, so
/// that no triangle can cross it. Boost.Polygon finds them on a grid of 0.1 mm, on which the points are put.
/// Of several points in one place the first counts; those within 1 cm of the line do not: there the line does.
/// Range: ground line not empty, all numbers finite.
/// Cost: n log n to make, copying is free; a look at a place passes about log n triangles (`BoxTree`). One made of the
/// same points on one side of the same line takes that side over. Nothing of it changes once it is made, so that
/// threads may share it.   Evidence: GroundSurface.*
class GroundSurface {
 public:
  GroundSurface() = default;  ///< no surface at all
  /// `before`: another, of which a side may be the same; what is made does not depend on it.
  GroundSurface(const LevelLine& line, const std::vector<Point3>& points, const GroundSurface& before = {});

  [[nodiscard]] bool there() const { return made_ != nullptr; }
  /// Made of these? Then there is no need to make it again.
  [[nodiscard]] bool made_of(const LevelLine& line, const std::vector<Point3>& points) const;
  /// Whether any surveyed point enters.
  [[nodiscard]] bool surveyed() const;
  /// Whether any of these lies within a reach of a convex outline.
  [[nodiscard]] bool surveyed_near(const PlanLine& outline, double reach_m) const;
  [[nodiscard]] double highest_m() const;
  /// No place in the box is higher; the highest there may be lower than that.
  [[nodiscard]] double highest_in(const PlanBox& box) const;

  [[nodiscard]] double height_at(double x_m, double y_m) const;
  /// Covers the box without overlap. A box of some width.
  [[nodiscard]] std::vector<GroundPiece> pieces_in(const PlanBox& box) const;
  /// Gives the same pieces one by one, in the same order, but only those that may reach into `within`.
  void each_piece(const PlanBox& box, const PlanBox& within,
                  const std::function<void(std::span<const PlanPoint>, const GroundPlane&)>& take) const;
  /// Along a straight line in plan: the distance from its beginning, the height; straight between these.
  [[nodiscard]] LevelLine along(const PlanPoint& from, const PlanPoint& to) const;

  /// Of what it was made, not which copy.
  bool operator==(const GroundSurface& other) const;

 private:
  struct Made;
  std::shared_ptr<const Made> made_;
};

}  // namespace burrow
