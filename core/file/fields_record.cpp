#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"
#include "schema_describer.h"

namespace burrow {

template <class Io, Is<Reading> V>
void fields(Io& io, V& reading) {
  io.field("kind", reading.kind);
  io.field("time_s", reading.time, range::time);
  io.field("nose_m", reading.nose, range::size);
  io.field("grade", reading.grade, range::grade);
  io.field("heading_rad", reading.heading, range::heading);
  io.field("sd_rad", reading.angle_sd, range::angle_sd);
  io.field("station_m", reading.station, range::station);
  io.field("offset_m", reading.offset, range::offset);
  io.field("depth_m", reading.depth, range::size);
  io.field("elevation_m", reading.elevation, range::elevation);
  io.field("sd_m", reading.sd, range::sd);
  io.field("sd_lateral_m", reading.lateral_sd, range::sd);
  io.field("sd_vertical_m", reading.vertical_sd, range::sd);
  io.field("pressure_pa", reading.pressure, range::pressure);
  io.field("at", reading.at);
  io.field("rise_m", reading.rise, range::rise);
  io.field("why", reading.why);
  io.field("how", reading.how);
  io.field("text", reading.text);
  io.field("sign", reading.sign);
  io.texts("tasks", reading.tasks);
  io.field("confirmed", reading.confirmed);
  io.field("cancelled", reading.cancelled);
  io.extra(reading.extra);
}

template <class Io, Is<KeptLayout> V>
void fields(Io& io, V& layout) {
  io.object_unless_empty("bore", layout.bore);
  io.object("pipe", layout.pipe);
  io.extra(layout.extra);
}

template <class Io, Is<TakenOnFinding> V>
void fields(Io& io, V& finding) {
  io.field("code", finding.code);
  io.field("subject", finding.subject);
  io.field("margin", finding.margin, range::of_a_finding);
  io.extra(finding.extra);
}

template <class Io, Is<TakenOn> V>
void fields(Io& io, V& taken_on) {
  io.field("by", taken_on.by);
  io.field("why", taken_on.why);
  io.field("date", taken_on.date);
  io.list("findings", taken_on.findings);
  io.extra(taken_on.extra);
}

template <class Io, Is<PullIn> V>
void fields(Io& io, V& pull_in) {
  io.field("date", pull_in.date);
  io.field("by", pull_in.by);
  io.field("what", pull_in.what);
  io.field("peak_n", pull_in.peak, range::force);
  io.field("link_rating_n", pull_in.link_rating, range::force);
  io.field("watched_by", pull_in.watched_by);
  io.extra(pull_in.extra);
}

template <class Io, Is<RecordPhoto> V>
void fields(Io& io, V& photo) {
  io.field("path", photo.path);
  io.field("what", photo.what);
  io.extra(photo.extra);
}

template <class Io, Is<Aftermath> V>
void fields(Io& io, V& aftermath) {
  io.field("hole", aftermath.hole);
  io.object("released", aftermath.released);
  io.object("pull_in", aftermath.pull_in);
  io.object("grouted", aftermath.grouted);
  io.list("photos", aftermath.photos);
  io.extra(aftermath.extra);
}

template <class Io, Is<DayRecord> V>
void fields(Io& io, V& day) {
  io.id(day.id, "d");
  io.field("started", day.started);
  io.field("crew", day.crew);
  io.field("alternative", day.alternative);
  io.object("layout", day.layout);
  io.object("taken_on", day.taken_on);
  io.list("readings", day.readings);
  io.object("aftermath", day.aftermath);
  io.extra(day.extra);
}

BURROW_FIELDS_BOTH_WAYS(Reading)
BURROW_FIELDS_BOTH_WAYS(KeptLayout)
BURROW_FIELDS_BOTH_WAYS(TakenOnFinding)
BURROW_FIELDS_BOTH_WAYS(TakenOn)
BURROW_FIELDS_BOTH_WAYS(PullIn)
BURROW_FIELDS_BOTH_WAYS(RecordPhoto)
BURROW_FIELDS_BOTH_WAYS(Aftermath)
BURROW_FIELDS_BOTH_WAYS(DayRecord)

}  // namespace burrow
