#pragma once
/// A thing while it is being drawn by clicks: its points so far, what is typed on the way, and what it becomes. Nothing
/// is made up: what was neither clicked nor typed stays unknown.

#include <QString>
#include <QStringList>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/crossing/crossing.h"
#include "burrow/document/item.h"
#include "burrow/drawing/frame.h"

class QPainter;

namespace burrow {

struct Scene;

enum class SketchKind {
  utility,
  road,
  track,
  footway,
  drive,
  ditch,
  building,
  boundary,
  tree,
  machine,
  test_hole,
  ground_point,
  water_point,
  stratum
};

struct SketchPoint {
  double station_m = 0;
  double up_m = 0;                ///< offset in the plan, level in the side elevation
  std::optional<double> typed{};  ///< SI: depth of a bend, level of a point
  bool operator==(const SketchPoint&) const = default;
};

/// What came of it.
struct Drawn {
  Crossing crossing;
  ItemRef part;
  QString step;  ///< the name of the undo step
};

class Sketch {
 public:
  /// `soil`: of a stratum.
  explicit Sketch(SketchKind kind, std::string soil = {});

  [[nodiscard]] SketchKind kind() const { return kind_; }
  /// Where it is drawn: things with a station alone in both views.
  [[nodiscard]] bool drawn_in(Pane pane) const;
  [[nodiscard]] const std::vector<SketchPoint>& points() const { return points_; }
  [[nodiscard]] Pane pane() const { return pane_; }
  /// With so many points it is finished; 0: Enter finishes it.
  [[nodiscard]] std::size_t ends_with() const;

  /// One more point. Error: why not, to be told; nothing is lost.
  Result<void> add(const Crossing& crossing, Pane pane, SketchPoint point, UnitSystem units);
  /// Takes a letter of a number and its unit; false: it is none.
  bool type(const QString& letter);
  /// Takes back a letter, else the last point; false: there is nothing.
  bool back();
  [[nodiscard]] const QString& typed() const { return typed_; }
  /// What is typed counts: for the last point, or is a station where stations are all that is asked.
  Result<void> take_typed(const Crossing& crossing, UnitSystem units);

  /// Error: what is still missing.   Evidence: Sketch.*
  [[nodiscard]] Result<Drawn> finished(const Crossing& crossing) const;
  /// Said beside the pointer: what comes next, what is typed, which keys.
  [[nodiscard]] QStringList words(UnitSystem units) const;

 private:
  [[nodiscard]] bool is_stretch() const;
  [[nodiscard]] bool by_corners() const;
  [[nodiscard]] QString typed_meaning() const;

  SketchKind kind_;
  std::string soil_;
  Pane pane_ = Pane::none;
  std::vector<SketchPoint> points_;
  QString typed_;
  std::optional<double> number_;  ///< radius of a tree, load of a machine, level of a point
};

/// Its points and what the next click would add.
void paint_sketch(QPainter& painter, const Scene& scene);

}  // namespace burrow
