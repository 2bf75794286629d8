#pragma once
/// Finds places for the dimension lines, one after the other: what is measured and selected first, covers last.

#include <vector>

#include "burrow/drawing/dimension_lines.h"
#include "burrow/drawing/scene.h"
#include "taken_places.h"
#include "text_width.h"

namespace burrow {

class DimensionLayout {
 public:
  /// Labels keep clear of what is taken in the side elevation and in the plan, and are then taken themselves.
  DimensionLayout(const Scene& scene, TakenPlaces& side, TakenPlaces& plan);

  /// Gap to the selected utility or to that of the worst finding, floor of the selected pit, length, depths.
  void add_first();
  /// Least covers under roads and tracks; not from far away.
  void add_covers();
  [[nodiscard]] std::vector<DimensionLine> take() { return std::move(lines_); }

 private:
  void add(DimensionLine line, const QString& words);
  [[nodiscard]] std::optional<QRectF> room_along(const QLineF& line, bool upright, const QSizeF& size,
                                                 const QRectF& pane, const TakenPlaces& taken) const;
  [[nodiscard]] double up_px() const { return f_.px_per_m * f_.exaggeration; }
  [[nodiscard]] bool far_away() const;
  void bore_length();
  void depth(bool launch);
  void separation();
  void floor(const std::string& pit);

  const Scene& picture_;
  const Frame& f_;
  double text_;
  TextWidths metrics_;
  TakenPlaces& side_;
  TakenPlaces& plan_;
  std::vector<DimensionLine> lines_;
};

}  // namespace burrow
