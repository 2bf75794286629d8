#pragma once
/// A second reading of the excavation rules, sentence by sentence, for pits under level ground. It asks the program for
/// nothing but the profile of a side as it is cut and drawn.
///
/// US: 29 CFR 1926.652 and App. A, B (`shared` notes of what was read: 5 ft, 20 ft, 24 h and 12 ft, 3/4, 1, 1 1/2,
/// 18 in, 2 ft read; 3 1/2 ft and 1/2 from memory; benches 4 and 5 ft second-hand). DIN 4124 as in DGUV Information
/// 201-052 s. 4.2, 4.3, BG BAU H 906, DGUV Regel 101-604 (read); berms second-hand.

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "burrow/pit/side.h"
#include "support/clean_crossing.h"

namespace burrow::test {

struct NaivePit {
  const Crossing& c;
  const Pit& pit;
  const PitShape& drawn;
  double middle_water = 0;   ///< elevation of the water, level
  bool road_beside = false;  ///< within 5 m of the floor

  static constexpr double ft = 0.3048, eps = 1e-7;

  [[nodiscard]] double depth() const { return 100 - drawn.floor_elevation_m; }
  [[nodiscard]] bool german() const { return *c.pits.rules == ExcavationRules::din_4124; }
  [[nodiscard]] bool is_yes(const std::optional<bool>& sign) const { return sign && *sign; }
  [[nodiscard]] bool named() const {
    for (const char letter : pit.confirmed_by)
      if (std::isalnum(static_cast<unsigned char>(letter))) return true;
    return false;
  }

  // -- strata: the upper from 100 down to `top` of the lower, if there is one

  [[nodiscard]] double bottom_of(std::size_t i) const {
    return i + 1 < c.site.strata.size() ? std::max(c.site.strata[i + 1].top->front().elevation_m, floor()) : floor();
  }
  [[nodiscard]] double top_of(std::size_t i) const { return i == 0 ? 100 : c.site.strata[i].top->front().elevation_m; }
  [[nodiscard]] double floor() const { return drawn.floor_elevation_m; }
  [[nodiscard]] bool dug(std::size_t i) const { return top_of(i) > floor() + eps; }

  /// 0 rock, 1 A, 2 B, 3 C.
  [[nodiscard]] int best_by_facts(std::size_t i) const {
    const Stratum& s = c.site.strata[i];
    const bool wet = is_yes(pit.signs.seeping) || middle_water > bottom_of(i);
    static const std::map<std::string, double> qu_kPa{
        {"peat", 20}, {"soft-clay", 36}, {"firm-clay", 80}, {"stiff-clay", 160}, {"hard-clay", 500}};
    int best = 3;
    if (const auto clay = qu_kPa.find(s.soil); clay != qu_kPa.end())
      best = *s.known == StratumEvidence::guess ? 1 : clay->second >= 143.7 ? 1 : clay->second > 47.8 ? 2 : 3;
    if (s.soil == "silt" || s.soil == "weathered-rock") best = 2;
    const PitSigns& look = pit.signs;
    const bool shaken = look.vibrated ? *look.vibrated : road_beside;
    if (is_yes(look.fissured) || is_yes(look.joints) || shaken || is_yes(look.disturbed) || is_yes(look.loose_fill))
      best = std::max(best, 2);
    if (wet || (look.dip_run_per_rise && look.dip_run_per_rise->v <= 4)) best = 3;
    return best;
  }

  [[nodiscard]] int type(std::size_t i) const {
    if (!pit.soil_type || !named()) return 3;
    const int typed = static_cast<int>(*pit.soil_type);
    return typed < best_by_facts(i) ? 3 : typed;
  }

  [[nodiscard]] int worst_type() const {
    int worst = 0;
    for (std::size_t i = 0; i < c.site.strata.size(); ++i)
      if (dug(i)) worst = std::max(worst, type(i));
    return worst;
  }

  [[nodiscard]] int layers() const {
    int n = 0;
    for (std::size_t i = 0; i < c.site.strata.size(); ++i) n += dug(i) ? 1 : 0;
    return n;
  }

  /// Flattest of the layers at and below a height over the floor.
  [[nodiscard]] double slope_below(double height, bool simple) const {
    double flattest = 0;
    for (std::size_t i = 0; i < c.site.strata.size(); ++i) {
      if (!dug(i) || bottom_of(i) - floor() >= height - eps) continue;
      static constexpr double us[] = {0, 0.75, 1, 1.5};
      const double german_run[] = {1 / std::tan(80 * pi / 180), 1 / std::tan(60 * pi / 180), 1, 1};
      double run = german() ? german_run[type(i)] : us[type(i)];
      const bool short_term =
          simple && layers() == 1 && pit.open_time && pit.open_time->s <= 86400 && depth() <= 12 * ft + eps;
      if (!german() && type(i) == 1 && short_term) run = 0.5;
      flattest = std::max(flattest, run);
    }
    return flattest + (!german() && is_yes(pit.signs.distress) ? 0.5 : 0.0);
  }

  // -- German questions

  [[nodiscard]] bool blanket() const {
    return !pit.signs.none_seen.by.empty() && std::isalnum(static_cast<unsigned char>(pit.signs.none_seen.by[0])) &&
           pit.signs.none_seen.date && *pit.signs.none_seen.date <= "2026-03-02";
  }
  [[nodiscard]] bool no(const std::optional<bool>& sign) const { return sign ? !*sign : blanket(); }

  [[nodiscard]] bool fill_dug() const {
    for (std::size_t i = 0; i < c.site.strata.size(); ++i)
      if (dug(i) && c.site.strata[i].soil == "made-ground") return true;
    return false;
  }
  [[nodiscard]] bool peat_dug() const {
    for (std::size_t i = 0; i < c.site.strata.size(); ++i)
      if (dug(i) && c.site.strata[i].soil == "peat") return true;
    return false;
  }

  /// All of them answered, none of them there.
  [[nodiscard]] bool angle_without_calculation() const {
    const PitSigns& s = pit.signs;
    if (depth() > 5 + eps || s.dip_run_per_rise || middle_water > floor() + eps || peat_dug()) return false;
    if (fill_dug() && (!s.loose_fill || *s.loose_fill)) return false;
    return no(s.joints) && no(s.dips_inward) && no(s.loose_fill) && no(s.soft_deposit) && no(s.open_drainage) &&
           no(s.seeping) && no(s.flowing) && no(s.vibrated) && no(s.steep_heap) && no(s.steep_ground) && no(s.distress);
  }

  // -- sides

  struct Piece {
    double from, to, run_from, run_to;
  };
  /// What of a side rises, up to the ground.
  [[nodiscard]] std::vector<Piece> rising(const SideProfile& profile) const {
    std::vector<Piece> pieces;
    double height = 0, run = 0;
    for (const SidePiece& p : profile.pieces()) {
      if (height >= depth() - eps) break;
      if (p.rise_m > 0) {
        const double to = std::min(height + p.rise_m, depth());
        pieces.push_back({height, to, run, run + p.run_m * (to - height) / p.rise_m});
      }
      height += p.rise_m;
      run += p.run_m;
    }
    return pieces;
  }

  [[nodiscard]] double set_back(double height) const {
    constexpr int n = 400;
    double back = 0;
    for (int i = 0; i < n; ++i) back += slope_below((i + 0.5) * height / n, false) * height / n;
    return back;
  }

  [[nodiscard]] bool cohesive_b() const {
    for (std::size_t i = 0; i < c.site.strata.size(); ++i)
      if (dug(i) && type(i) == 2 && c.site.strata[i].soil.find("clay") == std::string::npos &&
          c.site.strata[i].soil != "peat")
        return false;
    return true;
  }

  [[nodiscard]] bool benches_stand(const PitSide& side, const SideProfile& profile, bool shape_only) const {
    const std::vector<Piece> faces = rising(profile);
    if (german()) {
      const double berm = is_yes(side.benches_only_walked) ? 0.6 : 1.5;
      for (std::size_t i = 0; i < faces.size(); ++i) {
        const Piece& f = faces[i];
        if (f.to - f.from > 3 + eps) return false;
        if (f.run_to - f.run_from < (f.to - f.from) * slope_below(f.to, false) - eps) return false;
        if (!shape_only && i > 0 && f.run_from - faces[i - 1].run_to < berm - eps) return false;
      }
      return true;
    }
    if (depth() > 20 * ft + eps || worst_type() == 3 || (worst_type() == 2 && !cohesive_b())) return false;
    for (std::size_t i = 0; i < faces.size(); ++i) {
      const double highest = i > 0 && worst_type() == 1 ? 5 * ft : 4 * ft;
      if (faces[i].to - faces[i].from > highest + eps) return false;
      const bool ahead = i == 0 && faces.size() > 1;
      if (!ahead && faces[i].run_to < set_back(faces[i].to) - 1e-3) return false;
    }
    return true;
  }

  [[nodiscard]] bool slope_stands(const PitSide& side, const SideProfile& profile, bool shape_only) const {
    const double upright = side.upright ? side.upright->m : 0.0;
    const bool part = upright > 0, held = part && side.support_top.has_value();
    double above = 0;  // slope over the upright part
    if (held && shape_only) {
      if (side.support_top->m < std::min(upright, depth()) - eps) return false;
    } else if (held) {
      if (side.support_top->m < std::min(upright, depth()) + (german() ? 0.10 : 18 * 0.0254) - eps) return false;
      if (side.support_foot && side.support_foot->m > foot_allowed() + eps) return false;
    } else if (part) {
      if (worst_type() != 1) return false;
      if (german() ? depth() > 1.75 + eps : depth() > 12 * ft + eps) return false;
      if (std::min(upright, depth()) > (german() ? 1.25 : 3.5 * ft) + eps) return false;
      above = german() || depth() > 8 * ft + eps ? 1.0 : 0.75;
    }
    if (depth() > (german() ? 5 : 20 * ft) + eps) return false;
    for (const Piece& p : rising(profile)) {
      if (part && p.to <= upright + eps) continue;
      const double wanted = std::max(slope_below(p.to, !part), above);
      if (p.run_to - p.run_from < (p.to - p.from) * wanted - eps) return false;
    }
    return true;
  }

  [[nodiscard]] double foot_allowed() const {
    if (!german()) return 2 * ft;
    return worst_type() <= 1 && pit.open_time && pit.open_time->s <= 3 * 86400 ? 0.5 : 0.0;
  }

  [[nodiscard]] bool support_stands(const PitSide& side) const {
    const double stands_over = !german() ? 0.0 : depth() > 2 + eps ? 0.10 : 0.05;
    if (side.support_top && side.support_top->m < depth() + stands_over - eps) return false;
    return !side.support_foot || side.support_foot->m <= foot_allowed() + eps;
  }

  /// `shape_only`: as to how steep it is, not as to berms, and supports that need not be there.
  [[nodiscard]] bool cut_as_allowed(const PitSide& side, const SideProfile& profile, bool shape_only = false) const {
    switch (*side.kind) {
      case SideKind::upright:
        return !german() && worst_type() == 0 && !is_yes(pit.signs.distress);
      case SideKind::sloped:
        return slope_stands(side, profile, shape_only);
      case SideKind::benched:
        return benches_stand(side, profile, shape_only);
      case SideKind::shored:
      case SideKind::shielded:
        break;
    }
    return support_stands(side);
  }

  [[nodiscard]] bool side_stands(const PitSide& side, const SideProfile& profile) const {
    const bool bare = *side.kind != SideKind::shored && *side.kind != SideKind::shielded;
    return cut_as_allowed(side, profile) && (!german() || !bare || angle_without_calculation());
  }

  /// Upright to 1.25 m, or steeper than the soil's angle, only where nothing endangers it.
  [[nodiscard]] bool shallow_stands() const {
    const PitSides& s = pit.sides;
    const bool high = drawn.bore_side_high;
    const CutSides& cut = drawn.sides;
    const auto held = [](const PitSide& side) {
      return *side.kind == SideKind::shored || *side.kind == SideKind::shielded;
    };
    const auto gentle = [&](const PitSide& side, const SideProfile& profile) {
      return held(side) || cut_as_allowed(side, profile, true);
    };
    return (gentle(s.bore, high ? cut.high : cut.low) && gentle(s.back, high ? cut.low : cut.high) &&
            gentle(s.left, cut.left) && gentle(s.right, cut.right)) ||
           angle_without_calculation();
  }

  [[nodiscard]] bool wide_enough(double tool_length, double tool_diameter) const {
    if (!german()) return true;
    const auto held = [](const PitSide& s) { return *s.kind == SideKind::shored || *s.kind == SideKind::shielded; };
    const auto sloped_all = [](const PitSide& s) {
      return *s.kind == SideKind::sloped && !(s.upright && s.upright->m > 0);
    };
    const PitSides& s = pit.sides;
    double wanted = tool_diameter + 0.4;
    if (depth() > 4 + eps)
      wanted = std::max(wanted, 1.0);
    else if (depth() > 1.75 + eps)
      wanted = std::max(wanted, 0.8);
    else if (held(s.left) && held(s.right))
      wanted = std::max(wanted, 0.7);
    else if (!sloped_all(s.left) || !sloped_all(s.right))
      wanted = std::max(wanted, 0.6);
    const double behind = held(s.back) ? 0.6 : 0.5;
    return drawn.floor_width_m >= wanted - eps && drawn.floor_length_m - tool_length >= behind - eps;
  }

  /// As the rules allow it, by this reading.
  [[nodiscard]] bool allowed(double tool_length, double tool_diameter) const {
    const bool deep = german() ? depth() > 1.25 + eps : depth() >= 5 * ft - eps;
    if (depth() > 20 * ft + eps) return false;
    if (!deep && !is_yes(pit.signs.distress)) return !german() || shallow_stands();
    const PitSides& s = pit.sides;
    const bool high = drawn.bore_side_high;
    const CutSides& cut = drawn.sides;
    return side_stands(s.bore, high ? cut.high : cut.low) && side_stands(s.back, high ? cut.low : cut.high) &&
           side_stands(s.left, cut.left) && side_stands(s.right, cut.right) &&
           (!deep || wide_enough(tool_length, tool_diameter));
  }
};

}  // namespace burrow::test
