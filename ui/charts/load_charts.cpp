#include "burrow/charts/load_charts.h"
#include "burrow/document/text.h"

#include <QChart>
#include <QLegend>
#include <QLineSeries>
#include <QValueAxis>
#include <algorithm>

#include "chart_tools.h"

namespace burrow {

namespace {

double value_of(const LoadPoint& load, LoadLine line) {
  switch (line) {
    case LoadLine::ground:
      return load.earth_Pa;
    case LoadLine::arched:
      return load.earth_arched_Pa;
    case LoadLine::live:
      return load.live_Pa;
    case LoadLine::all:
      break;
  }
  return load.earth_Pa + load.live_Pa;
}

struct Pens {
  QLineSeries *all, *ground, *arched, *live, *mark;
};

void dress_lines(const Pens& lines, const Theme& theme) {
  lines.all->setPen(QPen(theme.ink, 2.5));
  lines.ground->setPen(QPen(theme.ground, 1.5, Qt::DashLine));
  lines.arched->setPen(QPen(theme.ink_soft, 1.5, Qt::DotLine));
  lines.live->setPen(QPen(theme.stop, 1.5, Qt::DashDotLine));
  lines.mark->setPen(QPen(theme.focus, 2));
}

/// What would run off the chart at no depth is cut at a round multiple of what presses on the pipe.
double span(double most) {
  return std::max(most, 1e-6);
}

}  // namespace

LoadDepthChart::LoadDepthChart(QWidget* parent) : BoreChart(tr("Load against depth"), parent) {
  auto* pressure = new QValueAxis(this);
  auto* depth = new QValueAxis(this);
  depth->setReverse(true);
  chart()->addAxis(pressure, Qt::AlignBottom);
  chart()->addAxis(depth, Qt::AlignLeft);
  for (QLineSeries** series : {&ground_, &arched_, &live_, &all_, &pipe_}) {
    *series = new QLineSeries(this);
    chart()->addSeries(*series);
    (*series)->attachAxis(pressure);
    (*series)->attachAxis(depth);
  }
  all_->setName(tr("all"));
  ground_->setName(tr("ground"));
  arched_->setName(tr("arching"));
  live_->setName(tr("traffic"));
  pipe_->setName(tr("pipe"));
  chart()->legend()->setVisible(true);
  chart()->legend()->setAlignment(Qt::AlignBottom);
  chart()->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
  dress();
}

void LoadDepthChart::dress() {
  BoreChart::dress();
  dress_lines({all_, ground_, arched_, live_, pipe_}, theme());
  chart()->legend()->setLabelBrush(theme().ink);
  chart()->legend()->setFont(drawing_font(fontMetrics().height() * 0.6));
}

QList<QPointF> LoadDepthChart::points(LoadLine line) const {
  switch (line) {
    case LoadLine::ground:
      return ground_->points();
    case LoadLine::arched:
      return arched_->points();
    case LoadLine::live:
      return live_->points();
    case LoadLine::all:
      break;
  }
  return all_->points();
}

QList<QPointF> LoadDepthChart::pipe() const {
  return pipe_->points();
}

void LoadDepthChart::show_profile(const LoadProfile& profile, double station_m, UnitSystem units) {
  const double metre = 1 / charts::one_unit(Dimension::station, units),
               pressure = 1 / charts::one_unit(Dimension::pressure, units);
  double at_pipe = 0, deep_end = 0, deepest = 1;
  for (const LoadPoint& load : profile.by_depth) {
    if (profile.pipe_depth_m && load.depth_m <= *profile.pipe_depth_m) at_pipe = value_of(load, LoadLine::all);
    deep_end = std::max(deep_end, load.earth_Pa);
    deepest = std::max(deepest, load.depth_m);
  }
  // A wheel near the surface is many times what it is on the pipe: the axis stops before it.
  const double most = span(std::max(2.5 * at_pipe, 1.2 * deep_end)) * pressure;
  const auto line = [&](LoadLine which) {
    QList<QPointF> points;
    for (const LoadPoint& load : profile.by_depth)
      if (const double x = value_of(load, which) * pressure; x <= most) points << QPointF(x, load.depth_m * metre);
    return points;
  };
  const bool loaded = std::any_of(profile.by_depth.begin(), profile.by_depth.end(),
                                  [](const LoadPoint& load) { return load.live_Pa > 0; });
  all_->replace(line(LoadLine::all));
  ground_->replace(line(LoadLine::ground));
  arched_->replace(line(LoadLine::arched));
  live_->replace(loaded ? line(LoadLine::live) : QList<QPointF>());
  QList<QPointF> pipe;
  if (profile.pipe_depth_m) pipe = {{0, *profile.pipe_depth_m * metre}, {most, *profile.pipe_depth_m * metre}};
  pipe_->replace(pipe);
  auto* across = qobject_cast<QValueAxis*>(chart()->axes(Qt::Horizontal).front());
  charts::set_range(across, 0, most, 4);
  across->setRange(0, most);
  across->setTitleText(tr("on the crown, %1").arg(charts::unit_word(Dimension::pressure, units)));
  auto* down = qobject_cast<QValueAxis*>(chart()->axes(Qt::Vertical).front());
  charts::set_range(down, 0, deepest * metre, 4);
  down->setTitleText(tr("depth, %1").arg(charts::unit_word(Dimension::station, units)));
  set_heading(tr("Load against depth at %1").arg(text_from(format(station_m, Dimension::station, units))));
}

LoadAlongChart::LoadAlongChart(QWidget* parent) : BoreChart(tr("Load along the bore"), parent) {
  auto* station = new QValueAxis(this);
  auto* pressure = new QValueAxis(this);
  chart()->addAxis(station, Qt::AlignBottom);
  chart()->addAxis(pressure, Qt::AlignLeft);
  for (QLineSeries** series : {&ground_, &arched_, &live_, &all_, &here_}) {
    *series = new QLineSeries(this);
    chart()->addSeries(*series);
    (*series)->attachAxis(station);
    (*series)->attachAxis(pressure);
  }
  all_->setName(tr("all"));
  ground_->setName(tr("ground"));
  arched_->setName(tr("arching"));
  live_->setName(tr("traffic"));
  here_->setName(tr("here"));
  chart()->legend()->setVisible(true);
  chart()->legend()->setAlignment(Qt::AlignBottom);
  chart()->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
  dress();
}

void LoadAlongChart::dress() {
  BoreChart::dress();
  dress_lines({all_, ground_, arched_, live_, here_}, theme());
  chart()->legend()->setLabelBrush(theme().ink);
  chart()->legend()->setFont(drawing_font(fontMetrics().height() * 0.6));
}

QList<QPointF> LoadAlongChart::points(LoadLine line) const {
  switch (line) {
    case LoadLine::ground:
      return ground_->points();
    case LoadLine::arched:
      return arched_->points();
    case LoadLine::live:
      return live_->points();
    case LoadLine::all:
      break;
  }
  return all_->points();
}

void LoadAlongChart::show_loads(const Assessment& assessment, double station_m, UnitSystem units) {
  const double metre = 1 / charts::one_unit(Dimension::station, units),
               pressure = 1 / charts::one_unit(Dimension::pressure, units);
  const std::vector<LoadPoint>& loads = assessment.loads;
  double most = 1e-6;
  const auto line = [&](LoadLine which) {
    QList<QPointF> points;
    for (const LoadPoint& load : loads) {
      points << QPointF(load.station_m * metre, value_of(load, which) * pressure);
      most = std::max(most, points.back().y());
    }
    return points;
  };
  all_->replace(line(LoadLine::all));
  ground_->replace(line(LoadLine::ground));
  arched_->replace(line(LoadLine::arched));
  live_->replace(line(LoadLine::live));
  here_->replace({{station_m * metre, 0}, {station_m * metre, most}});
  const double from = loads.empty() ? 0 : loads.front().station_m * metre,
               to = loads.empty() ? 1 : loads.back().station_m * metre;
  auto* station = qobject_cast<QValueAxis*>(chart()->axes(Qt::Horizontal).front());
  charts::set_range(station, from, to, 5);
  station->setRange(from, std::max(to, from + 1e-6));
  station->setTitleText(tr("station, %1").arg(charts::unit_word(Dimension::station, units)));
  charts::set_range(qobject_cast<QValueAxis*>(chart()->axes(Qt::Vertical).front()), 0, most, 4);
  set_heading(tr("Load along the bore, %1").arg(charts::unit_word(Dimension::pressure, units)));
}

}  // namespace burrow
