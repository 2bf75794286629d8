/// Rise of the ground above the bore, and what roads and tracks bear.

#include <algorithm>
#include <limits>

#include "burrow/soil/movement.h"
#include "judge.h"

namespace burrow {

namespace {

struct Greatest {
  const PathPoint* point = nullptr;
  double low_m = -std::numeric_limits<double>::infinity();
  double high_m = -std::numeric_limits<double>::infinity();
  double share = 0;
  const PathPoint* high_point = nullptr;
};

}  // namespace

bool moves_with_ground(const SurfaceFeature& feature) {
  return feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track ||
         feature.kind == SurfaceKind::drive || feature.kind == SurfaceKind::footway;
}

namespace {

class HeaveAlongBore {
 public:
  explicit HeaveAlongBore(Judge& judge) : judge_(judge) {
    const Length radius{judge.tool.diameter.m / 2};
    for (const PathPoint& p : judge.answer.bore.points) {
      const double depth = elevation_at(judge.crossing.site.ground, p.x_m) - p.z_m;
      const Soil& soil = judge.ground.soil_at(p.x_m, p.y_m, p.z_m);
      const Result<HeaveEstimate> rise =
          surface_heave(radius, Length{depth}, soil.heave_share, p.roof_cap_Pa, p.limit_pressure_Pa);
      if (!rise) continue;  // the hole breaks the surface: daylight is a finding of its own
      rises_.push_back({&p, rise->low_m, rise->high_m, soil.heave_share.v});
      judge.answer.heave.push_back({p.x_m, p.y_m, depth, rise->low_m, rise->high_m});
    }
  }

  [[nodiscard]] Greatest greatest(const std::optional<Stretch>& stretch = std::nullopt) const {
    Greatest g;
    std::vector<const PathPoint*> within;
    if (stretch) within = points_within(judge_.answer.bore.points, *stretch);
    for (const Rise& r : rises_) {
      if (stretch && std::find(within.begin(), within.end(), r.point) == within.end()) continue;
      if (r.low_m > g.low_m) {
        g.low_m = r.low_m;
        g.point = r.point;
        g.share = r.share;
      }
      if (r.high_m > g.high_m) {
        g.high_m = r.high_m;
        g.high_point = r.point;
      }
    }
    return g;
  }

  void judge_feature(const SurfaceFeature& feature, const Stretch& stretch, double& worst_margin) {
    const Greatest g = greatest(stretch);
    if (!g.point) return;
    const HeaveLimits limits = heave_limits(judge_, feature);
    const Phrase name = called(feature);
    const auto at = [&](const PathPoint& p, std::string_view code, Severity severity) {
      return finding_at(code, severity, feature.id, name, p.x_m, p.y_m,
                        elevation_at(judge_.crossing.site.ground, p.x_m));
    };
    const double to_stop = judge_.demand(at(*g.point, "surface.heave", Severity::stop), g.low_m, *limits.stop);
    double to_caution = 0;
    if (to_stop >= 0 && limits.caution)
      to_caution = judge_.demand(at(*g.point, "surface.heave", Severity::caution), g.low_m, *limits.caution);
    if (to_stop >= 0 && to_caution >= 0)
      judge_.demand(at(*g.high_point, "surface.heave-high", Severity::caution), g.high_m, *limits.stop);
    if (to_stop < worst_margin) {
      worst_margin = to_stop;
      judge_.answer.surface.limit_m = limits.stop->value;
    }
    const double depth = elevation_at(judge_.crossing.site.ground, g.point->x_m) - g.point->z_m;
    if (judge_.shows())
      judge_.show(
          {"surface.heave",
           feature.id,
           "w = f_v a²/h",
           {{"f_v", g.share, ""}, {"a", judge_.tool.diameter.m / 2, "m"}, {"h", depth, "m"}, {"w_high", g.high_m, "m"}},
           "w",
           g.low_m,
           "m",
           limits.stop->value,
           {"Sagaseta 1987; Verruijt and Booker 1996, half-plane with ν = ½", SourceLabel::from_memory},
           limits.stop->source});
  }

 private:
  struct Rise {
    const PathPoint* point;
    double low_m, high_m, share;
  };
  Judge& judge_;
  std::vector<Rise> rises_;
};

}  // namespace

void check_surface(Judge& judge) {
  HeaveAlongBore along(judge);
  const Greatest g = along.greatest();
  if (!g.point) return;
  judge.answer.surface.heave_m = g.low_m;
  judge.answer.surface.heave_high_m = g.high_m;
  judge.answer.surface.station_m = g.point->x_m;
  double worst = std::numeric_limits<double>::infinity();
  for (const SurfaceFeature& feature : judge.crossing.site.surface) {
    const std::optional<Stretch> stretch = stretch_of(feature, judge.answer.bore.points);
    if (moves_with_ground(feature) && stretch) along.judge_feature(feature, *stretch, worst);
  }
}

}  // namespace burrow
