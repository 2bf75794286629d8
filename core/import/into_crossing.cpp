#include "burrow/import/into_crossing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/crossing/blank.h"
#include "burrow/language/say.h"
#include "importer.h"

namespace burrow {

ImportFile import_file(std::shared_ptr<const Found> found, const MeaningTable& table,
                       const std::vector<FieldShape>& shapes) {
  ImportFile file;
  for (const LayerSummary& layer : summaries(*found)) {
    const LayerReading reading = reading_of(*found, layer, table);
    LayerChoice choice;
    choice.meaning = reading.meaning;
    choice.on_ground = reading.on_ground;
    file.layers.push_back(choice);
  }
  file.fields = fields_for(found->table, shapes);
  file.found = std::move(found);
  return file;
}

std::optional<CrossingLine> proposed_line(const ImportFile& file) {
  const auto extent = extent_of(*file.found);
  if (!extent) return std::nullopt;
  const PlanPoint middle{(extent->low_x + extent->high_x) / 2, (extent->low_y + extent->high_y) / 2};
  constexpr double length_m = 10;
  const FoundFrame& frame = frame_of(file);
  double units = length_m / metres_in(plan_unit(file));
  if (frame.geographic) {
    constexpr double degree_m = 111'320;  // of the equator; a line to begin with need not be exactly 10 m
    units = length_m / (degree_m * std::max(0.05, std::cos(middle.y_m * pi / 180)));
  }
  return CrossingLine{{middle.x_m - units / 2, middle.y_m}, {middle.x_m + units / 2, middle.y_m}};
}

Result<Imported> into_crossing(const std::vector<ImportFile>& files, const CrossingLine& line,
                               const ImportBounds& bounds, const std::function<bool(double)>& progress) {
  Result<PlacedPlan> plan = place(files, line, [&progress] { return !progress || progress(0); });
  if (!plan) return tl::unexpected(plan.error());
  Result<Imported> imported = import_plan(*plan, bounds, progress);
  if (imported) {
    const std::string name = short_name(files.front().found->file);
    imported->name = name.substr(0, name.find_last_of('.'));
  }
  return imported;
}

Crossing crossing_from(const Imported& imported) {
  constexpr double depth_m = 1.2;
  Crossing crossing = blank_crossing(translated("New crossing"));
  crossing.name = imported.name.empty() ? crossing.name : imported.name;
  crossing.bore.exit.station = imported.length;
  // Nobody gave the ground: a line that ends before the launch counts as missing.
  crossing.site.ground = {{-2.0, 100.0}, {-1.0, 100.0}};
  crossing = with_imported(std::move(crossing), imported);
  crossing.bore.launch.elevation = Length{elevation_at(crossing.site.ground, 0) - depth_m};
  return crossing;
}

Crossing with_imported(Crossing crossing, const Imported& imported) {
  Site& site = crossing.site;
  if (!imported.ground.empty()) {
    site.ground = imported.ground;
    site.ground_points = imported.ground_points;
  }
  if (!imported.ground.empty() || !site.georeference) site.georeference = imported.georeference;
  const auto add = [&](auto& list, const auto& more, std::string_view prefix) {
    for (auto item : more) {
      item.id = free_id(crossing, prefix);
      list.push_back(std::move(item));
    }
  };
  add(site.utilities, imported.utilities, "u");
  add(site.surface, imported.surface, "f");
  add(site.boundaries, imported.boundaries, "b");
  add(site.background, imported.background, "g");
  return crossing;
}

}  // namespace burrow
