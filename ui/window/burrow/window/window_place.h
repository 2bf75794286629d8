#pragma once
/// Where the window stands: within the screen it is on, and where it stood last time on a screen of that size.

#include <QRect>

class QMainWindow;
class QSplitter;

namespace burrow {

/// 85 % of what the screen has to give, in its middle; all of it where that is little.   Range: any screen.
/// Evidence: WindowPlace.*
QRect first_place(const QRect& available);

/// The place moved, and made smaller where it must be, to lie on the screen as a whole.   Evidence: WindowPlace.*
QRect within_screen(const QRect& place, const QRect& available);

/// Places the window on the screen it is on, before it is shown.
void place_window(QMainWindow& window, QSplitter& splitter);
/// For the next time on a screen of this size.
void remember_window(const QMainWindow& window, const QSplitter& splitter);

}  // namespace burrow
