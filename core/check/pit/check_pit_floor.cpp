/// The floor of a pit: heave in clay, uplift by water below it, water that runs in.

#include <algorithm>
#include <cmath>

#include "burrow/pit/floor_heave.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double traffic_surcharge_Pa = 10e3;  ///< common practice

struct Under {
  double x_m, y_m, floor_m;
  Column column;
};

/// Least strength of clay from the floor down to width/√2, as deep as the slip goes; nothing where the floor is not
/// clay.
std::optional<double> strength_below(const Under& under, double width_m) {
  constexpr double hair_m = 1e-6;
  const Layer& at_floor = under.column.layer_at(under.floor_m - hair_m);
  if (at_floor.properties->drained) return std::nullopt;
  double least = at_floor.properties->undrained_strength.Pa;
  for (const Layer& layer : under.column.layers())
    if (!layer.properties->drained && layer.top_m > under.floor_m - width_m / std::sqrt(2.0) &&
        layer.bottom_m < under.floor_m)
      least = std::min(least, layer.properties->undrained_strength.Pa);
  return least;
}

/// Traffic nearer than the depth, else the heap.
double surcharge(const CheckRun& run, const PitUnderCheck& pit) {
  double greatest = 0;
  if (pit.work.edge_load_gap_m && *pit.work.edge_load_gap_m < pit.shape.depth_m) greatest = traffic_surcharge_Pa;
  if (pit.shape.layers.empty() || !(pit.work.heap.setback_m < pit.shape.depth_m)) return greatest;
  const Soil& soil = run.ground.stratum_soil(pit.shape.layers.front().stratum);
  return std::max(greatest, pit.work.heap.height_m * soil.unit_weight.N_m3 / (1 + soil.swell.v));
}

void judge_heave(CheckRun& run, const PitUnderCheck& pit, const Under& under) {
  const auto [width, length] = std::minmax(pit.shape.floor_width_m, pit.shape.floor_length_m);
  const std::optional<double> strength = strength_below(under, width);
  const double weight = under.column.vertical_stress(under.floor_m);
  if (!strength || !(weight > 0) || !(width > 0)) return;
  const double load = surcharge(run, pit);
  const double depth = under.column.surface_m() - under.floor_m;
  const double n_c = stability_number(Length{depth}, Length{width}, Length{length});
  const double safety = base_heave_safety(
      {Length{depth}, Length{width}, Length{length}, Pressure{*strength}, Pressure{weight}, Pressure{load}});
  pit.work.base_heave_safety = safety;
  const Limit stop = run.limit("base_heave_stop"), caution = run.limit("base_heave_safety");
  const bool stops = !(safety >= stop.value);
  Finding finding = finding_of(pit, "pit.base-heave", stops ? Severity::stop : Severity::caution);
  finding.unit = "";
  require(run, std::move(finding), safety, stops ? stop : caution);
  if (run.wants_working())
    run.add_working({"pit.base-heave",
                     pit.subject,
                     "F = N_c s_u/(σ + q), N_c = 5 (1 + 0.2 d/B)(1 + 0.2 B/L), d/B ≤ 2.5",
                     {{"N_c", n_c, ""},
                      {"s_u", *strength, "Pa"},
                      {"σ", weight, "Pa"},
                      {"q", load, "Pa"},
                      {"d", depth, "m"},
                      {"B", width, "m"},
                      {"L", length, "m"}},
                     "F",
                     safety,
                     "",
                     stops ? stop.value : caution.value,
                     {"Bjerrum & Eide 1956, N_c after Skempton 1951", SourceLabel::from_memory},
                     stops ? stop.source : caution.source});
}

/// The clay between the floor and the first water-bearing layer below it, against the pressure of the water there.
void judge_uplift(CheckRun& run, const PitUnderCheck& pit, const Under& under, double water_m) {
  const double floor = under.floor_m - pit.entered.sump_depth->m;
  if (!(water_m > floor)) return;
  for (const Layer& layer : under.column.layers()) {
    if (layer.bottom_m >= floor) continue;
    if (!layer.properties->drained) continue;
    if (layer.top_m >= floor) return;  // the floor itself is in it: water runs in instead
    const double weight = under.column.vertical_stress(layer.top_m) - under.column.vertical_stress(floor);
    const double pressure = water_unit_weight_N_m3 * (water_m - layer.top_m);
    const double safety = weight / pressure;
    pit.work.uplift_safety = safety;
    const Limit limit = run.limit("uplift_safety");
    Finding finding = finding_of(pit, "pit.uplift", safety < 1 ? Severity::stop : Severity::caution);
    finding.unit = "";
    require(run, std::move(finding), safety, limit);
    if (run.wants_working())
      run.add_working(
          {"pit.uplift",
           pit.subject,
           "F = W/(γ_w h)",
           {{"W", weight, "Pa"}, {"γ_w", water_unit_weight_N_m3, "N/m³"}, {"h", water_m - layer.top_m, "m"}},
           "F",
           safety,
           "",
           limit.value,
           {"weight of the clay under the floor over the water pressure below it", SourceLabel::derived},
           limit.source});
    return;
  }
}

/// Sand or silt between the water and the floor: it runs in, and the floor may boil.
void find_inflow(CheckRun& run, const PitUnderCheck& pit, const Under& under, double water_m) {
  const double floor = under.floor_m - pit.entered.sump_depth->m;
  const bool runs_in = std::any_of(under.column.layers().begin(), under.column.layers().end(), [&](const Layer& layer) {
    return layer.properties->drained && layer.top_m > floor - 1e-6 && layer.bottom_m < water_m - 1e-6;
  });
  if (!(water_m > floor) || !runs_in) return;
  Finding finding = finding_of(pit, "pit.inflow", Severity::caution);
  finding.measured = water_m - floor;
  finding.limit = 0;
  finding.at_least = false;
  finding.margin = -(water_m - floor);
  finding.source = {"soil that lets water through stands between the water and the floor", SourceLabel::our_model};
  run.add(std::move(finding));
}

}  // namespace

void check_pit_floor(CheckRun& run, const PitUnderCheck& pit) {
  const double x = (pit.shape.floor_from_m + pit.shape.floor_to_m) / 2,
               y = (pit.shape.floor_left_m + pit.shape.floor_right_m) / 2;
  const Under under{x, y, pit.shape.floor_elevation_m, run.ground.column(x, y)};
  if (!(under.column.surface_m() > under.floor_m)) return;
  judge_heave(run, pit, under);
  const std::optional<double> water = run.ground.water_m(x);
  if (!water) return;
  judge_uplift(run, pit, under, *water);
  find_inflow(run, pit, under, *water);
}

}  // namespace burrow
