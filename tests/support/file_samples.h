#pragma once
/// Crossings as text, for the tests of the file.

#include <string>

#include "burrow/base/ensure.h"
#include "burrow/file/tables_file.h"
#include "burrow/tables/tables.h"

namespace burrow::test {

inline const Tables& tables() {
  static const Tables all = load_tables(Date{2026, 3, 2});
  return all;
}

/// The least that a file must hold.
inline std::string least_text() {
  return R"({"format":"burrowline-crossing","version":1,
"site":{"ground":[[-4,102.1],[14,102.3]],"strata":[{"soil":"firm-clay"}]},
"bore":{"tool":{"class":"tool-65"},"launch":{"station_m":0,"elevation_m":101,"grade":0},"exit":{"station_m":14}}})";
}

/// Every key of the file format once.
inline std::string full_text() {
  return R"({ "format": "burrowline-crossing", "version": 1, "name": "Alder Lane, house service", "notes": "n",
"site": {
  "ground": [[-4.0,102.10],[0.0,102.05],[14.0,102.30]],
  "ground_points": [[1.0,2.0,102.0]],
  "water": [[-4.0,99.0],[14.0,99.0]],
  "strata": [{"id":"l1","soil":"firm-clay","top":null,"known":"guess","values":{}},
             {"id":"l2","soil":"firm-clay","top":[[-4.0,101.2],[14.0,101.4]],"known":"seen","values":{
               "unit_weight_n_m3":18000,"saturated_unit_weight_n_m3":19000,"undrained_strength_pa":45000,
               "friction_angle_rad":0.5,"cohesion_pa":0,"dilation_angle_rad":0.05,"shear_modulus_pa":4000000,
               "poisson_ratio":0.3,"earth_pressure_ratio":0.7,"drained":false,"adhesion_ratio":0.2,
               "interface_angle_rad":0.4,"wander_rad_sqrt_m":0.004,"stone_rate_1_m":0.1,"stone_kick_rad":0.01,
               "refusal_rate_1_m":0.001,"heave_share":0.5,"swell":0.25,"excavation_type":"B"}}],
  "strips": [{"id":"t1","name":"old trench","soil":"firm-clay","values":{"swell":0.2},
              "outline":[[8.0,-6.0],[8.9,-6.0],[9.3,6.0],[8.4,6.0]],"top":102.0,"bottom_elevation_m":99.6}],
  "surface": [
    {"id":"f1","kind":"road","name":"Alder Lane","from_m":4.0,"to_m":11.5,"skew_rad":0.0,"traffic":"highway",
     "rule":"road-cover-48in","required_cover_m":1.2,"heave_limit_m":0.01,"permission":"not-asked","permit":"x",
     "rescue":{"how":"dug up","agreed_with":"owner","date":"2025-04-03"}},
    {"id":"f3","kind":"footing","name":"","outline":[[1,3],[4,3],[4,6],[1,6]],"founding_elevation_m":101.4,
     "structure":"dwelling","bearing_pressure_pa":100000}],
  "boundaries": [{"id":"b1","kind":"property","name":"","line":[[12.5,-10.0],[12.5,10.0]]}],
  "trees": [{"id":"w1","name":"","station_m":16.0,"offset_m":3.0,"protection_radius_m":2.4}],
  "plant": [{"id":"p1","name":"excavator track","station_m":-2.0,"offset_m":1.5,"length_m":2.6,"width_m":0.45,
             "load_n":40000.0,"dynamic_factor":1.0}],
  "utilities": [{"id":"u1","name":"gas main","owner":"o","kind":"gas","status":"live","material":"pe",
     "outside_diameter_m":0.125,"path":[[6.0,-5.0,101.15],[6.2,5.0,null]],
     "recorded":{"diameter":"outside","level":"crown","from":"ground","source":"s","date":"2025-04-01"},
     "located":{"how":"traced","level":"pas128-b1","lateral_sd_m":0.15,"vertical_sd_m":0.12,"date":"2025-04-02"},
     "required_clearance_m":0.5,"precaution":"p"}],
  "test_holes": [{"id":"h1","utility":"u1","station_m":6.1,"offset_m":0.0,"level":"crown","elevation_m":101.22,
                  "sd_m":0.02,"reach_m":3.0,"date":"2025-04-03"}],
  "utility_search": {"done":true,"reference":"r","date":"2025-04-04","none_found":false,"laterals":"entered",
                     "unknown_rate_1_m2":0.0},
  "background": [{"id":"g1","name":"","source":"plan.dxf","layer":"KERB","lines":[[[0.0,-4.0],[14.0,-4.0]]]}],
  "georeference": {"crs":"EPSG:25832","origin":[691000,5334000],"azimuth_rad":0.0,"vertical":"v"} },
"bore": {
  "tool": {"class":"tool-65","diameter_m":0.065,"length_m":1.2,"mass_kg":18,"piston_diameter_m":0.045,"stroke_m":0.1,
           "striker_mass_kg":5,"blow_rate_hz":8,"pressure_pa":690000,"free_air_m3_s":0.012},
  "launch": {"station_m":0.0,"offset_m":0.0,"elevation_m":101.0,"grade":0.0,"heading_rad":0.0,
             "position_sd_m":0.005,"level_sd_rad":0.005,"aim_sd_rad":0.005,"sight_base_m":2.0},
  "exit": {"station_m":14.0,"offset_m":0.0},
  "trials": {"count":20000,"seed":1},
  "model": {"steer_constant":0.04,"steer_constant_sd":0.03,"field_factor":0.3,"calibrated_from":0} },
"pipe": {"material":"pe100","outside_diameter_m":0.063,"sdr":11,"wall_m":0.006,"count":1,"insertion":"pulled-after",
         "pull_by":"rope","head_diameter_m":0.07,"operating_pressure_pa":0.0,"temperature_k":293.15,
         "service_temperature_k":290.15,"piece_length_m":6},
"pits": {"rules":"us-1926",
  "launch": {"floor_length_m":2.2,"floor_width_m":0.9,"floor_elevation_m":100.9,"floor_offset_m":0.1,
     "floor_outline":[[0.0,-0.5],[0.0,0.5],[1.5,0.5],[1.5,1.25],[3.0,1.25],[3.0,-0.5]],
     "working_length_m":1.0,"cradle_height_m":0.0,"slab_thickness_m":0.0,"sump_depth_m":0.0,
     "soil_type":"C","confirmed_by":"c","open_time_s":3600,
     "signs":{"fissured":true,"vibrated":false,"disturbed":false,"seeping":false,"dip_run_per_rise":0.1,
              "distress":false,"bad_air":false,"joints":false,"dips_inward":false,"loose_fill":true,"soft_deposit":false,
              "open_drainage":false,"flowing":false,"steep_heap":false,"steep_ground":true,
              "none_seen":{"how":"","by":"A. Nobody","date":"2026-02-27"}},
     "load_design":{"how":"sheet 4","by":"A. Nobody","date":"2026-02-20"},
     "sides":{"bore":{"kind":"shored","run_per_rise":0.0,"upright_m":1.0,"benches":[]},
              "back":{"kind":"sloped","run_per_rise":1.5,"upright_m":0.0,"benches":[]},
              "left":{"kind":"sloped","run_per_rise":1.5,"upright_m":0.0,"benches":[]},
              "right":{"kind":"benched","run_per_rise":1.0,"upright_m":0.0,"benches":[{"rise_m":1.2,"tread_m":1.2,"run_per_rise":0.5}],
                       "benches_only_walked":false}},
     "spoil":{"side":"left","setback_m":0.61,"height_m":1.0},"ladder":{"side":"back","along_m":0.0}},
  "exit": {"allowance_m":0.10,"working_length_m":0.5} },
"air": {"compressor":{"name":"n","free_air_m3_s":0.0417,"pressure_pa":690000.0,"regulator_pa":680000.0},"altitude_m":0.0,
  "air_temperature_k":288.15,"relative_humidity":0.5,
  "line":[{"kind":"hose","length_m":15.0,"bore_m":0.019,"roughness_m":0.00005,"rating_pa":1600000},
          {"kind":"coupling","count":2,"equivalent_length_m":0.6}],
  "oil":{"first_fill_m3":0.00012,"rate_m3_s":1e-8},"mark_spacing_m":1.5,"tail_fitting_m":0.15},
"record": [{"id":"d1","started":"2025-05-03T08:12:00+02:00","crew":"k","alternative":"a1",
    "layout":{"bore":{"tool":{"class":"tool-65"},"launch":{"station_m":0.0,"elevation_m":101.0,"grade":0.0},"exit":{"station_m":14.0}},
              "pipe":{"material":"pe100"}},
    "taken_on":{"by":"b","why":"w","date":"2025-05-03","findings":[{"code":"bore.cover","subject":"bore","margin":-0.2}]},"readings":[
    {"kind":"start","time_s":0.0},{"kind":"mark","time_s":180.0,"nose_m":1.5},
    {"kind":"grade","time_s":240.0,"nose_m":1.9,"grade":-0.010,"sd_rad":0.002},
    {"kind":"heading","time_s":240.0,"nose_m":1.9,"heading_rad":0.003,"sd_rad":0.003},
    {"kind":"fix","time_s":900.0,"nose_m":7.5,"offset_m":0.05,"depth_m":1.10,"sd_lateral_m":0.05,"sd_vertical_m":0.06},
    {"kind":"pressure","time_s":900.0,"pressure_pa":610000.0,"at":"tool"},
    {"kind":"peg","time_s":910.0,"station_m":7.0,"offset_m":0.0,"rise_m":-0.002},
    {"kind":"stop","time_s":920.0,"nose_m":7.7,"why":"listen"},{"kind":"go","time_s":960.0},
    {"kind":"back","time_s":980.0,"nose_m":7.2},
    {"kind":"arrival","time_s":1900.0,"offset_m":0.08,"elevation_m":100.93,"sd_m":0.01},
    {"kind":"danger","time_s":1890.0,"sign":"smell","cancelled":"a glove"},
    {"kind":"done","time_s":1891.0,"tasks":["listen"],"confirmed":true},
    {"kind":"end","time_s":1900.0,"how":"arrived"},{"kind":"note","time_s":1910.0,"text":"t"}],
    "aftermath":{"hole":"grouted","released":{"how":"h","by":"b","date":"2025-05-04"}}}],
"limits": {"cover_diameters":12,"separation_gas_m":{"value":0.60,"why":"permit 12, line 4"}},
"locks": ["/bore/launch/elevation_m","/site/utilities/u1"],
"muted": [{"code":"utility.separation","subject":"u3","reason":"cut and capped","by":"b","date":"2025-05-02","measured":0.31}],
"alternatives": [{"id":"a1","name":"from the north side","bore":{},"pipe":{},"pits":{},"air":{},"locks":["/bore"]}],
"practice": {"any":[1,{"thing":null}]},
"sheet": {"paper":"a3","scale":100,"vertical_exaggeration":1.0,"units":"metric","number":"1","revision":"A",
          "drawn_by":"d","checked_by":"c","date":"2025-05-01"} })";
}

/// The text with the first `from` replaced; that it stands there is part of the test.
inline std::string with(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  BURROW_ENSURE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace burrow::test
