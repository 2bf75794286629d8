#pragma once
/// Many boxes by where they lie, so that few have to be looked at.

#include <cstdint>
#include <vector>

#include "burrow/pit/ground_surface.h"

namespace burrow {

inline bool apart(const PlanBox& a, const PlanBox& b) {
  return a.x_high_m < b.x_low_m || b.x_high_m < a.x_low_m || a.y_high_m < b.y_low_m || b.y_high_m < a.y_low_m;
}

inline bool holds(const PlanBox& outer, const PlanBox& inner) {
  return outer.x_low_m <= inner.x_low_m && inner.x_high_m <= outer.x_high_m && outer.y_low_m <= inner.y_low_m &&
         inner.y_high_m <= outer.y_high_m;
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
      const bool all = holds(box, node.plan);
      if (!all && !apart(node.plan, box) && !node.lowest()) {
        ++n;
        continue;
      }
      if (all)
        for (std::uint32_t i = node.first; i < node.last; ++i) take(numbers_[i]);
      else if (!apart(node.plan, box))
        for (std::uint32_t i = node.first; i < node.last; ++i)
          if (!apart(boxes_[i].plan, box)) take(numbers_[i]);
      n = node.next;
    }
  }
  /// The greatest height of the boxes that touch this one, or `least`.
  [[nodiscard]] double highest_touching(const PlanBox& box, double least) const;

 private:
  static constexpr std::uint32_t few = 6;
  /// Its boxes are those from `first` to `last`. The nodes below it follow it, up to `next`.
  struct Node {
    PlanBox plan;
    double high_m;
    std::uint32_t next = 0, first = 0, last = 0;
    [[nodiscard]] bool lowest() const { return last - first <= few; }
  };
  void halve(std::size_t first, std::size_t last);

  std::vector<HighBox> boxes_;  ///< in the order of the tree
  std::vector<std::uint32_t> numbers_;
  std::vector<Node> nodes_;
};

}  // namespace burrow
