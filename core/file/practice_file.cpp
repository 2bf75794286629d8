#include "burrow/file/practice_file.h"

#include "crossing_reader.h"
#include "crossing_writer.h"

namespace burrow {

namespace {
constexpr Range any_turn{-1, 1, false, "an angle from -1 to 1 rad"};
constexpr Range any_shift{-10, 10, false, "a length from -10 to 10 m"};
constexpr Range any_seed{0, 9e15, false, "a whole number, 0 or more"};
constexpr Range steer{0, 1, false, "a constant from 0 to 1"};
constexpr Range factor{0.001, 10, false, "a factor from 0.001 to 10"};
}  // namespace

template <class Io, Is<TrueSoil> V>
void fields(Io& io, V& soil) {
  io.field("stratum", soil.stratum);
  io.required_name("soil", soil.soil, NameOf::soil);
}

template <class Io, Is<StoneHit> V>
void fields(Io& io, V& stone) {
  io.required("nose_m", stone.s_m, range::size);
  io.field("up_rad", stone.up_rad, any_turn);
  io.field("left_rad", stone.left_rad, any_turn);
}

template <class Io, Is<MovedService> V>
void fields(Io& io, V& service) {
  io.field("utility", service.utility);
  io.field("across_m", service.across_m, any_shift);
  io.field("up_m", service.up_m, any_shift);
}

template <class Io, Is<PracticeResult> V>
void fields(Io& io, V& result) {
  io.field("name", result.name);
  io.field("end", result.end);
  io.field("miss_left_m", result.miss_left_m, range::offset);
  io.field("miss_up_m", result.miss_up_m, range::offset);
  io.field("right", result.right, range::count);
  io.field("decisions", result.decisions, range::count);
}

template <class Io, Is<PracticeTruth> V>
void fields(Io& io, V& truth) {
  auto seed = static_cast<std::int64_t>(truth.seed);
  io.field("seed", seed, any_seed);
  if constexpr (!std::is_const_v<V>) truth.seed = static_cast<std::uint64_t>(seed);
  io.field("level_error_rad", truth.errors.level_rad, any_turn);
  io.field("aim_error_rad", truth.errors.aim_rad, any_turn);
  io.field("start_up_m", truth.errors.up_m, any_shift);
  io.field("start_left_m", truth.errors.left_m, any_shift);
  io.field("steer_constant", truth.steer_constant, steer);
  io.field("field_factor", truth.field_factor, factor);
  io.field("wander", truth.wander);
  io.field("soil_stones", truth.soil_stones);
  io.list("soils", truth.soils);
  io.list("trenches", truth.trenches);
  io.list("stones", truth.stones);
  io.list("services", truth.services);
}

template <class Io, Is<Practice> V>
void fields(Io& io, V& practice) {
  io.field("title", practice.title);
  io.field("aim", practice.aim);
  io.field("question", practice.question);
  io.field("rule", practice.rule);
  io.field("sonde", practice.sonde);
  io.object("truth", practice.truth);
  io.list("results", practice.results);
  io.extra(practice.extra);
}

Result<Practice> read_practice(std::string_view json_text, const Tables& tables) {
  const Result<Json> json = parse_json(json_text);
  if (!json) return tl::unexpected<Error>(json.error());
  if (!json->object()) return fail("", shown_json(*json), "a JSON object");
  Practice practice;
  Reader reader(tables);
  reader.read(*json, practice);
  reader.settle_ids();
  if (reader.error()) return tl::unexpected<Error>(*reader.error());
  for (std::size_t i = 0; i < practice.truth.trenches.size(); ++i)
    if (!find_soil(tables, practice.truth.trenches[i].soil))
      return fail(json_pointer("/truth/trenches", i) + "/soil", "\"" + practice.truth.trenches[i].soil + "\"",
                  known_ids(tables.soils));
  return practice;
}

std::string write_practice(const Practice& practice) {
  return compact_json(Writer().write(practice));
}

}  // namespace burrow
