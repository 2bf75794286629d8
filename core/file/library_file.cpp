#include "burrow/file/library_file.h"

#include <set>

#include "crossing_reader.h"
#include "crossing_writer.h"

namespace burrow {

namespace {

constexpr std::string_view library_format = "burrowline-library";
constexpr std::int64_t library_version = 1;

/// The file itself: what tells it apart, then the library.
struct LibraryFile {
  std::string format;
  std::int64_t version = library_version;
  LearnLibrary library;
};

}  // namespace

template <class Io, Is<LearnedValue> V>
void fields(Io& io, V& value) {
  io.required("likeliest", value.likeliest, range::positive);
  io.required("low", value.low, range::positive);
  io.required("high", value.high, range::positive);
  io.required("ln_mean", value.ln_mean, range::logarithm);
  io.required("ln_sd", value.ln_sd, range::sd);
}

template <class Io, Is<LearnedRate> V>
void fields(Io& io, V& rate) {
  io.required("mean_1_m", rate.mean_1_m, range::rate_by_length);
  io.required("low_1_m", rate.low_1_m, range::rate_by_length);
  io.required("high_1_m", rate.high_1_m, range::rate_by_length);
  io.required("shape", rate.shape, range::positive);
  io.required("length_m", rate.length_m, range::positive);
}

template <class Io, Is<LearnedSoil> V>
void fields(Io& io, V& soil) {
  io.required_name("soil", soil.soil, NameOf::soil);
  io.field("bores", soil.bores, range::count);
  io.field("timed_bores", soil.timed_bores, range::count);
  io.required_object("steer_constant", soil.steer_constant);
  io.required_object("wander_rad_sqrt_m", soil.wander_rad_sqrt_m);
  io.required_object("field_factor", soil.field_factor);
  io.field("refusals", soil.refusals, range::count);
  io.field("bored_m", soil.bored_m, range::size);
  io.object("refusal_rate", soil.refusal_rate);
  io.texts("records", soil.records);
}

template <class Io, Is<LibraryFile> V>
void fields(Io& io, V& file) {
  io.field("format", file.format);
  io.field("version", file.version, range::count);
  io.list("soils", file.library.soils);
  io.extra(file.library.extra);
}

Result<LearnLibrary> read_library(std::string_view json_text, const Tables& tables) {
  const Result<Json> json = parse_json(json_text);
  if (!json) return tl::unexpected<Error>(json.error());
  if (!json->object()) return fail("", shown_json(*json), "a JSON object");
  LibraryFile file;
  Reader reader(tables);
  reader.read(*json, file);
  if (reader.error()) return tl::unexpected<Error>(*reader.error());
  if (file.format != library_format)
    return fail("/format", "\"" + file.format + "\"", "\"" + std::string(library_format) + "\"");
  if (file.version > library_version)
    return fail("/version", std::to_string(file.version), "at most " + std::to_string(library_version));
  std::set<std::string> seen;
  for (std::size_t i = 0; i < file.library.soils.size(); ++i) {
    const LearnedSoil& soil = file.library.soils[i];
    const std::string place = json_pointer("/soils", i);
    if (!seen.insert(soil.soil).second) return fail(place + "/soil", "\"" + soil.soil + "\" twice", "each soil once");
    for (const auto& [key, value] :
         {std::pair("steer_constant", soil.steer_constant), std::pair("wander_rad_sqrt_m", soil.wander_rad_sqrt_m),
          std::pair("field_factor", soil.field_factor)})
      if (!(value.low <= value.high))
        return fail(json_pointer(place, key), exact_text(value.low) + " to " + exact_text(value.high),
                    "low not above high");
    if (!soil.refusal_rate) continue;
    const LearnedRate& rate = *soil.refusal_rate;
    if (!(rate.low_1_m <= rate.high_1_m))
      return fail(json_pointer(place, "refusal_rate"), exact_text(rate.low_1_m) + " to " + exact_text(rate.high_1_m),
                  "low not above high");
    if (soil.bored_m > 0 && !(rate.length_m > soil.bored_m))
      return fail(json_pointer(place, "refusal_rate"), exact_text(rate.length_m) + " m",
                  "more than the " + exact_text(soil.bored_m) + " m bored");
  }
  return file.library;
}

std::string write_library(const LearnLibrary& library) {
  LibraryFile file;
  file.format = std::string(library_format);
  file.library = library;
  return pretty_json(Writer().write(file));
}

}  // namespace burrow
