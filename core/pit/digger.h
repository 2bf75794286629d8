#pragma once
/// A floor and its sides taken out of the ground, piece by piece.

#include <functional>
#include <vector>

#include "burrow/pit/solid.h"
#include "convex.h"
#include "solid_parts.h"

namespace burrow {

class Digger {
 public:
  /// Both have to outlive it.
  Digger(const PitFloor& floor, const GroundSurface& ground);

  using TakeDug = std::function<void(Corners outline, const GroundPlane& ground, const GroundPlane& bottom)>;
  /// Gives each piece of the body in turn; `within`: only the pieces of ground that may reach into it.
  void each(const TakeDug& take, const PlanBox* within = nullptr);

 private:
  /// A stretch of a side over which it is plane: distances from the edge, heights above the floor.
  struct Stretch {
    double from_m, to_m, low_m, high_m;
  };
  struct Side {
    HalfPlane outside;  ///< distance from the edge
    std::vector<Stretch> stretches;
  };
  /// A piece while it is dug: the ground over it is that of the piece of ground that is at work.
  struct Dug {
    StoredOutline outline;
    GroundPlane bottom;
  };
  static std::vector<Stretch> stretches_of(const SideProfile& side);
  [[nodiscard]] PlanBox reach(double highest_m) const;
  [[nodiscard]] PlanBox where_it_is_dug() const;
  [[nodiscard]] const SolidPart* part_around(Corners outline);
  void dig(StoredOutline within_part, const SolidPart& part);
  void keep_below_ground();
  void raise(const Dug& piece, const Side& side);
  void give(const TakeDug& take);

  const PitFloor& floor_;
  const GroundSurface& ground_;
  std::vector<SolidPart> parts_;
  std::vector<Side> sides_;
  bool overlap_;
  std::size_t last_part_ = 0;  ///< in which the last outline lay: the next one is near

  GroundPlane plane_;  ///< of the ground at work
  OutlineStore store_;
  std::vector<Dug> pieces_, raised_;
  std::vector<SolidPiece> joined_;
};

}  // namespace burrow
