#include "burrow/import/read_file.h"

#include <linux/landlock.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <algorithm>

#include "burrow/language/say.h"
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

int landlock_version() {
  return static_cast<int>(
      std::max(0L, ::syscall(SYS_landlock_create_ruleset, nullptr, 0, LANDLOCK_CREATE_RULESET_VERSION)));
}

std::optional<std::string> note_without_bound(int landlock_version) {
  if (landlock_version > 0) return std::nullopt;
  return std::string(
      translated("this system does not bound the files that a reader may open: import only what you trust"));
}

Result<Found> read_foreign_file(const std::string& path, const ReadOptions& options) {
  const std::string file = as_one_file(path);
  if (auto no = no_plain_file(file)) return tl::unexpected(*no);
  if (auto no = no_plain_companion(file)) return tl::unexpected(*no);
  Result<ReaderAnswer> answer = ask_reader(request_for(file, options), options.progress);
  if (!answer) return tl::unexpected(std::move(answer).error());
  if (auto note = note_without_bound(landlock_version())) answer->found->notes.push_back(std::move(*note));
  return *std::move(answer->found);
}

}  // namespace burrow
