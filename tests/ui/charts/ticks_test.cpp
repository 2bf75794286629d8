// Charts whose range jumps by a factor of a million either way: an axis that moves while its old tick interval stands
// draws a hundred million ticks, and the screen hangs for good.
#include <gtest/gtest.h>

#include <QChart>
#include <QChartView>
#include <QLineSeries>
#include <QValueAxis>
#include <cmath>
#include <limits>

#include "chart_tools.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

/// The most ticks that an axis was ever asked to draw.
class TickWatch : public QObject {
 public:
  void watch(QValueAxis* axis) {
    const auto style = [this, axis] {
      if (axis->tickType() != QValueAxis::TicksDynamic || !(axis->tickInterval() > 0)) return;
      most = std::max(most, (axis->max() - axis->min()) / axis->tickInterval());
    };
    connect(axis, &QValueAxis::rangeChanged, this, style);
    connect(axis, &QValueAxis::tickIntervalChanged, this, style);
  }
  double most = 0;
};

TEST(Charts, Axis_JumpsOfAMillionBothWays_FewTicksAtEachStep) {
  QChartView view;
  auto* series = new QLineSeries;
  series->append(0, 0);
  series->append(1, 1);
  view.chart()->addSeries(series);
  auto* axis = new QValueAxis;
  view.chart()->addAxis(axis, Qt::AlignLeft);
  series->attachAxis(axis);
  view.resize(400, 300);
  view.show();
  TickWatch watch;
  watch.watch(axis);
  for (const double size : {1.0, 1e6, 1.0, 1e-6, 1.0, 1e12, 1e-6, 1e15}) {
    charts::set_range(axis, 0, size, 5);
    charts::set_range(axis, size, 2 * size, 5);
    charts::set_range(axis, -size, size, 5);
    QCoreApplication::processEvents();
    EXPECT_LT(watch.most, 60) << size;
  }
  charts::set_range(axis, 1e15, 1e15 + 1, 5);  // far from zero: no tick is counted from there
  QCoreApplication::processEvents();
  EXPECT_LT(watch.most, 60);
  const double endless = std::numeric_limits<double>::infinity();
  for (const auto& [low, high] :
       {std::pair{0.0, endless}, {-endless, endless}, {std::nan(""), 1.0}, {0.0, std::nan("")}}) {
    charts::set_range(axis, low, high, 5);
    QCoreApplication::processEvents();
    EXPECT_TRUE(std::isfinite(axis->min()) && std::isfinite(axis->max()));
  }
}

// As it was met: on each page the launch is raised above the ground and put back, and other values jump as far as the
// file lets them.
TEST(Charts, EachPage_LaunchAboveTheGroundAndBack) {
  TestWindow w("house-service");
  ASSERT_TRUE(w.opened);
  TickWatch watch;
  for (int page = 0; page < w.window.side().count(); ++page) {
    w.window.side().setCurrentIndex(page);
    QCoreApplication::processEvents();
    for (QValueAxis* axis : w.window.findChildren<QValueAxis*>()) watch.watch(axis);
    for (QChartView* view : w.window.findChildren<QChartView*>())
      for (QAbstractAxis* axis : view->chart()->axes())
        if (auto* values = qobject_cast<QValueAxis*>(axis)) watch.watch(values);
    Document& document = w.window.document();
    const auto with = [&](auto change) {
      Launch launch = document.crossing().bore.launch;
      change(launch);
      document.change(QStringLiteral("jump"), [&](Crossing& to) { to.bore.launch = launch; });
      QCoreApplication::processEvents();
      document.undo_stack().undo();
      QCoreApplication::processEvents();
      EXPECT_LT(watch.most, 60) << page;
    };
    with([](Launch& l) { l.elevation.m += 1.5; });
    with([](Launch& l) { l.elevation.m += 500; });
    with([](Launch& l) { l.elevation.m -= 500; });
    with([](Launch& l) { l.grade.v = -3; });
    with([](Launch& l) { l.position_sd.set(Length{5}); });
    Pipe pipe = *document.crossing().pipe;
    pipe.outside_diameter = Length{2};
    document.change(QStringLiteral("jump"), [&](Crossing& to) { to.pipe = pipe; });
    QCoreApplication::processEvents();
    document.undo_stack().undo();
    QCoreApplication::processEvents();
    EXPECT_LT(watch.most, 60) << page;
  }
}

}  // namespace
}  // namespace burrow
