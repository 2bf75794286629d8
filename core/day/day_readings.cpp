/// From what was written down to numbers about the path.

#include <algorithm>
#include <cmath>

#include "burrow/crossing/day_record.h"
#include "burrow/soil/movement.h"
#include "day_work.h"

namespace burrow {

namespace {

constexpr double steepest_read = 0.20;  ///< an unsteered tool does not turn by more and is found (our default)

/// Arc length at a station; empty off the path.
std::optional<double> arc_at(const BorePath& path, double x_m) {
  for (std::size_t i = 1; i < path.points.size(); ++i) {
    const PathPoint &a = path.points[i - 1], &b = path.points[i];
    if (x_m >= a.x_m && x_m <= b.x_m && b.x_m > a.x_m) return a.s_m + (x_m - a.x_m) / (b.x_m - a.x_m) * (b.s_m - a.s_m);
  }
  return std::nullopt;
}

class Taker {
 public:
  Taker(const Crossing& crossing, const DayRecord& record, const Ground& ground, const Tool& tool, const BorePath& path,
        Timeline& timeline)
      : crossing_(crossing), record_(record), ground_(ground), tool_(tool), path_(path), timeline_(timeline) {}

  TakenReadings run() {
    for (const std::size_t i : timeline_.order)
      if (counts(record_.readings[i])) take(i, record_.readings[i]);
    return {std::move(taken_), std::move(places_)};
  }

 private:
  void take(std::size_t i, const Reading& r) {
    switch (r.kind) {
      case ReadingKind::grade:
      case ReadingKind::heading:
      case ReadingKind::fix:
        at_the_nose(i, r);
        break;
      case ReadingKind::peg:
        peg(i, r);
        break;
      case ReadingKind::arrival:
        arrival(i, r);
        break;
      case ReadingKind::end:
        end(i, r);
        break;
      default:
        break;
    }
  }

  void leave_out(std::size_t i, ReadingTrouble trouble) { timeline_.left_out.push_back({i, trouble}); }

  void ask(std::size_t i, QueryWhy why) {
    if (!asked(i)) timeline_.queried.push_back({i, why, 0});
  }

  [[nodiscard]] bool asked(std::size_t i) const {
    return std::any_of(timeline_.queried.begin(), timeline_.queried.end(),
                       [i](const ReadingQuery& query) { return query.reading == i; });
  }

  void add(std::size_t i, DeviationMember member, double s, double value, double sd) {
    taken_.push_back({i, reading_of(member, s, value, sd)});
  }

  void at_the_nose(std::size_t i, const Reading& r) {
    const std::optional<double> nose = timeline_.nose_of[i];
    if (!nose) return leave_out(i, ReadingTrouble::no_nose);
    if (*nose > path_.length_m + 1e-9) {
      if (r.nose && !r.confirmed.value_or(false)) ask(i, QueryWhy::beyond_bore);
      return leave_out(i, ReadingTrouble::beyond_path);
    }
    if (r.kind == ReadingKind::grade && r.grade && std::abs(r.grade->v) > steepest_read && !r.confirmed.value_or(false))
      return ask(i, QueryWhy::steep);
    const PathPoint p = point_at(path_, *nose);
    // Too far ahead to be believed: what lies near there counts all the same.
    if (asked(i)) {
      const std::size_t before = taken_.size();
      if (r.kind != ReadingKind::fix || !place(i, r, p)) places_.push_back({i, p});
      taken_.resize(before);
      return;
    }
    const auto angle_sd = [&](double otherwise) { return r.angle_sd ? r.angle_sd->rad : otherwise; };
    bool any = false;
    if (r.kind == ReadingKind::grade && r.grade) {
      add(i, pitch_rad, *nose, std::atan(r.grade->v) - p.grade_rad, angle_sd(errors_.level_rad));
      any = true;
    }
    if (r.kind == ReadingKind::heading && r.heading) {
      add(i, yaw_rad, *nose, r.heading->rad - p.heading_rad, angle_sd(errors_.heading_rad));
      any = true;
    }
    if (r.kind == ReadingKind::fix) any = place(i, r, p);
    if (!any) leave_out(i, ReadingTrouble::no_value);
  }

  bool place(std::size_t i, const Reading& r, const PathPoint& p) {
    const double along = std::cos(p.heading_rad), level = std::cos(p.grade_rad);
    PathPoint read = p;
    if (r.offset) {
      read.y_m = r.offset->m;
      read.sd_lateral_m = r.lateral_sd ? r.lateral_sd->m : errors_.lateral_m;
    }
    if (r.depth) {
      read.z_m = ground_.surface_m(read.x_m, read.y_m) - r.depth->m;
      read.sd_vertical_m = r.vertical_sd ? r.vertical_sd->m : errors_.vertical_m;
    }
    if (r.offset || r.depth) places_.push_back({i, read});
    if (r.offset)
      add(i, left_m, p.s_m, (r.offset->m - p.y_m) * along,
          (r.lateral_sd ? r.lateral_sd->m : errors_.lateral_m) * along);
    if (r.depth) {
      const double elevation = ground_.surface_m(p.x_m, r.offset ? r.offset->m : p.y_m) - r.depth->m;
      add(i, up_m, p.s_m, (elevation - p.z_m) * level, (r.vertical_sd ? r.vertical_sd->m : errors_.vertical_m) * level);
    }
    return r.offset || r.depth;
  }

  /// The ground at a peg rises by f a² h/(u² + h²): higher over a shallower bore. How far the low and the high estimate
  /// lie apart is the model's own error, and much the larger part.
  void peg(std::size_t i, const Reading& r) {
    if (!r.station || !r.rise) return leave_out(i, ReadingTrouble::no_value);
    const std::optional<double> s = arc_at(path_, r.station->m);
    if (!s || *s > timeline_.furthest_m) return leave_out(i, ReadingTrouble::beyond_path);
    const PathPoint p = point_at(path_, *s);
    const double h = ground_.surface_m(p.x_m, p.y_m) - p.z_m, u = (r.offset ? r.offset->m : 0.0) - p.y_m;
    const double a = 0.5 * tool_.diameter.m, f = ground_.soil_at(p.x_m, p.y_m, p.z_m).heave_share.v;
    const Result<HeaveEstimate> over =
        surface_heave(Length{a}, Length{h}, Ratio{f}, p.roof_cap_Pa, p.limit_pressure_Pa);
    if (!over) return leave_out(i, ReadingTrouble::no_value);
    const double square = u * u + h * h, low = f * a * a * h / square;
    const double high = over->high_m * std::exp(-2 * u * u / (h * h));
    const double reading_sd = r.sd ? r.sd->m : errors_.peg_m, model_sd = 0.5 * std::abs(high - low);
    PathReading reading;
    reading.s_m = *s;
    reading.row[up_m] = -f * a * a * (u * u - h * h) / (square * square);
    reading.row[left_m] = f * a * a * h * 2 * u / (square * square);
    reading.value = r.rise->m - 0.5 * (low + high);
    reading.sd = std::hypot(reading_sd, model_sd);
    taken_.push_back({i, reading});
  }

  /// Somebody confirmed that it came out: the arrival itself, or that the bore ended so.
  [[nodiscard]] bool believed() const {
    return std::any_of(record_.readings.begin(), record_.readings.end(), [](const Reading& one) {
      const bool out = one.kind == ReadingKind::arrival || (one.kind == ReadingKind::end && one.how == EndHow::arrived);
      return out && counts(one) && one.confirmed.value_or(false);
    });
  }

  void end(std::size_t i, const Reading& r) {
    const double length = crossing_.bore.exit.station.m - crossing_.bore.launch.station.m;
    if (r.how == EndHow::arrived && !believed() && too_early_to_arrive(timeline_.nose_of[i].value_or(0), length))
      ask(i, QueryWhy::early_arrival);
  }

  void arrival(std::size_t i, const Reading& r) {
    if (path_.ends != PathEnd::exit) return leave_out(i, ReadingTrouble::beyond_path);
    if (!r.offset && !r.elevation) return leave_out(i, ReadingTrouble::no_value);
    // Half a bore before the exit nobody comes out.
    if (!believed() && too_early_to_arrive(timeline_.nose_of[i].value_or(0), path_.length_m))
      return ask(i, QueryWhy::early_arrival);
    const PathPoint& p = path_.points.back();
    const double sd = r.sd ? r.sd->m : errors_.arrival_m;
    const double along = std::cos(p.heading_rad), level = std::cos(p.grade_rad);
    if (r.offset) add(i, left_m, p.s_m, (r.offset->m - p.y_m) * along, sd * along);
    if (r.elevation) add(i, up_m, p.s_m, (r.elevation->m - p.z_m) * level, sd * level);
  }

  const Crossing& crossing_;
  const DayRecord& record_;
  const Ground& ground_;
  const Tool& tool_;
  const BorePath& path_;
  Timeline& timeline_;
  ReadingErrors errors_;
  std::vector<TakenReading> taken_;
  std::vector<ReadPlace> places_;
};

}  // namespace

TakenReadings taken_readings(const Crossing& crossing, const DayRecord& record, const Ground& ground, const Tool& tool,
                             const BorePath& path, Timeline& timeline) {
  return Taker(crossing, record, ground, tool, path, timeline).run();
}

void note_arrival(const std::vector<TakenReading>& taken, const DayRecord& record, const BorePath& path,
                  Timeline& timeline) {
  for (const TakenReading& one : taken)
    if (record.readings[one.reading].kind == ReadingKind::arrival)
      timeline.nose_m = timeline.furthest_m = path.points.back().s_m;
}

std::vector<PathReading> DayWork::readings() const {
  std::vector<PathReading> all;
  for (const TakenReading& one : taken) all.push_back(one.taken);
  return all;
}

}  // namespace burrow
