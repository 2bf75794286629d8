#include <QChart>
#include <QLegend>
#include <QLineSeries>
#include <QValueAxis>
#include <algorithm>

#include "burrow/charts/bore_charts.h"
#include "burrow/check/rise_while_boring.h"
#include "chart_tools.h"

namespace burrow {

HeaveChart::HeaveChart(QWidget* parent) : BoreChart(tr("Rise of the surface"), parent) {
  auto* station = new QValueAxis(this);
  auto* rise = new QValueAxis(this);
  chart()->addAxis(station, Qt::AlignBottom);
  chart()->addAxis(rise, Qt::AlignLeft);
  for (QLineSeries** series : {&high_, &low_, &passing_, &limit_}) {
    *series = new QLineSeries(this);
    chart()->addSeries(*series);
    (*series)->attachAxis(station);
    (*series)->attachAxis(rise);
  }
  low_->setName(tr("low"));
  high_->setName(tr("high"));
  passing_->setName(tr("tip here"));
  limit_->setName(tr("allowed"));
  chart()->legend()->setVisible(true);
  chart()->legend()->setAlignment(Qt::AlignBottom);
  chart()->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
  dress();
}

void HeaveChart::dress() {
  BoreChart::dress();
  low_->setPen(QPen(theme().ink, 2));
  high_->setPen(QPen(theme().ink_soft, 1.5, Qt::DashLine));
  passing_->setPen(QPen(theme().bore, 2, Qt::DotLine));
  limit_->setPen(QPen(theme().stop, 1.5, Qt::DashDotLine));
  chart()->legend()->setLabelBrush(theme().ink);
  chart()->legend()->setFont(drawing_font(fontMetrics().height() * 0.6));
}

QList<QPointF> HeaveChart::points(Line line) const {
  switch (line) {
    case Line::high:
      return high_->points();
    case Line::low:
      return low_->points();
    case Line::tip:
      return passing_->points();
    case Line::allowed:
      break;
  }
  return limit_->points();
}

void HeaveChart::show_heave(const Assessment& assessment, double tip_station_m, UnitSystem units) {
  const double metre = 1 / charts::one_unit(Dimension::station, units),
               small = 1 / charts::one_unit(Dimension::small_length, units);
  const std::vector<HeavePoint>& heave = assessment.heave;
  const std::vector<double> under_way = rise_with_tip_at(heave, tip_station_m);
  QList<QPointF> low, high, passing, limit;
  double most = 1e-4 * small;
  for (std::size_t i = 0; i < heave.size(); ++i) {
    const double x = heave[i].station_m * metre;
    low << QPointF(x, heave[i].low_m * small);
    high << QPointF(x, heave[i].high_m * small);
    passing << QPointF(x, under_way[i] * small);
    most = std::max({most, low.back().y(), high.back().y()});
  }
  const double from = heave.empty() ? 0 : heave.front().station_m * metre,
               to = heave.empty() ? 1 : heave.back().station_m * metre;
  if (assessment.surface.limit_m) {
    limit = {{from, *assessment.surface.limit_m * small}, {to, *assessment.surface.limit_m * small}};
    most = std::max(most, limit.front().y());
  }
  low_->replace(low);
  high_->replace(high);
  passing_->replace(passing);
  limit_->replace(limit);
  auto* station = qobject_cast<QValueAxis*>(chart()->axes(Qt::Horizontal).front());
  charts::set_range(station, from, to, 5);
  station->setRange(from, std::max(to, from + 1e-6));
  station->setTitleText(tr("station, %1").arg(charts::unit_word(Dimension::station, units)));
  charts::set_range(qobject_cast<QValueAxis*>(chart()->axes(Qt::Vertical).front()), 0, most, 4);
  set_heading(tr("Rise of the surface, %1").arg(charts::unit_word(Dimension::small_length, units)));
}

}  // namespace burrow
