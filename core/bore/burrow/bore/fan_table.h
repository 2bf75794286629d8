#pragma once
/// How one ground turns the tool, looked up by many paths at once, tabulated only where they go.

#include <array>
#include <cstddef>
#include <map>
#include <vector>

#include "burrow/bore/steering.h"
#include "burrow/crossing/site.h"

namespace burrow {

/// Paths followed beside one another, one for each value of the steering constant.
inline constexpr std::size_t fan_lanes = 16;
using FanLanes = std::array<double, fan_lanes>;

/// Turning, its gradient and the wander along a launch line, asked of `Steering` every D/4 of depth at stations
/// between which no line of ground, water or stratum moves by more than D/2 against the surface; straight lines between
/// both ways. `coarse`: rows D/2 apart, where many grounds share the chance. Rows are filled when a path first comes
/// near. Beside strips stations lie 0.5 m apart. Source: our model (numerical).   Range: the ground outlives the table.
/// Evidence: PathFans.*
class FanTable {
 public:
  struct LaunchLine {
    double x_m = 0, y_m = 0, slope = 0;  ///< tangent of the heading
    [[nodiscard]] double at(double x) const { return y_m + slope * (x - x_m); }
  };
  FanTable(const Site& site, const Ground& ground, const Tool& tool, const LaunchLine& line, bool coarse = false);

  struct Look {
    FanLanes pitch_1_m{};      ///< dθ/ds for c = 1
    FanLanes gradient_1_m2{};  ///< its rise with height
    FanLanes noise_rad2_m{};   ///< σ_e² of the soil there
  };
  /// At one station, at the depths of the paths.
  void look(double x_m, const FanLanes& depth_m, Look& look);

 private:
  struct Node {
    double pitch_1_m = 0, noise_rad2_m = 0;
  };
  struct Profile {
    Column column;
    std::vector<Node> nodes;  // by row; filled from `from` to before `to`
    std::size_t from = 0, to = 0;
  };
  Profile& profile(long station);
  void fill(Profile& profile, std::size_t from, std::size_t to) const;
  [[nodiscard]] Node ask(const Profile& profile, std::size_t row) const;

  const Ground* ground_;
  Steering steering_;
  LaunchLine line_;
  double top_m_, row_m_, apart_m_;
  bool single_ = false;  // every line keeps its distance from the ground
  std::map<long, Profile> profiles_;
};

}  // namespace burrow
