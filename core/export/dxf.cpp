#include "burrow/export/dxf.h"

#include <algorithm>
#include <cmath>

#include "burrow/bore/tool.h"
#include "dxf_parts.h"

namespace burrow {

namespace {

/// Standard palette, nearest to the uniform colour code of locators.
int colour_of(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::gas:
    case UtilityKind::oil:
    case UtilityKind::steam:
      return 2;
    case UtilityKind::power:
      return 1;
    case UtilityKind::water:
      return 5;
    case UtilityKind::sewer:
      return 3;
    case UtilityKind::telecom:
      return 30;
    case UtilityKind::reclaimed:
      return 6;
    case UtilityKind::unknown:
      break;
  }
  return 8;
}

void make_layers(DxfText& out, DxfView view) {
  struct LayerLook {
    const char* name;
    int colour;
    bool dashed = false;
  };
  constexpr LayerLook plan[] = {
      {"PLAN-LINE", 8, true}, {"PLAN-BORE", 1},       {"PLAN-BAND", 11},          {"PLAN-PIT", 4},
      {"PLAN-SURFACE", 9},    {"PLAN-ZONE", 1, true}, {"PLAN-BOUNDARY", 6, true}, {"PLAN-TREE", 3},
      {"PLAN-BACKGROUND", 8}, {"PLAN-TESTHOLE", 7}};
  constexpr LayerLook side[] = {{"SIDE-GROUND", 34},   {"SIDE-STRATA", 43, true}, {"SIDE-WATER", 5, true},
                                {"SIDE-BORE", 1},      {"SIDE-BAND", 11},         {"SIDE-PIT", 4},
                                {"SIDE-SURFACE", 9},   {"SIDE-ZONE", 1, true},    {"SIDE-LEVEL", 7},
                                {"SIDE-DIMENSION", 7}, {"SIDE-TESTHOLE", 7}};
  if (view != DxfView::profile)
    for (const LayerLook& one : plan) out.layer(one.name, one.colour, one.dashed);
  if (view != DxfView::plan)
    for (const LayerLook& one : side) out.layer(one.name, one.colour, one.dashed);
  for (const auto& [kind, word] : EnumNames<UtilityKind>::list) {
    if (view != DxfView::profile) out.layer("PLAN-" + dxf_upper(word), colour_of(kind));
    if (view != DxfView::plan) out.layer("SIDE-" + dxf_upper(word), colour_of(kind));
  }
}

std::string drawn(const Crossing& crossing, const Tables& tables, const Assessment& assessment, UnitSystem units,
                  const DxfOptions& options) {
  const bool both = options.view == DxfView::both;
  DxfParts parts{crossing,
                 assessment,
                 units,
                 options,
                 both ? side_elevation_shift_m(crossing, assessment) : 0,
                 resolve_tool(crossing.bore.tool, tables).diameter.m,
                 DxfText(options.length == DxfLength::us_survey_foot)};
  make_layers(parts.out, options.view);
  if (options.view != DxfView::profile) add_dxf_plan(parts);
  if (options.view != DxfView::plan) add_dxf_side(parts);
  return parts.out.take();
}

}  // namespace

std::string dxf_upper(std::string_view word) {
  std::string out;
  for (const char c : word) out += static_cast<char>(c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c);
  return out;
}

std::string dxf_name(const Utility& utility) {
  return utility.name.empty() ? utility.id : utility.name;
}

std::string dxf_name(const SurfaceFeature& feature) {
  return feature.name.empty() ? std::string(word_of(feature.kind)) : feature.name;
}

double side_elevation_shift_m(const Crossing& crossing, const Assessment& assessment) {
  double lowest = crossing.bore.launch.elevation.m;
  for (const PitShape* pit : {&assessment.launch_pit, &assessment.exit_pit})
    if (!pit->section.empty()) lowest = std::min(lowest, pit->floor_elevation_m);
  for (const PathPoint& p : assessment.bore.points) lowest = std::min(lowest, p.z_m);
  for (const UtilityAnswer& u : assessment.utilities)
    if (u.on_utility) lowest = std::min(lowest, u.on_utility->z_m - 1);
  for (const Stratum& stratum : crossing.site.strata)
    if (stratum.top)
      for (const LevelPoint& p : *stratum.top) lowest = std::min(lowest, p.elevation_m);
  if (crossing.site.water)
    for (const LevelPoint& p : *crossing.site.water) lowest = std::min(lowest, p.elevation_m);
  double top = 6;  // as far as roads are drawn
  for (const Utility& u : crossing.site.utilities)
    for (const PathVertex& v : u.path) top = std::max(top, v.y_m);
  for (const PitShape* pit : {&assessment.launch_pit, &assessment.exit_pit})
    for (const PlanPoint& p : pit->footprint) top = std::max(top, p.y_m);
  for (const SurfaceFeature& f : crossing.site.surface)
    for (const PlanPoint& p : f.outline) top = std::max(top, p.y_m);
  for (const Background& background : crossing.site.background)
    for (const PlanLine& line : background.lines)
      for (const PlanPoint& p : line) top = std::max(top, p.y_m);
  return 10 * std::ceil((top + 2 - lowest) / 10);
}

Result<std::string> write_dxf(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                              UnitSystem units, const DxfOptions& options) {
  if (options.place == DxfPlace::survey) {
    const auto& geo = crossing.site.georeference;
    if (options.view != DxfView::plan)
      return fail("place", "survey", "the plan alone: a profile has stations and levels, no place on the map");
    if (!geo || geo->crs.empty() || !geo->azimuth.entered)
      return fail("/site/georeference", "nothing",
                  "a georeferenced crossing for the survey's coordinates; or the local frame");
  }
  return drawn(crossing, tables, assessment, units, options);
}

std::string write_dxf(const Crossing& crossing, const Tables& tables, const Assessment& assessment, UnitSystem units) {
  return drawn(crossing, tables, assessment, units, {});
}

}  // namespace burrow
