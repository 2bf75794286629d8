#include "burrow/document/surroundings.h"

#include "burrow/crossing/find.h"
#include "number_field.h"

namespace burrow {

namespace {

constexpr double across_m = 5;                        ///< of a line that is added, to either side
constexpr double trench_m = 0.6, below_bore_m = 0.3;  ///< of a trench that is added
constexpr double tree_radius_m = 2, machine_length_m = 4, machine_width_m = 2, machine_load_n = 50e3;

double middle_station(const Crossing& crossing) {
  return (crossing.bore.launch.station.m + crossing.bore.exit.station.m) / 2;
}

template <class List>
void take_out(List& list, const std::string& id) {
  std::erase_if(list, [&](const auto& one) { return one.id == id; });
}

template <class List>
auto finder(List Site::*list, const std::string& id) {
  return [list, id](auto& c) { return find_by_id(c.site.*list, id); };
}

std::vector<Field> tree_fields(const Crossing& crossing, const std::string& id) {
  const auto tree = finder(&Site::trees, id);
  std::vector<Field> all{
      number_field(crossing, "station", Dimension::station, {-farthest_m, farthest_m}, tree, &Tree::station),
      number_field(crossing, "offset, left positive", Dimension::station, {-farthest_m, farthest_m}, tree,
                   &Tree::offset),
      number_field(crossing, "radius that is protected", Dimension::length, {0.01, 100}, tree,
                   &Tree::protection_radius)};
  for (std::size_t i = 0; i < 2; ++i) all[i].lock = "/site/trees/" + id;
  return all;
}

std::vector<Field> machine_fields(const Crossing& crossing, const std::string& id) {
  const auto machine = finder(&Site::plant, id);
  std::vector<Field> all{
      number_field(crossing, "station", Dimension::station, {-farthest_m, farthest_m}, machine, &Plant::station),
      number_field(crossing, "offset, left positive", Dimension::station, {-farthest_m, farthest_m}, machine,
                   &Plant::offset),
      number_field(crossing, "length, along the line", Dimension::length, {0.01, 100}, machine, &Plant::length),
      number_field(crossing, "width, across the line", Dimension::length, {0.01, 100}, machine, &Plant::width),
      number_field(crossing, "load", Dimension::force, {1, 1e7}, machine, &Plant::load),
      number_field(crossing, "factor for its motion", Dimension::ratio, {1, 10}, machine, &Plant::dynamic_factor)};
  for (std::size_t i = 0; i < 2; ++i) all[i].lock = "/site/plant/" + id;
  return all;
}

std::vector<Field> trench_fields(const Crossing& crossing, const std::string& id) {
  const auto strip = finder(&Site::strips, id);
  return {number_field(crossing, "level of its top", Dimension::station, {-highest_m, highest_m}, strip,
                       &Strip::top_elevation),
          number_field(crossing, "level of its bottom", Dimension::station, {-highest_m, highest_m}, strip,
                       &Strip::bottom_elevation)};
}

}  // namespace

std::vector<Around> surroundings(const Crossing& crossing) {
  std::vector<Around> all;
  for (const Boundary& b : crossing.site.boundaries) all.push_back({AroundKind::boundary, b.id});
  for (const Tree& t : crossing.site.trees) all.push_back({AroundKind::tree, t.id});
  for (const Plant& p : crossing.site.plant) all.push_back({AroundKind::machine, p.id});
  for (const Strip& s : crossing.site.strips) all.push_back({AroundKind::trench, s.id});
  return all;
}

Lens<std::string> around_name(const Around& which) {
  const auto name_in = [](auto find) {
    return [find](auto& c) {
      auto* one = find(c);
      return one ? &one->name : nullptr;
    };
  };
  switch (which.kind) {
    case AroundKind::boundary:
      return name_in(finder(&Site::boundaries, which.id));
    case AroundKind::tree:
      return name_in(finder(&Site::trees, which.id));
    case AroundKind::machine:
      return name_in(finder(&Site::plant, which.id));
    case AroundKind::trench:
      break;
  }
  return name_in(finder(&Site::strips, which.id));
}

std::vector<Field> around_fields(const Crossing& crossing, const Around& which) {
  switch (which.kind) {
    case AroundKind::tree:
      return find_by_id(crossing.site.trees, which.id) ? tree_fields(crossing, which.id) : std::vector<Field>{};
    case AroundKind::machine:
      return find_by_id(crossing.site.plant, which.id) ? machine_fields(crossing, which.id) : std::vector<Field>{};
    case AroundKind::trench:
      return find_by_id(crossing.site.strips, which.id) ? trench_fields(crossing, which.id) : std::vector<Field>{};
    case AroundKind::boundary:
      break;
  }
  return {};
}

Lens<PlanLine> around_line(const Around& which) {
  if (which.kind == AroundKind::boundary)
    return [find = finder(&Site::boundaries, which.id)](auto& c) {
      auto* one = find(c);
      return one ? &one->line : nullptr;
    };
  const std::string strip = which.kind == AroundKind::trench ? which.id : std::string();
  return [find = finder(&Site::strips, strip)](auto& c) {
    auto* one = find(c);
    return one ? &one->outline : nullptr;
  };
}

Lens<PlanLine> outline_of(const std::string& surface) {
  return [find = finder(&Site::surface, surface)](auto& c) {
    auto* one = find(c);
    return one ? &one->outline : nullptr;
  };
}

std::string add_around(Crossing& crossing, AroundKind kind) {
  const double x = middle_station(crossing);
  switch (kind) {
    case AroundKind::boundary: {
      Boundary boundary;
      boundary.id = free_id(crossing, "b");
      boundary.line = {{x, -across_m}, {x, across_m}};
      crossing.site.boundaries.push_back(boundary);
      return boundary.id;
    }
    case AroundKind::tree: {
      Tree tree;
      tree.id = free_id(crossing, "t");
      tree.station = Length{x};
      tree.protection_radius = Length{tree_radius_m};
      crossing.site.trees.push_back(tree);
      return tree.id;
    }
    case AroundKind::machine: {
      Plant machine;
      machine.id = free_id(crossing, "p");
      machine.station = Length{x};
      machine.length = Length{machine_length_m};
      machine.width = Length{machine_width_m};
      machine.load = Force{machine_load_n};
      crossing.site.plant.push_back(machine);
      return machine.id;
    }
    case AroundKind::trench:
      break;
  }
  Strip trench;
  trench.id = free_id(crossing, "s");
  trench.soil = "trench-backfill";
  trench.outline = {{x - trench_m / 2, -across_m},
                    {x - trench_m / 2, across_m},
                    {x + trench_m / 2, across_m},
                    {x + trench_m / 2, -across_m}};
  trench.bottom_elevation = Length{crossing.bore.launch.elevation.m - below_bore_m};
  crossing.site.strips.push_back(trench);
  return trench.id;
}

void remove_around(Crossing& crossing, const Around& which) {
  Site& site = crossing.site;
  switch (which.kind) {
    case AroundKind::boundary:
      return take_out(site.boundaries, which.id);
    case AroundKind::tree:
      return take_out(site.trees, which.id);
    case AroundKind::machine:
      return take_out(site.plant, which.id);
    case AroundKind::trench:
      break;
  }
  take_out(site.strips, which.id);
}

std::vector<Field> corner_fields(const Crossing& crossing, const Lens<PlanLine>& line, std::size_t corner) {
  const PlanLine* now = line(crossing);
  if (!now || corner >= now->size()) return {};
  const auto point = [line, corner](auto& c) {
    auto* found = line(c);
    return found && corner < found->size() ? &(*found)[corner] : nullptr;
  };
  return {number_field(crossing, "station", Dimension::station, {-farthest_m, farthest_m}, point, &PlanPoint::x_m),
          number_field(crossing, "offset, left positive", Dimension::station, {-farthest_m, farthest_m}, point,
                       &PlanPoint::y_m)};
}

void add_corner(PlanLine& line, std::size_t after) {
  if (line.empty()) {
    line.push_back({0, 0});
    return;
  }
  after = std::min(after, line.size() - 1);
  const PlanPoint& here = line[after];
  PlanPoint fresh{here.x_m + 1, here.y_m};
  if (after + 1 < line.size())
    fresh = {(here.x_m + line[after + 1].x_m) / 2, (here.y_m + line[after + 1].y_m) / 2};
  else if (after > 0)
    fresh = {2 * here.x_m - line[after - 1].x_m, 2 * here.y_m - line[after - 1].y_m};
  line.insert(line.begin() + static_cast<std::ptrdiff_t>(after) + 1, fresh);
}

}  // namespace burrow
