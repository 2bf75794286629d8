#pragma once
/// The marks of the hose on the setup card: one short row each.

#include <cstddef>
#include <vector>

#include "burrow/sheet/page.h"
#include "burrow/sheet/sheet.h"
#include "flow.h"

namespace burrow {

inline constexpr double card_text_mm = 11 * 25.4 / 72;  ///< nothing on the card is smaller: it is read in the rain

class CardMarks {
 public:
  CardMarks(const Sheet& sheet, double width_mm);

  /// The front: first the marks at which the tool has to stop or something is to be exposed, then the others from the
  /// launch on, as many as there is room for. What is left over is named below in large type. Gives its lower edge.
  double front(Paper& paper, const QRectF& box);
  /// What stands nowhere yet, from the launch on, as much of it as there is room for. Gives its lower edge.
  double more(Paper& paper, const QRectF& box);
  /// All marks stand somewhere.
  [[nodiscard]] bool done() const;
  /// What those take that stand nowhere yet, with their titles.
  [[nodiscard]] double height_left() const;

 private:
  struct Row {
    QString hose, deep;
    QStringList lines;
    TextStyle style;
    double height_mm = 0;
    bool stops = false, drawn = false;
  };
  [[nodiscard]] double titles(Paper& paper, const QRectF& box) const;
  double draw(Paper& paper, const QRectF& box, double y, Row& row) const;
  [[nodiscard]] QString stops_left() const;
  [[nodiscard]] int others_left() const;

  double hose_mm_ = 0, deep_mm_ = 0;
  std::vector<Row> rows_;
};

}  // namespace burrow
