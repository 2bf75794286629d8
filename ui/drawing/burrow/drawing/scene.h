#pragma once
/// The drawing of a crossing: one paint code for the screen, a PNG and paper. It reads three values (crossing,
/// assessment, tables) and computes nothing about ground, pipes or pits.

#include <QPainter>
#include <QString>
#include <array>
#include <memory>
#include <optional>

#include "burrow/base/quantity_text.h"
#include "burrow/bore/playback.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/document/item.h"
#include "burrow/drawing/dimension_lines.h"
#include "burrow/drawing/frame.h"
#include "burrow/drawing/snap.h"
#include "burrow/drawing/tape.h"
#include "burrow/drawing/theme.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// How it is drawn: colours, units, size of text in the painter's units.
struct Style {
  Theme theme = Theme::light();
  UnitSystem units = UnitSystem::metric;
  double text = 12;      ///< height of ordinary text
  double hair = 1;       ///< width of a thin line
  bool handles = true;   ///< grips that can be dragged (screen only)
  bool textures = true;  ///< soil marks as tiles (off on paper)
};

class Sketch;

/// What the person is doing with it.
struct Interaction {
  ItemRef picked;
  ItemRef hovered;
  std::vector<ItemRef> several;              ///< picked at once, two or more; `picked` is none then
  std::optional<QRectF> box;                 ///< dragged to pick what it holds
  int finding = -1;                          ///< index of the picked finding
  const Crossing* ghost_crossing = nullptr;  ///< the state before a drag
  const Assessment* ghost = nullptr;
  QPointF pointer;
  QStringList pointer_lines;                           ///< live numbers beside the pointer
  std::vector<SnapLine> snaps;                         ///< that hold what is dragged
  std::optional<double> live_level_m;                  ///< of what is dragged, written in the gutter
  std::optional<MeasureRef> measure, measure_hovered;  ///< the picked dimension line, the one under the pointer
  const Sketch* sketch = nullptr;                      ///< what is being drawn
};

class LayerCache;
struct Labels;
struct Trials;

/// The bore by what was read on the day: as built up to the nose, predicted ahead of it.
struct ReadPath {
  std::vector<PathPoint> points;
  double nose_m = 0;  ///< arc length
};

/// Where a practice bore really ran, revealed so far.
struct TrueLine {
  std::vector<Point3> points;
  std::vector<Point3> stones;
  std::vector<std::vector<Point3>> services;  ///< lines of those that do not lie where they were marked
};

/// A bore as it happens, at one time of it.
struct Played {
  std::shared_ptr<const Playback> bore;
  double time_s = 0;
  bool in_truth = false;       ///< the bore that really was
  bool tells_miss = in_truth;  ///< beside what was predicted, at its end
  /// The lines as this bore passes them; null: as the assessment says of the predicted one.
  std::shared_ptr<const std::vector<UtilityAnswer>> passed = {};
  bool lines_elsewhere = false;                 ///< lines do not lie where they are drawn: no distance is told
  std::shared_ptr<const Playback> beside = {};  ///< drawn as a ghost at the same time of it
};

/// What is shown on demand.
struct VisibleLayers {
  bool turning = false;  ///< why the tool turns; needs a frame with its pane
  bool neutral_line = true;
  bool zones = true;               ///< where owners' rules let neither bore nor pit be
  bool rise = false;               ///< how the surface rises over the bore
  bool dimensions = true;          ///< dimension lines (screen only)
  bool cloud = false;              ///< the paths of `trials`
  const Trials* trials = nullptr;  ///< must outlive the picture
  bool trials_current = false;     ///< they are of the crossing as it is now
  std::optional<PitShape> rescue;
  std::optional<double> across_station_m;  ///< of the section across
  std::optional<Tape> tape;
  std::optional<ReadPath> read;  ///< of the open record, or of a practice bore under way
  std::optional<TrueLine> truth;
  std::optional<Played> played;
  std::shared_ptr<const BorePath> tried;  ///< the bore with something set wrong; the plan is its ghost then
};

struct Scene {
  const Crossing& crossing;
  const Assessment& assessment;
  const Tables& tables;
  Frame frame;
  Style style;
  Interaction focus;
  LayerCache* layer_cache = nullptr;  ///< screen only
  VisibleLayers layers = {};
  std::shared_ptr<const Labels> labels = {};  ///< where its texts stand; placed by who paints, if they are not
};

/// The scene with its texts placed.
Scene with_labels(Scene scene);

/// Everything, clipped to the frame's panes.
void paint_scene(QPainter& painter, const Scene& scene);
/// The same on pixels of their own, `behind` first: side and plan at once, while the caller waits (`paint_apart`).
void paint_scene(QImage& pixels, const Scene& scene, const QBrush& behind);

/// Width that the axis numbers and the names of the lanes need, left of the panes.
double gutter_width(const Style& style);
/// Of the strip that tells why the tool turns, when it is on.
double turning_height(const Style& style);
/// Lanes for a picture of this height: one line a flag where that is low, two rows of flags on demand.
LaneSizes lane_sizes(const Style& style, double height, int flag_rows = 1, bool turning = false);

/// Offset where the bore axis stands at a station, on the mean path (straight beyond its ends).
double bore_offset_at(const Assessment& assessment, const Crossing& crossing, double station_m);
/// Where a utility meets the upright plane of the crossing line, for its mark in the side elevation.
struct UtilityMark {
  double station_m = 0;
  double elevation_m = 0;
  bool depth_known = false;
  bool meets_line = false;  ///< crosses the line; otherwise the nearest vertex
};
UtilityMark utility_mark(const Utility& utility);
/// One for each time it meets the plane; one where it never does.   Evidence: UtilityMarks.*
std::vector<UtilityMark> utility_marks(const Utility& utility);

// The pieces, in the order in which they are painted.
void paint_ground(QPainter& painter, const Scene& scene);
void paint_surface(QPainter& painter, const Scene& scene);
void paint_zones_side(QPainter& painter, const Scene& scene);
void paint_zones_plan(QPainter& painter, const Scene& scene);
/// Utilities whose test hole is worth digging first.
std::vector<const UtilityAnswer*> holes_to_dig(const Scene& scene);
/// Test holes that were dug, and the first of those worth digging.
void paint_holes_side(QPainter& painter, const Scene& scene);
/// The same, with the line of a utility as its holes show it, and how well it is known along it.
void paint_holes_plan(QPainter& painter, const Scene& scene);
/// Ends of lines that a finding asks about; none where no finding does.   Evidence: OpenEnds.*
void paint_open_ends_side(QPainter& painter, const Scene& scene);
void paint_open_ends_plan(QPainter& painter, const Scene& scene);
void paint_rise_side(QPainter& painter, const Scene& scene);
void paint_rise_plan(QPainter& painter, const Scene& scene);
void paint_pits_side(QPainter& painter, const Scene& scene);
/// Level at which a level tool runs straight.
void paint_neutral_line(QPainter& painter, const Scene& scene);
void paint_bore_side(QPainter& painter, const Scene& scene);
void paint_utilities_side(QPainter& painter, const Scene& scene);
void paint_plan_base(QPainter& painter, const Scene& scene);
void paint_pits_plan(QPainter& painter, const Scene& scene);
/// All utilities but the picked one, which may be moving; then that one alone.
void paint_utilities_plan(QPainter& painter, const Scene& scene);
void paint_picked_utility_plan(QPainter& painter, const Scene& scene);
void paint_ghost_utilities_plan(QPainter& painter, const Scene& scene);
void paint_bore_plan(QPainter& painter, const Scene& scene);
/// The bands: standard deviations of one coordinate, strength of the colour out of 255, and the share of all bores.
struct BandShare {
  double sds;
  int strength;
  const char* name;
};
inline constexpr std::array<BandShare, 3> band_shares{BandShare{2.576, 40, "99 %"}, BandShare{1.645, 55, "90 %"},
                                                      BandShare{0.674, 80, "50 %"}};
inline constexpr double band_step_sds = 2.576 - 1.645;  ///< between the outer two
/// Bands and mean path in one of the views, or the path alone as it was before a drag.
void paint_bands(QPainter& painter, const Scene& scene, Pane pane);
void paint_mean_path(QPainter& painter, const Scene& scene, const Assessment& assessment, Pane pane, bool ghost);
/// The paths of the random trials in one of the views, with marks where one ended before the exit, and what they are.
void paint_cloud(QPainter& painter, const Scene& scene, Pane pane);
void paint_cloud_key(QPainter& painter, const Scene& scene);
QRectF cloud_key_box(const Scene& scene);
/// What `paint_cloud` covers, within the pane.
QRectF cloud_area(const Scene& scene, Pane pane);
/// The path by the day's readings with its bands, the nose marked; and the truth of a practice bore.
void paint_read_path(QPainter& painter, const Scene& scene, Pane pane);
void paint_truth(QPainter& painter, const Scene& scene, Pane pane);
/// The tool on its way, to size, with its hole behind it; the ground rising over it, exaggerated, with the factor; what
/// it has passed, with the distance; at its end the miss.   Evidence: Player.Drawn_*
void paint_tried_side(QPainter& painter, const Scene& scene);
void paint_tried_plan(QPainter& painter, const Scene& scene);
void paint_played_side(QPainter& painter, const Scene& scene);
void paint_played_plan(QPainter& painter, const Scene& scene);
void paint_rescue_side(QPainter& painter, const Scene& scene);
void paint_rescue_plan(QPainter& painter, const Scene& scene);
/// Its name and depth below its floor, over everything.
void paint_rescue_name(QPainter& painter, const Scene& scene, Pane pane);
void paint_turning(QPainter& painter, const Scene& scene);
/// Where the ground may stop the tool, at the upper edge of the ruler; where the tool would stop by itself.
void paint_stops(QPainter& painter, const Scene& scene);
void paint_grid(QPainter& painter, const Scene& scene, const QRectF& pane);
void paint_ruler(QPainter& painter, const Scene& scene);
void paint_axes(QPainter& painter, const Scene& scene);
void paint_level_tag(QPainter& painter, const Scene& scene);
void paint_handles(QPainter& painter, const Scene& scene);
void paint_pointer(QPainter& painter, const Scene& scene);

/// Outlined text, readable on any ground.
void halo_text(QPainter& painter, const QPointF& baseline_left, const QString& text, const QColor& ink,
               const QColor& halo);

/// The number of a tick in the shown unit (`unit` in SI), without the unit: the axis says it once.
QString tick_text(double value, double step, double unit);
/// One of the unit in which a dimension is shown, in SI.
double shown_unit(Dimension dimension, UnitSystem units);

/// Draws a line segment by segment with flat ends, the dashes going on round the bends. Several times faster than one
/// polyline with joins; at the widths drawn here the bends look the same.
void draw_run(QPainter& painter, const QPolygonF& line, QPen pen);

/// Pen of a utility: uniform colour, dash as second cue.
QPen utility_pen(const Scene& scene, UtilityKind kind, double width);
QColor utility_colour(const Scene& scene, UtilityKind kind);
/// The answer for a utility; none where it was not judged.
const UtilityAnswer* answer_for(const Scene& scene, const std::string& id);

}  // namespace burrow
