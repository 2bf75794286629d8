/// The numbers that decide, and what they ask for.

#include <algorithm>
#include <cmath>

#include "day_work.h"

namespace burrow {

namespace {

class Adviser {
 public:
  explicit Adviser(DayWork& work) : work_(work), answer_(work.answer) {}

  void run() {
    if (!answer_.smoothed.points.empty()) {
      answer_.may_back_out = answer_.near.empty() && hole_stands();
      near_services();
      odd_readings();
      odd_rate();
      contacts();
      cover();
      window();
    }
    weigh_signs(work_);
    if (work_.purpose == DayPurpose::site) weigh_gate(work_);
    decide();
    order();
  }

 private:
  DayReason& add(std::string_view code, double measured, const Limit& limit, std::string_view unit) {
    return add_reason(work_, code, measured, limit, unit);
  }
  static void place(DayReason& reason, const PathPoint& p) {
    reason.station_m = p.x_m;
    reason.offset_m = p.y_m;
    reason.elevation_m = p.z_m;
  }

  void near_services() {
    const Limit limit = work_.limit("day_near_m");
    for (const NearService& near : answer_.near) {
      DayReason& reason = add("day.near", near.gap_m, limit, "m");
      reason.broken = true;  // within the distance, or within the band
      reason.subject = near.id;
      reason.name = near.name;
      place(reason, answer_.nose);
      // Beyond the gap that is required of it, it only forbids to go back; with something odd it decides.
      const bool stops = work_.purpose == DayPurpose::site && near.can_hurt && near.too_near;
      reason.leads_to = stops ? Advice::stop_until_exposed : Advice::go_on;
    }
  }

  void odd_readings() {
    const OddReading* worst = nullptr;
    for (const OddReading& odd : answer_.odd) {
      const std::optional<double> at = work_.timeline.nose_of[odd.reading];
      if (at && *at < answer_.nose_m - still_here_m) continue;
      if (!worst || std::abs(odd.in_sd) > std::abs(worst->in_sd)) worst = &odd;
    }
    if (!worst) return;
    DayReason& reason = add("day.odd", std::abs(worst->in_sd), work_.limit("day_odd_sd"), "");
    reason.leads_to = if_near(work_, Advice::stop_and_look);
    place(reason, answer_.nose);
  }

  void odd_rate() {
    if (answer_.rate.odds.empty()) return;
    const RatePiece& piece = answer_.rate.pieces.back();
    if (piece.to_m < answer_.furthest_m - still_here_m) return;
    double odd = 0;
    for (const OddRateChance& chance : answer_.rate.odds.back())
      if (chance.what != OddRate::as_before) odd += chance.chance;
    DayReason& reason = add("day.rate", odd, work_.limit("day_odd_rate_chance"), "");
    reason.leads_to = if_near(work_, Advice::stop_and_look);
    place(reason, point_at(answer_.smoothed, 0.5 * (piece.from_m + piece.to_m)));
  }

  void contacts() {
    const Limit limit = work_.limit("contact_stop");
    for (const DayUtility& utility : answer_.utilities) {
      const auto c = std::find_if(work_.clearing.begin(), work_.clearing.end(),
                                  [&](const Clearance& one) { return one.id == utility.id; });
      if (!may_hurt(*c)) continue;
      const bool near = std::any_of(answer_.near.begin(), answer_.near.end(),
                                    [&](const NearService& one) { return one.id == utility.id; });
      if (!utility.contact_chance_worst || c->no_sd || c->no_diameter) {
        // Not knowing its depth, its width or how well it is located must not look safe.
        DayReason& unknown = add("day.depth-unknown", 1, limit, "");
        fill(unknown, *c, utility);
        unknown.leads_to = near ? Advice::leave_and_expose : Advice::stop_and_look;
        continue;
      }
      DayReason& reason = add("day.contact", *utility.contact_chance_worst, limit, "");
      fill(reason, *c, utility);
      reason.leads_to = near && utility.unexposed ? Advice::leave_and_expose : Advice::stop_and_look;
    }
  }
  static void fill(DayReason& reason, const Clearance& c, const DayUtility& utility) {
    reason.subject = utility.id;
    reason.name = utility.name;
    reason.station_m = c.station_m;
    reason.offset_m = c.offset_m;
    reason.elevation_m = c.elevation_m;
  }

  void cover() {
    const PathPoint* least = nullptr;
    for (const PathPoint& p : work_.ahead.points)
      if (!least || p.cover_m < least->cover_m) least = &p;
    if (!least) return;
    const Limit none{0, true, {"out of the ground", SourceLabel::derived}};
    DayReason& reason = add("day.cover", least->cover_m, none, "m");
    reason.broken = !(least->cover_m > 0);
    reason.leads_to = back_or_look();
    place(reason, *least);
  }

  void window() {
    const PathPoint& end = answer_.smoothed.points.back();
    if (!answer_.arrival.chance_inside_exit_pit && answer_.ended) return;
    const double chance = answer_.arrival.chance_inside_exit_pit.value_or(0);  // the path ends elsewhere
    const bool arrived = answer_.nose_m >= end.s_m && answer_.smoothed.ends == PathEnd::exit;
    DayReason& out_of_reach = add("day.out-of-reach", chance, work_.limit("day_out_of_reach"), "");
    out_of_reach.leads_to = arrived ? Advice::go_on : back_or_look();
    place(out_of_reach, end);
    DayReason& unlikely = add("day.window", chance, work_.limit("day_window"), "");
    unlikely.leads_to = arrived ? Advice::go_on : Advice::stop_and_look;
    place(unlikely, end);
  }

  [[nodiscard]] Advice back_or_look() const { return answer_.may_back_out ? Advice::back_out : Advice::stop_and_look; }

  /// Ground that closes behind a tool within minutes holds it where it is.
  [[nodiscard]] bool hole_stands() const {
    for (const PathPoint& p : answer_.smoothed.points) {
      if (p.s_m > answer_.furthest_m) break;
      const std::optional<std::size_t> strip = work_.ground.strip_at(p.x_m, p.y_m, p.z_m);
      const std::string& id = strip ? work_.crossing.site.strips[*strip].soil
                                    : work_.crossing.site.strata[work_.ground.stratum_at(p.x_m, p.y_m, p.z_m)].soil;
      const SoilClass* soil = find_soil(work_.tables, id);
      if (!soil || soil->closes_soon) return false;
    }
    return true;
  }

  [[nodiscard]] bool asked(Advice advice) const {
    return std::any_of(answer_.reasons.begin(), answer_.reasons.end(),
                       [&](const DayReason& r) { return r.broken && r.leads_to == advice; });
  }

  void decide() {
    if (!work_.timeline.started && !asked(Advice::get_out)) return;
    if (!answer_.ended) answer_.advice = Advice::go_on;
    for (const DayReason& reason : answer_.reasons) {
      // Once it has ended only danger, a note that nobody has looked at, and how it ended is left to act on.
      const bool remains = reason.leads_to == Advice::get_out || reason.code == "day.ended" ||
                           reason.code == "day.early-end" || reason.code == "day.note";
      if (!reason.broken || (answer_.ended && !remains)) continue;
      if (!answer_.advice || *answer_.advice < reason.leads_to) answer_.advice = reason.leads_to;
    }
    const Verdict verdict = work_.assessment.verdict;
    const bool cautions = work_.purpose == DayPurpose::site && verdict != Verdict::within_limits;
    const bool shown = std::any_of(answer_.reasons.begin(), answer_.reasons.end(),
                                   [](const DayReason& r) { return r.broken && r.leads_to == Advice::go_on; });
    answer_.with_care = cautions || shown || !answer_.near.empty() || answer_.bands_in_doubt;
  }

  void order() {
    const auto rank = [&](const DayReason& r) {
      if (r.broken && answer_.advice && r.leads_to == *answer_.advice) return 0;
      return r.broken ? 1 : 2;
    };
    const auto margin = [](const DayReason& r) { return margin_of(r.measured, {r.limit, r.at_least, {}}); };
    std::stable_sort(answer_.reasons.begin(), answer_.reasons.end(), [&](const DayReason& a, const DayReason& b) {
      return rank(a) != rank(b) ? rank(a) < rank(b) : margin(a) < margin(b);
    });
  }

  DayWork& work_;
  DayAnswer& answer_;
};

}  // namespace

DayReason& add_reason(DayWork& work, std::string_view code, double measured, const Limit& limit,
                      std::string_view unit) {
  DayReason reason;
  reason.code = code;
  reason.subject = "bore";
  reason.name = translatable("bore");
  reason.measured = measured;
  reason.limit = limit.value;
  reason.at_least = limit.at_least;
  reason.unit = unit;
  reason.source = limit.source;
  reason.broken = margin_of(measured, limit) < 0;
  work.answer.reasons.push_back(reason);
  return work.answer.reasons.back();
}

Advice if_near(const DayWork& work, Advice otherwise) {
  return work.answer.near.empty() ? otherwise : Advice::leave_and_expose;
}

void advise(DayWork& work) {
  Adviser(work).run();
}

}  // namespace burrow
