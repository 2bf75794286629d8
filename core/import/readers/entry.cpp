/// What the importer library shows to the program.

#include <fstream>

#include "../csv_fields.h"
#include "burrow/language/say.h"
#include "gdal_tools.h"
#include "landxml.h"
#include "project.h"
#include "readers.h"

namespace burrow {

namespace {

/// Features of maps are often handed on as plain XML.
bool is_gml(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::string head(4096, '\0');
  in.read(head.data(), static_cast<std::streamsize>(head.size()));
  const auto holds = [&](const char* word) { return head.find(word) != std::string::npos; };
  return holds("opengis.net/gml") && !holds("<LandXML") && (holds("FeatureCollection") || holds("CityModel"));
}

Result<Found> read(const std::string& path, const ReadOptions& options) {
  const std::string name = csv::lower(path);
  const auto ends = [&](std::string_view ending) { return name.ends_with(ending); };
  if (ends(".zip") || ends(".kmz")) return gdal::read_zip(path, options);
  if (ends(".dxf")) return gdal::read_vector(path, "DXF", options);
  if (ends(".geojson") || ends(".json")) return gdal::read_vector(path, "GeoJSON", options);
  if (ends(".shp")) return gdal::read_vector(path, translated("ESRI Shapefile"), options);
  if (ends(".gpkg")) return gdal::read_vector(path, "GPKG", options);
  if (ends(".kml")) return gdal::read_vector(path, "LIBKML", options);
  if (ends(".gpx")) return gdal::read_vector(path, "GPX", options);
  if (ends(".fgb")) return gdal::read_vector(path, "FlatGeobuf", options);
  if (ends(".gml")) return gdal::read_vector(path, "GML", options);
  if (ends(".tab") || ends(".mif")) return gdal::read_vector(path, "MapInfo File", options);
  if (ends(".gdb")) return gdal::read_vector(path, "OpenFileGDB", options);
  if (ends(".xml") && is_gml(path)) return gdal::read_vector(path, "GML", options);
  if (ends(".xml") || ends(".landxml")) return read_landxml(path, options);
  return gdal::read_raster(path, options);
}

void speak_as(const Dictionary& dictionary) {
  if (dictionary.language != burrow::dictionary().language) use_dictionary(dictionary);
}

constexpr Readers readers{
    readers_version,          &read,          &frames::project, &frames::unproject, &gdal::frame_of_code,
    &frames::metric_crs,      &gdal::heights, &gdal::triangles, &gdal::geopackage,  &speak_as,
    &gdal::when_out_of_memory};

}  // namespace

extern "C" __attribute__((visibility("default"))) const Readers* burrow_readers() {
  return &readers;
}

}  // namespace burrow
