#pragma once
/// Files laid into the local frame of the crossing line. Private to this room.

#include "burrow/import/into_crossing.h"
#include "readers/readers.h"

namespace burrow {

/// Station and offset of every vertex of a file, and its heights in metres.
struct PlacedFile {
  const ImportFile* file = nullptr;
  std::vector<PlanPoint> vertices;               ///< as `Found::vertices`
  std::vector<std::vector<PlanPoint>> surfaces;  ///< as `Found::surfaces`
  double metres_of_height = 1;
};

struct PlacedPlan {
  std::vector<PlacedFile> files;
  double length_m = 0;
  Georeference georeference;
  std::vector<std::string> notes;
  LocalFrame frame;    ///< empty crs: plain coordinates
  PlanPoint origin_m;  ///< of the line, where there is no crs, in metres
  PlanPoint along;     ///< unit vector east, north of the crossing line
};

double metres_of_height(const ImportFile& file);

/// Errors also: two files that cannot be brought into one frame.   Evidence: StatedSystems.*
Result<PlacedPlan> place(const std::vector<ImportFile>& files, const CrossingLine& line,
                         const std::function<bool()>& go_on = {});

/// Points of the local frame in the plan coordinates of a file.
Result<std::vector<PlanPoint>> in_file(const PlacedPlan& plan, const ImportFile& file, std::vector<PlanPoint> local);

}  // namespace burrow
