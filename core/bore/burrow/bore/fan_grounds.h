#pragma once
/// The grounds that strata nobody has seen may turn out to be, each with its chance.

#include <memory>
#include <string>
#include <vector>

#include "burrow/bore/fan_table.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// The ground as entered, and where strata are guesses all that they may be together: every combination of the classes
/// of `soil_mistaken_for` for one or two strata; for more, 16 grounds in which each pair of strata stands in every pair
/// of quarters of its chance just once (an orthogonal array of strength 2; a sixth stratum goes with the first).
/// Source: classes our model; array: Rao 1947 (from memory).   Range: `ground` and `site` outlive it.
/// Evidence: FanGrounds.*
class FanGrounds {
 public:
  FanGrounds(const Site& site, const Tables& tables, const Ground& ground, const Tool& tool,
             const FanTable::LaunchLine& line, std::vector<std::size_t> guessed);

  struct Member {
    double chance = 1;
    std::vector<std::string> classes;   ///< of the guessed strata, in their order
    std::unique_ptr<const Ground> own;  ///< empty: the ground as entered
    FanTable table;
  };
  [[nodiscard]] std::vector<Member>& members() { return members_; }
  [[nodiscard]] const std::vector<std::size_t>& guessed() const { return guessed_; }

 private:
  std::vector<std::size_t> guessed_;
  std::vector<Member> members_;
};

}  // namespace burrow
