#pragma once
/// A utility as the trials meet it: its axis moved by its own location error, and where a bore first comes too near.

#include <cmath>
#include <optional>
#include <vector>

#include "burrow/bore/path.h"
#include "burrow/clearance/clearance.h"
#include "flight.h"

namespace burrow::trials {

/// The axis of a utility with what moves it. A location error shifts the whole line: across by `lateral_sd_m` (joints
/// are mitred), up by `vertical_sd_m`; near test holes by as much less as the error is smaller there.
class Obstacle {
 public:
  /// `clearance` is the closed form's answer for the same utility; stretches without elevation are left out, and so
  /// are those that lie farther from the mean path than any bore gets.
  Obstacle(const Utility& utility, const Clearance& clearance, const Site& site, const Tables& tables,
           const BorePath& mean, double widest_m);

  [[nodiscard]] bool depth_unknown() const { return depth_unknown_; }

  /// One drawn place of the utility.
  struct Shift {
    double lateral_m = 0, up_m = 0;
  };
  [[nodiscard]] Shift draw(Draws& draws) const {
    const double lateral = draws.normal(), up = draws.normal();
    return {lateral_sd_m_ * lateral, vertical_sd_m_ * up};
  }

  /// Number of the stretch of a bore (from point i to i + 1) on which it first comes nearer than the radius.
  struct Met {
    std::optional<std::size_t> encroachment, contact;
  };
  [[nodiscard]] Met meet(const Flight& flight, std::size_t lane, const Shift& shift, double step_m) const;

 private:
  struct Stretch {
    Point3 from, to;
    double from_x = 0, from_y = 0, to_x = 0, to_y = 0;  ///< mitred normals, by which one metre across moves the ends
    double from_up = 1, to_up = 1;                      ///< the same for one metre up
  };
  std::vector<Stretch> stretches_;
  double lateral_sd_m_ = 0, vertical_sd_m_ = 0;
  double contact_radius_m_ = 0, encroachment_radius_m_ = 0;
  bool depth_unknown_ = false;
};

}  // namespace burrow::trials
