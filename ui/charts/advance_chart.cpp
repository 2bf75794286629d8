#include <QAreaSeries>
#include <QChart>
#include <QLineSeries>
#include <QValueAxis>

#include "burrow/charts/bore_charts.h"
#include "chart_tools.h"

namespace burrow {

AdvanceChart::AdvanceChart(QWidget* parent) : BoreChart(tr("Time since the start"), parent) {
  auto* station = new QValueAxis(this);
  auto* time = new QValueAxis(this);
  chart()->addAxis(station, Qt::AlignBottom);
  chart()->addAxis(time, Qt::AlignLeft);
  auto* range = new QAreaSeries(new QLineSeries(this), new QLineSeries(this));
  auto* middle = new QLineSeries(this);
  auto* stop = new QLineSeries(this);
  for (QAbstractSeries* series : {static_cast<QAbstractSeries*>(range), static_cast<QAbstractSeries*>(middle),
                                  static_cast<QAbstractSeries*>(stop)}) {
    chart()->addSeries(series);
    series->attachAxis(station);
    series->attachAxis(time);
  }
  stop->setName(QStringLiteral("stop"));
  dress();
}

void AdvanceChart::dress() {
  BoreChart::dress();
  for (QAbstractSeries* series : chart()->series()) {
    if (auto* area = qobject_cast<QAreaSeries*>(series)) {
      QColor colour = theme().band;
      colour.setAlpha(80);
      area->setBrush(colour);
      area->setPen(Qt::NoPen);
    } else if (auto* line = qobject_cast<QLineSeries*>(series)) {
      const bool stop = line->name() == QLatin1String("stop");
      line->setPen(stop ? QPen(theme().stop, 2, Qt::DashLine) : QPen(theme().bore, 2));
    }
  }
}

void AdvanceChart::show_advance(const Assessment& assessment, UnitSystem units) {
  const double metre = 1 / charts::one_unit(Dimension::station, units);
  constexpr double minute_s = 60;
  const auto& points = assessment.advance.points;
  QList<QPointF> middle, low, high;
  double longest = 1;
  for (const AdvancePoint& p : points) {
    if (!(p.rate_m_s > 0)) break;  // it would stop here
    middle << QPointF(p.x_m * metre, p.time.p50_s / minute_s);
    low << QPointF(p.x_m * metre, p.time.p10_s / minute_s);
    high << QPointF(p.x_m * metre, p.time.p90_s / minute_s);
    longest = std::max(longest, high.back().y());
  }
  QList<QPointF> stop;
  if (assessment.refusal_station_m)
    stop = {{*assessment.refusal_station_m * metre, 0}, {*assessment.refusal_station_m * metre, longest}};
  for (QAbstractSeries* series : chart()->series()) {
    if (auto* area = qobject_cast<QAreaSeries*>(series)) {
      area->upperSeries()->replace(high);
      area->lowerSeries()->replace(low);
    } else if (auto* line = qobject_cast<QLineSeries*>(series)) {
      line->replace(line->name() == QLatin1String("stop") ? stop : middle);
    }
  }
  auto* station = qobject_cast<QValueAxis*>(chart()->axes(Qt::Horizontal).front());
  const double from = points.empty() ? 0 : points.front().x_m * metre,
               to = points.empty() ? 1 : points.back().x_m * metre;
  charts::set_range(station, from, to, 5);
  station->setRange(from, std::max(to, from + 1e-6));
  station->setTitleText(tr("station, %1").arg(charts::unit_word(Dimension::station, units)));
  charts::set_range(qobject_cast<QValueAxis*>(chart()->axes(Qt::Vertical).front()), 0, longest, 4);
  set_heading(assessment.refusal_station_m ? tr("Minutes since the start, until it would stop")
                                           : tr("Minutes since the start, 10 to 90 % of bores"));
}

}  // namespace burrow
