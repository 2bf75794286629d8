#pragma once
/// What a supervisor is asked for before the first blow, as entered: who answers, whom to ring, who looked at what
/// today, who stands where, who signed.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/crossing/utility.h"

namespace burrow {

/// What is looked at each day before the tool is started.
enum class DailyItem { compressor, pressure, oil, hoses, whip_restraints, tape_marks, tool };
template <>
struct EnumNames<DailyItem> {
  static constexpr std::pair<DailyItem, std::string_view> list[] = {{DailyItem::compressor, "compressor"},
                                                                    {DailyItem::pressure, "pressure"},
                                                                    {DailyItem::oil, "oil"},
                                                                    {DailyItem::hoses, "hoses"},
                                                                    {DailyItem::whip_restraints, "whip-restraints"},
                                                                    {DailyItem::tape_marks, "tape-marks"},
                                                                    {DailyItem::tool, "tool"}};
};

/// It counts on its day alone.
struct DailyCheck {
  std::optional<std::string> date;
  std::string by;
  std::vector<std::string> done;  ///< words of `DailyItem`
  std::string extra;
  bool operator==(const DailyCheck&) const = default;
};

/// One who owns lines here.
struct OwnerContact {
  std::string owner;  ///< as with the utilities
  std::string phone;
  Statement answered;  ///< the positive response to the request: what, by whom, when
  std::string valve;   ///< where it is shut off
  std::string extra;
  bool operator==(const OwnerContact&) const = default;
};

enum class GoDecision { go, no_go };
template <>
struct EnumNames<GoDecision> {
  static constexpr std::pair<GoDecision, std::string_view> list[] = {{GoDecision::go, "go"},
                                                                     {GoDecision::no_go, "no-go"}};
};

/// Signed on the day of the bore; on any other day it counts no more.
struct GoSigned {
  std::optional<GoDecision> decision;
  std::string by;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const GoSigned&) const = default;
};

struct Permit {
  std::string emergency_phone;
  std::string locating_phone;
  std::vector<OwnerContact> owners;
  Statement pits_inspected;  ///< by the competent person, on the day
  DailyCheck daily;
  std::string at_air_valve;  ///< who stands there, with a radio to the watcher
  std::string at_exit;       ///< the watcher at the surface, off the line
  GoSigned supervisor, crew;
  std::string extra;
  bool operator==(const Permit&) const = default;
};

}  // namespace burrow
