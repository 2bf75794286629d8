#include "burrow/soil/guesses.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace burrow {

namespace {
using Order = std::vector<std::string_view>;
const std::array<Order, 3>& orders() {
  static const std::array<Order, 3> all{
      Order{"very-soft-clay", "soft-clay", "firm-clay", "stiff-clay", "very-stiff-clay", "hard-clay"},
      Order{"silt", "loose-sand", "medium-sand", "dense-sand", "fine-gravel", "cobbly"},
      Order{"trench-backfill", "made-ground", "engineered-fill"}};
  return all;
}
}  // namespace

std::vector<SoilGuess> guesses_of(const std::string& soil, const Tables& tables) {
  std::vector<SoilGuess> guesses{{soil, 1.0}};
  for (const Order& order : orders()) {
    const auto here = std::find(order.begin(), order.end(), soil);
    if (here == order.end()) continue;
    const auto add = [&](std::string_view id) {
      if (!find_soil(tables, id)) return;
      guesses.push_back({std::string(id), 0.25});
      guesses.front().chance -= 0.25;
    };
    if (here != order.begin()) add(*(here - 1));
    if (here + 1 != order.end()) add(*(here + 1));
  }
  return guesses;
}

}  // namespace burrow
