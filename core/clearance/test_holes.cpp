#include "burrow/clearance/test_holes.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "burrow/clearance/mitre.h"

namespace burrow {

namespace {

constexpr double least_reach_m = 0.1;     // the hole itself
constexpr double most_reach_m = 10.0;     // what is further off nobody has seen
constexpr double least_hole_sd_m = 1e-4;  // keeps two holes at one place from being a contradiction of nothing
constexpr double likely_sd = 3;
constexpr double likely_at_most_m = 1.0;  // further off nobody calls it the same line unasked, however poor the record
constexpr int steps_a_reach = 8, steps_each_way = 20;  // beyond 2.5 reaches the correlation is below 0.002

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

double correlation(double apart_m, double reach_m) {
  const double d = apart_m / reach_m;
  return std::exp(-d * d);
}

/// One error along the line, given what the holes found of it.
class Conditioned {
 public:
  Conditioned(double sd_m, double reach_m, std::vector<Counted> holes, const std::vector<double>& found_m)
      : variance_(sd_m * sd_m), reach_m_(reach_m), holes_(std::move(holes)) {
    const auto n = static_cast<Eigen::Index>(holes_.size());
    if (n == 0) return;
    Eigen::MatrixXd covariance(n, n);
    Eigen::VectorXd found(n);
    for (Eigen::Index i = 0; i < n; ++i) {
      const Counted& a = holes_[static_cast<std::size_t>(i)];
      for (Eigen::Index k = 0; k < n; ++k)
        covariance(i, k) = variance_ * correlation(a.along_m - holes_[static_cast<std::size_t>(k)].along_m, reach_m_);
      covariance(i, i) += a.noise2_m2;
      found(i) = found_m[static_cast<std::size_t>(i)];
    }
    solver_.compute(covariance);
    weights_ = solver_.solve(found);
  }
  struct Error {
    double mean_m = 0, sd_m = 0;
  };
  [[nodiscard]] Error at(double along_m) const {
    if (holes_.empty()) return {0, std::sqrt(variance_)};
    Eigen::VectorXd k(static_cast<Eigen::Index>(holes_.size()));
    for (Eigen::Index i = 0; i < k.size(); ++i)
      k(i) = variance_ * correlation(along_m - holes_[static_cast<std::size_t>(i)].along_m, reach_m_);
    const double left = variance_ - k.dot(solver_.solve(k));
    return {k.dot(weights_), std::sqrt(std::clamp(left, 0.0, variance_))};
  }

 private:
  double variance_, reach_m_;
  std::vector<Counted> holes_;
  Eigen::LDLT<Eigen::MatrixXd> solver_;
  Eigen::VectorXd weights_;
};

HoleRemark remark(const TestHole& hole, HoleTrouble trouble, double apart_m = 0, double likely_m = 0) {
  return {hole.id, trouble, hole.station.m, hole.offset.m, apart_m, likely_m};
}

/// The more contradicting of the two directions, if any is.
void compare(PinnedLine& answer, const TestHole& hole, HoleTrouble trouble, double lateral_m, double lateral2_m2,
             double vertical_m, double vertical2_m2) {
  const double lateral_likely = std::min(likely_sd * std::sqrt(lateral2_m2), likely_at_most_m),
               vertical_likely = std::min(likely_sd * std::sqrt(vertical2_m2), likely_at_most_m);
  const double lateral = std::abs(lateral_m) / lateral_likely, vertical = std::abs(vertical_m) / vertical_likely;
  if (!(std::max(lateral, vertical) > 1)) return;
  const bool across = lateral > vertical;
  answer.remarks.push_back(remark(hole, trouble, across ? std::abs(lateral_m) : std::abs(vertical_m),
                                  across ? lateral_likely : vertical_likely));
}

void remark_contradictions(PinnedLine& answer, const std::vector<Counted>& holes, double lateral2, double vertical2,
                           double reach_m) {
  for (std::size_t i = 0; i < holes.size(); ++i) {
    const Counted& a = holes[i];
    compare(answer, *a.hole, HoleTrouble::off_record, a.lateral_m, lateral2 + a.noise2_m2, a.vertical_m.value_or(0),
            vertical2 + a.noise2_m2);
    for (std::size_t k = 0; k < i; ++k) {
      const Counted& b = holes[k];
      const double differ = 2 * (1 - correlation(a.along_m - b.along_m, reach_m)), noise2 = a.noise2_m2 + b.noise2_m2;
      const bool both = a.vertical_m && b.vertical_m;
      compare(answer, *a.hole, HoleTrouble::holes_disagree, a.lateral_m - b.lateral_m, differ * lateral2 + noise2,
              both ? *a.vertical_m - *b.vertical_m : a.centre_m - b.centre_m, differ * vertical2 + noise2);
    }
  }
}

/// Where the new line has its vertices: those of the record, and around each hole.
std::vector<double> places(const Record& record, const std::vector<Counted>& holes, double reach_m) {
  std::vector<double> added;
  for (const Counted& hole : holes)
    for (int k = -steps_each_way; k <= steps_each_way; ++k) {
      const double along = hole.along_m + reach_m * k / steps_a_reach;
      if (along > 0 && along < record.length()) added.push_back(along);
    }
  std::sort(added.begin(), added.end());
  return added;
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

PinnedLine pinned_line(const Utility& utility, const LocationSd& sd, const std::vector<TestHole>& holes) {
  PinnedLine answer;
  if (utility.path.size() < 2) return answer;
  const Record record(utility.path);
  if (!(record.length() > 0)) return answer;
  std::vector<Counted> counted;
  double reach = std::numeric_limits<double>::infinity();
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
      Counted& one = counted.emplace_back(Counted{&hole, 0, noise * noise, 0, *centre, {}});
      record.take(one, hole.station.m, hole.offset.m);
      reach = std::min(reach, std::clamp(hole.reach->m, least_reach_m, most_reach_m));
    }
  }
  if (counted.empty()) return answer;
  const double lateral2 = *sd.lateral_m * *sd.lateral_m, vertical2 = *sd.vertical_m * *sd.vertical_m;
  remark_contradictions(answer, counted, lateral2, vertical2, reach);

  std::vector<double> found_lateral, found_vertical;
  std::vector<Counted> with_record;
  for (const Counted& hole : counted) {
    answer.holes_along_m.push_back(hole.along_m);
    found_lateral.push_back(hole.lateral_m);
    if (!hole.vertical_m) continue;
    with_record.push_back(hole);
    found_vertical.push_back(*hole.vertical_m);
  }
  const Conditioned lateral(*sd.lateral_m, reach, counted, found_lateral);
  const Conditioned vertical(*sd.vertical_m, reach, with_record, found_vertical);

  const auto add = [&](PathVertex at, const LevelNormal& n, double along_m) {
    const auto across = lateral.at(along_m);
    const auto up = vertical.at(along_m);
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
        up_sd = std::sqrt(2 * vertical2 * (1 - correlation(apart, reach)) + nearest->noise2_m2);
      }
    }
    answer.line.push_back({at, across.sd_m, up_sd});
  };
  const std::vector<double> added = places(record, counted, reach);
  auto next = added.begin();
  for (std::size_t i = 0; i < utility.path.size(); ++i) {
    const bool first = i == 0, last = i + 1 == utility.path.size();
    const LevelNormal before = record.normal(first ? 0 : i - 1), after = record.normal(last ? i - 1 : i);
    const double here = record.along()[i];
    add(utility.path[i], mitre(before, after), here);
    if (last) break;
    for (; next != added.end() && *next < record.along()[i + 1]; ++next) {
      const double previous = next == added.begin() ? -1.0 : *(next - 1);
      if (*next - std::max(previous, here) > 1e-6) add(record.at(i, record.share(i, *next)), record.normal(i), *next);
    }
  }
  return answer;
}

}  // namespace burrow
