#include "burrow/import/read_file.h"

#include "read_here.h"
#include "reader_process.h"

namespace burrow {

const std::vector<std::string>& readable_endings() {
  static const std::vector<std::string> all{"*.csv",  "*.txt", "*.asc",     "*.pts",  "*.xyz", "*.dxf", "*.geojson",
                                            "*.json", "*.shp", "*.zip",     "*.gpkg", "*.kml", "*.kmz", "*.gpx",
                                            "*.fgb",  "*.xml", "*.landxml", "*.tif",  "*.tiff"};
  return all;
}

Result<Found> read_foreign_file(const std::string& path, const ReadOptions& options) {
  if (auto no = no_plain_file(path)) return tl::unexpected(*no);
  if (auto no = no_plain_companion(path)) return tl::unexpected(*no);
  Result<ReaderAnswer> answer = ask_reader(request_for(path, options), options.progress);
  if (!answer) return tl::unexpected(std::move(answer).error());
  return *std::move(answer->found);
}

}  // namespace burrow
