/// A practice bore mark by mark.

#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/bore/point_on_path.h"
#include "burrow/check/assess.h"
#include "burrow/practice/practice.h"

namespace burrow {

namespace {

constexpr double fix_lateral_m = 0.05, fix_vertical_m = 0.06, level_error_rad = 0.002;
constexpr double fix_takes_s = 180, level_takes_s = 60;

/// The same reading for the same truth at the same place, however often it is asked for.
double reading_error(std::uint64_t seed, double nose_m, int which) {
  boost::random::mt19937_64 engine(seed * 1009 + static_cast<std::uint64_t>(std::lround(nose_m * 1000)) * 8 +
                                   static_cast<std::uint64_t>(which));
  return boost::random::normal_distribution<double>()(engine);
}

EndHow end_how(PracticeEnd end) {
  switch (end) {
    case PracticeEnd::arrived:
      return EndHow::arrived;
    case PracticeEnd::daylight:
      return EndHow::daylight;
    case PracticeEnd::struck:
      return EndHow::struck;
    case PracticeEnd::stuck:
      return EndHow::stuck;
    case PracticeEnd::stopped:
      return EndHow::backed_out;
    case PracticeEnd::lost:
      break;
  }
  return EndHow::lost;
}

}  // namespace

/// A stop till a line is exposed asks for the air to be shut and for a hole: both are right there.
bool PracticeDecision::right() const {
  switch (choice) {
    case PracticeChoice::fix:
    case PracticeChoice::level:
    case PracticeChoice::turn_level:
      return true;  // to know more is never wrong
    case PracticeChoice::go_on:
      return advised == Advice::go_on;
    case PracticeChoice::stop_and_look:
      return gravity(advised) >= gravity(Advice::stop_and_look) && advised != Advice::back_out &&
             gravity(advised) < gravity(Advice::leave_and_expose);
    case PracticeChoice::leave_and_expose:
      return gravity(advised) >= gravity(Advice::stop_and_look) && advised != Advice::back_out;
    case PracticeChoice::back_out:
      return advised == Advice::back_out || reason == PracticeReason::verdict;
  }
  return false;
}

PracticeRun::PracticeRun(Crossing layout, const Tables& tables, PracticeTruth truth)
    : layout_(std::move(layout)),
      tables_(&tables),
      truth_(std::move(truth)),
      bore_(practice_bore(layout_, tables, truth_)),
      assessment_(assess(layout_, tables)) {
  record_.id = "practice";
  Reading start;
  start.kind = ReadingKind::start;
  record_.readings.push_back(start);
  look();
}

std::optional<double> PracticeRun::pace() const {
  if (day_.rate.pieces.empty() || !(day_.rate.pieces.back().expected_s > 0)) return std::nullopt;
  return day_.rate.pieces.back().taken_s / day_.rate.pieces.back().expected_s;
}

/// The gravest of: the run sheet's stop at the mark that was passed last, what the day's numbers say, the verdict of
/// the layout, a pace outside half to twice of what was expected; on the cradle, the level that nobody has turned.
PracticeDecision PracticeRun::asked(PracticeChoice choice) const {
  constexpr double too_quick = 0.5, too_slow = 2;
  PracticeDecision decision{nose_m_, choice, Advice::go_on, PracticeReason::none};
  const auto take = [&](bool holds, Advice advice, PracticeReason reason) {
    if (holds && gravity(advice) > gravity(decision.advised)) {
      decision.advised = advice;
      decision.reason = reason;
    }
  };
  const Mark* last = nullptr;
  for (const Mark& mark : assessment_.marks)
    if (mark.nose_m && *mark.nose_m <= nose_m_ + 1e-6) last = &mark;
  const bool stop_here =
      last && std::find(last->tasks.begin(), last->tasks.end(), MarkTask::stop_until_exposed) != last->tasks.end();
  take(nose_m_ > 0 && stop_here, Advice::stop_until_exposed, PracticeReason::run_sheet);
  if (nose_m_ > 0 && day_.advice) take(true, *day_.advice, PracticeReason::advice);
  take(must_not_start(), Advice::stop_and_look, PracticeReason::verdict);
  const std::optional<double> ratio = nose_m_ > 0 ? pace() : std::nullopt;
  take(ratio && !(*ratio > too_quick && *ratio < too_slow), Advice::stop_and_look, PracticeReason::pace);
  take(nose_m_ == 0 && !level_shown_rad_, Advice::do_tasks, PracticeReason::level_not_turned);
  return decision;
}

void PracticeRun::look() {
  day_ = day_answer(layout_, *tables_, record_, assessment_, DayPurpose::practice);
}

std::vector<PracticeChoice> PracticeRun::choices(bool sonde) const {
  if (over()) return {};
  std::vector<PracticeChoice> choices{PracticeChoice::go_on};
  const bool begun = nose_m_ > 0;
  const auto read_here = [&](ReadingKind kind) {
    return std::any_of(record_.readings.begin(), record_.readings.end(), [&](const Reading& r) {
      return r.kind == kind && r.nose && std::abs(r.nose->m - nose_m_) < 1e-9;
    });
  };
  if (!begun && !level_shown_rad_) choices.push_back(PracticeChoice::turn_level);
  if (begun && sonde && !read_here(ReadingKind::fix)) choices.push_back(PracticeChoice::fix);
  if (begun && nose_m_ < resolve_tool(layout_.bore.tool, *tables_).length.m && !read_here(ReadingKind::grade))
    choices.push_back(PracticeChoice::level);
  if (begun)
    for (const PracticeChoice choice :
         {PracticeChoice::stop_and_look, PracticeChoice::leave_and_expose, PracticeChoice::back_out})
      choices.push_back(choice);
  return choices;
}

void PracticeRun::choose(PracticeChoice choice) {
  if (over()) return;
  decisions_.push_back(asked(choice));
  switch (choice) {
    case PracticeChoice::go_on:
      next_mark();
      break;
    case PracticeChoice::fix:
    case PracticeChoice::level:
      read(choice);
      break;
    case PracticeChoice::turn_level:
      turn_level();
      break;
    default:
      finish(PracticeEnd::stopped);
      break;
  }
  look();
}

void PracticeRun::next_mark() {
  if (next_ >= bore_.marks.size()) return finish(bore_.end);
  const PracticeMark& mark = bore_.marks[next_++];
  // Readings taken at a stop cost time.
  time_s_ += mark.time_s - (next_ >= 2 ? bore_.marks[next_ - 2].time_s : 0.0);
  nose_m_ = mark.nose_m;
  sound_ = mark.sound;
  Reading reading;
  reading.kind = ReadingKind::mark;
  reading.time = Duration{time_s_};
  reading.nose = Length{nose_m_};
  record_.readings.push_back(reading);
}

/// The bubble moves by twice the level's own error; with half of that packed under the tool, only how finely a level
/// reads is left.
void PracticeRun::turn_level() {
  if (nose_m_ > 0 || level_shown_rad_) return;
  const double read_rad = level_error_rad / 4 * reading_error(truth_.seed, 0, 3);
  level_shown_rad_ = 2 * (truth_.errors.level_rad + read_rad);
  truth_.errors.level_rad = -read_rad;
  bore_ = practice_bore(layout_, *tables_, truth_);
}

void PracticeRun::read(PracticeChoice choice) {
  const PathPoint p = point_at(bore_.bore.path, nose_m_);
  Reading stop, reading, go;
  stop.kind = ReadingKind::stop;
  stop.nose = reading.nose = Length{nose_m_};
  stop.time = Duration{time_s_};
  stop.why = std::string(word_of(choice));
  go.kind = ReadingKind::go;
  time_s_ += choice == PracticeChoice::fix ? fix_takes_s : level_takes_s;
  reading.time = go.time = Duration{time_s_};
  if (choice == PracticeChoice::fix) {
    reading.kind = ReadingKind::fix;
    const double offset = p.y_m + fix_lateral_m * reading_error(truth_.seed, nose_m_, 0);
    reading.offset = Length{offset};
    reading.depth = Length{std::max(0.0, elevation_at(layout_.site.ground, p.x_m) - p.z_m +
                                             fix_vertical_m * reading_error(truth_.seed, nose_m_, 1))};
    reading.lateral_sd = Length{fix_lateral_m};
    reading.vertical_sd = Length{fix_vertical_m};
  } else {
    reading.kind = ReadingKind::grade;
    reading.grade = Ratio{std::tan(p.grade_rad + level_error_rad * reading_error(truth_.seed, nose_m_, 2))};
    reading.angle_sd = Angle{level_error_rad};
  }
  reading.confirmed = true;  // nobody mistypes it here
  for (Reading* one : {&stop, &reading, &go}) record_.readings.push_back(*one);
}

void PracticeRun::finish(PracticeEnd end) {
  end_ = end;
  if (end != PracticeEnd::stopped) {
    time_s_ += std::max(0.0, bore_.end_time_s - (bore_.marks.empty() ? 0.0 : bore_.marks.back().time_s));
    nose_m_ = bore_.bore.path.length_m;
  }
  if (end == PracticeEnd::arrived) {
    const PathPoint& p = bore_.bore.path.points.back();
    Reading arrival;
    arrival.kind = ReadingKind::arrival;
    arrival.time = Duration{time_s_};
    arrival.offset = Length{p.y_m};
    arrival.elevation = Length{p.z_m};
    arrival.sd = Length{0.01};
    arrival.confirmed = true;
    record_.readings.push_back(arrival);
  }
  Reading last;
  last.kind = ReadingKind::end;
  last.time = Duration{time_s_};
  last.how = end_how(end);
  record_.readings.push_back(last);
}

const PracticeBore& PracticeRun::truth() const {
  BURROW_ENSURE(over());
  return bore_;
}

const PracticeTruth& PracticeRun::conditions() const {
  BURROW_ENSURE(over());
  return truth_;
}

PracticeResult PracticeRun::result(std::string name, const Debrief& debrief) const {
  PracticeResult result;
  result.name = std::move(name);
  result.end = end_ ? std::string(word_of(*end_)) : std::string();
  result.miss_left_m = debrief.miss_left_m;
  result.miss_up_m = debrief.miss_up_m;
  result.decisions = static_cast<std::int64_t>(decisions_.size());
  result.right =
      std::count_if(decisions_.begin(), decisions_.end(), [](const PracticeDecision& d) { return d.right(); });
  return result;
}

}  // namespace burrow
