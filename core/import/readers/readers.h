#pragma once
/// What the importer library gives: everything that needs GDAL, PROJ or pugixml. It is a module of its own, loaded when
/// first needed (`load_readers`), so that the start of the program pays nothing for them.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/import/found.h"
#include "burrow/language/say.h"

namespace burrow {

/// Where a local frame is laid: `crs` and a point in its coordinates.
struct LocalFrame {
  std::string crs;
  double x = 0;
  double y = 0;
};

/// Metres to the east and north of the frame's origin, of ground at the ellipsoid: scale 1 at the origin.
struct Projected {
  double error_m = 0;          ///< stated accuracy of the datum shift; 0: none was needed
  bool shift_unknown = false;  ///< there is no datum shift between the two systems, or its grid is missing
};

struct Readers {
  int version = 0;
  Result<Found> (*read)(const std::string& path, const ReadOptions& options) = nullptr;
  /// Points of `crs` into the local frame, in place; one that has no place there, such as the other side of the globe,
  /// becomes NaN.
  Result<Projected> (*project)(const std::string& crs, const LocalFrame& frame,
                               std::vector<PlanPoint>& points) = nullptr;
  /// Points of the local frame into `crs`, in place.
  Result<Projected> (*unproject)(const std::string& crs, const LocalFrame& frame,
                                 std::vector<PlanPoint>& points) = nullptr;
  /// What a coordinate system says of itself: "EPSG:25832", with its unit, or degrees.
  Result<FoundFrame> (*frame_of_crs)(const std::string& crs) = nullptr;
  /// The UTM zone (WGS 84) of a point of `crs`, as "EPSG:32632".
  Result<std::string> (*metric_crs)(const std::string& crs, double x, double y) = nullptr;
  /// Heights of a raster at points of its own plan coordinates; none outside it and where it has no data.
  Result<std::vector<std::optional<double>>> (*heights)(const FoundRaster& raster,
                                                        const std::vector<PlanPoint>& points) = nullptr;
  /// Delaunay triangles of points in plan; at least three that are not on one line.
  Result<std::vector<std::array<std::uint32_t, 3>>> (*triangles)(const std::vector<PlanPoint>& points) = nullptr;
  /// A GeoPackage of features that stand in metres of `crs`; see `geopackage.h`.
  Result<std::string> (*geopackage)(const std::string& features_json, const std::string& crs) = nullptr;
  /// Messages in that language from now on.
  void (*use_dictionary)(const Dictionary& dictionary) = nullptr;
  /// Called where a library has no memory left and would otherwise end the process in its own way.
  void (*when_out_of_memory)(void (*what)()) = nullptr;
};

inline constexpr int readers_version = 5;

/// The importer library; loaded once. Error: it is not beside the program, or does not fit it.
Result<const Readers*> load_readers();

}  // namespace burrow
