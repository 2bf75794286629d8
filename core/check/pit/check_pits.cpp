/// The pits: depth and water; utilities, room, sides, soil and works in files of their own.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/check/prepared_site.h"
#include "burrow/pit/pit_shapes.h"
#include "burrow/pit/proposal.h"
#include "burrow/pit/slope.h"
#include "pit_check.h"

namespace burrow {

Finding finding_of(const PitUnderCheck& pit, std::string_view code, Severity severity) {
  const double middle = (pit.shape.floor_from_m + pit.shape.floor_to_m) / 2;
  return finding_at(code, severity, pit.subject, pit.name, middle,
                    (pit.shape.floor_left_m + pit.shape.floor_right_m) / 2, pit.shape.floor_elevation_m);
}

void require(CheckRun& run, Finding finding, double value, const Limit& limit) {
  constexpr double rounding = 1e-9;
  const double margin = margin_of(value, limit);
  if (std::abs(value - limit.value) <= rounding || margin >= 0) {
    run.note_passed(std::move(finding), value, limit);
    return;
  }
  auto& all = run.answer.findings;
  const auto other = std::find_if(all.begin(), all.end(), [&](const Finding& f) {
    return f.code == finding.code && f.subject == finding.subject && f.name == finding.name;
  });
  if (other != all.end()) {
    if (other->margin.value_or(0) <= margin) return;
    all.erase(other);
  }
  run.require(std::move(finding), value, limit);
}

PlanLine plan_of(const SurfaceFeature& feature) {
  if (feature.outline.size() > 2) return feature.outline;
  if (!feature.from || !feature.to) return {};
  constexpr double far_m = 200;  // beside the line: beyond any pit
  const auto [low, high] = std::minmax(feature.from->m, feature.to->m);
  const double lean = far_m * std::tan(feature.skew->rad);
  return {{low - lean, -far_m}, {high - lean, -far_m}, {high + lean, far_m}, {low + lean, far_m}};
}

Phrase display_name(const Plant& plant) {
  return plant.name.empty() ? Phrase(translatable("a machine")) : Phrase(plant.name);
}

PlanLine plan_of(const Plant& plant) {
  const double x = plant.station.m, y = plant.offset.m, along = plant.length.m / 2, across = plant.width.m / 2;
  return {{x - along, y - across}, {x + along, y - across}, {x + along, y + across}, {x - along, y + across}};
}

Finding finding_of(const PitUnderCheck& pit, PitSideName side, std::string_view code, Severity severity) {
  Finding finding = finding_of(pit, code, severity);
  const bool high = (side == PitSideName::bore) == pit.shape.bore_side_high;
  if (side == PitSideName::left) finding.offset_m = pit.shape.floor_left_m;
  if (side == PitSideName::right) finding.offset_m = pit.shape.floor_right_m;
  if (side == PitSideName::bore || side == PitSideName::back)
    finding.station_m = high ? pit.shape.floor_to_m : pit.shape.floor_from_m;
  finding.name = phrase(translatable("{} side of {}"), phrase_of_word(side), pit.name);
  return finding;
}

void demand_depth(CheckRun& run, const PitUnderCheck& pit, std::string_view code, const Limit& deepest) {
  require(run, finding_of(pit, code, Severity::stop), pit.shape.depth_m, deepest);
  if (run.wants_working())
    run.add_working({code,
                     pit.subject,
                     "d = z_ground − z_floor",
                     {{"z_ground", pit.shape.floor_elevation_m + pit.shape.depth_m, "m"},
                      {"z_floor", pit.shape.floor_elevation_m, "m"}},
                     "d",
                     pit.shape.depth_m,
                     "m",
                     deepest.value,
                     {"deepest place of the floor below the ground", SourceLabel::derived},
                     deepest.source});
}

namespace {

void check_water(CheckRun& run, const PitUnderCheck& pit) {
  if (!run.crossing.site.water || run.crossing.site.water->empty()) return;
  const double water = elevation_at(*run.crossing.site.water, (pit.shape.floor_from_m + pit.shape.floor_to_m) / 2);
  const double head = water - (pit.shape.floor_elevation_m - pit.entered.sump_depth->m);
  pit.work.water_head_m = head;
  Finding finding = finding_of(pit, "pit.water", Severity::caution);
  if (!(head > 0)) {
    run.note_passed(std::move(finding), head, {0, false, {}});
    return;
  }
  finding.measured = head;
  finding.limit = 0;
  finding.at_least = false;
  finding.margin = -head;
  finding.source = {"pit floor below the water level entered", SourceLabel::derived};
  run.add_working({"pit.water",
                   pit.subject,
                   translatable("h = z_water − (z_floor − sump)"),
                   {{"z_water", water, "m"},
                    {"z_floor", pit.shape.floor_elevation_m, "m"},
                    {"sump", pit.entered.sump_depth->m, "m"}},
                   "h",
                   head,
                   "m",
                   0.0,
                   {"level of the water entered, at the middle of the floor", SourceLabel::derived},
                   finding.source});
  run.add(std::move(finding));
}

/// The sides left to the program: straight up, they take the earth of the pit as it is proposed. Beside it, where
/// somebody looks, what they would take sloped by the rules; the roof over the bore stays.
void propose_sides(CheckRun& run, PitUnderCheck& pit) {
  const PitShape& shape = pit.shape;
  if (!shape.held.proposed) return;
  PitProposal& proposal = pit.work.proposal;
  proposal.made = true;
  proposal.straight_m3 = shape.volume_m3;
  const bool launch = &shape == &run.answer.launch_pit;
  const Pit& asked = launch ? run.crossing.pits.launch : run.crossing.pits.exit;
  PitSides sloped = asked.sides;
  const auto slope = [&](PitSide PitSides::*side, SideKind held, SideKind instead) {
    if (!left_to_program(asked.sides.*side)) return;
    proposal.kind = held;
    (sloped.*side).kind.set(instead);
  };
  slope(&PitSides::bore, shape.held.bore, SideKind::shored);
  slope(&PitSides::back, shape.held.back, SideKind::sloped);
  slope(&PitSides::left, shape.held.left, SideKind::sloped);
  slope(&PitSides::right, shape.held.right, SideKind::sloped);
  proposal.upright_allowed = proposal.kind == SideKind::upright;
  if (!run.wants_working()) return;
  const SiteSurface surface = SiteSurface::known(run.answer.ground_surface);
  if (least_run_per_rise(pit.rules, shape.soil_type, Length{shape.depth_m}))
    proposal.sloped_m3 = launch ? launch_pit_m3(run.crossing, run.tool, run.tables, sloped, surface)
                                : exit_pit_m3(run.crossing, run.tool, run.tables, run.answer.bore, sloped, surface);
  show_proposal(run, pit);
}

void check_pit(CheckRun& run, PitUnderCheck& pit) {
  check_pit_utilities(run, pit);
  check_pit_room(run, pit);
  demand_depth(run, pit, "pit.depth", run.limit("pit_depth_m"));
  check_water(run, pit);
  if (pit.shape.footprint.empty()) return;  // no ground line: nothing is cut
  propose_sides(run, pit);
  show_ground(run, pit);
  check_pit_soil(run, pit);
  check_pit_sides(run, pit);
  check_pit_support(run, pit);
  check_pit_width(run, pit);
  check_pit_earth(run, pit);
  check_pit_duties(run, pit);
  check_pit_loads(run, pit);
  check_pit_collisions(run, pit);
  check_pit_floor(run, pit);
}

/// The launch pit does not ask for the grade: judged once for all launches that differ in nothing else.
void check_launch_pit(CheckRun& run, PitUnderCheck& pit) {
  if (!run.memory || !run.passed) return check_pit(run, pit);
  auto &findings = run.answer.findings, &kept = *run.passed;
  if (const auto& known = run.memory->launch_pit) {
    pit.work = known->work;
    findings.insert(findings.end(), known->findings.begin(), known->findings.end());
    kept.insert(kept.end(), known->passed.begin(), known->passed.end());
    return;
  }
  const auto before = static_cast<std::ptrdiff_t>(findings.size()),
             kept_before = static_cast<std::ptrdiff_t>(kept.size());
  check_pit(run, pit);
  run.memory->launch_pit =
      JudgedPit{pit.work, {findings.begin() + before, findings.end()}, {kept.begin() + kept_before, kept.end()}};
}

}  // namespace

void check_pits(CheckRun& run) {
  const ExcavationRuleSet& rules = row_of(run.tables, run.crossing.pits.rules.value);
  Assessment& answer = run.answer;
  const auto in_force = [](Pit pit, const PitShape& shape) {
    pit.sides = sides_in_force(std::move(pit.sides), shape.held);
    return pit;
  };
  const Pit launch = in_force(run.crossing.pits.launch, answer.launch_pit),
            exit = in_force(run.crossing.pits.exit, answer.exit_pit);
  PitUnderCheck pits[] = {
      {answer.launch_pit, launch, answer.launch_pit_work, rules, "launch-pit", translatable("launch pit")},
      {answer.exit_pit, exit, answer.exit_pit_work, rules, "exit-pit", translatable("exit pit")}};
  check_launch_pit(run, pits[0]);
  check_pit(run, pits[1]);
  check_pits_near(run, pits);
  check_pits_influence(run, pits);
  check_owner_distances(run, pits);
}

}  // namespace burrow
