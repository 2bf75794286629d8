/// From the record of a bore to numbers that the constants of the model can be weighed by.

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>

#include "burrow/bore/conditioning.h"
#include "burrow/check/assess.h"
#include "burrow/check/tool_at_work.h"
#include "burrow/day/learn.h"
#include "burrow/day/path_evidence.h"
#include "day_rates.h"
#include "day_work.h"
#include "learn_refusal.h"

namespace burrow {

namespace {

constexpr int constants_tried = 41;
constexpr double prior_reach_sd = 3.5;

struct LogNormal {
  double ln_mean = 0, ln_sd = 0;
};
LogNormal log_normal(double mean, double sd) {
  const double variance = std::log1p(sd * sd / (mean * mean));
  return {std::log(mean) - 0.5 * variance, std::sqrt(variance)};
}

/// The class in which most of the bore lies, with its share.
std::pair<std::string, double> main_soil(const Crossing& crossing, const Ground& ground, const BorePath& path,
                                         double to_m) {
  std::map<std::string, double> lengths;
  double all = 0;
  for (std::size_t i = 1; i < path.points.size() && path.points[i - 1].s_m < to_m; ++i) {
    const PathPoint &a = path.points[i - 1], &b = path.points[i];
    const double x = 0.5 * (a.x_m + b.x_m), y = 0.5 * (a.y_m + b.y_m), z = 0.5 * (a.z_m + b.z_m);
    const std::optional<std::size_t> strip = ground.strip_at(x, y, z);
    lengths[strip ? crossing.site.strips[*strip].soil : crossing.site.strata[ground.stratum_at(x, y, z)].soil] +=
        b.s_m - a.s_m;
    all += b.s_m - a.s_m;
  }
  const auto most = std::max_element(lengths.begin(), lengths.end(),
                                     [](const auto& a, const auto& b) { return a.second < b.second; });
  if (most == lengths.end() || !(all > 0)) return {};
  return {most->first, most->second / all};
}

/// A member of the path where a reading was taken; beyond its end it runs on straight.
double expected_at(const BorePath& path, const PathReading& reading, DeviationMember member) {
  const PathPoint p = point_at(path, reading.s_m);
  const double beyond = std::max(0.0, reading.s_m - path.points.back().s_m);
  switch (member) {
    case up_m:
      return p.z_m + beyond * std::sin(p.grade_rad);
    case left_m:
      return p.y_m + beyond * std::cos(p.grade_rad) * std::sin(p.heading_rad);
    case pitch_rad:
      return p.grade_rad;
    default:
      return p.heading_rad;
  }
}

DeviationMember member_of(const PathReading& reading) {
  for (const DeviationMember member : {up_m, pitch_rad, left_m, yaw_rad})
    if (reading.row[member] == 1) return member;
  return constant;  // a peg: it tells of the heave model, not of these constants
}

SpreadChain only_set_up(SpreadChain chain) {
  chain.start(constant, constant) = 0;
  for (SpreadStep& step : chain.steps) step.noise_rad2_m = 0;
  return chain;
}

/// Noise of stones alone, or of wander with σ = 1 alone.
SpreadChain only_noise(SpreadChain chain, const Ground& ground, const BorePath& path, bool stones) {
  chain.start.setZero();
  for (std::size_t i = 0; i < chain.steps.size(); ++i) {
    const PathPoint &a = path.points[i], &b = path.points[i + 1];
    const Soil& soil = ground.soil_at(0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m), 0.5 * (a.z_m + b.z_m));
    const double kick = soil.stone_kick.rad;
    chain.steps[i].noise_rad2_m = stones ? soil.stone_rate.per_m * kick * kick : 1.0;
  }
  return chain;
}

class Gatherer {
 public:
  Gatherer(const Crossing& crossing, const Tables& tables, const LearnPrior& prior)
      : crossing_(crossing),
        tables_(tables),
        prior_(prior),
        ground_(crossing.site, tables),
        tool_(tool_at_work(crossing, tables).tool) {}

  /// Empty text: the evidence is complete.
  Phrase gather(const DayRecord& record, BoreEvidence& evidence, std::vector<StopEvidence>& stops) {
    const BorePath path = predict_path(ground_, tool_, crossing_.bore);
    if (path.points.size() < 2) return translatable("the layout has no path");
    Timeline timeline = timeline_of(record);
    std::vector<PathReading> readings;
    const TakenReadings read = taken_readings(crossing_, record, ground_, tool_, path, timeline);
    note_arrival(read.taken, record, path, timeline);
    for (const TakenReading& one : read.taken)
      if (member_of(one.taken) != constant) readings.push_back(one.taken);
    if (!(timeline.furthest_m > 0)) return translatable("nothing was bored");
    for (StopEvidence& stop : stops_of(record, crossing_, tables_, ground_, path, timeline))
      stops.push_back(std::move(stop));
    const auto [soil, share] = main_soil(crossing_, ground_, path, timeline.furthest_m);
    if (share < prior_.share_in_class) return translatable("no soil class makes up most of the bore");
    const SoilClass* row = find_soil(tables_, soil);
    if (!row || !(row->wander.rad_sqrt_m > 0)) return translatable("its soil class has no wander to start from");
    evidence.soil = soil;
    evidence.wander_class = row->wander.rad_sqrt_m;
    // The defaults, not what the layout holds: that may have been learnt from this very record.
    evidence.steer_mean = ModelConstants().steer_constant->v;
    evidence.steer_sd = ModelConstants().steer_constant_sd->v;
    time(path, timeline, evidence);
    if (!readings.empty()) evidence.path = path_evidence(path, readings, evidence.steer_mean, evidence.steer_sd);
    if (readings.empty() && !evidence.time_ln) return translatable("neither a timed mark nor a reading of the path");
    return {};
  }

 private:
  void time(const BorePath& path, const Timeline& timeline, BoreEvidence& evidence) const {
    evidence.factor_expected = crossing_.bore.model.field_factor->v;
    const AdvanceAsk ask{
        tool_.pressure, {evidence.factor_expected}, Length{limit_of(crossing_, tables_, "set_least_m").value}};
    const Advance advance = advance_along(ground_, tool_, path, ask);
    const RateAnswer rate = rate_answer(ground_, tool_, path, advance, ask, timeline);
    double sum_ln = 0;  // of the logarithms: a mean of times would lean to the slow pieces
    for (std::size_t i = 0; i < rate.pieces.size(); ++i) {
      if (rate.odds[i].front().what != OddRate::as_before) continue;  // a stone says nothing of the soil
      sum_ln += std::log(rate.pieces[i].taken_s / rate.pieces[i].expected_s);
      ++evidence.pieces;
    }
    if (evidence.pieces > 0) evidence.time_ln = sum_ln / evidence.pieces;
  }

  [[nodiscard]] std::shared_ptr<const PathEvidence> path_evidence(const BorePath& path,
                                                                  const std::vector<PathReading>& readings,
                                                                  double steer_mean, double steer_sd) const {
    PathEvidence evidence;
    const auto n = static_cast<Eigen::Index>(readings.size());
    const LogNormal c = log_normal(steer_mean, steer_sd);
    evidence.expected.resize(n, constants_tried);
    for (int k = 0; k < constants_tried; ++k) {
      const double ln = c.ln_mean + prior_reach_sd * c.ln_sd * (2.0 * k / (constants_tried - 1) - 1);
      evidence.ln_constants.push_back(ln);
      Bore bore = crossing_.bore;
      bore.model.steer_constant.set(Ratio{std::exp(ln)});
      const BorePath tried = predict_path(ground_, tool_, bore, {Length{0.05}, Length{0.25}});
      for (Eigen::Index r = 0; r < n; ++r) {
        const PathReading& reading = readings[static_cast<std::size_t>(r)];
        evidence.expected(r, k) = expected_at(tried, reading, member_of(reading));
      }
    }
    Bore middle_bore = crossing_.bore;
    middle_bore.model.steer_constant.set(Ratio{std::exp(c.ln_mean)});
    const BorePath middle = predict_path(ground_, tool_, middle_bore);
    const SpreadChain chain = spread_chain(ground_, tool_, middle_bore, middle);
    // The arrival belongs to the end of this path too, which is a little longer or shorter.
    std::vector<PathReading> there = readings;
    for (PathReading& reading : there)
      reading.s_m = reading.s_m >= path.length_m - 1e-9 ? middle.length_m : std::min(reading.s_m, middle.length_m);
    evidence.fixed =
        joint_covariance(only_set_up(chain), there) + joint_covariance(only_noise(chain, ground_, middle, true), there);
    evidence.by_wander = joint_covariance(only_noise(chain, ground_, middle, false), there);
    evidence.values.resize(n);
    for (Eigen::Index r = 0; r < n; ++r) {
      const PathReading& reading = readings[static_cast<std::size_t>(r)];
      const PathPoint p = point_at(path, reading.s_m);
      const DeviationMember member = member_of(reading);
      const double scale = member == up_m     ? 1 / std::cos(p.grade_rad)
                           : member == left_m ? 1 / std::cos(p.heading_rad)
                                              : 1.0;
      evidence.values[r] = expected_at(path, reading, member) + reading.value * scale;
      evidence.fixed(r, r) += std::max(reading.sd * reading.sd, 1e-12);
    }
    return std::make_shared<const PathEvidence>(std::move(evidence));
  }

  const Crossing& crossing_;
  const Tables& tables_;
  LearnPrior prior_;
  Ground ground_;
  Tool tool_;
};

}  // namespace

Evidence evidence_of(const Crossing& crossing, const Tables& tables, const LearnPrior& prior, const LearnFrom& from) {
  Evidence all;
  for (const DayRecord& record : crossing.record) {
    if (end_of(record) == EndHow::backed_out && !from.backed_out) {
      all.not_learnt.push_back({record.id, translatable("it was backed out: taken only when asked for")});
      continue;
    }
    const Crossing bored = as_bored(crossing, record);
    BoreEvidence evidence;
    const Phrase why = Gatherer(bored, tables, prior).gather(record, evidence, all.stops);
    evidence.record = crossing.name + ", " + record.id;
    if (why.empty())
      all.bores.push_back(std::move(evidence));
    else
      all.not_learnt.push_back({record.id, why});
  }
  return all;
}

}  // namespace burrow
