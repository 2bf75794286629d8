#include "burrow/import/read_file.h"

#include "read_here.h"
#include "reader_process.h"

namespace burrow {

const std::vector<std::string>& readable_endings() {
  static const std::vector<std::string> all{"*.csv",     "*.txt",      "*.asc", "*.pts",     "*.xyz",  "*.dxf",
                                            "*.geojson", "*.json",     "*.shp", "*.zip",     "*.gpkg", "*.kml",
                                            "*.kmz",     "*.gpx",      "*.fgb", "*.gml",     "*.tab",  "*.mif",
                                            "*.gdb",     "*.gdbtable", "*.xml", "*.landxml", "*.tif",  "*.tiff"};
  return all;
}

Result<Found> read_foreign_file(const std::string& path, const ReadOptions& options) {
  const std::string file = as_one_file(path);
  if (auto no = no_plain_file(file)) return tl::unexpected(*no);
  if (auto no = no_plain_companion(file)) return tl::unexpected(*no);
  Result<ReaderAnswer> answer = ask_reader(request_for(file, options), options.progress);
  if (!answer) return tl::unexpected(std::move(answer).error());
  return *std::move(answer->found);
}

}  // namespace burrow
