#include "burrow/bore/path_fans.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/bore/fan_nodes.h"
#include "burrow/bore/normal_table.h"

namespace burrow {

namespace {

constexpr double least_sd_m = 1e-6;                     // a perfectly known place is a step
constexpr double least_cos = 0.2;                       // steeper, a bore turns no further
constexpr double most_turn_rad = 0.5, most_growth = 1;  // of one step, reached only by constants that nobody believes
constexpr double fine_steps = 160, fewer_steps = 80;    // the latter where many grounds share the chance
constexpr double fine_step_m = 0.25, coarse_step_m = 0.5;

FanLanes constants_of(const ModelConstants& model) {
  const double mean = model.steer_constant->v, sd = model.steer_constant_sd->v;
  FanLanes c;
  c.fill(mean);
  if (!(sd > 0 && mean > 0)) return c;
  constexpr double most_log_variance = 9;  // wider nobody knows anything of c
  const double share = std::min(sd / mean, 1e6);
  const double log_variance = std::min(std::log1p(share * share), most_log_variance), log_sd = std::sqrt(log_variance);
  for (std::size_t k = 0; k < fan_lanes; ++k)
    c[k] =
        std::exp(std::log(mean) - 0.5 * log_variance + log_sd * (fan_first_sd + fan_step_sd * static_cast<double>(k)));
  return c;
}

}  // namespace

FanPoints fan_points_of(const FanLanes& nodes) {
  FanPoints points;
  for (std::size_t k = 0; k + 1 < fan_lanes; ++k) {
    const double b = nodes[k], c = nodes[k + 1];
    const double a = k > 0 ? nodes[k - 1] : 2 * b - c, d = k + 2 < fan_lanes ? nodes[k + 2] : 2 * c - b;
    const double p = 2 * a - 5 * b + 4 * c - d, q = 3 * (b - c) + d - a;
    for (std::size_t j = 0; j < fan_finer; ++j) {
      const double t = static_cast<double>(j) / fan_finer;
      points[k * fan_finer + j] = b + 0.5 * t * (c - a + t * (p + t * q));
    }
  }
  points.back() = nodes.back();
  return points;
}

const std::array<double, fan_points - 1>& fan_weights() {
  static const std::array<double, fan_points - 1> all = [] {
    const auto below = [](std::size_t i) {
      if (i == 0) return 0.0;
      if (i + 1 == fan_points) return 1.0;
      return 0.5 * std::erfc(-(fan_first_sd + fan_step_sd / fan_finer * static_cast<double>(i)) * std::sqrt(0.5));
    };
    std::array<double, fan_points - 1> made{};
    for (std::size_t i = 0; i + 1 < fan_points; ++i) made[i] = below(i + 1) - below(i);
    return made;
  }();
  return all;
}

double fan_chance_below(const FanLanes& score) {
  const FanPoints points = fan_points_of(score);
  const NormalTable& table = normal_table();
  const auto& weights = fan_weights();
  double chance = 0, sum = normal_below_sum(table, points[0]);
  for (std::size_t i = 0; i + 1 < fan_points; ++i) {
    const double next = normal_below_sum(table, points[i + 1]);
    chance += weights[i] * mean_normal_below(points[i], sum, points[i + 1], next);
    sum = next;
  }
  return std::clamp(chance, 0.0, 1.0);
}

namespace {

/// Chance of ln c between each point that is looked at and the next of them.
template <std::size_t stride>
const std::array<double, (fan_points - 1) / stride>& weights_by() {
  static const auto all = [] {
    std::array<double, (fan_points - 1) / stride> made{};
    for (std::size_t i = 0; i + 1 < fan_points; ++i) made[i / stride] += fan_weights()[i];
    return made;
  }();
  return all;
}

template <std::size_t stride>
double summed(const FanPoints& low, const FanPoints& high, const FanPoints* share, std::size_t from, std::size_t to) {
  const NormalTable& table = normal_table();
  const auto& weights = weights_by<stride>();
  double chance = 0;
  double sum_low = normal_below_sum(table, low[from]), sum_high = normal_below_sum(table, high[from]);
  for (std::size_t i = from; i < to; i += stride) {
    const std::size_t j = i + stride;
    const double next_low = normal_below_sum(table, low[j]), next_high = normal_below_sum(table, high[j]);
    const double mean =
        mean_normal_below(high[i], sum_high, high[j], next_high) - mean_normal_below(low[i], sum_low, low[j], next_low);
    chance += weights[i / stride] * mean * (share ? 0.5 * ((*share)[i] + (*share)[j]) : 1);
    sum_low = next_low;
    sum_high = next_high;
  }
  return std::clamp(chance, 0.0, 1.0);
}

}  // namespace

double fan_chance_between(const FanPoints& low, const FanPoints& high, const FanPoints* share, std::size_t from,
                          std::size_t to) {
  return summed<1>(low, high, share, from, to);
}

double fan_chance_at_nodes(const FanPoints& low, const FanPoints& high, const FanPoints* share, std::size_t from,
                           std::size_t to) {
  return summed<fan_finer>(low, high, share, from, to);
}

/// Sixteen bores beside one another, one step after the other.
struct PathFans::March {
  FanLanes z, cosine, sine, last_pitch{};
  FanLanes up, up_turn, turn, left, left_turn, yaw;  // variances and covariances, across the axis
  std::array<bool, fan_lanes> out{};

  March(const Launch& launch) {
    const double grade = std::atan(launch.grade.v), position = launch.position_sd->m;
    const double level = launch.level_sd->rad, aim = launch.aim_sd->rad;
    z.fill(launch.elevation.m);
    cosine.fill(std::cos(grade));
    sine.fill(std::sin(grade));
    up.fill(position * position);
    left.fill(position * position);
    up_turn.fill(0);
    left_turn.fill(0);
    turn.fill(level * level);
    yaw.fill(aim * aim);
  }

  /// By the midpoint rule, as `predict_path`, over `run_m` in plan along the bore.
  void step(const FanTable::Look& look, const FanLanes& constants, double run_m, bool first) {
    for (std::size_t k = 0; k < fan_lanes; ++k) {
      const bool turns = !out[k] && cosine[k] > least_cos;
      const double h = run_m / std::max(cosine[k], least_cos);
      const double c = turns ? constants[k] : 0, noise = turns ? look.noise_rad2_m[k] : 0;
      const double pitch = look.pitch_1_m[k], forward = first ? 0 : 0.5 * (pitch - last_pitch[k]);
      const double half = std::clamp(0.5 * h * c * pitch, -most_turn_rad, most_turn_rad);
      const double angle = std::clamp(h * c * (pitch + forward), -most_turn_rad, most_turn_rad);
      z[k] += run_m * (sine[k] + cosine[k] * half) / std::max(cosine[k] - sine[k] * half, least_cos);
      spread(k, h, c * look.gradient_1_m2[k], noise);
      const double s = angle * (1 - angle * angle / 6), e = 1 - 0.5 * angle * angle * (1 - angle * angle / 12);
      const double next_cosine = cosine[k] * e - sine[k] * s;
      sine[k] = sine[k] * e + cosine[k] * s;
      cosine[k] = next_cosine;
      last_pitch[k] = pitch;
    }
  }

  /// As `Spread::advance`.
  void spread(std::size_t k, double h, double gradient, double noise) {
    const double q = std::clamp(gradient * h * h, -most_growth, most_growth);
    const double diagonal = 1 + q / 2 * (1 + q / 12), upper = h * (1 + q / 6 * (1 + q / 20));
    const double lower = q / (h * h) * upper;
    const double position = up[k], both = up_turn[k], heading = turn[k];
    const double n1 = noise * h, n2 = n1 * h / 2, n3 = n1 * h * h / 3;
    up[k] = diagonal * diagonal * position + 2 * diagonal * upper * both + upper * upper * heading + n3;
    up_turn[k] =
        diagonal * lower * position + (diagonal * diagonal + upper * lower) * both + diagonal * upper * heading + n2;
    turn[k] = lower * lower * position + 2 * diagonal * lower * both + diagonal * diagonal * heading + n1;
    left[k] += h * (2 * left_turn[k] + h * yaw[k]) + n3;
    left_turn[k] += h * yaw[k] + n2;
    yaw[k] += n1;
  }
};

PathFans::PathFans(FanGrounds& grounds, const Ground& ground, const Tool& tool, const Bore& bore, const BorePath& mean)
    : tan_heading_(std::tan(bore.launch.heading->rad)),
      constants_(constants_of(bore.model)),
      radius_m_(0.5 * tool.diameter.m),
      mean_constant_(bore.model.steer_constant->v) {
  const double length = bore.exit.station.m - bore.launch.station.m;
  if (mean.points.size() < 2 || !(length > 0)) return;
  const double most = grounds.members().size() > 4 ? fewer_steps : fine_steps;
  const double fine = std::min(std::ceil(length / fine_step_m), most);
  const double steps = std::max(fine, std::ceil(length / coarse_step_m));
  recorded_ = static_cast<std::size_t>(std::max(std::ceil(steps / 2), 2.0)) + 1;
  first_x_m_ = bore.launch.station.m;
  apart_m_ = length / static_cast<double>(recorded_ - 1);
  for (std::size_t i = 0; i < recorded_; ++i) {
    const double x = first_x_m_ + apart_m_ * static_cast<double>(i);
    y_m_.push_back(bore.launch.offset->m + tan_heading_ * (x - first_x_m_));
    surface_m_.push_back(ground.surface_m(x, y_m_.back()));
  }
  aside_m_.assign(recorded_, 0);
  std::size_t p = 1;
  for (std::size_t i = 0; i < recorded_; ++i) {
    const double x = first_x_m_ + apart_m_ * static_cast<double>(i);
    while (p + 1 < mean.points.size() && mean.points[p].x_m < x) ++p;
    const PathPoint &a = mean.points[p - 1], &b = mean.points[p];
    const double t = b.x_m > a.x_m ? std::clamp((x - a.x_m) / (b.x_m - a.x_m), 0.0, 1.0) : 1;
    const double beyond = std::min(x, b.x_m);  // where the mean path ends, its distance from the line is kept
    aside_m_[i] = a.y_m + t * (b.y_m - a.y_m) - bore.launch.offset->m - tan_heading_ * (beyond - first_x_m_);
    if (std::abs(aside_m_[i]) < 1e-9) aside_m_[i] = 0;
  }
  fans_.reserve(grounds.members().size());
  std::vector<double> surface;  // at every step, two between one station and the next
  for (std::size_t i = 0; i + 1 < 2 * recorded_; ++i)
    surface.push_back(ground.surface_m(first_x_m_ + apart_m_ / 2 * static_cast<double>(i), 0));
  for (FanGrounds::Member& member : grounds.members()) follow(member, surface, bore);
}

void PathFans::follow(FanGrounds::Member& member, const std::vector<double>& surface, const Bore& bore) {
  Fan& fan = fans_.emplace_back();
  fan.chance = member.chance;
  fan.stations.resize(recorded_);
  fan.daylight.fill(-std::numeric_limits<double>::max());
  March march(bore.launch);
  const double dx = apart_m_ / 2, along = std::sqrt(1 + tan_heading_ * tan_heading_);
  FanTable::Look look;
  FanLanes depth;
  for (std::size_t step = 0;; ++step) {
    const double x = first_x_m_ + dx * static_cast<double>(step);
    for (std::size_t k = 0; k < fan_lanes; ++k) {
      depth[k] = surface[step] - march.z[k];
      const double cosine = std::max(march.cosine[k], least_cos);
      const double sd = std::max(std::sqrt(march.up[k]) / cosine, least_sd_m);
      fan.daylight[k] = std::max(fan.daylight[k], (radius_m_ - depth[k]) / sd);
      march.out[k] = march.out[k] || depth[k] <= radius_m_;
    }
    if (step % 2 == 0) {
      Station& at = fan.stations[step / 2];
      at.z_m = march.z;
      at.cos_grade = march.cosine;
      at.sin_grade = march.sine;
      for (std::size_t k = 0; k < fan_lanes; ++k) {
        const double cosine = std::max(march.cosine[k], least_cos);
        at.up_var_m2[k] = march.up[k] / (cosine * cosine);
        at.left_var_m2[k] = march.left[k] * along * along;
      }
    }
    if (step + 1 == surface.size()) break;
    member.table.look(x, depth, look);
    march.step(look, constants_, dx * along, step == 0);
  }
}

FanSpot PathFans::at(std::size_t fan, double x_m) const {
  const double place = std::clamp((x_m - first_x_m_) / apart_m_, 0.0, static_cast<double>(recorded_ - 1) - 1e-9);
  const auto i = static_cast<std::size_t>(place);
  const double t = place - static_cast<double>(i);
  const Station &a = fans_[fan].stations[i], &b = fans_[fan].stations[i + 1];
  FanSpot spot;
  spot.x_m = first_x_m_ + place * apart_m_;
  const auto between = [t](double from, double to) { return from + t * (to - from); };
  const double y = between(y_m_[i], y_m_[i + 1]),
               aside = mean_constant_ > 0 ? between(aside_m_[i], aside_m_[i + 1]) / mean_constant_ : 0;
  for (std::size_t k = 0; k < fan_lanes; ++k) {
    spot.y_m[k] = y + aside * constants_[k];
    spot.z_m[k] = between(a.z_m[k], b.z_m[k]);
    spot.cos_grade[k] = between(a.cos_grade[k], b.cos_grade[k]);
    spot.sin_grade[k] = between(a.sin_grade[k], b.sin_grade[k]);
    spot.up_var_m2[k] = between(a.up_var_m2[k], b.up_var_m2[k]);
    spot.left_var_m2[k] = between(a.left_var_m2[k], b.left_var_m2[k]);
  }
  return spot;
}

FanChance PathFans::sum_of(const std::vector<FanLanes>& scores) const {
  FanChance all;
  if (!scores.empty()) all.score = scores.front();
  for (std::size_t f = 0; f < scores.size(); ++f) {
    all.grounds.push_back(fan_chance_below(scores[f]));
    all.chance += fans_[f].chance * all.grounds.back();
  }
  return all;
}

FanChance PathFans::daylight() const {
  std::vector<FanLanes> scores;
  for (const Fan& fan : fans_) scores.push_back(fan.daylight);
  return sum_of(scores);
}

FanChance PathFans::cover_below(double cover_m, double from_m, double to_m) const {
  const auto station_of = [&](double x) {
    const double place = std::round((x - first_x_m_) / apart_m_);
    return static_cast<std::size_t>(std::clamp(place, 0.0, static_cast<double>(recorded_ - 1)));
  };
  std::vector<FanLanes> scores;
  for (const Fan& fan : fans_) {
    FanLanes& score = scores.emplace_back();
    score.fill(-std::numeric_limits<double>::max());
    for (std::size_t i = station_of(from_m); i <= station_of(to_m); ++i) {
      const Station& at = fan.stations[i];
      for (std::size_t k = 0; k < fan_lanes; ++k) {
        const double cover = surface_m_[i] - at.z_m[k] - radius_m_;
        score[k] = std::max(score[k], (cover_m - cover) / std::max(std::sqrt(at.up_var_m2[k]), least_sd_m));
      }
    }
  }
  return sum_of(scores);
}

FanChance PathFans::inside(double right_m, double left_m, double low_m, double high_m) const {
  FanChance all;
  all.grounds.assign(fans_.size(), 0);
  if (!(left_m > right_m && high_m > low_m)) return all;
  for (std::size_t f = 0; f < fans_.size(); ++f) {
    const FanSpot spot = at(f, first_x_m_ + apart_m_ * static_cast<double>(recorded_ - 1));
    FanLanes low, high, share;
    for (std::size_t k = 0; k < fan_lanes; ++k) {
      const double up = std::max(std::sqrt(spot.up_var_m2[k]), least_sd_m);
      const double across = std::max(std::sqrt(spot.left_var_m2[k]), least_sd_m);
      low[k] = (low_m - spot.z_m[k]) / up;
      high[k] = (high_m - spot.z_m[k]) / up;
      share[k] = normal_below((left_m - spot.y_m[k]) / across) - normal_below((right_m - spot.y_m[k]) / across);
    }
    const FanPoints shares = fan_points_of(share);
    all.grounds[f] = fan_chance_between(fan_points_of(low), fan_points_of(high), &shares);
    all.chance += fans_[f].chance * all.grounds[f];
  }
  return all;
}

}  // namespace burrow
