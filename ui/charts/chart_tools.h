#pragma once
/// Small tools that the charts of this room share.

#include <QChart>
#include <QString>
#include <QValueAxis>

#include "burrow/base/quantity_text.h"

namespace burrow::charts {

/// SI size of one unit in which a dimension is shown: 0.001 for mm, 0.3048 for ft.
double one_unit(Dimension dimension, UnitSystem units);
QString unit_word(Dimension dimension, UnitSystem units);

/// An axis from round tick to round tick around [low, high], with about `ticks` of them.
void set_range(QValueAxis* axis, double low, double high, int ticks);

}  // namespace burrow::charts
