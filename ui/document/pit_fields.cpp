#include "burrow/document/pit_fields.h"

#include <algorithm>
#include <utility>

#include "burrow/crossing/floor_outline.h"
#include "burrow/language/say.h"
#include "burrow/pit/proposal.h"
#include "number_field.h"

namespace burrow {

namespace {

constexpr double largest_m = 1e4;  // well inside what the file format accepts
constexpr double steepest = 0, flattest = 20;

/// Finds the pit, in a crossing that may be changed too.
auto pit_by(WhichPit which) {
  return [which](auto& c) { return &pit_of(c.pits, which); };
}

/// Of a side as it stands in force, which may be proposed: what is typed makes it one that was entered.
class SideFields {
 public:
  SideFields(WhichPit which, PitSide PitSides::*member, const PitSide& now)
      : side_([which, member](Crossing& c) -> PitSide& { return pit_of(c.pits, which).sides.*member; }), now_(now) {}

  /// `set` writes what is typed into the side.
  template <class Set>
  void add(std::string label, Dimension dimension, Typed value, double high, Typed default_value, Set set) {
    fields.push_back(typed_field(std::move(label), dimension, {0, high}, value,
                                 [side = side_, kind = now_.kind.value, set](Crossing& c, Typed v) {
                                   PitSide& typed = side(c);
                                   if (v && left_to_program(typed)) typed.kind.set(kind);  // as it was shown
                                   set(typed, v);
                                 }));
    fields.back().entered = value.has_value();
    fields.back().may_be_empty = true;
    fields.back().default_value = default_value;
  }
  template <class Q>
  void add(std::string label, Dimension dimension, std::optional<Q> PitSide::*member, double high,
           Typed default_value) {
    add(std::move(label), dimension, Member<std::optional<Q>>::number(now_.*member), high, default_value,
        [member](PitSide& s, Typed v) { Member<std::optional<Q>>::set(s.*member, v, std::nullopt); });
  }

  std::vector<Field> fields;

 private:
  std::function<PitSide&(Crossing&)> side_;
  const PitSide& now_;
};

/// Height, depth and slope of one step of a benched side. The last step is made again and again up to the ground;
/// without a height there is none, and without any the program proposes them.
void add_step(SideFields& fields, const std::string& name, const PitSide& side, std::size_t number) {
  const bool there = number < side.benches.size();
  const auto step = [number](PitSide& s) -> Bench& {
    if (number >= s.benches.size()) s.benches.push_back({Length{1.2}, Length{1.2}, {}, {}});
    return s.benches[std::min(number, s.benches.size() - 1)];
  };
  fields.add(name + ", high", Dimension::length, there ? Typed(side.benches[number].rise.m) : std::nullopt, 10,
             std::nullopt, [number, step](PitSide& s, Typed v) {
               if (v && *v > 0)
                 step(s).rise = Length{*v};
               else if (number < s.benches.size())
                 s.benches.erase(s.benches.begin() + static_cast<std::ptrdiff_t>(number), s.benches.end());
             });
  if (!there) return;
  fields.add(name + ", deep", Dimension::length, side.benches[number].tread.m, 100, std::nullopt,
             [step](PitSide& s, Typed v) { step(s).tread = Length{v.value_or(0)}; });
  const std::optional<Ratio>& slope = side.benches[number].run_per_rise;
  fields.add(name + ", run of its face for each unit of rise", Dimension::ratio, slope ? Typed(slope->v) : std::nullopt,
             flattest, 0,
             [step](PitSide& s, Typed v) { step(s).run_per_rise = v ? std::optional(Ratio{*v}) : std::nullopt; });
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
  const char* member;  ///< in the file
};
constexpr NamedSide named_sides[] = {{"bore side", &PitSides::bore, "/sides/bore"},
                                     {"back", &PitSides::back, "/sides/back"},
                                     {"left side", &PitSides::left, "/sides/left"},
                                     {"right side", &PitSides::right, "/sides/right"}};

}  // namespace

Pit& pit_of(Pits& pits, WhichPit which) {
  return which == WhichPit::launch ? pits.launch : pits.exit;
}
const Pit& pit_of(const Pits& pits, WhichPit which) {
  return which == WhichPit::launch ? pits.launch : pits.exit;
}

std::vector<Field> pit_floor_fields(const Crossing& crossing, WhichPit which, const PitShape& shape) {
  const Pit& pit = pit_of(crossing.pits, which);
  const auto proposed = [&](const char* label, Dimension dimension, FieldRange range,
                            std::optional<Length> Pit::*member, double stands) {
    return number_field(crossing, label, dimension, range, pit_by(which), member, stands);
  };
  const std::string place = which == WhichPit::launch ? "/pits/launch" : "/pits/exit";
  const auto lock = [&](Field& field, const char* member) { field.lock = place + member; };
  const auto given = [&](const char* label, Given<Length> Pit::*member, double high) {
    return number_field(crossing, label, Dimension::length, {0, high}, pit_by(which), member);
  };
  std::vector<Field> fields;
  if (pit.floor_outline.empty())
    fields = {
        proposed("floor, along the line", Dimension::length, {0.1, 100}, &Pit::floor_length, shape.floor_length_m),
        proposed("floor, across", Dimension::length, {0.1, 100}, &Pit::floor_width, shape.floor_width_m)};
  if (!fields.empty()) {
    lock(fields[0], "/floor_length_m");
    lock(fields[1], "/floor_width_m");
  }
  fields.push_back(
      proposed("level of the floor", Dimension::station, {-9e3, 9e3}, &Pit::floor_elevation, shape.floor_elevation_m));
  lock(fields.back(), "/floor_elevation_m");
  fields.push_back(proposed("middle of the floor, left positive", Dimension::station, {-largest_m, largest_m},
                            &Pit::floor_offset, middle_of_floor(pit, shape)));
  lock(fields.back(), "/floor_offset_m");
  fields.push_back(given("room to work, beside the tool", &Pit::working_length, 100));
  if (which == WhichPit::launch) fields.push_back(given("cradle, tool above the floor", &Pit::cradle_height, 10));
  fields.push_back(given("slab or bedding, thick", &Pit::slab_thickness, 10));
  fields.push_back(given("sump below the floor", &Pit::sump_depth, 10));
  if (which == WhichPit::exit) fields.push_back(given("room beyond the arrival band", &Pit::allowance, 10));
  return fields;
}

std::vector<Field> floor_corner_fields(const Crossing& crossing, WhichPit which, std::size_t corner) {
  if (corner >= pit_of(crossing.pits, which).floor_outline.size()) return {};
  const auto coordinate = [&](const char* label, Dimension dimension, double PlanPoint::*member, double low) {
    const auto point = [which, corner](auto& c) {
      auto& outline = pit_of(c.pits, which).floor_outline;
      return corner < outline.size() ? &outline[corner] : nullptr;
    };
    Field field = number_field(crossing, label, dimension, {low, 100}, point, member);
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

namespace {

std::vector<Field> side_fields(WhichPit which, const NamedSide& named, const PitSide& side, const PitShape& shape) {
  double by_the_rules = 0;  // each layer has its own; the flattest stands for all
  for (const PitLayer& layer : shape.layers) by_the_rules = std::max(by_the_rules, layer.run_per_rise);
  const std::string name = named.name;
  const SideKind kind = side.kind.value;
  SideFields all(which, named.side, side);
  if (kind == SideKind::sloped) {
    all.add(name + ", run for each unit of rise", Dimension::ratio, &PitSide::run_per_rise, flattest, by_the_rules);
    all.add(name + ", upright lower part", Dimension::length, &PitSide::upright, 100, 0);
  }
  const bool supported = kind == SideKind::shored || kind == SideKind::shielded;
  if (supported || (kind == SideKind::sloped && side.upright)) {
    all.add(name + ", foot of its support above the floor", Dimension::length, &PitSide::support_foot, 100,
            supported ? Typed(0) : std::nullopt);
    all.add(name + ", top of its support above the floor", Dimension::length, &PitSide::support_top, 100,
            supported ? Typed(shape.depth_m) : std::nullopt);
  }
  if (kind == SideKind::benched) {
    add_step(all, name + ", first step", side, 0);
    if (!side.benches.empty()) add_step(all, name + ", steps above it", side, 1);
  }
  return std::move(all.fields);
}

}  // namespace

std::vector<Field> pit_side_fields(const Crossing& crossing, WhichPit which, const PitShape& shape) {
  std::vector<Field> fields;
  const Pit& pit = pit_of(crossing.pits, which);
  const PitSides sides = shape.held.proposed ? sides_in_force(pit.sides, shape.held) : pit.sides;
  bool shielded = pit.shield.depth.has_value();
  for (const NamedSide& named : named_sides) {
    const PitSide& side = sides.*named.side;
    shielded = shielded || side.kind.value == SideKind::shielded;
    for (Field& field : side_fields(which, named, side, shape)) {
      field.lock = std::string(which == WhichPit::launch ? "/pits/launch" : "/pits/exit") + named.member;
      fields.push_back(std::move(field));
    }
  }
  if (shielded)
    fields.push_back(number_field(
        crossing, "shield, rated depth", Dimension::length, {0, 100},
        [pit_now = pit_by(which)](auto& c) { return &pit_now(c)->shield; }, &RatedShield::depth));
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
  return {number_field(
              crossing, "layers dip into it, run for each unit of fall", Dimension::ratio, {steepest, 1000},
              [pit = pit_by(which)](auto& c) { return &pit(c)->signs; }, &PitSigns::dip_run_per_rise),
          number_field(crossing, "open for", Dimension::duration, {0, 1e9}, pit_by(which), &Pit::open_time)};
}

std::vector<Field> pit_spoil_fields(const Crossing& crossing, WhichPit which) {
  const auto spoil = [pit = pit_by(which)](auto& c) { return &pit(c)->spoil; };
  return {number_field(crossing, "heap, off the edge", Dimension::length, {0, 1000}, spoil, &Spoil::setback),
          number_field(crossing, "heap, high", Dimension::length, {0, 100}, spoil, &Spoil::height),
          number_field(
              crossing, "ladder, along its side from the middle", Dimension::station, {-1000, 1000},
              [pit = pit_by(which)](auto& c) { return &pit(c)->ladder; }, &Ladder::along)};
}

}  // namespace burrow
