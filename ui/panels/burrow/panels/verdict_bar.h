#pragma once
/// Above the drawing: in one word and one sentence how the crossing stands and what to do first, how many findings of
/// each kind there are, and the way to the next one. Enter or a click goes to the first.

#include <QWidget>
#include <vector>

#include "burrow/document/document.h"
#include "burrow/drawing/flags.h"
#include "burrow/drawing/theme.h"

class QToolButton;

namespace burrow {

/// How many findings show one mark.
struct FindingCount {
  FindingMark mark = FindingMark::note;
  int count = 0;
};

/// Those that there are, worst first; muted ones are not counted where they do not count in the verdict.
/// Evidence: VerdictBar.*
std::vector<FindingCount> finding_counts(const std::vector<Finding>& findings);

/// "2 stops".
QString count_words(const FindingCount& what);

class VerdictBar : public QWidget {
  Q_OBJECT

 public:
  VerdictBar(Document& document, QWidget* parent = nullptr);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QToolButton* next() const { return next_; }

 Q_SIGNALS:
  /// Clicked, or Enter: show the first finding.
  void first_wanted();
  void next_wanted();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void show_next_in_full();
  /// The counts, right-aligned to the left of `right`; their left end.
  int paint_counts(QPainter& painter, int right) const;
  int paint_verdict(QPainter& painter) const;

  Document& document_;
  QToolButton* next_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
};

}  // namespace burrow
