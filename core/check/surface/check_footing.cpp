/// Whether the hole comes within the ground that carries a footing, building or wall: below 1 : 1 from its edge.

#include <cmath>
#include <limits>

#include "burrow/base/phrase.h"
#include "check_run.h"
#include "structure_place.h"

namespace burrow {

namespace {

struct Nearest {
  const PathPoint* point = nullptr;
  double beside_m = 0, below_m = 0, gap_m = 0, sd_m = 0;
  double spare_m = std::numeric_limits<double>::infinity();
};

/// Least of the gaps to the body itself and to the plane at 45° under its edge, each less three standard deviations.
/// Across the plane the two spreads count alike.
Nearest nearest_of(const CheckRun& run, const SurfaceFeature& feature) {
  Nearest nearest;
  for (const PathPoint& p : run.answer.bore.points) {
    const std::optional<double> beside = plan_distance(feature, p.x_m, p.y_m);
    if (!beside) break;
    const double founded =
        feature.founding_elevation ? feature.founding_elevation->m : elevation_at(run.crossing.site.ground, p.x_m);
    const double below = founded - p.z_m;
    const double gap = std::min(*beside, (*beside - below) / std::sqrt(2.0)) - run.tool.diameter.m / 2;
    const double sd = std::hypot(p.sd_lateral_m, p.sd_vertical_m) / std::sqrt(2.0);
    if (gap - 3 * sd < nearest.spare_m) nearest = {&p, *beside, below, gap, sd, gap - 3 * sd};
  }
  return nearest;
}

}  // namespace

void check_footing(CheckRun& run) {
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    if (!stands(feature)) continue;
    const Nearest nearest = nearest_of(run, feature);
    if (!nearest.point) continue;
    StructureAnswer& answer = structure_answer(run.answer, feature);
    answer.spread_gap_m = nearest.gap_m;
    answer.spread_gap_wanted_m = 3 * nearest.sd_m;
    const Limit limit{
        3 * nearest.sd_m,
        true,
        {feature.founding_elevation
             ? translatable("load spread 1 : 1 from the edge of the footing, three standard deviations of the path; a "
                            "caution only, since what the footing bears is not judged")
             : "load spread 1 : 1, founding level not entered: taken at the ground line; three standard "
               "deviations of the path; a caution only, since what the footing bears is not judged",
         SourceLabel::common_practice}};
    const PathPoint& p = *nearest.point;
    run.require(
        finding_at("footing.influence", Severity::caution, feature.id, display_name(feature), p.x_m, p.y_m, p.z_m),
        nearest.gap_m, limit);
    if (run.wants_working())
      run.add_working({"footing.influence",
                       feature.id,
                       "g = min(b, (b − t)/√2) − D/2",
                       {{"b", nearest.beside_m, "m"}, {"t", nearest.below_m, "m"}, {"D", run.tool.diameter.m, "m"}},
                       "g",
                       nearest.gap_m,
                       "m",
                       limit.value,
                       {"distance to the plane at 45° under the edge; b beside it, t below its founding level",
                        SourceLabel::derived},
                       limit.source});
  }
}

}  // namespace burrow
