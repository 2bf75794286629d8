#pragma once
/// One error along a line, a Gaussian process with the correlation exp(−(d/reach)²), given what holes found of it.
/// Source: conditioning of a Gaussian process (derived).   Symbols: σ the error without holes, s of a hole.
/// Few holes: one system of equations for all. Many: by stretches of six reaches, each with the holes up to eighteen
/// reaches beyond it (what lies further changes a mean by less than 1e-9 of σ where holes have errors of millimetres),
/// and by cosines and sines where these are fewer than the holes: the trapezoid rule of the spectrum, whose error is an
/// image 6.3 reaches away, below the rounding.   Range: reach > 0, every s > 0.
/// Evidence: TestHoles.FourHundred_*, TestHoles.ManyUneven_SameErrorsAsTheWholeMatrix

#include <Eigen/Cholesky>
#include <cstddef>
#include <memory>
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

  /// Asked for places from 0 to `length_m`. `alike`: of another error at the same holes, asked for each place before
  /// this one; it outlives this. What only depends on their places is then computed once.
  ConditionedByHoles(double sd_m, double reach_m, double length_m, std::vector<HoleError> holes,
                     const ConditionedByHoles* alike = nullptr);
  struct Error {
    double mean_m = 0, sd_m = 0;
  };
  /// Quick where the places asked for follow one another.
  [[nodiscard]] Error at(double along_m);

 private:
  /// Of a stretch: its holes, numbers first to last, and what holds both these and all places of it.
  struct Part {
    std::ptrdiff_t first = 0, last = 0;
    double from_m = 0, to_m = -1;  // none yet
    bool operator==(const Part&) const = default;
  };
  [[nodiscard]] Part part_around(double along_m) const;
  void solve(std::vector<HoleError> holes);
  void solve_by_holes();
  void solve_by_waves();
  [[nodiscard]] Error by_holes(double along_m) const;
  [[nodiscard]] Error by_waves(double along_m) const;
  [[nodiscard]] Eigen::VectorXd waves(double along_m) const;
  void size_waves(Eigen::Index highest);
  /// φ/s at each hole, and Σ φ φᵀ/s² (below the diagonal).
  struct AtHoles {
    Eigen::MatrixXd waves, products;
  };
  [[nodiscard]] AtHoles waves_at_holes() const;

  double variance_, reach_m_, length_m_;
  std::vector<HoleError> all_;  // by place
  bool few_;
  const ConditionedByHoles* alike_;

  // The system solved.
  Part part_;
  std::vector<HoleError> holes_;
  double step_1_m_ = 0;
  Eigen::VectorXd sizes_;  // of the constant and of each wave; none: by holes
  std::shared_ptr<const AtHoles> at_holes_;
  Eigen::LDLT<Eigen::MatrixXd> by_holes_;
  Eigen::LLT<Eigen::MatrixXd> by_waves_;
  Eigen::VectorXd weights_;
};

}  // namespace burrow
