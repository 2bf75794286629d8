#pragma once
/// A strip that shows the whole bore in small, with the stretch that the drawing shows as a frame: drag the frame to
/// look elsewhere, pull its ends to look closer or wider. It reads the document's values and computes nothing.

#include <QTimer>
#include <QWidget>
#include <vector>

#include "burrow/document/document.h"
#include "burrow/drawing/drawing_view.h"

class QAction;

namespace burrow {

/// How the strip maps the crossing: stations over its width, elevations over its height.
struct OverviewScale {
  QRectF area;
  double from_m = 0, to_m = 1;
  double low_m = 0, high_m = 1;
  [[nodiscard]] double px_x(double station_m) const {
    return area.left() + (station_m - from_m) / (to_m - from_m) * area.width();
  }
  [[nodiscard]] double station_m(double px) const {
    return from_m + (px - area.left()) / area.width() * (to_m - from_m);
  }
  [[nodiscard]] double px_z(double elevation_m) const {
    return area.bottom() - (elevation_m - low_m) / (high_m - low_m) * area.height();
  }
};

/// All of the bore with both pits and some ground on both sides.
OverviewScale overview_scale(const QRectF& area, const Crossing& crossing, const Assessment& assessment);

class OverviewStrip : public QWidget {
  Q_OBJECT

 public:
  OverviewStrip(Document& document, DrawingView& drawing, QWidget* parent = nullptr);

  /// Shows the strip or puts it away; remembered.
  [[nodiscard]] QAction* shown_action() const { return shown_; }
  [[nodiscard]] OverviewScale scale();
  /// The frame: what the drawing shows.
  [[nodiscard]] QRectF window();
  /// Marks of the findings that have a place and still count, worst last, so that it lies on top.
  struct Mark {
    int finding = -1;
    QRectF box;
  };
  [[nodiscard]] std::vector<Mark> marks();
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return {120, sizeHint().height()}; }

 Q_SIGNALS:
  /// A mark was clicked.
  void finding_wanted(int index);

 protected:
  bool event(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  enum class Grip { none, whole, left, right };
  [[nodiscard]] Grip grip_at(const QPointF& at);
  [[nodiscard]] int mark_at(const QPointF& at);
  void drag_to(const QPointF& at);
  void tell();  ///< for those who do not see it

  Document& document_;
  DrawingView& drawing_;
  QAction* shown_;
  QTimer later_{this};
  Grip held_ = Grip::none;
  double press_m_ = 0;                        ///< station under the pointer at the press
  double press_from_m_ = 0, press_to_m_ = 0;  ///< of the frame at the press
};

}  // namespace burrow
