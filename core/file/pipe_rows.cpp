#include "pipe_rows.h"

#include "burrow/language/say.h"

namespace burrow::table_file {

namespace {

template <class Quantity>
std::optional<Quantity> maybe(std::optional<double> value) {
  return value ? std::optional<Quantity>(Quantity{*value}) : std::nullopt;
}

constexpr double longest_s = 1e10, largest_Pa = 1e13;

void read(Row& row, ModulusRow& modulus) {
  modulus.time.s = row.number("time_s", 1, longest_s);
  modulus.modulus.Pa = row.number("modulus_pa", 1, largest_Pa);
  modulus.source = row.source();
}

void read(Row& row, DeratingRow& derating) {
  derating.temperature.K = row.number("temperature_k", 100, 1000);
  derating.ratio.v = row.number("ratio", 1e-3, 100);
  derating.source = row.source();
}

void read(Row& row, PullStressRow& pull) {
  pull.time.s = row.number("time_s", 1, longest_s);
  pull.stress.Pa = row.number("stress_pa", 1, largest_Pa);
  pull.source = row.source();
}

void read(Row& row, BendRow& bend) {
  bend.to_ratio.v = row.number("ratio_to", 2, 1e6);
  bend.diameters.v = row.number("diameters", 1, 1e6);
  bend.source = row.source();
}

void read(Row& row, DeflectionRow& deflection) {
  deflection.to_ratio.v = row.number("ratio_to", 2, 1e6);
  deflection.share.v = row.number("share", 1e-4, 1);
  deflection.source = row.source();
}

void read(Row& row, PipeWall& wall) {
  wall.sdr = maybe<Ratio>(row.number_or_null("sdr", 2.1, 1000));
  wall.wall.m = row.number("wall_m", 1e-5, 1);
}

void read(Row& row, PipeSize& size);  // holds rows itself

template <class T>
void read_list(Row& row, const char* key, std::vector<T>& list, bool needed = false) {
  const nlohmann::json& rows = needed ? row.list(key) : row.list_or_nothing(key);
  for (const nlohmann::json& object : rows) {
    Row one(object, row.pointer() + "/" + key + "/" + std::to_string(list.size()));
    read(one, list.emplace_back());
    if (auto error = one.finish()) return row.wrong(std::move(*error));
  }
  if (needed && list.empty()) row.wrong(key, "an empty list", "at least one row");
}

/// The laws are read off between their rows, so the rows must go up.
template <class T, class Key>
void ascending(Row& row, const char* key, const std::vector<T>& list, Key at) {
  for (std::size_t i = 1; i < list.size(); ++i)
    if (!(at(list[i]) > at(list[i - 1])))
      row.wrong(std::string(key) + "/" + std::to_string(i), "a row not above the one before", "rows that increase");
}

void read(Row& row, PipeSize& size) {
  size.name = row.text("name");
  size.outside_diameter.m = row.number("outside_diameter_m", 1e-3, 5);
  size.largest_outside_diameter = maybe<Length>(row.number_or_null("largest_outside_diameter_m", 1e-3, 5));
  read_list(row, "walls", size.walls, true);
  for (const PipeWall& wall : size.walls)
    if (!(2 * wall.wall.m < size.outside_diameter.m))
      row.wrong("walls", "a wall of half the diameter", "a hollow pipe");
}

PipeStrength strength(Row& row, PipeLaw law) {
  PipeStrength s;
  s.law = law;
  s.unit_weight.N_m3 = row.number("unit_weight_n_m3", 1e3, 2e5);
  s.poisson_ratio.v = row.number("poisson", 0, 0.499);
  s.expansion_1_K = row.number("expansion_1_k", 0, 1e-3);
  s.deflection_free.v = row.number("deflection_free", 1e-4, 1);
  s.fitting_bend = maybe<Ratio>(row.number_or_null("fitting_bend", 1, 1e6));
  s.ring_stress = maybe<Pressure>(row.number_or_null("ring_stress_pa", 1, largest_Pa));
  s.pressure_stress = maybe<Pressure>(row.number_or_null("pressure_stress_pa", 1, largest_Pa));
  s.yield = maybe<Pressure>(row.number_or_null("yield_pa", 1, largest_Pa));
  const std::string yield_source = row.text_or_nothing("yield_source");
  const std::string yield_label = row.text_or_nothing("yield_source_label");
  if (s.yield)
    s.yield_source = {Phrase::of_table(yield_source),
                      source_label_from_words(yield_label).value_or(SourceLabel::our_default)};
  s.strain_limit = row.text("strain_limit");
  read_list(row, "modulus", s.modulus, true);
  read_list(row, "derating", s.derating);
  read_list(row, "pull_stress", s.pull_stress);
  read_list(row, "bend", s.bend);
  read_list(row, "deflection", s.deflection);
  ascending(row, "modulus", s.modulus, [](const ModulusRow& r) { return r.time.s; });
  ascending(row, "derating", s.derating, [](const DeratingRow& r) { return r.temperature.K; });
  ascending(row, "pull_stress", s.pull_stress, [](const PullStressRow& r) { return r.time.s; });
  ascending(row, "bend", s.bend, [](const BendRow& r) { return r.to_ratio.v; });
  ascending(row, "deflection", s.deflection, [](const DeflectionRow& r) { return r.to_ratio.v; });
  const std::string label = row.text("law_source_label");
  const auto known = source_label_from_words(label);
  if (!known) row.wrong("law_source_label", "\"" + label + "\"", "one of the eight source labels");
  s.source = {row.phrase("law_source"), known.value_or(SourceLabel::our_default)};
  return s;
}

}  // namespace

void read(Row& row, PipeMaterial& pipe) {
  pipe.id = row.text("id");
  pipe.name = row.phrase("name");
  pipe.source = row.source();
  if (const auto law = row.word_or_nothing<PipeLaw>("law")) pipe.strength = strength(row, *law);
}

void read(Row& row, PipeSeries& series) {
  series.id = row.text("id");
  series.name = row.phrase("name");
  series.source = row.source();
  for (const nlohmann::json& material : row.list("materials")) {
    if (!material.is_string()) return row.wrong("materials", shown(material), "ids of materials");
    series.materials.push_back(material.get<std::string>());
  }
  read_list(row, "sizes", series.sizes, true);
}

}  // namespace burrow::table_file
