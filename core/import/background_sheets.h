#pragma once
/// Lines that are drawn only, kept light. Private to this room.

#include <string>
#include <vector>

#include "burrow/crossing/site.h"
#include "near_lines.h"

namespace burrow {

/// One sheet a file and layer.
class BackgroundSheets {
 public:
  void add(const std::string& source, const std::string& layer, const std::vector<std::vector<PathVertex>>& parts);

  /// How the vertices were made to fit: fewer by leaving out those near the line through their neighbours, at last
  /// whole lines.
  struct Lightened {
    std::size_t before = 0, after = 0, lines_dropped = 0;
    double tolerance_m = 0;
  };
  /// Lines that pass through `near` go last.
  Lightened lighten(double tolerance_m, std::size_t most_vertices, const NearBox& near);
  std::vector<Background> take() { return std::move(sheets_); }

 private:
  std::vector<Background> sheets_;
};

}  // namespace burrow
