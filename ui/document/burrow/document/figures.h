#pragma once
/// Numbers in texts: as wide while they change, on one line with their units.

#include <QString>

namespace burrow {

/// Each figure as a nought. Figures are of one width in the faces used, so that a number that changes thirty times a
/// second is measured once. Evidence: Figures.*
QString with_noughts(QString text);

/// A number and its unit stay on one line.
QString with_units_kept(QString text);

}  // namespace burrow
