#pragma once
/// Parts of the drawing that stay as they are during most drags, kept as pixels. Painting a long smooth line costs far
/// more than copying it, so that a frame only paints what moves.

#include <QImage>
#include <functional>
#include <string>

#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"

namespace burrow {

class LayerCache {
 public:
  /// Ground and what stands on it.
  void ground(QPainter& painter, const Scene& scene);
  /// Plan below the pits.
  void plan_base(QPainter& painter, const Scene& scene);
  /// Utilities in plan but the picked one.
  void utilities_plan(QPainter& painter, const Scene& scene);
  /// Paths of the random trials.
  void cloud(QPainter& painter, const Scene& scene, Pane pane);
  /// The trials have been replaced: another value may stand at the same address.
  void forget_trials();
  /// Numbers along the left edge.
  void axes(QPainter& painter, const Scene& scene);

 private:
  /// What every layer depends on.
  struct View {
    Frame frame;
    bool dark = false;
    UnitSystem units = UnitSystem::metric;
    double text = 0;
    qreal ratio = 1;
    bool operator==(const View&) const = default;
  };
  struct Layer {
    View view;
    QImage pixels;
  };
  static View view_of(const QPainter& painter, const Scene& scene);
  static void keep(Layer& layer, const View& view, const QRectF& area, const QColor& fill, const QPainter& like,
                   const std::function<void(QPainter&)>& paint);

  struct CloudLayer {
    Layer layer;
    QRectF area;
    const Trials* trials = nullptr;
    bool current = false;
  };

  Layer ground_, plan_base_, utilities_, axes_;
  CloudLayer cloud_side_, cloud_plan_;
  Site ground_site_;  ///< only the members that the ground layer shows are kept
  Site plan_site_;
  std::vector<Utility> utilities_kept_;
  std::vector<TestHole> holes_kept_;
  std::vector<PlacedText> letters_kept_;
  std::string picked_;
  std::string hovered_;
};

}  // namespace burrow
