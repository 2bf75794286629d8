#include "burrow/document/plate_and_soil_fields.h"

#include <algorithm>

#include "burrow/bore/tool.h"
#include "burrow/check/tool_plate.h"
#include "burrow/soil/soil.h"

namespace burrow {

namespace {

using Typed = std::optional<double>;

template <class Q>
Typed number_of(const std::optional<Q>& quantity, double Q::*number) {
  return quantity ? Typed((*quantity).*number) : std::nullopt;
}

template <class Q>
std::optional<Q> quantity_of(Typed value, double Q::*number) {
  if (!value) return std::nullopt;
  Q quantity;
  quantity.*number = *value;
  return quantity;
}

// Ranges lie within those of the file reader, so that whatever is taken can be opened again.
template <class Q>
Field plate_field(std::string label, Dimension dimension, const ToolChoice& plate, std::optional<Q> ToolChoice::*member,
                  double Q::*number, double class_values, double low, double high) {
  const bool alone = plate.tool_class.empty() && dimension == Dimension::small_length && label == "diameter";
  Field field{std::move(label),
              dimension,
              number_of(plate.*member, number),
              (plate.*member).has_value(),
              !alone,
              low,
              high,
              [member, number](const Crossing& c, Typed v) -> ItemValue {
                ToolChoice changed = c.bore.tool;
                changed.*member = quantity_of(v, number);
                return changed;
              }};
  if (!alone) field.default_value = class_values;
  return field;
}

/// A value of a stratum; `per` of it are shown as one ("stops in 100 m").
template <class Q>
Field soil_field(const ItemRef& part, std::string label, Dimension dimension, const Stratum& stratum,
                 std::optional<Q> SoilOverrides::*member, double Q::*number, double class_values, double low,
                 double high, double per = 1) {
  const auto times = [per](Typed v) { return v ? Typed(*v * per) : v; };
  Field field{std::move(label),
              dimension,
              times(number_of(stratum.values.*member, number)),
              (stratum.values.*member).has_value(),
              true,
              low,
              high,
              [part, member, number, per](const Crossing& c, Typed v) -> ItemValue {
                ItemValue all = value_of(c, part);
                if (auto& element = std::get<ListSlot<Stratum>>(all); element.value)
                  (*element.value).values.*member = quantity_of(v ? Typed(*v / per) : v, number);
                return all;
              }};
  field.default_value = class_values * per;
  return field;
}

template <class T>
Field model_field(std::string label, Dimension dimension, const ModelConstants& model, Given<T> ModelConstants::*member,
                  double (*number)(const T&), T (*value_of)(double), double low, double high) {
  Field field{std::move(label),
              dimension,
              number(*(model.*member)),
              (model.*member).entered,
              true,
              low,
              high,
              [member, value_of](const Crossing& c, Typed v) -> ItemValue {
                ModelConstants changed = c.bore.model;
                changed.*member = ModelConstants{}.*member;
                if (v) (changed.*member).set(value_of(*v));
                return changed;
              }};
  field.default_value = number(*(ModelConstants{}.*member));
  return field;
}

}  // namespace

std::vector<Field> plate_fields(const Crossing& crossing, const Tables& tables) {
  const ToolChoice& plate = crossing.bore.tool;
  ToolChoice bare;  // what would stand with nothing typed
  bare.tool_class = plate.tool_class;
  if (plate.tool_class.empty()) bare.diameter = plate.diameter;
  if (plate.tool_class.empty() && !plate.diameter) return {};
  const Tool class_values = resolve_tool(bare, tables);
  const Tool now = resolve_tool(plate, tables);
  // A striker as heavy as its tool, or a piston as wide, is a slip of the finger. What only follows from the diameter
  // holds nothing back.
  const bool of_class = !plate.tool_class.empty();
  const double piston_m = of_class || plate.piston_diameter ? now.piston_diameter.m : 0;
  const double striker_kg = of_class || plate.striker_mass ? now.striker_mass.kg : 0;
  std::vector<Field> all{
      plate_field("diameter", Dimension::small_length, plate, &ToolChoice::diameter, &Length::m,
                  class_values.diameter.m, std::max(0.01, piston_m), 5),
      plate_field("length", Dimension::length, plate, &ToolChoice::length, &Length::m, class_values.length.m, 0.1, 20),
      plate_field("mass", Dimension::mass, plate, &ToolChoice::mass, &Mass::kg, class_values.mass.kg,
                  std::max(0.1, 1.01 * striker_kg), 1e5),
      plate_field("piston diameter", Dimension::small_length, plate, &ToolChoice::piston_diameter, &Length::m,
                  class_values.piston_diameter.m, 0.005, now.diameter.m),
      plate_field("stroke of the striker", Dimension::small_length, plate, &ToolChoice::stroke, &Length::m,
                  class_values.stroke.m, 0.001, now.length.m),
      plate_field("mass of the striker", Dimension::mass, plate, &ToolChoice::striker_mass, &Mass::kg,
                  class_values.striker_mass.kg, 0.1, 0.99 * now.mass.kg),
      plate_field("blow rate", Dimension::blow_rate, plate, &ToolChoice::blow_rate, &Frequency::Hz,
                  class_values.blow_rate.Hz, 0.5, 100),
      plate_field("air pressure at the tool", Dimension::air_pressure, plate, &ToolChoice::pressure, &Pressure::Pa,
                  class_values.pressure.Pa, 5e4, 5e6),
      plate_field("free air it uses", Dimension::flow, plate, &ToolChoice::free_air, &VolumeFlow::m3_s,
                  class_values.free_air.m3_s, 0, 10)};
  // An empty mass goes back to that of the class, and a smaller diameter makes a lighter tool.
  for (Field& field : all)
    field.validate = [apply = field.apply, &tables](const Crossing& c, Typed value) {
      return check_tool_plate(std::get<ToolChoice>(apply(c, value)), tables);
    };
  return all;
}

std::vector<Field> soil_fields(const Crossing& crossing, const std::string& id, const Tables& tables) {
  const auto& strata = crossing.site.strata;
  const auto stratum = std::find_if(strata.begin(), strata.end(), [&](const Stratum& s) { return s.id == id; });
  if (stratum == strata.end()) return {};
  const SoilClass* row = find_soil(tables, stratum->soil);
  if (!row) return {};
  const Soil class_values = resolve_soil(*row, {});
  const SoilOverrides& typed = stratum->values;
  const bool drained = resolve_soil(*row, typed).drained;
  const ItemRef part{ItemKind::stratum, id, -1};
  const auto field = [&](std::string label, Dimension dimension, auto member, auto number, double stands, double low,
                         double high, double per = 1) {
    return soil_field(part, std::move(label), dimension, *stratum, member, number, stands, low, high, per);
  };
  std::vector<Field> all{field("unit weight", Dimension::unit_weight, &SoilOverrides::unit_weight, &UnitWeight::N_m3,
                               class_values.unit_weight.N_m3, 5e3, 4e4),
                         field("unit weight under water", Dimension::unit_weight, &SoilOverrides::saturated_unit_weight,
                               &UnitWeight::N_m3, class_values.saturated_unit_weight.N_m3, 5e3, 4e4)};
  if (!drained || typed.undrained_strength)
    all.push_back(field("undrained strength", Dimension::pressure, &SoilOverrides::undrained_strength, &Pressure::Pa,
                        class_values.undrained_strength.Pa, 100, 1e7));
  if (drained || typed.friction_angle)
    all.push_back(field("friction angle", Dimension::angle, &SoilOverrides::friction_angle, &Angle::rad,
                        class_values.friction_angle.rad, pi / 180, pi / 3));
  if (drained || typed.cohesion)
    all.push_back(field("cohesion", Dimension::pressure, &SoilOverrides::cohesion, &Pressure::Pa,
                        class_values.cohesion.Pa, 0, 1e7));
  all.push_back(field("shear modulus", Dimension::big_pressure, &SoilOverrides::shear_modulus, &Pressure::Pa,
                      class_values.shear_modulus.Pa, 1e4, 1e10));
  all.push_back(field("wander of the heading over the first metre (3.3 ft), one sd", Dimension::angle,
                      &SoilOverrides::wander, &Wander::rad_sqrt_m, class_values.wander.rad_sqrt_m, 0, 0.5));
  all.push_back(field("stops by the ground in 100 m (328 ft)", Dimension::ratio, &SoilOverrides::refusal_rate,
                      &RatePerLength::per_m, class_values.refusal_rate.per_m, 0, 1000, 100));
  return all;
}

std::vector<Field> water_fields(const Crossing& crossing) {
  const Site& site = crossing.site;
  Field field;
  field.label = "water level at the launch; the line follows";
  field.dimension = Dimension::station;
  if (site.water && !site.water->empty()) field.value = elevation_at(*site.water, crossing.bore.launch.station.m);
  field.may_be_empty = true;
  field.low = -1e4;
  field.high = 1e4;
  field.apply = [](const Crossing& c, Typed v) -> ItemValue {
    if (!v) return std::optional<LevelLine>();
    LevelLine line;
    if (c.site.water && !c.site.water->empty()) {
      line = *c.site.water;
      const double by = *v - elevation_at(line, c.bore.launch.station.m);
      for (LevelPoint& p : line) p.elevation_m += by;
    } else {
      const double from = c.bore.launch.station.m, to = c.bore.exit.station.m;
      const LevelLine& ground = c.site.ground;
      line = {{ground.empty() ? from : std::min(from, ground.front().station_m), *v},
              {ground.empty() ? to : std::max(to, ground.back().station_m), *v}};
    }
    return std::optional<LevelLine>(std::move(line));
  };
  return {std::move(field)};
}

std::vector<Field> model_fields(const Crossing& crossing) {
  const ModelConstants& model = crossing.bore.model;
  const auto ratio_field = [&](std::string label, Given<Ratio> ModelConstants::*member, double low, double high) {
    return model_field<Ratio>(
        std::move(label), Dimension::ratio, model, member, [](const Ratio& r) { return r.v; },
        [](double v) { return Ratio{v}; }, low, high);
  };
  return {ratio_field("steering constant c", &ModelConstants::steer_constant, 0, 10),
          ratio_field("its standard deviation", &ModelConstants::steer_constant_sd, 0, 10),
          ratio_field("field factor of the advance", &ModelConstants::field_factor, 0.001, 100),
          model_field<std::int64_t>(
              "calibrated from, number of bores", Dimension::count, model, &ModelConstants::calibrated_from,
              [](const std::int64_t& n) { return static_cast<double>(n); },
              [](double v) { return static_cast<std::int64_t>(v); }, 0, 1e6)};
}

}  // namespace burrow
