#include "day_rates.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "burrow/bore/point_on_path.h"

namespace burrow {

namespace {

/// A member of the advance at an arc length, straight between points.
template <class Member>
double advance_at(const Advance& advance, double s_m, Member member) {
  const auto next = std::upper_bound(advance.points.begin(), advance.points.end(), s_m,
                                     [](double s, const AdvancePoint& p) { return s < p.s_m; });
  if (next == advance.points.begin()) return member(advance.points.front());
  if (next == advance.points.end()) return member(advance.points.back());
  const AdvancePoint &a = *(next - 1), &b = *next;
  const double share = (s_m - a.s_m) / (b.s_m - a.s_m);
  return member(a) + share * (member(b) - member(a));
}

double time_at(const Advance& advance, double s_m) {
  return advance_at(advance, s_m, [](const AdvancePoint& p) { return p.time.p50_s; });
}

double normal_density(double x, double mean, double sd) {
  const double z = (x - mean) / sd;
  return std::exp(-0.5 * z * z) / sd;
}

struct Hypothesis {
  OddRate what;
  double prior, ln, ln_sd;
};

class Rates {
 public:
  Rates(const Ground& ground, const BorePath& path, const Advance& advance, const RateConstants& constants)
      : ground_(ground), path_(path), advance_(advance), c_(constants) {
    variance_ = c_.factor_ln_sd * c_.factor_ln_sd;
  }

  void take(const RatePiece& piece) {
    const double length = piece.to_m - piece.from_m;
    const double y = std::log(piece.taken_s / piece.expected_s);
    const double noise = c_.piece_ln_sd * std::sqrt(c_.piece_m / std::min(length, c_.piece_m));
    const double spread = std::sqrt(variance_ + noise * noise);
    std::vector<OddRateChance> odds;
    double sum = 0;
    for (const Hypothesis& h : hypotheses(piece, length)) {
      const double weight = h.prior * normal_density(y, mean_ + h.ln, std::hypot(spread, h.ln_sd));
      odds.push_back({h.what, weight});
      sum += weight;
    }
    for (OddRateChance& odd : odds) odd.chance = sum > 0 ? odd.chance / sum : 0;
    // Where no density is left, as far out as that, the piece was surely not like those before.
    const double as_before = odds.front().chance;
    if (as_before > 0) {
      const double gain = as_before * variance_ / (variance_ + noise * noise);
      mean_ += gain * (y - mean_);
      variance_ *= 1 - gain;
    }
    std::stable_sort(odds.begin(), odds.end(),
                     [](const OddRateChance& a, const OddRateChance& b) { return a.chance > b.chance; });
    answer_.pieces.push_back(piece);
    answer_.odds.push_back(std::move(odds));
  }

  RateAnswer finish(const Timeline& timeline) {
    answer_.factor_ln = mean_;
    answer_.factor_ln_sd = std::sqrt(variance_);
    const double left = time_at(advance_, path_.length_m) - time_at(advance_, timeline.nose_m);
    if (advance_.time && left >= 0 && timeline.nose_m <= path_.length_m) {
      const double spread = 1.2816 * std::sqrt(variance_);
      answer_.left_p10_s = left * std::exp(mean_ - spread);
      answer_.left_p50_s = left * std::exp(mean_);
      answer_.left_p90_s = left * std::exp(mean_ + spread);
    }
    return std::move(answer_);
  }

 private:
  [[nodiscard]] std::vector<Hypothesis> hypotheses(const RatePiece& piece, double length) const {
    const double middle = 0.5 * (piece.from_m + piece.to_m);
    const PathPoint p = point_at(path_, middle);
    const Soil& soil = ground_.soil_at(p.x_m, p.y_m, p.z_m);
    const auto chance = [&](double rate) { return -std::expm1(-rate * length); };
    const double stone = chance(std::max(soil.stone_rate.per_m, c_.stone_least_1_m));
    const double soft = chance(c_.soft_1_m), hollow = chance(c_.hollow_1_m);
    // Grip only matters once the whole body could hold; before that the crew holds the tool.
    const double grip = advance_at(advance_, middle, [](const AdvancePoint& a) { return a.grip; });
    const bool held_by_crew = advance_.held_until_m && middle < *advance_.held_until_m;
    const double lost = held_by_crew || grip >= 1.5 ? c_.grip_good : grip >= 1 ? c_.grip_scant : c_.grip_poor;
    const double rest = std::max(0.05, 1 - stone - soft - hollow - lost);
    return {{OddRate::as_before, rest, 0, 0},
            {OddRate::stone, stone, c_.stone_ln, c_.stone_ln_sd},
            {OddRate::soft_pocket, soft, c_.soft_ln, c_.soft_ln_sd},
            {OddRate::hollow, hollow, c_.hollow_ln, c_.hollow_ln_sd},
            {OddRate::lost_grip, lost, c_.grip_ln, c_.grip_ln_sd}};
  }

  const Ground& ground_;
  const BorePath& path_;
  const Advance& advance_;
  RateConstants c_;
  double mean_ = 0, variance_ = 0;
  RateAnswer answer_;
};

}  // namespace

RateAnswer rate_answer(const Ground& ground, const Tool& tool, const BorePath& path, const Advance& advance,
                       const AdvanceAsk& ask, const Timeline& timeline, const RateConstants& constants) {
  if (advance.points.size() < 2) return {};
  Rates rates(ground, path, advance, constants);
  std::map<double, Advance> at_gauge;
  for (const TimelineRun& run : timeline.runs) {
    const Advance* used = &advance;
    if (run.gauge_Pa && *run.gauge_Pa != ask.gauge.Pa) {
      auto found = at_gauge.find(*run.gauge_Pa);
      if (found == at_gauge.end()) {
        AdvanceAsk other = ask;
        other.gauge = Pressure{*run.gauge_Pa};
        found = at_gauge.emplace(*run.gauge_Pa, advance_along(ground, tool, path, other)).first;
      }
      used = &found->second;
    }
    const double expected = time_at(*used, run.to_m) - time_at(*used, run.from_m);
    if (expected > 0) rates.take({run.from_m, run.to_m, run.taken_s, expected});
  }
  return rates.finish(timeline);
}

}  // namespace burrow
