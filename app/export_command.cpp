/// export: files for other programs.

#include <ostream>

#include "burrow/document/text.h"
#include "burrow/export/csv.h"
#include "burrow/export/dxf.h"
#include "burrow/export/geojson.h"
#include "burrow/export/map_dxf.h"
#include "burrow/file/disk.h"
#include "burrow/import/geopackage.h"
#include "burrow/import/longitude_latitude.h"
#include "burrow/sheet/sheet.h"
#include "commands.h"
#include "opened.h"

namespace burrow {

namespace {

constexpr const char* endings = "a name that ends in .dxf, .csv, .geojson, .gpkg or .svg";

std::string ending_of(const std::string& path) {
  const std::size_t dot = path.find_last_of("./");
  std::string ending = dot == std::string::npos || path[dot] == '/' ? std::string() : path.substr(dot + 1);
  for (char& c : ending)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return ending;
}

Result<std::string> text_of(const std::string& ending, const Options& options, const Opened& opened) {
  const Result<UnitSystem> units = sheet_units(options, opened.crossing);
  if (!units) return tl::unexpected(units.error());
  if (ending == "csv") {
    const std::string what = options.value("--what", "path");
    return (options.has("--bom") ? byte_order_mark : "") +
           write_csv(*from_word<CsvTable>(what), opened.crossing, opened.assessment, *units);
  }
  const auto on_map = [&](std::vector<PlanPoint> local) {
    return map_coordinates(*opened.crossing.site.georeference, std::move(local));
  };
  if (ending == "dxf" && options.has("--map")) return write_map_dxf(opened.crossing, opened.assessment, on_map);
  if (ending == "gpkg")
    return write_geojson(opened.crossing, opened.assessment, on_map).and_then([&](const std::string& features) {
      return geopackage(features, *opened.crossing.site.georeference);
    });
  if (ending == "dxf") {
    const DxfOptions drawing{*from_word<DxfView>(options.value("--what", "both")),
                             *from_word<DxfPlace>(options.value("--place", "local")),
                             *from_word<DxfLength>(options.value("--lengths", "m"))};
    return write_dxf(opened.crossing, opened.tables, opened.assessment, *units, drawing);
  }
  return write_geojson(opened.crossing, opened.assessment, [&](std::vector<PlanPoint> local) {
    return longitude_latitude(*opened.crossing.site.georeference, std::move(local));
  });
}

/// Words that the ending does not know are refused before anything is read.
Result<void> words_fit(const Options& options, const std::string& ending) {
  if (options.has("--what")) {
    const std::string what = options.value("--what", "");
    if (ending != "csv" && ending != "dxf")
      return fail("--what", what, "-o OUT.csv or OUT.dxf: only tables and drawings have a choice");
    if (ending == "csv" && !from_word<CsvTable>(what)) return fail("--what", what, known_words<CsvTable>());
    if (ending == "dxf" && !from_word<DxfView>(what)) return fail("--what", what, known_words<DxfView>());
  }
  for (const char* name : {"--place", "--lengths"})
    if (options.has(name) && ending != "dxf")
      return fail(name, options.value(name, ""), "-o OUT.dxf: only drawings have a choice");
  if (const std::string place = options.value("--place", "local"); !from_word<DxfPlace>(place))
    return fail("--place", place, known_words<DxfPlace>());
  if (const std::string lengths = options.value("--lengths", "m"); !from_word<DxfLength>(lengths))
    return fail("--lengths", lengths, known_words<DxfLength>());
  return {};
}

Result<void> write_export(const CommandArgs& args) {
  const Result<Options> options = read_options(args, {{"-o", true},
                                                      {"--what", true},
                                                      {"--units", true},
                                                      {"--bom", false},
                                                      {"--map", false},
                                                      {"--place", true},
                                                      {"--lengths", true}});
  if (!options) return tl::unexpected(options.error());
  const std::string path = options->value("-o", "");
  const std::string ending = ending_of(path);
  if (ending != "dxf" && ending != "csv" && ending != "geojson" && ending != "gpkg" && ending != "svg")
    return fail("-o", path.empty() ? "nothing" : path, endings);
  if (const Result<void> fits = words_fit(*options, ending); !fits) return fits;
  if (options->has("--bom") && ending != "csv") return fail("--bom", path, "-o OUT.csv: only tables may begin with it");
  if (options->has("--map") && ending != "dxf")
    return fail("--map", path, "-o OUT.dxf: map files lie in the coordinates of the map anyway");
  for (const char* name : {"--what", "--place", "--lengths"})
    if (options->has("--map") && options->has(name))
      return fail("--map", name, "one of the two: the plan on the map is drawn in the map's own lengths");
  const Result<Opened> opened = open_one(*options);
  if (!opened) return tl::unexpected(opened.error());
  if (ending == "svg") {
    const Result<UnitSystem> units = sheet_units(*options, opened->crossing);
    if (!units) return tl::unexpected(units.error());
    const Result<Sheet> sheet = sheet_of(opened->crossing, opened->assessment, opened->tables, *units);
    if (!sheet) return tl::unexpected(sheet.error());
    return write_sheet_svg(*sheet, text_from(path));
  }
  const Result<std::string> text = text_of(ending, *options, *opened);
  if (!text) return tl::unexpected(text.error());
  return save_atomically(path, *text);
}

}  // namespace

int export_command(const CommandArgs& args, Streams streams) {
  const Result<void> done = write_export(args);
  if (done) return 0;
  streams.err << "burrowline export: " << translated_error(done.error()) << "\n";
  return 2;
}

}  // namespace burrow
