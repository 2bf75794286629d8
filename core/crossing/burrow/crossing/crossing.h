#pragma once
/// Everything the user entered for one crossing: a plain value, SI, nothing derived. Other things are named by id.
/// Every struct keeps in `extra` the keys of its JSON object that this program does not know, as JSON text.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/crossing/air.h"
#include "burrow/crossing/bore.h"
#include "burrow/crossing/permit.h"
#include "burrow/crossing/pipe.h"
#include "burrow/crossing/pits.h"
#include "burrow/crossing/record.h"
#include "burrow/crossing/site.h"

namespace burrow {

/// A limit the user set in place of the table's.
struct LimitOverride {
  double value = 0;
  std::string why;
  std::string by{};  ///< who set it
  std::string extra{};
  bool operator==(const LimitOverride&) const = default;
};

struct Mute {
  std::string code;
  std::string subject;
  std::string reason;
  std::string by;
  std::string date;
  std::optional<double> measured;
  std::string fingerprint;  ///< of what it was given for, where nothing was measured
  std::string extra;
  bool operator==(const Mute&) const = default;
};

/// A named variant of the layout: whole members that stand in for the top-level ones.
struct Alternative {
  std::string id;
  std::string name;
  std::optional<Bore> bore;
  std::optional<Pipe> pipe;
  std::optional<Pits> pits;
  std::optional<Air> air;
  std::vector<std::string> locks;
  std::string extra;
  bool operator==(const Alternative&) const = default;
};

struct SheetSettings {
  std::optional<std::string> paper;
  std::optional<double> scale;
  Given<Ratio> vertical_exaggeration{Ratio{1.0}};
  std::optional<UnitSystem> units;
  std::string number;
  std::string revision;
  std::string drawn_by;
  std::string checked_by;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const SheetSettings&) const = default;
};

/// A key of the file that this program does not know and that looks like one it does.
struct UnknownKey {
  std::string pointer;  ///< of the object it stands in
  std::string key;
  std::string like;
  bool operator==(const UnknownKey&) const = default;
};

struct Crossing {
  int version = 1;  ///< of the file; a newer one opens read-only
  std::string name;
  std::string notes;
  Site site;
  Bore bore;
  std::optional<Pipe> pipe;
  Pits pits;
  Air air;
  Permit permit;
  std::vector<DayRecord> record;
  std::map<std::string, LimitOverride> limits;
  std::vector<std::string> locks;  ///< JSON pointers
  std::vector<Mute> muted;
  std::vector<Alternative> alternatives;
  std::string practice;  ///< JSON text of a practice bore, empty: none
  SheetSettings sheet;
  std::vector<UnknownKey> unknown_keys;  ///< found on reading, never written
  std::string extra;
  bool operator==(const Crossing&) const = default;
};

/// The newest file version that this program knows.
inline constexpr int known_file_version = 1;

/// The crossing with the members of one alternative in force. An unknown id gives the crossing unchanged.
Crossing with_alternative(const Crossing& crossing, std::string_view id);

/// An id that is not in use anywhere in the file: "u7" for prefix "u".
std::string free_id(const Crossing& crossing, std::string_view prefix);

}  // namespace burrow
