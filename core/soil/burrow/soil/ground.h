#pragma once
/// The ground of one crossing, made ready for calculation: soils resolved, limit pressures fitted.

#include <boost/container/small_vector.hpp>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "burrow/crossing/site.h"
#include "burrow/soil/column.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Built once for each assessment. Level across: the ground line and the tops of strata hold at every offset, and
/// `Site::ground_points` (points off the line) do not enter: the pits alone are cut out of them (`GroundSurface`).
/// Strips of other soil have their outline in plan; where two overlap the later one counts. Where the top of a lower
/// stratum rises above an upper one, the upper has no thickness; the first stratum reaches to the ground line. Water
/// above the ground stands on it as free water. Source: help page Method (our model). Range: at least one ground point
/// and one stratum, every soil known to the tables (the reader refuses anything else; otherwise a bug).   Evidence:
/// Ground.*
class Ground {
 public:
  Ground(const Site& site, const Tables& tables);
  /// Endless dry ground of one soil, surface at elevation 0.
  static Ground uniform(const Soil& soil);

  [[nodiscard]] double surface_m(double x_m, double y_m) const;
  [[nodiscard]] std::optional<double> water_m(double x_m) const;

  /// The same ground with a stratum of another class, its typed values kept; what was fitted for the others stays.
  /// Evidence: Ground.WithClass_AsMadeAnew
  [[nodiscard]] Ground with_class(const Site& site, const Tables& tables, std::size_t stratum,
                                  const std::string& soil_class) const;

  /// Number of the stratum in `Site::strata` at a point, as if there were no strips.
  [[nodiscard]] std::size_t stratum_at(double x_m, double y_m, double z_m) const;
  /// Number of the strip in `Site::strips` at a point.
  [[nodiscard]] std::optional<std::size_t> strip_at(double x_m, double y_m, double z_m) const;
  [[nodiscard]] const Soil& soil_at(double x_m, double y_m, double z_m) const;
  /// Soil of a stratum by its number.
  [[nodiscard]] const Soil& stratum_soil(std::size_t stratum) const { return soils_[stratum]; }

  [[nodiscard]] Column column(double x_m, double y_m) const;
  /// The same into a column that is used again and again.
  void fill(Column& column, double x_m, double y_m) const;

  /// Whether a strip lies within a square of half-width `reach` around a point in plan.
  [[nodiscard]] bool strip_near(double x_m, double y_m, double reach_m) const;
  /// Mean resistance beside an axis, along the level ray (across_x, across_y) of length 1, as
  /// `Column::resistance_above`. The ray is cut where it crosses outlines of strips; in each piece q is that of the
  /// ground there.
  /// `here`: the column at the axis.
  [[nodiscard]] double resistance_beside(const Column& here, const Point3& axis, double across_x, double across_y,
                                         double inner_m, double outer_m) const;

 private:
  struct Body {  // a strip
    PlanLine outline;
    double x_low_m, x_high_m, y_low_m, y_high_m;
    std::optional<double> top_m;
    double bottom_m;
  };
  struct Slice {
    double top_m, bottom_m;
    std::size_t soil;
  };
  using Slices = boost::container::small_vector<Slice, 12>;
  Ground() = default;
  void fit(double deepest_Pa);
  [[nodiscard]] double top_of(std::size_t stratum, double x_m, double surface) const;
  [[nodiscard]] bool contains(const Body& body, double x_m, double y_m) const;
  [[nodiscard]] bool same_strips(double x_m, double y_m, double other_x_m, double other_y_m) const;
  void overlay_strips(Slices& slices, double x_m, double y_m, double surface) const;

  LevelLine ground_;
  std::optional<LevelLine> water_;
  std::vector<std::optional<LevelLine>> tops_;  // of the strata
  std::vector<Body> bodies_;
  std::vector<Soil> soils_;  // of the strata, then of the strips
  std::vector<LimitLaw> laws_;
  double fitted_to_Pa_ = 0;  // vertical stress
};

}  // namespace burrow
