#pragma once
/// Many boxes by where they lie, so that few have to be looked at.

#include <cstdint>
#include <vector>

#include "burrow/pit/ground_surface.h"

namespace burrow {

inline bool apart(const PlanBox& a, const PlanBox& b) {
  return a.x_high_m < b.x_low_m || b.x_high_m < a.x_low_m || a.y_high_m < b.y_low_m || b.y_high_m < a.y_low_m;
}

/// A box with the height of what is in it.
struct HighBox {
  PlanBox plan;
  double high_m = 0;
};

/// Halved over and over at the middle of the longer side, down to a few boxes each.
/// Cost: n log n to make; a look at a small place passes about log n of them, whatever their sizes and however crowded.
/// Evidence: GroundSurface.Index_*
class BoxTree {
 public:
  BoxTree() = default;
  explicit BoxTree(const std::vector<HighBox>& boxes);

  /// Calls `take` with the number of each box that touches this one, once, in no order.
  template <class Take>
  void each_touching(const PlanBox& box, const Take& take) const {
    for (std::size_t n = 0; n < nodes_.size();) {
      const Node& node = nodes_[n];
      if (apart(node.plan, box)) {
        n = node.next;
        continue;
      }
      for (std::uint32_t i = node.first; i < node.last; ++i)
        if (!apart(leaves_[i].plan, box)) take(leaves_[i].number);
      ++n;
    }
  }
  /// The greatest height of the boxes that touch this one, or `least`.
  [[nodiscard]] double highest_touching(const PlanBox& box, double least) const;

 private:
  struct Leaf {
    PlanBox plan;
    double high_m;
    std::uint32_t number;
  };
  /// Those below it follow it, up to `next`. Only the lowest hold leaves.
  struct Node {
    PlanBox plan;
    double high_m;
    std::uint32_t next = 0, first = 0, last = 0;
  };
  void halve(std::size_t first, std::size_t last);

  std::vector<Leaf> leaves_;
  std::vector<Node> nodes_;
};

}  // namespace burrow
