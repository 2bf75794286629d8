#include "burrow/document/practice_fields.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/file/practice_file.h"
#include "burrow/language/say.h"
#include "number_field.h"

namespace burrow {

Practice practice_of(const Crossing& crossing, const Tables& tables) {
  if (crossing.practice.empty()) return {};
  return read_practice(crossing.practice, tables).value_or(Practice());
}

namespace {

/// Fields of the truth, one after the other.
class TruthFields {
 public:
  TruthFields(const Crossing& crossing, const Tables& tables)
      : tables_(tables), truth_(practice_of(crossing, tables).truth) {}

  void add(std::string label, Dimension dimension, double low, double high, double value, double default_value,
           std::function<void(PracticeTruth&, double)> put) {
    Field field = typed_field(std::move(label), dimension, {low, high}, value,
                              [&tables = tables_, put = std::move(put), default_value](Crossing& c, Typed typed) {
                                Practice changed = practice_of(c, tables);
                                put(changed.truth, typed.value_or(default_value));
                                c.practice = write_practice(changed);
                              });
    field.entered = value != default_value;
    field.default_value = default_value;
    fields_.push_back(std::move(field));
  }
  [[nodiscard]] const PracticeTruth& truth() const { return truth_; }
  [[nodiscard]] std::vector<Field> all() { return std::move(fields_); }

 private:
  const Tables& tables_;
  PracticeTruth truth_;
  std::vector<Field> fields_;
};

constexpr double trench_reach_m = 20;  ///< so far it runs to either side of the line

double middle_of(const Crossing& crossing) {
  return (crossing.bore.launch.station.m + crossing.bore.exit.station.m) / 2;
}

struct TrenchEdges {
  double from_m = 0, to_m = 0;
};

/// Stations between which a trench lies where it meets the line.
TrenchEdges edges_of(const Strip& trench) {
  if (trench.outline.empty()) return {};
  TrenchEdges edges{1e300, -1e300};
  for (std::size_t i = 0; i < trench.outline.size(); ++i) {
    const PlanPoint &p = trench.outline[i], &q = trench.outline[(i + 1) % trench.outline.size()];
    if ((p.y_m > 0) == (q.y_m > 0)) continue;
    const double x = p.x_m + (q.x_m - p.x_m) * p.y_m / (p.y_m - q.y_m);
    edges.from_m = std::min(edges.from_m, x);
    edges.to_m = std::max(edges.to_m, x);
  }
  return edges.from_m > edges.to_m ? TrenchEdges{} : edges;
}

PlanLine trench_between(double from_m, double to_m) {
  const auto [low, high] = std::minmax(from_m, to_m);
  return {{low, -trench_reach_m}, {high, -trench_reach_m}, {high, trench_reach_m}, {low, trench_reach_m}};
}

/// Its near or far edge meets the line there, as skew as it was; the trench keeps 5 cm of width.
void move_edge(Strip& trench, bool near_edge, double to_m) {
  constexpr double least_width_m = 0.05;
  const TrenchEdges now = edges_of(trench);
  const double at = near_edge ? std::min(to_m, now.to_m - least_width_m) : std::max(to_m, now.from_m + least_width_m);
  if (trench.outline.size() != 4) {
    trench.outline = near_edge ? trench_between(at, now.to_m) : trench_between(now.from_m, at);
    return;
  }
  const double by = at - (near_edge ? now.from_m : now.to_m);
  for (const std::size_t corner : near_edge ? std::array<std::size_t, 2>{0, 3} : std::array<std::size_t, 2>{1, 2})
    trench.outline[corner].x_m += by;
}

}  // namespace

StoneHit stone_half_way(const Crossing& crossing) {
  return {(crossing.bore.exit.station.m - crossing.bore.launch.station.m) / 2, 0.01, 0};
}

Strip trench_half_way(const Crossing& crossing, const std::string& soil) {
  Strip trench;
  trench.name = "old trench";
  trench.soil = soil;
  const double middle = middle_of(crossing);
  trench.outline = trench_between(middle - 0.3, middle + 0.3);
  trench.bottom_elevation = Length{crossing.bore.launch.elevation.m - 0.3};
  return trench;
}

std::vector<Field> hidden_fields(const Crossing& crossing, const Tables& tables) {
  TruthFields fields(crossing, tables);
  const PracticeTruth& truth = fields.truth();
  if (!truth.services.empty()) {
    const auto moved = [&](const char* label, double MovedService::*member) {
      fields.add(label, Dimension::station, -most_off_mark_m, most_off_mark_m, truth.services.front().*member, 0,
                 [member](PracticeTruth& t, double v) {
                   if (!t.services.empty()) t.services.front().*member = v;
                 });
    };
    moved("service off its mark, to its own left", &MovedService::across_m);
    moved("service off its mark, higher", &MovedService::up_m);
  }
  const double length = std::max(crossing.bore.exit.station.m - crossing.bore.launch.station.m, 0.1);
  for (std::size_t i = 0; i < truth.stones.size(); ++i) {
    const std::string name = say("stone {}", i + 1);
    const auto stone = [&, i](const std::string& label, Dimension dimension, double low, double high,
                              double StoneHit::*member, double default_value) {
      fields.add(label, dimension, low, high, truth.stones[i].*member, default_value,
                 [i, member](PracticeTruth& t, double v) {
                   if (i < t.stones.size()) t.stones[i].*member = v;
                 });
    };
    stone(name + ", met after", Dimension::length, 0, 2 * length, &StoneHit::s_m, length / 2);
    stone(name + ", turns the nose up", Dimension::angle, -0.2, 0.2, &StoneHit::up_rad, 0);
    stone(name + ", turns the nose left", Dimension::angle, -0.2, 0.2, &StoneHit::left_rad, 0);
  }
  if (!truth.trenches.empty()) {
    const Strip& trench = truth.trenches.front();
    const TrenchEdges edges = edges_of(trench);
    const double middle = middle_of(crossing);
    fields.add("trench, from station", Dimension::station, -1e4, 1e4, edges.from_m, middle - 0.3,
               [](PracticeTruth& t, double v) {
                 if (!t.trenches.empty()) move_edge(t.trenches.front(), true, v);
               });
    fields.add("trench, to station", Dimension::station, -1e4, 1e4, edges.to_m, middle + 0.3,
               [](PracticeTruth& t, double v) {
                 if (!t.trenches.empty()) move_edge(t.trenches.front(), false, v);
               });
    fields.add("trench, level of its bottom", Dimension::station, -9e3, 9e3, trench.bottom_elevation.m,
               crossing.bore.launch.elevation.m - 0.3, [](PracticeTruth& t, double v) {
                 if (!t.trenches.empty()) t.trenches.front().bottom_elevation = Length{v};
               });
  }
  return fields.all();
}

std::vector<Field> truth_fields(const Crossing& crossing, const Tables& tables) {
  TruthFields fields(crossing, tables);
  const PracticeTruth plain;
  const PracticeTruth& truth = fields.truth();
  const auto add = [&](const char* label, Dimension dimension, double low, double high, double value,
                       double default_value, std::function<void(PracticeTruth&, double)> put) {
    fields.add(label, dimension, low, high, value, default_value, std::move(put));
  };
  add("level set wrong, nose up +", Dimension::angle, -0.2, 0.2, truth.errors.level_rad, 0,
      [](PracticeTruth& t, double v) { t.errors.level_rad = v; });
  add("sight set wrong, left +", Dimension::angle, -0.2, 0.2, truth.errors.aim_rad, 0,
      [](PracticeTruth& t, double v) { t.errors.aim_rad = v; });
  add("start too high", Dimension::small_length, -0.5, 0.5, truth.errors.up_m, 0,
      [](PracticeTruth& t, double v) { t.errors.up_m = v; });
  add("start too far left", Dimension::small_length, -0.5, 0.5, truth.errors.left_m, 0,
      [](PracticeTruth& t, double v) { t.errors.left_m = v; });
  add("steering constant", Dimension::ratio, 0, 1, truth.steer_constant, plain.steer_constant,
      [](PracticeTruth& t, double v) { t.steer_constant = v; });
  add("field factor", Dimension::ratio, 0.01, 10, truth.field_factor, plain.field_factor,
      [](PracticeTruth& t, double v) { t.field_factor = v; });
  add("seed", Dimension::count, 0, 1e9, static_cast<double>(truth.seed), static_cast<double>(plain.seed),
      [](PracticeTruth& t, double v) { t.seed = static_cast<std::uint64_t>(std::llround(v)); });
  return fields.all();
}

}  // namespace burrow
