/// How each utility moves and strains when the ground around the bore gives way.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/clearance/course.h"
#include "burrow/soil/utility_strain.h"
#include "burrow/tables/material_rows.h"
#include "check_run.h"

namespace burrow {

namespace {

/// What a wall bears, and whether its joints take the stretch.
struct StrainRule {
  std::optional<Limit> limit;
  bool joints_stretch = false;
};

/// An unknown wall is held against the most brittle one.
StrainRule rule_for(const CheckRun& run, UtilityWall wall) {
  switch (wall) {
    case UtilityWall::grey_iron:
    case UtilityWall::unknown:
      return {run.limit("strain_grey_iron")};
    case UtilityWall::ductile_iron:
      return {run.limit("strain_ductile_iron")};
    case UtilityWall::steel:
      return {run.limit("strain_steel")};
    case UtilityWall::copper:
      return {run.limit("strain_copper")};
    case UtilityWall::plastic:
      return {run.limit("strain_plastic")};
    case UtilityWall::rigid:
    case UtilityWall::masonry:
      return {run.limit("strain_rigid"), true};
    case UtilityWall::cable:
      break;
  }
  return {};
}

bool may_carry_gas(const Utility& utility) {
  return utility.kind == UtilityKind::gas || utility.kind == UtilityKind::unknown;
}

/// A brittle line that carries gas, or nobody knows what, stops the work. Where nobody entered its wall, that is asked.
Severity strain_severity(const Utility& utility, UtilityWall wall) {
  const bool brittle = wall == UtilityWall::grey_iron || wall == UtilityWall::rigid || wall == UtilityWall::masonry;
  return brittle && may_carry_gas(utility) ? Severity::stop : Severity::caution;
}

class UtilitiesInMotion {
 public:
  explicit UtilitiesInMotion(CheckRun& run) : run_(run), movement_limit_(run.limit("movement_utility_m")) {
    for (std::size_t i = 0; i < rules_.size(); ++i) rules_[i] = rule_for(run, static_cast<UtilityWall>(i));
  }

  void judge_one(const Utility& utility, UtilityAnswer& answer) {
    if (!answer.on_bore || !answer.on_utility) return;
    const Point3 &bore = *answer.on_bore, &pipe = *answer.on_utility;
    const double ground = elevation_at(run_.crossing.site.ground, bore.x_m);
    const OpenedHole hole{
        {run_.tool.diameter.m / 2}, {ground - bore.z_m}, run_.ground.soil_at(bore.x_m, bore.y_m, bore.z_m).heave_share};
    const UtilityPlace place{{std::hypot(pipe.x_m - bore.x_m, pipe.y_m - bore.y_m)},
                             {ground - pipe.z_m},
                             {std::clamp(answer.angle_rad.value_or(pi / 2), 0.0, pi / 2)},
                             utility.outside_diameter.value_or(Length{0})};
    const Result<UtilityStrain> strain = utility_strain(hole, place);
    if (!strain) return;  // above ground, or within the hole: that is a matter of the clear gap
    answer.ground_movement_m = strain->movement_m;
    judge_movement(utility, answer, hole, place, *strain);
    if (utility.outside_diameter) judge_strain(utility, answer, place, *strain);
  }

 private:
  Finding at(const Utility& utility, const Point3& pipe, std::string_view code, Severity severity) const {
    return finding_at(code, severity, utility.id, display_name(utility), pipe.x_m, pipe.y_m, pipe.z_m);
  }

  void judge_movement(const Utility& utility, const UtilityAnswer& answer, const OpenedHole& hole,
                      const UtilityPlace& place, const UtilityStrain& strain) {
    if (may_be_live(utility, run_.tables) && (run_.passed || margin_of(strain.movement_m, movement_limit_) < 0))
      run_.require(at(utility, *answer.on_utility, "utility.movement", Severity::caution), strain.movement_m,
                   movement_limit_);
    if (run_.wants_working())
      run_.add_working(
          {"utility.movement",
           utility.id,
           "u = √(u_out² + u_up²)",
           {{"f_v", hole.share.v, ""},
            {"a", hole.radius.m, "m"},
            {"h", hole.axis_depth.m, "m"},
            {"x", place.beside.m, "m"},
            {"z", place.depth.m, "m"},
            {"u_out", strain.outward_m, "m"},
            {"u_up", strain.rise_m, "m"}},
           "u",
           strain.movement_m,
           "m",
           movement_limit_.value,
           {"Sagaseta 1987; Verruijt and Booker 1996, half-plane with ν = ½, exact near the hole; the utility "
            "follows the ground: an upper bound",
            SourceLabel::from_memory},
           movement_limit_.source});
  }

  void judge_strain(const Utility& utility, UtilityAnswer& answer, const UtilityPlace& place,
                    const UtilityStrain& strain) {
    const UtilityWall wall = wall_of(run_.tables, utility);
    const StrainRule& rule = rules_[static_cast<std::size_t>(wall)];
    const double counted = rule.joints_stretch ? 0 : 1;
    const double value = strain.bending + counted * strain.stretch;
    answer.strain = value;
    if (may_be_live(utility, run_.tables) && rule.limit && (run_.passed || margin_of(value, *rule.limit) < 0)) {
      const std::string_view code = wall == UtilityWall::unknown ? "utility.wall-unknown" : "utility.strain";
      Finding finding = at(utility, *answer.on_utility, code, strain_severity(utility, wall));
      finding.unit = "";
      finding.missing = wall == UtilityWall::unknown && may_carry_gas(utility);
      run_.require(std::move(finding), value, *rule.limit);
    }
    const bool limit_counts = rule.limit && wall != UtilityWall::unknown;
    if (run_.wants_working())
      run_.add_working(
          {"utility.strain",
           utility.id,
           "ε = sin²β (κ d/2 + j ε_x) + cos²β (κ_front d/2 + j ε_front)",
           {{"β", place.crossing.rad, "rad"},
            {"d", place.diameter.m, "m"},
            {"κ", strain.square.curvature_1_m, "1/m"},
            {"ε_x", strain.square.stretch, ""},
            {"κ_front", strain.front.curvature_1_m, "1/m"},
            {"ε_front", strain.front.stretch, ""},
            {"j", counted, ""}},
           "ε",
           value,
           "",
           limit_counts ? std::optional(rule.limit->value) : std::nullopt,
           {rule.joints_stretch
                ? translatable("bending of the ground at the axis, half-plane with ν = ½; the joints of short "
                               "pieces take the stretch (j = 0); an upper bound, since a pipe bends less")
                : "bending and stretch of the ground at the axis, half-plane with ν = ½; an upper "
                  "bound, since a pipe bends less and slips",
            SourceLabel::derived},
           limit_counts ? std::optional(rule.limit->source) : std::nullopt});
  }

  CheckRun& run_;
  Limit movement_limit_;
  std::array<StrainRule, static_cast<std::size_t>(UtilityWall::unknown) + 1> rules_;
};

}  // namespace

void check_movement(CheckRun& run) {
  UtilitiesInMotion motion(run);
  const std::vector<Utility>& utilities = run.crossing.site.utilities;
  for (std::size_t i = 0; i < utilities.size() && i < run.answer.utilities.size(); ++i)
    motion.judge_one(utilities[i], run.answer.utilities[i]);
}

}  // namespace burrow
