#include "burrow/clearance/test_holes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "burrow/clearance/offset_line.h"
#include "conditioned.h"

namespace burrow {

namespace {

constexpr double least_reach_m = 0.1;     // the hole itself
constexpr double most_reach_m = 10.0;     // what is further off nobody has seen
constexpr double least_hole_sd_m = 1e-4;  // keeps two holes at one place from being a contradiction of nothing
constexpr double likely_sd = 3;
constexpr double likely_at_most_m = 1.0;  // further off nobody calls it the same line unasked, however poor the record
constexpr int steps_a_reach = 8, steps_each_way = 20;  // beyond 2.5 reaches the correlation is below 0.002
constexpr double closest_of_many = 1.0 / 40;           // of the reach, between places around many holes

struct Counted {
  const TestHole* hole;
  double along_m, noise2_m2;
  double lateral_m;                  // from the record
  double centre_m;                   // elevation found
  std::optional<double> vertical_m;  // from the record; empty where it has no elevation
};

/// The line of the record by its length in plan.
class Record {
 public:
  explicit Record(const std::vector<PathVertex>& path) : path_(path), along_m_(path.size(), 0) {
    for (std::size_t i = 1; i < path.size(); ++i)
      along_m_[i] = along_m_[i - 1] + std::hypot(path[i].x_m - path[i - 1].x_m, path[i].y_m - path[i - 1].y_m);
  }
  [[nodiscard]] const std::vector<double>& along() const { return along_m_; }
  [[nodiscard]] double length() const { return along_m_.back(); }
  [[nodiscard]] LevelNormal normal(std::size_t segment) const {
    return level_normal(path_[segment], path_[segment + 1]);
  }
  [[nodiscard]] PathVertex at(std::size_t segment, double t) const {
    const PathVertex &a = path_[segment], &b = path_[segment + 1];
    PathVertex v{a.x_m + t * (b.x_m - a.x_m), a.y_m + t * (b.y_m - a.y_m), std::nullopt};
    if (a.z_m && b.z_m) v.z_m = *a.z_m + t * (*b.z_m - *a.z_m);
    return v;
  }
  [[nodiscard]] double share(std::size_t segment, double along_m) const {
    const double length = along_m_[segment + 1] - along_m_[segment];
    return length > 0 ? std::clamp((along_m - along_m_[segment]) / length, 0.0, 1.0) : 0;
  }

  void take(Counted& hole, double x_m, double y_m) const {
    double least2 = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i + 1 < path_.size(); ++i) {
      const double dx = path_[i + 1].x_m - path_[i].x_m, dy = path_[i + 1].y_m - path_[i].y_m;
      const double length2 = dx * dx + dy * dy;
      if (!(length2 > 0)) continue;
      const double t = std::clamp(((x_m - path_[i].x_m) * dx + (y_m - path_[i].y_m) * dy) / length2, 0.0, 1.0);
      const PathVertex foot = at(i, t);
      const double gap_x = x_m - foot.x_m, gap_y = y_m - foot.y_m, gap2 = gap_x * gap_x + gap_y * gap_y;
      if (!(gap2 < least2)) continue;
      least2 = gap2;
      const LevelNormal n = normal(i);
      hole.along_m = along_m_[i] + t * std::sqrt(length2);
      hole.lateral_m = gap_x * n.x + gap_y * n.y;
      hole.vertical_m.reset();
      if (foot.z_m) hole.vertical_m = hole.centre_m - *foot.z_m;
    }
  }

 private:
  const std::vector<PathVertex>& path_;
  std::vector<double> along_m_;
};

HoleRemark remark(const TestHole& hole, HoleTrouble trouble, double apart_m = 0, double likely_m = 0) {
  return {hole.id, trouble, hole.station.m, hole.offset.m, apart_m, likely_m};
}

/// How far apart two places are, against what is to be expected: the more contradicting of the two directions.
struct Contradiction {
  double apart_m = 0, likely_m = 0, ratio = 0;
};

Contradiction compared(double lateral_m, double lateral2_m2, double vertical_m, double vertical2_m2) {
  const double lateral_likely = std::min(likely_sd * std::sqrt(lateral2_m2), likely_at_most_m),
               vertical_likely = std::min(likely_sd * std::sqrt(vertical2_m2), likely_at_most_m);
  const double lateral = std::abs(lateral_m) / lateral_likely, vertical = std::abs(vertical_m) / vertical_likely;
  if (lateral > vertical) return {std::abs(lateral_m), lateral_likely, lateral};
  return {std::abs(vertical_m), vertical_likely, vertical};
}

void say(PinnedLine& answer, const TestHole& hole, HoleTrouble trouble, const Contradiction& found) {
  if (found.ratio > 1) answer.remarks.push_back(remark(hole, trouble, found.apart_m, found.likely_m));
}

/// Each hole against the record and against those before it; of many holes each names only the worst.
void remark_contradictions(PinnedLine& answer, const std::vector<Counted>& holes, double lateral2, double vertical2,
                           double reach_m) {
  const bool many = holes.size() > ConditionedByHoles::few_holes;
  for (std::size_t i = 0; i < holes.size(); ++i) {
    const Counted& a = holes[i];
    say(answer, *a.hole, HoleTrouble::off_record,
        compared(a.lateral_m, lateral2 + a.noise2_m2, a.vertical_m.value_or(0), vertical2 + a.noise2_m2));
    Contradiction worst;
    for (std::size_t k = 0; k < i; ++k) {
      const Counted& b = holes[k];
      const bool both = a.vertical_m && b.vertical_m;
      const double across = a.lateral_m - b.lateral_m,
                   up = both ? *a.vertical_m - *b.vertical_m : a.centre_m - b.centre_m;
      const double noise2 = a.noise2_m2 + b.noise2_m2;
      // 2 (1 − ρ) is 2 d²/(1 + d²) or more: most pairs of many holes need no exponential.
      const double d = (a.along_m - b.along_m) / reach_m, least = 2 * d * d / (1 + d * d);
      const double allowed2 = likely_sd * likely_sd * std::max(1.0, worst.ratio * worst.ratio);
      const double at_most2 = std::max(1.0, worst.ratio * worst.ratio) * likely_at_most_m * likely_at_most_m;
      if (many && across * across <= std::min(allowed2 * (least * lateral2 + noise2), at_most2) &&
          up * up <= std::min(allowed2 * (least * vertical2 + noise2), at_most2))
        continue;
      const double differ = 2 * (1 - hole_correlation(a.along_m - b.along_m, reach_m));
      const Contradiction found = compared(across, differ * lateral2 + noise2, up, differ * vertical2 + noise2);
      if (!many)
        say(answer, *a.hole, HoleTrouble::holes_disagree, found);
      else if (found.ratio > worst.ratio)
        worst = found;
    }
    say(answer, *a.hole, HoleTrouble::holes_disagree, worst);
  }
}

/// A vertex added to the line of the record.
struct Place {
  double along_m = 0;
  const Counted* alone = nullptr;  ///< far from the bore: the hole that lies there, which speaks for itself
};

/// Where the new line has its vertices beside those of the record: around each hole. Around many holes they are not
/// closer than a fortieth of the reach, and a hole that lies too far from the bore to matter has one.
std::vector<Place> places(const Record& record, const std::vector<Counted>& holes, double reach_m,
                          const NearBore* bore) {
  const bool many = holes.size() > ConditionedByHoles::few_holes;
  double aside = 0;  // how far holes move the line
  for (const Counted& hole : holes)
    aside = std::max({aside, std::abs(hole.lateral_m), std::abs(hole.vertical_m.value_or(0))});
  std::vector<Place> added;
  for (const Counted& hole : holes) {
    const double far = steps_each_way * reach_m / steps_a_reach + 3 * aside;
    if (many && bore && bore->apart_m(hole.hole->station.m, hole.hole->offset.m) > bore->matters_within_m + far) {
      added.push_back({hole.along_m, &hole});
      continue;
    }
    for (int k = -steps_each_way; k <= steps_each_way; ++k) {
      const double along = hole.along_m + reach_m * k / steps_a_reach;
      if (along > 0 && along < record.length()) added.push_back({along});
    }
  }
  std::sort(added.begin(), added.end(), [](const Place& a, const Place& b) { return a.along_m < b.along_m; });
  if (!many) return added;
  std::vector<Place> thinned;
  for (const Place& place : added)
    if (place.along_m > 0 && place.along_m < record.length() &&
        (thinned.empty() || place.along_m - thinned.back().along_m >= closest_of_many * reach_m))
      thinned.push_back(place);
  return thinned;
}

}  // namespace

std::optional<double> centre_of(const TestHole& hole, const Utility& utility) {
  if (!hole.elevation) return std::nullopt;
  if (*hole.level == LevelMeant::centre) return hole.elevation->m;
  if (!utility.outside_diameter) return std::nullopt;
  const double half = utility.outside_diameter->m / 2;
  return hole.elevation->m + (*hole.level == LevelMeant::crown ? -half : half);
}

double along_in_plan(const std::vector<PathVertex>& line, const PathVertex& point) {
  Counted place{nullptr, 0, 0, 0, 0, {}};
  Record(line).take(place, point.x_m, point.y_m);
  return place.along_m;
}

std::optional<double> elevation_on(const std::vector<PathVertex>& line, const PathVertex& point) {
  if (line.empty()) return std::nullopt;
  const Record record(line);
  if (!(record.length() > 0)) return line.front().z_m;
  const double along = along_in_plan(line, point);
  std::size_t segment = 0;
  while (segment + 2 < line.size() && record.along()[segment + 1] < along) ++segment;
  return record.at(segment, record.share(segment, along)).z_m;
}

namespace {

struct Counting {
  std::vector<Counted> holes;
  double reach_m = std::numeric_limits<double>::infinity();  ///< the least of theirs
};

/// The holes of a utility that count; why the others do not goes into the remarks.
Counting counted_of(const Utility& utility, const LocationSd& sd, const std::vector<TestHole>& holes,
                    const Record& record, PinnedLine& answer) {
  Counting counting;
  for (const TestHole& hole : holes) {
    if (hole.utility != utility.id) continue;
    const std::optional<double> centre = centre_of(hole, utility);
    if (!hole.elevation)
      answer.remarks.push_back(remark(hole, HoleTrouble::no_level));
    else if (!centre)
      answer.remarks.push_back(remark(hole, HoleTrouble::no_diameter));
    else if (!sd.lateral_m || !sd.vertical_m)
      answer.remarks.push_back(remark(hole, HoleTrouble::no_location_error));
    else {
      const double noise = std::max(hole.sd->m, least_hole_sd_m);
      Counted& one = counting.holes.emplace_back(Counted{&hole, 0, noise * noise, 0, *centre, {}});
      record.take(one, hole.station.m, hole.offset.m);
      counting.reach_m = std::min(counting.reach_m, std::clamp(hole.reach->m, least_reach_m, most_reach_m));
    }
  }
  return counting;
}

}  // namespace

double NearBore::apart_m(double x_m, double y_m) const {
  const auto outside = [](double at, double low, double high) { return std::max({low - at, at - high, 0.0}); };
  return std::hypot(outside(x_m, from_x_m, to_x_m), outside(y_m, from_y_m, to_y_m));
}

PinnedLine pinned_line(const Utility& utility, const LocationSd& sd, const std::vector<TestHole>& holes,
                       const NearBore* bore) {
  PinnedLine answer;
  if (utility.path.size() < 2) return answer;
  const Record record(utility.path);
  if (!(record.length() > 0)) return answer;
  const Counting counting = counted_of(utility, sd, holes, record, answer);
  const std::vector<Counted>& counted = counting.holes;
  const double reach = counting.reach_m;
  if (counted.empty()) return answer;
  const double lateral2 = *sd.lateral_m * *sd.lateral_m, vertical2 = *sd.vertical_m * *sd.vertical_m;
  remark_contradictions(answer, counted, lateral2, vertical2, reach);

  std::vector<HoleError> across_line, in_height;
  for (const Counted& hole : counted) {
    answer.holes_along_m.push_back(hole.along_m);
    across_line.push_back({hole.along_m, hole.noise2_m2, hole.lateral_m});
    if (hole.vertical_m) in_height.push_back({hole.along_m, hole.noise2_m2, *hole.vertical_m});
  }
  ConditionedByHoles lateral(*sd.lateral_m, reach, across_line), vertical(*sd.vertical_m, reach, in_height);
  const auto alone = [](double variance, const Counted& hole, double found_m) {
    const double share = variance / (variance + hole.noise2_m2);
    return ConditionedByHoles::Error{share * found_m, std::sqrt(share * hole.noise2_m2)};
  };

  const auto add = [&](PathVertex at, const LevelNormal& n, double along_m, const Counted* hole) {
    const auto across = hole ? alone(lateral2, *hole, hole->lateral_m) : lateral.at(along_m);
    const auto up = hole && hole->vertical_m ? alone(vertical2, *hole, *hole->vertical_m) : vertical.at(along_m);
    double up_sd = up.sd_m;
    at.x_m += across.mean_m * n.x;
    at.y_m += across.mean_m * n.y;
    if (at.z_m) {
      *at.z_m += up.mean_m;
    } else {
      const auto nearest = std::min_element(counted.begin(), counted.end(), [&](const Counted& a, const Counted& b) {
        return std::abs(a.along_m - along_m) < std::abs(b.along_m - along_m);
      });
      const double apart = nearest->along_m - along_m;
      if (std::abs(apart) <= reach * (1 + 1e-9)) {
        at.z_m = nearest->centre_m;
        up_sd = std::sqrt(2 * vertical2 * (1 - hole_correlation(apart, reach)) + nearest->noise2_m2);
      }
    }
    answer.line.push_back({at, across.sd_m, up_sd});
  };
  const std::vector<Place> added = places(record, counted, reach, bore);
  auto next = added.begin();
  for (std::size_t i = 0; i < utility.path.size(); ++i) {
    const bool first = i == 0, last = i + 1 == utility.path.size();
    const LevelNormal before = record.normal(first ? 0 : i - 1), after = record.normal(last ? i - 1 : i);
    const double here = record.along()[i];
    add(utility.path[i], joint_normal(before, after), here, nullptr);
    if (last) break;
    for (; next != added.end() && next->along_m < record.along()[i + 1]; ++next) {
      const double along = next->along_m, previous = next == added.begin() ? -1.0 : (next - 1)->along_m;
      if (along - std::max(previous, here) > 1e-6)
        add(record.at(i, record.share(i, along)), record.normal(i), along, next->alone);
    }
  }
  return answer;
}

}  // namespace burrow
