#pragma once
/// The project's own text, read by the tests that hold it to its rules.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>
#include <vector>

namespace burrow::test {

namespace fs = std::filesystem;

inline fs::path source_dir() {
  return BURROW_SOURCE_DIR;
}

/// The files below `folder` (relative to the project) whose names end in one of `endings`, by name.
inline std::vector<fs::path> files_below(std::string_view folder, const std::vector<std::string>& endings) {
  std::vector<fs::path> found;
  if (!fs::exists(source_dir() / folder)) return found;
  for (const auto& entry : fs::recursive_directory_iterator(source_dir() / folder)) {
    const std::string ending = entry.path().extension().string();
    if (entry.is_regular_file() && std::find(endings.begin(), endings.end(), ending) != endings.end())
      found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

inline std::vector<std::string> lines_of(const fs::path& file) {
  std::ifstream in(file);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// "core/soil/soil.cpp:12", as compilers write it, so that an editor can jump there.
inline std::string place(const fs::path& file, std::size_t line) {
  return file.lexically_relative(source_dir()).generic_string() + ":" + std::to_string(line);
}

}  // namespace burrow::test
