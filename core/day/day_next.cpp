/// What one reading more would be worth: how much it narrows, and whether it may turn the advice.

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>

#include "burrow/clearance/contact.h"
#include "day_work.h"

namespace burrow {

namespace {

constexpr int quantiles = 21;

/// Equally likely values of a standard normal.
const std::vector<double>& likely_values() {
  static const std::vector<double> values = [] {
    std::vector<double> all;
    for (int i = 0; i < quantiles; ++i)
      all.push_back(boost::math::quantile(boost::math::normal(), (i + 0.5) / quantiles));
    return all;
  }();
  return values;
}

struct Normal2 {
  double up_var = 0, left_var = 0;
};

class Weigher {
 public:
  explicit Weigher(DayWork& work) : work_(work), answer_(work.answer) {}

  void run() {
    const DayReason* decides = deciding();
    const double nose = answer_.nose.s_m;
    if (nose > 0 && nose < work_.assessment.bore.length_m - 1e-6) {
      add(NextReadingKind::fix, decides,
          {reading_of(up_m, nose, 0, errors_.vertical_m), reading_of(left_m, nose, 0, errors_.lateral_m)});
      // While the tail still stands in the pit a level can be laid on it.
      if (nose < work_.tool.length.m)
        add(NextReadingKind::level, decides, {reading_of(pitch_rad, nose, 0, errors_.level_rad)});
    }
    if (decides && decides->code == "day.contact") expose(*decides);
    std::stable_sort(answer_.next.begin(), answer_.next.end(),
                     [](const NextReading& a, const NextReading& b) { return a.chance_to_turn > b.chance_to_turn; });
  }

 private:
  /// The first number that a reading of the path can move.
  [[nodiscard]] const DayReason* deciding() const {
    for (const DayReason& reason : answer_.reasons)
      if (reason.code == "day.contact" || reason.code == "day.window" || reason.code == "day.out-of-reach")
        return &reason;
    return nullptr;
  }

  [[nodiscard]] static const DeviationCovariance& at(const Conditioned& c, double s) {
    const auto nearest =
        std::min_element(c.points.begin(), c.points.end(), [&](const ConditionedPoint& a, const ConditionedPoint& b) {
          return std::abs(a.s_m - s) < std::abs(b.s_m - s);
        });
    return nearest->smoothed_cov;
  }

  void add(NextReadingKind kind, const DayReason* decides, const std::vector<PathReading>& more) {
    std::vector<PathReading> readings = work_.readings();
    readings.insert(readings.end(), more.begin(), more.end());  // of what is expected: the spread does not depend on it
    const Conditioned after = condition(work_.chain, readings, {answer_.nose.s_m});
    const PathPoint& end = answer_.smoothed.points.back();
    const double level = std::cos(end.grade_rad), along = std::cos(end.heading_rad);
    const DeviationCovariance& exit = after.points.back().smoothed_cov;
    NextReading next;
    next.kind = kind;
    next.subject = "bore";
    next.name = translatable("bore");
    next.sd_vertical_m = std::sqrt(std::max(0.0, exit(up_m, up_m))) / level;
    next.sd_lateral_m = std::sqrt(std::max(0.0, exit(left_m, left_m))) / along;
    if (decides) {
      next.decides = decides->code;
      next.chance_to_turn =
          decides->code == "day.contact" ? contact_turns(*decides, after) : window_turns(*decides, next);
    }
    answer_.next.push_back(next);
  }

  static bool holds(const DayReason& reason, double measured) {
    return !(margin_of(measured, {reason.limit, reason.at_least, {}}) < 0);
  }

  [[nodiscard]] double window_turns(const DayReason& reason, const NextReading& next) const {
    const Arrival& now = answer_.arrival;
    const auto moved = [](double before, double after) {
      return std::sqrt(std::max(0.0, before * before - after * after));
    };
    const double up = moved(*now.sd_vertical_m, next.sd_vertical_m), left = moved(*now.sd_lateral_m, next.sd_lateral_m);
    int changed = 0;
    for (const double a : likely_values())
      for (const double b : likely_values()) {
        const double chance = window_chance(
            work_, {*now.offset_m + a * left, *now.elevation_m + b * up, next.sd_lateral_m, next.sd_vertical_m});
        changed += holds(reason, chance) == reason.broken;
      }
    return static_cast<double>(changed) / (quantiles * quantiles);
  }

  [[nodiscard]] const Clearance* clearance_of(const DayReason& reason) const {
    for (const Clearance& c : work_.clearing)
      if (c.id == reason.subject && c.axis_distance_m && c.on_bore && c.on_utility && c.bore_sd_m && c.utility_sd_m)
        return &c;
    return nullptr;
  }

  /// Chance that the number crosses its limit when the gap moves by its spread and what is left is `after_sd`.
  static double crossing_turns(const DayReason& reason, const Clearance& c, double moved_sd, double after_sd) {
    int changed = 0;
    for (const double z : likely_values()) {
      const double gap = *c.axis_distance_m + z * moved_sd;
      changed += holds(reason, crossing_chance(std::abs(gap), c.contact_radius_m, after_sd)) == reason.broken;
    }
    return static_cast<double>(changed) / quantiles;
  }

  [[nodiscard]] double contact_turns(const DayReason& reason, const Conditioned& after) const {
    const Clearance* c = clearance_of(reason);
    if (!c || !(*c->axis_distance_m > 0)) return 0;
    const double up = (c->on_utility->z_m - c->on_bore->z_m) / *c->axis_distance_m;
    const double across = std::sqrt(std::max(0.0, 1 - up * up));
    double s = answer_.nose.s_m;
    for (const PathPoint& p : work_.ahead.points)
      if (p.x_m <= c->on_bore->x_m) s = p.s_m;
    const auto variance = [&](const DeviationCovariance& p) {
      return up * up * p(up_m, up_m) + across * across * p(left_m, left_m);
    };
    const double before = variance(at(work_.conditioned, s)), left = std::min(before, variance(at(after, s)));
    return crossing_turns(reason, *c, std::sqrt(before - left), std::hypot(std::sqrt(left), *c->utility_sd_m));
  }

  void expose(const DayReason& reason) {
    const Clearance* c = clearance_of(reason);
    if (!c || !unexposed(*c)) return;
    const double hole = work_.limit("hole_sd_m").value, sd = *c->utility_sd_m;
    const double left = sd > 0 ? sd * hole / std::hypot(sd, hole) : 0;
    NextReading next;
    next.kind = NextReadingKind::expose;
    next.subject = reason.subject;
    next.name = reason.name;
    next.sd_lateral_m = answer_.arrival.sd_lateral_m.value_or(0);
    next.sd_vertical_m = answer_.arrival.sd_vertical_m.value_or(0);
    next.decides = reason.code;
    next.chance_to_turn =
        crossing_turns(reason, *c, std::sqrt(std::max(0.0, sd * sd - left * left)), std::hypot(*c->bore_sd_m, left));
    answer_.next.push_back(next);
  }

  DayWork& work_;
  DayAnswer& answer_;
  ReadingErrors errors_;
};

}  // namespace

void weigh_readings(DayWork& work) {
  if (!work.timeline.started || work.timeline.ended) return;
  Weigher(work).run();
  // Nobody is told to read one thing more where nothing may go on before it is exposed.
  if (work.answer.advice && *work.answer.advice >= Advice::record_only)
    std::erase_if(work.answer.next, [](const NextReading& next) { return next.kind != NextReadingKind::expose; });
}

}  // namespace burrow
