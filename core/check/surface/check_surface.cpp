/// Rise of the ground above the bore, and what roads and tracks bear.

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/soil/movement.h"
#include "check_run.h"

namespace burrow {

namespace {

struct Greatest {
  const PathPoint* point = nullptr;
  double low_m = -std::numeric_limits<double>::infinity();
  double high_m = -std::numeric_limits<double>::infinity();
  double share = 0, high_share = 0;
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
  explicit HeaveAlongBore(CheckRun& run) : run_(run) {
    const Length radius{run.tool.diameter.m / 2};
    for (const PathPoint& p : run.answer.bore.points) {
      const double depth = elevation_at(run.crossing.site.ground, p.x_m) - p.z_m;
      const Soil& soil = run.ground.soil_at(p.x_m, p.y_m, p.z_m);
      const Result<HeaveEstimate> rise =
          surface_heave(radius, Length{depth}, soil.heave_share, p.roof_cap_Pa, p.limit_pressure_Pa);
      if (!rise) continue;  // the hole breaks the surface: daylight is a finding of its own
      rises_.push_back({&p, rise->low_m, rise->high_m, soil.heave_share.v});
      run.answer.heave.push_back({p.x_m, p.y_m, depth, rise->low_m, rise->high_m});
    }
  }

  [[nodiscard]] Greatest greatest(const std::optional<Stretch>& stretch = std::nullopt) const {
    Greatest g;
    std::vector<const PathPoint*> within;
    if (stretch) within = points_within(run_.answer.bore.points, *stretch);
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
        g.high_share = r.share;
      }
    }
    return g;
  }

  void judge_feature(const SurfaceFeature& feature, const Stretch& stretch, double& worst_margin) {
    const Greatest g = greatest(stretch);
    if (!g.point) return;
    const HeaveLimits limits = heave_limits(run_, feature);
    const Phrase name = display_name(feature);
    const auto at = [&](const PathPoint& p, std::string_view code, Severity severity) {
      return finding_at(code, severity, feature.id, name, p.x_m, p.y_m, elevation_at(run_.crossing.site.ground, p.x_m));
    };
    const double to_stop = run_.require(at(*g.point, "surface.heave", Severity::stop), g.low_m, *limits.stop);
    double to_caution = 0;
    if (to_stop >= 0 && limits.caution)
      to_caution = run_.require(at(*g.point, "surface.heave", Severity::caution), g.low_m, *limits.caution);
    if (to_stop >= 0 && to_caution >= 0)
      run_.require(at(*g.high_point, "surface.heave-high", Severity::caution), g.high_m, *limits.stop);
    if (to_stop < worst_margin) {
      worst_margin = to_stop;
      run_.answer.surface.limit_m = limits.stop->value;
    }
    const double depth = elevation_at(run_.crossing.site.ground, g.point->x_m) - g.point->z_m;
    if (run_.wants_working())
      run_.add_working({"surface.heave",
                        feature.id,
                        "w = f_v a²/h",
                        {{"f_v", g.share, ""}, {"a", run_.tool.diameter.m / 2, "m"}, {"h", depth, "m"}},
                        "w",
                        g.low_m,
                        "m",
                        limits.stop->value,
                        {"Sagaseta 1987; Verruijt and Booker 1996, half-plane with ν = ½", SourceLabel::from_memory},
                        limits.stop->source});
    if (run_.wants_working() && g.high_point) show_high(feature, g, *limits.stop);
  }

 private:
  /// The greater of a trough turned upside down and, where the roof gives way, of a block that rises.
  void show_high(const SurfaceFeature& feature, const Greatest& g, const Limit& limit) {
    const double depth = elevation_at(run_.crossing.site.ground, g.high_point->x_m) - g.high_point->z_m;
    const double a = run_.tool.diameter.m / 2, trough = g.high_share * a * a * pi / (std::sqrt(2 * pi) * 0.5 * depth);
    const bool block = g.high_m > trough * (1 + 1e-9);
    run_.add_working(
        {"surface.heave-high",
         feature.id,
         block ? "w_high = f_v π a²/(2 a + 2 (h − a) tan 20°)" : "w_high = f_v π a²/(√(2π) 0.5 h)",
         {{"f_v", g.high_share, ""}, {"a", a, "m"}, {"h", depth, "m"}},
         "w_high",
         g.high_m,
         "m",
         limit.value,
         block ? Source{"a block rising over the crown between lines at 20° to the upright", SourceLabel::our_model}
               : Source{"Peck 1969 form turned upside down, i = 0.5 h", SourceLabel::from_memory},
         limit.source});
  }

  struct Rise {
    const PathPoint* point;
    double low_m, high_m, share;
  };
  CheckRun& run_;
  std::vector<Rise> rises_;
};

}  // namespace

void check_surface(CheckRun& run) {
  HeaveAlongBore along(run);
  const Greatest g = along.greatest();
  if (!g.point) return;
  run.answer.surface.heave_m = g.low_m;
  run.answer.surface.heave_high_m = g.high_m;
  run.answer.surface.station_m = g.point->x_m;
  double worst = std::numeric_limits<double>::infinity();
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    const std::optional<Stretch> stretch = stretch_of(feature, run.answer.bore.points);
    if (moves_with_ground(feature) && stretch) along.judge_feature(feature, *stretch, worst);
  }
}

}  // namespace burrow
