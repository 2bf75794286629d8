#include "burrow/search/first_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/crossing/blank.h"
#include "burrow/tables/quality_level.h"

namespace burrow {

namespace {

constexpr double datum_m = 100, beyond_m = 6, half_line_m = 8;
constexpr double usual_depth_m = 1.2;  // starting value of this program
constexpr double longest_m = 200;      // beyond any such tool

std::optional<Error> not_between(const char* place, double value_m, double low_m, double high_m) {
  if (value_m >= low_m && value_m <= high_m) return std::nullopt;
  return Error{place, fmt::format("{:g} m", value_m),
               phrase(translatable("{} to {} m"), fmt::format("{:g}", low_m), fmt::format("{:g}", high_m))};
}

std::optional<Error> fault_of(const FirstAnswers& a, const Tables& tables) {
  if (auto e = not_between(translatable("length of the bore"), a.length.m, 0.5, longest_m)) return e;
  if (a.crossed) {
    if (auto e = not_between(translatable("width of what is crossed"), a.crossed_width.m, 0.1, longest_m)) return e;
    if (!(a.crossed_width.m < a.length.m))
      return Error{translatable("width of what is crossed"),
                   phrase(translatable("{} m with a bore of {} m"), fmt::format("{:g}", a.crossed_width.m),
                          fmt::format("{:g}", a.length.m)),
                   translatable("less than the length of the bore: the pits stand beside it")};
  }
  if (!a.rule.empty() && !find_rule(tables, a.rule))
    return Error{translatable("rule of the owner"), a.rule, translatable("one of the table")};
  if (auto e = not_between(translatable("rise of the ground"), std::abs(a.rise.m), 0, a.length.m)) return e;
  if (!find_soil(tables, a.soil)) return Error{"ground", a.soil, translatable("a soil of the table")};
  if (a.water_depth)
    if (auto e = not_between(translatable("depth of the water"), a.water_depth->m, 0, 50)) return e;
  for (const MarkedLine& line : a.lines) {
    if (auto e = not_between(translatable("where a line is crossed"), line.along.m, -5, a.length.m + 5)) return e;
    if (line.depth)
      if (auto e = not_between(translatable("depth of a line"), line.depth->m, 0.05, 20)) return e;
    if (line.outside_diameter)
      if (auto e = not_between(translatable("diameter of a line"), line.outside_diameter->m, 0.005, 5)) return e;
  }
  if (a.pipe_diameter) {
    if (auto e = not_between(translatable("diameter of the pipe"), a.pipe_diameter->m, 0.01, 0.5)) return e;
    if (!find_pipe(tables, a.material)) return Error{"pipe", a.material, translatable("a material of the table")};
  }
  if (!a.tool.empty() && !find_tool(tables, a.tool)) return Error{"tool", a.tool, translatable("a class of the table")};
  if (a.depth)
    if (auto e = not_between(translatable("depth of the axis"), a.depth->m, 0.2, 6)) return e;
  return std::nullopt;
}

Utility utility_of(const MarkedLine& line, std::size_t number, double ground_m, const InWords& in_words) {
  Utility u;
  u.id = fmt::format("u{}", number);
  u.kind = line.kind;
  u.name = in_words(phrase(translatable("{} line"), phrase_of_word(line.kind)));
  u.status.set(UtilityStatus::live);
  u.outside_diameter = line.outside_diameter;
  u.located.how.set(line.how);
  if (const std::string_view level = quality_level_of(line.how); !level.empty()) u.located.level = std::string(level);
  u.recorded.from = DepthFrom::ground;
  u.recorded.level = LevelMeant::crown;
  if (line.outside_diameter) u.recorded.diameter = DiameterMeant::outside;
  u.recorded.source = in_words(translatable("marks on the ground"));
  std::optional<double> z;
  if (line.depth) z = ground_m - line.depth->m - line.outside_diameter.value_or(Length{}).m / 2;
  for (const double y : {-half_line_m, half_line_m}) u.path.push_back({line.along.m, y, z});
  return u;
}

/// Where it was exposed its crown was measured: below the marks, on the bore.
TestHole hole_of(const FirstAnswers& a, const MarkedLine& line, const std::string& utility, double ground_m) {
  TestHole hole;
  hole.id = "h" + utility.substr(1);
  hole.utility = utility;
  hole.station = line.along;
  hole.level.set(LevelMeant::crown);
  hole.elevation = Length{ground_m - line.depth->m};
  hole.by = a.measured_by;
  hole.date = a.measured_on;
  return hole;
}

UtilitySearch search_of(const FirstAnswers& a) {
  UtilitySearch search;
  search.done = a.searched;
  search.reference = a.reference;
  search.date = a.search_date;
  search.valid_from = a.valid_from;
  search.valid_to = a.valid_to;
  search.marks_visible = a.marks_visible;
  if (a.searched && a.lines.empty()) search.none_found.set(true);
  if (a.laterals != Laterals::not_checked) search.laterals = a.laterals;
  return search;
}

}  // namespace

std::string tool_for(const Tables& tables, const std::optional<Length>& pipe_diameter) {
  if (tables.tools.empty()) return {};
  const LimitRow* room = find_limit(tables, "pipe_hole_low");
  const double wanted = pipe_diameter.value_or(Length{}).m * (room ? room->value : 1);
  const ToolClass *best = nullptr, *largest = &tables.tools.front();
  for (const ToolClass& tool : tables.tools) {
    if (tool.diameter > largest->diameter) largest = &tool;
    if (tool.diameter.m >= wanted && (!best || tool.diameter < best->diameter)) best = &tool;
  }
  return best ? best->id : largest->id;
}

Result<Crossing> first_layout(const FirstAnswers& a, const Tables& tables, const InWords& in_words) {
  if (auto fault = fault_of(a, tables)) return tl::unexpected(std::move(*fault));
  Crossing c = blank_crossing();
  c.name = a.name.empty() ? in_words(translatable("New crossing")) : a.name;
  Site& site = c.site;
  const double end = a.length.m;
  site.ground = {{-beyond_m, datum_m}, {0, datum_m}, {end, datum_m + a.rise.m}, {end + beyond_m, datum_m + a.rise.m}};
  site.strata.front().soil = a.soil;
  site.strata.front().known.set(a.known);
  if (a.water_depth) {
    site.water = site.ground;
    for (LevelPoint& p : *site.water) p.elevation_m -= a.water_depth->m;
  }
  if (a.crossed) {
    SurfaceFeature feature;
    feature.id = "f1";
    feature.kind = *a.crossed;
    feature.from = Length{(end - a.crossed_width.m) / 2};
    feature.to = Length{(end + a.crossed_width.m) / 2};
    if (!a.rule.empty()) feature.rule = a.rule;
    if (a.permission != Permission::not_asked) feature.permission.set(a.permission);
    feature.permit = a.permit;
    feature.rescue = a.rescue;
    site.surface = {feature};
  } else {
    site.nothing_above = a.nothing_above;
  }
  site.utility_search = search_of(a);
  for (const MarkedLine& line : a.lines) {
    const double ground_m = elevation_at(site.ground, line.along.m);
    site.utilities.push_back(utility_of(line, site.utilities.size() + 1, ground_m, in_words));
    if (line.how == LocatedHow::exposed && line.depth)
      site.test_holes.push_back(hole_of(a, line, site.utilities.back().id, ground_m));
  }

  const std::string tool = a.tool.empty() ? tool_for(tables, a.pipe_diameter) : a.tool;
  const ToolClass* known = find_tool(tables, tool);
  if (!known)
    return fail(translatable("tool"), tool.empty() ? Phrase(translatable("no class in the table")) : Phrase(tool),
                translatable("a class of the table"));
  c.bore.tool.tool_class = tool;
  const SurfaceRule* rule = a.rule.empty() ? nullptr : find_rule(tables, a.rule);
  const LimitRow* diameters = find_limit(tables, "cover_diameters");
  const double cover =
      std::max(rule && rule->cover ? rule->cover->m : 0, diameters ? diameters->value * known->diameter.m : 0);
  const double depth = a.depth ? a.depth->m : std::max(usual_depth_m, cover + known->diameter.m / 2);
  c.bore.launch.station = Length{0};
  c.bore.launch.elevation = Length{datum_m - depth};
  c.bore.exit.station = a.length;
  if (a.pipe_diameter) {
    Pipe pipe;
    pipe.material = a.material;
    pipe.outside_diameter = a.pipe_diameter;
    pipe.sdr = a.sdr;
    c.pipe = pipe;
  }
  return c;
}

}  // namespace burrow
