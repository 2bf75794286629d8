/// The pipe along its length: bends with the path, follows the ground, shortens as it cools, floats in a wet hole.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/pipe/along.h"
#include "pipe_check.h"

namespace burrow {

namespace {

/// What the ground keeps all year at the depth of a bore (our default).
constexpr Temperature ground_temperature{283.15};
constexpr double straightest_m = 1e4;

double turning_1_m(const PathPoint& p) {
  return std::hypot(p.curvature_1_m, p.yaw_curvature_1_m * std::cos(p.grade_rad));
}

void judge_bend(CheckRun& run, const PipeUnderCheck& pipe) {
  constexpr std::string_view code = "pipe.bend";
  const std::string_view name = translatable("least radius of the path");
  const double diameter = pipe.section->diameter_m;
  const BendRow* row = bend_row(*pipe.strength, pipe.section->ratio);
  const bool joints = pipe.pipe.piece_length && pipe.pipe.piece_length->m > 0 &&
                      pipe.pipe.piece_length->m < run.answer.bore.length_m && pipe.strength->fitting_bend;
  if (!row && !joints) return leave_out(run, code, name, translatable("No least bend is known for this wall."));
  const double times = joints ? pipe.strength->fitting_bend->v : row->diameters.v;
  const PathPoint* sharpest = &run.answer.bore.points.front();
  for (const PathPoint& p : run.answer.bore.points)
    if (turning_1_m(p) > turning_1_m(*sharpest)) sharpest = &p;
  const double curvature = turning_1_m(*sharpest);
  const double radius = curvature > 1 / straightest_m ? 1 / curvature : straightest_m;
  judge_pipe(
      run, pipe,
      {code, name, radius, "m", sharpest,
       joints ? translatable("Joints lie in the bend.") : translatable("Of the predicted path, without wander.")},
      {times * diameter, true, Severity::caution,
       joints ? Source{"100 diameters with a fitting in the bend", SourceLabel::second_hand} : row->source},
      {{},
       {},
       translatable("R = 1/κ, at most 10 km; limit k D"),
       {{"κ", curvature, "1/m"}, {"k", times, ""}, {"D", diameter, "m"}},
       "R",
       0,
       {},
       std::nullopt,
       {"curvature of the predicted path: our model", SourceLabel::our_model}});
}

void judge_strain(CheckRun& run, const PipeUnderCheck& pipe) {
  if (run.answer.loads.empty()) return;
  if (!find_limit(run.tables, pipe.strength->strain_limit))
    return leave_out(run, "pipe.strain", translatable("strain along it as it follows the ground"),
                     translatable("No limit is known for this material."));
  const double diameter = pipe.section->diameter_m, gap = std::max(run.tool.diameter.m - diameter, 0.0);
  double most = -1, path_1_m = 0, settling_1_m = 0, depth_m = 0;
  const PathPoint* place = nullptr;
  for (const LoadPoint& load : run.answer.loads) {
    const PathPoint* p = place_of(run, pipe, load);
    const double depth = load.depth_m + run.tool.diameter.m / 2;
    const auto settling = settling_curvature_1_m(Length{gap}, Length{depth});
    const double curvature = turning_1_m(*p) + (settling ? *settling : 0);
    if (!(curvature > most)) continue;
    most = curvature;
    path_1_m = turning_1_m(*p);
    settling_1_m = curvature - path_1_m;
    depth_m = depth;
    place = p;
  }
  const auto strain = place ? bending_strain(most, Length{diameter}) : Result<Ratio>(Ratio{0});
  if (!place || !strain) return;
  const Limit limit = run.limit(pipe.strength->strain_limit);
  judge_pipe(
      run, pipe,
      {"pipe.strain", translatable("strain along it as it follows the ground"), strain->v, "", place,
       translatable("The bend of the path, and the ground over the gap coming down by all of it: an upper bound.")},
      {limit.value, false, Severity::caution, limit.source},
      {{},
       {},
       "ε = (κ + g/(0.5 h)²) D/2",
       {{"κ", path_1_m, "1/m"},
        {"g", gap, "m"},
        {"h", depth_m, "m"},
        {"g/(0.5 h)²", settling_1_m, "1/m"},
        {"D", diameter, "m"}},
       "ε",
       0,
       {},
       std::nullopt,
       {"greatest curvature of a Gaussian trough, Peck 1969 form, as deep as the gap", SourceLabel::our_model}});
}

void report_thermal(CheckRun& run, const PipeUnderCheck& pipe) {
  const double length = run.answer.bore.length_m, cooling = pipe.pipe.temperature->K - ground_temperature.K;
  const auto shorter = thermal_shortening(pipe.strength->expansion_1_K, Length{length}, cooling);
  if (!shorter || !std::isfinite(shorter->m)) return;
  report_pipe(
      run, pipe,
      {"pipe.thermal",
       cooling >= 0 ? translatable("shortening as it cools in the ground")
                    : translatable("lengthening as it warms in the ground"),
       std::abs(shorter->m), "m", nullptr,
       translatable(
           "From the temperature entered to 10 °C (our default). Let it come to the ground's temperature before it is "
           "cut.")},
      {{},
       {},
       "ΔL = α L |ΔT|",
       {{"α", pipe.strength->expansion_1_K, "1/K"}, {"L", length, "m"}, {"ΔT", cooling, "K"}},
       "ΔL",
       0,
       {},
       std::nullopt,
       pipe.strength->source});
}

void report_floating(CheckRun& run, const PipeUnderCheck& pipe) {
  const auto f = floating(pipe.strength->unit_weight, pipe.section->area_m2, Length{pipe.section->diameter_m});
  if (!f) return;
  const PathPoint* wet = nullptr;
  for (const PathPoint& p : run.answer.bore.points) {
    const std::optional<double> water = pipe.water_known ? run.ground.water_m(p.x_m) : std::nullopt;
    if (water && *water > p.z_m) {
      wet = &p;
      break;
    }
  }
  const double share = f->weight_N_m / f->uplift_N_m;
  const bool floats = share < 1;
  report_pipe(
      run, pipe,
      {"pipe.float", translatable("weight of the empty pipe over the water it displaces"), share, "", wet,
       !pipe.water_known ? translatable("The water level is not entered.")
       : !wet            ? translatable("The hole lies above the water.")
       : floats          ? translatable("Empty it floats against the roof of the wet hole.")
                         : translatable("It does not float.")},
      {{},
       {},
       "n = w/(γ_w π D²/4)",
       {{"w", f->weight_N_m, "N/m"}, {"γ_w", water_unit_weight_N_m3, "N/m³"}, {"D", pipe.section->diameter_m, "m"}},
       "n",
       0,
       {},
       std::nullopt,
       {"weight of the wall alone", SourceLabel::derived}});
  if (!wet || !floats) return;
  Finding finding = finding_at("pipe.floats", Severity::note, pipe.subject, "pipe", wet->x_m, wet->y_m, wet->z_m);
  finding.unit = "";
  finding.measured = share;
  finding.source = {"weight of the wall alone", SourceLabel::derived};
  run.add(std::move(finding));
}

}  // namespace

void check_pipe_along(CheckRun& run, const PipeUnderCheck& pipe) {
  constexpr std::string_view code = "pipe.bend";
  const std::string_view name = translatable("bend, strain, heat and floating");
  if (run.answer.bore.points.empty()) return;
  if (!pipe.section) return leave_out(run, code, name, translatable("The wall of the pipe is not known."));
  if (!pipe.strength) return leave_out(run, code, name, translatable("How the material bears is not known."));
  judge_bend(run, pipe);
  judge_strain(run, pipe);
  report_thermal(run, pipe);
  report_floating(run, pipe);
}

}  // namespace burrow
