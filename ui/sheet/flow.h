#pragma once
/// Text and tables that flow down columns and on to further pages.

#include <functional>

#include "burrow/sheet/page.h"

namespace burrow {

struct TableColumn {
  QString title;
  double share = 1;  ///< of the width
  Align align = Align::left;
};
using TableRow = QStringList;

struct FlowStyle {
  TextStyle body{2.5};
  TextStyle titles{2.5, QFont::DemiBold, QColor(0x40, 0x40, 0x40)};  ///< of the columns of a table
  TextStyle block{2.6, QFont::DemiBold};
  TextStyle heads{3.5, QFont::Bold};
};

/// Fills areas one after another; when they are full, `more` gives those of the next page.
class Flow {
 public:
  struct Area {
    Page* page = nullptr;
    QRectF box;
  };
  explicit Flow(std::function<std::vector<Area>()> more, FlowStyle style = {})
      : more_(std::move(more)), style_(style) {}

  static constexpr double cell_gap = 2.4;  ///< between the columns of a table

  void heading(const QString& words);
  /// Set apart, before what explains it.
  void formula(const QString& words);
  void paragraph(const QString& words);
  /// The title row stands again at the top of each further area. A row that is longer than an area goes on in the next.
  /// `bold`: rows that stand out, by what they ask for and never by their words.
  void table(const std::vector<TableColumn>& columns, const std::vector<TableRow>& rows,
             const std::vector<bool>& bold = {});
  /// Lines that stay together where an area can hold them; the first one is set apart.
  void block(const QString& title, const QStringList& lines);
  /// Ruled lines to write on, each after its words.
  void to_fill_in(const QStringList& words);
  /// A box of this height, as wide as the area, to draw in.
  Area room(double height_mm);
  [[nodiscard]] const FlowStyle& style() const { return style_; }
  /// Of the area in which the next line stands.
  double width_mm();
  [[nodiscard]] double at_mm() const { return y_; }
  /// Room for this height here, else in the next area.
  void keep(double height_mm);

 private:
  void lines_of(const QString& words, const TextStyle& style, double indent_mm);
  [[nodiscard]] double left() const { return area_.box.bottom() - y_; }
  void next();
  void table_titles(const std::vector<TableColumn>& columns, const std::vector<double>& widths);

  std::function<std::vector<Area>()> more_;
  FlowStyle style_;
  std::vector<Area> waiting_;
  Area area_;
  double y_ = 0;
};

}  // namespace burrow
