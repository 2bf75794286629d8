/// What is dug out of a pit: loose and compacted, its heap, the trucks, the surfacing it opens.

#include <algorithm>
#include <cmath>

#include "burrow/pit/earthwork.h"
#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"

namespace burrow {

namespace {

std::string_view earthwork_of(ExcavationMatter matter) {
  switch (matter) {
    case ExcavationMatter::rock:
    case ExcavationMatter::broken_rock:
      return "rock";
    case ExcavationMatter::cohesive:
      return "clay";
    case ExcavationMatter::granular:
      return "sand";
    case ExcavationMatter::cemented:
    case ExcavationMatter::silt:
    case ExcavationMatter::fill:
      return "loam";
  }
  return "loam";
}

void move_earth(CheckRun& run, const PitUnderCheck& pit) {
  const std::vector<Stratum>& strata = run.crossing.site.strata;
  double loose = 0, compacted = 0, refill = 0;
  for (std::size_t i = 0; i < pit.work.layers.size(); ++i) {
    PitLayerAnswer& layer = pit.work.layers[i];
    const std::size_t stratum = pit.shape.layers[i].stratum;
    const double swollen = 1 + run.ground.stratum_soil(stratum).swell.v;
    const EarthworkRow* row =
        find_earthwork(run.tables, earthwork_of(matter_of(*find_soil(run.tables, strata[stratum].soil))));
    const double shrunk = row ? row->compacted.v : 1.0;
    layer.loose_m3 = layer.bank_m3 * swollen;
    loose += layer.loose_m3;
    compacted += layer.bank_m3 * shrunk;
    refill += layer.bank_m3 / shrunk * swollen;
  }
  pit.work.bank_m3 = pit.shape.volume_m3;
  pit.work.loose_m3 = loose;
  pit.work.compacted_m3 = compacted;
  pit.work.refill_m3 = refill;
  const double load = run.limit("truck_load_m3").value;
  if (load > 0) pit.work.truck_loads = std::ceil(loose / load - 1e-9);
  show_loose(run, pit);
}

struct Box {
  double x_low = 1e300, x_high = -1e300, y_low = 1e300, y_high = -1e300;
};

Box box_of(const PlanLine& outline) {
  Box box;
  for (const PlanPoint& p : outline) {
    box.x_low = std::min(box.x_low, p.x_m);
    box.x_high = std::max(box.x_high, p.x_m);
    box.y_low = std::min(box.y_low, p.y_m);
    box.y_high = std::max(box.y_high, p.y_m);
  }
  return box;
}

void heap_up(CheckRun& run, const PitUnderCheck& pit) {
  const Spoil& spoil = pit.entered.spoil;
  const Box box = box_of(pit.shape.footprint);
  const bool along_line = *spoil.side == PitSideName::left || *spoil.side == PitSideName::right;
  const double side = along_line ? box.x_high - box.x_low : box.y_high - box.y_low;
  const DutyRow* flat = find_duty(pit.rules, "heap-run");
  const double slope = std::max(run.limit("heap_run_per_rise").value, flat ? flat->value : 0.0);
  const double highest = spoil.height ? spoil.height->m : run.limit("heap_height_m").value;
  if (!(side > 0) || !(slope > 0) || !(highest > 0)) return;
  const HeapShape shape = heap_of(*pit.work.loose_m3, side, slope, highest);
  SpoilHeap& heap = pit.work.heap;
  heap.side = *spoil.side;
  heap.setback_m = spoil.setback->m;
  heap.length_m = shape.length_m;
  heap.width_m = shape.width_m;
  heap.height_m = shape.height_m;
  heap.volume_m3 = shape.volume_m3;
  const double near = heap.setback_m, far = near + shape.width_m;
  const double x = (box.x_low + box.x_high) / 2, y = (box.y_low + box.y_high) / 2, half = shape.length_m / 2;
  const bool at_high_end = (*spoil.side == PitSideName::bore) == pit.shape.bore_side_high;
  const auto box_line = [](double x0, double x1, double y0, double y1) {
    return PlanLine{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
  };
  if (*spoil.side == PitSideName::left)
    heap.outline = box_line(x - half, x + half, box.y_high + near, box.y_high + far);
  else if (*spoil.side == PitSideName::right)
    heap.outline = box_line(x - half, x + half, box.y_low - far, box.y_low - near);
  else if (at_high_end)
    heap.outline = box_line(box.x_high + near, box.x_high + far, y - half, y + half);
  else
    heap.outline = box_line(box.x_low - far, box.x_low - near, y - half, y + half);
  show_heap(run, pit, shape, slope);
}

/// Surfacing that the footprint opens; what nothing covers is verge.
void open_surface(CheckRun& run, const PitUnderCheck& pit) {
  double verge = overlap_area(pit.shape.footprint, pit.shape.footprint);
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    const bool surfaced = feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::drive ||
                          feature.kind == SurfaceKind::footway || feature.kind == SurfaceKind::track;
    if (!surfaced) continue;
    const double area = overlap_area(pit.shape.footprint, plan_of(feature));
    if (!(area > 1e-6)) continue;
    pit.work.cuts.push_back({feature.id, display_name(feature), area});
    verge -= area;
  }
  if (verge > 1e-6) pit.work.cuts.push_back({"", "verge", verge});
}

}  // namespace

void check_pit_earth(CheckRun& run, const PitUnderCheck& pit) {
  if (pit.work.layers.empty()) return;
  move_earth(run, pit);
  heap_up(run, pit);
  open_surface(run, pit);
}

}  // namespace burrow
