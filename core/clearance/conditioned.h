#pragma once
/// One error along a line, a Gaussian process with the correlation exp(−(d/reach)²), given what holes found of it.
/// Source: conditioning of a Gaussian process (derived).   Symbols: σ the error without holes, s of a hole.
/// Few holes: one system of equations for all. Many: by stretches of six reaches, each with the holes up to eighteen
/// reaches beyond it (what lies further changes a mean by less than 1e-9 of σ where holes have errors of millimetres),
/// and by cosines and sines where these are fewer than the holes: the trapezoid rule of the spectrum, whose error is an
/// image 6.3 reaches away, below the rounding.   Range: reach > 0, every s > 0.
/// Evidence: TestHoles.FourHundred_*

#include <Eigen/Cholesky>
#include <limits>
#include <vector>

namespace burrow {

struct HoleError {
  double along_m = 0;
  double noise2_m2 = 0;  ///< s²
  double found_m = 0;    ///< of the error
};

/// exp(−(d/reach)²)
double hole_correlation(double apart_m, double reach_m);

class ConditionedByHoles {
 public:
  static constexpr std::size_t few_holes = 24;

  ConditionedByHoles(double sd_m, double reach_m, std::vector<HoleError> holes);
  struct Error {
    double mean_m = 0, sd_m = 0;
  };
  /// Quick where the places asked for follow one another.
  [[nodiscard]] Error at(double along_m);

 private:
  void solve(std::vector<HoleError> holes, double from_m, double to_m);
  void solve_by_holes();
  void solve_by_waves();
  [[nodiscard]] Error by_holes(double along_m) const;
  [[nodiscard]] Error by_waves(double along_m) const;
  [[nodiscard]] Eigen::VectorXd waves(double along_m) const;

  double variance_, reach_m_;
  std::vector<HoleError> all_;  // by place
  bool few_;
  double stretch_ = std::numeric_limits<double>::quiet_NaN();  // number of the one solved

  std::vector<HoleError> holes_;  // of the system solved
  double from_m_ = 0, step_1_m_ = 0;
  Eigen::Index waves_ = 0;  // 0: by holes
  Eigen::LDLT<Eigen::MatrixXd> by_holes_;
  Eigen::LLT<Eigen::MatrixXd> by_waves_;
  Eigen::VectorXd weights_;
};

}  // namespace burrow
