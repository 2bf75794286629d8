#include "burrow/widgets/edge_style.h"

#include <QPainter>
#include <QStyleOption>

namespace burrow {

namespace {

constexpr int dark_below = 100;  // lightness of the page, of 255

/// None on a light page, where Fusion's own edge is seen.
QColor edge_of(const QStyleOption& option) {
  const QColor page = option.palette.color(QPalette::Window);
  if (page.lightness() >= dark_below) return {};
  const QColor ink = option.palette.color(option.state & QStyle::State_Enabled ? QPalette::Active : QPalette::Disabled,
                                          QPalette::WindowText);
  constexpr double share = 0.5;
  const auto mix = [&](int from, int to) { return static_cast<int>(from + share * (to - from)); };
  return {mix(page.red(), ink.red()), mix(page.green(), ink.green()), mix(page.blue(), ink.blue())};
}

void draw_edge(const QStyleOption& option, const QRect& box, QPainter* painter) {
  const QColor edge = edge_of(option);
  if (!edge.isValid() || !painter || option.state & QStyle::State_HasFocus) return;  // the focus has an edge of its own
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing, false);
  painter->setPen(edge);
  painter->setBrush(Qt::NoBrush);
  painter->drawRect(box.adjusted(0, 0, -1, -1));
  painter->restore();
}

}  // namespace

void EdgeStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                              const QWidget* widget) const {
  QProxyStyle::drawPrimitive(element, option, painter, widget);
  if (option && (element == PE_FrameLineEdit || element == PE_IndicatorCheckBox))
    draw_edge(*option, option->rect, painter);
}

void EdgeStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                                   const QWidget* widget) const {
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (!option) return;
  if (control == CC_ComboBox || control == CC_SpinBox) draw_edge(*option, option->rect, painter);
  if (control != CC_Slider) return;
  QStyleOption groove(*option);
  groove.state &= ~State_HasFocus;
  const QRect track = subControlRect(CC_Slider, option, SC_SliderGroove, widget);
  constexpr int half_px = 2;
  const QRect thin = track.width() > track.height()
                         ? QRect(track.left(), track.center().y() - half_px, track.width(), 2 * half_px + 1)
                         : QRect(track.center().x() - half_px, track.top(), 2 * half_px + 1, track.height());
  const QRect handle = subControlRect(CC_Slider, option, SC_SliderHandle, widget);
  painter->save();
  painter->setClipRegion(QRegion(option->rect).subtracted(handle));
  draw_edge(groove, thin, painter);
  painter->restore();
}

}  // namespace burrow
