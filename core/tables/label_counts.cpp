#include "burrow/tables/label_counts.h"

#include <algorithm>

namespace burrow {

namespace {

class Counter {
 public:
  explicit Counter(std::string_view table) { counts_.table = table; }

  void add(const Source& source, std::size_t numbers = 1) {
    const auto at = std::find(all_source_labels.begin(), all_source_labels.end(), source.label);
    counts_.by_label[static_cast<std::size_t>(at - all_source_labels.begin())] += numbers;
  }
  template <class Rows>
  void add_each(const Rows& rows, std::size_t numbers = 1) {
    for (const auto& row : rows) add(row.source, numbers);
  }
  [[nodiscard]] LabelCounts counts() const { return counts_; }

 private:
  LabelCounts counts_;
};

template <class... T>
std::size_t set(const std::optional<T>&... numbers) {
  return (static_cast<std::size_t>(numbers.has_value()) + ...);
}

LabelCounts of_limits(const Tables& tables) {
  Counter counter(translatable("limits"));
  counter.add_each(tables.limits);
  return counter.counts();
}

LabelCounts of_owners(const Tables& tables) {
  Counter counter(translatable("owners' rules"));
  for (const SurfaceRule& rule : tables.surface_rules)
    counter.add(rule.source, set(rule.cover, rule.heave_caution, rule.heave_stop, rule.least_angle, rule.pit_setback,
                                 rule.pipe_end_setback, rule.clear_of_centre, rule.largest_driven));
  return counter.counts();
}

LabelCounts of_excavation(const Tables& tables) {
  Counter counter(translatable("excavation"));
  for (const ExcavationRuleSet& set : tables.excavation) {
    counter.add(set.source, 3);              // protection, ladder, spoil
    counter.add_each(set.slopes, 2);         // slope, depth
    counter.add_each(set.upright_parts, 3);  // depth, height, slope above
    counter.add_each(set.duties);
  }
  return counter.counts();
}

LabelCounts of_pipes(const Tables& tables) {
  Counter counter(translatable("pipes"));
  for (const PipeMaterial& pipe : tables.pipes) {
    if (!pipe.strength) continue;
    const PipeStrength& strength = *pipe.strength;
    constexpr std::size_t always = 4;  // weight, ν, expansion, flattening without pressure
    counter.add(strength.source, always + set(strength.fitting_bend, strength.ring_stress, strength.pressure_stress));
    if (strength.yield) counter.add(strength.yield_source);
    counter.add_each(strength.modulus);
    counter.add_each(strength.derating);
    counter.add_each(strength.pull_stress);
    counter.add_each(strength.bend);
    counter.add_each(strength.deflection);
  }
  return counter.counts();
}

LabelCounts of_locating(const Tables& tables) {
  Counter counter(translatable("locating"));
  for (const LocatingPreset& preset : tables.locating)
    counter.add(preset.source, set(preset.lateral, preset.lateral_of_depth, preset.vertical, preset.vertical_of_depth));
  return counter.counts();
}

LabelCounts of_soils(const Tables& tables) {
  Counter counter(translatable("soils"));
  constexpr std::size_t always = 14;
  for (const SoilClass& soil : tables.soils)
    counter.add(soil.source, always + set(soil.undrained_strength, soil.friction_angle, soil.earth_pressure_ratio));
  return counter.counts();
}

LabelCounts of_tools(const Tables& tables) {
  Counter counter(translatable("tools"));
  counter.add_each(tables.tools, 9);
  return counter.counts();
}

}  // namespace

std::vector<LabelCounts> label_counts(const Tables& tables) {
  return {of_limits(tables),   of_owners(tables), of_excavation(tables), of_pipes(tables),
          of_locating(tables), of_soils(tables),  of_tools(tables)};
}

}  // namespace burrow
