#pragma once
/// GDAL made safe for foreign files. Private to the importer library.

#include <gdal.h>
#include <ogr_api.h>
#include <ogr_srs_api.h>

#include <optional>
#include <string>
#include <vector>

#include "../found_builder.h"

namespace burrow::gdal {

/// Registers the drivers on our list (once), keeps all others out; no network, no side files beside the user's data.
void set_up();

/// What to do where GDAL has no memory left, in place of its abort.
void when_out_of_memory(void (*what)());

/// Collects what GDAL says in this thread, in place of writing it to the terminal.
class Listener {
 public:
  Listener();
  ~Listener();
  Listener(const Listener&) = delete;
  Listener& operator=(const Listener&) = delete;

  [[nodiscard]] const std::vector<std::string>& errors() const { return errors_; }
  /// Warnings that are about the file. What they say names the library's own parts and settings: not for a person.
  [[nodiscard]] bool has_file_warnings() const;

 private:
  static void CPL_STDCALL hear(CPLErr kind, CPLErrorNum number, const char* text);
  std::vector<std::string> errors_, warnings_;
};

/// While it lives, what this thread would fetch from the network is refused and remembered.
class NoNetwork {
 public:
  NoNetwork();
  ~NoNetwork();
  NoNetwork(const NoNetwork&) = delete;
  NoNetwork& operator=(const NoNetwork&) = delete;
  /// The first address that was asked for.
  [[nodiscard]] const std::optional<std::string>& asked() const { return asked_; }
  /// Why a file that asks for one is not read.
  [[nodiscard]] std::optional<Error> refusal() const;

 private:
  std::optional<std::string> asked_;
};

/// Closes the data set at the end.
class DataSet {
 public:
  explicit DataSet(GDALDatasetH handle) : handle_(handle) {}
  ~DataSet() {
    if (handle_) GDALClose(handle_);
  }
  DataSet(const DataSet&) = delete;
  DataSet& operator=(const DataSet&) = delete;
  [[nodiscard]] GDALDatasetH get() const { return handle_; }

 private:
  GDALDatasetH handle_ = nullptr;
};

/// What the system says about itself, into `frame`.
void describe(OGRSpatialReferenceH srs, FoundFrame& frame);

/// Likewise of a code, "EPSG:25832"; false where nobody knows it.
bool describe_code(const std::string& crs, FoundFrame& frame);
/// Error: it is none, or is not known.
Result<FoundFrame> frame_of_code(const std::string& crs);

Result<Found> read_vector(const std::string& path, const std::string& driver, const ReadOptions& options);
Result<Found> read_raster(const std::string& path, const ReadOptions& options);
/// A zipped shapefile or other file of the list, or a KMZ.
Result<Found> read_zip(const std::string& path, const ReadOptions& options);

Result<std::vector<std::optional<double>>> heights(const FoundRaster& raster, const std::vector<PlanPoint>& points);
Result<std::string> geopackage(const std::string& features_json, const std::string& crs);
Result<std::vector<std::array<std::uint32_t, 3>>> triangles(const std::vector<PlanPoint>& points);

}  // namespace burrow::gdal
