#pragma once
/// The bore for every value of the steering constant: what the tails of all chances are summed over.

#include <array>
#include <vector>

#include "burrow/bore/fan_grounds.h"
#include "burrow/bore/path.h"

namespace burrow {

/// Nodes of ln c in standard deviations from its mean, the first and the distance.
inline constexpr double fan_first_sd = -3, fan_step_sd = 0.5;
/// Between two nodes a quantity is taken at so many places; between these it is taken as straight.
inline constexpr std::size_t fan_finer = 5;
inline constexpr std::size_t fan_points = (fan_lanes - 1) * fan_finer + 1;
using FanPoints = std::array<double, fan_points>;

/// From the nodes to all points, by cubics (Catmull & Rom 1974, textbook).
FanPoints fan_points_of(const FanLanes& nodes);
/// Chance of ln c between point i and i + 1; what lies beyond the ends counts with the end pieces.
const std::array<double, fan_points - 1>& fan_weights();
/// ∫ Φ(score(c)) f(c) dc. Evidence: PathFans.Derived_*
double fan_chance_below(const FanLanes& score);
/// The same for a pair of scores: the chance between them, each piece of c weighted by `share` (empty: 1). Only the
/// points `from` … `to` are looked at.
double fan_chance_between(const FanPoints& low, const FanPoints& high, const FanPoints* share = nullptr,
                          std::size_t from = 0, std::size_t to = fan_points - 1);

/// The bores of one c each at one station: heights of the axis, direction, spread without that of c.
struct FanSpot {
  double x_m = 0;
  FanLanes y_m{}, z_m{};
  FanLanes cos_grade{}, sin_grade{};
  FanLanes up_var_m2{}, left_var_m2{};  ///< of height and offset at the station
};

/// A chance with what it is summed from.
struct FanChance {
  double chance = 0;
  std::vector<double> grounds;  ///< in each ground, in the order of the fans
  FanLanes score{};             ///< in the ground as entered, for each followed constant; chance below it: Φ
};

/// c is lognormal, and the height of the bore follows it far from a straight line: first order makes a chance of one in
/// a thousand three to five times too small. So sixteen bores are followed, each for one c, −3 to +4.5 standard
/// deviations of ln c from its mean, each with the spread that all other errors give it, in every ground that guessed
/// strata may be (`FanGrounds`). A quantity at a place is read off each of them, interpolated to 76 values of ln c, and
/// its chance summed over c and the grounds with straight pieces between (exact for a score that is straight there).
/// A bore that comes out goes on straight through the air, so that quantities stay smooth in c; it meets nothing there.
/// Mean as `predict_path` at steps of 0.25 m, longer in long bores, up to 0.5 m. Across, the mean path's own curve
/// beside strips is scaled by c. Where a boundary of strata lies within the spread of the bore, errors given c are not
/// normal: tails were found down to 0.3 and up to 1.45 of the trials there. Source: help page Method (our model).
/// Range: an exit beyond the launch face, a launch in the ground; else empty.   Evidence: PathFans.*, Tail.*
class PathFans {
 public:
  PathFans() = default;
  PathFans(FanGrounds& grounds, const Ground& ground, const Tool& tool, const Bore& bore, const BorePath& mean);

  [[nodiscard]] bool empty() const { return fans_.empty(); }
  [[nodiscard]] std::size_t size() const { return fans_.size(); }
  [[nodiscard]] double chance(std::size_t fan) const { return fans_[fan].chance; }
  [[nodiscard]] const FanLanes& constants() const { return constants_; }
  [[nodiscard]] double tan_heading() const { return tan_heading_; }
  [[nodiscard]] FanSpot at(std::size_t fan, double x_m) const;

  /// Chance of coming out of the ground before the exit face.
  [[nodiscard]] FanChance daylight() const;
  /// Chance that the cover falls below `cover_m` somewhere between two stations.
  [[nodiscard]] FanChance cover_below(double cover_m, double from_m, double to_m) const;
  /// Chance that a bore crosses the exit face within this window, out of all that nothing stops.
  [[nodiscard]] FanChance inside(double right_m, double left_m, double low_m, double high_m) const;

 private:
  struct Station {
    FanLanes z_m, cos_grade, sin_grade, up_var_m2, left_var_m2;
  };
  struct Fan {
    double chance = 1;
    std::vector<Station> stations;
    FanLanes daylight;  ///< greatest score of coming out so far
  };
  struct March;
  [[nodiscard]] FanChance sum_of(const std::vector<FanLanes>& scores) const;
  void follow(FanGrounds::Member& member, const std::vector<double>& surface, const Bore& bore);

  double first_x_m_ = 0, apart_m_ = 0, tan_heading_ = 0;
  FanLanes constants_{};
  std::vector<double> y_m_, aside_m_;  // of the launch line, and of the mean path off it, by station
  std::vector<double> surface_m_;
  double radius_m_ = 0, mean_constant_ = 0;
  std::size_t recorded_ = 0;  // stations
  std::vector<Fan> fans_;
};

}  // namespace burrow
