#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"
#include "schema_describer.h"

namespace burrow {

template <class Io, Is<ToolChoice> V>
void fields(Io& io, V& tool) {
  io.name("class", tool.tool_class, NameOf::tool);
  io.field("diameter_m", tool.diameter, range::diameter);
  io.field("length_m", tool.length, range::tool_length);
  io.field("mass_kg", tool.mass, range::mass);
  io.field("piston_diameter_m", tool.piston_diameter, range::diameter);
  io.field("stroke_m", tool.stroke, range::stroke);
  io.field("striker_mass_kg", tool.striker_mass, range::mass);
  io.field("blow_rate_hz", tool.blow_rate, range::blow_rate);
  io.field("pressure_pa", tool.pressure, range::tool_pressure);
  io.field("free_air_m3_s", tool.free_air, range::flow);
  io.extra(tool.extra);
}

template <class Io, Is<Launch> V>
void fields(Io& io, V& launch) {
  io.required("station_m", launch.station, range::station);
  io.field("offset_m", launch.offset, range::offset);
  io.required("elevation_m", launch.elevation, range::elevation);
  io.required("grade", launch.grade, range::grade);
  io.field("heading_rad", launch.heading, range::heading);
  io.field("position_sd_m", launch.position_sd, range::sd);
  io.field("level_sd_rad", launch.level_sd, range::angle_sd);
  io.field("aim_sd_rad", launch.aim_sd, range::angle_sd);
  io.field("sight_base_m", launch.sight_base, range::sight_base);
  io.extra(launch.extra);
}

template <class Io, Is<Exit> V>
void fields(Io& io, V& exit) {
  io.required("station_m", exit.station, range::station);
  io.field("offset_m", exit.offset, range::offset);
  io.extra(exit.extra);
}

template <class Io, Is<TrialsRequest> V>
void fields(Io& io, V& trials) {
  io.field("count", trials.count, range::trials);
  io.field("seed", trials.seed, range::whole);
  io.extra(trials.extra);
}

template <class Io, Is<ModelConstants> V>
void fields(Io& io, V& model) {
  io.field("steer_constant", model.steer_constant, range::steer);
  io.field("steer_constant_sd", model.steer_constant_sd, range::steer);
  io.field("field_factor", model.field_factor, range::field_factor);
  io.field("calibrated_from", model.calibrated_from, range::bores);
  io.texts("calibrated_records", model.calibrated_records);
  io.extra(model.extra);
}

template <class Io, Is<Bore> V>
void fields(Io& io, V& bore) {
  io.required_object("tool", bore.tool);
  io.required_object("launch", bore.launch);
  io.required_object("exit", bore.exit);
  io.object("trials", bore.trials);
  io.object("model", bore.model);
  io.object("head_located", bore.head_located);
  io.extra(bore.extra);
}

BURROW_FIELDS_BOTH_WAYS(ToolChoice)
BURROW_FIELDS_BOTH_WAYS(Launch)
BURROW_FIELDS_BOTH_WAYS(Exit)
BURROW_FIELDS_BOTH_WAYS(TrialsRequest)
BURROW_FIELDS_BOTH_WAYS(ModelConstants)
BURROW_FIELDS_BOTH_WAYS(Bore)

}  // namespace burrow
