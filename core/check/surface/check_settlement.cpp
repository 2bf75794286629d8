/// Settlement that comes later where the pipe does not fill the hole, and the grout that would prevent it.

#include <algorithm>

#include "burrow/base/phrase.h"
#include "burrow/soil/settlement.h"
#include "check_run.h"

namespace burrow {

namespace {

/// Where the surface sinks most for each square metre left open.
struct Deepest {
  const PathPoint* point = nullptr;
  double share = 0, depth_m = 0, per_area_1_m = -1;
};

/// As much as the ground passes on when it is pushed aside, but never more than the volume itself (our model).
double share_of(const Soil& soil) {
  return std::min(1.0, soil.heave_share.v);
}

void take(const CheckRun& run, const PathPoint& p, Deepest& deepest) {
  const double depth = elevation_at(run.crossing.site.ground, p.x_m) - p.z_m;
  const double share = share_of(run.ground.soil_at(p.x_m, p.y_m, p.z_m));
  const Result<Length> sinks = later_settlement(1, Length{depth}, Ratio{share});
  if (sinks && sinks->m > deepest.per_area_1_m) deepest = {&p, share, depth, sinks->m};
}

struct Annulus {
  double area_m2 = 0, pipe_m = 0, count = 1;
};

void judge_feature(CheckRun& run, const SurfaceFeature& feature, const Stretch& stretch, const Annulus& annulus) {
  Deepest deepest;
  for (const PathPoint* p : points_within(run.answer.bore.points, stretch)) take(run, *p, deepest);
  if (!deepest.point) return;
  const HeaveLimits limits = heave_limits(run, feature);
  const Limit& limit = limits.caution ? *limits.caution : *limits.stop;
  const PathPoint& p = *deepest.point;
  const double sinks = annulus.area_m2 * deepest.per_area_1_m;
  run.require(finding_at("surface.settlement", Severity::caution, feature.id, display_name(feature), p.x_m, p.y_m,
                         elevation_at(run.crossing.site.ground, p.x_m)),
              sinks, limit);
  if (run.wants_working())
    run.add_working(
        {"surface.settlement",
         feature.id,
         translatable("s = f π/4 (D² − n d²)/(√(2π) 0.5 h), not below 0"),
         {{"f", deepest.share, ""},
          {"D", run.tool.diameter.m, "m"},
          {"n", annulus.count, ""},
          {"d", annulus.pipe_m, "m"},
          {"h", deepest.depth_m, "m"}},
         "s",
         sinks,
         "m",
         limit.value,
         {"Peck 1969 form with i = 0.5 h; share as for heave, at most 1: our model", SourceLabel::from_memory},
         limit.source});
}

}  // namespace

void check_settlement(CheckRun& run) {
  SurfaceAnswer& answer = run.answer.surface;
  Deepest deepest;
  for (const PathPoint& p : run.answer.bore.points) take(run, p, deepest);
  const Result<double> hole = open_area_m2(run.tool.diameter, Length{0}, 0);
  if (!deepest.point || !hole) return;
  answer.settlement_abandoned_m = *hole * deepest.per_area_1_m;
  answer.grout_hole_m3 = *hole * run.answer.bore.length_m;

  const std::optional<Pipe>& pipe = run.crossing.pipe;
  if (!pipe || !pipe->outside_diameter) return;
  const Result<double> area = open_area_m2(run.tool.diameter, *pipe->outside_diameter, *pipe->count);
  if (!area) return;
  answer.settlement_m = *area * deepest.per_area_1_m;
  answer.grout_annulus_m3 = *area * run.answer.bore.length_m;
  const Annulus annulus{*area, pipe->outside_diameter->m, static_cast<double>(*pipe->count)};
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    if (!moves_with_ground(feature)) continue;
    if (const auto stretch = stretch_of(feature, run.answer.bore.points))
      judge_feature(run, feature, *stretch, annulus);
  }
}

}  // namespace burrow
