#include "burrow/practice/practice.h"

#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/uniform_01.hpp>
#include <cmath>

#include "burrow/bore/advance.h"
#include "burrow/bore/point_on_path.h"
#include "burrow/check/hose_marks.h"
#include "burrow/check/limits.h"
#include "burrow/check/tool_at_work.h"
#include "burrow/clearance/separation.h"
#include "burrow/soil/mistaken_soils.h"

namespace burrow {

namespace {

constexpr double tap_ln_sd = 0.10;      ///< how evenly the tool runs from mark to mark
constexpr double soft_below_Pa = 25e3;  ///< undrained: "soft" ends there (BS 5930 and EN ISO 14688-2: 20 to 40 kPa)

class Drawer {
 public:
  explicit Drawer(std::uint64_t seed) : engine_(seed) {}
  double normal() { return normal_(engine_); }
  double uniform() { return uniform_(engine_); }
  bool one_in_three() { return uniform() < 1.0 / 3; }

 private:
  boost::random::mt19937_64 engine_;
  boost::random::normal_distribution<double> normal_;
  boost::random::uniform_01<double> uniform_;
};

double log_normal(double mean, double sd, double normal) {
  if (!(mean > 0 && sd > 0)) return mean;
  const double variance = std::log1p(sd * sd / (mean * mean));
  return std::exp(std::log(mean) - 0.5 * variance + std::sqrt(variance) * normal);
}

Strip old_trench(const Crossing& crossing, Drawer& draw) {
  const double from = crossing.bore.launch.station.m, to = crossing.bore.exit.station.m;
  const double middle = from + (0.2 + 0.6 * draw.uniform()) * (to - from), skew = 1.0 * (draw.uniform() - 0.5);
  const double half = 0.3 + 0.2 * draw.uniform(), reach = 6;
  Strip trench;
  trench.name = "old trench";
  trench.soil = "trench-backfill";
  trench.outline = {{middle - half - skew * reach, -reach},
                    {middle + half - skew * reach, -reach},
                    {middle + half + skew * reach, reach},
                    {middle - half + skew * reach, reach}};
  trench.bottom_elevation = Length{crossing.bore.launch.elevation.m - 0.3};
  return trench;
}

/// The first arc length at which the bore touches a service, and which.
struct Strike {
  double s_m = 0;
  std::string utility;
};
std::optional<Strike> first_strike(const Crossing& truth, const BorePath& path, double bore_radius_m) {
  std::optional<Strike> first;
  for (const Utility& utility : truth.site.utilities) {
    if (!utility.outside_diameter || utility.status.value == UtilityStatus::proposed) continue;
    const double reach = bore_radius_m + 0.5 * utility.outside_diameter->m;
    for (std::size_t i = 1; i < path.points.size(); ++i) {
      const PathPoint &a = path.points[i - 1], &b = path.points[i];
      if (first && a.s_m >= first->s_m) break;
      bool touched = false;
      for (std::size_t k = 1; k < utility.path.size() && !touched; ++k) {
        const PathVertex &u = utility.path[k - 1], &v = utility.path[k];
        if (!u.z_m || !v.z_m) continue;
        const SegmentApproach near =
            nearest({a.x_m, a.y_m, a.z_m}, {b.x_m, b.y_m, b.z_m}, {u.x_m, u.y_m, *u.z_m}, {v.x_m, v.y_m, *v.z_m});
        touched = near.squared_distance_m2 <= reach * reach;
      }
      if (!touched) continue;
      first = Strike{a.s_m, utility.id};
      break;
    }
  }
  return first;
}

void cut_at(BorePath& path, double s_m) {
  const PathPoint end = point_at(path, s_m);
  std::erase_if(path.points, [&](const PathPoint& p) { return p.s_m >= s_m; });
  path.points.push_back(end);
  path.length_m = end.s_m;
}

class Maker {
 public:
  Maker(const Crossing& layout, const Tables& tables, const PracticeTruth& truth)
      : truth_(truth),
        real_(true_crossing(layout, truth)),
        ground_(real_.site, tables),
        tool_(tool_at_work(real_, tables).tool),
        draw_(truth.seed + 17),
        least_set_{limit_of(layout, tables, "set_least_m").value} {}

  PracticeBore run() {
    const Chance chance{truth_.seed, truth_.wander, truth_.soil_stones};
    made_.bore = true_bore(ground_, tool_, real_.bore, truth_.errors, chance, truth_.stones);
    BorePath& path = made_.bore.path;
    made_.end = path.ends == PathEnd::exit       ? PracticeEnd::arrived
                : path.ends == PathEnd::daylight ? PracticeEnd::daylight
                                                 : PracticeEnd::lost;
    if (path.points.size() < 2) return std::move(made_);
    advance_ = advance_along(ground_, tool_, path, {tool_.pressure, {truth_.field_factor}, least_set_});
    if (advance_.stop_s_m && *advance_.stop_s_m < path.length_m) {
      cut_at(path, *advance_.stop_s_m);
      made_.end = PracticeEnd::stuck;
    }
    if (const std::optional<Strike> strike = first_strike(real_, path, 0.5 * tool_.diameter.m)) {
      cut_at(path, strike->s_m);
      made_.end = PracticeEnd::struck;
      made_.struck = strike->utility;
    }
    std::erase_if(made_.bore.stones, [&](const StoneHit& stone) { return stone.s_m > path.length_m; });
    marks();
    return std::move(made_);
  }

 private:
  [[nodiscard]] double seconds_between(double from_m, double to_m) const {
    double seconds = 0;
    for (std::size_t i = 1; i < advance_.points.size(); ++i) {
      const AdvancePoint &a = advance_.points[i - 1], &b = advance_.points[i];
      const double low = std::max(from_m, a.s_m), high = std::min(to_m, b.s_m);
      if (high > low) seconds += (b.time.p50_s - a.time.p50_s) * (high - low) / (b.s_m - a.s_m);
    }
    return seconds;
  }

  /// Where a crew stops: while the tail can still be seen, and at the marks of the hose as the run sheet has them.
  [[nodiscard]] std::vector<double> stops() const {
    constexpr double least_apart_m = 0.25, before_face_m = 0.1;
    const double tool = tool_.length.m, behind = tool + real_.air.tail_fitting->m;
    const double spacing = std::max(mark_spacing(real_).m, least_apart_m);
    const double last = made_.bore.path.length_m - before_face_m;
    std::vector<double> noses{tool / 3, tool / 2, tool};
    for (int k = 1; k * spacing + behind < last; ++k) noses.push_back(k * spacing + behind);
    std::erase_if(noses, [&](double nose) { return !(nose < last); });
    return noses;
  }

  void marks() {
    std::vector<double> ends = stops();
    ends.push_back(made_.bore.path.length_m);
    double time = 0, from = 0;
    for (const double end : ends) {
      double seconds = seconds_between(from, end) * std::exp(tap_ln_sd * draw_.normal());
      int stones = 0;
      for (const StoneHit& stone : made_.bore.stones) stones += stone.s_m > from && stone.s_m <= end;
      seconds *= 1 + 2 * stones;  // pushed aside or broken
      time += seconds;
      if (end < ends.back()) made_.marks.push_back({end, time, sound(from, end, stones)});
      from = end;
    }
    made_.end_time_s = time;
  }

  [[nodiscard]] const Soil& soil_at(double s_m) const {
    const PathPoint p = point_at(made_.bore.path, s_m);
    return ground_.soil_at(p.x_m, p.y_m, p.z_m);
  }

  [[nodiscard]] Phrase sound(double from_m, double to_m, int stones) const {
    if (stones > 0) return translatable("a hard, ringing blow, then even again");
    // Over the first metres the body only now comes into the ground.
    const double before = from_m > 0 ? advance_rate(from_m) : 0, now = advance_rate(to_m);
    if (before > 0 && now > 1.6 * before) return translatable("the blows turn soft and quick");
    if (before > 0 && now < before / 1.6) return translatable("the blows turn hard and slow");
    const Soil& soil = soil_at(to_m);
    if (soil.drained) return translatable("dry, sharp blows, even");
    return soil.undrained_strength.Pa < soft_below_Pa ? translatable("soft thuds, even")
                                                      : translatable("dull blows, even");
  }
  [[nodiscard]] double advance_rate(double s_m) const {
    double rate = 0;
    for (const AdvancePoint& p : advance_.points)
      if (p.s_m <= s_m) rate = p.rate_m_s;
    return rate;
  }

  const PracticeTruth& truth_;
  Crossing real_;
  Ground ground_;
  Tool tool_;
  Drawer draw_;
  Length least_set_;
  Advance advance_;
  PracticeBore made_;
};

}  // namespace

PracticeTruth draw_truth(const Crossing& crossing, const Tables& tables, std::uint64_t seed) {
  Drawer draw(seed);
  PracticeTruth truth;
  truth.seed = seed;
  const Launch& launch = crossing.bore.launch;
  truth.errors = {launch.level_sd->rad * draw.normal(), launch.aim_sd->rad * draw.normal(),
                  launch.position_sd->m * draw.normal(), launch.position_sd->m * draw.normal()};
  const ModelConstants& model = crossing.bore.model;
  truth.steer_constant = log_normal(model.steer_constant->v, model.steer_constant_sd->v, draw.normal());
  truth.field_factor = model.field_factor->v * std::exp(0.35 * draw.normal());
  for (const Stratum& stratum : crossing.site.strata)
    if (draw.one_in_three()) {
      const std::vector<SoilGuess> guesses = soil_mistaken_for(stratum.soil, tables);
      const auto pick = static_cast<std::size_t>(draw.uniform() * static_cast<double>(guesses.size()));
      if (pick > 0 && pick < guesses.size()) truth.soils.push_back({stratum.id, guesses[pick].soil});
    }
  if (draw.one_in_three() && find_soil(tables, "trench-backfill")) truth.trenches.push_back(old_trench(crossing, draw));
  const double length = crossing.bore.exit.station.m - launch.station.m;
  if (draw.one_in_three())
    truth.stones.push_back({(0.15 + 0.6 * draw.uniform()) * length, 0.012 * draw.normal(), 0.012 * draw.normal()});
  if (!crossing.site.utilities.empty() && draw.one_in_three()) {
    const auto pick = static_cast<std::size_t>(draw.uniform() * static_cast<double>(crossing.site.utilities.size()));
    const std::size_t which = std::min(pick, crossing.site.utilities.size() - 1);
    const bool up = draw.uniform() < 0.5;
    const double size = draw.uniform() < 0.5 ? -0.3 : 0.3;
    truth.services.push_back({crossing.site.utilities[which].id, up ? 0 : size, up ? size : 0});
  }
  return truth;
}

Crossing true_crossing(const Crossing& crossing, const PracticeTruth& truth) {
  Crossing real = crossing;
  real.bore.model.steer_constant.set(Ratio{truth.steer_constant});
  for (const TrueSoil& soil : truth.soils)
    for (Stratum& stratum : real.site.strata)
      if (stratum.id == soil.stratum) {
        stratum.soil = soil.soil;
        stratum.values = {};  // the typed values were those of the class that it is not
      }
  for (const Strip& trench : truth.trenches) real.site.strips.push_back(trench);
  for (const MovedService& moved : truth.services)
    for (Utility& utility : real.site.utilities) {
      if (utility.id != moved.utility || utility.path.size() < 2) continue;
      const double dx = utility.path.back().x_m - utility.path.front().x_m;
      const double dy = utility.path.back().y_m - utility.path.front().y_m, run = std::hypot(dx, dy);
      for (PathVertex& v : utility.path) {
        if (run > 0) {
          v.x_m -= moved.across_m * dy / run;
          v.y_m += moved.across_m * dx / run;
        }
        if (v.z_m) *v.z_m += moved.up_m;
      }
    }
  return real;
}

PracticeBore practice_bore(const Crossing& layout, const Tables& tables, const PracticeTruth& truth) {
  return Maker(layout, tables, truth).run();
}

Playback true_playback(const PracticeBore& bore, const Tool& tool) {
  Playback played;
  const double length_m = bore.bore.path.points.empty() ? 0 : bore.bore.path.points.back().s_m;
  if (bore.bore.path.points.size() < 2 || !(bore.end_time_s > 0)) return played;
  played.path = bore.bore.path;
  played.tool_length_m = tool.length.m;
  played.tool_diameter_m = tool.diameter.m;
  std::vector<double> nose{0}, time{0};
  for (const PracticeMark& mark : bore.marks)
    if (mark.nose_m > nose.back() && mark.nose_m < length_m && mark.time_s < bore.end_time_s) {
      nose.push_back(mark.nose_m);
      time.push_back(std::max(mark.time_s, time.back()));
      played.marks_m.push_back(mark.nose_m);
    }
  nose.push_back(length_m);
  time.push_back(bore.end_time_s);
  played.time_s = times_between(played.path, nose, time);
  return played;
}

}  // namespace burrow
