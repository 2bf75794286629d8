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
#include "burrow/import/fields.h"
#include "burrow/import/found.h"
#include "burrow/import/meanings.h"

namespace burrow {

/// What a person says about one layer.
struct LayerChoice {
  Meaning meaning = Meaning::undecided;
  std::optional<DepthFrom> heights_from;  ///< of a utility: datum (elevations) or ground (depths, positive down)
  std::optional<LevelMeant> level;        ///< of a utility: crown, centre or invert
  std::optional<Length> diameter;         ///< of a utility, outside
  bool join_points = false;               ///< single points become a line in the order of the file
  bool on_ground = false;                 ///< its points lie on the ground, whatever else it means
  bool operator==(const LayerChoice&) const = default;
};

struct ImportFile {
  std::shared_ptr<const Found> found;
  std::shared_ptr<const Found> seen;    ///< for pictures, in the coordinates of the first file; null: `found` as it is
  std::optional<FileUnit> unit;         ///< said by the person; empty: what the file states, else metres
  std::optional<FileUnit> height_unit;  ///< likewise; empty: what the file states, else `unit`
  std::vector<LayerChoice> layers;      ///< one for each of `Found::layers`
  std::vector<FieldChoice> fields;      ///< one for each column of attributes
  /// Coordinate system said by the person, in place of what the file states.
  std::optional<FoundFrame> said_frame;
  bool unit_is_confirmed = false;  ///< the person looked at lengths in the unit taken, and they are right
};

/// What is taken for the file's coordinates: as the person said, else as the file states.
const FoundFrame& frame_of(const ImportFile& file);
/// Unit of the plan: as said, else stated, else metres. Not for degrees.
FileUnit plan_unit(const ImportFile& file);
/// The unit of its coordinate system in one of the file's numbers: of a drawing in millimetres on a grid of metres
/// 0.001; 1 where there is no system.
double units_of_system(const ImportFile& file);

/// `file` in that coordinate system, "EPSG:25832". Errors: one that PROJ does not know; no importer library.
/// Evidence: StatedSystems.*
Result<ImportFile> in_system(ImportFile file, const std::string& crs);

/// With the meanings of the table, what the file itself states about its levels, and guesses for its attributes.
ImportFile import_file(std::shared_ptr<const Found> found, const MeaningTable& table,
                       const std::vector<FieldShape>& shapes = {});

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
  std::size_t left_out_more = 0;  ///< beyond those listed
  /// What nobody decided, and what was made of it until somebody does: never something harmless.
  std::vector<LeftOut> asked;
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
  std::size_t most_utilities = 500;      ///< the nearest; an error where one within `asked_within` would be left out
  /// Lines and points nearer to the crossing line that mean nothing yet come in as utilities of unknown kind.
  Length asked_within{15.0};
  /// The nearest; beyond it they are background, which the verdict asks about where it is met, and that is said.
  std::size_t most_asked_lines = 60;
  Length drawn_within{1.5};  ///< a manhole so near a line that is drawn belongs to it
  std::size_t most_structures = 100;
};

/// Heights of a utility count only where the person or the file says what they are and the centre can be told from
/// them; else the depth is not known. An inside or nominal diameter becomes the outside one through the rows of walls,
/// by material and size; where these do not tell, the diameter is missing. Ground: surfaces first, then grids, then
/// triangles between points (Delaunay); a gap is said. Road edges are paired along the line.
/// What nobody decided does not become harmless: lines of an undecided layer near the crossing line come in as
/// utilities of unknown kind, a point of a utility's layer at which no line is drawn as one that may run any way, of
/// points that mean nothing yet the nearest. Of surfaces that are not the ground the nearest faces come in likewise.
/// Errors: no line or one shorter than 0.5 m or longer than 2 km; a coordinate system PROJ does not know; files of
/// which one states its system and another does not, or of which all lies more than 1 km from the line; more utilities
/// within `asked_within` than are taken; stopped. Evidence: IntoCrossing.*,
/// NothingVanishes.*, StatedSystems.*
Result<Imported> into_crossing(const std::vector<ImportFile>& files, const CrossingLine& line,
                               const ImportBounds& bounds = {}, const std::function<bool(double)>& progress = {});

/// A new crossing on what was imported: bore from pit to pit 1.2 m below the ground at the launch, all else as in a
/// blank one. Without ground in the files its ground line is short, so that the ground counts as missing.
Crossing crossing_from(const Imported& imported);

/// The crossing with what was imported added: ground and georeference replaced where the files have ground, the rest
/// beside what is there with ids of its own. The bore stays.
Crossing with_imported(Crossing crossing, const Imported& imported);

}  // namespace burrow
