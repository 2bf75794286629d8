#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"

namespace burrow {

template <class Io, Is<Pipe> V>
void fields(Io& io, V& pipe) {
  io.name("material", pipe.material, NameOf::pipe);
  io.field("outside_diameter_m", pipe.outside_diameter, range::diameter);
  io.field("sdr", pipe.sdr, range::positive);
  io.field("wall_m", pipe.wall, range::size);
  io.field("count", pipe.count, range::count_from_1);
  io.field("insertion", pipe.insertion);
  io.field("pull_by", pipe.pull_by);
  io.field("head_diameter_m", pipe.head_diameter, range::diameter);
  io.field("coupling_diameter_m", pipe.coupling_diameter, range::diameter);
  io.field("hose_rating_n", pipe.hose_rating, range::not_negative);
  io.field("pull_time_s", pipe.pull_time, range::positive);
  io.field("operating_pressure_pa", pipe.operating_pressure, range::not_negative);
  io.field("temperature_k", pipe.temperature, range::positive);
  io.field("piece_length_m", pipe.piece_length, range::size);
  io.extra(pipe.extra);
}

template <class Io, Is<Compressor> V>
void fields(Io& io, V& compressor) {
  io.field("name", compressor.name);
  io.field("free_air_m3_s", compressor.free_air, range::rate);
  io.field("pressure_pa", compressor.pressure, range::not_negative);
  io.extra(compressor.extra);
}

template <class Io, Is<AirPart> V>
void fields(Io& io, V& part) {
  io.field("kind", part.kind);
  io.field("length_m", part.length, range::size);
  io.field("bore_m", part.bore, range::diameter);
  io.field("roughness_m", part.roughness, range::size);
  io.field("count", part.count, range::count);
  io.field("equivalent_length_m", part.equivalent_length, range::size);
  io.extra(part.extra);
}

template <class Io, Is<Oil> V>
void fields(Io& io, V& oil) {
  io.field("first_fill_m3", oil.first_fill, range::not_negative);
  io.field("rate_m3_s", oil.rate, range::rate);
  io.extra(oil.extra);
}

template <class Io, Is<Air> V>
void fields(Io& io, V& air) {
  io.object("compressor", air.compressor);
  io.field("altitude_m", air.altitude, range::elevation);
  io.field("air_temperature_k", air.air_temperature, range::positive);
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
