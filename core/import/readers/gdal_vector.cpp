#include <cpl_conv.h>
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <set>

#include "../dxf_curves.h"
#include "burrow/language/say.h"
#include "dxf_scan.h"
#include "json_crs.h"
#include "position_sizes.h"
#include "vector_reader.h"
#include "watched_file.h"

namespace burrow::gdal {

namespace {

std::string format_words(const std::string& driver) {
  if (driver == "DXF") return translated("DXF drawing");
  if (driver == "ESRI Shapefile") return "Shapefile";
  if (driver == "GPKG") return "GeoPackage";
  if (driver == "LIBKML" || driver == "KML") return "KML";
  if (driver == "OpenFileGDB") return translated("file geodatabase");
  if (driver == "MapInfo File") return translated("MapInfo table");
  return driver;
}

/// Degrees that cannot be: the writer left out which system the numbers are in.
void doubt_degrees(Found& found) {
  if (!found.frame.geographic) return;
  const auto extent = extent_of(found);
  if (!extent || (extent->low_x >= -360 && extent->high_x <= 360 && extent->low_y >= -90 && extent->high_y <= 90))
    return;
  found.frame = {};
  found.notes.emplace_back(
      translated("the file counts as degrees, but its numbers are none: the coordinate system is not known"));
}

tl::unexpected<Error> not_read_to_its_end() {
  return fail(translated("file"), std::string(stopped_by_person), translated("to be read to its end"),
              stopped_by_person);
}

/// What a library said of single things is for those who know it: a person is told that something was not read.
void note_troubles(const Listener& listener, FoundBuilder& builder) {
  if (!listener.errors().empty())
    builder.leave_out(translated("whole file"), "",
                      translated("a part that is broken or of a kind that is not known: it was not read"));
  if (listener.has_file_warnings())
    builder.found.notes.emplace_back(
        translated("parts of the file are not as its kind wants them: compare with where it comes from"));
}

/// How finely a drawing's arcs are cut, for as long as it lives.
class ArcSteps {
 public:
  explicit ArcSteps(double degrees) {
    CPLSetThreadLocalConfigOption("OGR_ARC_STEPSIZE", fmt::format("{:.6f}", degrees).c_str());
  }
  ~ArcSteps() { CPLSetThreadLocalConfigOption("OGR_ARC_STEPSIZE", nullptr); }
  ArcSteps(const ArcSteps&) = delete;
  ArcSteps& operator=(const ArcSteps&) = delete;
};

/// Tables of a GeoPackage that are none but are computed while they are read; such a computation need not end.
std::set<std::string> views_of(GDALDatasetH data) {
  std::set<std::string> views;
  OGRLayerH list = GDALDatasetExecuteSQL(
      data, "SELECT name FROM sqlite_master WHERE type <> 'table' AND type <> 'index'", nullptr, nullptr);
  if (!list) return views;
  while (OGRFeatureH row = OGR_L_GetNextFeature(list)) {
    views.insert(OGR_F_GetFieldAsString(row, 0));
    OGR_F_Destroy(row);
  }
  GDALDatasetReleaseResultSet(data, list);
  return views;
}

/// Of a drawing: as a person said, for what a drawing states is often wrong.
FileUnit unit_of(const DrawingScan& scan, const ReadOptions& options) {
  return options.unit.value_or(scan.units.unit().value_or(FileUnit::metre));
}

VectorReader::Kind kind_of(const std::string& driver, FileUnit unit) {
  VectorReader::Kind kind;
  kind.format = format_words(driver);
  kind.drawing = driver == "DXF";
  kind.altitudes = driver == "LIBKML" || driver == "KML";
  constexpr double thin_m = 0.002;
  if (kind.drawing) kind.tolerance = thin_m / metres_in(unit);
  return kind;
}

double arc_step_of(const DrawingScan& scan, FileUnit unit) {
  constexpr double within_m = 0.006;  // with what is thinned out afterwards below 10 mm
  return step_degrees(scan.largest_radius, within_m / metres_in(unit));
}

/// The drawing's own statement of where it lies, if its numbers are those of that system.
void take_place(const DrawingScan& scan, Found& found) {
  const std::string crs = scan.place.crs();
  if (crs.empty()) {
    if (!scan.place.definition.empty())
      found.notes.emplace_back(
          translated("the drawing states its place on the map in a way that is not used: state its coordinate system"));
    return;
  }
  FoundFrame frame;
  describe_code(crs, frame);
  const double metres = metres_in(frame.unit.value_or(FileUnit::metre));
  const bool fits = !frame.crs.empty() && !found.frame.unit_is_foreign && !scan.place.is_moved(metres) &&
                    (!found.frame.unit || found.frame.unit == frame.unit);
  if (!fits) {
    found.notes.push_back(
        say("the drawing states the coordinate system {}, and lies turned, shifted or in another unit "
            "on it: it is not used",
            crs));
    return;
  }
  found.frame.crs = frame.crs;
  found.frame.geographic = frame.geographic;
  found.frame.unit = frame.unit;
  found.frame.unit_is_doubtful = false;
}

std::optional<Error> take_all(VectorReader& reader, GDALDatasetH data, const WatchedFile& watched,
                              const NoNetwork& no_network) {
  auto error = reader.read(data);
  if (watched.stopped()) return not_read_to_its_end().value();
  if (auto refused = no_network.refusal()) return refused;
  return error;
}

/// Nothing is written beside the file, and nothing is fetched.
const char* const* open_options(const std::string& driver) {
  static constexpr std::array<const char*, 2> no_journal{"IMMUTABLE=YES", nullptr};
  static constexpr std::array<const char*, 6> no_schema{"WRITE_GFS=NO",  "DOWNLOAD_SCHEMA=NO",      "EXPOSE_GML_ID=NO",
                                                        "EXPOSE_FID=NO", "FORCE_SRS_DETECTION=YES", nullptr};
  return driver == "GPKG" ? no_journal.data() : driver == "GML" ? no_schema.data() : nullptr;
}

Result<Found> nothing_in(const Found& found) {
  return fail(translated("file"),
              found.left_out.empty() ? translated("nothing")
                                     : found.left_out.front().text + " " + found.left_out.front().reason,
              translated("points, lines or areas"));
}

}  // namespace

Result<Found> read_vector(const std::string& path, const std::string& driver, const ReadOptions& options) {
  set_up();
  const bool drawing = driver == "DXF";
  DrawingScan scan;
  if (drawing) {
    Result<DrawingScan> scanned = scan_drawing(path, options);
    if (!scanned) return tl::unexpected(scanned.error());
    scan = std::move(*scanned);
    CPLSetThreadLocalConfigOption("DXF_INLINE_BLOCKS", scan.inline_blocks ? "TRUE" : "FALSE");
    // Else all of a block would lie on the layer on which the block was put: a gas main in it on that of the kerbs.
    CPLSetThreadLocalConfigOption("DXF_MERGE_BLOCK_GEOMETRIES", "FALSE");
  }
  const FileUnit unit = unit_of(scan, options);
  const ArcSteps steps(arc_step_of(scan, unit));
  if (driver == "GeoJSON")
    if (const auto named = file_named_by_crs(path))
      return fail(translated("coordinate system"), as_utf8(named->substr(0, 80)),
                  translated("a named one: \"EPSG:25832\", an OGC URN, or WKT that names no file"));
  const Listener listener;
  const NoNetwork no_network;
  const std::array<const char*, 3> drivers{driver.c_str(), driver == "LIBKML" ? "KML" : nullptr, nullptr};
  // Those that read the whole file to open it: half of the way.
  const bool opens_whole = driver == "GeoJSON" || driver == "GML";
  double furthest = 0;
  const auto halfway = [&options, &furthest](double from) {
    return [&options, &furthest, from](double share) {
      furthest = std::max(furthest, from + share / 2);
      return options.progress(furthest);
    };
  };
  ReadOptions to_open = options, to_take = options;
  if (opens_whole && options.progress) {
    to_open.progress = halfway(0);
    to_take.progress = halfway(0.5);
  }
  WatchedFile watched(path, to_open);
  const DataSet data(GDALOpenEx(opens_whole ? watched.path().c_str() : path.c_str(), GDAL_OF_VECTOR | GDAL_OF_READONLY,
                                drivers.data(), open_options(driver), nullptr));
  if (watched.stopped()) return not_read_to_its_end();
  if (auto refused = no_network.refusal()) return tl::unexpected(*refused);
  if (!data.get())
    return fail(translated("file"), translated("something else than its name says, or a file cut short"),
                say("a {}, whole", format_words(driver)));
  VectorReader::Kind kind = kind_of(driver, unit);
  if (driver == "GPKG") kind.views = views_of(data.get());
  if (driver == "GPX") kind.parts = {"route_points", "track_points"};
  VectorReader reader(to_take, std::move(kind));
  if (drawing) apply(scan, reader.builder());
  if (auto error = take_all(reader, data.get(), watched, no_network)) return tl::unexpected(*error);
  note_troubles(listener, reader.builder());
  const bool mixed = driver.starts_with("GeoJSON") && mixes_position_sizes(path);
  Found found = reader.builder().finish(mixed);
  if (drawing) take_place(scan, found);
  doubt_degrees(found);
  if (found.features.empty() && found.surfaces.empty()) return nothing_in(found);
  return found;
}

}  // namespace burrow::gdal
