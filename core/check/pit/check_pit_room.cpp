/// Whether tool and people find room on the floor of a pit, and whether the tool lies or arrives at its level.

#include <algorithm>
#include <cmath>
#include <utility>

#include "burrow/base/phrase.h"
#include "burrow/pit/floor_room.h"
#include "burrow/pit/pit_shapes.h"
#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double band_90_sd = 1.645;

/// One floor, and where the axis of the tool meets its face.
struct Floor {
  const PitUnderCheck& pit;
  bool launch = true;
  ArrivalSpread axis;      ///< without spread in the launch pit
  double right_m, left_m;  ///< what of it lies against the face
  FloorWanted wanted;
  FloorRoom room;
  [[nodiscard]] double off_centre_m() const { return std::abs(axis.offset_m - (right_m + left_m) / 2); }
};

Floor floor_under_check(const CheckRun& run, const PitUnderCheck& pit) {
  const Launch& launch = run.crossing.bore.launch;
  Floor floor{pit, &pit.shape == &run.answer.launch_pit, {launch.offset->m, launch.elevation.m, 0, 0}, 0, 0, {}, {}};
  const ExitOpening opening = exit_opening(pit.shape, Length{pit.shape.floor_elevation_m});
  floor.right_m = opening.right_m;
  floor.left_m = opening.left_m;
  if (floor.launch) {
    floor.wanted = launch_floor_wanted(run.crossing, run.tool);
  } else {
    floor.axis = expected_arrival(run.crossing, run.answer.bore);
    floor.wanted = exit_floor_wanted(run.crossing, run.tool, floor.axis, Length{(floor.right_m + floor.left_m) / 2});
  }
  floor.room = floor_room(pit.shape, Length{floor.axis.offset_m}, run.tool.length, run.tool.diameter);
  return floor;
}

Finding at_face(const Floor& floor, std::string_view code, Severity severity) {
  Finding finding = finding_of(floor.pit, code, severity);
  finding.station_m = floor.pit.shape.face_station_m;
  finding.offset_m = floor.axis.offset_m;
  return finding;
}

/// A floor beside the axis holds nothing; one by corners must lie under all of the tool.
bool tool_off_floor(CheckRun& run, const Floor& floor) {
  const PitShape& shape = floor.pit.shape;
  const bool beside = !(floor.room.length_m > 0);
  if (!beside && !shape.outlined) return false;
  const double offset = floor.axis.offset_m, face = shape.face_station_m, half = run.tool.diameter.m / 2;
  const double tail = face + (shape.bore_side_high ? -1 : 1) * run.tool.length.m;
  const PlanLine tool{{face, offset - half}, {tail, offset - half}, {tail, offset + half}, {face, offset + half}};
  const double wanted = run.tool.length.m * run.tool.diameter.m, lies = overlap_area(shape.floor, tool);
  if (!beside && (!(wanted > 0) || lies >= wanted * (1 - 1e-6))) return false;
  Finding finding = at_face(floor, "pit.tool-off-floor", beside ? Severity::stop : Severity::caution);
  finding.margin = -1;
  finding.source = {"the tool, its length from the face on, lies on the floor", SourceLabel::derived};
  run.add(std::move(finding));
  return beside;
}

/// The first limit broken counts: what holds no tool is a stop, what leaves nobody room to work a caution. A floor left
/// to the program has just the room it needs: that is no margin to search by.
void demand_room(CheckRun& run, const Floor& floor, std::string_view code, double value, const Limit& stop,
                 const Limit& caution) {
  constexpr double rounding = 1e-6;
  for (const auto& [limit, severity] : {std::pair{&stop, Severity::stop}, std::pair{&caution, Severity::caution}}) {
    if (!(value < limit->value - rounding)) continue;
    run.require(at_face(floor, code, severity), value, *limit);
    return;
  }
}

/// A piece of pipe that bends into the hole need not lie straight on the floor.
bool bends_in(const CheckRun& run) {
  const PipeMaterial* material = find_pipe(run.tables, run.crossing.pipe->material);
  return material && material->strength && material->strength->law == PipeLaw::polyethylene;
}

void judge_length(CheckRun& run, const Floor& floor) {
  Limit stop{run.tool.length.m, true, {"the length of the tool", SourceLabel::derived}};
  const PieceEntry entry = piece_entry(run.crossing);
  const double piece = (floor.launch ? entry.at_launch : entry.at_exit).m;
  if (piece > stop.value && !bends_in(run))
    stop = {piece, true, {"a stiff piece of pipe lies on the floor where it enters", SourceLabel::derived}};
  const Limit caution{floor.wanted.length.m,
                      true,
                      {"tool, or piece of pipe where it enters, and working length", SourceLabel::our_model}};
  demand_room(run, floor, "pit.floor-length", floor.room.length_m, stop, caution);
}

void judge_width(CheckRun& run, const Floor& floor) {
  const Limit hand = run.limit("pit_tool_room_m");
  Limit stop{run.tool.diameter.m + hand.value, true, hand.source};
  const double open_m = floor.left_m - floor.right_m;
  const bool beside = !(floor.room.length_m > 0);
  const double across = floor.launch ? floor.room.width_m : beside ? open_m : std::min(floor.room.width_m, open_m);
  if (!floor.launch) {
    const double mean_path = 2 * (floor.off_centre_m() + run.tool.diameter.m / 2);
    if (mean_path > stop.value)
      stop = {mean_path, true, {"the predicted path arrives on the floor", SourceLabel::our_model}};
  }
  const Limit caution{floor.wanted.width.m, true,
                      floor.launch ? Source{"0.9 m, or the tool and 0.4 m on either side", SourceLabel::our_model}
                                   : Source{"0.9 m, or the 90 % band of the arrival and the allowance on either side",
                                            SourceLabel::our_model}};
  demand_room(run, floor, "pit.floor-width", across, stop, caution);
}

void show_level(CheckRun& run, const Floor& floor, double below_tool_m, double value, const Limit& limit) {
  if (!run.wants_working()) return;
  run.add_working(
      {"pit.floor-high",
       floor.pit.subject,
       "h = z_floor − (z_axis − D/2 − t)",
       {{"z_floor", floor.pit.shape.floor_elevation_m, "m"},
        {"z_axis", floor.axis.elevation_m, "m"},
        {"D", run.tool.diameter.m, "m"},
        {"t", below_tool_m, "m"}},
       "h",
       value,
       "m",
       limit.value,
       {floor.launch ? translatable("t: cradle and slab; negative: the floor lies below what the tool needs")
                     : translatable("t: 1.645 standard deviations; negative: the floor lies below what the tool needs"),
        SourceLabel::derived},
       limit.source});
}

/// Too high is a stop in the launch pit, and in the exit pit where even the predicted path comes in below the floor.
void judge_level(CheckRun& run, const Floor& floor) {
  const double under_tool = floor.axis.elevation_m - run.tool.diameter.m / 2;
  const Pit& entered = floor.pit.entered;
  const double below_tool =
      floor.launch ? entered.cradle_height->m + entered.slab_thickness->m : band_90_sd * floor.axis.sd_vertical_m;
  const double level = floor.pit.shape.floor_elevation_m, over = level - (under_tool - below_tool);
  const Limit high = run.limit("pit_floor_high_m");
  const bool mean_too = floor.launch || level - under_tool > high.value;
  show_level(run, floor, below_tool, over, high);
  require(run, at_face(floor, "pit.floor-high", mean_too ? Severity::stop : Severity::caution), over, high);

  // Below the predicted arrival, however wide its band: the tool drops that far. What nobody typed is the program's.
  if (!entered.floor_elevation) return;
  const double drop = floor.launch ? -over : under_tool - level;
  require(run, at_face(floor, "pit.floor-low", Severity::caution), drop, run.limit("pit_floor_low_m"));
}

}  // namespace

void check_pit_room(CheckRun& run, const PitUnderCheck& pit) {
  const Floor floor = floor_under_check(run, pit);
  if (!tool_off_floor(run, floor)) {
    judge_length(run, floor);
    judge_width(run, floor);
  } else if (!floor.launch) {
    judge_width(run, floor);  // it says how far the path lies off
  }
  judge_level(run, floor);
}

}  // namespace burrow
