#include "burrow/air/changes.h"

#include <algorithm>
#include <array>
#include <limits>

namespace burrow {

namespace {

constexpr double trade_bores_m[] = {0.013, 0.016, 0.019, 0.025, 0.032, 0.038, 0.051, 0.064, 0.076};

std::optional<AirChange> wider(const Air& air) {
  AirChange change{AirChangeKind::wider_hose, std::numeric_limits<double>::max(), 0, {}, {}, air};
  for (const AirPart& part : air.line)
    if (part.kind == AirPartKind::hose && part.bore) change.from = std::min(change.from, part.bore->m);
  // Half inch is 12.7 mm: what is nearly a trade size counts as that size.
  const auto next = std::upper_bound(std::begin(trade_bores_m), std::end(trade_bores_m), change.from * 1.05);
  if (next == std::end(trade_bores_m)) return std::nullopt;
  change.to = *next;
  for (AirPart& part : change.air.line)
    if (part.bore && part.bore->m == change.from) part.bore = Length{change.to};
  return change;
}

std::optional<AirChange> shorter(const Air& air) {
  AirChange change{AirChangeKind::shorter_hose, 0, 0, {}, {}, air};
  AirPart* longest = nullptr;
  for (AirPart& part : change.air.line)
    if (part.kind == AirPartKind::hose && part.length && part.length->m > change.from) {
      change.from = part.length->m;
      longest = &part;
    }
  if (!longest) return std::nullopt;
  change.to = change.from / 2;
  longest->length = Length{change.to};
  return change;
}

std::optional<AirChange> fewer(const Air& air) {
  AirChange change{AirChangeKind::fewer_couplings, 0, 0, {}, {}, air};
  std::int64_t all = 0;
  for (const AirPart& part : air.line)
    if (part.kind == AirPartKind::coupling) all += std::min<std::int64_t>(*part.count, 1000000);
  if (all < 1) return std::nullopt;
  std::int64_t away = (all + 1) / 2;
  change.from = static_cast<double>(all);
  change.to = static_cast<double>(all - away);
  for (AirPart& part : change.air.line) {
    if (part.kind != AirPartKind::coupling) continue;
    const std::int64_t here = std::min(away, std::min<std::int64_t>(*part.count, 1000000));
    part.count.set(std::min<std::int64_t>(*part.count, 1000000) - here);
    away -= here;
  }
  return change;
}

std::optional<AirChange> larger(const Air& air, const AirSupply& now) {
  if (now.held_by != AirHeldBy::compressor) return std::nullopt;
  AirChange change{AirChangeKind::larger_compressor, now.compressor_gives.m3_s, now.would_take.m3_s, {}, {}, air};
  // A hair more, so that rounding does not leave it too small again.
  change.air.compressor.free_air = VolumeFlow{now.would_take.m3_s * (1 + 1e-9)};
  return change;
}

std::optional<AirChange> more(const Air& air, const AirSupply& now, Pressure most) {
  if (now.held_by != AirHeldBy::line) return std::nullopt;
  const Compressor& compressor = air.compressor;
  const bool regulated = compressor.regulator && *compressor.regulator < *compressor.pressure;
  if (regulated) most = std::min(most, *compressor.pressure);
  const double set = standing_pressure(compressor)->Pa, lost = now.line_most.Pa - now.at_tool.Pa;
  AirChange change{AirChangeKind::more_pressure, set, std::min(set + lost, most.Pa), {}, {}, air};
  if (!(change.to > change.from)) return std::nullopt;
  (regulated ? change.air.compressor.regulator : change.air.compressor.pressure) = Pressure{change.to};
  return change;
}

}  // namespace

std::optional<Pressure> least_rating(const std::vector<AirPart>& line) {
  std::optional<Pressure> least;
  for (const AirPart& part : line)
    if (part.rating && !(least && *least <= *part.rating)) least = part.rating;
  return least;
}

Result<std::vector<AirChange>> air_changes(const Air& air, const Tool& tool, Pressure most) {
  const Result<AirSupply> now = supply_tool(air, tool);
  if (!now) return tl::unexpected(now.error());
  most = std::min(most, least_rating(air.line).value_or(most));
  std::vector<AirChange> changes;
  for (std::optional<AirChange>& change :
       std::array{wider(air), shorter(air), fewer(air), larger(air, *now), more(air, *now, most)}) {
    if (!change) continue;
    const Result<AirSupply> then = supply_tool(change->air, tool);
    if (!then) continue;
    change->at_tool = then->at_tool;
    change->gain = {then->at_tool.Pa - now->at_tool.Pa};
    if (change->gain.Pa >= 100) changes.push_back(std::move(*change));
  }
  std::stable_sort(changes.begin(), changes.end(),
                   [](const AirChange& a, const AirChange& b) { return a.gain > b.gain; });
  return changes;
}

}  // namespace burrow
