#include "burrow/document/practice_entry.h"

#include <cmath>

#include "burrow/file/practice_file.h"

namespace burrow {

Practice practice_of(const Crossing& crossing, const Tables& tables) {
  if (crossing.practice.empty()) return {};
  return read_practice(crossing.practice, tables).value_or(Practice());
}

PartValue practice_value(const Practice& practice) {
  return write_practice(practice);
}

std::vector<Field> truth_fields(const Crossing& crossing, const Tables& tables) {
  const Practice practice = practice_of(crossing, tables);
  const PracticeTruth plain;
  std::vector<Field> fields;
  const auto add = [&](std::string label, Dimension dimension, double low, double high, double value, double standing,
                       std::function<void(PracticeTruth&, double)> put) {
    Field field;
    field.label = std::move(label);
    field.dimension = dimension;
    field.value = value;
    field.entered = value != standing;
    field.low = low;
    field.high = high;
    field.standing = standing;
    field.with = [&tables, put, standing](const Crossing& now, std::optional<double> typed) {
      Practice changed = practice_of(now, tables);
      put(changed.truth, typed.value_or(standing));
      return practice_value(changed);
    };
    fields.push_back(std::move(field));
  };
  const PracticeTruth& truth = practice.truth;
  add("level set wrong, nose up +", Dimension::angle, -0.2, 0.2, truth.errors.level_rad, 0,
      [](PracticeTruth& t, double v) { t.errors.level_rad = v; });
  add("sight set wrong, left +", Dimension::angle, -0.2, 0.2, truth.errors.aim_rad, 0,
      [](PracticeTruth& t, double v) { t.errors.aim_rad = v; });
  add("start too high", Dimension::small_length, -0.5, 0.5, truth.errors.up_m, 0,
      [](PracticeTruth& t, double v) { t.errors.up_m = v; });
  add("start too far left", Dimension::small_length, -0.5, 0.5, truth.errors.left_m, 0,
      [](PracticeTruth& t, double v) { t.errors.left_m = v; });
  add("steering constant", Dimension::ratio, 0, 1, truth.steer_constant, plain.steer_constant,
      [](PracticeTruth& t, double v) { t.steer_constant = v; });
  add("field factor", Dimension::ratio, 0.01, 10, truth.field_factor, plain.field_factor,
      [](PracticeTruth& t, double v) { t.field_factor = v; });
  add("seed", Dimension::count, 0, 1e9, static_cast<double>(truth.seed), static_cast<double>(plain.seed),
      [](PracticeTruth& t, double v) { t.seed = static_cast<std::uint64_t>(std::llround(v)); });
  return fields;
}

}  // namespace burrow
