/// What a person said of the columns of a file, kept for the next file of that shape.

#include <algorithm>
#include <nlohmann/json.hpp>

#include "burrow/import/fields.h"

namespace burrow {

namespace {

using nlohmann::json;

template <class E>
void put(json& row, const char* key, const std::optional<E>& value) {
  if (value) row[key] = word_of(*value);
}

template <class E>
Result<void> take(const json& row, const char* key, const std::string& place, std::optional<E>& into) {
  const auto it = row.find(key);
  if (it == row.end()) return {};
  into = it->is_string() ? from_word<E>(it->get<std::string>()) : std::nullopt;
  if (!into) return fail(place + "/" + key, it->dump().substr(0, 60), known_words<E>());
  return {};
}

std::vector<std::string> columns_of(const FoundTable& table) {
  std::vector<std::string> names;
  for (const FoundField& f : table.fields) names.push_back(f.name);
  return names;
}

Result<FieldChoice> choice_of(const json& row, const std::string& place) {
  if (!row.is_object()) return fail(place, row.dump().substr(0, 60), "an object");
  FieldChoice choice;
  std::optional<FieldUse> use;
  auto done = take(row, "use", place, use);
  if (done) done = take(row, "unit", place, choice.unit);
  if (done) done = take(row, "diameter", place, choice.diameter);
  if (done) done = take(row, "level", place, choice.level);
  if (!done) return tl::unexpected(done.error());
  choice.use = use.value_or(FieldUse::not_used);
  choice.is_decided = true;
  return choice;
}

}  // namespace

std::string write_field_shapes(const std::vector<FieldShape>& shapes) {
  json all = json::array();
  for (const FieldShape& shape : shapes) {
    json row;
    row["columns"] = shape.columns;
    row["choices"] = json::array();
    for (const FieldChoice& choice : shape.choices) {
      json one = json::object();
      one["use"] = word_of(choice.use);
      put(one, "unit", choice.unit);
      put(one, "diameter", choice.diameter);
      put(one, "level", choice.level);
      row["choices"].push_back(std::move(one));
    }
    all.push_back(std::move(row));
  }
  return all.dump(1) + "\n";
}

Result<std::vector<FieldShape>> read_field_shapes(std::string_view json_text) {
  const json all = json::parse(json_text, nullptr, false);
  if (!all.is_array())
    return fail("", "something else than a list", "a list of shapes with \"columns\" and \"choices\"");
  std::vector<FieldShape> shapes;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const std::string place = "/" + std::to_string(i);
    FieldShape shape;
    const bool good = all[i].is_object() && all[i].contains("columns") && all[i]["columns"].is_array() &&
                      all[i].contains("choices") && all[i]["choices"].is_array() &&
                      all[i]["columns"].size() == all[i]["choices"].size();
    if (!good) return fail(place, all[i].dump().substr(0, 60), "as many \"choices\" as \"columns\"");
    for (std::size_t k = 0; k < all[i]["columns"].size(); ++k) {
      const json& name = all[i]["columns"][k];
      if (!name.is_string()) return fail(place + "/columns/" + std::to_string(k), name.dump().substr(0, 60), "a name");
      shape.columns.push_back(name.get<std::string>());
      auto choice = choice_of(all[i]["choices"][k], place + "/choices/" + std::to_string(k));
      if (!choice) return tl::unexpected(choice.error());
      shape.choices.push_back(std::move(*choice));
    }
    shapes.push_back(std::move(shape));
  }
  return shapes;
}

std::vector<FieldShape> remembered(std::vector<FieldShape> shapes, const FoundTable& table,
                                   const std::vector<FieldChoice>& choices) {
  constexpr std::size_t most = 200;
  const std::vector<std::string> columns = columns_of(table);
  if (columns.empty() || choices.size() != columns.size()) return shapes;
  std::erase_if(shapes, [&](const FieldShape& shape) { return shape.columns == columns; });
  shapes.insert(shapes.begin(), {columns, choices});
  for (FieldChoice& choice : shapes.front().choices) choice.is_decided = true;
  if (shapes.size() > most) shapes.resize(most);
  return shapes;
}

std::vector<FieldChoice> fields_for(const FoundTable& table, const std::vector<FieldShape>& shapes) {
  const std::vector<std::string> columns = columns_of(table);
  for (const FieldShape& shape : shapes)
    if (shape.columns == columns) return shape.choices;
  return guessed_fields(table);
}

}  // namespace burrow
