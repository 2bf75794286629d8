/// German widths: of a trench between its sides, and of the space to work in behind the tool.

#include <algorithm>

#include "burrow/base/phrase.h"
#include "burrow/pit/floor_room.h"
#include "burrow/pit/slope.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double shallow_m = 1.75, deep_m = 4.0, rounding = 1e-9;

bool shored(const PitSide& side) {
  return *side.kind == SideKind::shored || *side.kind == SideKind::shielded;
}

/// Between long sides that are sloped from the floor up no width is asked but that of what lies there.
const DutyRow* width_row(const PitUnderCheck& pit) {
  const PitSides& s = pit.entered.sides;
  const auto upright = [](const PitSide& side) {
    return *side.kind != SideKind::sloped || (side.upright && side.upright->m > 0);
  };
  if (pit.shape.depth_m > deep_m + rounding) return find_duty(pit.rules, "width-deeper");
  if (pit.shape.depth_m > shallow_m + rounding) return find_duty(pit.rules, "width-to-4");
  if (!upright(s.left) && !upright(s.right)) return nullptr;
  return find_duty(pit.rules, shored(s.left) && shored(s.right) ? "width-shored" : "width-part-sloped");
}

Limit width_wanted(const CheckRun& run, const PitUnderCheck& pit) {
  const DutyRow *row = width_row(pit), *beside = find_duty(pit.rules, "width-beside");
  Limit limit{row ? row->value : 0.0, true, row ? row->source : pit.rules.source};
  const double of_tool = run.tool.diameter.m + (beside ? beside->value : 0.0);
  if (beside && of_tool > limit.value) limit = {of_tool, true, beside->source};
  return limit;
}

/// Of the side behind the tool: whoever works there stands before it.
Limit room_wanted(const PitUnderCheck& pit) {
  const DutyRow* row = find_duty(pit.rules, shored(pit.entered.sides.back) ? "room-shored" : "room-sloped");
  return {row ? row->value : 0.0, true, row ? row->source : pit.rules.source};
}

void show(CheckRun& run, const PitUnderCheck& pit, double width, double room, const Limit& wide, const Limit& behind) {
  if (!run.wants_working()) return;
  run.add_working({"pit.trench-width",
                   pit.subject,
                   "b = y_left − y_right",
                   {{"y_left", pit.shape.floor_left_m, "m"}, {"y_right", pit.shape.floor_right_m, "m"}},
                   "b",
                   width,
                   "m",
                   wide.value,
                   {"clear width of the floor, of an outline where the tool lies", SourceLabel::derived},
                   wide.source});
  run.add_working({"pit.working-space",
                   pit.subject,
                   "w = L_floor − L_t",
                   {{"L_floor", room + run.tool.length.m, "m"}, {"L_t", run.tool.length.m, "m"}},
                   "w",
                   room,
                   "m",
                   behind.value,
                   {"floor behind the tool", SourceLabel::derived},
                   behind.source});
}

}  // namespace

void check_pit_width(CheckRun& run, const PitUnderCheck& pit) {
  if (pit.rules.rules != ExcavationRules::din_4124 || !protection_needed(pit.rules, Length{pit.shape.depth_m})) return;
  double width = pit.shape.floor_width_m, length = pit.shape.floor_length_m;
  if (pit.shape.outlined) {
    const double middle = (pit.shape.floor_left_m + pit.shape.floor_right_m) / 2;
    const FloorRoom room = floor_room(pit.shape, Length{middle}, run.tool.length, run.tool.diameter);
    width = room.width_m;
    length = room.length_m;
  }
  const Limit wide = width_wanted(run, pit), behind = room_wanted(pit);
  const double room = length - run.tool.length.m;
  require(run, finding_of(pit, "pit.trench-width", Severity::stop), width, wide);
  require(run, finding_of(pit, "pit.working-space", Severity::stop), room, behind);
  show(run, pit, width, room, wide, behind);
}

}  // namespace burrow
