#pragma once
/// What was read on the day, as entered.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/quantity.h"

namespace burrow {

enum class ReadingKind { start, mark, grade, heading, fix, pressure, peg, stop, go, back, arrival, end, note };
template <>
struct EnumNames<ReadingKind> {
  static constexpr std::pair<ReadingKind, std::string_view> list[] = {
      {ReadingKind::start, "start"},     {ReadingKind::mark, "mark"},       {ReadingKind::grade, "grade"},
      {ReadingKind::heading, "heading"}, {ReadingKind::fix, "fix"},         {ReadingKind::pressure, "pressure"},
      {ReadingKind::peg, "peg"},         {ReadingKind::stop, "stop"},       {ReadingKind::go, "go"},
      {ReadingKind::back, "back"},       {ReadingKind::arrival, "arrival"}, {ReadingKind::end, "end"},
      {ReadingKind::note, "note"}};
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
  std::string extra;
  bool operator==(const Reading&) const = default;
};

struct DayRecord {
  std::string id;
  std::optional<std::string> started;
  std::string crew;
  std::optional<std::string> alternative;
  std::vector<Reading> readings;
  std::string extra;
  bool operator==(const DayRecord&) const = default;
};

}  // namespace burrow
