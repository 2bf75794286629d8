/// Features as a GeoPackage, in memory.

#include <cpl_conv.h>
#include <cpl_vsi.h>

#include <map>
#include <nlohmann/json.hpp>

#include "burrow/language/say.h"
#include "gdal_tools.h"

namespace burrow::gdal {

namespace {

using nlohmann::json;

constexpr const char* in_memory = "/vsimem/crossing.gpkg";

bool is_height_list(const std::string& name) {
  return name == "elevation_m";
}

/// Heights of all vertices; empty where one is not known.
std::vector<double> heights_of(const json& properties) {
  std::vector<double> heights;
  const auto it = properties.find("elevation_m");
  if (it == properties.end() || !it->is_array()) return heights;
  for (const json& one : *it) {
    if (!one.is_number()) return {};
    heights.push_back(one.get<double>());
  }
  return heights;
}

OGRGeometryH line_of(const json& places, const std::vector<double>& heights, OGRwkbGeometryType kind) {
  const bool in_space = heights.size() == places.size() && !heights.empty();
  OGRGeometryH line = OGR_G_CreateGeometry(in_space ? OGR_GT_SetZ(kind) : kind);
  for (std::size_t i = 0; i < places.size(); ++i) {
    const double x = places[i].at(0).get<double>(), y = places[i].at(1).get<double>();
    if (in_space)
      OGR_G_AddPoint(line, x, y, heights[i]);
    else
      OGR_G_AddPoint_2D(line, x, y);
  }
  return line;
}

OGRGeometryH geometry_of(const json& feature) {
  const json& geometry = feature.at("geometry");
  const json& places = geometry.at("coordinates");
  if (geometry.at("type") == "LineString") return line_of(places, heights_of(feature.at("properties")), wkbLineString);
  OGRGeometryH area = OGR_G_CreateGeometry(wkbPolygon);
  for (const json& ring : places) OGR_G_AddGeometryDirectly(area, line_of(ring, {}, wkbLinearRing));
  return area;
}

void add_fields(OGRLayerH layer, const json& properties) {
  for (const auto& [name, value] : properties.items()) {
    if (is_height_list(name) || OGR_FD_GetFieldIndex(OGR_L_GetLayerDefn(layer), name.c_str()) >= 0) continue;
    const bool number = value.is_number() || (value.is_null() && name.ends_with("_m"));
    OGRFieldDefnH field = OGR_Fld_Create(name.c_str(), number ? OFTReal : OFTString);
    OGR_L_CreateField(layer, field, 1);
    OGR_Fld_Destroy(field);
  }
}

bool add_feature(OGRLayerH layer, const json& feature) {
  OGRFeatureH row = OGR_F_Create(OGR_L_GetLayerDefn(layer));
  for (const auto& [name, value] : feature.at("properties").items()) {
    const int at = OGR_F_GetFieldIndex(row, name.c_str());
    if (at < 0 || value.is_null()) continue;
    if (value.is_number())
      OGR_F_SetFieldDouble(row, at, value.get<double>());
    else
      OGR_F_SetFieldString(row, at, (value.is_string() ? value.get<std::string>() : value.dump()).c_str());
  }
  OGR_F_SetGeometryDirectly(row, geometry_of(feature));
  const bool done = OGR_L_CreateFeature(layer, row) == OGRERR_NONE;
  OGR_F_Destroy(row);
  return done;
}

bool write_all(GDALDatasetH data, const json& features, OGRSpatialReferenceH system) {
  std::map<std::string, OGRLayerH> layers;
  for (const json& feature : features) {
    const std::string what = feature.at("properties").at("what").get<std::string>();
    OGRLayerH& layer = layers[what];
    const bool is_line = feature.at("geometry").at("type") == "LineString";
    if (!layer)
      layer = GDALDatasetCreateLayer(data, what.c_str(), system, is_line ? wkbLineString25D : wkbPolygon, nullptr);
    if (!layer) return false;
    add_fields(layer, feature.at("properties"));
    if (!add_feature(layer, feature)) return false;
  }
  return !layers.empty();
}

}  // namespace

Result<std::string> geopackage(const std::string& features_json, const std::string& crs) {
  set_up();
  const Listener listener;
  const json all = json::parse(features_json, nullptr, false);
  OGRSpatialReferenceH system = OSRNewSpatialReference(nullptr);
  const std::string prefix = "EPSG:";
  const bool known =
      crs.starts_with(prefix) && OSRImportFromEPSG(system, std::atoi(crs.c_str() + prefix.size())) == OGRERR_NONE;
  OSRSetAxisMappingStrategy(system, OAMS_TRADITIONAL_GIS_ORDER);
  std::string bytes;
  if (known && all.is_object() && all.contains("features")) {
    GDALDatasetH data = GDALCreate(GDALGetDriverByName("GPKG"), in_memory, 0, 0, 0, GDT_Unknown, nullptr);
    const bool done = data && write_all(data, all["features"], system);
    if (data) GDALClose(data);
    vsi_l_offset size = 0;
    const GByte* begin = VSIGetMemFileBuffer(in_memory, &size, 0);
    if (done && begin) bytes.assign(reinterpret_cast<const char*>(begin), static_cast<std::size_t>(size));
    VSIUnlink(in_memory);
  }
  OSRDestroySpatialReference(system);
  if (!known)
    return fail(translated("coordinate system"), as_utf8(crs.substr(0, 80)),
                translated("one that PROJ knows, \"EPSG:25832\""));
  if (bytes.empty()) return fail("GeoPackage", translated("nothing"), translated("points, lines or areas"));
  return bytes;
}

}  // namespace burrow::gdal
