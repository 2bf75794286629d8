#pragma once
/// The `.crossing` file: JSON, UTF-8, SI units, keys that carry their unit.

#include <string>
#include <string_view>

#include "burrow/base/result.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// A crossing from the text of its file: all of it or nothing. Absent ids are given in file order ("u1", "u2", …).
/// Unknown keys stay with their object in `extra`. A newer `version` is read as far as it is known and kept in
/// `Crossing::version`; unknown limits are then kept too.
/// Errors: `place` is the JSON pointer of what is wrong ("/bore/launch/grade"), `found` what stood there, `expected`
/// what would be accepted, with the known words. Refused: text over 64 MB, over 64 levels deep or over 4,000,000
/// values; invalid UTF-8; a key twice; a wrong type; a number that is not finite or out of range; stations that do not
/// increase; an unknown soil, tool, pipe, kind, limit, rule or locating preset; an id twice; a reference to nothing; an
/// exit not beyond the launch; a required member missing.
/// Evidence: CrossingFile.*, Refusals.*, CrossingRoundTrip.*, ReaderFuzz.*, Samples.*
Result<Crossing> read_crossing(std::string_view json_text, const Tables& tables);

/// The text of a crossing's file; the same crossing gives the same bytes. Defaults that nobody entered, empty texts and
/// empty lists are left out; unknown water and depths stand as null. Reading it back gives the same crossing.
std::string write_crossing(const Crossing& crossing);

}  // namespace burrow
