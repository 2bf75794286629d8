#include "burrow/import/meanings.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "burrow/base/ensure.h"
#include "burrow_resources.h"
#include "csv_fields.h"

namespace burrow {

namespace {

using nlohmann::json;

std::string text_at(const json& value, const char* key) {
  const auto it = value.find(key);
  return it != value.end() && it->is_string() ? it->get<std::string>() : std::string();
}

/// What all texts of an entry share.
Result<MeaningRow> common_of(const json& value, const std::string& place) {
  MeaningRow row;
  const auto meaning = from_word<Meaning>(text_at(value, "meaning"));
  if (!meaning) return fail(place + "/meaning", text_at(value, "meaning"), known_words<Meaning>());
  row.meaning = *meaning;
  row.source = {Phrase::of_table(text_at(value, "source")), SourceLabel::owners_setting};
  if (const std::string label = text_at(value, "source_label"); !label.empty()) {
    const auto known = source_label_from_words(label);
    if (!known) return fail(place + "/source_label", label, "one of the eight labels");
    row.source.label = *known;
  }
  if (const auto it = value.find("on_ground"); it != value.end()) {
    if (!it->is_boolean()) return fail(place + "/on_ground", it->dump().substr(0, 60), "true or false");
    row.on_ground = it->get<bool>();
  }
  return row;
}

/// One row for each text of the entry: "match": "GAS*", or "anywhere": ["gas", "gas main"], and so on.
Result<void> add_rows_of(const json& value, const std::string& place, MeaningTable& table) {
  if (!value.is_object()) return fail(place, value.dump().substr(0, 60), "an object with \"match\" and \"meaning\"");
  std::vector<MeaningRow> rows;
  for (const auto& [by, key] : EnumNames<MatchBy>::list) {
    const auto it = value.find(key);
    if (it == value.end()) continue;
    const json list = it->is_array() ? *it : json::array({*it});
    for (const json& one : list) {
      if (!one.is_string() || one.get<std::string>().empty())
        return fail(place + "/" + std::string(key), one.dump().substr(0, 60), "a layer or code, \"GAS*\"");
      rows.push_back({one.get<std::string>(), {}, {}, by, false});
    }
  }
  if (rows.empty()) return fail(place + "/match", "nothing", "a layer or code, \"GAS*\"");
  const Result<MeaningRow> common = common_of(value, place);
  if (!common) return tl::unexpected(common.error());
  for (MeaningRow& row : rows) {
    row.meaning = common->meaning;
    row.source = common->source;
    row.on_ground = common->on_ground;
    table.push_back(std::move(row));
  }
  return {};
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
    const Result<void> done = add_rows_of(rows[i], "/" + std::to_string(i), table);
    if (!done) return tl::unexpected(done.error());
  }
  return table;
}

std::string write_meanings(const MeaningTable& rows) {
  std::string text = "[";
  for (const MeaningRow& row : rows) {
    text += (text.size() > 1 ? ",\n " : "\n ") + std::string("{\"") + std::string(word_of(row.by)) +
            "\": " + json(row.match).dump() + ", \"meaning\": \"" + std::string(word_of(row.meaning)) +
            "\", \"source_label\": \"" + std::string(word_of(row.source.label)) + "\"" +
            (row.on_ground ? ", \"on_ground\": true}" : "}");
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
  if (layer.empty() || meaning == Meaning::undecided) return own;
  // Whatever a layer of that name holds, the table must say the same already.
  const MeaningTable all = joined(own, built_in);
  Found found;
  found.layers = {layer, "another"};
  LayerSummary points, lines;
  points.name = lines.name = layer;
  points.points = lines.lines = 1;
  if (meaning_of(found, points, all) == meaning && meaning_of(found, lines, all) == meaning) return own;
  const std::string name = csv::lower(layer);
  std::erase_if(own, [&](const MeaningRow& row) { return csv::lower(row.match) == name; });
  own.insert(own.begin(), {layer, meaning, {"", SourceLabel::owners_setting}});
  return own;
}

}  // namespace burrow
