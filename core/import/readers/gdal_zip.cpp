#include <cpl_conv.h>
#include <cpl_string.h>
#include <cpl_vsi.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "../csv_fields.h"
#include "burrow/language/say.h"
#include "gdal_tools.h"

namespace burrow::gdal {

namespace {

struct Entry {
  std::string path;  ///< within GDAL's file system
  std::string driver;
};

constexpr std::array<std::pair<std::string_view, std::string_view>, 13> known{{{".shp", "ESRI Shapefile"},
                                                                               {".geojson", "GeoJSON"},
                                                                               {".json", "GeoJSON"},
                                                                               {".gpkg", "GPKG"},
                                                                               {".kml", "LIBKML"},
                                                                               {".gpx", "GPX"},
                                                                               {".fgb", "FlatGeobuf"},
                                                                               {".gml", "GML"},
                                                                               {".tab", "MapInfo File"},
                                                                               {".mif", "MapInfo File"},
                                                                               {".gdb/", "OpenFileGDB"},
                                                                               {".tiff", "raster"},
                                                                               {".tif", "raster"}}};

std::vector<std::string> names_in(const std::string& folder) {
  constexpr int most_entries = 10000;
  CPLStringList list(VSIReadDirRecursive(folder.c_str()));
  std::vector<std::string> names;
  for (int i = 0; i < list.size() && i <= most_entries; ++i) names.emplace_back(list[i]);
  return names;
}

/// What stands in the directory of a zipped file may be a lie: everything is unpacked once and counted.
Result<void> count_bytes(const std::string& folder, const std::vector<std::string>& names, const ReadOptions& options) {
  std::size_t sum = 0;
  std::vector<char> some(1u << 20u);
  for (const std::string& name : names) {
    if (name.ends_with('/')) continue;
    VSILFILE* file = VSIFOpenL((folder + "/" + name).c_str(), "rb");
    if (!file) continue;
    std::size_t got = 0;
    bool ended = false;
    while (!ended && (got = VSIFReadL(some.data(), 1, some.size(), file)) > 0) {
      sum += got;
      ended = sum > options.most_unpacked_bytes || (options.progress && !options.progress(0));
    }
    VSIFCloseL(file);
    if (sum > options.most_unpacked_bytes)
      return fail(translated("zipped file"), say("more than {} MB once unpacked", options.most_unpacked_bytes >> 20u),
                  translated("a part of the data near the crossing"));
    if (ended) return fail(translated("file"), std::string(stopped_by_person), translated("to be read to its end"));
  }
  return {};
}

/// The attributes of both, one after the other; columns of one name are one.
FoundTable joined(const FoundTable& first, std::size_t first_rows, const FoundTable& second, std::size_t second_rows) {
  FoundTable all;
  all.fields = first.fields;
  all.texts = first.texts;
  all.texts.insert(all.texts.end(), second.texts.begin(), second.texts.end());
  std::vector<std::size_t> column;
  for (const FoundField& field : second.fields) {
    const auto it = std::find(all.fields.begin(), all.fields.end(), field);
    column.push_back(static_cast<std::size_t>(it - all.fields.begin()));
    if (it == all.fields.end()) all.fields.push_back(field);
  }
  const std::size_t wide = all.fields.size();
  all.cells.assign(wide * (first_rows + second_rows), 0);
  const auto more_texts = static_cast<std::uint32_t>(first.texts.size());
  for (std::size_t row = 0; row < first_rows; ++row)
    for (std::size_t f = 0; f < first.fields.size(); ++f)
      all.cells[row * wide + f] = first.cells[row * first.fields.size() + f];
  for (std::size_t row = 0; row < second_rows; ++row)
    for (std::size_t f = 0; f < second.fields.size(); ++f)
      if (const std::uint32_t cell = second.cells[row * second.fields.size() + f])
        all.cells[(first_rows + row) * wide + column[f]] = cell + more_texts;
  return all;
}

/// Adds what `more` holds to `all`; both lie in the same system.
void append(Found& all, Found more) {
  all.table = joined(all.table, all.features.size(), more.table, more.features.size());
  const auto layers = static_cast<std::uint32_t>(all.layers.size());
  const std::size_t vertices = all.vertices.size();
  all.layers.insert(all.layers.end(), more.layers.begin(), more.layers.end());
  all.vertices.insert(all.vertices.end(), more.vertices.begin(), more.vertices.end());
  for (FoundFeature& f : more.features) {
    f.layer += layers;
    f.first += vertices;
    all.features.push_back(std::move(f));
  }
  for (FoundRaster& r : more.rasters) {
    r.layer += layers;
    all.rasters.push_back(std::move(r));
  }
  for (FoundSurface& s : more.surfaces) {
    s.layer += layers;
    all.surfaces.push_back(std::move(s));
  }
  std::move(more.left_out.begin(), more.left_out.end(), std::back_inserter(all.left_out));
  std::move(more.notes.begin(), more.notes.end(), std::back_inserter(all.notes));
  all.left_out_more += more.left_out_more;
}

}  // namespace

Result<Found> read_zip(const std::string& path, const ReadOptions& options) {
  set_up();
  const Listener listener;
  const std::string folder = "/vsizip/{" + path + "}";
  const std::vector<std::string> names = names_in(folder);
  if (names.empty())
    return fail(translated("zipped file"), translated("nothing, or a file cut short"),
                translated("a zipped Shapefile"));
  if (auto counted = count_bytes(folder, names, options); !counted) return tl::unexpected(counted.error());
  if (csv::lower(path).ends_with(".kmz")) return read_vector(path, "LIBKML", options);
  std::vector<Entry> entries;
  for (const std::string& name : names)
    for (const auto& [ending, driver] : known)
      if (csv::lower(name).ends_with(ending))
        entries.push_back({folder + "/" + name.substr(0, name.find_last_not_of('/') + 1), std::string(driver)});
  if (entries.empty())
    return fail(translated("zipped file"),
                say_count("{} file, the first {}", "{} files, the first {}", names.size(), as_utf8(names.front())),
                translated("a zipped Shapefile, file geodatabase, GeoPackage, GeoJSON, GML, KML or GeoTIFF"));
  Found all;
  std::optional<Error> first_error;
  for (const Entry& entry : entries) {
    Result<Found> one =
        entry.driver == "raster" ? read_raster(entry.path, options) : read_vector(entry.path, entry.driver, options);
    if (!one) {
      if (one.error().code == stopped_by_person) return one;
      if (!first_error) first_error = one.error();
      all.left_out.push_back({as_utf8(entry.path.substr(folder.size() + 1)), translated_phrase(one.error().found),
                              translated("could not be read")});
      continue;
    }
    if (all.layers.empty()) {
      std::vector<LeftOut> before = std::move(all.left_out);
      all = std::move(*one);
      all.format = say("zipped {}", all.format);
      all.left_out.insert(all.left_out.begin(), before.begin(), before.end());
    } else if (one->frame.crs != all.frame.crs) {
      all.left_out.push_back({as_utf8(entry.path.substr(folder.size() + 1)), one->frame.crs,
                              translated("another coordinate system than the first file in the zip")});
    } else if (one->layers.size() + all.layers.size() > options.most_layers) {
      all.left_out.push_back({as_utf8(entry.path.substr(folder.size() + 1)),
                              say_count("{} layer", "{} layers", one->layers.size()),
                              say("more than {} layers in all", options.most_layers)});
    } else {
      append(all, std::move(*one));
    }
    if (all.vertices.size() > options.most_vertices)
      return fail(translated("file"), say_count("more than {} vertex", "more than {} vertices", options.most_vertices),
                  translated("a part of the drawing or survey near the crossing"));
  }
  if (all.layers.empty()) return tl::unexpected(*first_error);
  return all;
}

}  // namespace burrow::gdal
