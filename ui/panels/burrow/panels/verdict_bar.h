#pragma once
/// Above the drawing: in one word and one sentence how the crossing stands and what to do first.

#include <QWidget>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"

namespace burrow {

class VerdictBar : public QWidget {
  Q_OBJECT

 public:
  VerdictBar(Document& document, QWidget* parent = nullptr);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  [[nodiscard]] QSize sizeHint() const override;

 Q_SIGNALS:
  /// Clicked: show the first finding.
  void first_wanted();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

 private:
  Document& document_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
};

}  // namespace burrow
