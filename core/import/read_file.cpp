#include "burrow/import/read_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "burrow/base/say.h"
#include "burrow/import/survey_csv.h"
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
  return csv::lower(head.substr(0, 5)) == "ncols";
}

std::optional<Error> cannot_be(const std::string& path, std::string_view head) {
  constexpr std::size_t brand = 7;  // the signature of a binary drawing begins with its maker's word
  if (head.size() > 12 && head.substr(brand).starts_with(" Binary DXF\r\n"))
    return Error{path, said("a binary DXF drawing"), said("DXF saved as text (ASCII)")};
  if (head.starts_with("AC10") && head.find('\0') != std::string_view::npos)
    return Error{path, said("a DWG drawing"), said("DXF saved as text (ASCII)")};
  return std::nullopt;
}

}  // namespace

const std::vector<std::string>& readable_endings() {
  static const std::vector<std::string> all{"*.csv",     "*.txt",  "*.asc",     "*.pts", "*.xyz",  "*.dxf",
                                            "*.geojson", "*.json", "*.shp",     "*.zip", "*.gpkg", "*.kml",
                                            "*.kmz",     "*.xml",  "*.landxml", "*.tif", "*.tiff"};
  return all;
}

Result<Found> read_foreign_file(const std::string& path, const ReadWish& wish) {
  std::error_code error;
  if (fs::is_directory(path, error)) return fail(path, said("a folder"), said("a file"));
  std::ifstream in(path, std::ios::binary);
  if (!in) return fail(path, said("no file that can be opened"), said("a file that is there and may be read"));
  std::string head(512, '\0');
  in.read(head.data(), static_cast<std::streamsize>(head.size()));
  head.resize(static_cast<std::size_t>(in.gcount()));
  if (head.empty()) return fail(path, said("an empty file"), said("survey, drawing or map data"));
  if (auto no = cannot_be(path, head)) return tl::unexpected(*no);
  const std::string name = csv::lower(path);
  const auto with_name = [&](Result<Found> found) -> Result<Found> {
    if (!found) {
      Error why = std::move(found).error();
      why.place = why.place == "file" ? Phrase(path) : phrase("{}: {}", path, std::move(why.place));
      why.found = as_utf8(said_phrase(why.found));
      return tl::unexpected(std::move(why));
    }
    found->file = path;
    return found;
  };
  if (ends_with_any(name, {".csv", ".txt", ".asc", ".pts", ".xyz"}) && !is_text_grid(head)) {
    constexpr std::uintmax_t most_bytes = 512u << 20u;
    const std::uintmax_t size = fs::file_size(path, error);
    if (size > most_bytes) return fail(path, say("{} MB", size >> 20u), said("at most 512 MB"));
    std::ostringstream text;
    in.clear();
    in.seekg(0);
    text << in.rdbuf();
    return with_name(read_survey_csv(text.view(), wish));
  }
  if (!is_text_grid(head) && !ends_with_any(name, {".dxf", ".geojson", ".json", ".shp", ".zip", ".gpkg", ".kml", ".kmz",
                                                   ".xml", ".landxml", ".tif", ".tiff"})) {
    std::string known;
    for (const std::string& ending : readable_endings()) known += (known.empty() ? "" : " ") + ending.substr(1);
    return fail(path, said("a kind of file that is not read"), known);
  }
  // These are held in memory whole while they are read, at several times their size.
  constexpr std::uintmax_t most_text_bytes = 256u << 20u;
  const std::uintmax_t size = fs::file_size(path, error);
  if (ends_with_any(name, {".json", ".geojson", ".xml", ".landxml", ".kml"}) && size > most_text_bytes)
    return fail(path, say("{} MB", size >> 20u), said("at most 256 MB: a part of the data near the crossing"));
  const Result<const Readers*> readers = load_readers();
  if (!readers) return tl::unexpected(readers.error());
  return with_name((*readers)->read(path, wish));
}

}  // namespace burrow
