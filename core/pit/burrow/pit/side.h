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

/// The slope up to a height above the floor, for one layer of the ground.
struct SlopeStep {
  double top_height_m = 0;
  double run_per_rise = 0;
  bool operator==(const SlopeStep&) const = default;
};

/// From the floor up; the last piece goes on as far as it is needed.
/// Upright, shored and shielded sides go straight up. A sloped side starts with its upright lower part, then takes the
/// slope of each layer. A benched one steps up by its benches, the last of them again and again; without any entered,
/// by `benches_within` steps of 1.2 m (4 ft, second-hand) of the slope of the uppermost layer, which is the flattest.
class SideProfile {
 public:
  SideProfile() = default;  ///< straight up
  /// `run_per_rise` is the rules' slope for the soil; a typed one wins. Covers heights up to `height_m`.
  SideProfile(const PitSide& side, double run_per_rise, double height_m);
  /// `steps` from the floor up; the last goes on. At least one.
  SideProfile(const PitSide& side, const std::vector<SlopeStep>& steps, double height_m);

  /// Distance back from the floor's edge at a height above the floor. At the height of a bench: its lower end.
  [[nodiscard]] double run_at(double height_m) const;
  /// Height of the side above the floor at a distance back from the floor's edge; infinite behind an upright side.
  [[nodiscard]] double height_at(double run_m) const;
  [[nodiscard]] const std::vector<SidePiece>& pieces() const { return pieces_; }
  /// Heights at which the side bends.
  [[nodiscard]] std::vector<double> bends() const;
  bool operator==(const SideProfile&) const = default;

 private:
  std::vector<SidePiece> pieces_;
};

/// Upright steps of which the first stands ahead of the line of this slope from the toe, and the top edge of every
/// other one on it: two steps back behind the first, one behind each that follows.
/// Source: 29 CFR 1926 Subpart P App. B Fig. B-1.1 (second-hand: the slope lies on the whole benched excavation; which
/// corners it touches stands in a figure that nobody could read: this is the safe reading). Evidence: PitBenches.*
std::vector<Bench> benches_within(double run_per_rise, double rise_m);

/// `low` stands at the smaller station, `high` at the larger.
struct CutSides {
  SideProfile low, high, left, right;
  bool operator==(const CutSides&) const = default;
};

}  // namespace burrow
