#pragma once
/// Charts of the bore: how far it strays, how it gets on, where it arrives. They read the answers and compute nothing.

#include <QWidget>

#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/drawing/theme.h"
#include "burrow/trials/trials.h"

class QChart;
class QChartView;
class QLineSeries;

namespace burrow {

/// What all charts here share: theme, type, units; the series are replaced, never animated.
class BoreChart : public QWidget {
  Q_OBJECT

 public:
  explicit BoreChart(const QString& title, QWidget* parent = nullptr);
  void set_theme(const Theme& theme);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QChart* chart() const { return chart_; }

 protected:
  /// Colours everything after the series have changed.
  virtual void dress();
  [[nodiscard]] const Theme& theme() const { return theme_; }
  void set_heading(const QString& text);

 private:
  QChartView* view_;
  QChart* chart_;
  Theme theme_ = Theme::light();
};

enum class Across { up, sideways };

/// Distance from the line that was aimed, along the stations, with the 50, 90 and 99 % bands; up or left is positive.
class DeviationChart : public BoreChart {
  Q_OBJECT

 public:
  explicit DeviationChart(Across across, QWidget* parent = nullptr);
  void show_path(const Crossing& crossing, const Assessment& assessment, UnitSystem units);

 protected:
  void dress() override;

 private:
  Across across_;
  QList<QList<QPointF>> low_, high_;  // by band, widest first
};

/// Time since the start along the stations: tenth, half and nine tenths of all bores take no longer.
class AdvanceChart : public BoreChart {
  Q_OBJECT

 public:
  explicit AdvanceChart(QWidget* parent = nullptr);
  void show_advance(const Assessment& assessment, UnitSystem units);

 protected:
  void dress() override;
};

/// Rise of the surface over the bore along the stations: low and high estimate, while the tool is under way, and the
/// narrowest limit of what stands on top.
class HeaveChart : public BoreChart {
  Q_OBJECT

 public:
  explicit HeaveChart(QWidget* parent = nullptr);
  void show_heave(const Assessment& assessment, double tip_station_m, UnitSystem units);
  enum class Line { high, low, tip, allowed };
  /// What is drawn, in the units shown.
  [[nodiscard]] QList<QPointF> points(Line line) const;

 protected:
  void dress() override;

 private:
  QLineSeries *low_ = nullptr, *high_ = nullptr, *passing_ = nullptr, *limit_ = nullptr;
};

/// Where trials arrive on the exit face, seen from the launch (left is left), with the window of the exit pit and the
/// closed form's 90 % range of each coordinate.
class ArrivalChart : public BoreChart {
  Q_OBJECT

 public:
  explicit ArrivalChart(QWidget* parent = nullptr);
  /// `assessment`: of the crossing that was counted; null where it is no longer at hand.
  void show_arrivals(const Trials* trials, const ExitWindow& window, const Assessment* assessment, UnitSystem units);
  [[nodiscard]] int points_shown() const { return shown_; }

 protected:
  void dress() override;

 private:
  int shown_ = 0;
};

}  // namespace burrow
