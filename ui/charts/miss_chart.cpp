#include <QChart>
#include <QLegend>
#include <QLineSeries>
#include <QValueAxis>
#include <algorithm>

#include "burrow/charts/bore_charts.h"
#include "chart_tools.h"

namespace burrow {

MissChart::MissChart(QWidget* parent)
    : BoreChart(QString(), parent), up_(new QLineSeries(this)), left_(new QLineSeries(this)) {
  auto* station = new QValueAxis(this);
  auto* miss = new QValueAxis(this);
  chart()->addAxis(station, Qt::AlignBottom);
  chart()->addAxis(miss, Qt::AlignLeft);
  up_->setName(tr("up (+) and down (−)"));
  left_->setName(tr("left (+) and right (−)"));
  for (QLineSeries* series : {up_, left_}) {
    chart()->addSeries(series);
    series->attachAxis(station);
    series->attachAxis(miss);
  }
  chart()->legend()->setVisible(true);
  chart()->legend()->setAlignment(Qt::AlignBottom);
  dress();
}

void MissChart::dress() {
  BoreChart::dress();
  up_->setPen(QPen(theme().bore, 2.4));
  left_->setPen(QPen(theme().focus, 2.4, Qt::DashLine));
  chart()->legend()->setLabelBrush(theme().ink);
  chart()->legend()->setFont(drawing_font(fontMetrics().height() * 0.62));
}

QList<QPointF> MissChart::points(Across across) const {
  return (across == Across::up ? up_ : left_)->points();
}

void MissChart::show_miss(const TryErrorAnswer& answer, UnitSystem units) {
  const double metre_x = 1 / charts::one_unit(Dimension::station, units);
  const double metre_y = 1 / charts::one_unit(Dimension::small_length, units);
  QList<QPointF> up, left;
  double least = 0, most = 0;
  for (const MissPoint& p : answer.points) {
    up << QPointF(p.station_m * metre_x, p.up_m * metre_y);
    left << QPointF(p.station_m * metre_x, p.left_m * metre_y);
    least = std::min({least, up.back().y(), left.back().y()});
    most = std::max({most, up.back().y(), left.back().y()});
  }
  up_->replace(up);
  left_->replace(left);
  auto* station = qobject_cast<QValueAxis*>(chart()->axes(Qt::Horizontal).front());
  auto* miss = qobject_cast<QValueAxis*>(chart()->axes(Qt::Vertical).front());
  const double from = up.isEmpty() ? 0 : up.front().x(), to = up.isEmpty() ? 1 : up.back().x();
  charts::set_range(station, from, to, 5);
  station->setRange(from, std::max(to, from + 1e-6));
  charts::set_range(miss, least, most, 4);
  station->setTitleText(tr("station, %1").arg(charts::unit_word(Dimension::station, units)));
  set_heading(tr("Away from the aimed line, %1").arg(charts::unit_word(Dimension::small_length, units)));
}

}  // namespace burrow
