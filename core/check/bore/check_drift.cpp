/// What the ground does to the path on the way: climb or sag against the straight aim, held against the room there is.

#include <algorithm>
#include <cmath>
#include <optional>

#include "burrow/base/phrase.h"
#include "burrow/pit/pit_shapes.h"
#include "check_run.h"

namespace burrow {

namespace {

struct Drift {
  const PathPoint* at = nullptr;
  double aim_m = 0;   ///< level of the straight aim there
  double size_m = 0;  ///< of climb or sag
  double most_m = 0;  ///< it may take
};

class DriftOfPath {
 public:
  explicit DriftOfPath(const CheckRun& run)
      : run_(run), points_(run.answer.bore.points), share_(run.limit("drift_share").value) {}

  [[nodiscard]] const PathPoint& start() const { return points_.front(); }

  /// Climb towards the least cover, and at the end towards the top of the exit window.
  [[nodiscard]] std::optional<Drift> climb() const {
    const double least = run_.limit("cover_diameters").value * run_.tool.diameter.m;
    std::optional<Drift> worst;
    for (const PathPoint& p : points_) {
      const double risen = p.z_m - aim(p);
      take(worst, p, risen, p.cover_m + risen - least);
    }
    if (arrives()) take(worst, points_.back(), points_.back().z_m - aim(points_.back()), window().high_m - end_aim());
    return worst;
  }

  /// Sag at the end towards the floor of an exit pit that somebody typed: one left to the program goes with the path.
  [[nodiscard]] std::optional<Drift> sag() const {
    std::optional<Drift> worst;
    if (arrives() && run_.crossing.pits.exit.floor_elevation)
      take(worst, points_.back(), aim(points_.back()) - points_.back().z_m, end_aim() - window().low_m);
    return worst;
  }

 private:
  [[nodiscard]] double aim(const PathPoint& p) const {
    return start().z_m + std::tan(start().grade_rad) / std::cos(start().heading_rad) * (p.x_m - start().x_m);
  }
  [[nodiscard]] double end_aim() const { return aim(points_.back()); }
  [[nodiscard]] bool arrives() const { return run_.answer.bore.ends == PathEnd::exit; }
  [[nodiscard]] ExitOpening window() const {
    return exit_opening(run_.answer.exit_pit, Length{elevation_at(run_.crossing.site.ground, points_.back().x_m)});
  }

  /// No room at all is for the cover and the window to say; less than half a diameter nobody sees.
  void take(std::optional<Drift>& worst, const PathPoint& p, double size_m, double room_m) const {
    if (!(size_m > 0) || !(room_m > 0)) return;
    const double most = std::max(share_ * room_m, run_.tool.diameter.m / 2);
    if (!worst || size_m / most > worst->size_m / worst->most_m) worst = Drift{&p, aim(p), size_m, most};
  }

  const CheckRun& run_;
  const std::vector<PathPoint>& points_;
  double share_;
};

void judge_drift(CheckRun& run, std::string_view code, const Drift& drift, const PathPoint& start) {
  const PathPoint& p = *drift.at;
  const Limit most{drift.most_m, false, run.limit("drift_share").source};
  run.require(finding_at(code, Severity::caution, "bore", "bore", p.x_m, p.y_m, p.z_m), drift.size_m, most);
  if (!run.wants_working()) return;
  run.add_working({code,
                   "bore",
                   "Δz = |z − z_0 − i (x − x_0)|",
                   {{"z", p.z_m, "m"},
                    {"z_0", start.z_m, "m"},
                    {"i", p.x_m > start.x_m ? (drift.aim_m - start.z_m) / (p.x_m - start.x_m) : 0, ""},
                    {"x", p.x_m, "m"},
                    {"x_0", start.x_m, "m"}},
                   "Δz",
                   drift.size_m,
                   "m",
                   most.value,
                   {"path model of this program against the straight aim", SourceLabel::our_model},
                   most.source});
}

}  // namespace

void check_drift(CheckRun& run) {
  if (run.answer.bore.points.size() < 2) return;
  const DriftOfPath path(run);
  if (const auto climb = path.climb()) judge_drift(run, "bore.climb", *climb, path.start());
  if (const auto sag = path.sag()) judge_drift(run, "bore.sag", *sag, path.start());
}

}  // namespace burrow
