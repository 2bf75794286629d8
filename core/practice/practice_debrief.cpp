/// What cost what: the miss shared out over its causes.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/practice/practice.h"

namespace burrow {

namespace {

constexpr std::array<std::string_view, 6> causes{"level", "sight", "start", "ground", "stones", "wander"};
using Subset = unsigned;

bool holds(Subset subset, std::size_t cause) {
  return (subset >> cause & 1U) != 0;
}

struct OnFace {
  double left_m = 0, up_m = 0;
  bool prolonged = false;
};

/// Where a bore comes through the exit face; one that ends before is carried on straight.
OnFace on_face(const BorePath& path, double exit_x_m) {
  const PathPoint& end = path.points.back();
  if (path.ends == PathEnd::exit) return {end.y_m, end.z_m, false};
  const double left = exit_x_m - end.x_m;
  // A tool that runs nearly square to the line gets nowhere: no steeper than 45°.
  const auto slope = [](double angle) { return std::tan(std::clamp(angle, -0.25 * pi, 0.25 * pi)); };
  return {end.y_m + left * slope(end.heading_rad), end.z_m + left * slope(end.grade_rad), true};
}

class Sharer {
 public:
  Sharer(const Crossing& layout, const Tables& tables, const PracticeTruth& truth)
      : layout_(layout),
        truth_(truth),
        drawn_(layout.site, tables),
        real_(true_crossing(layout, truth)),
        true_ground_(real_.site, tables),
        tool_(resolve_tool(layout.bore.tool, tables)) {}

  Debrief run() {
    constexpr Subset all = (1U << causes.size()) - 1;
    std::array<OnFace, all + 1> at{};
    for (Subset subset = 0; subset <= all; ++subset) at[subset] = bored(subset);
    Debrief debrief;
    debrief.miss_left_m = at[all].left_m - at[0].left_m;
    debrief.miss_up_m = at[all].up_m - at[0].up_m;
    debrief.prolonged = at[all].prolonged || at[0].prolonged;
    for (std::size_t cause = 0; cause < causes.size(); ++cause) {
      MissShare share{causes[cause], 0, 0};
      for (Subset subset = 0; subset <= all; ++subset) {
        if (holds(subset, cause)) continue;
        const Subset joined = subset | 1U << cause;
        const double weight = orders(subset);
        share.left_m += weight * (at[joined].left_m - at[subset].left_m);
        share.up_m += weight * (at[joined].up_m - at[subset].up_m);
      }
      debrief.shares.push_back(share);
    }
    return debrief;
  }

 private:
  /// Share of all orders in which just these come before the next one: |S|! (n − |S| − 1)!/n!.
  static double orders(Subset subset) {
    int before = 0;
    for (std::size_t cause = 0; cause < causes.size(); ++cause) before += holds(subset, cause) ? 1 : 0;
    const auto factorial = [](int n) { return std::tgamma(n + 1.0); };
    const int n = static_cast<int>(causes.size());
    return factorial(before) * factorial(n - before - 1) / factorial(n);
  }

  [[nodiscard]] OnFace bored(Subset subset) const {
    SetErrors errors;
    if (holds(subset, 0)) errors.level_rad = truth_.errors.level_rad;
    if (holds(subset, 1)) errors.aim_rad = truth_.errors.aim_rad;
    if (holds(subset, 2)) {
      errors.up_m = truth_.errors.up_m;
      errors.left_m = truth_.errors.left_m;
    }
    const bool ground = holds(subset, 3), stones = holds(subset, 4), wander = holds(subset, 5);
    const Bore& bore = ground ? real_.bore : layout_.bore;
    const Chance chance{truth_.seed, wander && truth_.wander, stones && truth_.soil_stones};
    const TrueBore made = true_bore(ground ? true_ground_ : drawn_, tool_, bore, errors, chance,
                                    stones ? truth_.stones : std::vector<StoneHit>{});
    return on_face(made.path, bore.exit.station.m);
  }

  const Crossing& layout_;
  const PracticeTruth& truth_;
  Ground drawn_;
  Crossing real_;
  Ground true_ground_;
  Tool tool_;
};

}  // namespace

Debrief debrief(const Crossing& layout, const Tables& tables, const PracticeTruth& truth) {
  return Sharer(layout, tables, truth).run();
}

}  // namespace burrow
