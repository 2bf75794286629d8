#include "burrow/document/pit_fields.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "burrow/crossing/floor_outline.h"
#include "burrow/language/say.h"
#include "burrow/pit/proposal.h"

namespace burrow {

namespace {

using Typed = std::optional<double>;

constexpr double largest_m = 1e4;  // well inside what the file format accepts
constexpr double steepest = 0, flattest = 20;

/// A number of a pit; `set` writes it, an empty one goes back to what the program takes.
template <class Set>
Field pit_field(WhichPit which, std::string label, Dimension dimension, Typed value, bool entered, double low,
                double high, Typed default_value, Set set) {
  Field field;
  field.label = std::move(label);
  field.dimension = dimension;
  field.value = value;
  field.entered = entered;
  field.may_be_empty = true;
  field.low = low;
  field.high = high;
  field.default_value = default_value;
  field.apply = [which, set](const Crossing& c, Typed v) -> ItemValue {
    Pits pits = c.pits;
    set(pit_of(pits, which), v);
    return pits;
  };
  return field;
}

Field proposed_field(WhichPit which, std::string label, Dimension dimension, const Pit& pit,
                     std::optional<Length> Pit::*member, double proposed, double low, double high) {
  const std::optional<Length>& now = pit.*member;
  return pit_field(which, std::move(label), dimension, now ? Typed(now->m) : std::nullopt, now.has_value(), low, high,
                   proposed, [member](Pit& p, Typed v) { p.*member = v ? std::optional(Length{*v}) : std::nullopt; });
}

Field given_field(WhichPit which, std::string label, const Pit& pit, Given<Length> Pit::*member, double high) {
  const Given<Length>& now = pit.*member;
  return pit_field(which, std::move(label), Dimension::length, now->m, now.entered, 0, high, (Pit{}.*member)->m,
                   [member](Pit& p, Typed v) {
                     p.*member = Pit{}.*member;
                     if (v) (p.*member).set(Length{*v});
                   });
}

Typed metres(const std::optional<Length>& length) {
  return length ? Typed(length->m) : std::nullopt;
}

/// Height, depth and slope of one step of a benched side. The last step is made again and again up to the ground;
/// without a height there is none, and without any the program proposes them.
template <class Add>
void add_step(const Add& add, const std::string& name, const PitSide& side, std::size_t number) {
  const bool there = number < side.benches.size();
  const auto step = [number](PitSide& s) -> Bench& {
    if (number >= s.benches.size()) s.benches.push_back({Length{1.2}, Length{1.2}, {}, {}});
    return s.benches[std::min(number, s.benches.size() - 1)];
  };
  add(name + ", high", Dimension::length, there ? Typed(side.benches[number].rise.m) : std::nullopt, 10, std::nullopt,
      [number, step](PitSide& s, Typed v) {
        if (v && *v > 0)
          step(s).rise = Length{*v};
        else if (number < s.benches.size())
          s.benches.erase(s.benches.begin() + static_cast<std::ptrdiff_t>(number), s.benches.end());
      });
  if (!there) return;
  add(name + ", deep", Dimension::length, side.benches[number].tread.m, 100, std::nullopt,
      [step](PitSide& s, Typed v) { step(s).tread = Length{v.value_or(0)}; });
  const std::optional<Ratio>& slope = side.benches[number].run_per_rise;
  add(name + ", run of its face for each unit of rise", Dimension::ratio, slope ? Typed(slope->v) : std::nullopt,
      flattest, 0, [step](PitSide& s, Typed v) { step(s).run_per_rise = v ? std::optional(Ratio{*v}) : std::nullopt; });
}

/// The middle from which an outline is measured, or of the rectangle.
double middle_of_floor(const Pit& pit, const PitShape& shape) {
  double middle = (shape.floor_left_m + shape.floor_right_m) / 2;
  if (pit.floor_outline.empty()) return middle;
  const auto [low, high] = std::minmax_element(pit.floor_outline.begin(), pit.floor_outline.end(),
                                               [](const PlanPoint& a, const PlanPoint& b) { return a.y_m < b.y_m; });
  return middle - (low->y_m + high->y_m) / 2;
}

struct NamedSide {
  const char* name;
  PitSide PitSides::*side;
};
constexpr NamedSide named_sides[] = {{"bore side", &PitSides::bore},
                                     {"back", &PitSides::back},
                                     {"left side", &PitSides::left},
                                     {"right side", &PitSides::right}};

}  // namespace

Pit& pit_of(Pits& pits, WhichPit which) {
  return which == WhichPit::launch ? pits.launch : pits.exit;
}
const Pit& pit_of(const Pits& pits, WhichPit which) {
  return which == WhichPit::launch ? pits.launch : pits.exit;
}

std::vector<Field> pit_floor_fields(const Crossing& crossing, WhichPit which, const PitShape& shape) {
  const Pit& pit = pit_of(crossing.pits, which);
  std::vector<Field> fields;
  if (pit.floor_outline.empty())
    fields = {proposed_field(which, "floor, along the line", Dimension::length, pit, &Pit::floor_length,
                             shape.floor_length_m, 0.1, 100),
              proposed_field(which, "floor, across", Dimension::length, pit, &Pit::floor_width, shape.floor_width_m,
                             0.1, 100)};
  const Field rest[] = {proposed_field(which, "level of the floor", Dimension::station, pit, &Pit::floor_elevation,
                                       shape.floor_elevation_m, -9e3, 9e3),
                        proposed_field(which, "middle of the floor, left positive", Dimension::station, pit,
                                       &Pit::floor_offset, middle_of_floor(pit, shape), -largest_m, largest_m),
                        given_field(which, "room to work, beside the tool", pit, &Pit::working_length, 100),
                        given_field(which, "slab or bedding, thick", pit, &Pit::slab_thickness, 10),
                        given_field(which, "sump below the floor", pit, &Pit::sump_depth, 10)};
  fields.insert(fields.end(), std::begin(rest), std::end(rest));
  if (which == WhichPit::launch)
    fields.insert(fields.end() - 2, given_field(which, "cradle, tool above the floor", pit, &Pit::cradle_height, 10));
  else
    fields.push_back(given_field(which, "room beyond the arrival band", pit, &Pit::allowance, 10));
  return fields;
}

std::vector<Field> floor_corner_fields(const Crossing& crossing, WhichPit which, std::size_t corner) {
  const PlanLine& outline = pit_of(crossing.pits, which).floor_outline;
  if (corner >= outline.size()) return {};
  const auto coordinate = [&](const char* label, Dimension dimension, double PlanPoint::*member, double low) {
    Field field = pit_field(which, label, dimension, outline[corner].*member, true, low, 100, std::nullopt,
                            [corner, member](Pit& p, Typed v) {
                              if (v && corner < p.floor_outline.size()) p.floor_outline[corner].*member = *v;
                            });
    field.may_be_empty = false;
    field.validate = [which, corner, member](const Crossing& c, Typed v) -> Result<void> {
      PlanLine moved = pit_of(c.pits, which).floor_outline;
      if (!v || corner >= moved.size()) return {};
      moved[corner].*member = *v;
      if (const auto fault = fault_of_floor(moved))
        return fail(say("corner {}", fault->corner + 1), fault->what,
                    "a floor whose edges do not cross, with corners 5 cm or more apart");
      return {};
    };
    return field;
  };
  return {coordinate("from the face into the pit", Dimension::length, &PlanPoint::x_m, 0),
          coordinate("left of the middle of the floor", Dimension::station, &PlanPoint::y_m, -100)};
}

PlanLine with_corner_after(PlanLine outline, std::size_t corner) {
  const PlanPoint &p = outline[corner], &q = outline[(corner + 1) % outline.size()];
  const PlanPoint middle{(p.x_m + q.x_m) / 2, (p.y_m + q.y_m) / 2};
  outline.insert(outline.begin() + static_cast<std::ptrdiff_t>(corner) + 1, middle);
  return outline;
}

PlanLine without_corner(PlanLine outline, std::size_t corner) {
  outline.erase(outline.begin() + static_cast<std::ptrdiff_t>(corner));
  return outline;
}

PlanLine outline_of_rectangle(const PitShape& shape) {
  const double half = shape.floor_width_m / 2, length = shape.floor_length_m;
  return {{0, -half}, {0, half}, {length, half}, {length, -half}};
}

std::vector<Field> pit_side_fields(const Crossing& crossing, WhichPit which, const PitShape& shape) {
  std::vector<Field> fields;
  double by_the_rules = 0;  // each layer has its own; the flattest stands for all
  for (const PitLayer& layer : shape.layers) by_the_rules = std::max(by_the_rules, layer.run_per_rise);
  const Pit& pit = pit_of(crossing.pits, which);
  const PitSides sides = shape.held.proposed ? sides_in_force(pit.sides, shape.held) : pit.sides;
  bool shielded = false;
  for (const auto& [name, member] : named_sides) {
    const PitSide& side = sides.*member;
    const SideKind kind = side.kind.value;
    shielded = shielded || kind == SideKind::shielded;
    const auto add = [&](std::string label, Dimension dimension, Typed value, double high, Typed default_value,
                         auto set) {
      fields.push_back(pit_field(which, std::move(label), dimension, value, value.has_value(), 0, high, default_value,
                                 [member = member, set, kind](Pit& p, Typed v) {
                                   PitSide& typed = p.sides.*member;
                                   if (v && left_to_program(typed)) typed.kind.set(kind);  // as it was shown
                                   set(typed, v);
                                 }));
    };
    if (side.kind.value == SideKind::sloped) {
      add(std::string(name) + ", run for each unit of rise", Dimension::ratio,
          side.run_per_rise ? Typed(side.run_per_rise->v) : std::nullopt, flattest, by_the_rules,
          [](PitSide& s, Typed v) { s.run_per_rise = v ? std::optional(Ratio{*v}) : std::nullopt; });
      add(std::string(name) + ", upright lower part", Dimension::length,
          side.upright ? Typed(side.upright->m) : std::nullopt, 100, 0,
          [](PitSide& s, Typed v) { s.upright = v ? std::optional(Length{*v}) : std::nullopt; });
    }
    const bool supported = side.kind.value == SideKind::shored || side.kind.value == SideKind::shielded;
    if (supported || (side.kind.value == SideKind::sloped && side.upright)) {
      add(std::string(name) + ", foot of its support above the floor", Dimension::length, metres(side.support_foot),
          100, supported ? Typed(0) : std::nullopt,
          [](PitSide& s, Typed v) { s.support_foot = v ? std::optional(Length{*v}) : std::nullopt; });
      add(std::string(name) + ", top of its support above the floor", Dimension::length, metres(side.support_top), 100,
          supported ? Typed(shape.depth_m) : std::nullopt,
          [](PitSide& s, Typed v) { s.support_top = v ? std::optional(Length{*v}) : std::nullopt; });
    }
    if (side.kind.value == SideKind::benched) {
      add_step(add, std::string(name) + ", first step", side, 0);
      if (!side.benches.empty()) add_step(add, std::string(name) + ", steps above it", side, 1);
    }
  }
  if (shielded || pit.shield.depth)
    fields.push_back(pit_field(which, "shield, rated depth", Dimension::length, metres(pit.shield.depth),
                               pit.shield.depth.has_value(), 0, 100, std::nullopt,
                               [](Pit& p, Typed v) { p.shield.depth = v ? std::optional(Length{*v}) : std::nullopt; }));
  return fields;
}

std::vector<Field> pit_edge_fields(const Crossing& crossing, const ItemRef& edge) {
  const WhichPit which = edge.id == "launch" ? WhichPit::launch : WhichPit::exit;
  std::vector<Field> all = pit_floor_fields(crossing, which, {});
  const std::vector<Field> sides = pit_side_fields(crossing, which, {});
  all.insert(all.end(), sides.begin(), sides.end());
  const auto starting = [&](std::string_view label) {
    std::vector<Field> some;
    for (Field& field : all) {
      if (!field.label.starts_with(label)) continue;
      if (!field.entered && field.value == std::nullopt)
        field.default_value = std::nullopt;  // proposed: the shape tells it
      some.push_back(field);
    }
    return some;
  };
  if (edge.index >= first_floor_corner)
    return floor_corner_fields(crossing, which, static_cast<std::size_t>(edge.index - first_floor_corner));
  switch (static_cast<PitEdge>(edge.index)) {
    case PitEdge::floor_back:
      return starting("floor, along");
    case PitEdge::floor_level:
      return starting("level of");
    case PitEdge::floor_left:
    case PitEdge::floor_right: {
      std::vector<Field> both = starting("floor, across");
      for (Field& field : starting("middle of")) both.push_back(std::move(field));
      return both;
    }
    case PitEdge::top_bore:
      return starting("bore side");
    case PitEdge::top_back:
      return starting("back");
    case PitEdge::top_left:
      return starting("left side");
    case PitEdge::top_right:
      return starting("right side");
  }
  return {};
}

std::vector<Field> pit_soil_fields(const Crossing& crossing, WhichPit which) {
  const Pit& pit = pit_of(crossing.pits, which);
  return {pit_field(which, "layers dip into it, run for each unit of fall", Dimension::ratio,
                    pit.signs.dip_run_per_rise ? Typed(pit.signs.dip_run_per_rise->v) : std::nullopt,
                    pit.signs.dip_run_per_rise.has_value(), steepest, 1000, std::nullopt,
                    [](Pit& p, Typed v) { p.signs.dip_run_per_rise = v ? std::optional(Ratio{*v}) : std::nullopt; }),
          pit_field(which, "open for", Dimension::duration, pit.open_time ? Typed(pit.open_time->s) : std::nullopt,
                    pit.open_time.has_value(), 0, 1e9, std::nullopt,
                    [](Pit& p, Typed v) { p.open_time = v ? std::optional(Duration{*v}) : std::nullopt; })};
}

std::vector<Field> pit_spoil_fields(const Crossing& crossing, WhichPit which) {
  const Pit& pit = pit_of(crossing.pits, which);
  return {
      pit_field(which, "heap, off the edge", Dimension::length, pit.spoil.setback->m, pit.spoil.setback.entered, 0,
                1000, Spoil{}.setback->m,
                [](Pit& p, Typed v) {
                  p.spoil.setback = Spoil{}.setback;
                  if (v) p.spoil.setback.set(Length{*v});
                }),
      pit_field(which, "heap, high", Dimension::length, pit.spoil.height ? Typed(pit.spoil.height->m) : std::nullopt,
                pit.spoil.height.has_value(), 0, 100, std::nullopt,
                [](Pit& p, Typed v) { p.spoil.height = v ? std::optional(Length{*v}) : std::nullopt; }),
      pit_field(which, "ladder, along its side from the middle", Dimension::station, pit.ladder.along->m,
                pit.ladder.along.entered, -1000, 1000, Ladder{}.along->m, [](Pit& p, Typed v) {
                  p.ladder.along = Ladder{}.along;
                  if (v) p.ladder.along.set(Length{*v});
                })};
}

}  // namespace burrow
