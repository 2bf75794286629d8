/// The run sheet: where the nose is when a mark of the hose passes the launch face, and what lies ahead of it.

#include <algorithm>
#include <cmath>

#include "air_workings.h"
#include "burrow/check/hose_marks.h"
#include "burrow/clearance/contact.h"
#include "check_run.h"

namespace burrow {

namespace {

constexpr double exit_empty_m = 2.0;      ///< before its face (common practice, no source)
constexpr double least_spacing_m = 0.25;  ///< closer marks run into one another on a hose (our default)
constexpr double most_marks = 400;
constexpr double passed_m = 0.5;       ///< a utility stays on the sheet so far behind the nose (our default)
constexpr double stop_before_m = 1.0;  ///< and is told so far ahead of it (method: within 1 m of an unexposed service)

/// The bore at an arc length, straight between the points of the path.
struct Place {
  PathPoint point;
  Quantiles time;
};

class AlongBore {
 public:
  explicit AlongBore(const Assessment& answer) : answer_(answer) {}

  [[nodiscard]] Place at(double s_m) const {
    const std::vector<PathPoint>& points = answer_.bore.points;
    auto right =
        std::lower_bound(points.begin(), points.end(), s_m, [](const PathPoint& p, double s) { return p.s_m < s; });
    if (right == points.end()) --right;
    if (right == points.begin()) ++right;
    const PathPoint &a = *(right - 1), &b = *right;
    const double t = std::clamp((s_m - a.s_m) / (b.s_m - a.s_m), 0.0, 1.0);
    const auto mix = [t](double from, double to) { return from + t * (to - from); };
    Place place;
    place.point.s_m = s_m;
    place.point.x_m = mix(a.x_m, b.x_m);
    place.point.y_m = mix(a.y_m, b.y_m);
    place.point.z_m = mix(a.z_m, b.z_m);
    place.point.cover_m = mix(a.cover_m, b.cover_m);
    place.point.sd_vertical_m = mix(a.sd_vertical_m, b.sd_vertical_m);
    const auto i = static_cast<std::size_t>(right - points.begin());
    const std::vector<AdvancePoint>& advance = answer_.advance.points;
    if (i < advance.size() && advance[i].rate_m_s > 0) {
      const TimeSpread &from = advance[i - 1].time, &to = advance[i].time;
      place.time = {mix(from.p10_s, to.p10_s), mix(from.p50_s, to.p50_s), mix(from.p90_s, to.p90_s)};
    }
    return place;
  }

  [[nodiscard]] double arc_at(double x_m) const {
    const std::vector<PathPoint>& points = answer_.bore.points;
    const auto right =
        std::lower_bound(points.begin(), points.end(), x_m, [](const PathPoint& p, double x) { return p.x_m < x; });
    if (right == points.begin()) return points.front().s_m;
    if (right == points.end()) return points.back().s_m;
    const PathPoint &a = *(right - 1), &b = *right;
    return a.s_m + (x_m - a.x_m) / (b.x_m - a.x_m) * (b.s_m - a.s_m);
  }

 private:
  const Assessment& answer_;
};

/// A utility on the sheet, worked out once.
struct Passing {
  const UtilityAnswer* answer;
  double arc_m = 0;
  bool along = false;     ///< beside the bore rather than across it: near at every mark
  bool in_sight = false;  ///< somebody dug down to it
  std::optional<double> above_m;
};

std::vector<Passing> passings(const CheckRun& run, const AlongBore& along, double near_m) {
  std::vector<Passing> all;
  const std::vector<Utility>& utilities = run.crossing.site.utilities;
  for (std::size_t i = 0; i < run.answer.utilities.size() && i < utilities.size(); ++i) {
    const UtilityAnswer& u = run.answer.utilities[i];
    if (!u.station_m) continue;
    const std::optional<double> gap = u.gap_low_m ? u.gap_low_m : u.separation_m;
    // A depth that nobody knows must not read as far away.
    if (gap && *gap > near_m && !u.expose) continue;
    Passing passing{&u, along.arc_at(u.on_bore ? u.on_bore->x_m : *u.station_m), u.by == ContactBy::bound, false, {}};
    if (u.on_bore && u.on_utility) passing.above_m = u.on_utility->z_m - u.on_bore->z_m;
    passing.in_sight = utilities[i].located.how.value == LocatedHow::exposed ||
                       std::any_of(run.crossing.site.test_holes.begin(), run.crossing.site.test_holes.end(),
                                   [&](const TestHole& hole) { return hole.utility == u.id; });
    all.push_back(passing);
  }
  return all;
}

struct Top {
  const SurfaceFeature* feature;
  Stretch stretch;
};

std::vector<Top> watched(const CheckRun& run) {
  std::vector<Top> all;
  for (const SurfaceFeature& feature : run.crossing.site.surface)
    if (moves_with_ground(feature))
      if (const auto stretch = stretch_of(feature, run.answer.bore.points)) all.push_back({&feature, *stretch});
  return all;
}

struct Sheet {
  const AlongBore& along;
  const std::vector<Passing>& utilities;
  const std::vector<Top>& tops;
  double diameter_m;
};

void add_utilities(const Sheet& sheet, Mark& mark, double nose_m, double next_m, bool& look, bool& listen, bool& stop) {
  for (const Passing& p : sheet.utilities) {
    const double ahead = p.arc_m - nose_m;
    if (!p.along && (ahead < -passed_m || p.arc_m > next_m + stop_before_m)) continue;
    const UtilityAnswer& u = *p.answer;
    mark.near.push_back({u.id, p.above_m, u.name, u.gap_low_m, ahead, u.expose, u.separation_m});
    look = look || p.in_sight;
    listen = listen || !p.in_sight;
    stop = stop || (u.expose && (p.along || ahead > 0));
  }
}

Mark mark_at(const Sheet& sheet, double nose_m, double next_m) {
  const Place place = sheet.along.at(nose_m);
  Mark mark;
  mark.nose_m = nose_m;
  mark.station_m = place.point.x_m;
  mark.offset_m = place.point.y_m;
  mark.elevation_m = place.point.z_m;
  const double depth = place.point.cover_m + sheet.diameter_m / 2, band = band_90_sd * place.point.sd_vertical_m;
  mark.depth_m = depth;
  mark.depth_low_m = depth - band;
  mark.depth_high_m = depth + band;
  mark.time_s = place.time;
  bool look = false, listen = false, stop = false;
  if (next_m > nose_m) {
    add_utilities(sheet, mark, nose_m, next_m, look, listen, stop);
    const double until = sheet.along.at(next_m).point.x_m;
    for (const Top& top : sheet.tops)
      if (top.stretch.from_m <= until && top.stretch.to_m >= place.point.x_m) mark.under.push_back(top.feature->id);
  }
  if (stop) mark.tasks.push_back(MarkTask::stop_until_exposed);
  if (!mark.near.empty()) mark.tasks.push_back(MarkTask::slow_down);
  if (look) mark.tasks.push_back(MarkTask::look);
  if (listen) mark.tasks.push_back(MarkTask::listen);
  if (!mark.under.empty()) mark.tasks.push_back(MarkTask::check_heave);
  return mark;
}

/// The spacing entered, unless it asks for more marks than a hose can carry.
double spacing_of(CheckRun& run, double length_m) {
  const double entered = mark_spacing(run.crossing).m;
  const double least = std::max(least_spacing_m, length_m / most_marks);
  if (entered >= least) return entered;
  Finding finding;
  finding.code = "air.mark-spacing";
  finding.severity = Severity::caution;
  finding.subject = "air";
  finding.name = "hose";
  finding.unit = "m";
  run.require(std::move(finding), entered,
              {least, true, {"marks too close to tell apart on a hose", SourceLabel::our_default}});
  return least;
}

}  // namespace

void check_mark_spacing(CheckRun& run) {
  if (run.answer.bore.points.size() >= 2) spacing_of(run, run.answer.bore.length_m);
}

void check_marks(CheckRun& run) {
  Assessment& answer = run.answer;
  if (answer.bore.points.size() < 2) return;
  const double length = answer.bore.length_m, tool = run.tool.length.m;
  const double behind = tool + run.crossing.air.tail_fitting->m, spacing = spacing_of(run, length);
  std::vector<double> noses;
  if (tool < length) noses.push_back(tool);
  for (int k = 1; k * spacing + behind < length; ++k) noses.push_back(k * spacing + behind);
  const bool arrives = answer.bore.ends == PathEnd::exit;
  noses.push_back(length);

  const AlongBore along(answer);
  const std::vector<Passing> utilities = passings(run, along, run.limit("mark_near_m").value);
  const std::vector<Top> tops = watched(run);
  const Sheet sheet{along, utilities, tops, run.tool.diameter.m};
  const std::size_t count = arrives ? noses.size() : noses.size() - 1;
  // Nobody stands in the exit pit from there on: at the last mark that is far enough before its face, else the first.
  std::size_t empty_from = 0;
  for (std::size_t i = 0; i < count; ++i)
    if (noses[i] <= length - exit_empty_m + 1e-9) empty_from = i;
  answer.marks.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    Mark mark = mark_at(sheet, noses[i], noses[std::min(i + 1, noses.size() - 1)]);
    if (noses[i] >= behind) mark.hose_m = noses[i] - behind;
    if (i == 0 && tool < length) mark.tasks.insert(mark.tasks.begin(), MarkTask::check_alignment);
    if (arrives && i == empty_from) mark.tasks.push_back(MarkTask::prepare_arrival);
    answer.marks.push_back(std::move(mark));
  }
  const auto first =
      std::find_if(answer.marks.begin(), answer.marks.end(), [](const Mark& m) { return m.hose_m.has_value(); });
  if (first != answer.marks.end()) show_mark(run, *first);
}

}  // namespace burrow
