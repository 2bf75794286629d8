#pragma once
/// What to change about compressor and line so that more pressure stands at the tool.

#include <optional>
#include <string_view>
#include <vector>

#include "burrow/air/supply.h"

namespace burrow {

enum class AirChangeKind { wider_hose, shorter_hose, fewer_couplings, larger_compressor, more_pressure };
template <>
struct EnumNames<AirChangeKind> {
  static constexpr std::pair<AirChangeKind, std::string_view> list[] = {
      {AirChangeKind::wider_hose, "wider-hose"},
      {AirChangeKind::shorter_hose, "shorter-hose"},
      {AirChangeKind::fewer_couplings, "fewer-couplings"},
      {AirChangeKind::larger_compressor, "larger-compressor"},
      {AirChangeKind::more_pressure, "more-pressure"}};
};

struct AirChange {
  AirChangeKind kind = AirChangeKind::wider_hose;
  double from = 0, to = 0;  ///< SI: bore, length of hose, number of couplings, free air, pressure
  Pressure at_tool;         ///< with it, gauge
  Pressure gain;
  Air air;  ///< as it would stand
  bool operator==(const AirChange&) const = default;
};

/// Each change by itself, solved anew; those that gain less than 100 Pa left out; the most first. Wider: every hose of
/// the narrowest bore one trade size up (13, 16, 19, 25, 32, 38, 51, 64, 76 mm). Shorter: the longest hose half as
/// long. Fewer: half of all couplings, at least one. Larger: as much free air as the tool would take. More: the
/// pressure turned up by as much as is lost, where the compressor is not too small; never so far that more stands in
/// the line at a stalled tool than `most` or than a part of it is rated for. With a regulator that one is turned up.
/// Source: our default (the steps), as `supply.h` (the effects).   Errors: as `supply_tool`.
/// Evidence: AirChanges.*
Result<std::vector<AirChange>> air_changes(const Air& air, const Tool& tool, Pressure most = {1e9});

/// The lowest rating of the parts of a line; nothing where none is entered.
std::optional<Pressure> least_rating(const std::vector<AirPart>& line);

}  // namespace burrow
