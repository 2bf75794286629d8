/// The pits: protection, the bore side, depth, water.

#include <algorithm>
#include <cmath>

#include "burrow/pit/slope.h"
#include "judge.h"

namespace burrow {

namespace {

struct PitUnderCheck {
  const PitShape& shape;
  const Pit& entered;
  std::string subject;
  std::string name;
};

Finding at(const PitUnderCheck& pit, std::string_view code, Severity severity) {
  const double middle = (pit.shape.floor_from_m + pit.shape.floor_to_m) / 2;
  return finding_at(code, severity, pit.subject, pit.name, middle,
                    (pit.shape.floor_left_m + pit.shape.floor_right_m) / 2, pit.shape.floor_elevation_m);
}

bool open_and_steep(const PitSide& side) {
  return side.kind.value == SideKind::upright;
}

/// Slopes typed steeper than the soil type allows; what the rules do not cover is the business of the depth limit.
void demand_slopes(Judge& judge, const PitUnderCheck& pit, const ExcavationRuleSet& rules) {
  const Result<Ratio> least =
      least_run_per_rise(rules, pit.shape.soil_type, Length{pit.shape.depth_m}, pit.entered.open_time);
  if (!least) return;
  const PitSides& sides = pit.entered.sides;
  std::optional<double> steepest;
  for (const PitSide* side : {&sides.bore, &sides.back, &sides.left, &sides.right})
    if (side->kind.value == SideKind::sloped && side->run_per_rise)
      steepest = std::min(steepest.value_or(side->run_per_rise->v), side->run_per_rise->v);
  if (!steepest) return;
  Finding finding = at(pit, "pit.slope", Severity::stop);
  finding.unit = "";
  judge.demand(std::move(finding), *steepest, {least->v, true, rules.source});
}

/// Whether a line enters the excavation: over the footprint in plan and above the floor. Errs to the safe side, since
/// the slopes leave some ground standing. An unknown level counts as inside.
bool enters(const Utility& utility, const PitShape& pit) {
  const double radius = utility.outside_diameter.value_or(Length{0}).m / 2;
  for (std::size_t i = 0; i < utility.path.size(); ++i) {
    const PathVertex& a = utility.path[i];
    const PathVertex& b = utility.path[std::min(i + 1, utility.path.size() - 1)];
    const int pieces = std::clamp(static_cast<int>(std::hypot(b.x_m - a.x_m, b.y_m - a.y_m) / 0.05), 1, 4000);
    for (int k = 0; k <= pieces; ++k) {
      const double t = static_cast<double>(k) / pieces;
      if (!inside(pit.footprint, a.x_m + t * (b.x_m - a.x_m), a.y_m + t * (b.y_m - a.y_m))) continue;
      if (!a.z_m || !b.z_m || *a.z_m + t * (*b.z_m - *a.z_m) + radius > pit.floor_elevation_m) return true;
    }
  }
  return false;
}

/// Cheap first look: boxes in plan.
bool near(const Utility& utility, const PitShape& pit) {
  double x_low = 1e300, x_high = -1e300, y_low = 1e300, y_high = -1e300;
  for (const PlanPoint& p : pit.footprint) {
    x_low = std::min(x_low, p.x_m);
    x_high = std::max(x_high, p.x_m);
    y_low = std::min(y_low, p.y_m);
    y_high = std::max(y_high, p.y_m);
  }
  double from = 1e300, to = -1e300, right = 1e300, left = -1e300;
  for (const PathVertex& v : utility.path) {
    from = std::min(from, v.x_m);
    to = std::max(to, v.x_m);
    right = std::min(right, v.y_m);
    left = std::max(left, v.y_m);
  }
  return from <= x_high && to >= x_low && right <= y_high && left >= y_low;
}

/// A live utility inside a pit is laid bare by the digging: a stop where it is dangerous and nobody has exposed it.
void find_utilities_inside(Judge& judge, const PitUnderCheck& pit) {
  for (const Utility& utility : judge.crossing.site.utilities) {
    if (!near(utility, pit.shape) || !enters(utility, pit.shape)) continue;
    const bool live = utility.status.value == UtilityStatus::live || utility.status.value == UtilityStatus::unknown;
    const bool hidden = utility.located.how.value != LocatedHow::exposed;
    const bool dangerous = row_of(judge.tables, utility.kind).dangerous;
    Finding finding = at(pit, "pit.utility", live && hidden && dangerous ? Severity::stop : Severity::caution);
    finding.subject = utility.id;
    finding.name = utility.name.empty() ? std::string(word_of(utility.kind)) + " " + utility.id : utility.name;
    finding.source = {"expose by hand before digging with a machine, support what is laid bare",
                      SourceLabel::common_practice};
    finding.margin = -1;
    judge.say(std::move(finding));
  }
}

void check_pit(Judge& judge, const PitUnderCheck& pit) {
  const ExcavationRuleSet& rules = row_of(judge.tables, judge.crossing.pits.rules.value);
  const PitSides& sides = pit.entered.sides;

  // Upright and unsupported, deep enough to need protection, or any sign of cave-in.
  const bool bare = open_and_steep(sides.bore) || open_and_steep(sides.back) || open_and_steep(sides.left) ||
                    open_and_steep(sides.right);
  const bool distress = pit.entered.signs.distress.value_or(false);
  if (bare && (pit.shape.depth_m >= rules.protection_from.m || distress)) {
    Finding finding = at(pit, "pit.unprotected", Severity::stop);
    finding.measured = pit.shape.depth_m;
    finding.limit = distress ? 0.0 : rules.protection_from.m;
    finding.at_least = false;
    finding.source = rules.source;
    finding.margin = -1;
    judge.say(std::move(finding));
  } else if (bare && !pit.entered.signs.distress) {
    judge.missing("pit-signs", pit.subject, pit.name);
  }
  find_utilities_inside(judge, pit);
  if (pit.shape.depth_m >= rules.protection_from.m) demand_slopes(judge, pit, rules);
  // Where the tool enters, the ground above it is its roof.
  if (sides.bore.kind.value == SideKind::sloped || sides.bore.kind.value == SideKind::benched) {
    Finding finding = at(pit, "pit.bore-side-sloped", Severity::caution);
    finding.station_m = pit.shape.face_station_m;
    finding.elevation_m = pit.shape.axis_elevation_m;
    finding.source = {"the roof is missing where the tool enters or leaves", SourceLabel::our_model};
    judge.say(std::move(finding));
  }
  Limit deepest = judge.limit("pit_depth_m");
  judge.demand(at(pit, "pit.depth", Severity::stop), pit.shape.depth_m, deepest);
  judge.show({"pit.depth",
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

  if (judge.crossing.site.water && !judge.crossing.site.water->empty()) {
    const double water = elevation_at(*judge.crossing.site.water, (pit.shape.floor_from_m + pit.shape.floor_to_m) / 2);
    const double head = water - (pit.shape.floor_elevation_m - pit.entered.sump_depth->m);
    if (head > 0) {
      Finding finding = at(pit, "pit.water", Severity::caution);
      finding.measured = head;
      finding.limit = 0;
      finding.at_least = false;
      finding.margin = -head;
      finding.source = {"pit floor below the water level entered", SourceLabel::derived};
      judge.say(std::move(finding));
    }
  }
}

}  // namespace

void check_pits(Judge& judge) {
  check_pit(judge, {judge.answer.launch_pit, judge.crossing.pits.launch, "launch-pit", "launch pit"});
  check_pit(judge, {judge.answer.exit_pit, judge.crossing.pits.exit, "exit-pit", "exit pit"});
}

}  // namespace burrow
