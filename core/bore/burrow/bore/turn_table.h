#pragma once
/// How one ground turns the tool, tabulated over station and depth, so that a step of a trial costs no pressure.

#include <algorithm>
#include <array>
#include <cstdint>
#include <vector>

#include "burrow/bore/steering.h"
#include "burrow/crossing/site.h"

namespace burrow {

/// Turning for c = 1: dθ/ds = c (asymmetry − sag cos θ). Seven digits are enough, and half the table to carry about.
struct TurnNode {
  float asymmetry_1_m = 0;
  float sag_1_m = 0;
};

/// What the soil at the axis does to a tool by chance.
struct SoilChance {
  double wander_rad_sqrt_m = 0, stone_rate_1_m = 0, stone_kick_rad = 0, refusal_rate_1_m = 0;
};

/// The stations and the deepest axis that a table has to cover.
struct TurnExtent {
  double from_m = 0, to_m = 0;
  double deepest_m = 0;
};

/// Table of the `Steering` of one ground, at the offset `y_m`, as if nothing varied across.
/// `Steering` itself is asked every D/4 of depth, at stations between which no line of ground, water or stratum moves
/// by more than D/2 against the surface (one station, where none does). From there to nodes D/8 and at most 0.25 m
/// apart by cubics and straight lines; between the nodes straight lines both ways. Beyond its edges the edge holds.
/// Source: our model (numerical).   Range: to_m > from_m.
/// Evidence: TurnTable.Steering_ErrorAtArrivalBelowOneMillimetre, TurnTable.*
class TurnTable {
 public:
  TurnTable(const Site& site, const Ground& ground, const Steering& steering, const Tool& tool,
            const TurnExtent& extent, double y_m);

  struct Place {
    std::size_t column = 0;  ///< left of the place
    double share = 0;        ///< of the way to the next column
    double surface_m = 0;
  };
  [[nodiscard]] Place place(double x_m) const {
    const double t = std::clamp((x_m - from_m_) * columns_per_m_, 0.0, last_column_);
    const auto i = static_cast<std::uint32_t>(t);
    const double share = t - i;
    return {i, share, surface_m_[i] + share * (surface_m_[i + 1] - surface_m_[i])};
  }
  [[nodiscard]] TurnNode turn(const Place& at, double depth_m) const {
    const Level level = this->level(depth_m);
    if (single_) return between(&nodes_[level.row], level.share);
    const TurnNode left = between(&nodes_[at.column * rows_ + level.row], level.share);
    const TurnNode right = between(&nodes_[(at.column + 1) * rows_ + level.row], level.share);
    return between(left, right, static_cast<float>(at.share));
  }
  /// Number of the soil at the axis, as in `Ground`; the nearest node decides.
  [[nodiscard]] std::size_t soil(const Place& at, double depth_m) const {
    if (one_soil_) return soils_.front();
    const Level level = this->level(depth_m);
    const std::size_t column = single_ ? 0 : at.column + (at.share > 0.5 ? 1 : 0);
    return soils_[column * rows_ + level.row + (level.share > 0.5F ? 1 : 0)];
  }
  /// The same for many places at once, in loops that a compiler turns into vectors: depth, turning and soil at `x`,
  /// `z`. Where `one_soil`, the numbers of the soil are left as they are.
  template <std::size_t N>
  void look(const std::array<double, N>& x, const std::array<double, N>& z, std::array<double, N>& depth,
            std::array<float, N>& asymmetry, std::array<float, N>& sag, std::array<std::uint32_t, N>& soil) const;

  [[nodiscard]] const std::vector<SoilChance>& chances() const { return chances_; }
  [[nodiscard]] bool one_soil() const { return one_soil_; }
  /// How often `Steering` was asked.
  [[nodiscard]] std::size_t asked() const { return asked_; }

 private:
  struct Level {
    std::size_t row = 0;
    float share = 0;
  };
  [[nodiscard]] Level level(double depth_m) const {
    const double t = std::clamp((depth_m - top_m_) * rows_per_m_, 0.0, last_row_);
    const auto i = static_cast<std::uint32_t>(t);
    return {i, static_cast<float>(t - i)};
  }
  static TurnNode between(const TurnNode& a, const TurnNode& b, float t) {
    return {a.asymmetry_1_m + t * (b.asymmetry_1_m - a.asymmetry_1_m), a.sag_1_m + t * (b.sag_1_m - a.sag_1_m)};
  }
  static TurnNode between(const TurnNode* node, float share) { return between(node[0], node[1], share); }
  struct Profile {
    std::vector<TurnNode> nodes;
    std::vector<std::uint16_t> soils;
  };
  Profile profile(const Ground& ground, const Steering& steering, double x_m, double y_m);
  void write(std::size_t column, const Profile& left, const Profile& right, double share);

  double from_m_ = 0, columns_per_m_ = 0, last_column_ = 0;
  double top_m_ = 0, rows_per_m_ = 0, last_row_ = 0;
  std::size_t rows_ = 0, asked_ = 0;
  bool single_ = false, one_soil_ = true, level_ = true;  // one column; one soil; level ground
  std::vector<double> surface_m_;
  std::vector<TurnNode> nodes_;  // column by column, from the top down
  std::vector<std::uint16_t> soils_;
  std::vector<SoilChance> chances_;  // by the number of the soil
};

template <std::size_t N>
void TurnTable::look(const std::array<double, N>& x, const std::array<double, N>& z, std::array<double, N>& depth,
                     std::array<float, N>& asymmetry, std::array<float, N>& sag,
                     std::array<std::uint32_t, N>& soil) const {
  const auto split = [](double t, double last, std::int32_t& whole, float& share) {
    t = t > 0 ? t : 0;
    t = t < last ? t : last;
    whole = static_cast<std::int32_t>(t);
    share = static_cast<float>(t - whole);
  };
  std::array<std::int32_t, N> row, column;  // NOLINT(cppcoreguidelines-pro-type-member-init): filled below
  std::array<float, N> share, across;       // NOLINT(cppcoreguidelines-pro-type-member-init)
  if (level_) {
    for (std::size_t i = 0; i < N; ++i) depth[i] = surface_m_[0] - z[i];
  }
  if (!level_ || !single_) {
    for (std::size_t i = 0; i < N; ++i) split((x[i] - from_m_) * columns_per_m_, last_column_, column[i], across[i]);
    const double* surface = surface_m_.data();
    if (!level_)
      for (std::size_t i = 0; i < N; ++i) {
        const double* at = surface + column[i];
        depth[i] = at[0] + static_cast<double>(across[i]) * (at[1] - at[0]) - z[i];
      }
  }
  for (std::size_t i = 0; i < N; ++i) split((depth[i] - top_m_) * rows_per_m_, last_row_, row[i], share[i]);
  const TurnNode* nodes = nodes_.data();
  const auto stride = static_cast<std::ptrdiff_t>(rows_);
  for (std::size_t i = 0; i < N; ++i) {
    const TurnNode* left = nodes + (single_ ? 0 : column[i] * stride) + row[i];
    TurnNode node = between(left, share[i]);
    if (!single_) node = between(node, between(left + stride, share[i]), across[i]);
    asymmetry[i] = node.asymmetry_1_m;
    sag[i] = node.sag_1_m;
  }
  if (one_soil_) return;
  for (std::size_t i = 0; i < N; ++i) {
    const std::ptrdiff_t left = single_ ? 0 : (column[i] + (across[i] > 0.5F ? 1 : 0)) * stride;
    soil[i] = soils_[static_cast<std::size_t>(left + row[i] + (share[i] > 0.5F ? 1 : 0))];
  }
}

}  // namespace burrow
