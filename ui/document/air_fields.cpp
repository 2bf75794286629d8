#include "burrow/document/air_fields.h"

#include <algorithm>
#include <utility>

#include "burrow/check/hose_marks.h"

namespace burrow {

namespace {

using Typed = std::optional<double>;

/// A number of the air line; `set` writes it, an empty one goes back to what stands without it.
template <class Set>
Field air_field(std::string label, Dimension dimension, Typed value, bool entered, double low, double high,
                Typed default_value, Set set) {
  Field field;
  field.label = std::move(label);
  field.dimension = dimension;
  field.value = value;
  field.entered = entered;
  field.may_be_empty = true;
  field.low = low;
  field.high = high;
  field.default_value = default_value;
  field.apply = [set](const Crossing& c, Typed v) -> ItemValue {
    Air air = c.air;
    set(air, v);
    return air;
  };
  return field;
}

template <class T>
Typed number(const std::optional<T>& value, double T::*member) {
  return value ? Typed((*value).*member) : std::nullopt;
}

/// A value with a default: empty puts the default back.
template <class T>
Field given_field(std::string label, Dimension dimension, const Given<T>& now, double T::*member, double low,
                  double high, Given<T> Air::*where) {
  return air_field(std::move(label), dimension, (*now).*member, now.entered, low, high, (*(Air{}.*where)).*member,
                   [where](Air& air, Typed v) {
                     air.*where = Air{}.*where;
                     if (v) (air.*where).set(T{*v});
                   });
}

/// A number of one part of the line. A part that is gone is left alone.
template <class Set>
Field part_field(std::size_t part, std::string label, Dimension dimension, Typed value, double low, double high,
                 Typed default_value, Set set) {
  return air_field(std::move(label), dimension, value, value.has_value(), low, high, default_value,
                   [part, set](Air& air, Typed v) {
                     if (part < air.line.size()) set(air.line[part], v);
                   });
}

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
  const Compressor& now = crossing.air.compressor;
  return {
      air_field("free air it gives", Dimension::flow, number(now.free_air, &VolumeFlow::m3_s), now.free_air.has_value(),
                0.0005, 10, std::nullopt,
                [](Air& air, Typed v) { air.compressor.free_air = v ? std::optional(VolumeFlow{*v}) : std::nullopt; }),
      air_field("pressure it holds", Dimension::air_pressure, number(now.pressure, &Pressure::Pa),
                now.pressure.has_value(), 1e4, 5e6, std::nullopt,
                [](Air& air, Typed v) { air.compressor.pressure = v ? std::optional(Pressure{*v}) : std::nullopt; }),
      air_field("regulator set to", Dimension::air_pressure, number(now.regulator, &Pressure::Pa),
                now.regulator.has_value(), 1e4, 5e6, std::nullopt,
                [](Air& air, Typed v) { air.compressor.regulator = v ? std::optional(Pressure{*v}) : std::nullopt; })};
}

std::vector<Field> site_air_fields(const Crossing& crossing) {
  const Air& now = crossing.air;
  return {given_field("height above the sea", Dimension::station, now.altitude, &Length::m, -430, 6000, &Air::altitude),
          given_field("air temperature", Dimension::temperature, now.air_temperature, &Temperature::K, 233.15, 328.15,
                      &Air::air_temperature),
          air_field("relative humidity", Dimension::chance, number(now.relative_humidity, &Ratio::v),
                    now.relative_humidity.has_value(), 0, 1, std::nullopt,
                    [](Air& air, Typed v) { air.relative_humidity = v ? std::optional(Ratio{*v}) : std::nullopt; })};
}

std::vector<Field> air_part_fields(const Crossing& crossing, std::size_t part) {
  if (part >= crossing.air.line.size()) return {};
  const AirPart& now = crossing.air.line[part];
  const auto length = [](std::optional<Length> AirPart::*member) {
    return [member](AirPart& p, Typed v) { p.*member = v ? std::optional(Length{*v}) : std::nullopt; };
  };
  const bool hose = now.kind == AirPartKind::hose;
  std::vector<Field> fields;
  if (hose)
    fields.push_back(part_field(part, "length", Dimension::length, number(now.length, &Length::m), 0, 1000,
                                std::nullopt, length(&AirPart::length)));
  fields.push_back(part_field(part, "bore", Dimension::small_length, number(now.bore, &Length::m), 0.003, 0.3,
                              hose ? std::nullopt : bore_before(crossing.air, part), length(&AirPart::bore)));
  if (hose) {
    // A twentieth of a millimetre does not show in millimetres or inches.
    const double most = now.bore ? std::min(0.01, 0.05 * now.bore->m) : 0.001;
    fields.push_back(part_field(part, "roughness inside, µm (25 µm are 0.001 in)", Dimension::ratio,
                                now.roughness.entered ? Typed(now.roughness->m * 1e6) : std::nullopt, 0, most * 1e6,
                                AirPart{}.roughness->m * 1e6, [](AirPart& p, Typed v) {
                                  p.roughness = AirPart{}.roughness;
                                  if (v) p.roughness.set(Length{*v * 1e-6});
                                }));
  } else {
    fields.push_back(part_field(part, "how many", Dimension::count,
                                now.count.entered ? Typed(static_cast<double>(*now.count)) : std::nullopt, 0, 1000, 1,
                                [](AirPart& p, Typed v) {
                                  p.count = AirPart{}.count;
                                  if (v) p.count.set(static_cast<std::int64_t>(*v));
                                }));
    fields.push_back(part_field(part, "each resists like hose of", Dimension::length,
                                number(now.equivalent_length, &Length::m), 0, 100,
                                now.kind == AirPartKind::coupling ? coupling_equivalent_m : lubricator_equivalent_m,
                                length(&AirPart::equivalent_length)));
  }
  fields.push_back(part_field(part, "rated for", Dimension::air_pressure, number(now.rating, &Pressure::Pa), 1e4, 1e8,
                              std::nullopt,
                              [](AirPart& p, Typed v) { p.rating = v ? std::optional(Pressure{*v}) : std::nullopt; }));
  return fields;
}

std::vector<Field> oil_fields(const Crossing& crossing, const AirAnswer& answer) {
  const Oil& now = crossing.air.oil;
  return {air_field("first fill", Dimension::small_volume, now.first_fill->m3, now.first_fill.entered, 0, 0.01,
                    Oil{}.first_fill->m3,
                    [](Air& air, Typed v) {
                      air.oil.first_fill = Oil{}.first_fill;
                      if (v) air.oil.first_fill.set(Volume{*v});
                    }),
          air_field("consumption", Dimension::small_flow, number(now.rate, &VolumeFlow::m3_s), now.rate.has_value(), 0,
                    1e-6, now.rate ? std::nullopt : Typed(answer.oil.rate.m3_s),
                    [](Air& air, Typed v) { air.oil.rate = v ? std::optional(VolumeFlow{*v}) : std::nullopt; })};
}

std::vector<Field> hose_mark_fields(const Crossing& crossing) {
  const Air& now = crossing.air;
  const double every = mark_spacing(crossing).m;
  return {air_field("a mark every", Dimension::length, every, now.mark_spacing.entered, 0.25, 50, every,
                    [](Air& air, Typed v) {
                      air.mark_spacing = Air{}.mark_spacing;
                      if (v) air.mark_spacing.set(Length{*v});
                    }),
          given_field("tail fitting, tool to hose", Dimension::length, now.tail_fitting, &Length::m, 0, 5,
                      &Air::tail_fitting)};
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
