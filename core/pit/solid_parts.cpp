#include "solid_parts.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace burrow {

namespace {

double turn(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c) {
  return (b.x_m - a.x_m) * (c.y_m - b.y_m) - (b.y_m - a.y_m) * (c.x_m - b.x_m);
}

class Parts {
 public:
  explicit Parts(const PitFloor& floor) : corners_(floor.corners), convex_(is_convex(floor.corners)) {}

  std::vector<SolidPart> all() {
    over_the_floor();
    for (std::size_t i = 0; i < corners_.size(); ++i) {
      beside_edge(i);
      about_corner(i);
    }
    return std::move(parts_);
  }

 private:
  [[nodiscard]] const PlanPoint& corner(std::size_t i) const { return corners_[i % corners_.size()]; }
  [[nodiscard]] HalfPlane inside_of(std::size_t edge) const { return left_of(corner(edge), corner(edge + 1)); }
  /// On from a corner, in the direction of an edge.
  [[nodiscard]] HalfPlane ahead_of(std::size_t at, std::size_t edge) const {
    const HalfPlane side = inside_of(edge);
    return {side.b, -side.a, -(side.b * corner(at).x_m - side.a * corner(at).y_m)};
  }

  void over_the_floor() {
    if (convex_) {
      parts_.push_back({bounds_of(corners_), {}});
      return;
    }
    // Ears are cut off until three corners are left.
    PlanLine rest = corners_;
    while (rest.size() > 3) {
      std::size_t ear = 0;
      for (; ear < rest.size(); ++ear)
        if (is_ear(rest, ear)) break;
      if (ear == rest.size()) break;  // corners on one line alone
      const std::size_t n = rest.size();
      parts_.push_back({bounds_of(PlanLine{rest[(ear + n - 1) % n], rest[ear], rest[(ear + 1) % n]}), {}});
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(ear));
    }
    if (signed_area(rest) > 0) parts_.push_back({bounds_of(rest), {}});
  }

  static bool is_ear(const PlanLine& rest, std::size_t i) {
    const std::size_t n = rest.size();
    const PlanPoint &a = rest[(i + n - 1) % n], &b = rest[i], &c = rest[(i + 1) % n];
    if (!(turn(a, b, c) > 0)) return false;
    return std::none_of(rest.begin(), rest.end(), [&](const PlanPoint& p) {
      return !(p == a) && !(p == b) && !(p == c) && turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0;
    });
  }

  /// The first edge that a ray meets from its outer side, leaving out those given.
  [[nodiscard]] std::optional<std::size_t> first_met(const PlanPoint& from, double dx, double dy, std::size_t but,
                                                     std::size_t or_but) const {
    std::optional<std::size_t> met;
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < corners_.size(); ++i) {
      if (i == but || i == or_but) continue;
      const PlanPoint &p = corner(i), &q = corner(i + 1);
      const double ex = q.x_m - p.x_m, ey = q.y_m - p.y_m, determinant = ex * dy - ey * dx;
      if (determinant == 0) continue;
      const double px = p.x_m - from.x_m, py = p.y_m - from.y_m;
      const double along_edge = (dx * py - dy * px) / determinant, distance = (ex * py - ey * px) / determinant;
      if (along_edge < 0 || along_edge > 1 || distance < 1e-9 || distance >= nearest) continue;
      nearest = distance;
      met = i;
    }
    return met;
  }

  void beside_edge(std::size_t edge) {
    const HalfPlane inside = inside_of(edge), from = ahead_of(edge, edge), to = ahead_of(edge + 1, edge).opposite();
    if (convex_) {
      parts_.push_back({{inside.opposite(), from, to}, {edge}});
      return;
    }
    // Between corners that stand before it nothing else of the floor begins or ends.
    const double length = from.at(corner(edge + 1));
    std::vector<double> stops{0, length};
    for (const PlanPoint& p : corners_) {
      const double along = from.at(p);
      if (inside.at(p) < 0 && along > 0 && along < length) stops.push_back(along);
    }
    std::sort(stops.begin(), stops.end());
    for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
      if (!(stops[i + 1] - stops[i] > 1e-9)) continue;
      const double middle = (stops[i] + stops[i + 1]) / 2;
      const PlanPoint start{corner(edge).x_m + from.a * middle, corner(edge).y_m + from.b * middle};
      SolidPart part{
          {inside.opposite(), {from.a, from.b, from.c - stops[i]}, {-from.a, -from.b, stops[i + 1] - from.c}}, {edge}};
      if (const auto met = first_met(start, -inside.a, -inside.b, edge, edge))
        part.within.push_back(inside_of(*met).opposite());
      parts_.push_back(std::move(part));
    }
  }

  /// Between the two directions square to the edges that meet in an outer corner.
  void about_corner(std::size_t at) {
    const std::size_t before = (at + corners_.size() - 1) % corners_.size();
    const double bend = turn(corner(before), corner(at), corner(at + 1));
    if (!(bend > 0)) return;
    const HalfPlane first = ahead_of(at, before), last = ahead_of(at, at).opposite();
    if (convex_) {
      parts_.push_back({{first, last}, {before, at}});
      return;
    }
    const PlanPoint& place = corner(at);
    const HalfPlane n0 = inside_of(before), n1 = inside_of(at);
    const double start = std::atan2(-n0.b, -n0.a);
    const auto beyond = [&](double angle) {
      const double two_pi = 2 * std::acos(-1.0), past = std::fmod(angle - start, two_pi);
      return past < 0 ? past + two_pi : past;
    };
    const double whole = beyond(std::atan2(-n1.b, -n1.a));
    std::vector<double> stops{0, whole};
    for (const PlanPoint& p : corners_) {
      if (p == place) continue;
      const double angle = beyond(std::atan2(p.y_m - place.y_m, p.x_m - place.x_m));
      if (angle < whole) stops.push_back(angle);
    }
    std::sort(stops.begin(), stops.end());
    const auto ray = [&](double angle) {  // to its left
      const double x = std::cos(start + angle), y = std::sin(start + angle);
      return HalfPlane{-y, x, y * place.x_m - x * place.y_m};
    };
    for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
      if (!(stops[i + 1] - stops[i] > 1e-9)) continue;
      const double middle = start + (stops[i] + stops[i + 1]) / 2;
      SolidPart part{{ray(stops[i]), ray(stops[i + 1]).opposite()}, {before, at}};
      if (const auto met = first_met(place, std::cos(middle), std::sin(middle), before, at))
        part.within.push_back(inside_of(*met).opposite());
      parts_.push_back(std::move(part));
    }
  }

  const PlanLine& corners_;
  bool convex_;
  std::vector<SolidPart> parts_;
};

}  // namespace

bool is_convex(const PlanLine& corners) {
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i)
    if (turn(corners[i], corners[(i + 1) % n], corners[(i + 2) % n]) < 0) return false;
  return true;
}

std::vector<SolidPart> parts_of(const PitFloor& floor) {
  return Parts(floor).all();
}

}  // namespace burrow
