#pragma once
/// Tool, launch, exit and the constants of the path model, as entered.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/given.h"
#include "burrow/base/quantity.h"
#include "burrow/crossing/utility.h"

namespace burrow {

/// A class of `resources/tables/tools.json`; the maker's plate overrides single values.
struct ToolChoice {
  std::string tool_class;  ///< empty: every value is typed
  std::optional<Length> diameter;
  std::optional<Length> length;
  std::optional<Mass> mass;
  std::optional<Length> piston_diameter;
  std::optional<Length> stroke;
  std::optional<Mass> striker_mass;
  std::optional<Frequency> blow_rate;
  std::optional<Pressure> pressure;
  std::optional<VolumeFlow> free_air;
  std::string extra;
  bool operator==(const ToolChoice&) const = default;
};

/// Where the axis of the hole starts, and how well it is set. The launch face is the upright plane at `station`.
struct Launch {
  Length station;
  Given<Length> offset;
  Length elevation;
  Ratio grade;           ///< dz/dx, positive up
  Given<Angle> heading;  ///< positive left, 0 along the line
  Given<Length> position_sd{Length{0.005}};
  Given<Angle> level_sd{Angle{0.005}};
  Given<Angle> aim_sd{Angle{0.005}};
  std::optional<Length> sight_base;
  std::string extra;
  bool operator==(const Launch&) const = default;
};

struct Exit {
  Length station;
  Given<Length> offset;
  std::string extra;
  bool operator==(const Exit&) const = default;
};

struct TrialsRequest {
  Given<std::int64_t> count{20000};
  Given<std::int64_t> seed{1};
  std::string extra;
  bool operator==(const TrialsRequest&) const = default;
};

struct ModelConstants {
  Given<Ratio> steer_constant{Ratio{0.04}};
  Given<Ratio> steer_constant_sd{Ratio{0.03}};
  Given<Ratio> field_factor{Ratio{0.3}};
  Given<std::int64_t> calibrated_from{0};       ///< number of bores
  std::vector<std::string> calibrated_records;  ///< the records those were; written by the program, never typed
  std::string extra;
  bool operator==(const ModelConstants&) const = default;
};

struct Bore {
  ToolChoice tool;
  Launch launch;
  Exit exit;
  TrialsRequest trials;
  ModelConstants model;
  Statement head_located;  ///< how the head is located all the while it runs
  std::string extra;
  bool operator==(const Bore&) const = default;
};

}  // namespace burrow
