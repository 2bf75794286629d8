/// The pits: protection, the bore side, depth, water.

#include <algorithm>
#include <cmath>

#include "burrow/check/in_pit.h"
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

/// A live utility inside a pit is laid bare by the digging: a stop where it is dangerous and nobody has exposed it.
void find_utilities_inside(Judge& judge, const PitUnderCheck& pit) {
  for (const Utility& utility : judge.crossing.site.utilities) {
    if (!enters_pit(utility, pit.shape)) continue;
    const bool live = utility.status.value == UtilityStatus::live || utility.status.value == UtilityStatus::unknown;
    const bool hidden = utility.located.how.value != LocatedHow::exposed;
    const bool dangerous = row_of(judge.tables, utility.kind).dangerous;
    Finding finding = at(pit, "pit.utility", live && hidden && dangerous ? Severity::stop : Severity::caution);
    finding.subject = utility.id;
    finding.name = called(utility);
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
