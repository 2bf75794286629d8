/// How the sides of a pit are held: protection, slopes, upright lower parts, the side that the tool passes.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/crossing/statement.h"
#include "burrow/pit/slope.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double rounding = 1e-9;  // feet turned to metres

bool any_distress(const PitUnderCheck& pit) {
  return pit.entered.signs.distress.value_or(false);
}

/// The slope that the rules want of a side: of a simple one in all layers, of any other without the short-term slope.
double wanted_run(const PitUnderCheck& pit, const PitSide& side) {
  const bool simple = *side.kind == SideKind::sloped && !(side.upright && side.upright->m > 0);
  double wanted = 0;
  for (const PitLayer& layer : pit.shape.layers)
    wanted = std::max(wanted, simple ? layer.run_per_rise : layer.compound_run_per_rise);
  return std::max(wanted, run_at_ends(pit));
}

/// The slope typed for a side; nothing where the program cuts it by the rules. Benches are judged by their own check.
std::optional<double> typed_run(const PitSide& side) {
  if (*side.kind == SideKind::sloped && side.run_per_rise) return side.run_per_rise->v;
  return std::nullopt;
}

bool has_upright_part(const PitSide& side) {
  return *side.kind == SideKind::sloped && side.upright && side.upright->m > 0;
}

const UprightPartRow* upright_row(const PitUnderCheck& pit) {
  return upright_part_row(pit.rules, pit.shape.soil_type, Length{pit.shape.depth_m});
}

bool stands_upright(const PitSide& side) {
  return *side.kind == SideKind::upright;
}

/// Wholly stable rock needs no protection under the American rules; the German ones cut it back to 80°.
bool stable_rock(const PitUnderCheck& pit) {
  return pit.rules.rules == ExcavationRules::us_1926 && pit.shape.soil_type == ExcavationType::stable_rock;
}

/// Nobody has said that there is no sign of distress; German rules take it from the one answer for all, too.
bool nobody_looked(const CheckRun& run, const PitUnderCheck& pit) {
  const PitSigns& signs = pit.entered.signs;
  const bool none_seen =
      pit.rules.rules == ExcavationRules::din_4124 && declared(signs.none_seen, run.tables.judged_on);
  return !signs.distress && !none_seen;
}

/// Upright and unsupported, deep enough to need protection, or any sign of cave-in. Where it is less deep, a side that
/// is steeper than the rules have it may stand if somebody has seen no sign.
void demand_protection(CheckRun& run, const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  const bool bare =
      std::any_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) { return stands_upright(side.entered); });
  const bool distress = any_distress(pit);
  if (stable_rock(pit) && !distress) return;
  const bool needed = protected_sides(pit);
  if (needed && bare) {
    Finding finding = finding_of(pit, "pit.unprotected", Severity::stop);
    finding.measured = pit.shape.depth_m;
    finding.limit = distress ? 0.0 : pit.rules.protection_from.m;
    finding.at_least = false;
    finding.source = pit.rules.source;
    finding.margin = -1;
    run.add(std::move(finding));
  } else if (!needed && nobody_looked(run, pit) && has_steep_side(run, pit)) {
    run.missing("pit-signs", pit.subject, pit.name);
  }
  if (!needed && bare)
    run.note_passed(finding_of(pit, "pit.unprotected", Severity::stop), pit.shape.depth_m,
                    {pit.rules.protection_from.m, false, {}});
}

/// Slopes deeper than the rules cover. Deeper than 20 ft is a finding of its own.
bool beyond_slopes(CheckRun& run, const PitUnderCheck& pit) {
  if (least_run_per_rise(pit.rules, pit.shape.soil_type, Length{pit.shape.depth_m})) return false;
  const Limit deepest = run.limit("pit_depth_m");
  if (pit.shape.depth_m > deepest.value) return true;
  double limit = 0;
  const Source* source = &pit.rules.source;
  for (const SlopeRow& row : pit.rules.slopes)
    if (row.type == pit.shape.soil_type) {
      limit = row.depth_limit.m;
      source = &row.source;
    }
  require(run, finding_of(pit, "pit.slope-depth", Severity::stop), pit.shape.depth_m, {limit, false, *source});
  return true;
}

/// Slopes typed steeper than the layers allow.
void demand_slopes(CheckRun& run, const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  const bool cut_back = std::any_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
    return *side.entered.kind == SideKind::sloped || *side.entered.kind == SideKind::benched;
  });
  if (!cut_back || beyond_slopes(run, pit)) return;
  for (const SideUnderCheck& side : sides) {
    const std::optional<double> typed = typed_run(side.entered);
    if (!typed) continue;
    Finding finding = finding_of(pit, side.name, "pit.slope", Severity::stop);
    finding.unit = "";
    require(run, std::move(finding), *typed, {wanted_run(pit, side.entered), true, pit.rules.source});
  }
}

void demand_upright_part(CheckRun& run, const PitUnderCheck& pit, const SideUnderCheck& side) {
  if (!has_upright_part(side.entered)) return;
  const double upright = std::min(side.entered.upright->m, height_at(run, pit, side.name));
  if (side.entered.support_top) {
    const DutyRow* above = find_duty(pit.rules, "support-above");
    const double wanted = upright + (above ? above->value : 0.0);
    const Source source = above ? above->source : pit.rules.source;
    require(run, finding_of(pit, side.name, "pit.support-low", Severity::stop), side.entered.support_top->m,
            {wanted, true, source});
    return;
  }
  const UprightPartRow* row = upright_row(pit);
  require(run, finding_of(pit, side.name, "pit.upright-part", Severity::stop), upright,
          {row ? row->upright.m : 0.0, false, row ? row->source : pit.rules.source});
  const std::optional<double> typed = typed_run(side.entered);
  if (!row || !typed || row->run_above.v <= wanted_run(pit, side.entered)) return;  // else said by its slope
  Finding finding = finding_of(pit, side.name, "pit.slope", Severity::stop);
  finding.unit = "";
  require(run, std::move(finding), *typed, {row->run_above.v, true, row->source});
}

/// Where the tool passes, the ground above it is its roof.
void look_for_roof(CheckRun& run, const PitUnderCheck& pit) {
  const SideKind kind = pit.entered.sides.bore.kind.value;
  if ((kind != SideKind::sloped && kind != SideKind::benched) || pit.shape.section.empty()) return;
  const bool high = pit.shape.bore_side_high;
  const double face = high ? pit.shape.floor_to_m : pit.shape.floor_from_m;
  const double surface = high ? pit.shape.section.back().station_m : pit.shape.section.front().station_m;
  const double missing = std::abs(surface - face);
  pit.work.roof_missing_m = missing;
  Finding finding = finding_of(pit, "pit.bore-side-sloped", Severity::caution);
  finding.station_m = pit.shape.face_station_m;
  finding.elevation_m = pit.shape.axis_elevation_m;
  finding.measured = missing;
  finding.at_least = false;
  finding.source = {"the roof is missing where the tool enters or leaves", SourceLabel::our_model};
  run.add(std::move(finding));
  if (run.wants_working())
    run.add_working({"pit.bore-side-sloped",
                     pit.subject,
                     "m = |x_surface − x_face|",
                     {{"x_surface", surface, "m"}, {"x_face", face, "m"}},
                     "m",
                     missing,
                     "m",
                     std::nullopt,
                     {"stretch of the bore over which the side is cut away", SourceLabel::derived}});
}

}  // namespace

bool protected_sides(const PitUnderCheck& pit) {
  return protection_needed(pit.rules, Length{pit.shape.depth_m}) || any_distress(pit);
}

double run_at_ends(const PitUnderCheck& pit) {
  ExcavationType worst = ExcavationType::stable_rock;
  for (const PitLayer& layer : pit.shape.layers) worst = std::max(worst, layer.type);
  if (pit.shape.soil_type <= worst) return 0;
  const auto row = std::find_if(pit.rules.slopes.begin(), pit.rules.slopes.end(),
                                [&](const SlopeRow& slope) { return slope.type == pit.shape.soil_type; });
  const DutyRow* flatter = any_distress(pit) ? find_duty(pit.rules, "distress-flatter") : nullptr;
  return (row == pit.rules.slopes.end() ? 0.0 : row->run_per_rise.v) + (flatter ? flatter->value : 0.0);
}

bool has_steep_side(const CheckRun& run, const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  return std::any_of(sides.begin(), sides.end(), [&](const SideUnderCheck& under_check) {
    const PitSide& side = under_check.entered;
    if (stands_upright(side)) return true;
    if (*side.kind == SideKind::benched) return !benches_gentle(run, pit, under_check);
    const std::optional<double> typed = typed_run(side);
    if (typed && *typed < wanted_run(pit, side) - rounding) return true;
    if (!has_upright_part(side)) return false;
    const double upright = std::min(side.upright->m, height_at(run, pit, under_check.name));
    if (side.support_top && side.support_top->m >= upright - rounding) return false;
    const UprightPartRow* row = upright_row(pit);
    return upright > (row ? row->upright.m : 0.0) + rounding;
  });
}

std::vector<SideUnderCheck> sides_of(const PitUnderCheck& pit) {
  const PitSides& entered = pit.entered.sides;
  const CutSides& cut = pit.shape.sides;
  const bool high = pit.shape.bore_side_high;
  return {{PitSideName::bore, entered.bore, high ? cut.high : cut.low},
          {PitSideName::back, entered.back, high ? cut.low : cut.high},
          {PitSideName::left, entered.left, cut.left},
          {PitSideName::right, entered.right, cut.right}};
}

double height_at(const CheckRun& run, const PitUnderCheck& pit, PitSideName side) {
  if (pit.shape.ground.there()) {
    double highest = 0;
    for (std::size_t i = 0; i < pit.shape.floor.size(); ++i) {
      if (side_name(pit.shape, i) != side) continue;
      const LevelLine over =
          pit.shape.ground.along(pit.shape.floor[i], pit.shape.floor[(i + 1) % pit.shape.floor.size()]);
      for (const LevelPoint& p : over) highest = std::max(highest, p.elevation_m - pit.shape.floor_elevation_m);
    }
    return highest;
  }
  if (side == PitSideName::left || side == PitSideName::right) return pit.shape.depth_m;
  const bool at_high_end = (side == PitSideName::bore) == pit.shape.bore_side_high;
  const double station = at_high_end ? pit.shape.floor_to_m : pit.shape.floor_from_m;
  return elevation_at(run.crossing.site.ground, station) - pit.shape.floor_elevation_m;
}

void check_pit_sides(CheckRun& run, const PitUnderCheck& pit) {
  demand_protection(run, pit);
  if (protected_sides(pit)) {
    demand_slopes(run, pit);
    for (const SideUnderCheck& side : sides_of(pit)) demand_upright_part(run, pit, side);
    check_pit_benches(run, pit);
  }
  check_pit_conditions(run, pit);
  look_for_roof(run, pit);
}

}  // namespace burrow
