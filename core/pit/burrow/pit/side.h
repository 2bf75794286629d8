#pragma once
/// One side of a pit as seen in section: how far it stands back from the floor at each height.

#include <vector>

#include "burrow/crossing/pits.h"

namespace burrow {

/// A stretch of a side going up: over `rise_m` it runs back `run_m`; a bench has no rise.
struct SidePiece {
  double rise_m = 0;
  double run_m = 0;
  bool operator==(const SidePiece&) const = default;
};

/// From the floor up; the last piece goes on as far as it is needed.
/// Upright, shored and shielded sides go straight up. A sloped side starts with its upright lower part. A benched one
/// steps up by its benches, the last of them again and again; without any entered, by 1.2 m (4 ft, second-hand).
class SideProfile {
 public:
  /// `run_per_rise` is the rules' slope for the soil; a typed one wins. Covers heights up to `height_m`.
  SideProfile(const PitSide& side, double run_per_rise, double height_m);

  /// Distance back from the floor's edge at a height above the floor. At the height of a bench: its lower end.
  [[nodiscard]] double run_at(double height_m) const;
  /// Height of the side above the floor at a distance back from the floor's edge; infinite behind an upright side.
  [[nodiscard]] double height_at(double run_m) const;
  [[nodiscard]] const std::vector<SidePiece>& pieces() const { return pieces_; }
  /// Heights at which the side bends.
  [[nodiscard]] std::vector<double> bends() const;

 private:
  std::vector<SidePiece> pieces_;
};

}  // namespace burrow
