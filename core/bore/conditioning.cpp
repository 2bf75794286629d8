#include "burrow/bore/conditioning.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {

using Block = Eigen::Matrix2d;

/// exp([[0, 1], [g, 0]] h), as in `Spread`.
Block turn_of(double gradient, double h) {
  const double q = gradient * h * h;
  const double diagonal = 1 + q / 2 * (1 + q / 12 * (1 + q / 30));
  const double upper = h * (1 + q / 6 * (1 + q / 20 * (1 + q / 42)));
  return (Block() << diagonal, upper, gradient * upper, diagonal).finished();
}

/// Pseudo-inverse of a covariance. Its members differ by ten powers of ten, so it is scaled to a unit diagonal first.
DeviationCovariance inverse_of(const DeviationCovariance& covariance) {
  Deviation scale;
  for (int i = 0; i < deviation_members; ++i) scale[i] = covariance(i, i) > 0 ? 1 / std::sqrt(covariance(i, i)) : 0.0;
  const DeviationCovariance unit = scale.asDiagonal() * covariance * scale.asDiagonal();
  Eigen::CompleteOrthogonalDecomposition<DeviationCovariance> solver;
  solver.setThreshold(1e-12);
  solver.compute(unit);
  return scale.asDiagonal() * solver.pseudoInverse() * scale.asDiagonal();
}

DeviationCovariance symmetric(const DeviationCovariance& m) {
  return 0.5 * (m + m.transpose());
}

/// The places of the answer, with the step that leads to each.
struct Node {
  ConditionedPoint point;
  DeviationCovariance onward = DeviationCovariance::Identity();  // from the node before
  DeviationCovariance noise = DeviationCovariance::Zero();
  DeviationCovariance predicted_cov = DeviationCovariance::Zero();
  Deviation predicted = Deviation::Zero();
  std::vector<std::size_t> readings;
};

constexpr double same_place_m = 1e-9;

std::vector<Node> nodes_of(const SpreadChain& chain, const std::vector<double>& wanted) {
  std::vector<Node> nodes(1);
  nodes.front().point.s_m = chain.from_s_m;
  nodes.front().point.path_point = 0;
  auto next = std::upper_bound(wanted.begin(), wanted.end(), chain.from_s_m + same_place_m);
  double s = chain.from_s_m;
  for (std::size_t i = 0; i < chain.steps.size(); ++i) {
    const SpreadStep& step = chain.steps[i];
    double done = 0;  // share of the step
    const auto add = [&](double share, std::optional<std::size_t> number) {
      // Of the rest, so that the parts of a step make up the whole.
      const SpreadStep part = step.part(share - done);
      Node node;
      node.point.s_m = number ? s + step.h_m : s + share * step.h_m;
      node.point.path_point = number;
      node.onward = part.onward();
      node.noise = part.noise();
      nodes.push_back(std::move(node));
      done = share;
    };
    for (; next != wanted.end() && *next < s + step.h_m - same_place_m; ++next)
      if (*next > nodes.back().point.s_m + same_place_m) add((*next - s) / step.h_m, std::nullopt);
    add(1, i + 1);
    s += step.h_m;
    while (next != wanted.end() && *next <= s + same_place_m) ++next;
  }
  return nodes;
}

void hand_out(std::vector<Node>& nodes, const std::vector<PathReading>& readings) {
  for (std::size_t r = 0; r < readings.size(); ++r)
    for (Node& node : nodes)
      if (std::abs(node.point.s_m - readings[r].s_m) <= same_place_m) {
        node.readings.push_back(r);
        break;
      }
}

void take(Node& node, const PathReading& reading, ReadingFit& fit) {
  ConditionedPoint& p = node.point;
  const double sd = std::max(reading.sd, 1e-6);
  const Deviation gain_part = p.filtered_cov * reading.row;
  const double variance = reading.row.dot(gain_part) + sd * sd;
  fit.innovation = reading.value - reading.row.dot(p.filtered);
  fit.sd = std::sqrt(variance);
  const Deviation gain = gain_part / variance;
  p.filtered += gain * fit.innovation;
  const DeviationCovariance kept = DeviationCovariance::Identity() - gain * reading.row.transpose();
  p.filtered_cov = symmetric(kept * p.filtered_cov * kept.transpose() + sd * sd * gain * gain.transpose());
}

void filter(std::vector<Node>& nodes, const SpreadChain& chain, const std::vector<PathReading>& readings,
            std::vector<ReadingFit>& fits) {
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    Node& node = nodes[i];
    if (i == 0) {
      node.predicted_cov = chain.start;
    } else {
      const ConditionedPoint& before = nodes[i - 1].point;
      node.predicted = node.onward * before.filtered;
      node.predicted_cov = symmetric(node.onward * before.filtered_cov * node.onward.transpose() + node.noise);
    }
    node.point.filtered = node.predicted;
    node.point.filtered_cov = node.predicted_cov;
    for (const std::size_t r : node.readings) take(node, readings[r], fits[r]);
  }
}

void smooth(std::vector<Node>& nodes) {
  ConditionedPoint& last = nodes.back().point;
  last.smoothed = last.filtered;
  last.smoothed_cov = last.filtered_cov;
  for (std::size_t i = nodes.size() - 1; i > 0; --i) {
    const Node& after = nodes[i];
    ConditionedPoint& p = nodes[i - 1].point;
    const DeviationCovariance gain = p.filtered_cov * after.onward.transpose() * inverse_of(after.predicted_cov);
    const DeviationCovariance kept = DeviationCovariance::Identity() - gain * after.onward;
    p.smoothed = p.filtered + gain * (after.point.smoothed - after.predicted);
    p.smoothed_cov = symmetric(kept * p.filtered_cov * kept.transpose() +
                               gain * (after.point.smoothed_cov + after.noise) * gain.transpose());
  }
}

}  // namespace

DeviationCovariance SpreadStep::onward() const {
  DeviationCovariance f = DeviationCovariance::Identity();
  f.block<2, 2>(up_m, up_m) = turn_of(pitch_gradient_1_m2, h_m);
  f.block<2, 2>(left_m, left_m) = turn_of(yaw_gradient_1_m2, h_m);
  f(up_m, constant) = pitch_by_constant_1_m * h_m * h_m / 2;
  f(pitch_rad, constant) = pitch_by_constant_1_m * h_m;
  f(left_m, constant) = yaw_by_constant_1_m * h_m * h_m / 2;
  f(yaw_rad, constant) = yaw_by_constant_1_m * h_m;
  f(up_m, guess_up) = guess_up_m;
  f(pitch_rad, guess_up) = guess_pitch_rad;
  f(left_m, guess_left) = guess_left_m;
  f(yaw_rad, guess_left) = guess_yaw_rad;
  return f;
}

DeviationCovariance SpreadStep::noise() const {
  DeviationCovariance q = DeviationCovariance::Zero();
  const double h = h_m;
  const Block block = noise_rad2_m * (Block() << h * h * h / 3, h * h / 2, h * h / 2, h).finished();
  q.block<2, 2>(up_m, up_m) = block;
  q.block<2, 2>(left_m, left_m) = block;
  return q;
}

SpreadStep SpreadStep::part(double share) const {
  SpreadStep p = *this;
  p.h_m *= share;
  p.guess_up_m *= share;
  p.guess_pitch_rad *= share;
  p.guess_left_m *= share;
  p.guess_yaw_rad *= share;
  return p;
}

PathReading reading_of(DeviationMember member, double s_m, double value, double sd) {
  PathReading reading{s_m, Deviation::Zero(), value, sd};
  reading.row[member] = 1;
  return reading;
}

Conditioned condition(const SpreadChain& chain, const std::vector<PathReading>& readings,
                      const std::vector<double>& also_at) {
  std::vector<double> wanted = also_at;
  for (const PathReading& reading : readings) wanted.push_back(reading.s_m);
  std::sort(wanted.begin(), wanted.end());
  std::vector<Node> nodes = nodes_of(chain, wanted);
  hand_out(nodes, readings);
  Conditioned answer;
  answer.fits.resize(readings.size());
  filter(nodes, chain, readings, answer.fits);
  smooth(nodes);
  answer.points.reserve(nodes.size());
  for (Node& node : nodes) answer.points.push_back(node.point);
  return answer;
}

Eigen::MatrixXd joint_covariance(const SpreadChain& chain, const std::vector<PathReading>& readings) {
  std::vector<double> wanted;
  for (const PathReading& reading : readings) wanted.push_back(reading.s_m);
  std::sort(wanted.begin(), wanted.end());
  std::vector<Node> nodes = nodes_of(chain, wanted);
  hand_out(nodes, readings);
  const auto n = static_cast<Eigen::Index>(readings.size());
  Eigen::MatrixXd joint = Eigen::MatrixXd::Zero(n, n);
  // Carried along: the covariance here, and what the state here has in common with each reading behind.
  DeviationCovariance here = chain.start;
  Eigen::Matrix<double, deviation_members, Eigen::Dynamic> with_behind =
      Eigen::Matrix<double, deviation_members, Eigen::Dynamic>::Zero(deviation_members, n);
  std::vector<std::size_t> behind;
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    if (i > 0) {
      here = symmetric(nodes[i].onward * here * nodes[i].onward.transpose() + nodes[i].noise);
      with_behind = nodes[i].onward * with_behind;
    }
    for (const std::size_t r : nodes[i].readings) {
      const auto at = static_cast<Eigen::Index>(r);
      with_behind.col(at) = here * readings[r].row;
      behind.push_back(r);
      for (const std::size_t other : behind) {
        const auto to = static_cast<Eigen::Index>(other);
        joint(at, to) = joint(to, at) = readings[r].row.dot(with_behind.col(to));
      }
    }
  }
  return joint;
}

BorePath conditioned_path(const BorePath& path, const Conditioned& conditioned, Knowledge knowledge) {
  BorePath answer;
  answer.ends = path.ends;
  answer.length_m = path.length_m;
  answer.points.reserve(conditioned.points.size());
  for (const ConditionedPoint& c : conditioned.points) {
    const bool smoothed = knowledge == Knowledge::smoothed;
    const Deviation& mean = smoothed ? c.smoothed : c.filtered;
    const DeviationCovariance& cov = smoothed ? c.smoothed_cov : c.filtered_cov;
    PathPoint p = c.path_point ? path.points[*c.path_point] : point_at(path, c.s_m);
    const double level = std::max(std::cos(p.grade_rad), 0.05), along = std::max(std::cos(p.heading_rad), 0.05);
    p.z_m += mean[up_m] / level;
    p.cover_m -= mean[up_m] / level;
    p.y_m += mean[left_m] / along;
    p.grade_rad += mean[pitch_rad];
    p.heading_rad += mean[yaw_rad];
    p.sd_vertical_m = std::sqrt(std::max(cov(up_m, up_m), 0.0)) / level;
    p.sd_lateral_m = std::sqrt(std::max(cov(left_m, left_m), 0.0)) / along;
    answer.points.push_back(p);
  }
  return answer;
}

}  // namespace burrow
