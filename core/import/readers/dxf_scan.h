#pragma once
/// Reads of a DXF drawing what GDAL hides: units, place on the map, radii, kinds of element it does not draw, blocks
/// within blocks. Private to the importer library.

#include <iosfwd>
#include <map>
#include <string>

#include "../found_builder.h"
#include "dxf_units.h"

namespace burrow {

struct DrawingScan {
  DrawingUnits units;
  DrawingPlace place;
  double largest_radius = 0;  ///< of arcs, circles, bulges
  struct FitSpline {
    std::string layer;
    std::vector<PlanPoint> points;
  };
  std::vector<FitSpline> fit_splines;  ///< of the plan, given by their fit points alone: GDAL passes over them
  std::size_t fit_splines_in_blocks = 0;
  double spline_off = 0;  ///< the farthest that pieces of one by control points lie off it, in the drawing's unit
  std::map<std::string, std::size_t> kinds;  ///< elements by kind, in the plan and in the blocks that are put into it
  std::size_t inserts = 0;                   ///< blocks placed in the plan
  bool inline_blocks = true;                 ///< false: blocks go round in a circle, or unfold into too many elements
  std::string block_note;
  std::vector<std::string> elsewhere;  ///< blocks put into the plan whose lines stand in another drawing
};

/// Errors: cannot be opened, a binary drawing, not pairs of code and value, cut short.
/// Evidence: DrawingUnits.*, ForeignFiles.Drawing_*, HostileFiles.Truncated_*
Result<DrawingScan> scan_drawing(const std::string& path, const ReadOptions& options);
Result<DrawingScan> scan_drawing(std::istream& in, const ReadOptions& options);

/// Puts unit, notes and what is not drawn into what was found.
void apply(const DrawingScan& scan, FoundBuilder& builder);

}  // namespace burrow
