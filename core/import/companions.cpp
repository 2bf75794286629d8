#include "companions.h"

#include <cctype>
#include <string_view>
#include <utility>

#include "csv_fields.h"

namespace burrow {

std::vector<std::string> with_companions(const std::string& path) {
  static const std::vector<std::pair<std::string_view, std::vector<std::string_view>>> declared{
      {".shp", {".shx", ".dbf", ".prj", ".cpg"}},
      {".tif", {".tfw", ".tifw", ".wld"}},
      {".tiff", {".tfw", ".tiffw", ".wld"}},
      {".asc", {".prj"}},
      {".txt", {".prj"}}};
  std::vector<std::string> all{path};
  const std::string name = csv::lower(path);
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
