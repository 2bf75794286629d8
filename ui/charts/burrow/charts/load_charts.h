#pragma once
/// Charts of what presses on the pipe: against depth at one station, and along the bore.

#include "burrow/charts/bore_charts.h"
#include "burrow/check/load_profile.h"

namespace burrow {

enum class LoadLine { all, ground, arched, live };

/// Depth downwards, pressure to the right; the depth of the pipe as a line across.
class LoadDepthChart : public BoreChart {
  Q_OBJECT

 public:
  explicit LoadDepthChart(QWidget* parent = nullptr);
  void show_profile(const LoadProfile& profile, double station_m, UnitSystem units);
  /// What is drawn, in the units shown.
  [[nodiscard]] QList<QPointF> points(LoadLine line) const;
  [[nodiscard]] QList<QPointF> pipe() const;

 protected:
  void dress() override;

 private:
  QLineSeries *all_ = nullptr, *ground_ = nullptr, *arched_ = nullptr, *live_ = nullptr, *pipe_ = nullptr;
};

/// Along the stations.
class LoadAlongChart : public BoreChart {
  Q_OBJECT

 public:
  explicit LoadAlongChart(QWidget* parent = nullptr);
  void show_loads(const Assessment& assessment, double station_m, UnitSystem units);
  [[nodiscard]] QList<QPointF> points(LoadLine line) const;

 protected:
  void dress() override;

 private:
  QLineSeries *all_ = nullptr, *ground_ = nullptr, *arched_ = nullptr, *live_ = nullptr, *here_ = nullptr;
};

}  // namespace burrow
