#include "burrow/document/limit_fields.h"

#include <cmath>

#include "burrow/check/limits.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "number_field.h"

namespace burrow {

namespace {

constexpr double small_m = 0.1;  ///< a length below is told in millimetres or inches
constexpr double inch_m = 0.0254;

FieldRange range_of(const LimitRow& row) {
  if (row.unit == "m") return {0, 1e5};
  if (row.unit == "m/s") return {0, 1e3};
  if (row.unit == "Pa") return {0, 1e9};
  if (row.unit == "K") return {0, 1e3};
  if (row.unit == "m3") return {0, 1e6};
  return {0, limit_dimension(row) == Dimension::chance ? 1.0 : 1e6};
}

/// What nobody may set is not taken.
Result<void> may_be_set(const LimitRow& row, double value) {
  LimitOverride typed;
  typed.value = value;
  if (judge_typed(row, typed) != TypedLimit::impossible) return {};
  return fail(row.name, translatable("a limit that nobody may set"),
              row.at_least ? Phrase(translatable("a chance of arriving of at least 50 %"))
                           : Phrase(translatable("a chance of harm of at most 50 %")));
}

}  // namespace

Dimension limit_dimension(const LimitRow& row) {
  if (row.unit == "m") return std::abs(row.value) < small_m ? Dimension::small_length : Dimension::length;
  if (row.unit == "m3") return Dimension::volume;
  if (row.unit == "Pa") return Dimension::air_pressure;
  if (row.unit == "K") return Dimension::temperature;
  return is_chance(row) ? Dimension::chance : Dimension::ratio;
}

Field limit_field(const Crossing& crossing, const LimitRow& row, UnitSystem units) {
  const auto typed = crossing.limits.find(row.id);
  const bool speed = row.unit == "m/s";
  const char* label = !speed                    ? "limit in this crossing"
                      : units == UnitSystem::us ? "limit in this crossing, in/s"
                                                : "limit in this crossing, mm/s";
  Field field = typed_field(label, limit_dimension(row), range_of(row),
                            typed == crossing.limits.end() ? row.value : typed->second.value,
                            [id = row.id](Crossing& c, Typed value) {
                              if (value)
                                c.limits[id].value = *value;
                              else
                                c.limits.erase(id);
                            });
  field.may_be_empty = true;
  field.default_value = row.value;
  field.entered = typed != crossing.limits.end();
  field.validate = [row](const Crossing&, Typed value) { return value ? may_be_set(row, *value) : Result<void>(); };
  if (!speed) return field;
  const double per = units == UnitSystem::us ? 1 / inch_m : 1e3;
  const double most = field.high;
  field = times(std::move(field), per);
  field.high = most * per;
  field.validate = nullptr;  // no speed is impossible
  return field;
}

}  // namespace burrow
