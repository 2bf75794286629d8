#include "utility_course.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/clearance/contact.h"
#include "burrow/clearance/course.h"
#include "burrow/crossing/statement.h"

namespace burrow {

namespace {

const double cone_cosine = std::cos(pi / 4), cone_sine = std::sin(pi / 4);  // off its last course
constexpr double pit_step_m = 0.5;
constexpr double same_place_m = 1e-9;

struct Arrow {
  double x = 0, y = 0, z = 0;
  [[nodiscard]] double length() const { return std::sqrt(x * x + y * y + z * z); }
};

/// An end of a line: where, and which way it was going; no direction: any.
struct End {
  Point3 at;
  bool level_known = true;
  Arrow course;           ///< level where its level is not known: as seen from above
  double straight_m = 0;  ///< length of that
};

End end_of(const std::vector<PathVertex>& path, bool last) {
  const PathVertex& end = last ? path.back() : path.front();
  End found{{end.x_m, end.y_m, end.z_m.value_or(0)}, end.z_m.has_value(), {}};
  // A vertex entered twice shows no direction: the last one that lies elsewhere does.
  for (std::size_t i = 1; i < path.size() && !(found.straight_m > same_place_m); ++i) {
    const PathVertex& before = last ? path[path.size() - 1 - i] : path[i];
    found.course = {end.x_m - before.x_m, end.y_m - before.y_m, 0};
    if (end.z_m && before.z_m) found.course.z = *end.z_m - *before.z_m;
    found.straight_m = found.course.length();
  }
  return found;
}

/// Whether the line may go on to within `radius_m` of a place. Without a level of its own: as seen from above.
bool may_reach(const End& end, Point3 place, double radius_m) {
  const Arrow& course = end.course;
  const Arrow to{place.x_m - end.at.x_m, place.y_m - end.at.y_m, end.level_known ? place.z_m - end.at.z_m : 0};
  const double far = to.length();
  if (far <= radius_m) return true;
  if (far - radius_m > goes_on_m) return false;
  if (!(end.straight_m > same_place_m)) return true;
  // The angle off the course, less the half angle under which the reach is seen, is within the cone: by cosines.
  const double cosine = (to.x * course.x + to.y * course.y + to.z * course.z) / (far * end.straight_m);
  const double sine_seen = radius_m / far, cosine_seen = std::sqrt(1 - sine_seen * sine_seen);
  return cosine >= cone_cosine * cosine_seen - cone_sine * sine_seen;
}

bool reaches_band(const CheckRun& run, const End& end, double radius_m, double utility_sd_m) {
  const auto& points = run.answer.bore.points;
  return std::any_of(points.begin(), points.end(), [&](const PathPoint& p) {
    const double bore_sd_m = std::max(p.sd_lateral_m, p.sd_vertical_m);
    const double sd_m = std::sqrt(bore_sd_m * bore_sd_m + utility_sd_m * utility_sd_m);  // at every point: no hypot
    return may_reach(end, {p.x_m, p.y_m, p.z_m}, radius_m + band_99_sd * sd_m);
  });
}

bool reaches_pit(const PitShape& pit, const End& end, double sd_m) {
  for (const PlanPoint& corner : pit.footprint) {
    const double level = std::max(end.at.z_m, pit.floor_elevation_m);
    if (may_reach(end, {corner.x_m, corner.y_m, level}, pit_step_m + band_99_sd * sd_m)) return true;
  }
  if (pit.footprint.empty()) return false;
  PlanPoint middle{};
  for (const PlanPoint& corner : pit.footprint) {
    middle.x_m += corner.x_m / static_cast<double>(pit.footprint.size());
    middle.y_m += corner.y_m / static_cast<double>(pit.footprint.size());
  }
  double half = 0;
  for (const PlanPoint& corner : pit.footprint)
    half = std::max(half, std::hypot(corner.x_m - middle.x_m, corner.y_m - middle.y_m));
  return may_reach(end, {middle.x_m, middle.y_m, std::max(end.at.z_m, pit.floor_elevation_m)},
                   half + band_99_sd * sd_m);
}

double distance_to_segment(const PlanPoint& p, const PlanPoint& a, const PlanPoint& b) {
  const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, length2 = dx * dx + dy * dy;
  const double t = length2 > 0 ? std::clamp(((p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy) / length2, 0.0, 1.0) : 0.0;
  return std::hypot(p.x_m - a.x_m - t * dx, p.y_m - a.y_m - t * dy);
}

double turn(const PlanPoint& a, const PlanPoint& b, const PlanPoint& p) {
  return (b.x_m - a.x_m) * (p.y_m - a.y_m) - (b.y_m - a.y_m) * (p.x_m - a.x_m);
}

}  // namespace

double plan_distance(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c, const PlanPoint& d) {
  const auto apart = [](double one, double other) { return (one > 0) != (other > 0); };
  if (apart(turn(a, b, c), turn(a, b, d)) && apart(turn(c, d, a), turn(c, d, b))) return 0;
  return std::min({distance_to_segment(a, c, d), distance_to_segment(b, c, d), distance_to_segment(c, a, b),
                   distance_to_segment(d, a, b)});
}

WorkLine work_line(const CheckRun& run) {
  const Bore& bore = run.crossing.bore;
  WorkLine line{{std::min(run.answer.launch_pit.floor_from_m, bore.launch.station.m), bore.launch.offset->m},
                {std::max(run.answer.exit_pit.floor_to_m, bore.exit.station.m), bore.exit.offset->m},
                0};
  for (const PitShape* pit : {&run.answer.launch_pit, &run.answer.exit_pit})
    for (const PlanPoint& corner : pit->footprint)
      line.half_width_m = std::max(line.half_width_m, distance_to_segment(corner, line.from, line.to));
  return line;
}

UtilityByWork::UtilityByWork(const CheckRun& run, const WorkLine& work, const Utility& utility) {
  const PlanPoint launch{run.crossing.bore.launch.station.m, run.crossing.bore.launch.offset->m};
  const PlanPoint exit{run.crossing.bore.exit.station.m, run.crossing.bore.exit.offset->m};
  near = utility.path.empty();  // nobody said where it lies
  const double within = asked_within_m + work.half_width_m;
  const std::vector<PathVertex> line = lengthened(utility.path, reach_of(utility, 0));
  for (std::size_t i = 0; i < line.size() && !(near && crossed); ++i) {
    const PathVertex &a = line[i], &b = line[std::min(i + 1, line.size() - 1)];
    if (std::min(a.x_m, b.x_m) > work.to.x_m + within || std::max(a.x_m, b.x_m) < work.from.x_m - within) continue;
    const PlanPoint from{a.x_m, a.y_m}, to{b.x_m, b.y_m};
    near = near || plan_distance(from, to, work.from, work.to) <= within;
    crossed = crossed || plan_distance(from, to, launch, exit) <= 0;
  }
}

void check_course(CheckRun& run, const WorkLine& work, const Clearance& clearance, const Utility& utility) {
  if (utility.path.empty()) return;
  const double sd = std::max(clearance.lateral_sd_m.value_or(utility.located.lateral_sd.value_or(Length{0}).m),
                             clearance.vertical_sd_m.value_or(utility.located.vertical_sd.value_or(Length{0}).m));
  const auto ask = [&](bool last) {
    const End end = end_of(utility.path, last);
    if (distance_to_segment({end.at.x_m, end.at.y_m}, work.from, work.to) > asked_within_m + work.half_width_m)
      return false;
    if (!reaches_band(run, end, clearance.contact_radius_m, sd) && !reaches_pit(run.answer.launch_pit, end, sd) &&
        !reaches_pit(run.answer.exit_pit, end, sd))
      return false;
    Finding& finding = run.missing("utility-course", utility.id, display_name(utility));
    finding.station_m = end.at.x_m;
    finding.offset_m = end.at.y_m;
    if (end.level_known) finding.elevation_m = end.at.z_m;
    return true;
  };
  // A lone place has one end. What is declared of either does not tell which way it runs, and *edge of record* says
  // that it does run on.
  if (!(end_of(utility.path, true).straight_m > same_place_m)) {
    const auto runs_on = [](const std::optional<LineEnd>& end) { return !end || *end == LineEnd::edge_of_record; };
    if (runs_on(utility.ends.first) || runs_on(utility.ends.last)) ask(false);
    return;
  }
  if (!utility.ends.first) ask(false);
  if (!utility.ends.last) ask(true);
}

std::vector<std::string> doubtful_holes(const Site& site, const PinnedLine& pinned, const std::optional<Date>& on) {
  std::vector<std::string> ids;
  for (const HoleRemark& remark : pinned.remarks) {
    if (remark.trouble != HoleTrouble::off_record) continue;
    const auto hole = std::find_if(site.test_holes.begin(), site.test_holes.end(),
                                   [&](const TestHole& one) { return one.id == remark.hole; });
    if (hole != site.test_holes.end() && !vouched(hole->agreed, on)) ids.push_back(hole->id);
  }
  return ids;
}

}  // namespace burrow
