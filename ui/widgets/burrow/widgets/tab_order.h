#pragma once
/// Tab goes where the eye goes: down a page, and along a row from left to right, whatever was made first and whatever
/// rows came later.

class QWidget;

namespace burrow {

/// Chains the controls of a window that are to be seen now in the order in which they stand: of each container its
/// parts by rows, the rows from left to right, each part with all it holds before the next.
void order_tabs(QWidget& window);

/// From now on every press of Tab and Shift+Tab in the program is preceded by that. Called once for each window; what
/// is installed is one for all.   Evidence: Access.*
void tab_by_place();

}  // namespace burrow
