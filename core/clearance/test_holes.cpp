#include "burrow/clearance/test_holes.h"

#include <algorithm>
#include <array>
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

/// From the least to the greatest of some numbers; of none: nothing.
struct Range {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  void take(double value) {
    low = std::min(low, value);
    high = std::max(high, value);
  }
  [[nodiscard]] bool empty() const { return low > high; }
  [[nodiscard]] double farthest_from(double value) const {
    return empty() ? 0 : std::max(std::abs(value - low), std::abs(high - value));
  }
  [[nodiscard]] double nearest_to(double value) const { return std::max({low - value, value - high, 0.0}); }
};

/// What holds for each of some holes that stand one after the other in the list.
struct Block {
  Range along_m, lateral_m, noise2_m2;
  Range vertical_m, centre_m, centre_alone_m;  ///< the last of those without a vertical one
  void take(const Counted& hole) {
    along_m.take(hole.along_m);
    lateral_m.take(hole.lateral_m);
    noise2_m2.take(hole.noise2_m2);
    centre_m.take(hole.centre_m);
    if (hole.vertical_m)
      vertical_m.take(*hole.vertical_m);
    else
      centre_alone_m.take(hole.centre_m);
  }
};

/// Each hole against the record and against those before it; of many holes each names only the worst.
class Contradictions {
 public:
  Contradictions(PinnedLine& answer, const std::vector<Counted>& holes, double lateral2, double vertical2,
                 double reach_m)
      : answer_(answer), holes_(holes), lateral2_(lateral2), vertical2_(vertical2), reach_m_(reach_m) {}

  void remark_all() {
    const bool many = holes_.size() > ConditionedByHoles::few_holes;
    for (std::size_t i = 0; i < holes_.size(); ++i) {
      const Counted& a = holes_[i];
      say(answer_, *a.hole, HoleTrouble::off_record,
          compared(a.lateral_m, lateral2_ + a.noise2_m2, a.vertical_m.value_or(0), vertical2_ + a.noise2_m2));
      if (!many) {
        for (std::size_t k = 0; k < i; ++k) say(answer_, *a.hole, HoleTrouble::holes_disagree, between(a, holes_[k]));
        continue;
      }
      say(answer_, *a.hole, HoleTrouble::holes_disagree, worst_before(i));
      if (i % a_block == 0) blocks_.emplace_back();
      blocks_.back().take(a);
    }
  }

 private:
  static constexpr std::size_t a_block = 16;

  [[nodiscard]] Contradiction between(const Counted& a, const Counted& b) const {
    const bool both = a.vertical_m && b.vertical_m;
    const double up = both ? *a.vertical_m - *b.vertical_m : a.centre_m - b.centre_m;
    const double noise2 = a.noise2_m2 + b.noise2_m2;
    const double differ = 2 * (1 - hole_correlation(a.along_m - b.along_m, reach_m_));
    return compared(a.lateral_m - b.lateral_m, differ * lateral2_ + noise2, up, differ * vertical2_ + noise2);
  }

  /// Whether nothing so far apart is worse than what was found, and nothing to be said, at least at this distance along
  /// the line: 2 (1 − ρ) is 2 d²/(1 + d²) or more. So most pairs of many holes need no exponential, most blocks of them
  /// no look at each.
  [[nodiscard]] bool no_worse(const Contradiction& worst, double across_m, double up_m, double noise2,
                              double along_m) const {
    const double d = along_m / reach_m_, least = 2 * d * d / (1 + d * d);
    const double counts = std::max(1.0, worst.ratio * worst.ratio), allowed2 = likely_sd * likely_sd * counts;
    const double at_most2 = counts * likely_at_most_m * likely_at_most_m;
    return across_m * across_m <= std::min(allowed2 * (least * lateral2_ + noise2), at_most2) &&
           up_m * up_m <= std::min(allowed2 * (least * vertical2_ + noise2), at_most2);
  }

  [[nodiscard]] Contradiction worst_before(std::size_t i) const {
    const Counted& a = holes_[i];
    Contradiction worst;
    for (std::size_t from = 0; from < i; from += a_block) {
      const Block& block = blocks_[from / a_block];
      const double up = a.vertical_m ? std::max(block.vertical_m.farthest_from(*a.vertical_m),
                                                block.centre_alone_m.farthest_from(a.centre_m))
                                     : block.centre_m.farthest_from(a.centre_m);
      if (no_worse(worst, block.lateral_m.farthest_from(a.lateral_m), up, a.noise2_m2 + block.noise2_m2.low,
                   block.along_m.nearest_to(a.along_m)))
        continue;
      for (std::size_t k = from; k < std::min(from + a_block, i); ++k) {
        const Counted& b = holes_[k];
        const bool both = a.vertical_m && b.vertical_m;
        if (no_worse(worst, a.lateral_m - b.lateral_m, both ? *a.vertical_m - *b.vertical_m : a.centre_m - b.centre_m,
                     a.noise2_m2 + b.noise2_m2, a.along_m - b.along_m))
          continue;
        const Contradiction found = between(a, b);
        if (found.ratio > worst.ratio) worst = found;
      }
    }
    return worst;
  }

  PinnedLine& answer_;
  const std::vector<Counted>& holes_;
  double lateral2_, vertical2_, reach_m_;
  std::vector<Block> blocks_;  // of those looked at so far
};

/// A vertex added to the line of the record.
struct Place {
  double along_m = 0;
  const Counted* alone = nullptr;  ///< far from the bore: the hole that lies there, which speaks for itself
};

/// The places around holes, one way or the other, in order along the line.
std::vector<Place> places_around(const std::vector<double>& holes_along_m, const Record& record, double reach_m) {
  std::vector<Place> places;
  for (const double hole : holes_along_m)
    for (int k = -steps_each_way; k <= steps_each_way; ++k) {
      const double along = hole + reach_m * k / steps_a_reach;
      if (along > 0 && along < record.length()) places.push_back({along});
    }
  std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.along_m < b.along_m; });
  return places;
}

/// The same around many holes, and those that stand alone: from one place on to the next that is a fortieth of the
/// reach further or more. The places of all holes at the same step follow one another as the holes do: of each step
/// only the next one is looked at, and nothing has to be sorted but the holes.
std::vector<Place> places_apart(std::vector<double> holes_along_m, std::vector<Place> alone, const Record& record,
                                double reach_m) {
  std::sort(holes_along_m.begin(), holes_along_m.end());
  std::stable_sort(alone.begin(), alone.end(), [](const Place& a, const Place& b) { return a.along_m < b.along_m; });
  const double apart = closest_of_many * reach_m;
  std::array<std::size_t, 2 * steps_each_way + 1> next{};  // hole, of each step
  std::size_t next_alone = 0;
  std::vector<Place> places;
  const auto passed = [&](double along) {
    return !(along > 0 && (places.empty() || along - places.back().along_m >= apart));
  };
  while (true) {
    Place nearest{record.length()};
    for (int k = -steps_each_way; std::size_t & hole : next) {
      const auto along = [&, step = k++] { return holes_along_m[hole] + reach_m * step / steps_a_reach; };
      while (hole < holes_along_m.size() && passed(along())) ++hole;
      if (hole < holes_along_m.size() && along() < nearest.along_m) nearest = {along()};
    }
    while (next_alone < alone.size() && passed(alone[next_alone].along_m)) ++next_alone;
    if (next_alone < alone.size() && alone[next_alone].along_m < nearest.along_m) nearest = alone[next_alone];
    if (!(nearest.along_m < record.length())) return places;
    places.push_back(nearest);
  }
}

/// Where the new line has its vertices beside those of the record: around each hole. Around many holes they are not
/// closer than a fortieth of the reach, and a hole that lies too far from the bore to matter has one.
std::vector<Place> places(const Record& record, const std::vector<Counted>& holes, double reach_m,
                          const NearBore* bore) {
  const bool many = holes.size() > ConditionedByHoles::few_holes;
  double aside = 0;  // how far holes move the line
  for (const Counted& hole : holes)
    aside = std::max({aside, std::abs(hole.lateral_m), std::abs(hole.vertical_m.value_or(0))});
  const double far = steps_each_way * reach_m / steps_a_reach + 3 * aside;
  std::vector<double> around;
  std::vector<Place> alone;
  for (const Counted& hole : holes) {
    if (many && bore && bore->apart_m(hole.hole->station.m, hole.hole->offset.m) > bore->matters_within_m + far)
      alone.push_back({hole.along_m, &hole});
    else
      around.push_back(hole.along_m);
  }
  return many ? places_apart(std::move(around), std::move(alone), record, reach_m)
              : places_around(around, record, reach_m);
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

/// By this hole alone.
ConditionedByHoles::Error by_one_hole(double variance_m2, const Counted& hole, double found_m) {
  const double share = variance_m2 / (variance_m2 + hole.noise2_m2);
  return {share * found_m, std::sqrt(share * hole.noise2_m2)};
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
  const Counting counted = counted_of(utility, sd, holes, record, answer);
  if (counted.holes.empty()) return answer;
  const double lateral2 = *sd.lateral_m * *sd.lateral_m, vertical2 = *sd.vertical_m * *sd.vertical_m;
  Contradictions(answer, counted.holes, lateral2, vertical2, counted.reach_m).remark_all();
  std::vector<HoleError> across_line, in_height;
  for (const Counted& hole : counted.holes) {
    answer.holes_along_m.push_back(hole.along_m);
    across_line.push_back({hole.along_m, hole.noise2_m2, hole.lateral_m});
    if (hole.vertical_m) in_height.push_back({hole.along_m, hole.noise2_m2, *hole.vertical_m});
  }
  ConditionedByHoles lateral(*sd.lateral_m, counted.reach_m, record.length(), across_line);
  ConditionedByHoles vertical(*sd.vertical_m, counted.reach_m, record.length(), in_height,
                              in_height.size() == across_line.size() ? &lateral : nullptr);

  const auto add = [&](PathVertex at, const LevelNormal& n, double along_m, const Counted* hole) {
    const auto across = hole ? by_one_hole(lateral2, *hole, hole->lateral_m) : lateral.at(along_m);
    const auto up = hole && hole->vertical_m ? by_one_hole(vertical2, *hole, *hole->vertical_m) : vertical.at(along_m);
    double up_sd = up.sd_m;
    at.x_m += across.mean_m * n.x;
    at.y_m += across.mean_m * n.y;
    if (at.z_m) {
      *at.z_m += up.mean_m;
    } else {
      const auto nearest =
          std::min_element(counted.holes.begin(), counted.holes.end(), [&](const Counted& a, const Counted& b) {
            return std::abs(a.along_m - along_m) < std::abs(b.along_m - along_m);
          });
      const double apart = nearest->along_m - along_m;
      if (std::abs(apart) <= counted.reach_m * (1 + 1e-9)) {
        at.z_m = nearest->centre_m;
        up_sd = std::sqrt(2 * vertical2 * (1 - hole_correlation(apart, counted.reach_m)) + nearest->noise2_m2);
      }
    }
    answer.line.push_back({at, across.sd_m, up_sd});
  };
  const std::vector<Place> added = places(record, counted.holes, counted.reach_m, bore);
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
