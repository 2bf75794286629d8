#include "pit_view.h"

#include "burrow/bore/tool.h"

namespace burrow {

PitView::PitView(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
  setAccessibleName(tr("Pictures of the pit: from above, and across the bore"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize PitView::sizeHint() const {
  return {300, fontMetrics().height() * 19};
}

void PitView::show_pit(WhichPit which, UnitSystem units, const Theme& theme) {
  which_ = which;
  units_ = units;
  theme_ = theme;
  update();
}

void PitView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.paper);
  const Assessment& now = document_.assessment();
  const Crossing& crossing = document_.crossing();
  const Tool tool = resolve_tool(crossing.bore.tool, document_.tables());
  const bool launch = which_ == WhichPit::launch;
  Style look;
  look.theme = theme_;
  look.units = units_;
  look.text = fontMetrics().height() * 0.72;
  const double offset =
      launch ? crossing.bore.launch.offset->m : now.arrival.offset_m.value_or(crossing.bore.exit.offset->m);
  const PitPicture picture{launch ? now.launch_pit : now.exit_pit,
                           launch ? now.launch_pit_work : now.exit_pit_work,
                           crossing.site.ground,
                           offset,
                           tool.diameter.m,
                           tool.length.m,
                           look};
  QRectF upper(rect()), lower(rect());
  upper.setBottom(height() * 0.58);
  lower.setTop(height() * 0.58);
  paint_pit_oblique(painter, upper, picture);
  paint_pit_across(painter, lower, picture);
}

}  // namespace burrow
