#include <QChart>
#include <QLineSeries>
#include <QScatterSeries>
#include <QValueAxis>
#include <algorithm>
#include <cmath>

#include "burrow/charts/bore_charts.h"
#include "chart_tools.h"

namespace burrow {

namespace {
constexpr int most_points = 1500;  // more of them only hide one another
constexpr double ninety = 1.645;

QList<QPointF> rectangle(double left, double right, double low, double high) {
  return {{left, low}, {right, low}, {right, high}, {left, high}, {left, low}};
}
}  // namespace

ArrivalChart::ArrivalChart(QWidget* parent) : BoreChart(tr("Arrivals on the exit face"), parent) {
  auto* across = new QValueAxis(this);
  auto* level = new QValueAxis(this);
  across->setReverse(true);  // seen from the launch: left is left
  chart()->addAxis(across, Qt::AlignBottom);
  chart()->addAxis(level, Qt::AlignLeft);
  auto* inside = new QScatterSeries(this);
  inside->setName(tr("in the exit pit"));
  inside->setMarkerShape(QScatterSeries::MarkerShapeCircle);
  auto* outside = new QScatterSeries(this);
  outside->setName(tr("beside it"));
  outside->setMarkerShape(QScatterSeries::MarkerShapeRectangle);
  auto* window = new QLineSeries(this);
  window->setName(tr("exit pit"));
  auto* range = new QLineSeries(this);
  range->setName(tr("90 %, closed form"));
  for (QXYSeries* series : {static_cast<QXYSeries*>(inside), static_cast<QXYSeries*>(outside),
                            static_cast<QXYSeries*>(window), static_cast<QXYSeries*>(range)}) {
    chart()->addSeries(series);
    series->attachAxis(across);
    series->attachAxis(level);
  }
  chart()->legend()->setVisible(true);
  chart()->legend()->setAlignment(Qt::AlignBottom);
  chart()->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
  dress();
}

void ArrivalChart::dress() {
  BoreChart::dress();
  const auto series = chart()->series();
  auto* inside = qobject_cast<QScatterSeries*>(series[0]);
  auto* outside = qobject_cast<QScatterSeries*>(series[1]);
  QColor dot = theme().band;
  dot.setAlpha(130);
  inside->setMarkerSize(4);
  inside->setColor(dot);
  inside->setBorderColor(Qt::transparent);
  outside->setMarkerSize(5);
  outside->setColor(theme().stop);
  outside->setBorderColor(Qt::transparent);
  qobject_cast<QLineSeries*>(series[2])->setPen(QPen(theme().ink, 2));
  qobject_cast<QLineSeries*>(series[3])->setPen(QPen(theme().bore, 1.4, Qt::DashLine));
  chart()->legend()->setLabelBrush(theme().ink);
  chart()->legend()->setFont(drawing_font(fontMetrics().height() * 0.6));
}

void ArrivalChart::show_arrivals(const Trials* trials, const ExitWindow& window, const Assessment* assessment,
                                 UnitSystem units) {
  const double metre = 1 / charts::one_unit(Dimension::station, units);
  const auto series = chart()->series();
  auto* inside = qobject_cast<QScatterSeries*>(series[0]);
  auto* outside = qobject_cast<QScatterSeries*>(series[1]);
  auto* opening = qobject_cast<QLineSeries*>(series[2]);
  auto* range = qobject_cast<QLineSeries*>(series[3]);
  QList<QPointF> in, out;
  double left = -1e300, right = 1e300, low = 1e300, high = -1e300;
  const auto hold = [&](double y, double z) {
    left = std::max(left, y);
    right = std::min(right, y);
    low = std::min(low, z);
    high = std::max(high, z);
  };
  if (trials) {
    for (const TrialOutcome& outcome : trials->outcomes) {
      if (outcome.end != TrialEnd::arrived) continue;
      if (in.size() + out.size() >= most_points) break;
      const QPointF at(outcome.offset_m * metre, outcome.elevation_m * metre);
      (outcome.inside_window ? in : out) << at;
      hold(at.x(), at.y());
    }
    opening->replace(
        rectangle(window.left_m * metre, window.right_m * metre, window.low_m * metre, window.high_m * metre));
    hold(window.left_m * metre, window.low_m * metre);
    hold(window.right_m * metre, window.low_m * metre);
  } else {
    opening->clear();
  }
  inside->replace(in);
  outside->replace(out);
  shown_ = static_cast<int>(in.size() + out.size());
  const Arrival a = assessment ? assessment->arrival : Arrival();
  const bool arrives = assessment && assessment->bore.ends == PathEnd::exit;
  if (trials && arrives && a.offset_m && a.sd_lateral_m && a.elevation_m && a.sd_vertical_m) {
    const double y = *a.offset_m, z = *a.elevation_m, dy = ninety * *a.sd_lateral_m, dz = ninety * *a.sd_vertical_m;
    range->replace(rectangle((y + dy) * metre, (y - dy) * metre, (z - dz) * metre, (z + dz) * metre));
  } else {
    range->clear();
  }
  if (!(left > right)) {
    left = 1;
    right = -1;
    low = 0;
    high = 1;
  }
  const double margin = 0.06 * std::max(left - right, high - low);
  auto* across = qobject_cast<QValueAxis*>(chart()->axes(Qt::Horizontal).front());
  auto* level = qobject_cast<QValueAxis*>(chart()->axes(Qt::Vertical).front());
  charts::set_range(across, right - margin, left + margin, 4);
  charts::set_range(level, low - margin, high + margin, 4);
  const QString unit = charts::unit_word(Dimension::station, units);
  across->setTitleText(tr("offset, %1 (left is +)").arg(unit));
  level->setTitleText(tr("level, %1").arg(unit));
}

}  // namespace burrow
