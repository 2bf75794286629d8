#include "dxf_curves.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/quantity.h"

namespace burrow {

void LargestRadius::begin(const std::string& kind) {
  end_vertex();
  const bool goes_on = kind == "VERTEX" && kind_ == "VERTEX";
  if (!goes_on) {
    end_element();
    has_last_ = false;
  }
  kind_ = kind;
  radius_ = axis_x_ = axis_y_ = 0;
}

void LargestRadius::end_vertex() {
  if (!has_vertex_) return;
  if (has_last_ && last_bulge_ != 0) {
    const double chord = std::hypot(x_ - last_x_, y_ - last_y_), b = std::abs(last_bulge_);
    const double radius = chord * (1 + b * b) / (4 * b);
    if (std::isfinite(radius)) largest_ = std::max(largest_, radius);
  }
  if (!has_last_) {
    first_x_ = x_;
    first_y_ = y_;
  }
  last_x_ = x_;
  last_y_ = y_;
  last_bulge_ = bulge_;
  has_last_ = true;
  has_vertex_ = false;
  bulge_ = 0;
}

void LargestRadius::end_element() {
  // The way back to the first vertex, should the line be closed.
  if ((kind_ == "LWPOLYLINE" || kind_ == "VERTEX") && has_last_ && last_bulge_ != 0) {
    const double chord = std::hypot(first_x_ - last_x_, first_y_ - last_y_), b = std::abs(last_bulge_);
    const double radius = chord * (1 + b * b) / (4 * b);
    if (std::isfinite(radius)) largest_ = std::max(largest_, radius);
  }
  if (kind_ == "ARC" || kind_ == "CIRCLE") largest_ = std::max(largest_, radius_);
  if (kind_ == "ELLIPSE") largest_ = std::max(largest_, std::hypot(axis_x_, axis_y_));
}

void LargestRadius::take(int code, double value) {
  if (!std::isfinite(value)) return;
  if (kind_ == "LWPOLYLINE" || kind_ == "VERTEX") {
    if (code == 10) {
      end_vertex();
      has_vertex_ = true;
      x_ = value;
    }
    if (code == 20) y_ = value;
    if (code == 42) bulge_ = value;
  } else if (kind_ == "INSERT") {
    if (code == 41 || code == 42) factor_ = std::max(factor_, std::abs(value));
  } else if (kind_ == "ELLIPSE") {
    if (code == 11) axis_x_ = value;
    if (code == 21) axis_y_ = value;
  } else if ((kind_ == "ARC" || kind_ == "CIRCLE") && code == 40) {
    radius_ = std::abs(value);
  }
}

double LargestRadius::radius() const {
  return largest_ * factor_;
}

namespace {

/// Second derivatives at the points, 0 at both ends; a system of three diagonals (Thomas).
std::vector<double> bends(const std::vector<double>& at, const std::vector<double>& value) {
  const std::size_t n = at.size();
  std::vector<double> bend(n, 0), upper(n, 0), right(n, 0);
  for (std::size_t i = 1; i + 1 < n; ++i) {
    const double before = at[i] - at[i - 1], after = at[i + 1] - at[i];
    const double rise = (value[i + 1] - value[i]) / after - (value[i] - value[i - 1]) / before;
    const double pivot = 2 * (before + after) - before * upper[i - 1];
    upper[i] = after / pivot;
    right[i] = (6 * rise - before * right[i - 1]) / pivot;
  }
  for (std::size_t i = n - 1; i-- > 1;) bend[i] = right[i] - upper[i] * bend[i + 1];
  return bend;
}

double between(const std::vector<double>& at, const std::vector<double>& value, const std::vector<double>& bend,
               std::size_t i, double t) {
  const double h = at[i + 1] - at[i], a = (at[i + 1] - t) / h, b = (t - at[i]) / h;
  return a * value[i] + b * value[i + 1] + ((a * a * a - a) * bend[i] + (b * b * b - b) * bend[i + 1]) * h * h / 6;
}

}  // namespace

std::vector<PlanPoint> smooth_through(const std::vector<PlanPoint>& points) {
  constexpr int pieces = 32;
  std::vector<double> at, x, y;
  for (const PlanPoint& p : points) {
    const double step = at.empty() ? 0 : std::hypot(p.x_m - x.back(), p.y_m - y.back());
    if (!at.empty() && !(step > 0)) continue;  // the same place once more
    at.push_back(at.empty() ? 0 : at.back() + step);
    x.push_back(p.x_m);
    y.push_back(p.y_m);
  }
  if (at.size() < 3) return points;
  const std::vector<double> bend_x = bends(at, x), bend_y = bends(at, y);
  std::vector<PlanPoint> line{{x[0], y[0]}};
  for (std::size_t i = 0; i + 1 < at.size(); ++i)
    for (int k = 1; k <= pieces; ++k) {
      const double t = at[i] + (at[i + 1] - at[i]) * k / pieces;
      line.push_back({between(at, x, bend_x, i, t), between(at, y, bend_y, i, t)});
    }
  return line;
}

double step_degrees(double radius, double sagitta) {
  constexpr double finest = 0.1, coarsest = 4;
  if (!(radius > sagitta)) return coarsest;
  // sagitta = radius·(1 − cos(step/2))
  return std::clamp(2 * std::acos(1 - sagitta / radius) * 180 / pi, finest, coarsest);
}

void SplineMeasure::take(int code, double value) {
  constexpr std::size_t most = 20'000;
  if (!std::isfinite(value) || points_.size() > most || knots_.size() > 2 * most) return;
  if (code == 71 && value >= 1 && value <= 10) degree_ = static_cast<std::size_t>(value);
  if (code == 10) points_.push_back({value, 0});
  if (code == 20 && !points_.empty()) points_.back().y_m = value;
  if (code == 40) knots_.push_back(value);
  if (code == 41) weights_.push_back(value);
}

bool SplineMeasure::is_whole() const {
  const bool weighed = weights_.empty() || weights_.size() == points_.size();
  return points_.size() > degree_ && knots_.size() == points_.size() + degree_ + 1 && weighed &&
         std::is_sorted(knots_.begin(), knots_.end()) && knots_[degree_] < knots_[points_.size()];
}

PlanPoint SplineMeasure::at(double parameter) const {
  const std::size_t n = points_.size(), k = degree_;
  const double t = std::clamp(parameter, knots_[k], knots_[n]);
  const auto above = std::upper_bound(knots_.begin() + static_cast<std::ptrdiff_t>(k),
                                      knots_.begin() + static_cast<std::ptrdiff_t>(n), t);
  const auto span = static_cast<std::size_t>(above - knots_.begin()) - 1;
  struct Weighed {
    double x = 0, y = 0, w = 0;
  };
  std::vector<Weighed> d;
  for (std::size_t j = span - k; j <= span; ++j) {
    const double w = weights_.empty() ? 1 : weights_[j];
    d.push_back({points_[j].x_m * w, points_[j].y_m * w, w});
  }
  for (std::size_t r = 1; r <= k; ++r)
    for (std::size_t j = k; j >= r; --j) {
      const double from = knots_[span - k + j], wide = knots_[span + 1 + j - r] - from;
      const double a = wide > 0 ? (t - from) / wide : 0;
      d[j] = {d[j - 1].x + a * (d[j].x - d[j - 1].x), d[j - 1].y + a * (d[j].y - d[j - 1].y),
              d[j - 1].w + a * (d[j].w - d[j - 1].w)};
    }
  return {d[k].x / d[k].w, d[k].y / d[k].w};
}

double SplineMeasure::farthest_off() const {
  constexpr std::size_t pieces_each = 8;
  if (!is_whole()) return 0;
  const std::size_t count = pieces_each * points_.size();
  const double first = knots_[degree_], step = (knots_[points_.size()] - first) / static_cast<double>(count - 1);
  double off = 0;
  PlanPoint a = at(first);
  for (std::size_t i = 1; i < count; ++i) {
    const PlanPoint b = at(first + step * static_cast<double>(i));
    const PlanPoint middle = at(first + step * (static_cast<double>(i) - 0.5));
    const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, long_m = std::hypot(dx, dy);
    const double px = middle.x_m - a.x_m, py = middle.y_m - a.y_m;
    const double away = long_m > 0 ? std::abs(dx * py - dy * px) / long_m : std::hypot(px, py);
    if (away > off) off = away;  // false for what is not finite
    a = b;
  }
  return off;
}

}  // namespace burrow
