#pragma once
/// What was read on the day, as entered.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/quantity.h"
#include "burrow/crossing/bore.h"
#include "burrow/crossing/pipe.h"
#include "burrow/crossing/utility.h"

namespace burrow {

/// `danger`: somebody tapped the one button for what was struck, smelt, heard; `done`: tasks of the run sheet ticked
/// off.
enum class ReadingKind {
  start,
  mark,
  grade,
  heading,
  fix,
  pressure,
  peg,
  stop,
  go,
  back,
  arrival,
  end,
  note,
  danger,
  done
};
template <>
struct EnumNames<ReadingKind> {
  static constexpr std::pair<ReadingKind, std::string_view> list[] = {
      {ReadingKind::start, "start"},     {ReadingKind::mark, "mark"},       {ReadingKind::grade, "grade"},
      {ReadingKind::heading, "heading"}, {ReadingKind::fix, "fix"},         {ReadingKind::pressure, "pressure"},
      {ReadingKind::peg, "peg"},         {ReadingKind::stop, "stop"},       {ReadingKind::go, "go"},
      {ReadingKind::back, "back"},       {ReadingKind::arrival, "arrival"}, {ReadingKind::end, "end"},
      {ReadingKind::note, "note"},       {ReadingKind::danger, "danger"},   {ReadingKind::done, "done"}};
};

/// What was noticed; said after everybody is out, or never.
enum class DangerSign { struck, smell, hiss, water, smoke, ground_moves, lights_fail, other };
template <>
struct EnumNames<DangerSign> {
  static constexpr std::pair<DangerSign, std::string_view> list[] = {{DangerSign::struck, "struck"},
                                                                     {DangerSign::smell, "smell"},
                                                                     {DangerSign::hiss, "hiss"},
                                                                     {DangerSign::water, "water"},
                                                                     {DangerSign::smoke, "smoke"},
                                                                     {DangerSign::ground_moves, "ground-moves"},
                                                                     {DangerSign::lights_fail, "lights-fail"},
                                                                     {DangerSign::other, "other"}};
};

enum class EndHow { arrived, backed_out, stuck, daylight, struck, lost };
template <>
struct EnumNames<EndHow> {
  static constexpr std::pair<EndHow, std::string_view> list[] = {
      {EndHow::arrived, "arrived"},   {EndHow::backed_out, "backed-out"}, {EndHow::stuck, "stuck"},
      {EndHow::daylight, "daylight"}, {EndHow::struck, "struck"},         {EndHow::lost, "lost"}};
};

/// One reading; which members it has depends on its kind.
struct Reading {
  ReadingKind kind = ReadingKind::note;
  Duration time;
  std::optional<Length> nose;  ///< arc length of the nose from the launch face
  std::optional<Ratio> grade;
  std::optional<Angle> heading;
  std::optional<Angle> angle_sd;
  std::optional<Length> station;
  std::optional<Length> offset;
  std::optional<Length> depth;
  std::optional<Length> elevation;
  std::optional<Length> sd;
  std::optional<Length> lateral_sd;
  std::optional<Length> vertical_sd;
  std::optional<Pressure> pressure;
  std::optional<std::string> at;
  std::optional<Length> rise;
  std::optional<std::string> why;
  std::optional<EndHow> how;
  std::optional<std::string> text;
  std::optional<DangerSign> sign;
  std::vector<std::string> tasks;        ///< words of the run sheet's tasks that are done
  std::optional<bool> confirmed;         ///< it was asked about, and stands
  std::optional<std::string> cancelled;  ///< struck through, with the reason; it stays in the record and counts no more
  std::string extra;
  bool operator==(const Reading&) const = default;
};

/// The layout as it was when the tool was started: tool and launch stand in the bore. Empty: a record of before, of
/// which nobody knows.
struct KeptLayout {
  std::optional<Bore> bore;
  std::optional<Pipe> pipe;
  std::string extra;
  bool operator==(const KeptLayout&) const = default;
};

/// A finding that stood there when somebody took the start on; one that got worse since was not taken on.
struct TakenOnFinding {
  std::string code;
  std::string subject;
  std::optional<double> margin;  ///< as of the finding
  std::string extra;
  bool operator==(const TakenOnFinding&) const = default;
};

/// Who took it on to start though the verdict is stop or incomplete.
struct TakenOn {
  std::string by;
  std::string why;
  std::optional<std::string> date;
  std::vector<TakenOnFinding> findings;
  std::string extra;
  bool operator==(const TakenOn&) const = default;
};

/// What became of a hole that was given up.
enum class HoleState { grouted, dug_out, open, tool_inside };
template <>
struct EnumNames<HoleState> {
  static constexpr std::pair<HoleState, std::string_view> list[] = {{HoleState::grouted, "grouted"},
                                                                    {HoleState::dug_out, "dug-out"},
                                                                    {HoleState::open, "open"},
                                                                    {HoleState::tool_inside, "tool-inside"}};
};

/// How the pipe went in.
struct PullIn {
  std::optional<std::string> date;
  std::string by;
  std::string what;                  ///< pipe, length
  std::optional<Force> peak;         ///< the most that was read
  std::optional<Force> link_rating;  ///< of the link that breaks before the pipe does
  std::string watched_by;            ///< who watched for strikes at both ends
  std::string extra;
  bool operator==(const PullIn&) const = default;
};

/// A picture, by its path from the folder of the crossing.
struct RecordPhoto {
  std::string path;
  std::string what;
  std::string extra;
  bool operator==(const RecordPhoto&) const = default;
};

/// After the bore: what became of the hole, the pull-in, what is closed up and shown.
struct Aftermath {
  std::optional<HoleState> hole;  ///< of one that was given up
  Statement released;             ///< who let the work go on after trouble, how it was seen to be safe
  PullIn pull_in;
  Statement grouted;  ///< what was left open around the pipe: how it was closed, by whom, when
  std::vector<RecordPhoto> photos;
  std::string extra;
  bool operator==(const Aftermath&) const = default;
};

struct DayRecord {
  std::string id;
  std::optional<std::string> started;
  std::string crew;
  std::optional<std::string> alternative;
  KeptLayout layout;
  std::optional<TakenOn> taken_on;
  std::vector<Reading> readings;
  Aftermath aftermath;
  std::string extra;
  bool operator==(const DayRecord&) const = default;
};

}  // namespace burrow
