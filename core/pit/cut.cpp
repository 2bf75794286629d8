#include "burrow/pit/cut.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

struct Body {
  const FloorRectangle& floor;
  const CutSides& sides;
  const LevelLine& ground;

  [[nodiscard]] double ground_height(double x) const { return elevation_at(ground, x) - floor.elevation_m; }
  /// Height of the cut's bottom above the floor: 0 over the floor, rising behind its two ends.
  [[nodiscard]] double bottom_height(double x) const {
    if (x < floor.from_m) return sides.low.height_at(floor.from_m - x);
    return x > floor.to_m ? sides.high.height_at(x - floor.to_m) : 0;
  }
  [[nodiscard]] double width_at(double height) const {
    return floor.left_m - floor.right_m + sides.left.run_at(height) + sides.right.run_at(height);
  }
};

void sort_unique(std::vector<double>& values) {
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
}

/// Stations behind one end at which its side bends.
void add_end_bends(const SideProfile& side, double edge, double sign, std::vector<double>& stations) {
  double run = 0;
  for (const SidePiece& piece : side.pieces()) stations.push_back(edge + sign * (run += piece.run_m));
}

/// Area between two heights of the cross-section: its width is straight between bends, so the middle one is exact.
double area_between(const Body& body, const std::vector<double>& bends, double low, double high) {
  double area = 0, from = low;
  const auto upto = [&](double to) {
    area += (to - from) * body.width_at((from + to) / 2);
    from = to;
  };
  for (const double bend : bends)
    if (bend > from && bend < high) upto(bend);
  upto(high);
  return area;
}

/// Stations within (a, b) at which the ground or the bottom, both straight there, passes one of the heights or the
/// other.
std::vector<double> inner_breaks(const Body& body, const std::vector<double>& bends, double a, double b) {
  const double inset = (b - a) * 1e-9;  // a bench jumps at the ends of the stretch
  const double a_in = a + inset, b_in = b - inset;
  const double g0 = body.ground_height(a_in), g1 = body.ground_height(b_in);
  const double l0 = body.bottom_height(a_in), l1 = body.bottom_height(b_in);
  std::vector<double> breaks{a, b};
  const auto cross = [&](double v0, double v1) {
    if (v0 * v1 < 0) breaks.push_back(a_in + (b_in - a_in) * v0 / (v0 - v1));
  };
  if (std::isfinite(l0) && std::isfinite(l1)) cross(g0 - l0, g1 - l1);
  cross(g0, g1);
  for (const double bend : bends) {
    cross(g0 - bend, g1 - bend);
    if (std::isfinite(l0) && std::isfinite(l1)) cross(l0 - bend, l1 - bend);
  }
  sort_unique(breaks);
  return breaks;
}

double volume_between(const Body& body, const std::vector<double>& bends, const std::vector<double>& breaks) {
  double volume = 0;
  for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
    const double middle = (breaks[i] + breaks[i + 1]) / 2, half = (breaks[i + 1] - breaks[i]) / 2;
    for (const double sign : {-1.0, 1.0}) {
      const double x = middle + sign * half / std::sqrt(3.0);
      const double low = std::max(body.bottom_height(x), 0.0), high = body.ground_height(x);
      if (high > low) volume += half * area_between(body, bends, low, high);
    }
  }
  return volume;
}

/// How far behind an end the cut comes out at the surface: the first place where the side reaches the ground.
double run_to_surface(const Body& body, const SideProfile& side, double edge, double sign) {
  double run = 0, height = 0;
  for (const SidePiece& piece : side.pieces()) {
    const double g_here = body.ground_height(edge + sign * run);
    if (g_here <= height) return run;
    // Within one piece the ground may bend; walk its points.
    std::vector<double> stops{0, piece.run_m};
    for (const LevelPoint& p : body.ground) {
      const double r = sign * (p.station_m - edge) - run;
      if (r > 0 && r < piece.run_m) stops.push_back(r);
    }
    sort_unique(stops);
    const auto above = [&](double r) {
      return body.ground_height(edge + sign * (run + r)) -
             (height + (piece.run_m > 0 ? piece.rise_m * r / piece.run_m : 0));
    };
    for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
      const double v0 = above(stops[i]), v1 = above(stops[i + 1]);
      if (v1 <= 0 && v0 > 0) return run + stops[i] + (stops[i + 1] - stops[i]) * v0 / (v0 - v1);
    }
    run += piece.run_m;
    height += piece.rise_m;
  }
  return run;
}

/// The edge of one long side in plan, from low to high station. Where a bench comes out the edge jumps.
PlanLine long_edge(const Body& body, const SideProfile& side, double edge, double sign,
                   const std::vector<double>& stations) {
  PlanLine line;
  const auto add = [&](double x, double height) {
    const PlanPoint p{x, edge + sign * side.run_at(std::max(height, 0.0))};
    if (line.empty() || !(line.back() == p)) line.push_back(p);
  };
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const double x = stations[i], height = body.ground_height(x);
    const double before = i > 0 ? body.ground_height((stations[i - 1] + x) / 2) : height;
    const double after = i + 1 < stations.size() ? body.ground_height((x + stations[i + 1]) / 2) : height;
    constexpr double hair_m = 1e-9;
    add(x, before > height ? height + hair_m : height - hair_m);
    add(x, after > height ? height + hair_m : height - hair_m);
  }
  return line;
}

LevelLine section_of(const Body& body, double low_run, double high_run) {
  const FloorRectangle& floor = body.floor;
  LevelLine section;
  const auto down = [&](const SideProfile& side, double run_to, double edge, double sign) {
    LevelLine points;  // from the floor up
    double run = 0, height = 0;
    for (const SidePiece& piece : side.pieces()) {
      points.push_back({edge + sign * run, floor.elevation_m + height});
      const bool upright_to_surface =
          piece.run_m <= 0 && body.ground_height(edge + sign * run) <= height + piece.rise_m;
      if (upright_to_surface || (piece.run_m > 0 && run + piece.run_m >= run_to)) break;
      run += piece.run_m;
      height += piece.rise_m;
    }
    const double x = edge + sign * run_to;
    points.push_back({x, std::max(elevation_at(body.ground, x), floor.elevation_m)});
    return points;
  };
  const LevelLine low = down(body.sides.low, low_run, floor.from_m, -1);
  section.assign(low.rbegin(), low.rend());
  const LevelLine high = down(body.sides.high, high_run, floor.to_m, 1);
  section.insert(section.end(), high.begin(), high.end());
  return section;
}

}  // namespace

namespace {

/// Heights at which either long side bends.
std::vector<double> bends_of(const CutSides& sides) {
  std::vector<double> bends = sides.left.bends();
  const std::vector<double> right_bends = sides.right.bends();
  bends.insert(bends.end(), right_bends.begin(), right_bends.end());
  sort_unique(bends);
  return bends;
}

/// Stations between which surface, ends and bottom are all straight.
std::vector<double> stations_of(const Body& body, double first, double last) {
  std::vector<double> stations{first, last, body.floor.from_m, body.floor.to_m};
  for (const LevelPoint& p : body.ground) stations.push_back(p.station_m);
  add_end_bends(body.sides.low, body.floor.from_m, -1, stations);
  add_end_bends(body.sides.high, body.floor.to_m, 1, stations);
  std::erase_if(stations, [&](double x) { return x < first || x > last; });
  sort_unique(stations);
  return stations;
}

}  // namespace

double volume_below(const FloorRectangle& floor, const CutSides& sides, const LevelLine& surface, double from_m,
                    double to_m) {
  const Body body{floor, sides, surface};
  const std::vector<double> bends = bends_of(sides), stations = stations_of(body, from_m, to_m);
  double volume = 0;
  for (std::size_t i = 0; i + 1 < stations.size(); ++i)
    volume += volume_between(body, bends, inner_breaks(body, bends, stations[i], stations[i + 1]));
  return volume;
}

Cut cut_out(const FloorRectangle& floor, const CutSides& sides, const LevelLine& ground) {
  const Body body{floor, sides, ground};
  const double low_run = run_to_surface(body, sides.low, floor.from_m, -1);
  const double high_run = run_to_surface(body, sides.high, floor.to_m, 1);
  const double first = floor.from_m - low_run, last = floor.to_m + high_run;

  const std::vector<double> bends = bends_of(sides), stations = stations_of(body, first, last);

  Cut cut;
  std::vector<double> edge_stations;
  for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
    const std::vector<double> breaks = inner_breaks(body, bends, stations[i], stations[i + 1]);
    cut.volume_m3 += volume_between(body, bends, breaks);
    edge_stations.insert(edge_stations.end(), breaks.begin(), breaks.end());
  }
  sort_unique(edge_stations);
  for (const double x : stations)
    if (x >= floor.from_m && x <= floor.to_m) cut.depth_m = std::max(cut.depth_m, body.ground_height(x));

  const PlanLine left = long_edge(body, sides.left, floor.left_m, 1, edge_stations);
  const PlanLine right = long_edge(body, sides.right, floor.right_m, -1, edge_stations);
  cut.footprint = right;
  cut.footprint.insert(cut.footprint.end(), left.rbegin(), left.rend());
  cut.section = section_of(body, low_run, high_run);
  cut.from_m = first;
  cut.to_m = last;
  cut.top_length_m = last - first;
  for (const double x : edge_stations)
    cut.top_width_m = std::max(cut.top_width_m, body.width_at(std::max(body.ground_height(x), 0.0)));
  return cut;
}

}  // namespace burrow
