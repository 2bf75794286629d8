#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "dxf_parts.h"

namespace burrow {

namespace {

/// In the local frame, or where its places lie on the survey's map.
class DxfPlan {
 public:
  explicit DxfPlan(DxfParts& parts) : parts_(parts), out_(parts.out) {
    const auto& geo = parts.crossing.site.georeference;
    if (parts.options.place == DxfPlace::local || !geo) return;
    origin_ = geo->origin;
    turn_ = pi / 2 - geo->azimuth->rad;  // of the line, counter-clockwise from east
  }

  void draw() {
    surroundings();
    things_on_top();
    zones();
    utilities();
    bore();
    pits();
  }

 private:
  [[nodiscard]] PlanPoint at(double x, double y) const {
    return {origin_.x_m + x * std::cos(turn_) - y * std::sin(turn_),
            origin_.y_m + x * std::sin(turn_) + y * std::cos(turn_)};
  }
  void line(const std::string& layer, const std::vector<PlanPoint>& local, bool closed = false) {
    std::vector<PlanPoint> points;
    for (const PlanPoint& p : local) points.push_back(at(p.x_m, p.y_m));
    out_.line(layer, points, closed);
  }
  void line(const std::string& layer, const std::vector<Point3>& local) {
    std::vector<Point3> points;
    for (const Point3& p : local) {
      const PlanPoint place = at(p.x_m, p.y_m);
      points.push_back({place.x_m, place.y_m, p.z_m});
    }
    out_.line(layer, points);
  }
  void text(const std::string& layer, double x, double y, std::string_view words) {
    out_.text(layer, at(x, y), dxf_text_m, words, turn_ * 180 / pi);
  }
  [[nodiscard]] std::string length(double m) const { return format(m, Dimension::length, parts_.units); }

  void surroundings() {
    const Site& site = parts_.crossing.site;
    for (const Background& background : site.background)
      for (const PlanLine& one : background.lines) line("PLAN-BACKGROUND", one);
    for (const Boundary& boundary : site.boundaries) line("PLAN-BOUNDARY", boundary.line);
    for (const Tree& tree : site.trees)
      out_.circle("PLAN-TREE", at(tree.station.m, tree.offset.m), tree.protection_radius.m);
    for (const TestHole& hole : site.test_holes) {
      out_.circle("PLAN-TESTHOLE", at(hole.station.m, hole.offset.m), 0.15);
      const std::string level =
          hole.elevation ? " " + format(hole.elevation->m, Dimension::station, parts_.units) : std::string();
      text("PLAN-TESTHOLE", hole.station.m + 0.2, hole.offset.m, hole.id + level);
    }
  }

  void things_on_top() {
    for (const SurfaceFeature& f : parts_.crossing.site.surface) {
      line("PLAN-SURFACE", f.outline, true);
      if (!f.outline.empty() || !f.from || !f.to) continue;
      const double reach = 6, lean = reach * std::tan(std::clamp(f.skew->rad, -1.4, 1.4));
      for (const double x : {f.from->m, f.to->m})
        line("PLAN-SURFACE", std::vector<PlanPoint>{{x + lean, -reach}, {x - lean, reach}});
      text("PLAN-SURFACE", f.from->m + 0.1, reach - 0.3, dxf_name(f));
    }
  }

  /// Within which no pit may stand.
  void zones() {
    const double reach = 6;
    for (const RuleZone& zone : parts_.answer.zones) {
      if (!zone.pit_setback_m) continue;
      for (const double x : {zone.from_m - *zone.pit_setback_m, zone.to_m + *zone.pit_setback_m})
        line("PLAN-ZONE", std::vector<PlanPoint>{{x, -reach}, {x, reach}});
    }
  }

  void utilities() {
    for (const Utility& u : parts_.crossing.site.utilities) {
      const std::string layer = "PLAN-" + dxf_upper(word_of(u.kind));
      std::vector<Point3> in_space;
      std::vector<PlanPoint> flat;
      for (const PathVertex& v : u.path) {
        flat.push_back({v.x_m, v.y_m});
        if (v.z_m) in_space.push_back({v.x_m, v.y_m, *v.z_m});
      }
      if (in_space.size() == u.path.size())
        line(layer, in_space);
      else
        line(layer, flat);  // its depth is not known all along
      if (!flat.empty()) text(layer, flat.front().x_m + 0.1, flat.front().y_m, dxf_name(u));
    }
  }

  void bore() {
    const Bore& bore = parts_.crossing.bore;
    line("PLAN-LINE", std::vector<PlanPoint>{{bore.launch.station.m, 0}, {bore.exit.station.m, 0}});
    std::vector<Point3> axis;
    std::vector<PlanPoint> left, right;
    for (const PathPoint& p : parts_.answer.bore.points) {
      axis.push_back({p.x_m, p.y_m, p.z_m});
      left.push_back({p.x_m, p.y_m + dxf_band_sd * p.sd_lateral_m});
      right.push_back({p.x_m, p.y_m - dxf_band_sd * p.sd_lateral_m});
    }
    line("PLAN-BORE", axis);
    left.insert(left.end(), right.rbegin(), right.rend());
    line("PLAN-BAND", left, true);
  }

  void pits() {
    for (const PitShape* pit : {&parts_.answer.launch_pit, &parts_.answer.exit_pit}) {
      line("PLAN-PIT", pit->floor, true);
      line("PLAN-PIT", pit->footprint, true);
      if (!pit->floor.empty())
        text("PLAN-PIT", pit->floor_from_m, pit->floor_left_m + 0.1,
             fmt::format("{} pit, floor {} x {}, {} deep", pit == &parts_.answer.launch_pit ? "launch" : "exit",
                         length(pit->floor_length_m), length(pit->floor_width_m), length(pit->depth_m)));
    }
  }

  DxfParts& parts_;
  DxfText& out_;
  PlanPoint origin_{0, 0};
  double turn_ = 0;
};

}  // namespace

void add_dxf_plan(DxfParts& parts) {
  DxfPlan(parts).draw();
}

}  // namespace burrow
