#pragma once
/// Names every number of an assessment that is not one.

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "burrow/check/assessment.h"

namespace burrow::test {

class NotFinite {
 public:
  template <class... Values>
  void look(const std::string& what, const Values&... values) {
    int place = 0;
    (one(what + " " + std::to_string(place++), values), ...);
  }
  std::vector<std::string> names;

 private:
  void one(const std::string& what, double value) {
    if (!std::isfinite(value)) names.push_back(what + ": " + std::to_string(value));
  }
  template <class T>
  void one(const std::string& what, const std::optional<T>& value) {
    if (value) one(what, *value);
  }
  template <class Q>
  requires(std::is_aggregate_v<Q> && sizeof(Q) == sizeof(double)) void one(const std::string& what, const Q& quantity) {
    const auto& [number] = quantity;
    one(what, number);
  }
  void one(const std::string& what, const Quantiles& q) { look(what, q.p10, q.p50, q.p90); }
  void one(const std::string& what, const Point3& p) { look(what, p.x_m, p.y_m, p.z_m); }
  void one(const std::string& what, const PlanPoint& p) { look(what, p.x_m, p.y_m); }
  void one(const std::string& what, const LevelPoint& p) { look(what, p.station_m, p.elevation_m); }
  template <class T>
  void one(const std::string& what, const std::vector<T>& values) {
    for (const T& value : values) one(what, value);
  }
};

inline void look_at_path(NotFinite& all, const std::string& what, const BorePath& path) {
  all.look(what, path.length_m);
  for (const PathPoint& p : path.points)
    all.look(what + " at " + std::to_string(p.s_m), p.s_m, p.x_m, p.y_m, p.z_m, p.grade_rad, p.heading_rad,
             p.sd_lateral_m, p.sd_vertical_m, p.cover_m, p.resistance_above_Pa, p.resistance_below_Pa, p.curvature_1_m,
             p.sag_curvature_1_m, p.yaw_curvature_1_m, p.limit_pressure_Pa, p.roof_cap_Pa);
}

inline void look_at_bore(NotFinite& all, const Assessment& a) {
  look_at_path(all, "path", a.bore);
  all.look("arrival", a.arrival.offset_m, a.arrival.elevation_m, a.arrival.sd_lateral_m, a.arrival.sd_vertical_m,
           a.arrival.chance_inside_exit_pit);
  all.look("bore", a.neutral_cover_m, a.neutral_station_m, a.chance_of_refusal, a.refusal_station_m, a.advance_time_s,
           a.chance_to_reach, a.contact_chance_any, a.chance_unknown_service);
  all.look("advance", a.advance.stop_s_m, a.advance.stop_station_m, a.advance.least_grip,
           a.advance.least_grip_station_m, a.advance.held_until_m);
  for (const AdvancePoint& p : a.advance.points) all.look("advance point", p.set_m, p.grip, p.rate_m_s);
  for (const StopStretch& s : a.stops) all.look("stop stretch", s.from_m, s.to_m, s.chance);
  for (const GuessEffect& g : a.guesses) all.look("guess", g.shift_low_m, g.shift_high_m, g.chance_of_loss);
  for (const NeutralPoint& n : a.neutral_line) all.look("neutral line", n.station_m, n.elevation_m, n.cover_m);
  all.look("cover", a.cover.least_m, a.cover.least_low_m, a.cover.station_m, a.cover.required_m);
  for (const Mark& m : a.marks) {
    all.look("mark", m.hose_m, m.nose_m, m.station_m, m.depth_m, m.depth_low_m, m.depth_high_m, m.time_s, m.offset_m,
             m.elevation_m);
    for (const MarkNear& near : m.near) all.look("near a mark", near.above_m, near.gap_m, near.ahead_m);
  }
}

inline void look_at_site(NotFinite& all, const Assessment& a) {
  for (const UtilityAnswer& u : a.utilities) {
    all.look("utility " + u.id, u.separation_m, u.gap_low_m, u.station_m, u.offset_m, u.elevation_m, u.angle_rad,
             u.required_m, u.contact_chance, u.contact_chance_worst, u.encroachment_chance, u.lateral_sd_m,
             u.vertical_sd_m, u.ground_movement_m, u.strain, u.vibration_m_s, u.expose_rank, u.chance_to_go_on,
             u.chance_after_hole, u.required_after_hole_m, u.hole_station_m, u.hole_offset_m, u.hole_depth_low_m,
             u.hole_depth_high_m, u.on_bore, u.on_utility);
    for (const PinnedVertex& v : u.believed)
      all.look("believed line", v.at.x_m, v.at.y_m, v.at.z_m, v.lateral_sd_m, v.vertical_sd_m);
  }
  const SurfaceAnswer& s = a.surface;
  all.look("surface", s.heave_m, s.heave_high_m, s.station_m, s.limit_m, s.settlement_m, s.settlement_abandoned_m,
           s.grout_annulus_m3, s.grout_hole_m3);
  for (const HeavePoint& h : a.heave) all.look("heave", h.station_m, h.offset_m, h.depth_m, h.low_m, h.high_m);
  for (const RuleZone& z : a.zones) all.look("zone", z.from_m, z.to_m, z.cover_m, z.pit_setback_m);
  for (const StructureAnswer& t : a.structures)
    all.look("structure " + t.id, t.distance_m, t.station_m, t.vibration_m_s, t.vibration_percussive_m_s,
             t.vibration_distance_m_s, t.vibration_limit_m_s, t.spread_gap_m, t.spread_gap_wanted_m);
}

inline void look_at_pit(NotFinite& all, const std::string& what, const PitShape& pit, const PitAnswer& work) {
  all.look(what, pit.face_station_m, pit.floor_from_m, pit.floor_to_m, pit.floor_right_m, pit.floor_left_m,
           pit.floor_elevation_m, pit.axis_elevation_m, pit.depth_m, pit.floor_length_m, pit.floor_width_m,
           pit.top_length_m, pit.top_width_m, pit.volume_m3, pit.floor, pit.footprint, pit.section);
  for (const PitLayerAnswer& layer : work.layers)
    all.look(what + " layer", layer.top_m, layer.bottom_m, layer.run_per_rise, layer.bank_m3, layer.loose_m3);
  all.look(what + " work", work.roof_missing_m, work.bank_m3, work.loose_m3, work.compacted_m3, work.refill_m3,
           work.truck_loads, work.ladder, work.ladder_travel_m, work.shoring_width_m, work.edge_load_gap_m,
           work.water_head_m, work.base_heave_safety, work.uplift_safety);
  const SpoilHeap& heap = work.heap;
  all.look(what + " heap", heap.setback_m, heap.length_m, heap.width_m, heap.height_m, heap.volume_m3, heap.outline);
  for (const PitDuty& duty : work.duties) all.look(what + " duty", duty.measured_m, duty.limit_m);
  for (const SurfaceCut& cut : work.cuts) all.look(what + " cut", cut.area_m2);
}

inline void look_at_pipe_and_air(NotFinite& all, const Assessment& a) {
  for (const PipeCheck& c : a.pipe_checks) all.look(c.code, c.value, c.limit, c.station_m, c.utilisation);
  for (const LoadPoint& l : a.loads)
    all.look("load", l.station_m, l.depth_m, l.earth_Pa, l.earth_arched_Pa, l.live_Pa, l.water_Pa);
  all.look("air", a.air.pressure_at_tool_Pa, a.air.free_air_m3_s, a.air.loss_harris_Pa, a.air.pressure_worked_with_Pa);
  if (const auto& s = a.air.supply)
    all.look("air supply", s->ambient, s->compressor_most, s->compressor_gives, s->wanted, s->would_take,
             s->at_compressor, s->at_tool, s->free_air, s->mass_kg_s);
  const OilPlan& oil = a.air.oil;
  all.look("oil", oil.rate, oil.first_fill, oil.for_half, oil.for_nine_in_ten, oil.fill_lasts, oil.look_every);
}

inline void look_at_words(NotFinite& all, const std::vector<Finding>& findings, const std::vector<Working>& working) {
  for (const Finding& f : findings)
    all.look(f.code, f.measured, f.limit, f.limit_base, f.margin, f.station_m, f.offset_m, f.elevation_m);
  for (const Working& w : working) {
    all.look(std::string("working of ") + std::string(w.code), w.value, w.limit);
    for (const WorkingInput& i : w.inputs)
      all.look(std::string("working of ") + std::string(w.code) + " " + std::string(i.symbol), i.value);
  }
}

inline std::vector<std::string> not_finite(const Assessment& a) {
  NotFinite all;
  look_at_bore(all, a);
  look_at_site(all, a);
  look_at_pit(all, "launch pit", a.launch_pit, a.launch_pit_work);
  look_at_pit(all, "exit pit", a.exit_pit, a.exit_pit_work);
  look_at_pipe_and_air(all, a);
  look_at_words(all, a.findings, a.working);
  return all.names;
}

}  // namespace burrow::test
