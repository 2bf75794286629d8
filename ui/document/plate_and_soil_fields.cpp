#include "burrow/document/plate_and_soil_fields.h"

#include <algorithm>

#include "burrow/bore/tool.h"
#include "burrow/check/tool_plate.h"
#include "burrow/crossing/find.h"
#include "burrow/document/lens.h"
#include "burrow/soil/soil.h"
#include "number_field.h"

namespace burrow {

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
  // Ranges lie within those of the file reader, so that whatever is taken can be opened again.
  const auto field = [&](const char* label, Dimension dimension, auto member, double of_its_class, FieldRange range) {
    return number_field(
        crossing, label, dimension, range, [](auto& c) { return &c.bore.tool; }, member, of_its_class);
  };
  std::vector<Field> all{
      field("diameter", Dimension::small_length, &ToolChoice::diameter, class_values.diameter.m,
            {std::max(0.01, piston_m), 5}),
      field("length", Dimension::length, &ToolChoice::length, class_values.length.m, {0.1, 20}),
      field("mass", Dimension::mass, &ToolChoice::mass, class_values.mass.kg, {std::max(0.1, 1.01 * striker_kg), 1e5}),
      field("piston diameter", Dimension::small_length, &ToolChoice::piston_diameter, class_values.piston_diameter.m,
            {0.005, now.diameter.m}),
      field("stroke of the striker", Dimension::small_length, &ToolChoice::stroke, class_values.stroke.m,
            {0.001, now.length.m}),
      field("mass of the striker", Dimension::mass, &ToolChoice::striker_mass, class_values.striker_mass.kg,
            {0.1, 0.99 * now.mass.kg}),
      field("blow rate", Dimension::blow_rate, &ToolChoice::blow_rate, class_values.blow_rate.Hz, {0.5, 100}),
      field("air pressure at the tool", Dimension::air_pressure, &ToolChoice::pressure, class_values.pressure.Pa,
            {5e4, 5e6}),
      field("free air it uses", Dimension::flow, &ToolChoice::free_air, class_values.free_air.m3_s, {0, 10})};
  if (!of_class) {
    all.front().may_be_empty = false;
    all.front().default_value.reset();
  }
  // An empty mass goes back to that of the class, and a smaller diameter makes a lighter tool.
  for (Field& one : all)
    one.validate = [apply = one.apply, &tables](const Crossing& c, Typed value) {
      Crossing changed = c;
      apply(changed, value);
      return check_tool_plate(changed.bore.tool, tables);
    };
  return all;
}

namespace {

/// Of a soil of this class, wherever its values stand: what is known better than the class.
std::vector<Field> fields_of_soil(const Crossing& crossing, const Lens<SoilOverrides>& values, const SoilClass& row) {
  const Soil class_values = resolve_soil(row, {});
  const SoilOverrides& typed = *values(crossing);
  const bool drained = resolve_soil(row, typed).drained;
  const auto field = [&](const char* label, Dimension dimension, auto member, double of_its_class, FieldRange range) {
    return number_field(crossing, label, dimension, range, values, member, of_its_class);
  };
  std::vector<Field> all{field("unit weight", Dimension::unit_weight, &SoilOverrides::unit_weight,
                               class_values.unit_weight.N_m3, {5e3, 4e4}),
                         field("unit weight under water", Dimension::unit_weight, &SoilOverrides::saturated_unit_weight,
                               class_values.saturated_unit_weight.N_m3, {5e3, 4e4})};
  if (!drained || typed.undrained_strength)
    all.push_back(field("undrained strength", Dimension::pressure, &SoilOverrides::undrained_strength,
                        class_values.undrained_strength.Pa, {100, 1e7}));
  if (drained || typed.friction_angle)
    all.push_back(field("friction angle", Dimension::angle, &SoilOverrides::friction_angle,
                        class_values.friction_angle.rad, {pi / 180, pi / 3}));
  if (drained || typed.cohesion)
    all.push_back(field("cohesion", Dimension::pressure, &SoilOverrides::cohesion, class_values.cohesion.Pa, {0, 1e7}));
  all.push_back(field("shear modulus", Dimension::big_pressure, &SoilOverrides::shear_modulus,
                      class_values.shear_modulus.Pa, {1e4, 1e10}));
  all.push_back(field("wander of the heading over the first metre (3.3 ft) (1σ)", Dimension::angle,
                      &SoilOverrides::wander, class_values.wander.rad_sqrt_m, {0, 0.5}));
  all.push_back(times(field("stops by the ground in 100 m (328 ft)", Dimension::ratio, &SoilOverrides::refusal_rate,
                            class_values.refusal_rate.per_m, {0, 1000}),
                      100));
  all.push_back(times(field("stones met in 100 m (328 ft)", Dimension::ratio, &SoilOverrides::stone_rate,
                            class_values.stone_rate.per_m, {0, 1000}),
                      100));
  all.push_back(field("kick of a stone (1σ)", Dimension::angle, &SoilOverrides::stone_kick, class_values.stone_kick.rad,
                      {0, pi / 4}));
  all.push_back(field("share of the hole that reaches the surface", Dimension::chance, &SoilOverrides::heave_share,
                      class_values.heave_share.v, {0, 1}));
  all.push_back(field("swell of the spoil", Dimension::chance, &SoilOverrides::swell, class_values.swell.v, {0, 10}));
  all.push_back(field("pressure at rest, of the weight above", Dimension::ratio, &SoilOverrides::earth_pressure_ratio,
                      class_values.earth_pressure_ratio.v, {0, 10}));
  all.push_back(field("Poisson's ratio", Dimension::ratio, &SoilOverrides::poisson_ratio, class_values.poisson_ratio.v,
                      {0, 0.5}));
  if (drained || typed.dilation_angle)
    all.push_back(field("dilation angle", Dimension::angle, &SoilOverrides::dilation_angle,
                        class_values.dilation_angle.rad, {0, pi / 4}));
  if (drained || typed.interface_angle)
    all.push_back(field("friction angle along the tool", Dimension::angle, &SoilOverrides::interface_angle,
                        class_values.interface_angle.rad, {0, pi / 3}));
  if (!drained || typed.adhesion_ratio)
    all.push_back(field("adhesion along the tool, of the strength", Dimension::ratio, &SoilOverrides::adhesion_ratio,
                        class_values.adhesion_ratio.v, {0, 10}));
  return all;
}

}  // namespace

std::vector<Field> soil_fields(const Crossing& crossing, const std::string& id, const Tables& tables) {
  const Stratum* stratum = find_by_id(crossing.site.strata, id);
  const SoilClass* row = stratum ? find_soil(tables, stratum->soil) : nullptr;
  if (!row) return {};
  return fields_of_soil(
      crossing,
      [id](auto& c) {
        auto* found = find_by_id(c.site.strata, id);
        return found ? &found->values : nullptr;
      },
      *row);
}

std::vector<Field> trench_soil_fields(const Crossing& crossing, const std::string& id, const Tables& tables) {
  const Strip* trench = find_by_id(crossing.site.strips, id);
  const SoilClass* row = trench ? find_soil(tables, trench->soil) : nullptr;
  if (!row) return {};
  return fields_of_soil(
      crossing,
      [id](auto& c) {
        auto* found = find_by_id(c.site.strips, id);
        return found ? &found->values : nullptr;
      },
      *row);
}

std::vector<Field> water_fields(const Crossing& crossing) {
  const Site& site = crossing.site;
  Typed now;
  if (site.water && !site.water->empty()) now = elevation_at(*site.water, crossing.bore.launch.station.m);
  Field field = typed_field("water level at the launch; the line follows", Dimension::station, {-highest_m, highest_m},
                            now, [](Crossing& c, Typed v) {
                              if (!v) {
                                c.site.water.reset();
                              } else if (c.site.water && !c.site.water->empty()) {
                                const double by = *v - elevation_at(*c.site.water, c.bore.launch.station.m);
                                for (LevelPoint& p : *c.site.water) p.elevation_m += by;
                              } else {
                                const double from = c.bore.launch.station.m, to = c.bore.exit.station.m;
                                const LevelLine& ground = c.site.ground;
                                c.site.water =
                                    LevelLine{{ground.empty() ? from : std::min(from, ground.front().station_m), *v},
                                              {ground.empty() ? to : std::max(to, ground.back().station_m), *v}};
                              }
                            });
  field.may_be_empty = true;
  return {std::move(field)};
}

std::vector<Field> model_fields(const Crossing& crossing) {
  const auto field = [&](const char* label, Dimension dimension, FieldRange range, auto member) {
    return number_field(
        crossing, label, dimension, range, [](auto& c) { return &c.bore.model; }, member);
  };
  return {field("steering constant c", Dimension::ratio, {0, 10}, &ModelConstants::steer_constant),
          field("its standard deviation", Dimension::ratio, {0, 10}, &ModelConstants::steer_constant_sd),
          field("field factor of the advance", Dimension::ratio, {0.001, 100}, &ModelConstants::field_factor),
          field("calibrated from, number of bores", Dimension::count, {0, 1e6}, &ModelConstants::calibrated_from)};
}

}  // namespace burrow
