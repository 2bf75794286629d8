#pragma once
/// One bore as the ground really makes it: the truth behind a practice bore, and the brute force behind the estimates.

#include <cstdint>
#include <vector>

#include "burrow/bore/path.h"
#include "burrow/bore/tool.h"
#include "burrow/crossing/bore.h"
#include "burrow/soil/ground.h"

namespace burrow {

/// What was set wrong at the launch, unseen: added to what the crew meant to set. Positive up and left.
struct SetErrors {
  double level_rad = 0, aim_rad = 0;
  double up_m = 0, left_m = 0;
  bool operator==(const SetErrors&) const = default;
};

/// A stone the nose meets at an arc length, and how it turns the tool.
struct StoneHit {
  double s_m = 0;
  double up_rad = 0, left_rad = 0;
  bool operator==(const StoneHit&) const = default;
};

struct Chance {
  std::uint64_t seed = 1;
  bool wander = true;  ///< of the soil at the axis
  bool stones = true;  ///< as often as the soil has them
};

struct TrueBore {
  BorePath path;                 ///< without spread
  std::vector<StoneHit> stones;  ///< met, given and drawn
};

/// Follows the tool by the steering of the mean path with the constant of `bore.model`, plus wander and stones. A step
/// drifts, turns, drifts (second order). Draws belong to the arc length and not to what happens there, so that two
/// bores of one seed differ only by what was changed.
/// `given`: stones at set places, beside those of the soil.
/// Source: our model.   Range: as `predict_path`.   Evidence: TrueBore.*
TrueBore true_bore(const Ground& ground, const Tool& tool, const Bore& bore, const SetErrors& errors,
                   const Chance& chance, const std::vector<StoneHit>& given = {}, Length step = {0.05});

}  // namespace burrow
