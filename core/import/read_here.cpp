#include "read_here.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "burrow/import/read_file.h"
#include "burrow/import/survey_csv.h"
#include "burrow/language/say.h"
#include "companions.h"
#include "csv_fields.h"
#include "found_builder.h"
#include "readers/readers.h"

namespace burrow {

namespace {

namespace fs = std::filesystem;

bool ends_with_any(const std::string& name, std::initializer_list<std::string_view> endings) {
  return std::any_of(endings.begin(), endings.end(), [&](std::string_view e) { return name.ends_with(e); });
}

/// A text grid of heights and a text of points may both be called .asc.
bool is_text_grid(std::string_view head) {
  head.remove_prefix(std::min(head.find_first_not_of(" \t\r\n"), head.size()));
  const std::string word = csv::lower(head.substr(0, head.find_first_of(" \t\r\n")));
  return word == "ncols" || word == "nrows" || word == "xllcorner" || word == "xllcenter";
}

std::optional<Error> cannot_be(const std::string& path, std::string_view head) {
  constexpr std::size_t brand = 7;  // the signature of a binary drawing begins with its maker's word
  if (head.size() > 12 && head.substr(brand).starts_with(" Binary DXF\r\n"))
    return Error{path, translated("a binary DXF drawing"), translated("DXF saved as text (ASCII)")};
  if (head.starts_with("AC10") && head.find('\0') != std::string_view::npos)
    return Error{path, translated("a DWG drawing"), translated("DXF saved as text (ASCII)")};
  return std::nullopt;
}

/// What to ask for in place of a kind that is not read.
std::optional<std::string> way_there(const std::string& name) {
  if (ends_with_any(name, {".dgn", ".dwf", ".dws", ".dwt"})) return translated("DXF saved as text (ASCII)");
  if (ends_with_any(name, {".gdbtable", ".gdbtablx", ".gdbindexes"}))
    return translated("the whole folder that it belongs to, whose name ends in .gdb");
  if (name.ends_with(".mid")) return translated("the .mif file beside it, which names it");
  if (ends_with_any(name, {".dat", ".map", ".id", ".ind"}))
    return translated("the .tab file beside it, which names it");
  if (ends_with_any(name, {".dbf", ".shx", ".prj", ".cpg"}))
    return translated("the .shp file beside it, which names it");
  if (ends_with_any(name, {".qgz", ".qgs", ".mdb", ".e00", ".sqlite"}))
    return translated("GeoPackage, GeoJSON or a zipped Shapefile, as any geographic information system saves them");
  if (ends_with_any(name, {".las", ".laz", ".e57", ".ply", ".pcd"}))
    return translated("a grid of heights (GeoTIFF), or the ground points as text: x y z");
  if (ends_with_any(name, {".xlsx", ".xls", ".ods"})) return translated("the table saved as text (CSV)");
  if (ends_with_any(name, {".pdf", ".png", ".jpg", ".jpeg", ".svg", ".bmp"}))
    return translated("the drawing or map data behind the picture: DXF, GeoPackage or Shapefile");
  if (ends_with_any(name, {".ifc", ".rvt", ".12da", ".jxl", ".mjf"})) return translated("LandXML, DXF or text (CSV)");
  return std::nullopt;
}

/// The first bytes; empty where nothing can be read.
std::string head_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::string head(512, '\0');
  in.read(head.data(), static_cast<std::streamsize>(head.size()));
  head.resize(static_cast<std::size_t>(in.gcount()));
  return head;
}

/// Survey points, which are read by the program's own code.
bool is_survey(const std::string& name, std::string_view head) {
  return ends_with_any(name, {".csv", ".txt", ".asc", ".pts", ".xyz"}) && !is_text_grid(head);
}

Result<Found> read_survey(const std::string& path, const ReadOptions& options) {
  constexpr std::uintmax_t most_bytes = 512u << 20u;
  std::error_code error;
  const std::uintmax_t size = fs::file_size(path, error);
  if (size > most_bytes) return fail(translated("file"), say("{} MB", size >> 20u), translated("at most 512 MB"));
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  ReadOptions as_named = options;
  as_named.x_before_y = csv::lower(path).ends_with(".xyz");
  return read_survey_csv(text.view(), as_named);
}

Result<Found> read_with_library(const std::string& path, const std::string& name, std::string_view head,
                                const ReadOptions& options) {
  if (!is_text_grid(head) &&
      !ends_with_any(name, {".dxf", ".geojson", ".json", ".shp", ".zip", ".gpkg", ".kml", ".kmz", ".gpx", ".fgb",
                            ".xml", ".landxml", ".tif", ".tiff", ".gml", ".tab", ".mif", ".gdb"})) {
    std::string known;
    for (const std::string& ending : readable_endings()) known += (known.empty() ? "" : " ") + ending.substr(1);
    return fail(translated("file"), translated("a kind of file that is not read"), way_there(name).value_or(known));
  }
  // These are held in memory whole while they are read, at several times their size.
  constexpr std::uintmax_t most_text_bytes = 256u << 20u;
  std::error_code error;
  const std::uintmax_t size = fs::file_size(path, error);
  if (ends_with_any(name, {".json", ".geojson", ".xml", ".landxml", ".kml", ".gpx", ".gml"}) && size > most_text_bytes)
    return fail(translated("file"), say("{} MB", size >> 20u),
                translated("at most 256 MB: a part of the data near the crossing"));
  const Result<const Readers*> readers = load_readers();
  if (!readers) return tl::unexpected(readers.error());
  return (*readers)->read(path, options);
}

/// A folder that is read as one file: a file geodatabase.
bool is_database(const std::string& path) {
  std::error_code error;
  return csv::lower(path).ends_with(".gdb") && fs::is_directory(path, error);
}

/// All in it lies there itself: no link leads out of it, no pipe waits in it.
std::optional<Error> no_plain_database(const std::string& path) {
  std::error_code error;
  for (fs::directory_iterator at(path, error), end; !error && at != end; at.increment(error))
    if (!at->is_regular_file(error) || at->is_symlink(error))
      return Error{at->path().string(), translated("no plain file"), translated("a file geodatabase, files alone")};
  if (error) return Error{path, translated("a folder that cannot be read"), translated("a file geodatabase")};
  return std::nullopt;
}

}  // namespace

std::string as_one_file(const std::string& path) {
  std::string given = path;
  while (given.size() > 1 && given.ends_with('/')) given.pop_back();
  const std::string folder = fs::path(given).parent_path().string();
  return is_database(folder) ? folder : given;
}

std::optional<Error> no_plain_file(const std::string& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (fs::is_directory(status) && is_database(path)) return std::nullopt;
  if (fs::is_directory(status))
    return Error{path, translated("a folder"), translated("a file, or a folder named .gdb")};
  if (!fs::exists(status))
    return Error{path, translated("no file that can be opened"), translated("a file that is there and may be read")};
  // A pipe or a device may never end.
  if (!fs::is_regular_file(status)) return Error{path, translated("a pipe or a device"), translated("a file")};
  return std::nullopt;
}

std::optional<Error> no_plain_companion(const std::string& path) {
  if (is_database(path)) return no_plain_database(path);
  for (const std::string& beside : with_companions(path)) {
    std::error_code error;
    const fs::file_status status = fs::status(beside, error);
    if (fs::exists(status) && !fs::is_regular_file(status) && !fs::is_directory(status))
      return Error{beside, translated("a pipe or a device"), translated("a file")};
  }
  return std::nullopt;
}

bool needs_library(const std::string& path) {
  return !is_survey(csv::lower(path), head_of(path));
}

Result<Found> read_here(const std::string& path, const ReadOptions& options) {
  if (auto no = no_plain_file(path)) return tl::unexpected(*no);
  const bool database = is_database(path);
  if (!database && !std::ifstream(path, std::ios::binary))
    return fail(path, translated("no file that can be opened"), translated("a file that is there and may be read"));
  const std::string head = head_of(path), name = csv::lower(path);
  if (head.empty() && !database)
    return fail(path, translated("an empty file"), translated("survey, drawing or map data"));
  if (auto no = cannot_be(path, head)) return tl::unexpected(*no);
  Result<Found> found =
      is_survey(name, head) ? read_survey(path, options) : read_with_library(path, name, head, options);
  if (!found) {
    Error why = std::move(found).error();
    const std::string place = translated_phrase(why.place);
    why.place = place == "file" || place == translated("file") ? path : path + ": " + place;
    why.found = as_utf8(translated_phrase(why.found));
    return tl::unexpected(std::move(why));
  }
  // A reader asks now and then; what it met since counts too.
  std::size_t count = found->vertices.size();
  for (const FoundSurface& s : found->surfaces) count += s.points.size();
  if (count > options.most_vertices)
    return fail(path, say_count("more than {} vertex", "more than {} vertices", options.most_vertices),
                translated("a part of the drawing or survey near the crossing"));
  found->file = path;
  return found;
}

}  // namespace burrow
