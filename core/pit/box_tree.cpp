#include "box_tree.h"

#include <algorithm>

namespace burrow {

namespace {

constexpr std::size_t in_a_leaf = 6;

PlanBox around(const PlanBox& a, const PlanBox& b) {
  return {std::min(a.x_low_m, b.x_low_m), std::max(a.x_high_m, b.x_high_m), std::min(a.y_low_m, b.y_low_m),
          std::max(a.y_high_m, b.y_high_m)};
}

}  // namespace

BoxTree::BoxTree(const std::vector<HighBox>& boxes) {
  leaves_.reserve(boxes.size());
  for (const HighBox& box : boxes)
    leaves_.push_back({box.plan, box.high_m, static_cast<std::uint32_t>(leaves_.size())});
  nodes_.reserve(boxes.size());
  if (!leaves_.empty()) halve(0, leaves_.size());
}

void BoxTree::halve(std::size_t first, std::size_t last) {
  const auto leaf = [&](std::size_t i) { return leaves_.begin() + static_cast<std::ptrdiff_t>(i); };
  const std::size_t at = nodes_.size();
  nodes_.push_back({leaves_[first].plan, leaves_[first].high_m});
  for (std::size_t i = first + 1; i < last; ++i) {
    nodes_[at].plan = around(nodes_[at].plan, leaves_[i].plan);
    nodes_[at].high_m = std::max(nodes_[at].high_m, leaves_[i].high_m);
  }
  if (last - first <= in_a_leaf) {
    nodes_[at].first = static_cast<std::uint32_t>(first);
    nodes_[at].last = static_cast<std::uint32_t>(last);
  } else {
    const PlanBox& all = nodes_[at].plan;
    const bool along = all.x_high_m - all.x_low_m > all.y_high_m - all.y_low_m;
    const std::size_t middle = first + (last - first) / 2;
    std::nth_element(leaf(first), leaf(middle), leaf(last), [along](const Leaf& a, const Leaf& b) {
      return along ? a.plan.x_low_m + a.plan.x_high_m < b.plan.x_low_m + b.plan.x_high_m
                   : a.plan.y_low_m + a.plan.y_high_m < b.plan.y_low_m + b.plan.y_high_m;
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
    for (std::uint32_t i = node.first; i < node.last; ++i)
      if (leaves_[i].high_m > highest && !apart(leaves_[i].plan, box)) highest = leaves_[i].high_m;
    ++n;
  }
  return highest;
}

}  // namespace burrow
