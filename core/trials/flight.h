#pragma once
/// Thirty-two bores at a time, followed step by step.

#include <array>
#include <cstdint>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/crossing/bore.h"
#include "burrow/trials/trials.h"
#include "random.h"
#include "terrain.h"

namespace burrow::trials {

inline constexpr std::size_t lanes = 32;
using Lane = std::array<double, lanes>;

/// What is the same for every bore of a run.
struct Course {
  const Bore& bore;
  double radius_m = 0;  ///< a
  double step_m = 0.1;
  double longest_m = 0;
  double constant_log_mean = 0, constant_log_sd = 0;  ///< of ln c
  double constant = 0;                                ///< c, where it has no spread
  bool refusal = true;
  Course(const Bore& the_bore, const Tool& tool, Length step);
};

/// A block of bores from launch to end. Between two points of a bore it runs straight: the first is the launch point,
/// the next half a step on, then every step. At each of them the heading turns by what ground and chance do to it over
/// one step (drift, kick, drift: second order in the step).
class Flight {
 public:
  /// Flies `count` bores (at most `lanes`); the draws of those left over are made all the same.
  void run(const Course& course, const Terrain& terrain, Draws& draws, std::size_t count);

  [[nodiscard]] const TrialEnd& end(std::size_t lane) const { return end_[lane]; }
  /// Points of a bore, the end included.
  [[nodiscard]] std::size_t points(std::size_t lane) const { return last_[lane] + 1; }
  [[nodiscard]] Point3 point(std::size_t lane, std::size_t i) const {
    if (i == last_[lane]) return end_at_[lane];
    return {x_at_[i][lane], y_at_[i][lane], z_at_[i][lane]};
  }
  [[nodiscard]] double arc_m(std::size_t lane, std::size_t i) const {
    if (i == last_[lane]) return end_arc_[lane];
    return i == 0 ? 0 : (static_cast<double>(i) - 0.5) * step_;
  }

 private:
  void launch(const Course& course, Draws& draws, std::size_t count);
  void drift(double h);
  bool look(const Course& course, const Terrain& terrain, Draws& draws);
  void look_beside_strips(const Course& course, const Terrain& terrain);
  void turn();
  void settle(const Course& course, const Terrain& terrain, Draws& draws);
  void finish(std::size_t lane, TrialEnd how, const Point3& at, double arc);
  void record();

  double step_ = 0;
  std::size_t step_count_ = 0, flying_ = 0;  // points recorded so far
  std::vector<Lane> x_at_, y_at_, z_at_;
  Lane x_{}, y_{}, z_{}, cos_grade_{}, sin_grade_{}, cos_heading_{}, sin_heading_{};
  Lane constant_{}, pitch_{}, yaw_{}, normal_pitch_{}, normal_yaw_{};  // constant × step; turns of the step
  Lane stone_left_{}, refusal_left_{}, stone_kick_{};                  // of exponential draws, what is not used up
  Lane exit_{}, least_depth_{}, depth_{}, end_arc_{};
  std::array<Point3, lanes> end_at_{};
  std::array<std::size_t, lanes> last_{};
  std::array<float, lanes> asymmetry_{}, sag_{};
  std::array<std::uint32_t, lanes> soil_{};
  std::array<TrialEnd, lanes> end_{};
};

}  // namespace burrow::trials
