#pragma once
/// Reads of a DXF drawing what GDAL hides: unit, kinds of element it does not draw, blocks within blocks. Private to
/// the importer library.

#include <map>
#include <string>

#include "../found_builder.h"

namespace burrow {

struct DrawingScan {
  std::optional<FileUnit> unit;              ///< by $INSUNITS
  std::string unit_note;                     ///< a unit we do not convert
  std::map<std::string, std::size_t> kinds;  ///< elements by kind, in the plan and in blocks
  std::size_t inserts = 0;                   ///< blocks placed in the plan
  bool inline_blocks = true;                 ///< false: blocks go round in a circle, or unfold into too many elements
  std::string block_note;
};

/// Errors: cannot be opened, a binary drawing, not pairs of code and value, cut short.
/// Evidence: ForeignFiles.Drawing_*, HostileFiles.Truncated_*
Result<DrawingScan> scan_drawing(const std::string& path, const ReadOptions& options);

/// Puts unit, notes and what is not drawn into what was found.
void apply(const DrawingScan& scan, FoundBuilder& builder);

}  // namespace burrow
