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

ConditionedByHoles::ConditionedByHoles(double sd_m, double reach_m, double length_m, std::vector<HoleError> holes,
                                       const ConditionedByHoles* alike)
    : variance_(sd_m * sd_m),
      reach_m_(reach_m),
      length_m_(length_m),
      all_(std::move(holes)),
      few_(all_.size() <= few_holes),
      alike_(alike) {
  if (few_) {
    solve(all_);
    return;
  }
  std::sort(all_.begin(), all_.end(), [](const HoleError& a, const HoleError& b) { return a.along_m < b.along_m; });
}

ConditionedByHoles::Error ConditionedByHoles::at(double along_m) {
  if (all_.empty()) return {0, std::sqrt(variance_)};
  if (!few_) {
    const Part part = part_around(along_m);
    if (part != part_) {  // the last stretches of a line often share one
      part_ = part;
      solve({all_.begin() + part.first, all_.begin() + part.last});
    }
  }
  if (holes_.empty()) return {0, std::sqrt(variance_)};
  return sizes_.size() > 0 ? by_waves(along_m) : by_holes(along_m);
}

ConditionedByHoles::Part ConditionedByHoles::part_around(double along_m) const {
  const double from = std::floor(along_m / (stretch_reaches * reach_m_)) * stretch_reaches * reach_m_;
  const double to = std::min(from + stretch_reaches * reach_m_, length_m_);
  const auto before = [](const HoleError& hole, double m) { return hole.along_m < m; };
  const auto first = std::lower_bound(all_.begin(), all_.end(), from - beyond_reaches * reach_m_, before);
  const auto last = std::lower_bound(first, all_.end(), from + (stretch_reaches + beyond_reaches) * reach_m_, before);
  Part part{first - all_.begin(), last - all_.begin(), from, to};
  if (first != last) {
    part.from_m = std::min(from, first->along_m);
    part.to_m = std::max(to, (last - 1)->along_m);
  }
  return part;
}

void ConditionedByHoles::solve(std::vector<HoleError> holes) {
  holes_ = std::move(holes);
  sizes_.resize(0);
  at_holes_.reset();
  if (holes_.empty()) return;
  if (!few_) {
    step_1_m_ = 2 * pi / (part_.to_m - part_.from_m + image_reaches * reach_m_);
    const auto highest = static_cast<Eigen::Index>(std::ceil(highest_wave / (step_1_m_ * reach_m_)));
    if (2 * highest + 1 < static_cast<Eigen::Index>(holes_.size())) size_waves(highest);
  }
  sizes_.size() > 0 ? solve_by_waves() : solve_by_holes();
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

/// The error is Σ w σ φ(x) with independent standard normal w, and Σ φ(x) φ(x') = exp(−(x − x')²/reach²). In φ stand a
/// constant, then cosine and sine of each wave, by their sizes.
Eigen::VectorXd ConditionedByHoles::waves(double along_m) const {
  const Eigen::Index highest = sizes_.size() - 1;
  Eigen::VectorXd phi(2 * highest + 1);
  phi(0) = sizes_(0);
  const std::complex<double> turn = std::polar(1.0, step_1_m_ * (along_m - part_.from_m));
  std::complex<double> wave = turn;
  for (Eigen::Index j = 1; j <= highest; ++j, wave *= turn) {
    phi(2 * j - 1) = sizes_(j) * wave.real();
    phi(2 * j) = sizes_(j) * wave.imag();
  }
  return phi;
}

void ConditionedByHoles::size_waves(Eigen::Index highest) {
  const double step = step_1_m_ * reach_m_, scale = step / std::sqrt(pi);
  sizes_.resize(highest + 1);
  for (Eigen::Index j = 0; j <= highest; ++j) {
    const double rate = step * static_cast<double>(j);
    sizes_(j) = std::sqrt(j == 0 ? scale / 2 : scale) * std::exp(-rate * rate / 8);
  }
}

ConditionedByHoles::AtHoles ConditionedByHoles::waves_at_holes() const {
  const auto n = static_cast<Eigen::Index>(holes_.size());
  const Eigen::Index count = 2 * sizes_.size() - 1;
  AtHoles there{Eigen::MatrixXd(count, n), Eigen::MatrixXd::Zero(count, count)};
  for (Eigen::Index i = 0; i < n; ++i) {
    const HoleError& hole = holes_[static_cast<std::size_t>(i)];
    there.waves.col(i) = waves(hole.along_m) / std::sqrt(hole.noise2_m2);
  }
  there.products.selfadjointView<Eigen::Lower>().rankUpdate(there.waves);
  return there;
}

/// (1 + σ² Σ φ φᵀ/s²) w = σ Σ φ d/s² over the holes, d what each found.
void ConditionedByHoles::solve_by_waves() {
  const bool known = alike_ && alike_->part_ == part_ && alike_->at_holes_;
  at_holes_ = known ? alike_->at_holes_ : std::make_shared<const AtHoles>(waves_at_holes());
  const auto n = static_cast<Eigen::Index>(holes_.size());
  Eigen::VectorXd found(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const HoleError& hole = holes_[static_cast<std::size_t>(i)];
    found(i) = hole.found_m / std::sqrt(hole.noise2_m2);
  }
  Eigen::MatrixXd precision = variance_ * at_holes_->products;
  precision.diagonal().array() += 1;
  by_waves_.compute(precision);
  weights_ = by_waves_.solve(std::sqrt(variance_) * (at_holes_->waves * found));
}

ConditionedByHoles::Error ConditionedByHoles::by_waves(double along_m) const {
  const Eigen::VectorXd phi = std::sqrt(variance_) * waves(along_m);
  const double left = by_waves_.matrixL().solve(phi).squaredNorm();
  return {phi.dot(weights_), std::sqrt(std::clamp(left, 0.0, variance_))};
}

}  // namespace burrow
