#include "pipe_walls.h"

#include <nlohmann/json.hpp>
#include <string>
#include <utility>
#include <vector>

#include "burrow/base/ensure.h"
#include "burrow_resources.h"
#include "layer_words.h"

namespace burrow {

namespace {

struct WallRow {
  std::vector<std::string> materials;
  bool by_nominal = false, by_inside = false;
  std::vector<std::pair<double, double>> outside_m;  ///< of sizes up to the first number; both go up
};

std::vector<WallRow> read_rows() {
  const nlohmann::json all = nlohmann::json::parse(embedded_text("tables/pipe_walls.json"), nullptr, false);
  BURROW_ENSURE(all.is_array());
  std::vector<WallRow> rows;
  for (const nlohmann::json& one : all) {
    WallRow row;
    row.materials = one.at("materials").get<std::vector<std::string>>();
    const auto by = one.at("by").get<std::string>();
    row.by_nominal = by != "inside";
    row.by_inside = by != "nominal";
    for (const nlohmann::json& pair : one.at("outside_m"))
      row.outside_m.emplace_back(pair.at(0).get<double>(), pair.at(1).get<double>());
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace

std::optional<Length> outside_of(Length diameter, DiameterMeant meant, std::string_view material) {
  if (!(diameter.m > 0)) return std::nullopt;
  if (meant == DiameterMeant::outside) return diameter;
  static const std::vector<WallRow> rows = read_rows();
  const LayerWords words(material);
  // The longest word counts, as with layers: "ductile iron" before "iron".
  const WallRow* best = nullptr;
  std::size_t longest = 0;
  for (const WallRow& row : rows) {
    if (!(meant == DiameterMeant::nominal ? row.by_nominal : row.by_inside)) continue;
    for (const std::string& phrase : row.materials)
      if (phrase.size() > longest && words.find(phrase)) {
        best = &row;
        longest = phrase.size();
      }
  }
  if (!best) return std::nullopt;
  for (const auto& [size_m, outside_m] : best->outside_m)
    if (diameter.m <= size_m + 1e-9) return Length{outside_m};
  return std::nullopt;
}

}  // namespace burrow
