#pragma once
/// A page as a list of what stands on it, in millimetres from its upper left corner: laid out once, then painted on a
/// PDF, a printer, a screen, or written as SVG. A test can read every text and every length from it.

#include <QColor>
#include <QFont>
#include <QPolygonF>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <vector>

namespace burrow {

/// A drawn line; width 0: none.
struct Stroke {
  double width_mm = 0.25;
  QColor colour = Qt::black;
  QList<double> dash_mm{};  ///< on, off, on … ; empty: unbroken
};

struct TextStyle {
  double size_mm = 2.5;  ///< of the em square; 1 mm is 2.83 pt
  QFont::Weight weight = QFont::Normal;
  QColor colour = Qt::black;
};

enum class PageItemKind { line, area, text };

struct PageItem {
  PageItemKind kind = PageItemKind::line;
  QPolygonF points;  ///< of a text: the left end of its base line
  Stroke stroke;
  QColor fill{};  ///< of an area
  QString text;
  TextStyle style;
  double rotated_deg = 0;  ///< of a text, counter-clockwise
  QRectF box;              ///< of a text as it stands on the page
  QRectF clip;             ///< null: none
};

/// A place on a page that a reader of the PDF may jump to.
struct PageMark {
  QString words;
  double y_mm = 0;  ///< from the top
};

struct Page {
  QSizeF size_mm;
  QRectF frame_mm;  ///< no text stands outside it
  std::vector<PageItem> items;
  QString name{};                 ///< its bookmark, of the first page of a part; empty: none
  std::vector<PageMark> marks{};  ///< bookmarks below it
};

enum class Align { left, centre, right };

/// Puts things on a page.
class Paper {
 public:
  explicit Paper(Page& page) : page_(page) {}

  void line(const QPolygonF& points, const Stroke& stroke);
  void line(const QPointF& a, const QPointF& b, const Stroke& stroke) { line(QPolygonF{a, b}, stroke); }
  void area(const QPolygonF& points, const QColor& fill, const Stroke& stroke = {0});
  void rect(const QRectF& rect, const QColor& fill, const Stroke& stroke = {0});
  void circle(const QPointF& middle, double radius_mm, const QColor& fill, const Stroke& stroke = {0});
  /// At a point of its base line; gives its box.
  QRectF text(const QPointF& at, const QString& words, const TextStyle& style, Align align = Align::left,
              double rotated_deg = 0);
  /// One line within a width, cut with an ellipsis where it is longer.
  QRectF short_text(const QPointF& at, const QString& words, const TextStyle& style, double width_mm,
                    Align align = Align::left);
  /// Lines one below the other from the top of a box; gives the height used.
  double paragraph(const QRectF& box, const QString& words, const TextStyle& style);

  /// What follows is cut at this rectangle; a null one ends it.
  void clip(const QRectF& rect) { clip_ = rect; }
  [[nodiscard]] Page& page() { return page_; }

 private:
  Page& page_;
  QRectF clip_;
};

/// Of the bundled typeface, whatever the device.   Evidence: Paper.TextWidth_*
double text_width_mm(const QString& words, const TextStyle& style);
/// The box of a text at a point of its base line: 0.78 em above it, 0.24 em below.
QRectF text_box(const QPointF& at, const QString& words, const TextStyle& style, Align align = Align::left,
                double rotated_deg = 0);
/// Broken at blanks, within words only where a word is longer than the width.   Evidence: Paper.Wrapped_*
QStringList wrapped(const QString& words, const TextStyle& style, double width_mm);
QString cut_to(const QString& words, const TextStyle& style, double width_mm);
inline double line_height_mm(const TextStyle& style) {
  return style.size_mm * 1.28;
}
/// The typeface at the size in which texts are measured and painted, a hundred units an em.
QFont paper_font(QFont::Weight weight);

/// Where labels stand already; finds room for the next.
class Places {
 public:
  explicit Places(const QRectF& within) : within_(within) {}
  void take(const QRectF& box) { taken_.push_back(box); }
  [[nodiscard]] bool free(const QRectF& box) const;
  /// Writes the words at the first of these base line points that is free; false: at none.
  bool label(Paper& paper, const std::vector<QPointF>& candidates, const QString& words, const TextStyle& style,
             Align align = Align::left, bool halo = true);

 private:
  QRectF within_;
  std::vector<QRectF> taken_;
};

}  // namespace burrow
