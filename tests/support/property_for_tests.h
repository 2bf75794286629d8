#pragma once
/// The promise as a property: a crossing, and something done to it after which less is known, or more is at stake; the
/// verdict must not get better. Crossings are drawn as crews lay them out, with everything answered; each change is one
/// step.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <vector>

#include "burrow/check/mute.h"
#include "burrow/clearance/contact.h"
#include "burrow/file/assessment_file.h"
#include "support/clean_crossing.h"

namespace burrow::test {

class Draw {
 public:
  explicit Draw(unsigned seed) : random_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(random_()) / 4294967296.0);
  }
  bool one_in(unsigned n) { return random_() % n == 0; }
  std::size_t below(std::size_t n) { return random_() % n; }
  template <class T>
  const T& of(const std::vector<T>& all) {
    return all[below(all.size())];
  }

 private:
  std::mt19937 random_;
};

/// Most go on far beyond the bore; some end short of it or are a lone place, their ends declared or not.
inline void draw_ends(Draw& draw, Utility& u) {
  const auto end = [&]() -> std::optional<LineEnd> {
    if (draw.one_in(3)) return std::nullopt;
    return EnumNames<LineEnd>::list[draw.below(std::size(EnumNames<LineEnd>::list))].first;
  };
  if (draw.one_in(5)) u.path[1].y_m = -draw.between(0.5, 4);
  if (draw.one_in(12)) u.path[0] = u.path[1];  // entered twice
  if (draw.one_in(20)) u.path.erase(u.path.begin());
  u.ends = {end(), end(), ""};
}

inline Utility drawn_utility(Draw& draw, const Crossing& c, int number) {
  const double length = c.bore.exit.station.m, axis = c.bore.launch.elevation.m;
  Utility u;
  u.id = "u" + std::to_string(number);
  u.kind = EnumNames<UtilityKind>::list[draw.below(std::size(EnumNames<UtilityKind>::list))].first;
  u.status.set(draw.one_in(6)   ? UtilityStatus::abandoned
               : draw.one_in(8) ? UtilityStatus::proposed
                                : UtilityStatus::live);
  if (draw.one_in(2)) u.abandonment = {"cut and capped", "A. Nobody", "2026-01-15", ""};
  u.material = draw.of(std::vector<std::string>{"steel", "pe", "clay", "ductile iron", "armoured", ""});
  u.outside_diameter = Length{draw.between(0.03, 0.4)};
  const double x = draw.between(0.15, 0.85) * length, z = axis + (draw.one_in(2) ? 1 : -1) * draw.between(0.1, 2.5);
  const double level = std::min(z, 99.6), skew = draw.between(-2, 2);
  u.path = {{x - skew, -9, level}, {x + skew, 9, level}};
  u.located.how.set(draw.of(
      std::vector<LocatedHow>{LocatedHow::traced, LocatedHow::traced_twice, LocatedHow::records, LocatedHow::exposed}));
  u.located.lateral_sd = Length{draw.between(0.02, 0.3)};
  u.located.vertical_sd = Length{draw.between(0.02, 0.3)};
  u.located.level = draw.one_in(8) ? "asce38-a" : draw.one_in(6) ? "manhole-levels" : "checked-at-hole";
  u.located.tracer = draw.one_in(6) ? TracedBy::none : draw.one_in(2) ? TracedBy::wire : TracedBy::sonde;
  draw_ends(draw, u);
  return u;
}

inline Crossing drawn_crossing(unsigned seed) {
  Draw draw(seed);
  Crossing c = clean_crossing();
  c.site.strata[0].soil = draw.of(tables().soils).id;
  if (draw.one_in(4)) c.site.strata[0].known.set(StratumEvidence::borehole);
  c.bore.tool.tool_class = draw.of(tables().tools).id;
  c.bore.exit.station = Length{draw.between(5, 16)};
  c.bore.launch.elevation = Length{100 - draw.between(0.9, 2.4)};
  c.bore.launch.grade = Ratio{draw.between(-0.02, 0.01)};
  c.site.surface[0].from = Length{draw.between(1, 2)};
  c.site.surface[0].to = Length{draw.between(3, 4.8)};
  c.site.utilities.clear();
  const std::size_t utilities = draw.below(4);
  for (std::size_t i = 0; i < utilities; ++i) {
    c.site.utilities.push_back(drawn_utility(draw, c, static_cast<int>(i) + 1));
    const Utility& u = c.site.utilities.back();
    if (*u.located.how != LocatedHow::exposed) continue;
    TestHole hole;
    hole.id = "h" + std::to_string(i + 1);
    hole.utility = u.id;
    hole.station = Length{(u.path.front().x_m + u.path.back().x_m) / 2};
    hole.level.set(LevelMeant::centre);
    hole.elevation = Length{*u.path.front().z_m};
    hole.date = "2026-02-26";
    hole.by = "A. Nobody";
    c.site.test_holes.push_back(hole);
  }
  if (c.site.utilities.empty()) c.site.utility_search.none_found.set(true);
  if (draw.one_in(4)) {
    Background line;
    line.id = "g1";
    line.layer = "MISC";
    line.lines = {{{draw.between(1, 4), -5}, {draw.between(1, 4), 5}}};
    line.not_a_service = {"", "A. Nobody", "2026-03-01", ""};
    c.site.background = {line};
  }
  return c;
}

/// What is done to a crossing. `hides`: it takes a datum away, so that a broken limit may turn into one that nobody can
/// judge.
struct Change {
  const char* name;
  bool hides;
  /// False: there is nothing here to do it to.
  std::function<bool(Draw&, Crossing&, Tables&)> apply;
  bool chances_hold = false;  ///< no chance of contact may fall
};

/// Towards the axis of the bore, in height: a line in the middle of the bore, far from either pit, that no hole pins
/// and whose place nobody doubts. (Elsewhere nearer to the bore may be farther from a pit, or less deep and so no
/// longer asked about.)
inline bool move_nearer(Draw& draw, Utility& u, const Crossing& c) {
  const double length = c.bore.exit.station.m;
  const auto there = [&](const PathVertex& v) { return v.x_m > 3 && v.x_m < length - 3; };
  if (!std::all_of(u.path.begin(), u.path.end(), there)) return false;
  for (const TestHole& hole : c.site.test_holes)
    if (hole.utility == u.id) return false;
  const Assessment before = judged(c);
  if (find(before, "missing.utility-depth-error", u.id)) return false;
  for (const UtilityAnswer& answer : before.utilities) {
    if (answer.id != u.id || !answer.on_bore || !answer.separation_m || !(*answer.separation_m > 0.02)) continue;
    const double away = *u.path.front().z_m - answer.on_bore->z_m;
    const double by = std::min(draw.between(0.1, 0.9) * std::abs(away), std::abs(away));
    for (PathVertex& v : u.path) *v.z_m -= std::copysign(by, away);
    return true;
  }
  return false;
}

inline const std::vector<Change>& changes() {
  const auto to_utility = [](auto change) {
    return [change](Draw& draw, Crossing& c, Tables&) {
      if (c.site.utilities.empty()) return false;
      return change(draw, c.site.utilities[draw.below(c.site.utilities.size())], c);
    };
  };
  const auto to_crossing = [](auto change) {
    return [change](Draw& draw, Crossing& c, Tables&) { return change(draw, c); };
  };
  static const std::vector<Change> all{
      // a datum or a piece of evidence goes
      {"water gone", true, to_crossing([](Draw&, Crossing& c) { return c.site.water.reset(), true; })},
      {"diameter gone", true,
       to_utility([](Draw&, Utility& u, Crossing&) { return u.outside_diameter.reset(), true; })},
      {"depth gone", true, to_utility([](Draw&, Utility& u, Crossing&) {
         for (PathVertex& v : u.path) v.z_m.reset();
         return true;
       })},
      {"sd across gone", true, to_utility([](Draw&, Utility& u, Crossing&) {
         u.located.level.reset();
         return u.located.lateral_sd.reset(), true;
       })},
      {"sd in height gone", true, to_utility([](Draw&, Utility& u, Crossing&) {
         u.located.level.reset();
         return u.located.vertical_sd.reset(), true;
       })},
      {"an error of nothing", true,
       to_utility([](Draw&, Utility& u, Crossing&) { return u.located.vertical_sd = Length{0}, true; })},
      {"kind gone", false,
       to_utility([](Draw&, Utility& u, Crossing&) { return u.kind = UtilityKind::unknown, true; })},
      {"status gone", false, to_utility([](Draw&, Utility& u, Crossing&) { return u.status = {}, true; })},
      {"proof of abandonment gone", false,
       to_utility([](Draw&, Utility& u, Crossing&) { return u.abandonment = {}, true; })},
      {"how it was located gone", false,
       to_utility([](Draw&, Utility& u, Crossing&) { return u.located.how = {}, true; })},
      {"tracer gone", false, to_utility([](Draw&, Utility& u, Crossing&) { return u.located.tracer.reset(), true; })},
      {"material gone", true, to_utility([](Draw&, Utility& u, Crossing&) { return u.material.clear(), true; })},
      {"holes gone", true,
       to_crossing([](Draw&, Crossing& c) { return !c.site.test_holes.empty() && (c.site.test_holes.clear(), true); })},
      {"who measured gone", false, to_crossing([](Draw&, Crossing& c) {
         if (c.site.test_holes.empty()) return false;
         return c.site.test_holes[0].by.clear(), true;
       })},
      {"date of a hole gone", false, to_crossing([](Draw&, Crossing& c) {
         if (c.site.test_holes.empty()) return false;
         return c.site.test_holes[0].date.reset(), true;
       })},
      {"search gone", true, to_crossing([](Draw&, Crossing& c) { return c.site.utility_search.done.reset(), true; })},
      {"reference gone", true,
       to_crossing([](Draw&, Crossing& c) { return c.site.utility_search.reference.clear(), true; })},
      {"date of the search gone", true,
       to_crossing([](Draw&, Crossing& c) { return c.site.utility_search.date.reset(), true; })},
      {"validity gone", true,
       to_crossing([](Draw&, Crossing& c) { return c.site.utility_search.valid_to.reset(), true; })},
      {"marks gone", true,
       to_crossing([](Draw&, Crossing& c) { return c.site.utility_search.marks_visible = false, true; })},
      {"laterals gone", true,
       to_crossing([](Draw&, Crossing& c) { return c.site.utility_search.laterals.reset(), true; })},
      {"none found gone", true,
       to_crossing([](Draw&, Crossing& c) { return c.site.utility_search.none_found = {}, c.site.utilities.empty(); })},
      {"permit gone", true, to_crossing([](Draw&, Crossing& c) { return c.site.surface[0].permit.clear(), true; })},
      {"permission gone", true,
       to_crossing([](Draw&, Crossing& c) { return c.site.surface[0].permission = {}, true; })},
      {"rule gone", true, to_crossing([](Draw&, Crossing& c) { return c.site.surface[0].rule.reset(), true; })},
      {"rescue gone", false, to_crossing([](Draw&, Crossing& c) { return c.site.surface[0].rescue = {}, true; })},
      {"pipe gone", true, to_crossing([](Draw&, Crossing& c) { return c.pipe.reset(), true; })},
      {"ground too short", true, to_crossing([](Draw&, Crossing& c) {
         return c.site.ground = {{1, 100}, {3, 100}}, true;
       })},
      {"soil less known", false,
       to_crossing([](Draw&, Crossing& c) { return c.site.strata[0].known.set(StratumEvidence::guess), true; })},
      // errors grow
      // One that was better than a tracing tells, without a reason, counts for none: a worse one is then an answer.
      {"worse across", false, to_utility([](Draw& d, Utility& u, Crossing& c) {
         if (find(judged(c), "missing.utility-depth-error", u.id)) return false;
         return u.located.lateral_sd->m *= d.between(1.05, 3), true;
       })},
      {"worse in height", false, to_utility([](Draw& d, Utility& u, Crossing& c) {
         if (find(judged(c), "missing.utility-depth-error", u.id)) return false;
         return u.located.vertical_sd->m *= d.between(1.05, 3), true;
       })},
      {"tracer denied", false,
       to_utility([](Draw&, Utility& u, Crossing&) { return u.located.tracer = TracedBy::none, true; })},
      {"ends no longer declared", true, to_utility([](Draw&, Utility& u, Crossing&) { return u.ends = {}, true; })},
      {"nobody says what a line is", true, to_crossing([](Draw&, Crossing& c) {
         if (c.site.background.empty()) return false;
         return c.site.background[0].not_a_service = {}, true;
       })},
      {"place of what stands above gone", true, to_crossing([](Draw& d, Crossing& c) {
         if (d.one_in(2))
           c.site.surface[0].from.reset();
         else
           c.site.surface[0].to.reset();
         return true;
       })},
      // nearer, larger
      {"nearer", false, to_utility([](Draw& d, Utility& u, Crossing& c) { return move_nearer(d, u, c); }), true},
      {"larger", false,
       to_utility([](Draw& d, Utility& u, Crossing&) { return u.outside_diameter->m *= d.between(1.02, 1.5), true; }),
       true},
      // time and words
      {"years later", true,
       [](Draw& d, Crossing&, Tables& t) {
         return t.judged_on = Date{2027 + static_cast<int>(d.below(5)), 1, 1}, true;
       }},
      {"nobody knows the day", true, [](Draw&, Crossing&, Tables& t) { return t.judged_on.reset(), true; }},
      {"a limit loosened without reason", false, to_crossing([](Draw& d, Crossing& c) {
         const LimitRow& row = d.of(tables().limits);
         if (row.unit == "m3" || row.value == 0) return false;
         c.limits[row.id] = {row.at_least ? row.value * 0.5 : row.value * 1.5, " - ", ""};
         return true;
       })},
  };
  return all;
}

/// Stop and incomplete are alike where a datum was taken away: what nobody can judge is no better for it.
inline int rank_of(Verdict verdict, bool hides) {
  switch (verdict) {
    case Verdict::within_limits:
      return 0;
    case Verdict::caution:
      return 1;
    case Verdict::incomplete:
      return 2;
    case Verdict::stop:
      break;
  }
  return hides ? 2 : 3;
}

inline void expect_sound(const Crossing& c, const Assessment& answer, const std::string& what) {
  for (const Finding& f : answer.findings) {
    for (const std::optional<double>& value : {f.measured, f.limit, f.margin, f.station_m})
      if (value) {
        EXPECT_TRUE(std::isfinite(*value)) << what << ": " << f.code;
      }
  }
  AssessmentOptions options;
  options.working = false;
  const auto json = nlohmann::json::parse(write_assessment(c, answer, "x.crossing", options), nullptr, false);
  ASSERT_TRUE(json.is_object()) << what;
  for (const auto& point : json.at("bore").at("path"))
    for (const char* key : {"s_m", "x_m", "y_m", "z_m", "grade", "sd_lateral_m", "sd_vertical_m", "cover_m"})
      EXPECT_TRUE(point.at(key).is_number()) << what << ": " << key;
  for (const UtilityAnswer& u : answer.utilities) {
    if (u.contact_chance) {
      EXPECT_TRUE(*u.contact_chance >= 0 && *u.contact_chance <= 1) << what;
    }
    if (u.contact_chance && u.contact_chance_worst) {
      EXPECT_GE(*u.contact_chance_worst, *u.contact_chance * (1 - 1e-9)) << what;
    }
  }
}

/// No chance of contact falls where what is at stake only comes nearer or gets larger.
inline void expect_chances_hold(const Assessment& before, const Assessment& after, const std::string& what) {
  for (std::size_t i = 0; i < before.utilities.size() && i < after.utilities.size(); ++i) {
    const auto &was = before.utilities[i].contact_chance_worst, &is = after.utilities[i].contact_chance_worst;
    if (!was) continue;
    ASSERT_TRUE(is) << what;
    EXPECT_GE(*is, *was * (1 - 1e-3) - 1e-9) << what << " " << before.utilities[i].id;
  }
}

/// Pairs of a crossing and a change to it, `pairs` of them from this seed on; one to which nothing could be done is
/// none.
inline void expect_no_better(unsigned seed, int pairs) {
  constexpr int changes_each = 5;
  for (int pair = 0; pair < pairs; ++seed) {
    const Crossing before = drawn_crossing(seed);
    const Assessment judged_before = judged(before);
    expect_sound(before, judged_before, "seed " + std::to_string(seed));
    Draw draw(seed ^ 0x5bd1e995U);
    for (int k = 0; k < changes_each; ++k) {
      const Change& change = draw.of(changes());
      Crossing after = before;
      Tables then = tables();
      if (!change.apply(draw, after, then)) continue;
      ++pair;
      const std::string what = "seed " + std::to_string(seed) + ", " + change.name;
      const Assessment judged_after = assess(after, then);
      expect_sound(after, judged_after, what);
      EXPECT_GE(rank_of(judged_after.verdict, change.hides), rank_of(judged_before.verdict, change.hides))
          << what << "\nbefore: " << listed(judged_before) << "\nafter: " << listed(judged_after);
      if (change.chances_hold) expect_chances_hold(judged_before, judged_after, what);
    }
    // A mute removes its own caution and nothing else.
    if (judged_before.findings.empty()) continue;
    const Finding& muted = judged_before.findings[draw.below(judged_before.findings.size())];
    Crossing quiet = before;
    const auto with = with_mute(before, muted, {"agreed", "A. Nobody", "2026-03-01"});
    if (!with) continue;
    quiet.muted = *with;
    const Assessment judged_quiet = judged(quiet);
    const auto count = [](const Assessment& a, auto holds) {
      return std::count_if(a.findings.begin(), a.findings.end(), holds);
    };
    const auto stop = [](const Finding& f) { return f.severity == Severity::stop; };
    const auto missing = [](const Finding& f) { return f.missing; };
    EXPECT_EQ(count(judged_quiet, stop), count(judged_before, stop)) << "seed " << seed << " " << muted.code;
    EXPECT_EQ(count(judged_quiet, missing), count(judged_before, missing)) << "seed " << seed << " " << muted.code;
    if (muted.severity != Severity::caution || can_hurt_people(muted)) {
      EXPECT_EQ(judged_quiet.verdict, judged_before.verdict) << "seed " << seed << " " << muted.code;
    }
  }
}

}  // namespace burrow::test
