#pragma once
/// From what foreign files hold to the site of a crossing: the crossing line is laid on the plan, the ground is cut
/// along it, utilities and drawings are brought into the local frame and clipped to what lies near.

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/crossing/crossing.h"
#include "burrow/import/found.h"
#include "burrow/import/meanings.h"

namespace burrow {

/// What a person says about one layer.
struct LayerChoice {
  Meaning meaning = Meaning::background;
  std::optional<DepthFrom> heights_from;  ///< of a utility: datum (elevations) or ground (depths, positive down)
  std::optional<LevelMeant> level;        ///< of a utility: crown, centre or invert
  std::optional<Length> diameter;         ///< of a utility, outside
  bool join_points = false;               ///< single points become a line in the order of the file
  bool operator==(const LayerChoice&) const = default;
};

struct ImportFile {
  std::shared_ptr<const Found> found;
  std::shared_ptr<const Found> seen;    ///< for pictures, in the coordinates of the first file; null: `found` as it is
  std::optional<FileUnit> unit;         ///< said by the person; empty: what the file states, else metres
  std::optional<FileUnit> height_unit;  ///< likewise; empty: what the file states, else `unit`
  std::vector<LayerChoice> layers;      ///< one for each of `Found::layers`
};

/// With the meanings of the table, and what the file itself states about its levels.
ImportFile import_file(std::shared_ptr<const Found> found, const MeaningTable& table);

/// The crossing line in the coordinates of the first file: launch pit, then exit pit.
struct CrossingLine {
  PlanPoint launch;
  PlanPoint exit;
  bool operator==(const CrossingLine&) const = default;
};

/// A line to begin with where nobody has drawn one: west to east through the middle of the first file, 10 m long.
std::optional<CrossingLine> proposed_line(const ImportFile& file);

/// What an import brings, in the local frame of the crossing line.
struct Imported {
  std::string name;
  Length length;  ///< of the crossing line, on the ground
  LevelLine ground;
  std::vector<Point3> ground_points;
  std::vector<Utility> utilities;
  std::vector<SurfaceFeature> surface;
  std::vector<Boundary> boundaries;
  std::vector<Background> background;
  /// `origin`: the launch pit in a metric system (that of the first file if it is one, else the UTM zone; without a crs
  /// the file's numbers in metres). `azimuth`: of the crossing line, from grid north to the east. Lengths of the local
  /// frame are those on the ground, not those of the projection.
  Georeference georeference;
  std::vector<LeftOut> left_out;
  std::vector<std::string> notes;
  bool operator==(const Imported&) const = default;
};

/// How near a thing must lie to be taken over, and how closely lines are kept (our defaults).
struct ImportBounds {
  Length corridor{60.0};       ///< beyond the line, on all sides
  Length ground_beyond{10.0};  ///< of the ground line, beyond the pits
  Length ground_tolerance{0.005};
  Length background_tolerance{0.02};
  std::size_t most_background = 50'000;  ///< vertices; the tolerance grows until they fit
  std::size_t most_utilities = 500;
};

/// Heights of a utility count only where the person or the file says what they are and the centre can be told from
/// them; else the depth is not known. Ground: surfaces first, then grids, then triangles between points (Delaunay); a
/// gap is said. Road edges are paired along the line. Errors: no line or one shorter than 0.5 m or longer than 2 km; a
/// coordinate system PROJ does not know; stopped. Evidence: IntoCrossing.*
Result<Imported> into_crossing(const std::vector<ImportFile>& files, const CrossingLine& line,
                               const ImportBounds& bounds = {}, const std::function<bool(double)>& progress = {});

/// A new crossing on what was imported: bore from pit to pit 1.2 m below the ground at the launch, all else as in a
/// blank one. Without ground in the files its ground line is short, so that the ground counts as missing.
Crossing crossing_from(const Imported& imported);

/// The crossing with what was imported added: ground and georeference replaced where the files have ground, the rest
/// beside what is there with ids of its own. The bore stays.
Crossing with_imported(Crossing crossing, const Imported& imported);

}  // namespace burrow
