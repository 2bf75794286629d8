#pragma once
/// The product pipe, as entered.

#include <cstdint>
#include <optional>
#include <string>

#include "burrow/base/enum_names.h"
#include "burrow/base/given.h"
#include "burrow/base/quantity.h"

namespace burrow {

enum class Insertion { pulled_after, towed, pushed };
template <>
struct EnumNames<Insertion> {
  static constexpr std::pair<Insertion, std::string_view> list[] = {
      {Insertion::pulled_after, "pulled-after"}, {Insertion::towed, "towed"}, {Insertion::pushed, "pushed"}};
};

enum class PullBy { rope, hose, rod };
template <>
struct EnumNames<PullBy> {
  static constexpr std::pair<PullBy, std::string_view> list[] = {
      {PullBy::rope, "rope"}, {PullBy::hose, "hose"}, {PullBy::rod, "rod"}};
};

struct Pipe {
  std::string material;
  std::optional<Length> outside_diameter;
  std::optional<Ratio> sdr;
  std::optional<Length> wall;
  Given<std::int64_t> count{1};
  Given<Insertion> insertion{Insertion::pulled_after};
  Given<PullBy> pull_by{PullBy::rope};
  std::optional<Length> head_diameter;
  std::optional<Length> coupling_diameter;  ///< of what joins the pieces
  std::optional<Force> hose_rating;         ///< pull the maker of the hose allows; without it the hose carries none
  Given<Duration> pull_time{Duration{3600}};
  Given<Pressure> operating_pressure;
  Given<Temperature> temperature{Temperature{293.15}};  ///< on the day it is brought in
  std::optional<Temperature> service_temperature;       ///< warmest in use; empty: the warmest its material tells
  std::optional<Length> piece_length;
  std::string extra;
  bool operator==(const Pipe&) const = default;
};

}  // namespace burrow
