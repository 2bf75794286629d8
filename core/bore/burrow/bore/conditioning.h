#pragma once
/// What the readings of the day say about the path: filtered while the tool is under way, smoothed behind it.

#include <Eigen/Core>
#include <cstddef>
#include <optional>
#include <vector>

#include "burrow/bore/path.h"
#include "burrow/bore/point_on_path.h"

namespace burrow {

/// Away from the mean path at one arc length: position and heading across the axis in both planes, and what is the same
/// along the whole bore: the steering constant and the class of guessed ground, each in its own standard deviations.
enum DeviationMember : int { up_m, pitch_rad, left_m, yaw_rad, constant, guess_up, guess_left, deviation_members };
using Deviation = Eigen::Matrix<double, deviation_members, 1>;
using DeviationCovariance = Eigen::Matrix<double, deviation_members, deviation_members>;

/// Onward by `h_m`: `onward` takes a deviation from one end to the other, `noise` is what wander adds on the way.
struct SpreadStep {
  double h_m = 0;
  double noise_rad2_m = 0;                                    ///< σ_e²
  double pitch_gradient_1_m2 = 0, yaw_gradient_1_m2 = 0;      ///< ∂κ/∂w in the two planes
  double pitch_by_constant_1_m = 0, yaw_by_constant_1_m = 0;  ///< curvature by one standard deviation of c
  /// What one standard deviation of the guessed ground adds over the step.
  double guess_up_m = 0, guess_pitch_rad = 0, guess_left_m = 0, guess_yaw_rad = 0;

  [[nodiscard]] DeviationCovariance onward() const;
  [[nodiscard]] DeviationCovariance noise() const;
  /// The first `share` of it.
  [[nodiscard]] SpreadStep part(double share) const;
};

/// How uncertainty grows along one path: the start, then step by step from one point of the path to the next.
struct SpreadChain {
  double from_s_m = 0;
  DeviationCovariance start = DeviationCovariance::Zero();
  std::vector<SpreadStep> steps;
};

/// The steps of a predicted path, with what `Spread` does in them: wander and stones of the soil at the axis, ∂κ/∂z
/// and ∂κ/∂y, the spread of c. Where the path's bands are wider than that (guessed ground, `path_with_mistakes`), the
/// rest is one unknown more in each plane, the same along the bore, whose shape is the root of the variance it adds.
/// Source: help page Method (derived; the shape of the guess our model).   Range: a path of `predict_path` with the
/// same ground, tool and bore.   Evidence: SpreadChain.*
SpreadChain spread_chain(const Ground& ground, const Tool& tool, const Bore& bore, const BorePath& path);

/// One number read at one arc length: value = row · deviation + error.
struct PathReading {
  double s_m = 0;
  Deviation row = Deviation::Zero();
  double value = 0;  ///< away from the mean path
  double sd = 0;
};
PathReading reading_of(DeviationMember member, double s_m, double value, double sd);

/// How a reading lay against all before it: 0 as expected; beyond 2.6 one in a hundred.
struct ReadingFit {
  double innovation = 0;
  double sd = 0;  ///< expected of it
  [[nodiscard]] double in_sd() const { return sd > 0 ? innovation / sd : 0; }
};

struct ConditionedPoint {
  double s_m = 0;
  std::optional<std::size_t> path_point;  ///< its number in the path; empty: between two of them
  Deviation filtered = Deviation::Zero(), smoothed = Deviation::Zero();
  DeviationCovariance filtered_cov = DeviationCovariance::Zero(), smoothed_cov = DeviationCovariance::Zero();
};

struct Conditioned {
  std::vector<ConditionedPoint> points;  ///< those of the path, and where readings were taken
  std::vector<ReadingFit> fits;          ///< one a reading, in the order given
};

/// Kalman filter along the bore, then the Rauch–Tung–Striebel smoother back, both in Joseph form, so that no
/// covariance loses its sign:
///   K = P⁻ Hᵀ/(H P⁻ Hᵀ + R), P = (I − K H) P⁻ (I − K H)ᵀ + K R Kᵀ
///   G = P Fᵀ (P⁻₊)⁺, Pˢ = (I − G F) P (I − G F)ᵀ + G (Pˢ₊ + Q) Gᵀ
/// ()⁺ the pseudo-inverse of the matrix scaled to a unit diagonal, for members known exactly. Readings may come in any
/// order; those at one place count in the order given. A reading of sd 0 counts with 1 µm or 1 µrad.
/// Source: Kalman 1960; Rauch, Tung & Striebel 1965 (from memory), Joseph form (textbook).   Range: readings outside
/// the chain are left out, their fit is 0.   `also_at`: arc lengths at which the answer is wanted.
/// Evidence: Conditioning.*, PublishedConditioning.*
Conditioned condition(const SpreadChain& chain, const std::vector<PathReading>& readings,
                      const std::vector<double>& also_at = {});

/// What the readings have in common before any is taken, their own errors left out: one row and column a reading.
/// Zero for those outside the chain.   Evidence: Conditioning.Joint_*, LearnRecovery.*
Eigen::MatrixXd joint_covariance(const SpreadChain& chain, const std::vector<PathReading>& readings);

enum class Knowledge { filtered, smoothed };

/// The path as it is now believed to run, in its own bands; points in between are put in where readings were taken.
/// Deviations are taken upright and level at a station, as the bands of `predict_path`.
BorePath conditioned_path(const BorePath& path, const Conditioned& conditioned, Knowledge knowledge);

}  // namespace burrow
