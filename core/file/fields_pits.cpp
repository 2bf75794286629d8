#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"
#include "schema_describer.h"

namespace burrow {

template <class Io, Is<Bench> V>
void fields(Io& io, V& bench) {
  io.field("rise_m", bench.rise, range::size);
  io.field("tread_m", bench.tread, range::size);
  io.field("run_per_rise", bench.run_per_rise, range::run_per_rise);
  io.extra(bench.extra);
}

template <class Io, Is<PitSide> V>
void fields(Io& io, V& side) {
  io.field("kind", side.kind);
  io.field("run_per_rise", side.run_per_rise, range::run_per_rise);
  io.field("upright_m", side.upright, range::size);
  io.field("support_foot_m", side.support_foot, range::size);
  io.field("support_top_m", side.support_top, range::size);
  io.list("benches", side.benches);
  io.field("benches_only_walked", side.benches_only_walked);
  io.extra(side.extra);
}

template <class Io, Is<PitSides> V>
void fields(Io& io, V& sides) {
  io.object("bore", sides.bore);
  io.object("back", sides.back);
  io.object("left", sides.left);
  io.object("right", sides.right);
  io.extra(sides.extra);
}

template <class Io, Is<RatedShield> V>
void fields(Io& io, V& shield) {
  io.field("depth_m", shield.depth, range::size);
  io.field("soil_type", shield.soil_type);
  io.field("source", shield.source);
  io.extra(shield.extra);
}

template <class Io, Is<PitSigns> V>
void fields(Io& io, V& signs) {
  io.field("fissured", signs.fissured);
  io.field("vibrated", signs.vibrated);
  io.field("disturbed", signs.disturbed);
  io.field("seeping", signs.seeping);
  io.field("dip_run_per_rise", signs.dip_run_per_rise, range::run_per_rise);
  io.field("distress", signs.distress);
  io.field("bad_air", signs.bad_air);
  io.field("joints", signs.joints);
  io.field("dips_inward", signs.dips_inward);
  io.field("loose_fill", signs.loose_fill);
  io.field("soft_deposit", signs.soft_deposit);
  io.field("open_drainage", signs.open_drainage);
  io.field("flowing", signs.flowing);
  io.field("steep_heap", signs.steep_heap);
  io.field("steep_ground", signs.steep_ground);
  io.object("none_seen", signs.none_seen);
  io.extra(signs.extra);
}

template <class Io, Is<Spoil> V>
void fields(Io& io, V& spoil) {
  io.field("side", spoil.side);
  io.field("setback_m", spoil.setback, range::size);
  io.field("height_m", spoil.height, range::size);
  io.extra(spoil.extra);
}

template <class Io, Is<Ladder> V>
void fields(Io& io, V& ladder) {
  io.field("side", ladder.side);
  io.field("along_m", ladder.along, range::offset);
  io.extra(ladder.extra);
}

template <class Io, Is<Pit> V>
void fields(Io& io, V& pit) {
  io.field("floor_length_m", pit.floor_length, range::size);
  io.field("floor_width_m", pit.floor_width, range::size);
  io.field("floor_elevation_m", pit.floor_elevation, range::elevation);
  io.field("floor_offset_m", pit.floor_offset, range::offset);
  io.line("floor_outline", pit.floor_outline);
  io.field("working_length_m", pit.working_length, range::size);
  io.field("cradle_height_m", pit.cradle_height, range::size);
  io.field("slab_thickness_m", pit.slab_thickness, range::size);
  io.field("sump_depth_m", pit.sump_depth, range::size);
  io.field("soil_type", pit.soil_type);
  io.field("confirmed_by", pit.confirmed_by);
  io.field("open_time_s", pit.open_time, range::time);
  io.object("signs", pit.signs);
  io.object("sides", pit.sides);
  io.object("shield", pit.shield);
  io.object("load_design", pit.load_design);
  io.object("spoil", pit.spoil);
  io.object("ladder", pit.ladder);
  io.field("allowance_m", pit.allowance, range::size);
  io.extra(pit.extra);
}

template <class Io, Is<Pits> V>
void fields(Io& io, V& pits) {
  io.field("rules", pits.rules);
  io.object("launch", pits.launch);
  io.object("exit", pits.exit);
  io.extra(pits.extra);
}

BURROW_FIELDS_BOTH_WAYS(Bench)
BURROW_FIELDS_BOTH_WAYS(PitSide)
BURROW_FIELDS_BOTH_WAYS(PitSides)
BURROW_FIELDS_BOTH_WAYS(RatedShield)
BURROW_FIELDS_BOTH_WAYS(PitSigns)
BURROW_FIELDS_BOTH_WAYS(Spoil)
BURROW_FIELDS_BOTH_WAYS(Ladder)
BURROW_FIELDS_BOTH_WAYS(Pit)
BURROW_FIELDS_BOTH_WAYS(Pits)

}  // namespace burrow
