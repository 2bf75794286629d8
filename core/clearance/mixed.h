#pragma once
/// Chances of one utility summed over the steering constant and the grounds that guesses may be.

#include <array>
#include <vector>

#include "burrow/bore/path_fans.h"
#include "burrow/clearance/clearance.h"
#include "chances.h"

namespace burrow::clearance {

/// Seen along each bore of a fan the utility is a strip of half-width R, cut off where its line ends: there the round
/// end counts by its area, R π/4 beyond the end. Across and along the strip count as independent. The bores are taken
/// at the station where the mean path comes nearest, each with its own height, direction and spread; below 20°, where
/// the direction would turn the strip about, with that of the mean path. `worst`: the largest sum for any location
/// error from 0 to the stated one, all bores with the same error; along the strip each bore has its own worst.
/// Non-decreasing in both errors, to 1e-5 of itself, where no run beside the bore decides (the section chosen there
/// depends on the errors). Source: our model (mixture), strip derived.   Evidence: Tail.*, MixedClearance.*
class MixedChances {
 public:
  explicit MixedChances(const PathFans& fans) : fans_(fans) {}

  /// The next utility. `shown`: what its largest chances were summed from. Both outlive the questions about it.
  void begin(const Pair& pair, Mixture& shown);

  [[nodiscard]] Chances at_nearest(const Station& station, const Approach& near);
  [[nodiscard]] Chances at_section(const RunSection& section);

 private:
  struct View {
    double station_m;  ///< on the bore
    Point3 on_utility;
    Vector forward;  ///< of the mean path there
    Vector line;     ///< of the utility; {}: a section, the same all along
    Vector normal;   ///< across a section
    double behind_m = 0, ahead_m = 0;
    LocationError error;
    Vector across_line;
    double along_bore_m = 0;  ///< off the end of the bore
    bool shallow = false;     ///< below 20°
  };
  enum Kind { contact, worst, encroachment };
  /// Of one fan, what matters at all points of c.
  struct Bores {
    std::size_t fan;
    double chance;
    FanLanes gap_nodes_m, variance_nodes_m2;
    FanPoints gap_m, variance_m2;
    bool ends_matter;
    std::array<FanPoints, 3> share;  ///< of the length that the utility has, by kind; where its ends matter
    std::size_t from, to;            ///< points of c beyond which no bore comes near
    std::size_t stride;              ///< nodes alone for a lower bound, and where there are many grounds
  };
  struct Place {  // location error: variance across the strip and along it
    double across_m2, along_m2;
  };
  struct Worst {
    double chance, sd_m;
  };

  Chances of(const View& view);
  void take(const View& view, std::size_t fan, double radius_m, double wide_m, const Place& place);
  static void narrow(Bores& bores, double wide_m, double place_m2);
  static FanPoints points_of(const FanLanes& nodes, std::size_t stride);
  /// Over all grounds; what each of them gave stays in `each_`.
  double sum(Kind kind, double radius_m, double place_m2);
  [[nodiscard]] Worst worst_of(double radius_m, double stated_m);
  void show(double MixedGround::*member);
  void show_rows(double place_m2);

  const PathFans& fans_;
  const Pair* pair_ = nullptr;
  Mixture* shown_ = nullptr;
  Chances most_{-1, -1, -1};
  std::vector<Bores> bores_;
  std::vector<double> each_;
};

}  // namespace burrow::clearance
