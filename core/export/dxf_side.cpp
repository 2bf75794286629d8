#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "dxf_parts.h"

namespace burrow {

namespace {

class DxfSide {
 public:
  explicit DxfSide(DxfParts& parts) : parts_(parts), out_(parts.out) {}

  void draw() {
    ground();
    things_on_top();
    utilities();
    bore();
    levels();
    dimensions();
    heading();
  }

 private:
  [[nodiscard]] PlanPoint at(double station_m, double elevation_m) const {
    return {station_m, elevation_m + parts_.shift_m};
  }
  [[nodiscard]] std::vector<PlanPoint> along(const LevelLine& line) const {
    std::vector<PlanPoint> points;
    for (const LevelPoint& p : line) points.push_back(at(p.station_m, p.elevation_m));
    return points;
  }
  /// The ground between two stations, so much lower.
  [[nodiscard]] std::vector<PlanPoint> below_ground(double from_m, double to_m, double down_m) const {
    const LevelLine& ground = parts_.crossing.site.ground;
    std::vector<PlanPoint> points;
    const auto add = [&](double x) { points.push_back(at(x, elevation_at(ground, x) - down_m)); };
    add(from_m);
    for (const LevelPoint& p : ground)
      if (p.station_m > from_m && p.station_m < to_m) add(p.station_m);
    add(to_m);
    return points;
  }
  [[nodiscard]] std::string length(double m) const { return format(m, Dimension::length, parts_.units); }
  [[nodiscard]] std::string level(double m) const { return format(m, Dimension::station, parts_.units); }

  void ground() {
    const Site& site = parts_.crossing.site;
    out_.line("SIDE-GROUND", along(site.ground));
    for (const LevelPoint& p : site.ground)
      out_.text("SIDE-GROUND", at(p.station_m, p.elevation_m + 0.1), dxf_text_m, level(p.elevation_m), 90);
    for (const Stratum& stratum : site.strata) {
      if (!stratum.top) continue;
      out_.line("SIDE-STRATA", along(*stratum.top));
      if (!stratum.top->empty())
        out_.text("SIDE-STRATA", at(stratum.top->front().station_m, stratum.top->front().elevation_m - 0.2), dxf_text_m,
                  stratum.soil);
    }
    if (site.water) out_.line("SIDE-WATER", along(*site.water));
    for (const TestHole& hole : site.test_holes) {
      if (!hole.elevation || site.ground.empty()) continue;
      const double top = elevation_at(site.ground, hole.station.m);
      out_.line("SIDE-TESTHOLE",
                std::vector<PlanPoint>{at(hole.station.m, top), at(hole.station.m, hole.elevation->m)});
      out_.text("SIDE-TESTHOLE", at(hole.station.m + 0.05, hole.elevation->m), dxf_text_m,
                hole.id + " " + level(hole.elevation->m));
    }
  }

  void things_on_top() {
    if (parts_.crossing.site.ground.empty()) return;
    for (const SurfaceFeature& f : parts_.crossing.site.surface) {
      if (!f.from || !f.to) continue;
      std::vector<PlanPoint> outline = below_ground(f.from->m, f.to->m, 0);
      const std::vector<PlanPoint> lower = below_ground(f.from->m, f.to->m, 0.1);
      outline.insert(outline.end(), lower.rbegin(), lower.rend());
      out_.line("SIDE-SURFACE", outline, true);
      out_.text("SIDE-SURFACE", at(f.from->m, elevation_at(parts_.crossing.site.ground, f.from->m) + 0.5), dxf_text_m,
                dxf_name(f));
    }
    for (const RuleZone& zone : parts_.answer.zones)
      if (zone.cover_m) out_.line("SIDE-ZONE", below_ground(zone.from_m, zone.to_m, *zone.cover_m));
  }

  void utilities() {
    const Site& site = parts_.crossing.site;
    for (const UtilityAnswer& u : parts_.answer.utilities) {
      if (!u.on_utility) continue;
      const auto found = std::find_if(site.utilities.begin(), site.utilities.end(),
                                      [&](const Utility& one) { return one.id == u.id; });
      if (found == site.utilities.end()) continue;
      const std::string layer = "SIDE-" + dxf_upper(word_of(found->kind));
      const double radius = found->outside_diameter ? found->outside_diameter->m / 2 : 0.03;
      out_.circle(layer, at(u.on_utility->x_m, u.on_utility->z_m), radius);
      out_.text(layer, at(u.on_utility->x_m + radius + 0.05, u.on_utility->z_m), dxf_text_m,
                dxf_name(*found) + (u.separation_m ? ", " + length(*u.separation_m) + " clear" : std::string()));
    }
  }

  void bore() {
    std::vector<PlanPoint> axis, crown, invert, low, high;
    for (const PathPoint& p : parts_.answer.bore.points) {
      const double half = parts_.hole_m / 2 / std::max(0.05, std::cos(p.grade_rad));
      axis.push_back(at(p.x_m, p.z_m));
      crown.push_back(at(p.x_m, p.z_m + half));
      invert.push_back(at(p.x_m, p.z_m - half));
      high.push_back(at(p.x_m, p.z_m + dxf_band_sd * p.sd_vertical_m));
      low.push_back(at(p.x_m, p.z_m - dxf_band_sd * p.sd_vertical_m));
    }
    out_.line("SIDE-BORE", axis);
    out_.line("SIDE-BORE", crown);
    out_.line("SIDE-BORE", invert);
    high.insert(high.end(), low.rbegin(), low.rend());
    out_.line("SIDE-BAND", high, true);
    for (const PitShape* pit : {&parts_.answer.launch_pit, &parts_.answer.exit_pit})
      out_.line("SIDE-PIT", along(pit->section), true);
  }

  /// Level of the axis at both faces and at each mark, and the grade of the launch.
  void levels() {
    const auto tick = [&](double station_m, double elevation_m, const std::string& words) {
      out_.line("SIDE-LEVEL", std::vector<PlanPoint>{at(station_m, elevation_m), at(station_m, elevation_m - 0.4)});
      out_.text("SIDE-LEVEL", at(station_m + 0.05, elevation_m - 0.4), dxf_text_m, words, 90);
    };
    const std::vector<PathPoint>& path = parts_.answer.bore.points;
    if (path.empty()) return;
    tick(path.front().x_m, path.front().z_m,
         level(path.front().z_m) + ", " + format(parts_.crossing.bore.launch.grade.v, Dimension::grade, parts_.units));
    for (const Mark& mark : parts_.answer.marks)
      if (mark.station_m && mark.elevation_m) tick(*mark.station_m, *mark.elevation_m, level(*mark.elevation_m));
    tick(path.back().x_m, path.back().z_m, level(path.back().z_m));
  }

  /// Lengths of the bore and of both pits, as lines: a drawing of release 12 wants a block for each dimension.
  void dimensions() {
    const Bore& bore = parts_.crossing.bore;
    double y = bore.launch.elevation.m;
    for (const PitShape* pit : {&parts_.answer.launch_pit, &parts_.answer.exit_pit})
      if (!pit->section.empty()) y = std::min(y, pit->floor_elevation_m);
    y -= 1;
    const auto dimension = [&](double from_m, double to_m) {
      out_.line("SIDE-DIMENSION", std::vector<PlanPoint>{at(from_m, y), at(to_m, y)});
      for (const double x : {from_m, to_m}) {
        out_.line("SIDE-DIMENSION", std::vector<PlanPoint>{at(x, y + 0.5), at(x, y - 0.1)});
        out_.line("SIDE-DIMENSION", std::vector<PlanPoint>{at(x - 0.08, y - 0.08), at(x + 0.08, y + 0.08)});
      }
      out_.text("SIDE-DIMENSION", at((from_m + to_m) / 2, y + 0.05), dxf_text_m, length(to_m - from_m));
    };
    dimension(bore.launch.station.m, bore.exit.station.m);
    const PitShape &launch = parts_.answer.launch_pit, &exit = parts_.answer.exit_pit;
    if (!launch.floor.empty()) dimension(launch.floor_from_m, bore.launch.station.m);
    if (!exit.floor.empty()) dimension(bore.exit.station.m, exit.floor_to_m);
  }

  void heading() {
    const Launch& launch = parts_.crossing.bore.launch;
    const double top = elevation_at(parts_.crossing.site.ground, launch.station.m) + 1.5;
    out_.text("SIDE-GROUND", at(launch.station.m, top), 2 * dxf_text_m, parts_.crossing.name);
    const double shift = parts_.shift_m;
    out_.text("SIDE-GROUND", at(launch.station.m, top - 2.5 * dxf_text_m), dxf_text_m,
              shift == 0 ? std::string("side elevation: y is the elevation")
                         : fmt::format("side elevation: y is the elevation in metres {} {:.0f}",
                                       shift > 0 ? "plus" : "less", std::abs(shift)));
  }

  DxfParts& parts_;
  DxfText& out_;
};

}  // namespace

void add_dxf_side(DxfParts& parts) {
  DxfSide(parts).draw();
}

}  // namespace burrow
