#include "beside_program.h"

namespace burrow {

namespace fs = std::filesystem;

std::vector<fs::path> beside_program(std::string_view file) {
  std::error_code ignored;
  const fs::path program = fs::read_symlink("/proc/self/exe", ignored).parent_path();
  std::vector<fs::path> there;
  if (program.empty()) return there;
  for (fs::path place : {program / file, program / "../lib/burrowline" / file})
    if (fs::exists(place, ignored)) there.push_back(std::move(place));
  return there;
}

}  // namespace burrow
