#include "companions.h"

#include <cctype>
#include <filesystem>
#include <string_view>
#include <utility>

#include "csv_fields.h"

namespace burrow {

namespace {

/// A folder that is read as one file.
std::vector<std::string> with_files_in(const std::string& folder) {
  constexpr std::size_t most = 100'000;
  std::vector<std::string> all{folder};
  std::error_code error;
  std::filesystem::directory_iterator at(folder, error);
  for (const std::filesystem::directory_iterator end; !error && at != end && all.size() < most; at.increment(error))
    all.push_back(at->path().string());
  return all;
}

}  // namespace

std::vector<std::string> with_companions(const std::string& path) {
  static const std::vector<std::pair<std::string_view, std::vector<std::string_view>>> declared{
      {".shp", {".shx", ".dbf", ".prj", ".cpg"}},
      {".tif", {".tfw", ".tifw", ".wld"}},
      {".tiff", {".tfw", ".tiffw", ".wld"}},
      {".gml", {".xsd", ".gfs"}},
      {".tab", {".dat", ".map", ".id", ".ind"}},
      {".mif", {".mid"}},
      {".asc", {".prj"}},
      {".txt", {".prj"}}};
  std::vector<std::string> all{path};
  const std::string name = csv::lower(path);
  if (name.ends_with(".gdb")) return with_files_in(path);
  for (const auto& [ending, companions] : declared) {
    if (!name.ends_with(ending)) continue;
    for (const std::string_view companion : companions) {
      const std::string stem = path.substr(0, path.size() - ending.size());
      all.push_back(stem + std::string(companion));
      all.push_back(stem);
      for (const char c : companion) all.back() += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    }
  }
  return all;
}

}  // namespace burrow
