#pragma once
/// One ground as a trial meets it: tables of its turning, without and with the strips that lie in it.

#include <cstdint>
#include <utility>
#include <vector>

#include "burrow/bore/turn_table.h"

namespace burrow::trials {

/// Strips enter piece by piece: a table for each set of strips that may lie above one another, and rays cut at their
/// outlines for the resistance beside, as `Ground::resistance_beside`. Where more than two strips overlap, the last
/// one counts alone.
class Terrain {
 public:
  Terrain(const Site& site, const Tables& tables, const Tool& tool, const TurnExtent& extent);

  /// The ground without its strips.
  [[nodiscard]] const TurnTable& plain() const { return tables_.front().second; }
  [[nodiscard]] bool has_strips() const { return !strips_.empty(); }
  /// Whether a strip is felt at a point in plan.
  [[nodiscard]] bool strip_near(double x_m, double y_m) const;

  struct Turn {
    TurnNode pitch;
    double yaw_1_m = 0;
    SoilChance chance;
  };
  [[nodiscard]] Turn beside_strips(double x_m, double y_m, double depth_m, double cos_heading,
                                   double sin_heading) const;

 private:
  using Mask = std::uint32_t;  // one bit a strip
  struct Strip {
    PlanLine outline;
    double x_low_m, x_high_m, y_low_m, y_high_m;
  };
  [[nodiscard]] Mask mask(double x_m, double y_m) const;
  [[nodiscard]] const TurnTable& table(Mask mask) const;
  [[nodiscard]] double stiffness_beside(double x_m, double y_m, double depth_m, double across_x, double across_y,
                                        bool& cut) const;

  double radius_m_, reach_m_, greatest_1_m_ = 0;
  std::vector<Strip> strips_;
  std::vector<std::pair<Mask, TurnTable>> tables_;  // first: no strip
};

}  // namespace burrow::trials
