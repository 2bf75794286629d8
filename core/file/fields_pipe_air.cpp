#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"
#include "schema_describer.h"

namespace burrow {

template <class Io, Is<Pipe> V>
void fields(Io& io, V& pipe) {
  io.name("material", pipe.material, NameOf::pipe);
  io.field("outside_diameter_m", pipe.outside_diameter, range::diameter);
  io.field("sdr", pipe.sdr, range::wall_ratio);
  io.field("wall_m", pipe.wall, range::wall);
  io.field("count", pipe.count, range::pipes);
  io.field("insertion", pipe.insertion);
  io.field("pull_by", pipe.pull_by);
  io.field("head_diameter_m", pipe.head_diameter, range::diameter);
  io.field("coupling_diameter_m", pipe.coupling_diameter, range::diameter);
  io.field("hose_rating_n", pipe.hose_rating, range::force);
  io.field("pull_time_s", pipe.pull_time, range::positive_time);
  io.field("operating_pressure_pa", pipe.operating_pressure, range::pressure);
  io.field("temperature_k", pipe.temperature, range::temperature);
  io.field("service_temperature_k", pipe.service_temperature, range::temperature);
  io.field("piece_length_m", pipe.piece_length, range::size);
  io.extra(pipe.extra);
}

template <class Io, Is<Compressor> V>
void fields(Io& io, V& compressor) {
  io.field("name", compressor.name);
  io.field("free_air_m3_s", compressor.free_air, range::flow);
  io.field("pressure_pa", compressor.pressure, range::pressure);
  io.field("regulator_pa", compressor.regulator, range::pressure);
  io.extra(compressor.extra);
}

template <class Io, Is<AirPart> V>
void fields(Io& io, V& part) {
  io.field("kind", part.kind);
  io.field("length_m", part.length, range::size);
  io.field("bore_m", part.bore, range::diameter);
  io.field("roughness_m", part.roughness, range::roughness);
  io.field("count", part.count, range::pieces);
  io.field("equivalent_length_m", part.equivalent_length, range::size);
  io.field("rating_pa", part.rating, range::pressure);
  io.extra(part.extra);
}

template <class Io, Is<Oil> V>
void fields(Io& io, V& oil) {
  io.field("first_fill_m3", oil.first_fill, range::volume);
  io.field("rate_m3_s", oil.rate, range::flow);
  io.extra(oil.extra);
}

template <class Io, Is<Air> V>
void fields(Io& io, V& air) {
  io.object("compressor", air.compressor);
  io.field("altitude_m", air.altitude, range::elevation);
  io.field("air_temperature_k", air.air_temperature, range::temperature);
  io.field("relative_humidity", air.relative_humidity, range::share);
  io.list("line", air.line);
  io.object("oil", air.oil);
  io.field("mark_spacing_m", air.mark_spacing, range::size);
  io.field("tail_fitting_m", air.tail_fitting, range::size);
  io.extra(air.extra);
}

BURROW_FIELDS_BOTH_WAYS(Pipe)
BURROW_FIELDS_BOTH_WAYS(Compressor)
BURROW_FIELDS_BOTH_WAYS(AirPart)
BURROW_FIELDS_BOTH_WAYS(Oil)
BURROW_FIELDS_BOTH_WAYS(Air)

}  // namespace burrow
