/// Shields and shoring: how far they reach, and which published members fit.

#include <algorithm>

#include "burrow/base/phrase.h"
#include "burrow/crossing/statement.h"
#include "burrow/pit/slope.h"
#include "pit_check.h"

namespace burrow {

namespace {

/// How far below a support may be dug: under German rules in stiff cohesive soil, for a few days, only.
Limit foot_limit(const PitUnderCheck& pit) {
  const DutyRow* row = find_duty(pit.rules, "shield-below");
  const DutyRow *stiff = find_duty(pit.rules, "shield-below-stiff"), *days = find_duty(pit.rules, "few-days");
  const bool few_days = days && pit.entered.open_time && pit.entered.open_time->s <= days->value;
  if (stiff && few_days && pit.shape.soil_type <= ExcavationType::a) row = stiff;
  if (row) return {row->value, false, row->source};
  return {0, false, pit.rules.source};
}

/// How far a support stands over the ground.
Limit top_limit(const PitUnderCheck& pit, double height_m) {
  const DutyRow *low = find_duty(pit.rules, "support-upstand"), *deep = find_duty(pit.rules, "support-upstand-deep");
  const DutyRow* from = find_duty(pit.rules, "support-deep-from");
  const DutyRow* row = deep && from && pit.shape.depth_m > from->value + 1e-9 ? deep : low;
  if (row) return {height_m + row->value, true, row->source};
  return {height_m, true, pit.rules.source};
}

void show_reach(CheckRun& run, const PitUnderCheck& pit, const PitSide& side, double height_m, const Limit& limit) {
  if (!run.wants_working()) return;
  run.add_working({"pit.support-short",
                   pit.subject,
                   "t = z_top − z_floor",
                   {{"z_top", pit.shape.floor_elevation_m + side.support_top->m, "m"},
                    {"z_floor", pit.shape.floor_elevation_m, "m"},
                    {"h", height_m, "m"}},
                   "t",
                   side.support_top->m,
                   "m",
                   limit.value,
                   {"top of the support as entered; h: ground over the floor at that side", SourceLabel::derived},
                   limit.source});
}

void show_foot(CheckRun& run, const PitUnderCheck& pit, const PitSide& side, const Limit& limit) {
  if (!run.wants_working()) return;
  run.add_working({"pit.support-foot",
                   pit.subject,
                   "u = z_foot − z_floor",
                   {{"z_foot", pit.shape.floor_elevation_m + side.support_foot->m, "m"},
                    {"z_floor", pit.shape.floor_elevation_m, "m"}},
                   "u",
                   side.support_foot->m,
                   "m",
                   limit.value,
                   {"foot of the support as entered", SourceLabel::derived},
                   limit.source});
}

/// What is less deep than any side needs holding may be dug out below its support.
void demand_reach(CheckRun& run, const PitUnderCheck& pit, const SideUnderCheck& side) {
  const SideKind kind = side.entered.kind.value;
  const bool whole = kind == SideKind::shored || kind == SideKind::shielded;
  const bool lower_part = kind == SideKind::sloped && side.entered.upright && side.entered.support_top;
  if (!(whole || lower_part) || !protected_sides(pit)) return;
  if (side.entered.support_foot) {
    const Limit limit = foot_limit(pit);
    require(run, finding_of(pit, side.name, "pit.support-foot", Severity::stop), side.entered.support_foot->m, limit);
    show_foot(run, pit, side.entered, limit);
  }
  if (!whole || !side.entered.support_top) return;
  const double height = height_at(run, pit, side.name);
  const Limit limit = top_limit(pit, height);
  require(run, finding_of(pit, side.name, "pit.support-short", Severity::stop), side.entered.support_top->m, limit);
  show_reach(run, pit, side.entered, height, limit);
}

/// A shield holds what its maker rates it for. Nobody entered that: it is not known to hold.
void demand_rating(CheckRun& run, const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  const bool shielded = std::any_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
    return side.entered.kind.value == SideKind::shielded;
  });
  if (!shielded || !protected_sides(pit)) return;
  const RatedShield& shield = pit.entered.shield;
  if (!shield.depth || !shield.soil_type || !says_something(shield.source))
    run.missing("pit-shield", pit.subject, pit.name);
  const Source plate{
      shield.source.empty() ? Phrase(translatable("rating entered for the shield")) : Phrase(shield.source),
      SourceLabel::owners_setting};
  if (shield.depth) demand_depth(run, pit, "pit.shield-depth", {shield.depth->m, false, plate});
  if (shield.soil_type && *shield.soil_type < pit.shape.soil_type) {
    Finding finding = finding_of(pit, "pit.shield-soil", Severity::stop);
    finding.margin = -1;
    finding.source = plate;
    run.add(std::move(finding));
  }
}

/// Among the published rows that hold for this soil, depth and width, those of the smallest trench of each method.
void choose_members(CheckRun& run, const PitUnderCheck& pit) {
  const PitSides& sides = pit.entered.sides;
  const auto shored = [](const PitSide& side) { return side.kind.value == SideKind::shored; };
  const bool long_sides = shored(sides.left) && shored(sides.right), ends = shored(sides.bore) && shored(sides.back);
  if (!long_sides && !ends) return;
  const double width = std::max(long_sides ? pit.shape.floor_width_m : 0.0, ends ? pit.shape.floor_length_m : 0.0);
  pit.work.shoring_width_m = width;
  const auto fits = [&](const ShoringRow& row) {
    return row.type >= pit.shape.soil_type && pit.shape.depth_m <= row.depth.m + 1e-9 && width <= row.width.m + 1e-9;
  };
  const auto smaller = [](const ShoringRow& a, const ShoringRow& b) {
    if (a.type != b.type) return a.type < b.type;
    return a.depth != b.depth ? a.depth < b.depth : a.width < b.width;
  };
  for (const auto& [method, word] : EnumNames<ShoringMethod>::list) {
    const ShoringRow* best = nullptr;
    for (const ShoringRow& row : run.tables.shoring)
      if (row.method == method && fits(row) && (!best || smaller(row, *best))) best = &row;
    for (const ShoringRow& row : run.tables.shoring)
      if (best && row.method == method && !smaller(*best, row) && !smaller(row, *best))
        pit.work.shoring.push_back(row.id);
  }
  if (!pit.work.shoring.empty() || !protection_needed(pit.rules, Length{pit.shape.depth_m})) return;
  Finding finding = finding_of(pit, "pit.shoring", Severity::note);
  finding.measured = pit.shape.depth_m;
  finding.source = {
      "29 CFR 1926 Subpart P App. C and D, worked examples and vertical shores: none for this soil, depth and width",
      SourceLabel::read};
  run.add(std::move(finding));
}

}  // namespace

void check_pit_support(CheckRun& run, const PitUnderCheck& pit) {
  for (const SideUnderCheck& side : sides_of(pit)) demand_reach(run, pit, side);
  demand_rating(run, pit);
  choose_members(run, pit);
}

}  // namespace burrow
