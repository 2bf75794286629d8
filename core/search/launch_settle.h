#pragma once
/// The last word on a launch: what the tables of a map leave open by a hair is judged as `assess()` does.

#include <optional>
#include <vector>

#include "burrow/check/prepared_site.h"
#include "launch_weigh.h"

namespace burrow::launch {

/// Judges the launches that a map recommends without its tables, so that what is said of them is what `assess()` says
/// once they are taken.   Evidence: LaunchStory.RandomCrossings_*
class Settler {
 public:
  /// `limits` grows where a new limit is met.
  Settler(const Crossing& crossing, const Tables& tables, Limits& limits, MapOver over);
  Settler(const Settler&) = delete;
  Settler& operator=(const Settler&) = delete;

  LaunchCell at(const MapPlace& place);
  /// The best of candidates, judged anew, and of launches that are settled already. `settable`, where it is wanted:
  /// the place next to one that a crew can set, to the millimetre and the ten-thousandth.
  std::optional<LaunchCell> best(std::vector<LaunchCell> candidates, std::vector<LaunchCell> settled,
                                 const LeastClean& least, const LaunchMap* settable);

 private:
  const Crossing& crossing_;
  PreparedSite groundwork_;
  Limits& limits_;
  LaunchJudge judge_;
};

}  // namespace burrow::launch
