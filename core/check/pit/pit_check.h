#pragma once
/// What the checks of a pit share.

#include <span>
#include <string>

#include "burrow/pit/earthwork.h"
#include "burrow/pit/plan_overlap.h"
#include "check_run.h"

namespace burrow {

struct PitUnderCheck {
  const PitShape& shape;
  const Pit& entered;
  PitAnswer& work;
  const ExcavationRuleSet& rules;
  std::string subject;
  Phrase name;
};

/// At the middle of the floor.
Finding finding_of(const PitUnderCheck& pit, std::string_view code, Severity severity);
/// At the middle of a side's foot, named after it.
Finding finding_of(const PitUnderCheck& pit, PitSideName side, std::string_view code, Severity severity);

/// The four sides as entered, with their profile.
struct SideUnderCheck {
  PitSideName name;
  const PitSide& entered;
  const SideProfile& profile;
};
std::vector<SideUnderCheck> sides_of(const PitUnderCheck& pit);
/// Deep enough that a side without support must be cut back or held, or with signs of distress.
bool protected_sides(const PitUnderCheck& pit);
/// Upright, or cut steeper than the rules have it, without a support.
bool has_steep_side(const CheckRun& run, const PitUnderCheck& pit);
/// The slope of the worst soil where it lies at one end of the pit only; 0 where its middle shows it.
double run_at_ends(const PitUnderCheck& pit);
/// Whether each top edge of a benched side that has to lie behind the line of the rules' slope from the toe does, and
/// under German rules each face has the slope of its soil.
bool benches_gentle(const CheckRun& run, const PitUnderCheck& pit, const SideUnderCheck& side);
/// Height of the ground above the floor's edge at a side.
double height_at(const CheckRun& run, const PitUnderCheck& pit, PitSideName side);

/// As `CheckRun::require`, but a value on its limit to within rounding (feet turned to metres) keeps it, and of several
/// findings of one code about one subject only the worst stays.
void require(CheckRun& run, Finding finding, double value, const Limit& limit);
/// The depth of the floor against a limit, with its working; `code` lives as long as the answer.
void demand_depth(CheckRun& run, const PitUnderCheck& pit, std::string_view code, const Limit& deepest);

/// Of each utility: whether the excavation comes upon it or too near to it.
void check_pit_utilities(CheckRun& run, const PitUnderCheck& pit);
/// Length, width and level of the floor.
void check_pit_room(CheckRun& run, const PitUnderCheck& pit);
void check_pit_soil(CheckRun& run, PitUnderCheck& pit);
void check_pit_sides(CheckRun& run, const PitUnderCheck& pit);
void check_pit_benches(CheckRun& run, const PitUnderCheck& pit);
/// What German slopes want answered.
void check_pit_conditions(CheckRun& run, const PitUnderCheck& pit);
/// Least width of a trench and working space of the German rules.
void check_pit_width(CheckRun& run, const PitUnderCheck& pit);
void check_pit_support(CheckRun& run, const PitUnderCheck& pit);
void check_pit_earth(CheckRun& run, const PitUnderCheck& pit);
void check_pit_duties(CheckRun& run, const PitUnderCheck& pit);
void check_pit_loads(CheckRun& run, const PitUnderCheck& pit);
void check_pit_collisions(CheckRun& run, const PitUnderCheck& pit);
void check_pit_floor(CheckRun& run, const PitUnderCheck& pit);
void check_pits_near(CheckRun& run, std::span<const PitUnderCheck> pits);
void check_pits_influence(CheckRun& run, std::span<const PitUnderCheck> pits);
/// Owners' distances that count from the edge of an excavation.   Evidence: OwnersDistances.*
void check_owner_distances(CheckRun& run, std::span<const PitUnderCheck> pits);

/// How far the ground at the edge of the excavation lies off the ground line, and which ground it is cut out of.
/// Nothing where no point was surveyed.
void show_ground(CheckRun& run, const PitUnderCheck& pit);
/// Set-back of a side cut by the rules, layer by layer.
void show_set_back(CheckRun& run, const PitUnderCheck& pit);
/// Earth of the sides left to the program, beside that of slopes by the rules.
void show_proposal(CheckRun& run, const PitUnderCheck& pit);
/// Bank to loose, layer by layer.
void show_loose(CheckRun& run, const PitUnderCheck& pit);
void show_heap(CheckRun& run, const PitUnderCheck& pit, const HeapShape& shape, double run_per_rise);
/// Distance of two points in plan.
void show_gap(CheckRun& run, std::string_view code, const std::string& subject, const PlanGap& gap, const Limit& limit);

/// Closed outline of a thing on top in plan: as entered, else the band between its stations as it is drawn. Empty:
/// nobody said where it lies.
PlanLine plan_of(const SurfaceFeature& feature);
Phrase display_name(const Plant& plant);
/// Closed outline of a machine standing at the surface.
PlanLine plan_of(const Plant& plant);

}  // namespace burrow
