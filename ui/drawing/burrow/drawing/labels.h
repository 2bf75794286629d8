#pragma once
/// Where every text of the drawing stands. Each kind has its lane over or under the views, or its right of way within
/// them; nothing is written over anything else, nor over a grip, nor cut at an edge. What finds no room is left out and
/// told by the tooltip and the pages.

#include <QPointF>
#include <QRectF>
#include <QString>
#include <string>
#include <vector>

#include "burrow/drawing/dimension_lines.h"
#include "burrow/drawing/flags.h"
#include "burrow/drawing/utility_chips.h"

namespace burrow {

struct Scene;
class TakenPlaces;

/// What a text in one of the views says, which decides how it is written.
enum class TextRole {
  zone,
  stratum,
  neutral,
  water,
  away,
  stop,
  rescue,
  band,
  letter,
  hole,
  spoil,
  pit,
  setback,
  step
};

struct PlacedText {
  TextRole role = TextRole::zone;
  QString text;
  QRectF box;    ///< with its padding
  QPointF foot;  ///< where a short line leads, for those that have one
  std::string id;
  bool operator==(const PlacedText&) const = default;
};

/// A stretch of the lane of what lies on top, and its name.
struct OnTopPart {
  std::string id;
  SurfaceKind kind = SurfaceKind::road;
  QRectF stretch;  ///< within the lane
  QString name;    ///< empty: it finds no room
  QRectF name_box;
};

struct Labels {
  FlagLane flags;
  std::vector<OnTopPart> on_top;
  ChipRow utilities;
  QRectF heights;  ///< says how much heights are exaggerated
  QRectF status;   ///< says whose model the path is
  std::vector<DimensionLine> dimensions;
  std::vector<PlacedText> side, plan;
};

/// All of them for one picture. `held`: those of the frame before while something is dragged; letters in the plan then
/// stay where they were but for the dragged utility's own.   Evidence: Labels.*
Labels place_labels(const Scene& scene, const Labels* held = nullptr);

/// Every box with text in it, by what it is, for a test that none lies over another; and the grips.
struct WrittenBox {
  QString what;
  QRectF box;
};
std::vector<WrittenBox> written_boxes(const Scene& scene, const Labels& labels);

/// "heights ×2", "true to scale".
QString heights_words(double exaggeration);
/// "Predicted path: model not calibrated".
QString status_words(const Scene& scene);

std::vector<OnTopPart> place_on_top(const Scene& scene);
/// Texts of the side elevation but the dimensions, in their order of right of way.
std::vector<PlacedText> place_zone_texts(const Scene& scene, TakenPlaces& taken);
std::vector<PlacedText> place_edge_names(const Scene& scene, TakenPlaces& taken);
std::vector<PlacedText> place_away_marks(const Scene& scene, TakenPlaces& taken);
/// What to dig, in each pit: before the depth of the axis, which reads like it.
std::vector<PlacedText> place_digs(const Scene& scene, TakenPlaces& taken);
std::vector<PlacedText> place_side_notes(const Scene& scene, TakenPlaces& taken);
/// Nothing about the site was entered or declared.
bool nothing_entered(const Crossing& crossing);
/// What an empty crossing says to begin with; none otherwise.   Evidence: FirstSteps.*
std::vector<PlacedText> place_first_steps(const Scene& scene, TakenPlaces& taken);
/// Texts of the plan.
std::vector<PlacedText> place_plan_texts(const Scene& scene, TakenPlaces& taken, const Labels* held);

void paint_on_top(QPainter& painter, const Scene& scene);
void paint_on_top_names(QPainter& painter, const Scene& scene);
void paint_side_texts(QPainter& painter, const Scene& scene);
void paint_plan_texts(QPainter& painter, const Scene& scene);
void paint_corner_chips(QPainter& painter, const Scene& scene);

/// Texts keep that far from the edges of the views.
inline constexpr double text_edge_px = 8;
/// Takes a text that found a place; one without is dropped.
void keep_text(std::vector<PlacedText>& all, TakenPlaces& taken, PlacedText text);

/// The font of a text by its role.
QFont font_of(TextRole role, const Style& style);
/// A text with its padding, as wide as it is written.
QSizeF size_of(TextRole role, const QString& text, const Style& style);

}  // namespace burrow
