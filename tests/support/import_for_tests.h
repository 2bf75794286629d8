#pragma once
/// Files that the tests of the importer make, in a folder that is gone when the test ends.

#include <gdal.h>
#include <gtest/gtest.h>
#include <ogr_api.h>
#include <ogr_srs_api.h>
#include <stdlib.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "burrow/import/into_crossing.h"
#include "burrow/import/read_file.h"
#include "read_here.h"

namespace burrow::test {

class WithFolder : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (std::filesystem::temp_directory_path() / "burrow-import-XXXXXX").string();
    ASSERT_NE(::mkdtemp(name.data()), nullptr);
    folder_ = name;
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  [[nodiscard]] std::string path(const std::string& name) const { return folder_ + "/" + name; }
  std::string write(const std::string& name, std::string_view text) const {
    std::ofstream(path(name), std::ios::binary) << text;
    return path(name);
  }
  [[nodiscard]] std::vector<std::string> names() const {
    std::vector<std::string> all;
    for (const auto& entry : std::filesystem::directory_iterator(folder_)) all.push_back(entry.path().filename());
    std::sort(all.begin(), all.end());
    return all;
  }
  Found read(const std::string& name, const ReadOptions& options = {}) const {
    const Result<Found> found = read_here(path(name), options);
    EXPECT_TRUE(found) << found.error().english();
    return found.value_or(Found{});
  }
  Error error_of(const std::string& name, const ReadOptions& options = {}) const {
    const Result<Found> found = read_here(path(name), options);
    EXPECT_FALSE(found) << name;
    return found ? Error{} : found.error();
  }

  std::string folder_;
};

/// One layer of lines in a file of any kind that GDAL writes.
inline void write_lines(const std::string& driver, const std::string& path, int epsg,
                        const std::vector<std::vector<Point3>>& lines, bool with_z = true) {
  GDALAllRegister();
  GDALDatasetH data = GDALCreate(GDALGetDriverByName(driver.c_str()), path.c_str(), 0, 0, 0, GDT_Unknown, nullptr);
  ASSERT_NE(data, nullptr);
  OGRSpatialReferenceH srs = OSRNewSpatialReference(nullptr);
  OSRImportFromEPSG(srs, epsg);
  OSRSetAxisMappingStrategy(srs, OAMS_TRADITIONAL_GIS_ORDER);
  OGRLayerH layer = GDALDatasetCreateLayer(data, "mains", srs, with_z ? wkbLineString25D : wkbLineString, nullptr);
  OGRFieldDefnH name = OGR_Fld_Create("kind", OFTString);
  OGR_L_CreateField(layer, name, 1);
  OGR_Fld_Destroy(name);
  for (const auto& line : lines) {
    OGRFeatureH feature = OGR_F_Create(OGR_L_GetLayerDefn(layer));
    OGR_F_SetFieldString(feature, 0, "gas main");
    OGRGeometryH geometry = OGR_G_CreateGeometry(with_z ? wkbLineString25D : wkbLineString);
    for (const Point3& p : line)
      with_z ? OGR_G_AddPoint(geometry, p.x_m, p.y_m, p.z_m) : OGR_G_AddPoint_2D(geometry, p.x_m, p.y_m);
    OGR_F_SetGeometryDirectly(feature, geometry);
    EXPECT_EQ(OGR_L_CreateFeature(layer, feature), OGRERR_NONE);
    OGR_F_Destroy(feature);
  }
  OSRDestroySpatialReference(srs);
  GDALClose(data);
}

/// A grid of heights of the plane z = a + b·x + c·y, a cell `size` wide, its upper left corner at (x, y).
struct Plane {
  double a = 0, b = 0, c = 0;
  [[nodiscard]] double at(double x, double y) const { return a + b * x + c * y; }
};
inline void write_grid(const std::string& path, int epsg, double x, double y, double size, int cells,
                       const Plane& plane, const char* unit = nullptr) {
  GDALAllRegister();
  GDALDatasetH data = GDALCreate(GDALGetDriverByName("GTiff"), path.c_str(), cells, cells, 1, GDT_Float64, nullptr);
  ASSERT_NE(data, nullptr);
  double to_plan[6] = {x, size, 0, y, 0, -size};
  GDALSetGeoTransform(data, to_plan);
  if (epsg > 0) {
    OGRSpatialReferenceH srs = OSRNewSpatialReference(nullptr);
    OSRImportFromEPSG(srs, epsg);
    GDALSetSpatialRef(data, srs);
    OSRDestroySpatialReference(srs);
  }
  std::vector<double> heights;
  for (int row = 0; row < cells; ++row)
    for (int column = 0; column < cells; ++column)
      heights.push_back(plane.at(x + (column + 0.5) * size, y - (row + 0.5) * size));
  GDALRasterBandH band = GDALGetRasterBand(data, 1);
  EXPECT_EQ(GDALRasterIO(band, GF_Write, 0, 0, cells, cells, heights.data(), cells, cells, GDT_Float64, 0, 0), CE_None);
  GDALSetRasterNoDataValue(band, -9999);
  if (unit) GDALSetRasterUnitType(band, unit);
  GDALClose(data);
}

inline std::string pair(int code, const std::string& value) {
  return std::to_string(code) + "\n" + value + "\n";
}
inline std::string header(const std::string& unit) {
  return pair(0, "SECTION") + pair(2, "HEADER") + pair(9, "$INSUNITS") + pair(70, unit) + pair(0, "ENDSEC");
}
inline std::string drawing_line(const std::string& layer, double x1, double y1, double z1, double x2, double y2,
                                double z2) {
  std::string text = pair(0, "LINE") + pair(8, layer);
  for (const auto& [code, v] : {std::pair{10, x1}, {20, y1}, {30, z1}, {11, x2}, {21, y2}, {31, z2}})
    text += pair(code, std::to_string(v));
  return text;
}
inline std::string drawing(const std::string& unit, const std::string& entities, const std::string& blocks = {}) {
  return header(unit) + pair(0, "SECTION") + pair(2, "BLOCKS") + blocks + pair(0, "ENDSEC") + pair(0, "SECTION") +
         pair(2, "ENTITIES") + entities + pair(0, "ENDSEC") + pair(0, "EOF");
}
inline std::string block(const std::string& name, const std::string& inside) {
  return pair(0, "BLOCK") + pair(8, "0") + pair(2, name) + pair(70, "0") + pair(10, "0") + pair(20, "0") +
         pair(30, "0") + inside + pair(0, "ENDBLK");
}
inline std::string insert(const std::string& name, double x, double y) {
  return pair(0, "INSERT") + pair(8, "0") + pair(2, name) + pair(10, std::to_string(x)) + pair(20, std::to_string(y));
}

inline bool says(const std::vector<std::string>& notes, std::string_view word) {
  return std::any_of(notes.begin(), notes.end(),
                     [&](const std::string& n) { return n.find(word) != std::string::npos; });
}

}  // namespace burrow::test
