#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"
#include "schema_describer.h"

namespace burrow {

template <class Io, Is<SoilOverrides> V>
void fields(Io& io, V& values) {
  io.field("unit_weight_n_m3", values.unit_weight, range::unit_weight);
  io.field("saturated_unit_weight_n_m3", values.saturated_unit_weight, range::unit_weight);
  io.field("undrained_strength_pa", values.undrained_strength, range::strength);
  io.field("friction_angle_rad", values.friction_angle, range::slope_angle);
  io.field("cohesion_pa", values.cohesion, range::cohesion);
  io.field("dilation_angle_rad", values.dilation_angle, range::angle);
  io.field("shear_modulus_pa", values.shear_modulus, range::modulus);
  io.field("poisson_ratio", values.poisson_ratio, range::poisson);
  io.field("earth_pressure_ratio", values.earth_pressure_ratio, range::earth_pressure);
  io.field("drained", values.drained);
  io.field("adhesion_ratio", values.adhesion_ratio, range::adhesion);
  io.field("interface_angle_rad", values.interface_angle, range::slope_angle);
  io.field("wander_rad_sqrt_m", values.wander, range::wander);
  io.field("stone_rate_1_m", values.stone_rate, range::rate_by_length);
  io.field("stone_kick_rad", values.stone_kick, range::slope_angle);
  io.field("refusal_rate_1_m", values.refusal_rate, range::rate_by_length);
  io.field("heave_share", values.heave_share, range::share);
  io.field("swell", values.swell, range::swell);
  io.field("excavation_type", values.excavation_type);
  io.extra(values.extra);
}

template <class Io, Is<Stratum> V>
void fields(Io& io, V& stratum) {
  io.id(stratum.id, "l");
  io.required_name("soil", stratum.soil, NameOf::soil);
  io.line("top", stratum.top);
  io.field("known", stratum.known);
  io.object("values", stratum.values);
  io.extra(stratum.extra);
}

template <class Io, Is<Strip> V>
void fields(Io& io, V& strip) {
  io.id(strip.id, "t");
  io.field("name", strip.name);
  io.required_name("soil", strip.soil, NameOf::soil);
  io.object("values", strip.values);
  io.line("outline", strip.outline);
  io.field("top", strip.top_elevation, range::elevation);
  io.field("bottom_elevation_m", strip.bottom_elevation, range::elevation);
  io.extra(strip.extra);
}

template <class Io, Is<LevelPeg> V>
void fields(Io& io, V& peg) {
  io.required("station_m", peg.station, range::station);
  io.field("offset_m", peg.offset, range::offset);
  io.field("before_m", peg.before, range::elevation);
  io.field("after_m", peg.after, range::elevation);
  io.field("settled_m", peg.settled, range::elevation);
  io.extra(peg.extra);
}

template <class Io, Is<LevelRecord> V>
void fields(Io& io, V& levels) {
  io.field("before_date", levels.before_date);
  io.field("after_date", levels.after_date);
  io.field("settled_date", levels.settled_date);
  io.list("pegs", levels.pegs);
  io.extra(levels.extra);
}

template <class Io, Is<Statement> V>
void fields(Io& io, V& statement) {
  io.field("how", statement.how);
  io.field("by", statement.by);
  io.field("date", statement.date);
  io.extra(statement.extra);
}

template <class Io, Is<StuckPlan> V>
void fields(Io& io, V& plan) {
  io.field("how", plan.how);
  io.field("agreed_with", plan.agreed_with);
  io.field("date", plan.date);
  io.extra(plan.extra);
}

template <class Io, Is<SurfaceFeature> V>
void fields(Io& io, V& feature) {
  io.id(feature.id, "f");
  io.field("kind", feature.kind);
  io.field("name", feature.name);
  io.field("from_m", feature.from, range::station);
  io.field("to_m", feature.to, range::station);
  io.field("skew_rad", feature.skew, range::angle);
  io.field("traffic", feature.traffic);
  io.name("rule", feature.rule, NameOf::rule);
  io.field("required_cover_m", feature.required_cover, range::size);
  io.field("heave_limit_m", feature.heave_limit, range::size);
  io.field("permission", feature.permission);
  io.field("permit", feature.permit);
  io.line("outline", feature.outline);
  io.field("founding_elevation_m", feature.founding_elevation, range::elevation);
  io.field("structure", feature.structure);
  io.field("bearing_pressure_pa", feature.bearing_pressure, range::pressure);
  io.object("rescue", feature.rescue);
  io.object("levels", feature.levels);
  io.extra(feature.extra);
}

template <class Io, Is<Boundary> V>
void fields(Io& io, V& boundary) {
  io.id(boundary.id, "b");
  io.field("kind", boundary.kind);
  io.field("name", boundary.name);
  io.line("line", boundary.line);
  io.extra(boundary.extra);
}

template <class Io, Is<Tree> V>
void fields(Io& io, V& tree) {
  io.id(tree.id, "w");
  io.field("name", tree.name);
  io.field("station_m", tree.station, range::station);
  io.field("offset_m", tree.offset, range::offset);
  io.field("protection_radius_m", tree.protection_radius, range::size);
  io.extra(tree.extra);
}

template <class Io, Is<Plant> V>
void fields(Io& io, V& plant) {
  io.id(plant.id, "p");
  io.field("name", plant.name);
  io.field("station_m", plant.station, range::station);
  io.field("offset_m", plant.offset, range::offset);
  io.field("length_m", plant.length, range::size);
  io.field("width_m", plant.width, range::size);
  io.field("load_n", plant.load, range::force);
  io.field("dynamic_factor", plant.dynamic_factor, range::dynamic_factor);
  io.extra(plant.extra);
}

template <class Io, Is<Background> V>
void fields(Io& io, V& background) {
  io.id(background.id, "g");
  io.field("name", background.name);
  io.field("source", background.source);
  io.field("layer", background.layer);
  io.lines("lines", background.lines);
  io.object("not_a_service", background.not_a_service);
  io.extra(background.extra);
}

template <class Io, Is<Georeference> V>
void fields(Io& io, V& georeference) {
  io.field("crs", georeference.crs);
  io.origin("origin", georeference.origin);
  io.field("azimuth_rad", georeference.azimuth, range::turn);
  io.field("vertical", georeference.vertical);
  io.extra(georeference.extra);
}

template <class Io, Is<Site> V>
void fields(Io& io, V& site) {
  io.required_line("ground", site.ground);
  io.line("ground_points", site.ground_points);
  io.line("water", site.water);
  io.list("strata", site.strata, 1);
  io.list("strips", site.strips);
  io.list("surface", site.surface);
  io.object("nothing_above", site.nothing_above);
  io.list("boundaries", site.boundaries);
  io.list("trees", site.trees);
  io.list("plant", site.plant);
  io.list("utilities", site.utilities);
  io.list("test_holes", site.test_holes);
  io.object("utility_search", site.utility_search);
  io.list("background", site.background);
  io.object("georeference", site.georeference);
  io.extra(site.extra);
}

BURROW_FIELDS_BOTH_WAYS(SoilOverrides)
BURROW_FIELDS_BOTH_WAYS(Stratum)
BURROW_FIELDS_BOTH_WAYS(Strip)
BURROW_FIELDS_BOTH_WAYS(LevelPeg)
BURROW_FIELDS_BOTH_WAYS(LevelRecord)
BURROW_FIELDS_BOTH_WAYS(Statement)
BURROW_FIELDS_BOTH_WAYS(StuckPlan)
BURROW_FIELDS_BOTH_WAYS(SurfaceFeature)
BURROW_FIELDS_BOTH_WAYS(Boundary)
BURROW_FIELDS_BOTH_WAYS(Tree)
BURROW_FIELDS_BOTH_WAYS(Plant)
BURROW_FIELDS_BOTH_WAYS(Background)
BURROW_FIELDS_BOTH_WAYS(Georeference)
BURROW_FIELDS_BOTH_WAYS(Site)

}  // namespace burrow
