#pragma once
/// Bores of known constants, made by brute force, for the tests of learning.

#include <cmath>
#include <random>

#include "burrow/bore/advance.h"
#include "burrow/bore/conditioning.h"
#include "burrow/day/learn.h"
#include "burrow/practice/true_bore.h"
#include "support/clean_crossing.h"

namespace burrow::test {

struct Constants {
  double steer, wander, factor;
};

/// The priors themselves, as the method states them.
inline Constants drawn_constants(std::mt19937_64& engine, double wander_class) {
  std::normal_distribution<double> normal;
  const double variance = std::log1p(0.03 * 0.03 / (0.04 * 0.04));
  Constants c{};
  c.steer = std::exp(std::log(0.04) - 0.5 * variance + std::sqrt(variance) * normal(engine));
  c.wander = wander_class * std::exp(0.5 * normal(engine));
  c.factor = 0.3 * std::exp(0.628 * normal(engine));
  return c;
}

inline Reading read(ReadingKind kind, double time_s, double nose_m) {
  Reading r;
  r.kind = kind;
  r.time = Duration{time_s};
  r.nose = Length{nose_m};
  return r;
}

/// What is read in each of these bores: a level and a heading early, two fixes, the arrival.
struct Schooled {
  Crossing crossing = clean_crossing();
  double length_m = 10;
  double level_at_m = 1.5, fix_at_m[2] = {4, 7};

  Schooled() {
    crossing.bore.exit.station = Length{length_m};
    crossing.bore.tool.tool_class = "tool-130";  // heavy in soft ground: it sags enough to tell c by
    crossing.site.strata[0].soil = "soft-clay";
    crossing.site.utilities.clear();
  }

  /// One bore with these constants, as its record. Errors of set-up, readings and rate are drawn.
  [[nodiscard]] DayRecord bored(const Constants& c, std::mt19937_64& engine) const {
    std::normal_distribution<double> normal;
    Crossing truth = crossing;
    truth.bore.model.steer_constant.set(Ratio{c.steer});
    for (Stratum& s : truth.site.strata) s.values.wander = Wander{c.wander};
    const Ground ground(truth.site, tables());
    const Tool tool = resolve_tool(truth.bore.tool, tables());
    const SetErrors errors{0.005 * normal(engine), 0.005 * normal(engine), 0.005 * normal(engine),
                           0.005 * normal(engine)};
    const BorePath path = true_bore(ground, tool, truth.bore, errors, {engine(), true, true}, {}, Length{0.1}).path;
    DayRecord record;
    record.id = "d1";
    record.readings.push_back(read(ReadingKind::start, 0, 0));
    rate(record, path, ground, tool, c, engine);
    const PathPoint level = point_at(path, level_at_m);
    record.readings.push_back(read(ReadingKind::grade, 1e6, level_at_m));
    record.readings.back().grade = Ratio{std::tan(level.grade_rad + 0.002 * normal(engine))};
    record.readings.push_back(read(ReadingKind::heading, 1e6, level_at_m));
    record.readings.back().heading = Angle{level.heading_rad + 0.003 * normal(engine)};
    for (const double at : fix_at_m) {
      const PathPoint p = point_at(path, at);
      record.readings.push_back(read(ReadingKind::fix, 1e6, at));
      record.readings.back().offset = Length{p.y_m + 0.05 * normal(engine)};
      record.readings.back().depth = Length{100 - p.z_m + 0.06 * normal(engine)};
    }
    if (path.ends == PathEnd::exit) {
      Reading arrival;
      arrival.kind = ReadingKind::arrival;
      arrival.time = Duration{2e6};
      arrival.offset = Length{path.points.back().y_m + 0.01 * normal(engine)};
      arrival.elevation = Length{path.points.back().z_m + 0.01 * normal(engine)};
      record.readings.push_back(arrival);
    }
    return record;
  }

 private:
  /// Marks every 1.5 m: the factor of the class, of the bore about it, of each piece.
  void rate(DayRecord& record, const BorePath& path, const Ground& ground, const Tool& tool, const Constants& c,
            std::mt19937_64& engine) const {
    std::normal_distribution<double> normal;
    const Advance advance = advance_along(ground, tool, path, {tool.pressure, {1.0}, {0.0002}});
    const double bore = std::log(c.factor) + 0.30 * normal(engine);
    double time = 0, from = 0;
    for (double to = 1.5; to < path.length_m; to += 1.5) {
      double expected = 0;
      for (std::size_t i = 1; i < advance.points.size(); ++i)
        if (advance.points[i].s_m > from && advance.points[i].s_m <= to + 1e-9)
          expected += advance.points[i].time.p50_s - advance.points[i - 1].time.p50_s;
      time += expected * std::exp(-bore - 0.25 * normal(engine));
      record.readings.push_back(read(ReadingKind::mark, time, to));
      from = to;
    }
  }
};

/// How often the stated 90 % interval holds the constant it was made from.
struct Coverage {
  int of = 0, steer = 0, wander = 0, factor = 0;
  void add(const LearnedSoil& learned, const Constants& truth) {
    const auto holds = [](const LearnedValue& v, double value) { return v.low <= value && value <= v.high; };
    ++of;
    steer += holds(learned.steer_constant, truth.steer);
    wander += holds(learned.wander_rad_sqrt_m, truth.wander);
    factor += holds(learned.field_factor, truth.factor);
  }
};

inline Coverage coverage(int times, int bores_each, std::uint64_t seed) {
  const Schooled school;
  std::mt19937_64 engine(seed);
  Coverage covered;
  const double wander_class = find_soil(tables(), "soft-clay")->wander.rad_sqrt_m;
  for (int i = 0; i < times; ++i) {
    const Constants truth = drawn_constants(engine, wander_class);
    Crossing crossing = school.crossing;
    for (int k = 0; k < bores_each; ++k) crossing.record.push_back(school.bored(truth, engine));
    const LearnLibrary library = learn(evidence_of(crossing, tables()).bores);
    covered.add(library.soils.at(0), truth);
  }
  return covered;
}

/// A record of nothing but how far it got and how it ended.
inline DayRecord stopped_record(EndHow how, double at_m) {
  DayRecord record;
  record.id = "d1";
  record.readings = {read(ReadingKind::start, 0, 0), read(ReadingKind::mark, 600, at_m)};
  Reading end;
  end.kind = ReadingKind::end;
  end.time = Duration{700};
  end.how = how;
  record.readings.push_back(end);
  return record;
}

struct RefusalCoverage {
  int of = 0, held = 0;
};

/// Rates drawn from the prior of dense sand, bores of 10 m each until the ground stops them: by way of records, or as
/// evidence right away.
inline RefusalCoverage refusal_coverage(int times, int bores_each, std::uint64_t seed, bool by_records) {
  Schooled school;
  school.crossing.site.strata[0].soil = "dense-sand";
  const SoilClass& sand = *find_soil(tables(), "dense-sand");
  std::mt19937_64 engine(seed);
  std::exponential_distribution<double> prior(1 / sand.refusal_rate.per_m);  // gamma of shape 1
  RefusalCoverage covered;
  for (int i = 0; i < times; ++i) {
    const double rate = prior(engine);
    std::exponential_distribution<double> stop(rate);
    Crossing crossing = school.crossing;
    Evidence evidence;
    for (int k = 0; k < bores_each; ++k) {
      const double at = stop(engine);
      const bool stopped = at < school.length_m;
      crossing.record.push_back(
          stopped_record(stopped ? EndHow::stuck : EndHow::arrived, std::min(at, school.length_m)));
      evidence.stops.push_back(
          {sand.id, sand.refusal_rate.per_m, sand.wander.rad_sqrt_m, std::min(at, school.length_m), stopped});
    }
    if (by_records) evidence = evidence_of(crossing, tables());
    const LearnedRate learnt = *learn(evidence).soils.at(0).refusal_rate;
    ++covered.of;
    covered.held += learnt.low_1_m <= rate && rate <= learnt.high_1_m;
  }
  return covered;
}

}  // namespace burrow::test
