#include "burrow/export/dxf.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/bore/tool.h"
#include "burrow/export/dxf_text.h"

namespace burrow {

namespace {

constexpr double text_m = 0.15;    // height of words, 1.5 mm at 1:100
constexpr double band_sd = 1.645;  // nine in ten between

std::string upper(std::string_view word) {
  std::string out;
  for (const char c : word) out += static_cast<char>(c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c);
  return out;
}

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

std::string name_of(const Utility& u) {
  return u.name.empty() ? u.id : u.name;
}

class Drawing {
 public:
  Drawing(const Crossing& crossing, const Tables& tables, const Assessment& assessment, UnitSystem units)
      : crossing_(crossing),
        answer_(assessment),
        units_(units),
        shift_m_(side_elevation_shift_m(crossing, assessment)),
        hole_m_(resolve_tool(crossing.bore.tool, tables).diameter.m) {}

  std::string draw() {
    layers();
    plan_site();
    plan_work();
    side_site();
    side_work();
    return out_.take();
  }

 private:
  void layers() {
    out_.layer("PLAN-LINE", 8, true);
    out_.layer("PLAN-BORE", 1);
    out_.layer("PLAN-BAND", 11);
    out_.layer("PLAN-PIT", 4);
    out_.layer("PLAN-SURFACE", 9);
    out_.layer("PLAN-BOUNDARY", 6, true);
    out_.layer("PLAN-TREE", 3);
    out_.layer("PLAN-BACKGROUND", 8);
    out_.layer("SIDE-GROUND", 34);
    out_.layer("SIDE-STRATA", 43, true);
    out_.layer("SIDE-WATER", 5, true);
    out_.layer("SIDE-BORE", 1);
    out_.layer("SIDE-BAND", 11);
    out_.layer("SIDE-PIT", 4);
    for (const auto& [kind, word] : EnumNames<UtilityKind>::list)
      for (const char* view : {"PLAN-", "SIDE-"}) out_.layer(view + upper(word), colour_of(kind));
  }

  PlanPoint side(double station_m, double elevation_m) const { return {station_m, elevation_m + shift_m_}; }
  std::vector<PlanPoint> side(const LevelLine& line) const {
    std::vector<PlanPoint> points;
    for (const LevelPoint& p : line) points.push_back(side(p.station_m, p.elevation_m));
    return points;
  }
  std::string length(double m) const { return format(m, Dimension::length, units_); }

  void plan_site() {
    const Site& site = crossing_.site;
    for (const Background& background : site.background)
      for (const PlanLine& line : background.lines) out_.line("PLAN-BACKGROUND", line);
    for (const SurfaceFeature& f : site.surface) {
      out_.line("PLAN-SURFACE", f.outline, true);
      if (f.outline.empty() && f.from && f.to) {
        const double reach = 6, lean = reach * std::tan(std::clamp(f.skew->rad, -1.4, 1.4));
        for (const double x : {f.from->m, f.to->m})
          out_.line("PLAN-SURFACE", std::vector<PlanPoint>{{x + lean, -reach}, {x - lean, reach}});
        out_.text("PLAN-SURFACE", {f.from->m + 0.1, reach - 0.3}, text_m,
                  f.name.empty() ? word_of(f.kind) : std::string_view(f.name));
      }
    }
    for (const Boundary& boundary : site.boundaries) out_.line("PLAN-BOUNDARY", boundary.line);
    for (const Tree& tree : site.trees)
      out_.circle("PLAN-TREE", {tree.station.m, tree.offset.m}, tree.protection_radius.m);
    for (const Utility& u : site.utilities) {
      const std::string layer = "PLAN-" + upper(word_of(u.kind));
      std::vector<Point3> in_space;
      std::vector<PlanPoint> flat;
      for (const PathVertex& v : u.path) {
        flat.push_back({v.x_m, v.y_m});
        if (v.z_m) in_space.push_back({v.x_m, v.y_m, *v.z_m});
      }
      if (in_space.size() == u.path.size())
        out_.line(layer, in_space);
      else
        out_.line(layer, flat);  // its depth is not known all along
      if (!flat.empty()) out_.text(layer, {flat.front().x_m + 0.1, flat.front().y_m}, text_m, name_of(u));
    }
  }

  void plan_work() {
    const Bore& bore = crossing_.bore;
    out_.line("PLAN-LINE", std::vector<PlanPoint>{{bore.launch.station.m, 0}, {bore.exit.station.m, 0}});
    std::vector<Point3> axis;
    std::vector<PlanPoint> left, right;
    for (const PathPoint& p : answer_.bore.points) {
      axis.push_back({p.x_m, p.y_m, p.z_m});
      left.push_back({p.x_m, p.y_m + band_sd * p.sd_lateral_m});
      right.push_back({p.x_m, p.y_m - band_sd * p.sd_lateral_m});
    }
    out_.line("PLAN-BORE", axis);
    left.insert(left.end(), right.rbegin(), right.rend());
    out_.line("PLAN-BAND", left, true);
    for (const PitShape* pit : {&answer_.launch_pit, &answer_.exit_pit}) {
      out_.line("PLAN-PIT", pit->floor, true);
      out_.line("PLAN-PIT", pit->footprint, true);
      if (!pit->floor.empty())
        out_.text("PLAN-PIT", {pit->floor_from_m, pit->floor_left_m + 0.1}, text_m,
                  fmt::format("{} pit, floor {} x {}, {} deep", pit == &answer_.launch_pit ? "launch" : "exit",
                              length(pit->floor_length_m), length(pit->floor_width_m), length(pit->depth_m)));
    }
  }

  void side_site() {
    const Site& site = crossing_.site;
    out_.line("SIDE-GROUND", side(site.ground));
    for (const LevelPoint& p : site.ground)
      out_.text("SIDE-GROUND", side(p.station_m, p.elevation_m + 0.1), text_m,
                format(p.elevation_m, Dimension::station, units_), 90);
    for (const Stratum& stratum : site.strata) {
      if (!stratum.top) continue;
      out_.line("SIDE-STRATA", side(*stratum.top));
      if (!stratum.top->empty())
        out_.text("SIDE-STRATA", side(stratum.top->front().station_m, stratum.top->front().elevation_m - 0.2), text_m,
                  stratum.soil);
    }
    if (site.water) out_.line("SIDE-WATER", side(*site.water));
    for (const UtilityAnswer& u : answer_.utilities) {
      if (!u.on_utility) continue;
      const auto found = std::find_if(site.utilities.begin(), site.utilities.end(),
                                      [&](const Utility& one) { return one.id == u.id; });
      if (found == site.utilities.end()) continue;
      const std::string layer = "SIDE-" + upper(word_of(found->kind));
      const double radius = found->outside_diameter ? found->outside_diameter->m / 2 : 0.03;
      out_.circle(layer, side(u.on_utility->x_m, u.on_utility->z_m), radius);
      out_.text(layer, side(u.on_utility->x_m + radius + 0.05, u.on_utility->z_m), text_m,
                name_of(*found) + (u.separation_m ? ", " + length(*u.separation_m) + " clear" : std::string()));
    }
  }

  void side_work() {
    std::vector<PlanPoint> axis, crown, invert, low, high;
    for (const PathPoint& p : answer_.bore.points) {
      const double half = hole_m_ / 2 / std::max(0.05, std::cos(p.grade_rad));
      axis.push_back(side(p.x_m, p.z_m));
      crown.push_back(side(p.x_m, p.z_m + half));
      invert.push_back(side(p.x_m, p.z_m - half));
      high.push_back(side(p.x_m, p.z_m + band_sd * p.sd_vertical_m));
      low.push_back(side(p.x_m, p.z_m - band_sd * p.sd_vertical_m));
    }
    out_.line("SIDE-BORE", axis);
    out_.line("SIDE-BORE", crown);
    out_.line("SIDE-BORE", invert);
    high.insert(high.end(), low.rbegin(), low.rend());
    out_.line("SIDE-BAND", high, true);
    for (const PitShape* pit : {&answer_.launch_pit, &answer_.exit_pit})
      out_.line("SIDE-PIT", side(pit->section), true);
    const Launch& launch = crossing_.bore.launch;
    const double top = elevation_at(crossing_.site.ground, launch.station.m) + 1.5;
    out_.text("SIDE-GROUND", side(launch.station.m, top), 2 * text_m, crossing_.name);
    out_.text("SIDE-GROUND", side(launch.station.m, top - 2.5 * text_m), text_m,
              shift_m_ == 0 ? std::string("side elevation: y is the elevation in metres")
                            : fmt::format("side elevation: y is the elevation in metres {} {:.0f}",
                                          shift_m_ > 0 ? "plus" : "less", std::abs(shift_m_)));
  }

  const Crossing& crossing_;
  const Assessment& answer_;
  UnitSystem units_;
  double shift_m_;
  double hole_m_;
  DxfText out_;
};

}  // namespace

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

std::string write_dxf(const Crossing& crossing, const Tables& tables, const Assessment& assessment, UnitSystem units) {
  return Drawing(crossing, tables, assessment, units).draw();
}

}  // namespace burrow
