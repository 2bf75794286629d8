#pragma once
/// What lies below and how it is known: utilities, test holes, the search for them. Everything as entered; nothing
/// derived.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/geometry.h"
#include "burrow/base/given.h"
#include "burrow/base/quantity.h"

namespace burrow {

/// What somebody vouches for: how he knows it, who, when. It counts when all of it is entered, see `vouched`.
struct Statement {
  std::string how;
  std::string by;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const Statement&) const = default;
};

enum class UtilityKind { gas, power, water, sewer, telecom, reclaimed, steam, unknown, oil };
template <>
struct EnumNames<UtilityKind> {
  static constexpr std::pair<UtilityKind, std::string_view> list[] = {
      {UtilityKind::gas, "gas"},     {UtilityKind::power, "power"},     {UtilityKind::water, "water"},
      {UtilityKind::sewer, "sewer"}, {UtilityKind::telecom, "telecom"}, {UtilityKind::reclaimed, "reclaimed"},
      {UtilityKind::steam, "steam"}, {UtilityKind::unknown, "unknown"}, {UtilityKind::oil, "oil"}};
};

enum class UtilityStatus { live, abandoned, proposed, unknown };
template <>
struct EnumNames<UtilityStatus> {
  static constexpr std::pair<UtilityStatus, std::string_view> list[] = {{UtilityStatus::live, "live"},
                                                                        {UtilityStatus::abandoned, "abandoned"},
                                                                        {UtilityStatus::proposed, "proposed"},
                                                                        {UtilityStatus::unknown, "unknown"}};
};

enum class LocatedHow { exposed, traced_twice, traced, records, unknown };
template <>
struct EnumNames<LocatedHow> {
  static constexpr std::pair<LocatedHow, std::string_view> list[] = {{LocatedHow::exposed, "exposed"},
                                                                     {LocatedHow::traced_twice, "traced-twice"},
                                                                     {LocatedHow::traced, "traced"},
                                                                     {LocatedHow::records, "records"},
                                                                     {LocatedHow::unknown, "unknown"}};
};

enum class DiameterMeant { outside, inside, nominal };
template <>
struct EnumNames<DiameterMeant> {
  static constexpr std::pair<DiameterMeant, std::string_view> list[] = {
      {DiameterMeant::outside, "outside"}, {DiameterMeant::inside, "inside"}, {DiameterMeant::nominal, "nominal"}};
};

enum class LevelMeant { crown, centre, invert };
template <>
struct EnumNames<LevelMeant> {
  static constexpr std::pair<LevelMeant, std::string_view> list[] = {
      {LevelMeant::crown, "crown"}, {LevelMeant::centre, "centre"}, {LevelMeant::invert, "invert"}};
};

enum class DepthFrom { ground, datum };
template <>
struct EnumNames<DepthFrom> {
  static constexpr std::pair<DepthFrom, std::string_view> list[] = {{DepthFrom::ground, "ground"},
                                                                    {DepthFrom::datum, "datum"}};
};

/// What the record said, before it was turned into a centre line.
struct Recorded {
  std::optional<DiameterMeant> diameter;
  std::optional<LevelMeant> level;
  std::optional<DepthFrom> from;
  std::string source;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const Recorded&) const = default;
};

/// What a tracing of a line that does not conduct followed.
enum class TracedBy { wire, sonde, none };
template <>
struct EnumNames<TracedBy> {
  static constexpr std::pair<TracedBy, std::string_view> list[] = {
      {TracedBy::wire, "wire"}, {TracedBy::sonde, "sonde"}, {TracedBy::none, "none"}};
};

struct Located {
  Given<LocatedHow> how{LocatedHow::unknown};
  std::optional<std::string> level;  ///< name of a locating preset
  std::optional<Length> lateral_sd;
  std::optional<Length> vertical_sd;
  std::optional<TracedBy> tracer;  ///< asked where the line itself does not conduct
  std::optional<std::string> date;
  /// Day on which its line was dragged on the drawing: until a later `date` its place is nobody's finding.
  std::optional<std::string> moved;
  std::string extra;
  bool operator==(const Located&) const = default;
};

/// Why a line that is drawn to here ends here; `edge_of_record`: the record ends, the line goes on.
enum class LineEnd { house_connection, cap, pole, pit, chamber, edge_of_record };
template <>
struct EnumNames<LineEnd> {
  static constexpr std::pair<LineEnd, std::string_view> list[] = {{LineEnd::house_connection, "house-connection"},
                                                                  {LineEnd::cap, "cap"},
                                                                  {LineEnd::pole, "pole"},
                                                                  {LineEnd::pit, "pit"},
                                                                  {LineEnd::chamber, "chamber"},
                                                                  {LineEnd::edge_of_record, "edge-of-record"}};
};

/// What was declared of the first and the last vertex of a line; empty: nobody said why it ends there.
struct LineEnds {
  std::optional<LineEnd> first, last;
  std::string extra;
  bool operator==(const LineEnds&) const = default;
};

/// The gap that the owner of a line agreed to for displacing the ground beside it.
struct AgreedGap {
  std::optional<Length> distance;
  std::string with;  ///< who agreed, for the owner
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const AgreedGap&) const = default;
};

struct Utility {
  std::string id;
  std::string name;
  std::string owner;
  UtilityKind kind = UtilityKind::unknown;
  Given<UtilityStatus> status{UtilityStatus::unknown};
  std::string material;
  std::optional<Length> outside_diameter;
  std::vector<PathVertex> path;  ///< always the centre line
  LineEnds ends;
  Statement abandonment;  ///< how it was proved to be out of use
  Recorded recorded;
  Located located;
  std::optional<Length> required_clearance;
  AgreedGap agreed;
  std::string precaution;
  std::string extra;
  bool operator==(const Utility&) const = default;
};

struct TestHole {
  std::string id;
  std::string utility;
  Length station;
  Length offset;
  Given<LevelMeant> level{LevelMeant::crown};
  std::optional<Length> elevation;
  Given<Length> sd{Length{0.02}};
  Given<Length> reach{Length{3.0}};
  std::optional<std::string> date;
  std::string by;     ///< who measured
  std::string photo;  ///< of the line as it lay there, by its path
  Statement agreed;   ///< it counts though it contradicts the record
  std::string extra;
  bool operator==(const TestHole&) const = default;
};

enum class Laterals { entered, none_here, not_checked };
template <>
struct EnumNames<Laterals> {
  static constexpr std::pair<Laterals, std::string_view> list[] = {
      {Laterals::entered, "entered"}, {Laterals::none_here, "none-here"}, {Laterals::not_checked, "not-checked"}};
};

enum class CameraResult { nothing_found, something_found };
template <>
struct EnumNames<CameraResult> {
  static constexpr std::pair<CameraResult, std::string_view> list[] = {
      {CameraResult::nothing_found, "nothing-found"}, {CameraResult::something_found, "something-found"}};
};

/// Sewers and drains near the bore looked through by camera; without a result it was not done, or not yet seen.
struct CameraSurvey {
  std::optional<CameraResult> result;
  std::string reference;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const CameraSurvey&) const = default;
};

/// Whether the utilities were asked for and searched.
struct UtilitySearch {
  std::optional<bool> done;
  std::string reference;
  std::optional<std::string> date;
  std::optional<std::string> valid_from, valid_to;  ///< as the ticket says
  std::optional<bool> marks_visible;                ///< the marks on the ground can still be seen
  Given<bool> none_found{false};
  std::optional<Laterals> laterals;
  Given<RatePerArea> unknown_rate;
  CameraSurvey camera_before;  ///< the bore
  CameraSurvey camera_after;
  std::string extra;
  bool operator==(const UtilitySearch&) const = default;
};

}  // namespace burrow
