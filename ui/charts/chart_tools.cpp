#include "chart_tools.h"

#include <algorithm>
#include <cmath>

#include "burrow/drawing/frame.h"

namespace burrow::charts {

double one_unit(Dimension dimension, UnitSystem units) {
  return parse("1", dimension, units).value_or(1.0);
}

QString unit_word(Dimension dimension, UnitSystem units) {
  const std::string_view word = unit_name(dimension, units);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

void set_range(QValueAxis* axis, double low, double high, int ticks) {
  if (!std::isfinite(low) || !std::isfinite(high)) low = high = 0;
  const double least = std::max(1e-9, 1e-9 * std::max(std::abs(low), std::abs(high)));  // closer no tick tells apart
  if (!(high - low > least)) high = low + std::max(1.0, 2 * least);
  const double step = tick_step(1.0, (high - low) / std::max(1, ticks), 1.0);
  const double from = std::floor(low / step + 1e-9) * step, to = std::ceil(high / step - 1e-9) * step;
  // The chart draws at each of these: a range that grows while the old interval stands, or an interval that shrinks
  // while the old range does, is a hundred million ticks. In between it has a fixed number of them.
  axis->setTickType(QValueAxis::TicksFixed);
  axis->setRange(from, to);
  axis->setTickInterval(step);
  axis->setTickAnchor(from);
  axis->setTickType(QValueAxis::TicksDynamic);
  axis->setLabelFormat(
      QStringLiteral("%.%1f").arg(std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 4)));
}

}  // namespace burrow::charts
