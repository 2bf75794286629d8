#include "obstacle.h"

#include <algorithm>

#include "burrow/clearance/course.h"
#include "burrow/clearance/offset_line.h"
#include "burrow/clearance/separation.h"

namespace burrow::trials {

namespace {

Point3 moved(const Point3& p, double normal_x, double normal_y, double up_share, const Obstacle::Shift& shift) {
  return {p.x_m + shift.lateral_m * normal_x, p.y_m + shift.lateral_m * normal_y, p.z_m + shift.up_m * up_share};
}

struct Radii {
  double encroachment_m = 0, contact_m = 0;
};

/// Squared distance of a point from a segment; `inverse` is 1/length², 0 for a segment of no length.
struct Line {
  Point3 from, to;
  double dx, dy, dz, inverse;
  Line(const Point3& a, const Point3& b)
      : from(a), to(b), dx(b.x_m - a.x_m), dy(b.y_m - a.y_m), dz(b.z_m - a.z_m), inverse(0) {
    const double length2 = dx * dx + dy * dy + dz * dz;
    if (length2 > 0) inverse = 1 / length2;
  }
  [[nodiscard]] double distance2(const Point3& p) const {
    double x = p.x_m - from.x_m, y = p.y_m - from.y_m, z = p.z_m - from.z_m;
    const double t = std::clamp((x * dx + y * dy + z * dz) * inverse, 0.0, 1.0);
    x -= t * dx;
    y -= t * dy;
    z -= t * dz;
    return x * x + y * y + z * z;
  }
};

/// Follows one bore along one line. A point at a distance d from it cannot come nearer than r within d − r: those
/// stretches are leapt over. Stations grow along a bore, so that only those within r of the line's are looked at.
void follow(const Flight& flight, std::size_t lane, const Line& line, const Radii& radii, double step, std::size_t end,
            Obstacle::Met& met) {
  bool encroached = false;
  double radius = radii.encroachment_m;
  const double low = std::min(line.from.x_m, line.to.x_m) - radius - step;
  double high = std::max(line.from.x_m, line.to.x_m) + radius;
  const double leap = (low - flight.point(lane, 0).x_m) / step;
  for (std::size_t i = leap > 0 ? static_cast<std::size_t>(leap) : 0; i < end;) {
    const Point3 here = flight.point(lane, i);
    if (here.x_m > high) return;
    const double distance2 = line.distance2(here), near = radius + step;
    if (distance2 > near * near) {
      i += std::max<std::size_t>(1, static_cast<std::size_t>((std::sqrt(distance2) - radius) / step));
      continue;
    }
    const double least2 = nearest(here, flight.point(lane, i + 1), line.from, line.to).squared_distance_m2;
    if (!encroached && least2 < radius * radius) {
      encroached = true;
      if (!met.encroachment || i < *met.encroachment) met.encroachment = i;
      high += radii.contact_m - radius;
      radius = radii.contact_m;
    }
    if (encroached && least2 < radius * radius) {
      met.contact = i;
      return;
    }
    ++i;
  }
}

double distance_from(const BorePath& path, const Point3& from, const Point3& to) {
  const Line line(from, to);
  double least = line.distance2({path.points[0].x_m, path.points[0].y_m, path.points[0].z_m});
  for (const PathPoint& p : path.points) least = std::min(least, line.distance2({p.x_m, p.y_m, p.z_m}));
  return std::sqrt(least);
}

}  // namespace

Obstacle::Obstacle(const Utility& utility, const Clearance& clearance, const Site& site, const Tables& tables,
                   const BorePath& mean, double widest_m)
    : contact_radius_m_(clearance.contact_radius_m),
      encroachment_radius_m_(clearance.contact_radius_m + clearance.required_fixed_m) {
  const double depth = clearance.elevation_m && !site.ground.empty()
                           ? std::max(elevation_at(site.ground, *clearance.station_m) - *clearance.elevation_m, 0.0)
                           : 0;
  const LocationSd sd = location_sd(utility.located, tables, depth);
  lateral_sd_m_ = sd.lateral_m.value_or(0);
  vertical_sd_m_ = sd.vertical_m.value_or(0);

  // Pinned by test holes: the error is smaller near them; what is drawn is the greatest, of which each place has a
  // share.
  const std::vector<PinnedVertex>& pinned = clearance.pinned.line;
  std::vector<PathVertex> path;
  if (pinned.empty()) path = judged_line(utility, site.ground, tables);
  for (const PinnedVertex& v : pinned) {
    path.push_back(v.at);
    lateral_sd_m_ = std::max(lateral_sd_m_, v.lateral_sd_m);
    vertical_sd_m_ = std::max(vertical_sd_m_, v.vertical_sd_m);
  }
  const auto share = [](double here, double greatest) { return greatest > 0 ? here / greatest : 1; };
  const auto lateral_share = [&](std::size_t i) {
    return pinned.empty() ? 1 : share(pinned[i].lateral_sd_m, lateral_sd_m_);
  };
  const auto up_share = [&](std::size_t i) {
    return pinned.empty() ? 1 : share(pinned[i].vertical_sd_m, vertical_sd_m_);
  };
  const double reach = encroachment_radius_m_ + widest_m + 6 * std::hypot(lateral_sd_m_, vertical_sd_m_);
  depth_unknown_ = path.empty() || clearance.depth_unknown_at_bore;
  const auto point = [&](std::size_t i) { return Point3{path[i].x_m, path[i].y_m, *path[i].z_m}; };
  const auto add = [&](std::size_t i, std::size_t j) {
    const LevelNormal here = level_normal(path[i], path[j]);
    const LevelNormal before = i > 0 && j > i ? level_normal(path[i - 1], path[i]) : here;
    const LevelNormal after = j + 1 < path.size() && j > i ? level_normal(path[j], path[j + 1]) : here;
    const LevelNormal at_from = joint_normal(before, here), at_to = joint_normal(here, after);
    const double from_share = lateral_share(i), to_share = lateral_share(j);
    if (mean.ends == PathEnd::exit && distance_from(mean, point(i), point(j)) > reach) return;
    stretches_.push_back({point(i), point(j), from_share * at_from.x, from_share * at_from.y, to_share * at_to.x,
                          to_share * at_to.y, up_share(i), up_share(j)});
  };
  if (path.size() == 1 && path[0].z_m) add(0, 0);
  for (std::size_t i = 0; i + 1 < path.size(); ++i)
    if (path[i].z_m && path[i + 1].z_m) add(i, i + 1);
}

Obstacle::Met Obstacle::meet(const Flight& flight, std::size_t lane, const Shift& shift, double step) const {
  Met met;
  for (const Stretch& s : stretches_) {
    const Line line(moved(s.from, s.from_x, s.from_y, s.from_up, shift), moved(s.to, s.to_x, s.to_y, s.to_up, shift));
    const std::size_t end = met.contact ? *met.contact : flight.points(lane) - 1;
    follow(flight, lane, line, {encroachment_radius_m_, contact_radius_m_}, step, end, met);
  }
  return met;
}

}  // namespace burrow::trials
