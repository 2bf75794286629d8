#pragma once
/// A straight level bore at 101 m under ground at 102 m, and a water main to cross it.

#include <string>
#include <utility>
#include <vector>

#include "burrow/clearance/clearance.h"

namespace burrow::test {

inline const ClearanceRules rules = [] {
  ClearanceRules all{Length{0.30}};
  all.unexposed.fill(Length{0.60});
  return all;
}();
inline const LevelLine ground{{-5, 102}, {40, 102}};

inline Tables tables() {
  Tables t;
  t.judged_on = Date{2026, 3, 2};
  for (const auto& [kind, word] : EnumNames<UtilityKind>::list) {
    UtilityKindRow row;
    row.kind = kind;
    row.name = std::string(word);
    row.dangerous = kind == UtilityKind::gas || kind == UtilityKind::power;
    t.utilities.push_back(row);
  }
  LocatingPreset preset;
  preset.id = "pas128-b1";
  preset.lateral = Length{0.15};
  preset.lateral_of_depth = Ratio{0.15};
  preset.vertical_of_depth = Ratio{0.15};
  t.locating.push_back(preset);
  return t;
}

inline BorePath bore(double length_m = 20, double spread_per_m = 0.01) {
  BorePath path;
  for (int i = 0; i <= 80; ++i) {
    PathPoint p;
    p.x_m = p.s_m = length_m * i / 80;
    p.z_m = 101;
    p.sd_lateral_m = p.sd_vertical_m = 0.005 + spread_per_m * p.x_m;
    path.points.push_back(p);
  }
  path.length_m = length_m;
  return path;
}

inline Utility water_main(std::vector<PathVertex> line) {
  Utility u;
  u.id = "u1";
  u.name = "water main";
  u.kind = UtilityKind::water;
  u.outside_diameter = Length{0.11};
  u.located.how = Given<LocatedHow>::enter(LocatedHow::traced);
  u.located.lateral_sd = Length{0.10};
  u.located.vertical_sd = Length{0.12};
  u.path = std::move(line);
  return u;
}

inline Clearance only(const Utility& u, const BorePath& path = bore()) {
  return clearances(path, Length{0.065}, {u}, ground, rules, tables()).front();
}

}  // namespace burrow::test
