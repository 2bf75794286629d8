#include "burrow/day/learn.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "burrow/bore/tool.h"
#include "burrow/day/path_evidence.h"
#include "burrow/soil/ground.h"
#include "learn_refusal.h"

namespace burrow {

namespace {

constexpr double z_90 = 1.6449;

/// The readings of one bore turned so that neither wander nor the rest mixes them any more.
class Turned {
 public:
  explicit Turned(std::shared_ptr<const PathEvidence> path) : path_(std::move(path)) {
    const PathEvidence& e = *path_;
    const Eigen::LLT<Eigen::MatrixXd> root(e.fixed);
    const Eigen::MatrixXd half = root.matrixL().solve(e.by_wander);
    const Eigen::MatrixXd whole = root.matrixL().solve(half.transpose());
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(0.5 * (whole + whole.transpose()));
    by_wander_ = eigen.eigenvalues().cwiseMax(0);
    Eigen::MatrixXd rest(e.expected.rows(), e.expected.cols());
    for (Eigen::Index k = 0; k < rest.cols(); ++k) rest.col(k) = e.values - e.expected.col(k);
    rest_ = eigen.eigenvectors().transpose() * root.matrixL().solve(rest);
  }

  /// What is left of each reading for one c; between those tried a parabola through three.
  [[nodiscard]] Eigen::VectorXd rest(double ln_c) const {
    const std::vector<double>& tried = path_->ln_constants;
    const double step = tried[1] - tried[0];
    const double place = std::clamp((ln_c - tried.front()) / step, 0.0, static_cast<double>(tried.size() - 1));
    const auto middle = std::clamp<Eigen::Index>(std::lround(place), 1, static_cast<Eigen::Index>(tried.size()) - 2);
    const double t = place - static_cast<double>(middle);
    return 0.5 * t * (t - 1) * rest_.col(middle - 1) + (1 - t * t) * rest_.col(middle) +
           0.5 * t * (t + 1) * rest_.col(middle + 1);
  }

  /// ln likelihood but for a constant; `rest` of the same c.
  [[nodiscard]] double ln_likelihood(const Eigen::VectorXd& rest, double wander) const {
    const Eigen::ArrayXd variance = 1 + wander * wander * by_wander_.array();
    return -0.5 * (variance.log() + rest.array().square() / variance).sum();
  }

 private:
  std::shared_ptr<const PathEvidence> path_;
  Eigen::VectorXd by_wander_;
  Eigen::MatrixXd rest_;
};

struct Axis {
  double low = 0, high = 0;
  int count = 61;
  [[nodiscard]] double at(int i) const { return low + (high - low) * i / (count - 1); }
  [[nodiscard]] double step() const { return (high - low) / (count - 1); }
};

struct Grid {
  Axis constant, wander;
  Eigen::MatrixXd ln;  ///< row: c, column: σ
};

/// One axis of a grid summed over the other.
struct Marginal {
  double mean = 0, sd = 0, p05 = 0, p95 = 0;
};
Marginal marginal(const Eigen::VectorXd& weights, const Axis& axis) {
  Marginal m;
  const double sum = weights.sum();
  for (int i = 0; i < axis.count; ++i) m.mean += axis.at(i) * weights[i] / sum;
  for (int i = 0; i < axis.count; ++i) m.sd += std::pow(axis.at(i) - m.mean, 2) * weights[i] / sum;
  m.sd = std::sqrt(m.sd);
  const auto quantile = [&](double share) {
    double before = 0;
    for (int i = 0; i < axis.count; ++i) {
      const double own = weights[i] / sum;
      // Each point stands for the step about it.
      if (before + own >= share) return axis.at(i) + ((share - before) / own - 0.5) * axis.step();
      before += own;
    }
    return axis.high;
  };
  m.p05 = quantile(0.05);
  m.p95 = quantile(0.95);
  return m;
}

/// Offset of the top of a parabola through three values, in steps.
double top_of(double before, double middle, double after) {
  const double bend = before - 2 * middle + after;
  return bend < 0 ? std::clamp(0.5 * (before - after) / bend, -0.5, 0.5) : 0;
}

class Posterior {
 public:
  Posterior(const std::vector<const BoreEvidence*>& bores, double wander_class, const LearnPrior& prior) {
    const ModelConstants before;
    const double mean = bores.empty() ? before.steer_constant->v : bores.front()->steer_mean;
    const double sd = bores.empty() ? before.steer_constant_sd->v : bores.front()->steer_sd;
    const double variance = std::log1p(sd * sd / (mean * mean));
    constant_mean_ = std::log(mean) - 0.5 * variance;
    constant_sd_ = std::sqrt(variance);
    wander_mean_ = std::log(wander_class);
    wander_sd_ = prior.wander_ln_sd;
    for (const BoreEvidence* bore : bores)
      if (bore->path) turned_.emplace_back(bore->path);
  }

  [[nodiscard]] int bores() const { return static_cast<int>(turned_.size()); }

  void answer(LearnedSoil& soil) const {
    constexpr double reach = 3.5, again = 5;
    Grid grid{{constant_mean_ - reach * constant_sd_, constant_mean_ + reach * constant_sd_},
              {wander_mean_ - reach * wander_sd_, wander_mean_ + reach * wander_sd_},
              {}};
    for (int pass = 0; pass < 2; ++pass) {
      fill(grid);
      const Eigen::MatrixXd weights = (grid.ln.array() - grid.ln.maxCoeff()).exp().matrix();
      const Marginal c = marginal(weights.rowwise().sum(), grid.constant);
      const Marginal sigma = marginal(weights.colwise().sum().transpose(), grid.wander);
      if (pass == 0) {
        narrow(grid.constant, c, again);
        narrow(grid.wander, sigma, again);
        continue;
      }
      Eigen::Index i = 0, j = 0;
      grid.ln.maxCoeff(&i, &j);
      const auto inside = [](Eigen::Index k, const Axis& axis) { return k > 0 && k < axis.count - 1; };
      const double up_c = inside(i, grid.constant) ? top_of(grid.ln(i - 1, j), grid.ln(i, j), grid.ln(i + 1, j)) : 0;
      const double up_w = inside(j, grid.wander) ? top_of(grid.ln(i, j - 1), grid.ln(i, j), grid.ln(i, j + 1)) : 0;
      put(soil.steer_constant, c, grid.constant.at(static_cast<int>(i)) + up_c * grid.constant.step());
      put(soil.wander_rad_sqrt_m, sigma, grid.wander.at(static_cast<int>(j)) + up_w * grid.wander.step());
    }
  }

 private:
  static void narrow(Axis& axis, const Marginal& m, double reach) {
    const double half = reach * std::max(m.sd, 0.5 * axis.step());
    axis.low = std::max(axis.low, m.mean - half);
    axis.high = std::min(axis.high, m.mean + half);
  }
  static void put(LearnedValue& value, const Marginal& m, double top) {
    value = {std::exp(top), std::exp(m.p05), std::exp(m.p95), m.mean, m.sd};
  }

  void fill(Grid& grid) const {
    grid.ln.resize(grid.constant.count, grid.wander.count);
    const auto normal = [](double x, double mean, double sd) { return -0.5 * std::pow((x - mean) / sd, 2); };
    std::vector<Eigen::VectorXd> rests(turned_.size());
    for (int i = 0; i < grid.constant.count; ++i) {
      const double ln_c = grid.constant.at(i);
      for (std::size_t b = 0; b < turned_.size(); ++b) rests[b] = turned_[b].rest(ln_c);
      for (int j = 0; j < grid.wander.count; ++j) {
        const double ln_w = grid.wander.at(j), wander = std::exp(ln_w);
        double ln = normal(ln_c, constant_mean_, constant_sd_) + normal(ln_w, wander_mean_, wander_sd_);
        for (std::size_t b = 0; b < turned_.size(); ++b) ln += turned_[b].ln_likelihood(rests[b], wander);
        grid.ln(i, j) = ln;
      }
    }
  }

  double constant_mean_ = 0, constant_sd_ = 0, wander_mean_ = 0, wander_sd_ = 0;
  std::vector<Turned> turned_;
};

/// Conjugate: the factor of a class, that of each bore about it, the pieces about that.
LearnedValue factor_of(const std::vector<const BoreEvidence*>& bores, const LearnPrior& prior, std::int64_t& timed) {
  double mean = std::log(ModelConstants().field_factor->v), precision = 1 / (prior.factor_ln_sd * prior.factor_ln_sd);
  double sum = precision * mean;
  for (const BoreEvidence* bore : bores) {
    if (!bore->time_ln) continue;
    const double variance = prior.factor_bore_ln_sd * prior.factor_bore_ln_sd +
                            prior.factor_piece_ln_sd * prior.factor_piece_ln_sd / std::max(bore->pieces, 1);
    // Half as long as expected is twice the factor.
    sum += (std::log(bore->factor_expected) - *bore->time_ln) / variance;
    precision += 1 / variance;
    ++timed;
  }
  mean = sum / precision;
  const double sd = 1 / std::sqrt(precision);
  return {std::exp(mean), std::exp(mean - z_90 * sd), std::exp(mean + z_90 * sd), mean, sd};
}

}  // namespace

const LearnedSoil* find_learned(const LearnLibrary& library, std::string_view soil) {
  const auto it = std::find_if(library.soils.begin(), library.soils.end(),
                               [&](const LearnedSoil& one) { return one.soil == soil; });
  return it == library.soils.end() ? nullptr : &*it;
}

LearnLibrary learn(const std::vector<BoreEvidence>& evidence, const LearnPrior& prior) {
  return learn(Evidence{evidence, {}, {}}, prior);
}

LearnLibrary learn(const Evidence& evidence, const LearnPrior& prior) {
  struct Of {
    std::vector<const BoreEvidence*> bores;
    std::vector<const StopEvidence*> stops;
    double wander_class = 0;
  };
  std::map<std::string, Of> by_soil;
  for (const StopEvidence& stop : evidence.stops) {
    by_soil[stop.soil].stops.push_back(&stop);
    by_soil[stop.soil].wander_class = stop.wander_class;
  }
  for (const BoreEvidence& bore : evidence.bores) {
    by_soil[bore.soil].bores.push_back(&bore);
    by_soil[bore.soil].wander_class = bore.wander_class;
  }
  LearnLibrary library;
  for (const auto& [soil, of] : by_soil) {
    if (!(of.wander_class > 0)) continue;
    LearnedSoil learned;
    learned.soil = soil;
    const Posterior posterior(of.bores, of.wander_class, prior);
    learned.bores = posterior.bores();
    for (const BoreEvidence* bore : of.bores)
      if (bore->path) learned.records.push_back(bore->record);
    posterior.answer(learned);
    learned.field_factor = factor_of(of.bores, prior, learned.timed_bores);
    learn_refusal(of.stops, prior, learned);
    library.soils.push_back(std::move(learned));
  }
  return library;
}

namespace {

/// What goes into the values of one stratum or strip.
void take_over(SoilOverrides& values, const LearnedSoil* soil, bool guessed) {
  if (!soil) return;
  if (soil->bores > 0 && !values.wander) values.wander = Wander{soil->wander_rad_sqrt_m.likeliest};
  if (!guessed && !values.refusal_rate && outweighs_table(soil->refusal_rate, soil->bored_m))
    values.refusal_rate = RatePerLength{soil->refusal_rate->mean_1_m};
}

}  // namespace

Crossing with_library(const Crossing& crossing, const Tables& tables, const LearnLibrary& library) {
  Crossing learned = crossing;
  for (Stratum& stratum : learned.site.strata)
    take_over(stratum.values, find_learned(library, stratum.soil), stratum.known.value == StratumEvidence::guess);
  for (Strip& strip : learned.site.strips) take_over(strip.values, find_learned(library, strip.soil), false);
  if (crossing.site.strata.empty() || crossing.site.ground.empty()) return learned;
  const Launch& launch = crossing.bore.launch;
  const Ground ground(crossing.site, tables);
  const std::size_t stratum = ground.stratum_at(launch.station.m, launch.offset->m, launch.elevation.m);
  const LearnedSoil* soil = find_learned(library, crossing.site.strata[stratum].soil);
  if (!soil) return learned;
  ModelConstants& model = learned.bore.model;
  if (soil->bores > 0) {
    const double variance = soil->steer_constant.ln_sd * soil->steer_constant.ln_sd;
    const double mean = std::exp(soil->steer_constant.ln_mean + 0.5 * variance);
    model.steer_constant.set(Ratio{mean});
    model.steer_constant_sd.set(Ratio{mean * std::sqrt(std::expm1(variance))});
    model.calibrated_from.set(soil->bores);
    model.calibrated_records = soil->records;
  }
  if (soil->timed_bores > 0) model.field_factor.set(Ratio{soil->field_factor.likeliest});
  return learned;
}

}  // namespace burrow
