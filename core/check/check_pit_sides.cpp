/// How the sides of a pit are held: protection, slopes, upright lower parts, the side that the tool passes.

#include <algorithm>
#include <cmath>

#include "burrow/pit/slope.h"
#include "pit_check.h"

namespace burrow {

namespace {

bool any_distress(const PitUnderCheck& pit) {
  return pit.entered.signs.distress.value_or(false);
}

/// Upright and unsupported, deep enough to need protection, or any sign of cave-in. Wholly stable rock needs none.
void demand_protection(Judge& judge, const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  const bool bare = std::any_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
    return side.entered.kind.value == SideKind::upright;
  });
  const bool distress = any_distress(pit);
  if (!bare || (pit.shape.soil_type == ExcavationType::stable_rock && !distress)) return;
  if (pit.shape.depth_m >= pit.rules.protection_from.m || distress) {
    Finding finding = finding_of(pit, "pit.unprotected", Severity::stop);
    finding.measured = pit.shape.depth_m;
    finding.limit = distress ? 0.0 : pit.rules.protection_from.m;
    finding.at_least = false;
    finding.source = pit.rules.source;
    finding.margin = -1;
    judge.say(std::move(finding));
  } else if (!pit.entered.signs.distress) {
    judge.missing("pit-signs", pit.subject, pit.name);
  }
}

/// Slopes typed steeper than the layers allow, and slopes deeper than the rules cover.
void demand_slopes(Judge& judge, const PitUnderCheck& pit) {
  double wanted = 0;
  for (const PitLayer& layer : pit.shape.layers) wanted = std::max(wanted, layer.run_per_rise);
  std::optional<double> steepest;
  bool cut_back = false;
  for (const SideUnderCheck& side : sides_of(pit)) {
    const SideKind kind = side.entered.kind.value;
    cut_back = cut_back || kind == SideKind::sloped || kind == SideKind::benched;
    const auto take = [&](double run) { steepest = std::min(steepest.value_or(run), run); };
    if (kind == SideKind::sloped && side.entered.run_per_rise) take(side.entered.run_per_rise->v);
    if (kind != SideKind::benched) continue;
    for (const Bench& bench : side.entered.benches)
      if (bench.rise.m > 0) take(bench.tread.m / bench.rise.m);
  }
  if (!cut_back) return;
  const Result<Ratio> covered = least_run_per_rise(pit.rules, pit.shape.soil_type, Length{pit.shape.depth_m});
  if (!covered) {  // deeper than 20 ft is a finding of its own
    const Limit deepest = judge.limit("pit_depth_m");
    if (pit.shape.depth_m > deepest.value) return;
    double limit = 0;
    const Source* source = &pit.rules.source;
    for (const SlopeRow& row : pit.rules.slopes)
      if (row.type == pit.shape.soil_type) {
        limit = row.depth_limit.m;
        source = &row.source;
      }
    demand(judge, finding_of(pit, "pit.slope-depth", Severity::stop), pit.shape.depth_m, {limit, false, *source});
    return;
  }
  if (!steepest) return;
  Finding finding = finding_of(pit, "pit.slope", Severity::stop);
  finding.unit = "";
  demand(judge, std::move(finding), *steepest, {wanted, true, pit.rules.source});
}

/// The rules' row for an upright lower part, for a pit of this type and depth.
const UprightPartRow* upright_row(const PitUnderCheck& pit) {
  for (const UprightPartRow& row : pit.rules.upright_parts)
    if (row.type == pit.shape.soil_type && pit.shape.depth_m <= row.depth_limit.m + 1e-9) return &row;
  return nullptr;
}

void demand_upright_part(Judge& judge, const PitUnderCheck& pit, const SideUnderCheck& side) {
  if (side.entered.kind.value != SideKind::sloped || !side.entered.upright || !(side.entered.upright->m > 0)) return;
  const double upright = std::min(side.entered.upright->m, height_at(judge, pit, side.name));
  if (side.entered.support_top) {
    const DutyRow* above = find_duty(pit.rules, "support-above");
    const double wanted = upright + (above ? above->value : 0.0);
    const Source source = above ? above->source : pit.rules.source;
    demand(judge, finding_of(pit, "pit.support-low", Severity::stop), side.entered.support_top->m,
           {wanted, true, source});
    return;
  }
  const UprightPartRow* row = upright_row(pit);
  demand(judge, finding_of(pit, "pit.upright-part", Severity::stop), upright,
         {row ? row->upright.m : 0.0, false, row ? row->source : pit.rules.source});
  if (!row) return;
  const double above = side.profile.run_at(upright + 1) - side.profile.run_at(upright);
  Finding finding = finding_of(pit, "pit.slope", Severity::stop);
  demand(judge, std::move(finding), above, {row->run_above.v, true, row->source});
}

/// German slopes hold without a calculation only where none of these is there.
void ask_for_design(Judge& judge, const PitUnderCheck& pit) {
  if (pit.rules.rules != ExcavationRules::din_4124) return;
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  const bool cut_back = std::any_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
    return side.entered.kind.value == SideKind::sloped || side.entered.kind.value == SideKind::benched;
  });
  const PitSigns& signs = pit.entered.signs;
  if (!cut_back || !(signs.seeping.value_or(false) || signs.vibrated.value_or(false) || signs.dip_run_per_rise)) return;
  Finding finding = finding_of(pit, "pit.slope-by-calculation", Severity::caution);
  finding.source = {"DIN 4124: with seepage, dipping layers or strong vibration the slope is calculated",
                    SourceLabel::second_hand};
  finding.margin = -1;
  judge.say(std::move(finding));
}

/// Where the tool passes, the ground above it is its roof.
void look_for_roof(Judge& judge, const PitUnderCheck& pit) {
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
  judge.say(std::move(finding));
  judge.show({"pit.bore-side-sloped",
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

std::vector<SideUnderCheck> sides_of(const PitUnderCheck& pit) {
  const PitSides& entered = pit.entered.sides;
  const CutSides& cut = pit.shape.sides;
  const bool high = pit.shape.bore_side_high;
  return {{PitSideName::bore, entered.bore, high ? cut.high : cut.low},
          {PitSideName::back, entered.back, high ? cut.low : cut.high},
          {PitSideName::left, entered.left, cut.left},
          {PitSideName::right, entered.right, cut.right}};
}

double height_at(const Judge& judge, const PitUnderCheck& pit, PitSideName side) {
  if (side == PitSideName::left || side == PitSideName::right) return pit.shape.depth_m;
  const bool at_high_end = (side == PitSideName::bore) == pit.shape.bore_side_high;
  const double station = at_high_end ? pit.shape.floor_to_m : pit.shape.floor_from_m;
  return elevation_at(judge.crossing.site.ground, station) - pit.shape.floor_elevation_m;
}

void check_pit_sides(Judge& judge, const PitUnderCheck& pit) {
  demand_protection(judge, pit);
  if (pit.shape.depth_m >= pit.rules.protection_from.m || any_distress(pit)) {
    demand_slopes(judge, pit);
    for (const SideUnderCheck& side : sides_of(pit)) demand_upright_part(judge, pit, side);
    check_pit_benches(judge, pit);
    ask_for_design(judge, pit);
  }
  look_for_roof(judge, pit);
}

}  // namespace burrow
