/// What verdict and run sheet ask of the crew: who took the start on, what is to be exposed, what is to be done at the
/// mark where the nose is.

#include <algorithm>

#include "burrow/crossing/display_name.h"
#include "burrow/crossing/find.h"
#include "burrow/day/start_gate.h"
#include "day_work.h"

namespace burrow {

namespace {

constexpr double reached_m = 0.05;    ///< a mark is tapped as it passes
constexpr double told_ahead_m = 1.0;  ///< beyond the next mark, as on the run sheet
constexpr double behind_m = 1.0;      ///< within which a line that was passed still holds the tool
constexpr double without_marks_m = 1.5;

const Source run_sheet{"task of the run sheet", SourceLabel::our_default};

class GateReasons {
 public:
  explicit GateReasons(DayWork& work)
      : work_(work),
        answer_(work.answer),
        gate_(start_gate(work.crossing, work.assessment, days_of(work.record, work.tables.judged_on))) {}

  void run() {
    ticket();
    permit();
    verdict();
    exposures();
    gaps();
    present_mark();
    not_arrived();
  }

 private:
  /// Nobody bores on a search that nobody did, that has run out, or whose marks have gone.
  void ticket() {
    DayReason& reason = add_reason(work_, "day.ticket", gate_.ticket_holds ? 1 : 0,
                                   {1, true, {"the ticket and its marks as entered", SourceLabel::owners_setting}});
    reason.leads_to = Advice::record_only;
  }

  /// Signed against, nobody bores; what else nobody entered before the first blow is never green.
  void permit() {
    const Source asked{"the permit to bore", SourceLabel::common_practice};
    if (gate_.no_go) add_reason(work_, "day.no-go", 1, {0, false, asked}).leads_to = Advice::record_only;
    if (gate_.permit_open > 0)
      add_reason(work_, "day.permit", gate_.permit_open, {0, false, asked}).leads_to = Advice::go_on;
  }

  void verdict() {
    if (gate_.to_take_on.empty()) return;
    DayReason& reason = add_reason(work_, "day.verdict", static_cast<double>(gate_.to_take_on.size()),
                                   {0, false, {"the verdict of the crossing", SourceLabel::our_default}});
    reason.name = phrase_of_word(work_.assessment.verdict);
    reason.leads_to = taken_on(work_.record.taken_on, gate_) ? Advice::as_taken_on : Advice::record_only;
  }

  [[nodiscard]] double next_mark_m() const {
    for (const Mark& mark : work_.assessment.marks)
      if (*mark.nose_m > answer_.furthest_m + reached_m) return *mark.nose_m;
    return answer_.furthest_m + without_marks_m;
  }

  [[nodiscard]] double arc_at(double x_m) const {
    double s = 0;
    for (const PathPoint& p : work_.assessment.bore.points)
      if (p.x_m <= x_m) s = p.s_m;
    return s;
  }

  /// Where nobody has exposed it the tool stops at the mark before; nobody knows what a passed one has taken.
  void exposures() {
    const double until = next_mark_m() + told_ahead_m;
    for (const UtilityAnswer& utility : work_.assessment.utilities) {
      if (!to_be_exposed(work_.assessment, utility)) continue;
      const Utility* drawn = find_by_id(work_.crossing.site.utilities, utility.id);
      DayReason& reason = add_reason(work_, "day.expose", 0, {1, true, run_sheet});
      reason.subject = utility.id;
      reason.name = drawn ? display_name(*drawn) : Phrase(utility.id);
      reason.station_m = utility.station_m;
      reason.offset_m = utility.offset_m;
      reason.elevation_m = utility.elevation_m;
      reason.leads_to = Advice::record_only;
      const std::optional<double> x = utility.on_bore ? std::optional(utility.on_bore->x_m) : utility.station_m;
      const bool along = !x || utility.by == ContactBy::bound;
      const double arc = x ? arc_at(*x) : 0;
      const bool here = along || (arc <= until && arc >= std::min(answer_.nose_m, answer_.furthest_m) - behind_m);
      if (!here) continue;
      reason.leads_to = Advice::stop_until_exposed;
      answer_.to_expose.push_back(reason.name);
    }
    for (const NearService& near : answer_.near)
      if (near.can_hurt && near.too_near && !listed(near.name)) answer_.to_expose.push_back(near.name);
  }

  [[nodiscard]] bool listed(const Phrase& name) const {
    return std::find(answer_.to_expose.begin(), answer_.to_expose.end(), name) != answer_.to_expose.end();
  }

  /// Nearer on the path as it is read than is required, or within its band: what the plan passes well clear of.
  [[nodiscard]] bool closes_in(const Clearance& c) const {
    constexpr double beside_m = 1.0;  // as of one of which the plan does not know enough
    if (!unexposed(c) || !may_hurt(c) || !row_of(work_.tables, c.kind).can_hurt) return false;
    if (c.crossed_by_band || c.depth_unknown_at_bore) return true;
    if (!c.separation_m || !c.required_m) return false;
    return *c.separation_m < *c.required_m + (c.no_sd || c.no_diameter ? beside_m : 0);
  }

  /// Ahead on the path as it is read, whatever the plan says of it.
  void gaps() {
    const double until = next_mark_m() + told_ahead_m;
    for (const DayUtility& utility : answer_.utilities) {
      const auto c = std::find_if(work_.clearing.begin(), work_.clearing.end(),
                                  [&](const Clearance& one) { return one.id == utility.id; });
      if (!closes_in(*c)) continue;
      DayReason& reason =
          add_reason(work_, "day.gap", c->separation_m.value_or(0),
                     {c->required_m.value_or(0), true, {"clear gap of the path as read", SourceLabel::our_model}}, "m");
      reason.broken = true;
      reason.subject = utility.id;
      reason.name = utility.name;
      reason.station_m = c->station_m;
      reason.offset_m = c->offset_m;
      reason.elevation_m = c->elevation_m;
      const std::optional<double> x = c->on_bore ? std::optional(c->on_bore->x_m) : c->station_m;
      const bool here = !x || c->bound || arc_at(*x) <= until;
      reason.leads_to = here ? Advice::stop_until_exposed : Advice::record_only;
      if (here && !listed(utility.name)) answer_.to_expose.push_back(utility.name);
    }
  }

  [[nodiscard]] std::optional<std::size_t> mark_at(double nose_m) const {
    std::optional<std::size_t> at;
    const std::vector<Mark>& marks = work_.assessment.marks;
    for (std::size_t i = 0; i < marks.size(); ++i)
      if (*marks[i].nose_m <= nose_m + reached_m) at = i;
    return at;
  }

  [[nodiscard]] bool is_done(MarkTask task) const {
    for (std::size_t i = 0; i < work_.record.readings.size(); ++i) {
      const Reading& reading = work_.record.readings[i];
      const std::optional<double>& nose = work_.timeline.nose_of[i];
      if (!counts(reading) || !nose || mark_at(*nose) != answer_.mark) continue;
      const bool ticked = reading.kind == ReadingKind::done &&
                          std::find(reading.tasks.begin(), reading.tasks.end(), word_of(task)) != reading.tasks.end();
      const bool level =
          task == MarkTask::check_alignment && ((reading.kind == ReadingKind::grade && reading.grade) ||
                                                (reading.kind == ReadingKind::heading && reading.heading));
      const bool peg = task == MarkTask::check_heave && reading.kind == ReadingKind::peg && reading.rise;
      if (ticked || level || peg) return true;
    }
    return false;
  }

  void present_mark() {
    answer_.mark = mark_at(answer_.furthest_m);  // driving back does none of its tasks
    if (!answer_.mark) return;
    int open = 0;
    for (const MarkTask task : work_.assessment.marks[*answer_.mark].tasks) {
      // An exposure is not ticked off: it is entered.
      const bool exposure = task == MarkTask::stop_until_exposed;
      const bool done = exposure ? answer_.to_expose.empty() : is_done(task);
      answer_.tasks.push_back({task, done});
      open += !done && !exposure;
    }
    DayReason& reason = add_reason(work_, "day.tasks", open, {0, false, run_sheet});
    reason.leads_to = Advice::do_tasks;
  }

  /// By its hose it has passed the exit face, and nobody has written that it came out.
  void not_arrived() {
    constexpr double came_short_m = 0.3;
    const BorePath& path = work_.assessment.bore;
    if (path.ends != PathEnd::exit || answer_.ended) return;
    const auto arrived = [&](const TakenReading& one) {
      return work_.record.readings[one.reading].kind == ReadingKind::arrival;
    };
    if (std::any_of(work_.taken.begin(), work_.taken.end(), arrived)) return;
    DayReason& reason = add_reason(work_, "day.not-arrived", answer_.nose_m - path.length_m,
                                   {came_short_m, false, {"hose that has gone in", SourceLabel::our_default}}, "m");
    reason.leads_to = Advice::stop_and_look;
    if (!reason.broken) answer_.reasons.pop_back();
  }

  DayWork& work_;
  DayAnswer& answer_;
  StartGate gate_;
};

}  // namespace

void weigh_gate(DayWork& work) {
  if (work.answer.smoothed.points.empty()) return;
  GateReasons(work).run();
}

}  // namespace burrow
