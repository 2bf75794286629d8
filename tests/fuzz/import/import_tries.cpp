#include "import_tries.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sstream>

#include "answer.h"
#include "burrow/base/ensure.h"
#include "burrow/file/crossing_file.h"
#include "burrow/import/into_crossing.h"
#include "burrow/import/survey_csv.h"
#include "found_builder.h"
#include "readers/dxf_scan.h"
#include "readers/landxml.h"
#include "support/file_samples.h"

namespace burrow::test {

namespace {

using nlohmann::json;

long accepted_count = 0;

bool can_be_shown(const Phrase& phrase) {
  return json::accept(json(phrase.english()).dump(-1, ' ', false, json::error_handler_t::strict));
}

std::string refused(const Error& error) {
  if (error.found.english().empty() && error.expected.english().empty()) return "refused without a word";
  return can_be_shown(error.found) && can_be_shown(error.expected) ? "" : "refused in words that are no valid text";
}

/// What the program believes of its reading process, and nothing of it changed by being sent.
std::string believed(Found found) {
  ++accepted_count;
  found.file = "f";
  ReaderRequest request;
  request.path = "f";
  request.most_layers = ReadOptions{}.most_layers;
  request.most_vertices = ReadOptions{}.most_vertices;
  ReaderAnswer answer;
  answer.found = std::move(found);
  const auto checked = checked_answer(packed(answer), request);
  if (!checked) return "read, and not believed";
  return *checked == answer ? "" : "changed by being sent";
}

/// A crossing through the middle of it, which must be one that the program opens.
std::string made_into_a_crossing(Found found) {
  found.file = "f";
  static const MeaningTable meanings = built_in_meanings();
  const ImportFile file = import_file(std::make_shared<const Found>(std::move(found)), meanings);
  const auto line = proposed_line(file);
  if (!line) return {};
  const Result<Imported> imported = into_crossing({file}, *line);
  if (!imported) return refused(imported.error());
  for (const Utility& u : imported->utilities)
    if (u.outside_diameter && !(u.outside_diameter->m > 0 && u.outside_diameter->m <= 5))
      return "a diameter of nothing";
  const std::string text = write_crossing(crossing_from(*imported));
  const Result<Crossing> again = read_crossing(text, tables());
  // Beyond the ranges of the file: the command says so in place of writing it.
  return again ? "" : refused(again.error());
}

std::string try_survey(std::string_view text) {
  const Result<Found> found = read_survey_csv(text, {});
  if (!found) return refused(found.error());
  ReadOptions same;
  same.order = found->order;
  const Result<Found> again = read_survey_csv(text, same);
  if (!again) return "not read in the order it was read in: " + again.error().english();
  if (again->vertices != found->vertices) return "in the order told other places than in the order found";
  if (std::string wrong = believed(*found); !wrong.empty()) return wrong;
  return made_into_a_crossing(*found);
}

std::string try_landxml(std::string_view text) {
  const Result<Found> found = read_landxml_text(text, {});
  if (!found) return refused(found.error());
  return believed(*found);
}

std::string try_dxf(std::string_view text) {
  std::istringstream in{std::string(text)};
  const Result<DrawingScan> scan = scan_drawing(in, {});
  if (!scan) return refused(scan.error());
  if (!(scan->largest_radius >= 0) || !std::isfinite(scan->largest_radius)) return "a radius that is none";
  const ReadOptions options;
  FoundBuilder builder(options, "DXF drawing");
  apply(*scan, builder);
  return believed(builder.finish());
}

/// Positions of the first list of numbers, as GDAL would give them.
std::vector<FoundVertex> vertices_in(const json& places) {
  std::vector<FoundVertex> all;
  for (const json& p : places) {
    if (!p.is_array() || p.size() < 2 || !p[0].is_number() || !p[1].is_number()) continue;
    FoundVertex v{p[0].get<double>(), p[1].get<double>(), std::nullopt};
    if (p.size() > 2 && p[2].is_number()) v.z_m = p[2].get<double>();
    all.push_back(v);
  }
  return all;
}

std::string try_fields(std::string_view text) {
  const json all = json::parse(text, nullptr, false);
  if (!all.is_object() || !all.contains("features") || !all["features"].is_array()) return {};
  const ReadOptions options;
  FoundBuilder builder(options, "GeoJSON");
  for (const json& f : all["features"]) {
    if (!f.is_object() || !f.contains("geometry") || !f["geometry"].is_object()) continue;
    const json& geometry = f["geometry"];
    if (!geometry.contains("coordinates") || !geometry["coordinates"].is_array()) continue;
    std::vector<std::pair<std::uint32_t, std::string>> row;
    if (f.contains("properties") && f["properties"].is_object())
      for (const auto& [key, value] : f["properties"].items())
        row.emplace_back(builder.field(key), value.is_string()
                                                 ? value.get<std::string>()
                                                 : value.dump(-1, ' ', false, json::error_handler_t::replace));
    builder.set_attributes(std::move(row));
    FoundFeature feature;
    feature.layer = builder.layer("gas");
    feature.shape = Shape::line;
    builder.add(std::move(feature), vertices_in(geometry["coordinates"]), "element");
  }
  const Found found = builder.finish();
  if (found.features.empty()) return {};
  for (const FieldChoice& choice : guessed_fields(found.table))
    if (choice.is_decided && choice.use == FieldUse::diameter && !choice.unit) return "a diameter decided without unit";
  if (std::string wrong = believed(found); !wrong.empty()) return wrong;
  return made_into_a_crossing(found);
}

constexpr std::array tries{Try{"survey", try_survey}, Try{"landxml", try_landxml}, Try{"dxf", try_dxf},
                           Try{"fields", try_fields}};

}  // namespace

std::span<const Try> import_tries() {
  return tries;
}

const Try& import_try_of(std::string_view name) {
  const auto it = std::find_if(tries.begin(), tries.end(), [&](const Try& one) { return one.name == name; });
  BURROW_ENSURE(it != tries.end());
  return *it;
}

long import_accepted() {
  return accepted_count;
}

}  // namespace burrow::test
