#pragma once
/// Qt's Fusion with edges that are seen on dark ground. Fusion draws the edge of a field darker than the page, which on
/// a dark page is next to nothing (1.1 to 1); WCAG 2.2, 1.4.11 wants 3 to 1 for what is needed to see a control.
/// Evidence: EdgeStyle.*

#include <QProxyStyle>

namespace burrow {

class EdgeStyle : public QProxyStyle {
  Q_OBJECT

 public:
  EdgeStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                          const QWidget* widget) const override;
};

}  // namespace burrow
