#include "box_tree.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace burrow {

namespace {

PlanBox around(const PlanBox& a, const PlanBox& b) {
  return {std::min(a.x_low_m, b.x_low_m), std::max(a.x_high_m, b.x_high_m), std::min(a.y_low_m, b.y_low_m),
          std::max(a.y_high_m, b.y_high_m)};
}

}  // namespace

BoxTree::BoxTree(const std::vector<HighBox>& boxes) : boxes_(boxes), numbers_(boxes.size()) {
  std::iota(numbers_.begin(), numbers_.end(), 0U);
  nodes_.reserve(boxes.size());
  if (!boxes.empty()) halve(0, boxes.size());
  for (std::size_t i = 0; i < numbers_.size(); ++i) boxes_[i] = boxes[numbers_[i]];
}

/// While it is made, `boxes_` are as they came, and `numbers_` alone are put in order.
void BoxTree::halve(std::size_t first, std::size_t last) {
  const auto number = [&](std::size_t i) { return numbers_.begin() + static_cast<std::ptrdiff_t>(i); };
  const std::size_t at = nodes_.size();
  Node node{boxes_[numbers_[first]].plan, boxes_[numbers_[first]].high_m, 0, static_cast<std::uint32_t>(first),
            static_cast<std::uint32_t>(last)};
  for (std::size_t i = first + 1; i < last; ++i) {
    node.plan = around(node.plan, boxes_[numbers_[i]].plan);
    node.high_m = std::max(node.high_m, boxes_[numbers_[i]].high_m);
  }
  nodes_.push_back(node);
  if (!node.lowest()) {
    const bool along = node.plan.x_high_m - node.plan.x_low_m > node.plan.y_high_m - node.plan.y_low_m;
    const std::size_t middle = first + (last - first) / 2;
    std::nth_element(number(first), number(middle), number(last), [&](std::uint32_t a, std::uint32_t b) {
      const PlanBox &p = boxes_[a].plan, &q = boxes_[b].plan;
      return along ? p.x_low_m + p.x_high_m < q.x_low_m + q.x_high_m : p.y_low_m + p.y_high_m < q.y_low_m + q.y_high_m;
    });
    halve(first, middle);
    halve(middle, last);
  }
  nodes_[at].next = static_cast<std::uint32_t>(nodes_.size());
}

double BoxTree::highest_touching(const PlanBox& box, double least) const {
  double highest = least;
  for (std::size_t n = 0; n < nodes_.size();) {
    const Node& node = nodes_[n];
    if (node.high_m <= highest || apart(node.plan, box)) {
      n = node.next;
      continue;
    }
    if (holds(box, node.plan)) {
      highest = node.high_m;
      n = node.next;
      continue;
    }
    if (node.lowest())
      for (std::uint32_t i = node.first; i < node.last; ++i)
        if (boxes_[i].high_m > highest && !apart(boxes_[i].plan, box)) highest = boxes_[i].high_m;
    ++n;
  }
  return highest;
}

}  // namespace burrow
