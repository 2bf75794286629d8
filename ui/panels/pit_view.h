#pragma once
/// A pit in two pictures: obliquely from above, and across the bore.

#include <QWidget>

#include "burrow/check/assessment.h"
#include "burrow/document/document.h"
#include "burrow/document/pit_fields.h"
#include "burrow/drawing/pit_picture.h"

namespace burrow {

class PitView : public QWidget {
 public:
  PitView(Document& document, QWidget* parent);
  void show_pit(WhichPit which, UnitSystem units, const Theme& theme);
  [[nodiscard]] QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Document& document_;
  WhichPit which_ = WhichPit::launch;
  UnitSystem units_ = UnitSystem::metric;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
