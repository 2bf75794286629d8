#include "burrow/import/meanings.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "burrow/base/ensure.h"
#include "burrow_resources.h"
#include "csv_fields.h"

namespace burrow {

namespace {

using nlohmann::json;

Result<MeaningRow> row_of(const json& value, const std::string& place) {
  const auto text = [&](const char* key) {
    const auto it = value.find(key);
    return it != value.end() && it->is_string() ? it->get<std::string>() : std::string();
  };
  if (!value.is_object()) return fail(place, value.dump().substr(0, 60), "an object with \"match\" and \"meaning\"");
  MeaningRow row;
  row.match = text("match");
  if (row.match.empty()) return fail(place + "/match", "nothing", "a layer or code, \"GAS*\"");
  const auto meaning = from_word<Meaning>(text("meaning"));
  if (!meaning) return fail(place + "/meaning", text("meaning"), known_words<Meaning>());
  row.meaning = *meaning;
  row.source = {Phrase::of_table(text("source")), SourceLabel::owners_setting};
  if (const std::string label = text("source_label"); !label.empty()) {
    const auto known = source_label_from_words(label);
    if (!known) return fail(place + "/source_label", label, "one of the eight labels");
    row.source.label = *known;
  }
  return row;
}

}  // namespace

std::optional<UtilityKind> utility_kind(Meaning meaning) {
  switch (meaning) {
    case Meaning::gas:
      return UtilityKind::gas;
    case Meaning::power:
      return UtilityKind::power;
    case Meaning::water:
      return UtilityKind::water;
    case Meaning::sewer:
      return UtilityKind::sewer;
    case Meaning::telecom:
      return UtilityKind::telecom;
    case Meaning::reclaimed:
      return UtilityKind::reclaimed;
    case Meaning::steam:
      return UtilityKind::steam;
    case Meaning::oil:
      return UtilityKind::oil;
    case Meaning::unknown_utility:
      return UtilityKind::unknown;
    default:
      return std::nullopt;
  }
}

MeaningTable built_in_meanings() {
  Result<MeaningTable> table = read_meanings(embedded_text("tables/layer_meanings.json"));
  BURROW_ENSURE(table.has_value());
  return std::move(*table);
}

Result<MeaningTable> read_meanings(std::string_view json_text) {
  constexpr std::size_t most_rows = 10000;
  const json rows = json::parse(json_text, nullptr, false);
  if (!rows.is_array()) return fail("", "something else than a list", "a list of rows with \"match\" and \"meaning\"");
  if (rows.size() > most_rows) return fail("", std::to_string(rows.size()) + " rows", "at most 10,000");
  MeaningTable table;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    Result<MeaningRow> row = row_of(rows[i], "/" + std::to_string(i));
    if (!row) return tl::unexpected(row.error());
    table.push_back(std::move(*row));
  }
  return table;
}

std::string write_meanings(const MeaningTable& rows) {
  std::string text = "[";
  for (const MeaningRow& row : rows) {
    text += (text.size() > 1 ? ",\n " : "\n ") + std::string("{\"match\": ") + json(row.match).dump() +
            ", \"meaning\": \"" + std::string(word_of(row.meaning)) + "\", \"source_label\": \"" +
            std::string(word_of(row.source.label)) + "\"}";
  }
  return text + "\n]\n";
}

MeaningTable joined(const MeaningTable& own, const MeaningTable& built_in) {
  MeaningTable all = own;
  all.insert(all.end(), built_in.begin(), built_in.end());
  return all;
}

bool fits(std::string_view match, std::string_view name) {
  const std::string pattern = csv::lower(match), text = csv::lower(name);
  std::size_t p = 0, t = 0, star = std::string::npos, from = 0;
  while (t < text.size()) {
    if (p < pattern.size() && pattern[p] == '*') {
      star = p++;
      from = t;
    } else if (p < pattern.size() && pattern[p] == text[t]) {
      ++p;
      ++t;
    } else if (star != std::string::npos) {
      p = star + 1;
      t = ++from;
    } else {
      return false;
    }
  }
  while (p < pattern.size() && pattern[p] == '*') ++p;
  return p == pattern.size();
}

MeaningTable learned(MeaningTable own, const MeaningTable& built_in, const std::string& layer, Meaning meaning) {
  if (layer.empty()) return own;
  const MeaningTable all = joined(own, built_in);
  const auto says = std::find_if(all.begin(), all.end(), [&](const MeaningRow& row) { return fits(row.match, layer); });
  if (says != all.end() && says->meaning == meaning) return own;
  const std::string name = csv::lower(layer);
  std::erase_if(own, [&](const MeaningRow& row) { return csv::lower(row.match) == name; });
  own.insert(own.begin(), {layer, meaning, {"", SourceLabel::owners_setting}});
  return own;
}

Meaning meaning_of(const Found& found, const LayerSummary& layer, const MeaningTable& table) {
  for (const MeaningRow& row : table)
    if (fits(row.match, layer.name)) return row.meaning;
  if (layer.faces > 0 || layer.rasters > 0) return Meaning::ground;
  if (layer.points == 0 && layer.lines + layer.areas > 0) return Meaning::background;
  const bool survey = found.format == "survey points" || found.format == "LandXML";
  return survey && layer.with_height > 0 ? Meaning::ground : Meaning::background;
}

}  // namespace burrow
