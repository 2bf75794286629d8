#include "burrow/drawing/pit_edges.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "burrow/base/quantity_text.h"
#include "burrow/crossing/floor_outline.h"
#include "burrow/document/text.h"
#include "burrow/pit/proposal.h"

namespace burrow {

namespace {

constexpr double least_floor_m = 0.3;
constexpr double least_depth_m = 0.1, greatest_depth_m = 30;
constexpr double flattest = 20;  // run for each unit of rise

double rounded(double value, double step) {
  return step > 0 ? std::round(value / step) * step : value;
}

bool is_launch(const ItemRef& part) {
  return part.id == "launch";
}

Pit& pit_in(Pits& pits, const ItemRef& part) {
  return is_launch(part) ? pits.launch : pits.exit;
}
const Pit& pit_in(const Pits& pits, const ItemRef& part) {
  return is_launch(part) ? pits.launch : pits.exit;
}

double middle_station(const PitShape& shape) {
  return (shape.floor_from_m + shape.floor_to_m) / 2;
}

/// Everything about one cut side that a drag of its top needs.
struct TopEdge {
  PitSide PitSides::*side = nullptr;
  const char* member = "";
  const SideProfile* profile = nullptr;
  double outward = 1;     ///< sign of the way from the floor, along the line or across
  bool along = false;     ///< the way runs along the line
  double floor_edge = 0;  ///< station or offset of the floor's edge
};

TopEdge top_edge(const PitShape& shape, PitEdge edge) {
  const bool high = (edge == PitEdge::top_bore) == shape.bore_side_high;
  switch (edge) {
    case PitEdge::top_left:
      return {&PitSides::left, "left", &shape.sides.left, 1, false, shape.floor_left_m};
    case PitEdge::top_right:
      return {&PitSides::right, "right", &shape.sides.right, -1, false, shape.floor_right_m};
    case PitEdge::top_bore:
      return {&PitSides::bore, "bore", high ? &shape.sides.high : &shape.sides.low,
              high ? 1.0 : -1, true,   high ? shape.floor_to_m : shape.floor_from_m};
    default:
      return {&PitSides::back, "back", high ? &shape.sides.high : &shape.sides.low,
              high ? 1.0 : -1, true,   high ? shape.floor_to_m : shape.floor_from_m};
  }
}

bool is_top(PitEdge edge) {
  return edge >= PitEdge::top_bore;
}

/// A side left to the program stands straight.
bool leans(const PitSide& side) {
  return !left_to_program(side) && (*side.kind == SideKind::sloped || *side.kind == SideKind::benched);
}

/// How far the top stands back from the floor's edge.
double run_of(const PitShape& shape, const TopEdge& top, const LevelLine& ground) {
  if (top.along) {
    const LevelPoint& end = top.outward > 0 ? shape.section.back() : shape.section.front();
    return std::abs(end.station_m - top.floor_edge);
  }
  return top.profile->run_at(elevation_at(ground, middle_station(shape)) - shape.floor_elevation_m);
}

/// The side with its top at `run_m` from the floor's edge, `height_m` above the floor; it was at `run_before_m`.
bool lean(PitSide& side, const SideProfile& profile, double run_before_m, double run_m, double height_m, double step) {
  if (*side.kind == SideKind::sloped) {
    const double sloping_m = height_m - (side.upright ? side.upright->m : 0);
    if (!(sloping_m > 0.01)) return false;
    side.run_per_rise = Ratio{std::clamp(rounded(run_m / sloping_m, step), 0.0, flattest)};
    return true;
  }
  if (!(run_before_m > 0.01)) return false;
  const double times = run_m / run_before_m;
  if (side.benches.empty()) {  // steps that the program makes: the first rise and tread tell their slope
    if (profile.pieces().size() < 2 || !(profile.pieces()[0].rise_m > 0)) return false;
    const double run = profile.pieces()[1].run_m / profile.pieces()[0].rise_m * times;
    side.run_per_rise = Ratio{std::clamp(rounded(run, step), 0.0, flattest)};
    return true;
  }
  for (Bench& bench : side.benches) bench.tread.m = std::clamp(rounded(bench.tread.m * times, step), 0.0, 100.0);
  return true;
}

Edit all_pits(Pits pits) {
  return [pits = std::move(pits)](Crossing& c) { c.pits = pits; };
}

Edit moved_top(const Crossing& before, const ItemRef& part, const Move& move) {
  const PitShape& shape = *move.pit;
  const TopEdge top = top_edge(shape, static_cast<PitEdge>(part.index));
  if (!top.along && move.pane != Pane::plan) return {};
  if (member_locked(before, "/pits/" + part.id + "/sides/" + top.member) || shape.section.size() < 3) return {};
  Pits pits = before.pits;
  PitSide& side = pit_in(pits, part).sides.*top.side;
  if (!leans(side)) return {};
  const double run_before = run_of(shape, top, before.site.ground);
  const double by = top.outward * (top.along ? move.by_station_m : move.by_up_m);
  const double run = std::max(0.0, run_before + by);
  const double station = top.along ? top.floor_edge + top.outward * run : middle_station(shape);
  const double height = elevation_at(before.site.ground, station) - shape.floor_elevation_m;
  if (!lean(side, *top.profile, run_before, run, height, move.step_m > 0 ? 0.01 : 0)) return {};
  return all_pits(std::move(pits));
}

/// Where a corner of the outline that was entered lies.
PlanPoint corner_place(const PitShape& shape, const PlanLine& outline, std::size_t corner) {
  const double into = shape.bore_side_high ? -1 : 1;
  double low = outline.front().y_m, high = low;
  for (const PlanPoint& p : outline) {
    low = std::min(low, p.y_m);
    high = std::max(high, p.y_m);
  }
  const double middle = (shape.floor_left_m + shape.floor_right_m) / 2 - (low + high) / 2;
  return {shape.face_station_m + into * outline[corner].x_m, middle + outline[corner].y_m};
}

/// A corner stays where no edges cross and none lies before the face; elsewhere it does not move.
Edit moved_corner(const Crossing& before, const ItemRef& part, const Move& move) {
  if (move.pane != Pane::plan || member_locked(before, "/pits/" + part.id + "/floor_outline")) return {};
  Pits pits = before.pits;
  PlanLine& outline = pit_in(pits, part).floor_outline;
  const auto corner = static_cast<std::size_t>(part.index - first_floor_corner);
  if (corner >= outline.size()) return {};
  const double into = move.pit->bore_side_high ? -1 : 1;
  PlanPoint& p = outline[corner];
  p.x_m = std::max(rounded(p.x_m + into * move.by_station_m, move.step_m), 0.0);
  p.y_m = rounded(p.y_m + move.by_up_m, move.step_m);
  if (fault_of_floor(outline)) return {};
  return all_pits(std::move(pits));
}

void set_across(Pit& pit, double right_m, double left_m) {
  pit.floor_width = Length{left_m - right_m};
  pit.floor_offset = Length{(left_m + right_m) / 2};
}

}  // namespace

bool pit_picked(const Scene& scene, const std::string& pit) {
  const ItemRef& picked = scene.focus.picked;
  if (picked.kind == ItemKind::pit_edge) return picked.id == pit;
  return picked.kind == (pit == "launch" ? ItemKind::launch : ItemKind::exit);
}

std::vector<PitEdgePlace> pit_edge_places(const Scene& scene) {
  std::vector<PitEdgePlace> places;
  const Frame& f = scene.frame;
  const LevelLine& ground = scene.crossing.site.ground;
  for (const char* id : {"launch", "exit"}) {
    if (!pit_picked(scene, id)) continue;
    const ItemRef pit{ItemKind::pit_edge, id, 0};
    const PitShape& shape = is_launch(pit) ? scene.assessment.launch_pit : scene.assessment.exit_pit;
    if (shape.section.size() < 3) continue;
    const PitSides& sides = pit_in(scene.crossing.pits, pit).sides;
    const auto add = [&](PitEdge edge, Pane pane, const QPointF& at) {
      places.push_back({{ItemKind::pit_edge, id, static_cast<int>(edge)}, pane, at});
    };
    const double back = shape.bore_side_high ? shape.floor_from_m : shape.floor_to_m;
    const double station = middle_station(shape), offset = (shape.floor_left_m + shape.floor_right_m) / 2;
    add(PitEdge::floor_level, Pane::elevation, f.side(station, shape.floor_elevation_m));
    if (shape.outlined) {
      const PlanLine& outline = pit_in(scene.crossing.pits, pit).floor_outline;
      for (std::size_t i = 0; i < outline.size(); ++i) {
        const PlanPoint at = corner_place(shape, outline, i);
        places.push_back(
            {{ItemKind::pit_edge, id, first_floor_corner + static_cast<int>(i)}, Pane::plan, f.above(at.x_m, at.y_m)});
      }
    } else {
      add(PitEdge::floor_back, Pane::elevation, f.side(back, shape.floor_elevation_m));
      add(PitEdge::floor_back, Pane::plan, f.above(back, offset));
      add(PitEdge::floor_left, Pane::plan, f.above(station, shape.floor_left_m));
      add(PitEdge::floor_right, Pane::plan, f.above(station, shape.floor_right_m));
    }
    for (const PitEdge edge : {PitEdge::top_bore, PitEdge::top_back, PitEdge::top_left, PitEdge::top_right}) {
      const TopEdge top = top_edge(shape, edge);
      if (!leans(sides.*top.side)) continue;
      const double at = top.floor_edge + top.outward * run_of(shape, top, ground);
      if (top.along) add(edge, Pane::elevation, f.side(at, elevation_at(ground, at)));
      add(edge, Pane::plan, top.along ? f.above(at, offset) : f.above(station, at));
    }
  }
  return places;
}

Edit moved_pit_edge(const Crossing& before, const ItemRef& part, const Move& move) {
  if (move.pit && part.index >= first_floor_corner) return moved_corner(before, part, move);
  if (!move.pit || part.index < 0 || part.index > static_cast<int>(PitEdge::top_right)) return {};
  const PitShape& shape = *move.pit;
  const auto edge = static_cast<PitEdge>(part.index);
  if (is_top(edge)) return moved_top(before, part, move);
  const auto locked = [&](const char* member) { return member_locked(before, "/pits/" + part.id + "/" + member); };
  Pits pits = before.pits;
  Pit& pit = pit_in(pits, part);
  switch (edge) {
    case PitEdge::floor_back: {
      if (locked("floor_length_m")) return {};
      const double longer = shape.bore_side_high ? -move.by_station_m : move.by_station_m;
      pit.floor_length = Length{std::clamp(rounded(shape.floor_length_m + longer, move.step_m), least_floor_m, 100.0)};
      return all_pits(std::move(pits));
    }
    case PitEdge::floor_level: {
      if (move.pane != Pane::elevation || locked("floor_elevation_m")) return {};
      const double ground = elevation_at(before.site.ground, middle_station(shape));
      pit.floor_elevation = Length{std::clamp(rounded(shape.floor_elevation_m + move.by_up_m, move.step_m),
                                              ground - greatest_depth_m, ground - least_depth_m)};
      return all_pits(std::move(pits));
    }
    case PitEdge::floor_left:
    case PitEdge::floor_right: {
      if (move.pane != Pane::plan || locked("floor_width_m") || locked("floor_offset_m")) return {};
      double left = shape.floor_left_m, right = shape.floor_right_m;
      if (edge == PitEdge::floor_left)
        left = std::clamp(rounded(left + move.by_up_m, move.step_m), right + least_floor_m, right + 100);
      else
        right = std::clamp(rounded(right + move.by_up_m, move.step_m), left - 100, left - least_floor_m);
      set_across(pit, right, left);
      return all_pits(std::move(pits));
    }
    default:
      return {};
  }
}

std::vector<LiveNumber> pit_edge_numbers(const Crossing& crossing, const Assessment& assessment, const ItemRef& part,
                                         UnitSystem units) {
  std::vector<LiveNumber> numbers;
  const auto say = [&](const QString& what, double value, Dimension dimension) {
    LiveNumber& number = numbers.emplace_back();
    number.what = what;
    number.value = text_from(format(value, dimension, units));
  };
  const PitShape& shape = is_launch(part) ? assessment.launch_pit : assessment.exit_pit;
  const PlanLine& outline = pit_in(crossing.pits, part).floor_outline;
  if (part.index >= first_floor_corner) {
    const auto corner = static_cast<std::size_t>(part.index - first_floor_corner);
    if (corner >= outline.size()) return numbers;
    say(QObject::tr("from the face"), outline[corner].x_m, Dimension::length);
    say(QObject::tr("left of the middle"), outline[corner].y_m, Dimension::station);
    say(QObject::tr("to dig"), shape.volume_m3, Dimension::volume);
    return numbers;
  }
  const auto edge = static_cast<PitEdge>(part.index);
  if (is_top(edge) && shape.section.size() >= 3) {
    const TopEdge top = top_edge(shape, edge);
    const PitSide& side = pit_in(crossing.pits, part).sides.*top.side;
    say(QObject::tr("back from the floor"), run_of(shape, top, crossing.site.ground), Dimension::length);
    if (side.run_per_rise) say(QObject::tr("run for each unit of rise"), side.run_per_rise->v, Dimension::ratio);
    double by_the_rules = 0;
    for (const PitLayer& layer : shape.layers) by_the_rules = std::max(by_the_rules, layer.run_per_rise);
    if (*side.kind == SideKind::sloped)
      say(QObject::tr("by the rules, flattest layer"), by_the_rules, Dimension::ratio);
  } else if (edge == PitEdge::floor_level) {
    say(QObject::tr("floor level"), shape.floor_elevation_m, Dimension::station);
    say(QObject::tr("deep"), shape.depth_m, Dimension::length);
  } else if (edge == PitEdge::floor_back) {
    say(QObject::tr("floor, along the line"), shape.floor_length_m, Dimension::length);
  } else {
    say(QObject::tr("floor, across"), shape.floor_width_m, Dimension::length);
    say(QObject::tr("middle of the floor"), (shape.floor_left_m + shape.floor_right_m) / 2, Dimension::station);
  }
  say(QObject::tr("to dig"), shape.volume_m3, Dimension::volume);
  return numbers;
}

}  // namespace burrow
