#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"
#include "schema_describer.h"

namespace burrow {

template <class Io, Is<Mute> V>
void fields(Io& io, V& mute) {
  io.field("code", mute.code);
  io.field("subject", mute.subject);
  io.field("reason", mute.reason);
  io.field("by", mute.by);
  io.field("date", mute.date);
  io.field("measured", mute.measured, range::of_a_finding);
  io.field("fingerprint", mute.fingerprint);
  io.extra(mute.extra);
}

template <class Io, Is<Alternative> V>
void fields(Io& io, V& alternative) {
  io.id(alternative.id, "a");
  io.field("name", alternative.name);
  io.object_unless_empty("bore", alternative.bore);
  io.object("pipe", alternative.pipe);
  io.object("pits", alternative.pits);
  io.object("air", alternative.air);
  io.texts("locks", alternative.locks);
  io.extra(alternative.extra);
}

template <class Io, Is<SheetSettings> V>
void fields(Io& io, V& sheet) {
  io.field("paper", sheet.paper);
  io.field("scale", sheet.scale, range::sheet_scale);
  io.field("vertical_exaggeration", sheet.vertical_exaggeration, range::exaggeration);
  io.field("units", sheet.units);
  io.field("number", sheet.number);
  io.field("revision", sheet.revision);
  io.field("drawn_by", sheet.drawn_by);
  io.field("checked_by", sheet.checked_by);
  io.field("date", sheet.date);
  io.extra(sheet.extra);
}

template <class Io, Is<Crossing> V>
void fields(Io& io, V& crossing) {
  io.header(crossing);
  io.field("name", crossing.name);
  io.field("notes", crossing.notes);
  io.required_object("site", crossing.site);
  io.required_object("bore", crossing.bore);
  io.object("pipe", crossing.pipe);
  io.object("pits", crossing.pits);
  io.object("air", crossing.air);
  io.object("permit", crossing.permit);
  io.list("record", crossing.record);
  io.limits("limits", crossing.limits);
  io.texts("locks", crossing.locks);
  io.list("muted", crossing.muted);
  io.list("alternatives", crossing.alternatives);
  io.raw("practice", crossing.practice);
  io.object("sheet", crossing.sheet);
  io.extra(crossing.extra);
  io.unknown_keys(crossing.unknown_keys);
}

BURROW_FIELDS_BOTH_WAYS(Mute)
BURROW_FIELDS_BOTH_WAYS(Alternative)
BURROW_FIELDS_BOTH_WAYS(SheetSettings)
BURROW_FIELDS_BOTH_WAYS(Crossing)

}  // namespace burrow
