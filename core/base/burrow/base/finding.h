#pragma once
/// A design that does not comply, or that cannot be judged yet: a normal result, never an error.

#include <optional>
#include <string>
#include <string_view>

#include "burrow/base/phrase.h"
#include "burrow/base/source.h"

namespace burrow {

enum class Severity { stop, caution, note };

std::string_view word_of(Severity severity);

struct Muted {
  std::string reason;
  std::string by;
  std::string date;
  bool operator==(const Muted&) const = default;
};

struct Finding {
  std::string code;  ///< stable: "utility.separation", "missing.water"
  Severity severity = Severity::note;
  std::string subject;  ///< an id, or one of: bore launch-pit exit-pit pipe air site
  Phrase name;          ///< what a person calls the subject: "gas main", "launch pit"
  std::optional<double> station_m;
  std::optional<double> offset_m;
  std::optional<double> elevation_m;
  std::optional<double> measured;    ///< SI
  std::optional<double> limit;       ///< SI
  std::optional<double> limit_base;  ///< the part of the limit without the allowance for not knowing exactly
  std::string_view unit;             ///< SI unit of both: "m", "Pa", "rad", "" for a chance
  bool at_least = true;              ///< sense of the limit: the value must not be below (true) or above (false) it
  std::string about_check;  ///< code of the check that this finding is a note on, "pipe.deflection"; else empty
  Source source;            ///< of the limit
  std::optional<Muted> muted;
  bool missing = false;   ///< data that were not entered: caps the verdict at `incomplete`
  bool can_hurt = false;  ///< its subject is a utility that may hurt somebody who strikes it
  /// (limit − value)/limit with the sign of the sense: negative when the limit is broken; orders the list.
  std::optional<double> margin;
  bool operator==(const Finding&) const = default;
};

}  // namespace burrow
