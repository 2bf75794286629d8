#pragma once
/// What presses on the crown of the hole at a place and depth: used along the bore and for the chart by depth.

#include <vector>

#include "burrow/load/live.h"
#include "check_run.h"

namespace burrow {

/// A thing on top that something runs on, with where it lies.
struct TrafficStretch {
  const SurfaceFeature* feature = nullptr;
  TrafficAbove above;
  Stretch stretch;
  double road_width_m = 0;  ///< of the carriageway, see `road_width_m()`
};

/// The loads of one crossing, made ready. Refers to the crossing and the ground.
class LoadsAbove {
 public:
  LoadsAbove(const Crossing& crossing, const Ground& ground, Length hole, const std::vector<PathPoint>& points);

  /// At a depth of the crown below the ground line; nothing in the open air. `axis` below the crown by half the hole.
  /// `column` is room to work in.
  [[nodiscard]] std::optional<LoadPoint> at(double x_m, double y_m, double crown_m, Column& column) const;
  /// How the live load there came about; nothing where none is.
  [[nodiscard]] std::optional<LiveLoad> live_at(double x_m, double y_m, double cover_m,
                                                std::string* id = nullptr) const;
  [[nodiscard]] double k_mu_at(const PathPoint& axis) const;
  [[nodiscard]] const std::vector<TrafficStretch>& traffic() const { return traffic_; }

 private:
  const Crossing& crossing_;
  const Ground& ground_;
  double hole_m_;
  std::vector<TrafficStretch> traffic_;
};

}  // namespace burrow
