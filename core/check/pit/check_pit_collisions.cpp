/// What the excavation of a pit and its heap run into in plan.

#include <algorithm>
#include <cmath>
#include <numeric>

#include "burrow/base/phrase.h"
#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"
#include "structure_place.h"

namespace burrow {

namespace {

PlanPoint middle_of(const PlanLine& points) {
  PlanPoint sum;
  for (const PlanPoint& p : points) {
    sum.x_m += p.x_m;
    sum.y_m += p.y_m;
  }
  const double n = static_cast<double>(std::max<std::size_t>(points.size(), 1));
  return {sum.x_m / n, sum.y_m / n};
}

/// Where two outlines meet: between those corners of either that lie in the other, else half way between the two.
PlanPoint meeting_of(const PlanLine& a, const PlanLine& b) {
  PlanLine common;
  for (const PlanPoint& p : a)
    if (inside(b, p.x_m, p.y_m)) common.push_back(p);
  for (const PlanPoint& p : b)
    if (inside(a, p.x_m, p.y_m)) common.push_back(p);
  return middle_of(common.empty() ? a : common);
}

struct Manner {
  std::string_view code;
  Severity severity;
};

Manner manner_of(const SurfaceFeature& feature) {
  switch (feature.kind) {
    case SurfaceKind::road:
      return {"pit.on-road", Severity::caution};
    case SurfaceKind::track:
      return {"pit.on-track", Severity::stop};
    case SurfaceKind::ditch:
      return {"pit.on-ditch", Severity::caution};
    case SurfaceKind::drive:
    case SurfaceKind::footway:
      return {"pit.on-paving", Severity::note};
    case SurfaceKind::footing:
    case SurfaceKind::building:
    case SurfaceKind::wall:
      return {"pit.on-structure", Severity::stop};
  }
  return {"pit.on-structure", Severity::stop};
}

class Collisions {
 public:
  Collisions(CheckRun& run, const PitUnderCheck& pit) : run_(run), pit_(pit) {}

  void say(const Manner& manner, const std::string& id, const Phrase& name, const PlanPoint& place,
           std::string_view why) {
    Finding finding = finding_at(manner.code, manner.severity, id, name, place.x_m, place.y_m,
                                 elevation_at(run_.crossing.site.ground, place.x_m));
    finding.source = {Phrase::of_table(std::string(why)), SourceLabel::common_practice};
    finding.margin = -1;
    run_.add(std::move(finding));
  }

  void surface() {
    for (const SurfaceFeature& feature : run_.crossing.site.surface) {
      const PlanLine outline = plan_of(feature);
      if (outline.empty()) continue;
      if (overlap_area(pit_.shape.footprint, outline) > least_area_m2)
        say(manner_of(feature), feature.id, display_name(feature), meeting_of(pit_.shape.footprint, outline),
            translatable("the excavation is cut into it"));
      const bool bears_no_heap = feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track ||
                                 feature.kind == SurfaceKind::ditch || stands(feature);
      if (bears_no_heap && has_heap() && overlap_area(pit_.work.heap.outline, outline) > least_area_m2)
        say({"pit.heap-on", heap_severity()}, feature.id, display_name(feature),
            meeting_of(pit_.work.heap.outline, outline), translatable("the heap of loose soil lies on it"));
    }
  }

  void boundaries() {
    for (const Boundary& boundary : run_.crossing.site.boundaries) {
      if (boundary.line.size() < 2) continue;
      const Phrase name = boundary.name.empty() ? phrase(translatable("{} line"), phrase_of_word(boundary.kind))
                                                : Phrase(boundary.name);
      const PlanGap gap = gap_between(pit_.shape.footprint, boundary.line, false);
      if (!(gap.gap_m > 0))
        say({"pit.boundary", Severity::caution}, boundary.id, name, gap.on_line, "the excavation crosses it");
      else if (has_heap() && !(gap_between(pit_.work.heap.outline, boundary.line, false).gap_m > 0))
        say({"pit.heap-on", heap_severity()}, boundary.id, name, middle_of(pit_.work.heap.outline),
            translatable("the heap of loose soil crosses it"));
    }
  }

 private:
  static constexpr double least_area_m2 = 1e-6;
  [[nodiscard]] bool has_heap() const { return !pit_.work.heap.outline.empty() && pit_.work.heap.volume_m3 > 0; }
  /// Where nobody said on which side it goes, it can still go on another.
  [[nodiscard]] Severity heap_severity() const {
    return pit_.entered.spoil.side.entered ? Severity::caution : Severity::note;
  }
  CheckRun& run_;
  const PitUnderCheck& pit_;
};

}  // namespace

void check_pit_collisions(CheckRun& run, const PitUnderCheck& pit) {
  Collisions collisions(run, pit);
  collisions.surface();
  collisions.boundaries();
}

}  // namespace burrow
