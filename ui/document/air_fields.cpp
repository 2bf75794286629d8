#include "burrow/document/air_fields.h"

#include <algorithm>
#include <utility>

#include "burrow/check/hose_marks.h"
#include "number_field.h"

namespace burrow {

namespace {

const auto air_of = [](auto& c) { return &c.air; };

/// The bore a fitting takes where none is typed, as the line is computed.
Typed bore_before(const Air& air, std::size_t part) {
  Typed bore;
  for (std::size_t i = 0; i < air.line.size(); ++i) {
    const AirPart& one = air.line[i];
    if (one.kind != AirPartKind::hose || !one.bore) continue;
    if (i > part && bore) break;
    bore = one.bore->m;
    if (i > part) break;
  }
  return bore;
}

}  // namespace

std::vector<Field> compressor_fields(const Crossing& crossing) {
  const auto field = [&](const char* label, Dimension dimension, FieldRange range, auto member) {
    return number_field(
        crossing, label, dimension, range, [](auto& c) { return &c.air.compressor; }, member);
  };
  return {field("free air it gives", Dimension::flow, {0.0005, 10}, &Compressor::free_air),
          field("pressure it holds", Dimension::air_pressure, {1e4, 5e6}, &Compressor::pressure),
          field("regulator set to", Dimension::air_pressure, {1e4, 5e6}, &Compressor::regulator)};
}

std::vector<Field> site_air_fields(const Crossing& crossing) {
  return {number_field(crossing, "height above the sea", Dimension::station, {-430, 6000}, air_of, &Air::altitude),
          number_field(crossing, "air temperature", Dimension::temperature, {233.15, 328.15}, air_of,
                       &Air::air_temperature),
          number_field(crossing, "relative humidity", Dimension::chance, {0, 1}, air_of, &Air::relative_humidity)};
}

std::vector<Field> air_part_fields(const Crossing& crossing, std::size_t part) {
  if (part >= crossing.air.line.size()) return {};
  const AirPart& now = crossing.air.line[part];
  const auto field = [&](const char* label, Dimension dimension, FieldRange range, auto member,
                         Typed stands = std::nullopt) {
    const auto one = [part](auto& c) { return part < c.air.line.size() ? &c.air.line[part] : nullptr; };
    return number_field(crossing, label, dimension, range, one, member, stands);
  };
  const bool hose = now.kind == AirPartKind::hose;
  std::vector<Field> fields;
  if (hose) fields.push_back(field("length", Dimension::length, {0, 1000}, &AirPart::length));
  fields.push_back(field("bore", Dimension::small_length, {0.003, 0.3}, &AirPart::bore,
                         hose ? std::nullopt : bore_before(crossing.air, part)));
  if (hose) {
    // A twentieth of a millimetre does not show in millimetres or inches.
    constexpr double per_m = 1e6;
    const double most = now.bore ? std::min(0.01, 0.05 * now.bore->m) : 0.001;
    fields.push_back(times(
        field("roughness inside, µm (25 µm are 0.001 in)", Dimension::ratio, {0, most * per_m}, &AirPart::roughness),
        per_m));
  } else {
    fields.push_back(field("how many", Dimension::count, {0, 1000}, &AirPart::count));
    fields.push_back(field("each resists like hose of", Dimension::length, {0, 100}, &AirPart::equivalent_length,
                           now.kind == AirPartKind::coupling ? coupling_equivalent_m : lubricator_equivalent_m));
  }
  fields.push_back(field("rated for", Dimension::air_pressure, {1e4, 1e8}, &AirPart::rating));
  return fields;
}

std::vector<Field> oil_fields(const Crossing& crossing, const AirAnswer& answer) {
  const auto oil = [](auto& c) { return &c.air.oil; };
  const bool typed = crossing.air.oil.rate.has_value();
  return {number_field(crossing, "first fill", Dimension::small_volume, {0, 0.01}, oil, &Oil::first_fill),
          number_field(crossing, "consumption", Dimension::small_flow, {0, 1e-6}, oil, &Oil::rate,
                       typed ? std::nullopt : Typed(answer.oil.rate.m3_s))};
}

std::vector<Field> hose_mark_fields(const Crossing& crossing) {
  Field every = number_field(crossing, "a mark every", Dimension::length, {0.25, 50}, air_of, &Air::mark_spacing);
  every.value = every.default_value = mark_spacing(crossing).m;
  return {std::move(every),
          number_field(crossing, "tail fitting, tool to hose", Dimension::length, {0, 5}, air_of, &Air::tail_fitting)};
}

AirPart new_air_part(const Air& air, AirPartKind kind) {
  AirPart part;
  part.kind = kind;
  if (kind != AirPartKind::hose) return part;
  part.length = Length{15};
  part.bore = Length{0.019};
  for (const AirPart& other : air.line)
    if (other.kind == AirPartKind::hose && other.bore) part.bore = other.bore;
  return part;
}

}  // namespace burrow
