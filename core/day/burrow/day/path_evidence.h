#pragma once
/// The readings of the path of one bore, made ready for learning: n readings, m values of c tried.   Evidence: Learn.*

#include <Eigen/Core>
#include <vector>

namespace burrow {

struct PathEvidence {
  Eigen::VectorXd values;            ///< as read; n
  Eigen::MatrixXd expected;          ///< n × m: a column each for c on `ln_constants`
  std::vector<double> ln_constants;  ///< m, evenly apart
  Eigen::MatrixXd fixed;             ///< n × n: covariance that σ does not change: set-up, stones, errors of reading
  Eigen::MatrixXd by_wander;         ///< n × n, for σ = 1
};

}  // namespace burrow
