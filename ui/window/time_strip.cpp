#include "burrow/window/time_strip.h"

#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "burrow/drawing/played_text.h"

namespace burrow {

namespace {

constexpr int parts_of_second = TimeStrip::parts_of_second;
constexpr int edge_px = 10;  // left and right, for the round end
constexpr double at_end_s = 1e-6;

/// A step of whole minutes, so that about eight numbers stand below the strip.
double step_of(double end_s) {
  for (const double step : {15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1800.0, 3600.0})
    if (end_s / step <= 9) return step;
  return std::ceil(end_s / 9 / 3600) * 3600;
}

}  // namespace

TimeStrip::TimeStrip(QWidget* parent) : QSlider(Qt::Horizontal, parent) {
  setLayoutDirection(Qt::LeftToRight);  // time runs as the bore does
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Time of the bore"));
  setSingleStep(parts_of_second);
}

void TimeStrip::set_bore(std::shared_ptr<const Playback> bore) {
  bore_ = std::move(bore);
  setRange(0, bore_ ? static_cast<int>(std::ceil(bore_->end_s() * parts_of_second)) : 0);
  setPageStep(std::max(parts_of_second, maximum() / 10));
  update();
}

void TimeStrip::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

QSize TimeStrip::sizeHint() const {
  return {240, fontMetrics().height() + 26};
}

double TimeStrip::x_of(double time_s) const {
  const double end_s = bore_ ? bore_->end_s() : 0;
  return edge_px + (end_s > 0 ? time_s / end_s : 0) * (width() - 2 * edge_px);
}

int TimeStrip::value_at(double x) const {
  const double share = (x - edge_px) / std::max(1, width() - 2 * edge_px);
  return static_cast<int>(std::lround(std::clamp(share, 0.0, 1.0) * maximum()));
}

void TimeStrip::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  setSliderDown(true);
  setSliderPosition(value_at(event->position().x()));
  setSliderDown(false);
}

void TimeStrip::mouseMoveEvent(QMouseEvent* event) {
  if (event->buttons() & Qt::LeftButton) setSliderPosition(value_at(event->position().x()));
}

void TimeStrip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double track = 12;
  painter.setPen(QPen(theme_.line, 4, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(edge_px, track), QPointF(width() - edge_px, track));
  if (!bore_) return;
  const double now_s = static_cast<double>(value()) / parts_of_second;
  painter.setPen(QPen(theme_.focus, 4, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(edge_px, track), QPointF(x_of(now_s), track));
  painter.setPen(QPen(theme_.ink, 1.5));
  for (const double mark_m : bore_->marks_m) {
    const double x = x_of(time_at(*bore_, mark_m));
    painter.drawLine(QPointF(x, track - 9), QPointF(x, track - 3));
  }
  painter.setPen(theme_.ink_soft);
  const double step = step_of(bore_->end_s());
  double free_from = -1e9;
  for (double t = 0; t <= bore_->end_s() + at_end_s; t += step) {
    const QString text = minutes(t);
    const double wide = fontMetrics().horizontalAdvance(text),
                 left = std::clamp(x_of(t) - wide / 2, 0.0, width() - wide);
    if (left < free_from) continue;
    painter.drawText(QPointF(left, height() - fontMetrics().descent() - 1), text);
    free_from = left + wide + 6;
  }
  painter.setPen(QPen(hasFocus() ? theme_.focus : theme_.field, 2));
  painter.setBrush(theme_.ink);
  painter.drawEllipse(QPointF(x_of(now_s), track), 7, 7);
}

}  // namespace burrow
