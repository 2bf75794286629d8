#pragma once
/// Imported files seen from above, coloured by what they mean, and the crossing line laid on them by two clicks.

#include <QPixmap>
#include <QWidget>
#include <vector>

#include "burrow/drawing/theme.h"
#include "burrow/import/into_crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Colour of a meaning; utilities by the uniform colour code.
QColor meaning_colour(Meaning meaning, const Theme& theme, const Tables& tables);

/// What of a file is drawn.
const Found& drawn_of(const ImportFile& file);

/// Click, click: launch pit, exit pit. A double click takes the straight piece of a line that is nearest. The wheel
/// comes closer, a drag moves the plan; Home shows all, Esc takes back the first click.
class ImportPreview : public QWidget {
  Q_OBJECT

 public:
  ImportPreview(const Tables& tables, QWidget* parent);

  /// `files` must outlive the preview or be set anew. Those in another coordinate system are drawn as `seen`, and not
  /// without it.
  void set_files(const std::vector<ImportFile>* files, bool show_all);
  /// The meanings changed.
  void refresh();
  /// A file and a layer of it that stand out; none: nothing does.
  void set_highlight(const std::optional<std::pair<std::size_t, std::uint32_t>>& layer);
  /// What the colours mean and of how many things, in the order of the list of meanings; what is not used is not drawn.
  struct LegendRow {
    Meaning meaning = Meaning::undecided;
    std::size_t count = 0;
    bool operator==(const LegendRow&) const = default;
  };
  [[nodiscard]] std::vector<LegendRow> legend() const;
  void set_line(const std::optional<CrossingLine>& line);
  void set_theme(const Theme& theme);
  void set_units(UnitSystem units);
  [[nodiscard]] QSize sizeHint() const override { return {560, 420}; }
  [[nodiscard]] QPointF to_screen(const PlanPoint& p) const;
  [[nodiscard]] PlanPoint to_plan(const QPointF& at) const;

 Q_SIGNALS:
  void line_drawn(burrow::CrossingLine line);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void show_all();
  void draw(QPainter& painter) const;
  void draw_file(QPainter& painter, const ImportFile& file) const;
  void draw_joined(QPainter& painter, const ImportFile& file) const;
  void draw_scale(QPainter& painter) const;
  void draw_legend(QPainter& painter) const;
  void draw_highlight(QPainter& painter) const;
  [[nodiscard]] double metres_per_unit() const;                       ///< of x in the first file
  [[nodiscard]] double units_of_first(const ImportFile& file) const;  ///< in one of this file
  void draw_line(QPainter& painter) const;
  [[nodiscard]] std::optional<CrossingLine> nearest_piece(const QPointF& at) const;
  [[nodiscard]] double stretch() const;  ///< of degrees of latitude against those of longitude

  const Tables& tables_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
  const std::vector<ImportFile>* files_ = nullptr;
  std::optional<CrossingLine> line_;
  std::optional<std::pair<std::size_t, std::uint32_t>> highlight_;
  std::optional<PlanPoint> first_;  ///< the first of two clicks
  QPointF pointer_;
  QPointF pressed_;
  PlanPoint middle_;
  double pixels_per_unit_ = 1;
  bool dragging_ = false;
  bool skip_release_ = false;
  QPixmap kept_;  ///< the plan as last drawn, so that the pointer moves lightly
};

/// The ground line as cut, with the utilities that cross it.
class CutPreview : public QWidget {
  Q_OBJECT

 public:
  CutPreview(const Tables& tables, QWidget* parent);
  void set_imported(std::optional<Imported> imported);
  void set_theme(const Theme& theme);
  void set_units(UnitSystem units);
  [[nodiscard]] QSize sizeHint() const override { return {560, 130}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  const Tables& tables_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
  std::optional<Imported> imported_;
};

}  // namespace burrow
