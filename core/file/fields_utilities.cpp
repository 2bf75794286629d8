#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"
#include "schema_describer.h"

namespace burrow {

template <class Io, Is<Recorded> V>
void fields(Io& io, V& recorded) {
  io.field("diameter", recorded.diameter);
  io.field("level", recorded.level);
  io.field("from", recorded.from);
  io.field("source", recorded.source);
  io.field("date", recorded.date);
  io.extra(recorded.extra);
}

template <class Io, Is<Located> V>
void fields(Io& io, V& located) {
  io.field("how", located.how);
  io.name("level", located.level, NameOf::locating);
  io.field("lateral_sd_m", located.lateral_sd, range::sd);
  io.field("vertical_sd_m", located.vertical_sd, range::sd);
  io.field("tracer", located.tracer);
  io.field("date", located.date);
  io.field("moved", located.moved);
  io.extra(located.extra);
}

template <class Io, Is<LineEnds> V>
void fields(Io& io, V& ends) {
  io.field("first", ends.first);
  io.field("last", ends.last);
  io.extra(ends.extra);
}

template <class Io, Is<AgreedGap> V>
void fields(Io& io, V& agreed) {
  io.field("distance_m", agreed.distance, range::size);
  io.field("with", agreed.with);
  io.field("date", agreed.date);
  io.extra(agreed.extra);
}

template <class Io, Is<Utility> V>
void fields(Io& io, V& utility) {
  io.id(utility.id, "u");
  io.field("name", utility.name);
  io.field("owner", utility.owner);
  io.field("kind", utility.kind);
  io.field("status", utility.status);
  io.field("material", utility.material);
  io.field("outside_diameter_m", utility.outside_diameter, range::diameter);
  io.line("path", utility.path);
  io.object("ends", utility.ends);
  io.object("abandonment", utility.abandonment);
  io.object("recorded", utility.recorded);
  io.object("located", utility.located);
  io.field("required_clearance_m", utility.required_clearance, range::size);
  io.object("agreed", utility.agreed);
  io.field("precaution", utility.precaution);
  io.extra(utility.extra);
}

template <class Io, Is<TestHole> V>
void fields(Io& io, V& hole) {
  io.id(hole.id, "h");
  io.field("utility", hole.utility);
  io.field("station_m", hole.station, range::station);
  io.field("offset_m", hole.offset, range::offset);
  io.field("level", hole.level);
  io.field("elevation_m", hole.elevation, range::elevation);
  io.field("sd_m", hole.sd, range::sd);
  io.field("reach_m", hole.reach, range::size);
  io.field("date", hole.date);
  io.field("by", hole.by);
  io.field("photo", hole.photo);
  io.object("agreed", hole.agreed);
  io.extra(hole.extra);
}

template <class Io, Is<CameraSurvey> V>
void fields(Io& io, V& survey) {
  io.field("result", survey.result);
  io.field("reference", survey.reference);
  io.field("date", survey.date);
  io.extra(survey.extra);
}

template <class Io, Is<UtilitySearch> V>
void fields(Io& io, V& search) {
  io.field("done", search.done);
  io.field("reference", search.reference);
  io.field("date", search.date);
  io.field("valid_from", search.valid_from);
  io.field("valid_to", search.valid_to);
  io.field("marks_visible", search.marks_visible);
  io.field("none_found", search.none_found);
  io.field("laterals", search.laterals);
  io.field("unknown_rate_1_m2", search.unknown_rate, range::rate_by_area);
  io.object("camera_before", search.camera_before);
  io.object("camera_after", search.camera_after);
  io.extra(search.extra);
}

BURROW_FIELDS_BOTH_WAYS(Recorded)
BURROW_FIELDS_BOTH_WAYS(Located)
BURROW_FIELDS_BOTH_WAYS(LineEnds)
BURROW_FIELDS_BOTH_WAYS(AgreedGap)
BURROW_FIELDS_BOTH_WAYS(Utility)
BURROW_FIELDS_BOTH_WAYS(TestHole)
BURROW_FIELDS_BOTH_WAYS(CameraSurvey)
BURROW_FIELDS_BOTH_WAYS(UtilitySearch)

}  // namespace burrow
