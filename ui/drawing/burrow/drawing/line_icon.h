#pragma once
/// The program's line icons: any size, in the colour that text has at the moment, light or dark.

#include <QColor>
#include <QIcon>
#include <QRectF>
#include <QString>

class QPainter;

namespace burrow {

/// An icon by the name of its file in `resources/icons`, without the ending. It follows the colours of the program:
/// text when usual, the focus colour when switched on, pale when disabled.   Evidence: LineIcon.*
QIcon line_icon(const QString& name);

/// One of them in one colour, to fill a square in the middle of the box.
void paint_line_icon(QPainter& painter, const QRectF& box, const QString& name, const QColor& colour);

}  // namespace burrow
