#pragma once
/// What a foreign file holds, in its own coordinates and units, with what was left out and why. Nothing is converted or
/// given a meaning here: that is the person's choice (`meanings.h`, `into_crossing.h`).

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/crossing/site.h"
#include "burrow/import/file_unit.h"

namespace burrow {

enum class Shape { point, line, area };

/// x to the east (or the longitude in degrees), y to the north; no z: the file does not give a height here.
using FoundVertex = PathVertex;

/// One thing of the file; its vertices stand in `Found::vertices`.
struct FoundFeature {
  Shape shape = Shape::point;
  std::uint32_t layer = 0;  ///< index in `Found::layers`
  std::size_t first = 0;
  std::size_t count = 0;
  std::uint32_t place = 0;           ///< line of the file, or number of the element, from 1
  std::string text;                  ///< point number, name or text
  std::optional<double> diameter_m;  ///< of a pipe, where the file states it with its unit; inside
  std::optional<LevelMeant> level;   ///< which level of a pipe the heights are, where the file states it
  std::optional<DepthFrom> from;     ///< what the heights are counted from, where the file states it; up is positive
  bool is_text = false;              ///< words of a drawing, not a thing at that point
  bool operator==(const FoundFeature&) const = default;
};

/// A surface of triangles.
struct FoundSurface {
  std::uint32_t layer = 0;
  std::vector<Point3> points;
  std::vector<std::array<std::uint32_t, 3>> faces;
  bool operator==(const FoundSurface&) const = default;
};

/// A grid of heights, read where it is wanted. x = to_plan[0] + column·to_plan[1] + row·to_plan[2], y likewise from 3.
struct FoundRaster {
  std::uint32_t layer = 0;
  std::string path;
  int columns = 0;
  int rows = 0;
  std::array<double, 6> to_plan{};
  std::optional<double> least_z;  ///< of a sparse reading
  std::optional<double> most_z;
  bool operator==(const FoundRaster&) const = default;
};

/// A column of attributes: "DIAMETER", with what stands in it.
struct FoundField {
  std::string name;
  bool operator==(const FoundField&) const = default;
};

/// Attributes of features, each text once. `cells` has a row for each feature and a column for each field: 0 not given,
/// else one more than the index in `texts`.
struct FoundTable {
  std::vector<FoundField> fields;
  std::vector<std::string> texts;
  std::vector<std::uint32_t> cells;
  [[nodiscard]] std::string_view text(std::size_t feature, std::size_t field) const {
    const std::size_t at = feature * fields.size() + field;
    return at < cells.size() && cells[at] > 0 ? std::string_view(texts[cells[at] - 1]) : std::string_view();
  }
  bool operator==(const FoundTable&) const = default;
};

/// What the file says about its coordinates.
struct FoundFrame {
  std::string crs;                      ///< "EPSG:25832", or its definition; empty: not stated
  bool geographic = false;              ///< degrees
  std::optional<FileUnit> unit;         ///< of x and y
  std::optional<FileUnit> height_unit;  ///< of z
  std::string vertical;                 ///< height reference, where it is named
  bool unit_is_doubtful = false;        ///< stated, but such statements are often wrong
  bool unit_is_foreign = false;         ///< stated, and none of those that are known here
  bool operator==(const FoundFrame&) const = default;
};

/// What was not read, where, and why.
struct LeftOut {
  std::string place;  ///< "line 12", "element 7 of layer KERB"
  std::string text;
  std::string reason;
  bool matters = true;  ///< false: far off, or on the sheet of a drawing
  bool operator==(const LeftOut&) const = default;
};

struct Found {
  std::string file;
  std::string format;  ///< in words: "survey points", "DXF drawing"
  std::vector<std::string> layers;
  std::vector<FoundVertex> vertices;
  std::vector<FoundFeature> features;
  std::vector<FoundSurface> surfaces;
  std::vector<FoundRaster> rasters;
  FoundFrame frame;
  FoundTable table;
  std::vector<LeftOut> left_out;
  std::size_t left_out_more = 0;   ///< left out beyond those listed
  std::string order;               ///< of a survey's columns, as read: "pnezd"
  bool order_is_known = true;      ///< false: nothing in the file tells it, ask
  std::vector<std::string> notes;  ///< what was done beside reading
  bool operator==(const Found&) const = default;
};

/// One layer or code at a glance.
struct LayerSummary {
  std::string name;
  std::size_t points = 0;  ///< with texts
  std::size_t texts = 0;   ///< of a drawing
  std::size_t lines = 0;
  std::size_t areas = 0;
  std::size_t facets = 0;  ///< areas of three or four corners, all with heights: a mesh of a drawing
  std::size_t faces = 0;
  std::size_t rasters = 0;
  std::size_t vertices = 0;
  std::size_t with_height = 0;  ///< vertices
  bool level_stated = false;    ///< the file says what the heights of its pipes are
  bool operator==(const LayerSummary&) const = default;
};

/// In the order of `Found::layers`.
std::vector<LayerSummary> summaries(const Found& found);

/// Smallest rectangle that holds everything; empty where nothing was found.
struct PlanExtent {
  double low_x = 0, low_y = 0, high_x = 0, high_y = 0;
  bool operator==(const PlanExtent&) const = default;
};
std::optional<PlanExtent> extent_of(const Found& found);

/// How a file is to be read.
struct ReadOptions {
  std::string order;                      ///< of a survey's columns, "pnezd"; empty: the header, else the usual order
  std::optional<FileUnit> unit;           ///< said of a drawing: how finely its curves are cut; empty: as the file says
  bool x_before_y = false;                ///< without order and header: x, y, z, as a file named .xyz is read
  std::size_t most_vertices = 4'000'000;  ///< more is refused: a survey takes about 200 bytes a point
  std::size_t most_unpacked_bytes = 1u << 30;     ///< of a zipped file
  std::size_t most_memory_bytes = 3'000'000'000;  ///< of the process that reads, beyond what it starts with
  double most_seconds = 60;                       ///< of that process, by the clock on the wall
  std::size_t most_layers = 4096;                 ///< what lies on more is gathered on one, and that is said
  double most_cells = 1e9;                        ///< of a grid of heights
  /// Told how much is read (0 … 1); false stops the reading, which then fails with `stopped_by_person`.
  std::function<bool(double)> progress{};
};

/// The error's `found` when the reading was stopped.
inline constexpr std::string_view stopped_by_person = "stopped";

}  // namespace burrow
