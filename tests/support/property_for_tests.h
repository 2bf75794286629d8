#pragma once
/// The promise as a property: a crossing, and something done to it after which less is known, or more is at stake; the
/// verdict must not get better. Crossings are drawn as crews lay them out, with everything answered; each change is one
/// step.

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
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
  u.located.level = "asce38-a";
  u.located.tracer = draw.one_in(2) ? TracedBy::wire : TracedBy::sonde;
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
    hole.station = Length{(u.path[0].x_m + u.path[1].x_m) / 2};
    hole.level.set(LevelMeant::centre);
    hole.elevation = Length{*u.path[0].z_m};
    hole.date = "2026-02-26";
    hole.by = "A. Nobody";
    c.site.test_holes.push_back(hole);
  }
  if (c.site.utilities.empty()) c.site.utility_search.none_found.set(true);
  return c;
}

/// What is done to a crossing. `hides`: it takes a datum away, so that a broken limit may turn into one that nobody can
/// judge.
struct Change {
  const char* name;
  bool hides;
  /// False: there is nothing here to do it to.
  std::function<bool(Draw&, Crossing&, Tables&)> apply;
};

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
      {"worse across", false,
       to_utility([](Draw& d, Utility& u, Crossing&) { return u.located.lateral_sd->m *= d.between(1.05, 3), true; })},
      // One that was better than a tracing tells, without a reason, counts for none: a worse one is then an answer.
      {"worse in height", false, to_utility([](Draw& d, Utility& u, Crossing& c) {
         if (find(judged(c), "missing.utility-depth-error", u.id)) return false;
         return u.located.vertical_sd->m *= d.between(1.05, 3), true;
       })},
      // nearer, larger
      {"larger", false,
       to_utility([](Draw& d, Utility& u, Crossing&) { return u.outside_diameter->m *= d.between(1.02, 1.5), true; })},
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
  for (const UtilityAnswer& u : answer.utilities) {
    if (u.contact_chance) {
      EXPECT_TRUE(*u.contact_chance >= 0 && *u.contact_chance <= 1) << what;
    }
    if (u.contact_chance && u.contact_chance_worst) {
      EXPECT_GE(*u.contact_chance_worst, *u.contact_chance * (1 - 1e-9)) << what;
    }
  }
  (void)c;
}

/// Pairs of a crossing and a change to it, `pairs` of them from this seed on.
inline void expect_no_better(unsigned seed, int pairs) {
  constexpr int changes_each = 5;
  for (int pair = 0; pair < pairs; pair += changes_each, ++seed) {
    const Crossing before = drawn_crossing(seed);
    const Assessment judged_before = judged(before);
    expect_sound(before, judged_before, "seed " + std::to_string(seed));
    Draw draw(seed ^ 0x5bd1e995U);
    for (int k = 0; k < changes_each; ++k) {
      const Change& change = draw.of(changes());
      Crossing after = before;
      Tables then = tables();
      if (!change.apply(draw, after, then)) continue;
      const std::string what = "seed " + std::to_string(seed) + ", " + change.name;
      const Assessment judged_after = assess(after, then);
      expect_sound(after, judged_after, what);
      EXPECT_GE(rank_of(judged_after.verdict, change.hides), rank_of(judged_before.verdict, change.hides))
          << what << "\nbefore: " << listed(judged_before) << "\nafter: " << listed(judged_after);
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
