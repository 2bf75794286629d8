#pragma once
/// What stays as wide while its numbers change.

#include <QString>

namespace burrow {

/// Each figure as a nought. Figures are of one width in the faces used, so that a number that changes thirty times a
/// second is measured once. Evidence: Figures.*
QString with_noughts(QString text);

}  // namespace burrow
