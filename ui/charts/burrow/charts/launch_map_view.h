#pragma once
/// The map of launches: regions by the limit that binds, the border of what works, the launch as it stands (dot) and
/// the best one (ring). It paints what it is given and says where a person points, drags or presses an arrow key.

#include <QPixmap>
#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/drawing/theme.h"
#include "burrow/search/launch_map.h"

namespace burrow {

/// Cells that one limit decides.
struct MapRegion {
  QString title;
  QString letter;
  QColor colour;
  double share = 0;  ///< of all cells
};

class LaunchMapView : public QWidget {
  Q_OBJECT

 public:
  explicit LaunchMapView(QWidget* parent = nullptr);
  /// Null: nothing to show yet.
  void show_map(std::shared_ptr<const LaunchMap> map, bool current, const MapPlace& here);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);

  [[nodiscard]] const std::vector<MapRegion>& regions() const { return regions_; }
  /// Where a place of the map stands in this widget.
  [[nodiscard]] QPointF at(const MapPlace& place) const;
  [[nodiscard]] bool dragging() const { return dragging_; }
  [[nodiscard]] QSize sizeHint() const override;

 Q_SIGNALS:
  /// Number of the cell under the pointer; −1: none.
  void hovered(int cell);
  void drag_started();
  void dragged(const MapPlace& place);
  /// `keep` false: Esc.
  void drag_ended(bool keep);
  /// An arrow key: steps to the right and downward.
  void nudged(int right, int down);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  struct Tick {
    double value;
    QString text;
  };
  void lay_out();
  void sort_regions();
  void paint_cells(QPainter& painter) const;
  void paint_borders(QPainter& painter) const;
  void paint_letters(QPainter& painter) const;
  void paint_axes(QPainter& painter) const;
  void paint_marks(QPainter& painter) const;
  [[nodiscard]] std::vector<Tick> ticks(const MapAxis& axis, Dimension dimension, double room_px, double text_px) const;
  [[nodiscard]] QRectF cell_rect(int column, int row) const;
  [[nodiscard]] int region_of(const LaunchCell& cell) const;
  [[nodiscard]] MapPlace place_at(const QPointF& at) const;
  [[nodiscard]] int cell_at(const QPointF& at) const;
  [[nodiscard]] bool upward() const { return map_ && map_->over == MapOver::station_and_offset; }
  void end_drag(bool keep);

  std::shared_ptr<const LaunchMap> map_;
  bool current_ = false;
  MapPlace here_;
  UnitSystem units_ = UnitSystem::metric;
  Theme theme_ = Theme::light();
  std::vector<MapRegion> regions_;
  std::vector<int> region_of_limit_;
  QRectF plot_;
  QPixmap kept_;  ///< everything but the marks
  int hovered_ = -1;
  bool dragging_ = false;
  QPointF grip_;  ///< from the dot to the pointer
};

}  // namespace burrow
