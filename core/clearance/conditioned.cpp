#include "conditioned.h"

#include <algorithm>
#include <cmath>
#include <complex>

#include "burrow/base/quantity.h"

namespace burrow {

namespace {

constexpr double stretch_reaches = 6, beyond_reaches = 18;
constexpr double image_reaches = 6.3;  // exp(−6.3²) is 6e-18
constexpr double highest_wave = 12.8;  // over the reach: exp(−12.8²/4) is 2e-18

}  // namespace

double hole_correlation(double apart_m, double reach_m) {
  const double d = apart_m / reach_m;
  return std::exp(-d * d);
}

ConditionedByHoles::ConditionedByHoles(double sd_m, double reach_m, std::vector<HoleError> holes)
    : variance_(sd_m * sd_m), reach_m_(reach_m), all_(std::move(holes)), few_(all_.size() <= few_holes) {
  if (few_) {
    solve(all_, 0, 0);
    return;
  }
  std::sort(all_.begin(), all_.end(), [](const HoleError& a, const HoleError& b) { return a.along_m < b.along_m; });
}

ConditionedByHoles::Error ConditionedByHoles::at(double along_m) {
  if (all_.empty()) return {0, std::sqrt(variance_)};
  if (!few_) {
    const double number = std::floor(along_m / (stretch_reaches * reach_m_));
    if (number != stretch_) {
      stretch_ = number;
      const double from = number * stretch_reaches * reach_m_, to = from + stretch_reaches * reach_m_;
      const auto before = [](const HoleError& hole, double m) { return hole.along_m < m; };
      const auto first = std::lower_bound(all_.begin(), all_.end(), from - beyond_reaches * reach_m_, before);
      const auto last = std::lower_bound(first, all_.end(), to + beyond_reaches * reach_m_, before);
      solve({first, last}, from, to);
    }
  }
  if (holes_.empty()) return {0, std::sqrt(variance_)};
  return waves_ > 0 ? by_waves(along_m) : by_holes(along_m);
}

void ConditionedByHoles::solve(std::vector<HoleError> holes, double from_m, double to_m) {
  holes_ = std::move(holes);
  waves_ = 0;
  if (holes_.empty()) return;
  if (!few_) {
    from_m_ = std::min(from_m, holes_.front().along_m);
    const double extent = std::max(to_m, holes_.back().along_m) - from_m_;
    step_1_m_ = 2 * pi / (extent + image_reaches * reach_m_);
    const auto highest = static_cast<Eigen::Index>(std::ceil(highest_wave / (step_1_m_ * reach_m_)));
    if (2 * highest + 1 < static_cast<Eigen::Index>(holes_.size())) waves_ = 2 * highest + 1;
  }
  waves_ > 0 ? solve_by_waves() : solve_by_holes();
}

void ConditionedByHoles::solve_by_holes() {
  const auto n = static_cast<Eigen::Index>(holes_.size());
  Eigen::MatrixXd covariance(n, n);
  Eigen::VectorXd found(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const HoleError& a = holes_[static_cast<std::size_t>(i)];
    for (Eigen::Index k = 0; k < n; ++k)
      covariance(i, k) =
          variance_ * hole_correlation(a.along_m - holes_[static_cast<std::size_t>(k)].along_m, reach_m_);
    covariance(i, i) += a.noise2_m2;
    found(i) = a.found_m;
  }
  by_holes_.compute(covariance);
  weights_ = by_holes_.solve(found);
}

ConditionedByHoles::Error ConditionedByHoles::by_holes(double along_m) const {
  Eigen::VectorXd k(static_cast<Eigen::Index>(holes_.size()));
  for (Eigen::Index i = 0; i < k.size(); ++i)
    k(i) = variance_ * hole_correlation(along_m - holes_[static_cast<std::size_t>(i)].along_m, reach_m_);
  const double left = variance_ - k.dot(by_holes_.solve(k));
  return {k.dot(weights_), std::sqrt(std::clamp(left, 0.0, variance_))};
}

/// The error is Σ w φ(x) with independent standard normal w, and Σ φ(x) φ(x') = σ² exp(−(x − x')²/reach²).
Eigen::VectorXd ConditionedByHoles::waves(double along_m) const {
  Eigen::VectorXd phi(waves_);
  const double step = step_1_m_ * reach_m_, scale = variance_ * step / std::sqrt(pi);
  phi(0) = std::sqrt(scale / 2);
  const std::complex<double> turn = std::polar(1.0, step_1_m_ * (along_m - from_m_));
  std::complex<double> wave = turn;
  for (Eigen::Index j = 1; 2 * j < waves_; ++j, wave *= turn) {
    const double rate = step * static_cast<double>(j), size = std::sqrt(scale) * std::exp(-rate * rate / 8);
    phi(2 * j - 1) = size * wave.real();
    phi(2 * j) = size * wave.imag();
  }
  return phi;
}

void ConditionedByHoles::solve_by_waves() {
  const auto n = static_cast<Eigen::Index>(holes_.size());
  Eigen::MatrixXd phi(waves_, n);
  Eigen::VectorXd found(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const HoleError& hole = holes_[static_cast<std::size_t>(i)];
    const double s = std::sqrt(hole.noise2_m2);
    phi.col(i) = waves(hole.along_m) / s;
    found(i) = hole.found_m / s;
  }
  Eigen::MatrixXd precision = Eigen::MatrixXd::Identity(waves_, waves_);
  precision.selfadjointView<Eigen::Lower>().rankUpdate(phi);
  by_waves_.compute(precision);
  weights_ = by_waves_.solve(phi * found);
}

ConditionedByHoles::Error ConditionedByHoles::by_waves(double along_m) const {
  const Eigen::VectorXd phi = waves(along_m);
  const double left = by_waves_.matrixL().solve(phi).squaredNorm();
  return {phi.dot(weights_), std::sqrt(std::clamp(left, 0.0, variance_))};
}

}  // namespace burrow
