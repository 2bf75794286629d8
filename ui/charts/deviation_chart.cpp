#include <QAreaSeries>
#include <QChart>
#include <QLineSeries>
#include <QValueAxis>
#include <array>
#include <cmath>

#include "burrow/charts/bore_charts.h"
#include "chart_tools.h"

namespace burrow {

namespace {
constexpr std::array<double, 3> band_factors{2.576, 1.645, 0.674};  // 99, 90 and 50 % of one coordinate
constexpr std::array<int, 3> band_strength{40, 55, 80};
}  // namespace

DeviationChart::DeviationChart(Across across, QWidget* parent) : BoreChart(QString(), parent), across_(across) {
  auto* station = new QValueAxis(this);
  auto* away = new QValueAxis(this);
  chart()->addAxis(station, Qt::AlignBottom);
  chart()->addAxis(away, Qt::AlignLeft);
  const auto attach = [&](QAbstractSeries* series) {
    chart()->addSeries(series);
    series->attachAxis(station);
    series->attachAxis(away);
  };
  for (std::size_t b = 0; b < band_factors.size(); ++b) {
    auto* upper = new QLineSeries(this);
    auto* lower = new QLineSeries(this);
    attach(new QAreaSeries(upper, lower));
  }
  attach(new QLineSeries(this));  // the mean path
  dress();
}

void DeviationChart::dress() {
  BoreChart::dress();
  std::size_t band = 0;
  for (QAbstractSeries* series : chart()->series()) {
    if (auto* area = qobject_cast<QAreaSeries*>(series)) {
      QColor colour = theme().band;
      colour.setAlpha(band_strength[band++]);
      area->setBrush(colour);
      area->setPen(Qt::NoPen);
    } else if (auto* line = qobject_cast<QLineSeries*>(series)) {
      line->setPen(QPen(theme().bore, 2));
    }
  }
}

void DeviationChart::show_path(const Crossing& crossing, const Assessment& assessment, UnitSystem units) {
  const Launch& launch = crossing.bore.launch;
  const double metre_x = 1 / charts::one_unit(Dimension::station, units);
  const double metre_y = 1 / charts::one_unit(Dimension::small_length, units);
  const bool up = across_ == Across::up;
  QList<QPointF> mean;
  std::array<QList<QPointF>, 3> high, low;
  double least = 0, most = 0;
  for (const PathPoint& p : assessment.bore.points) {
    const double run = p.x_m - launch.station.m;
    const double aimed = up ? launch.elevation.m + run * launch.grade.v / std::cos(launch.heading->rad)
                            : launch.offset->m + run * std::tan(launch.heading->rad);
    const double away = (up ? p.z_m : p.y_m) - aimed;
    const double sd = up ? p.sd_vertical_m : p.sd_lateral_m;
    const double x = p.x_m * metre_x;
    mean << QPointF(x, away * metre_y);
    for (std::size_t b = 0; b < band_factors.size(); ++b) {
      high[b] << QPointF(x, (away + band_factors[b] * sd) * metre_y);
      low[b] << QPointF(x, (away - band_factors[b] * sd) * metre_y);
    }
    least = std::min(least, low[0].back().y());
    most = std::max(most, high[0].back().y());
  }
  std::size_t band = 0;
  for (QAbstractSeries* series : chart()->series()) {
    if (auto* area = qobject_cast<QAreaSeries*>(series)) {
      area->upperSeries()->replace(high[band]);
      area->lowerSeries()->replace(low[band]);
      ++band;
    } else if (auto* line = qobject_cast<QLineSeries*>(series)) {
      line->replace(mean);
    }
  }
  auto* station = qobject_cast<QValueAxis*>(chart()->axes(Qt::Horizontal).front());
  auto* away = qobject_cast<QValueAxis*>(chart()->axes(Qt::Vertical).front());
  charts::set_range(station, launch.station.m * metre_x, crossing.bore.exit.station.m * metre_x, 5);
  station->setRange(launch.station.m * metre_x, crossing.bore.exit.station.m * metre_x);
  charts::set_range(away, least, most, 4);
  station->setTitleText(tr("station, %1").arg(charts::unit_word(Dimension::station, units)));
  const QString unit = charts::unit_word(Dimension::small_length, units);
  set_heading(up ? tr("Above (+) and below (−) the aimed line, %1").arg(unit)
                 : tr("Left (+) and right (−) of the aimed line, %1").arg(unit));
}

}  // namespace burrow
