#pragma once
/// Follows what the cells of a map have found between them.

#include <functional>
#include <stop_token>
#include <vector>

#include "launch_weigh.h"

namespace burrow::launch {

/// Judges squares of five by five places about the best one so far: moves on while a better one lies at the rim, else
/// halves the square, down to a 64th of a cell. A square, since the least of many margins has edges on which single
/// directions get stuck.
class Follower {
 public:
  /// The judges go on with the numbers of `limits`, which grows where a new limit is met.
  Follower(std::vector<LaunchJudge>& judges, Limits& limits, const LaunchMap& map, std::stop_token stop);

  /// From the best cells uphill; every launch judged is added.
  void climb(std::vector<LaunchCell>& cells, const LeastClean& least);
  /// Of the launches that arrive, those at which the fewest things are broken, each of these sets where it is broken
  /// least. None where none arrives: that a bore need not arrive is nothing to ask for.
  std::vector<Relaxation> relaxations(const std::vector<Judged>& launches, bool refine);
  [[nodiscard]] std::int64_t judged() const { return judged_; }

 private:
  using Worth = std::function<double(const Judged&)>;  ///< greater is better
  Judged follow(Judged from, const Worth& worth, const std::function<void(const Judged&)>& take = {});
  std::vector<Judged> judge(const std::vector<MapPlace>& places);
  [[nodiscard]] std::vector<std::string> broken_units(const Judged& judged) const;
  [[nodiscard]] Relaxation relaxation_at(const Judged& judged) const;

  std::vector<LaunchJudge>& judges_;
  Limits& limits_;
  const LaunchMap& map_;
  std::stop_token stop_;
  std::int64_t judged_ = 0;
};

}  // namespace burrow::launch
