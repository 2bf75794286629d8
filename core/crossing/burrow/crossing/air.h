#pragma once
/// Compressor, hose and oil, as entered.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/given.h"
#include "burrow/base/quantity.h"

namespace burrow {

struct Compressor {
  std::string name;
  std::optional<VolumeFlow> free_air;
  std::optional<Pressure> pressure;
  std::optional<Pressure> regulator;  ///< set behind the compressor; empty: none
  std::string extra;
  bool operator==(const Compressor&) const = default;
};

enum class AirPartKind { hose, coupling, lubricator };
template <>
struct EnumNames<AirPartKind> {
  static constexpr std::pair<AirPartKind, std::string_view> list[] = {
      {AirPartKind::hose, "hose"}, {AirPartKind::coupling, "coupling"}, {AirPartKind::lubricator, "lubricator"}};
};

struct AirPart {
  AirPartKind kind = AirPartKind::hose;
  std::optional<Length> length;
  std::optional<Length> bore;
  Given<Length> roughness{Length{0.00005}};
  Given<std::int64_t> count{1};
  std::optional<Length> equivalent_length;
  std::optional<Pressure> rating;  ///< working pressure its maker allows
  std::string extra;
  bool operator==(const AirPart&) const = default;
};

struct Oil {
  Given<Volume> first_fill{Volume{0.00012}};
  std::optional<VolumeFlow> rate;
  std::string extra;
  bool operator==(const Oil&) const = default;
};

struct Air {
  Compressor compressor;
  Given<Length> altitude;
  Given<Temperature> air_temperature{Temperature{288.15}};
  std::optional<Ratio> relative_humidity;
  std::vector<AirPart> line;
  Oil oil;
  Given<Length> mark_spacing{Length{1.5}};
  Given<Length> tail_fitting{Length{0.15}};
  std::string extra;
  bool operator==(const Air&) const = default;
};

}  // namespace burrow
