#pragma once
/// How finely the arcs of a drawing must be cut into straight pieces. Private to this room.

#include <string>
#include <vector>

#include "burrow/base/geometry.h"

namespace burrow {

/// The largest radius of arcs, circles, ellipses and bulges, from the pairs of a drawing as they come.
/// A bulge is the tangent of a quarter of the angle: radius = chord·(1 + b²)/(4·b) (DXF reference).
/// Evidence: DrawingCurves.*
class LargestRadius {
 public:
  void begin(const std::string& kind);
  void take(int code, double value);
  /// Of what is drawn, with the largest factor at which a block is put into it.
  [[nodiscard]] double radius() const;

 private:
  void end_vertex();
  void end_element();

  std::string kind_;
  double x_ = 0, y_ = 0, bulge_ = 0;  ///< of the vertex that is being read
  double last_x_ = 0, last_y_ = 0, last_bulge_ = 0;
  double first_x_ = 0, first_y_ = 0;
  bool has_vertex_ = false, has_last_ = false;
  double radius_ = 0;  ///< of an arc or circle, or half the long axis
  double axis_x_ = 0, axis_y_ = 0;
  double largest_ = 0;
  double factor_ = 1;
};

/// The smooth line through points, in straight pieces: a cubic spline over the lengths of the chords, free at its ends,
/// as drawings have it where a spline is given by its fit points alone (de Boor 1978, from memory).
/// Evidence: DrawingCurves.Through_*
std::vector<PlanPoint> smooth_through(const std::vector<PlanPoint>& points);

/// How far the straight pieces in which GDAL draws a spline by control points lie off it: eight points for each control
/// point, evenly over the knots. From the pairs of the element as they come: 10, 20 control points, 40 knots, 41
/// weights, 71 degree (DXF reference); the curve by de Boor's algorithm (de Boor 1978, from memory).
/// Evidence: DrawingUnits.Splines_OffTheirPieces
class SplineMeasure {
 public:
  void begin() { *this = {}; }
  void take(int code, double value);
  /// In the unit of the drawing; 0 where it is no spline by control points, or none that can be followed.
  [[nodiscard]] double farthest_off() const;
  [[nodiscard]] PlanPoint at(double parameter) const;
  [[nodiscard]] bool is_whole() const;

 private:
  std::size_t degree_ = 3;
  std::vector<PlanPoint> points_;
  std::vector<double> knots_, weights_;
};

/// Angle of a piece, in degrees, at which a circle of that radius is met within `sagitta`; between 0.1 and 4.
double step_degrees(double radius, double sagitta);

}  // namespace burrow
