#include "crossing_fields.h"
#include "crossing_reader.h"
#include "crossing_writer.h"
#include "schema_describer.h"

namespace burrow {

template <class Io, Is<OwnerContact> V>
void fields(Io& io, V& contact) {
  io.field("owner", contact.owner);
  io.field("phone", contact.phone);
  io.object("answered", contact.answered);
  io.field("valve", contact.valve);
  io.extra(contact.extra);
}

template <class Io, Is<DailyCheck> V>
void fields(Io& io, V& check) {
  io.field("date", check.date);
  io.field("by", check.by);
  io.texts("done", check.done);
  io.extra(check.extra);
}

template <class Io, Is<GoSigned> V>
void fields(Io& io, V& sign) {
  io.field("decision", sign.decision);
  io.field("by", sign.by);
  io.field("date", sign.date);
  io.extra(sign.extra);
}

template <class Io, Is<Permit> V>
void fields(Io& io, V& permit) {
  io.field("emergency_phone", permit.emergency_phone);
  io.field("locating_phone", permit.locating_phone);
  io.list("owners", permit.owners);
  io.object("pits_inspected", permit.pits_inspected);
  io.object("daily", permit.daily);
  io.field("at_air_valve", permit.at_air_valve);
  io.field("at_exit", permit.at_exit);
  io.object("supervisor", permit.supervisor);
  io.object("crew", permit.crew);
  io.extra(permit.extra);
}

BURROW_FIELDS_BOTH_WAYS(OwnerContact)
BURROW_FIELDS_BOTH_WAYS(DailyCheck)
BURROW_FIELDS_BOTH_WAYS(GoSigned)
BURROW_FIELDS_BOTH_WAYS(Permit)

}  // namespace burrow
