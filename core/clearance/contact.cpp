#include "burrow/clearance/contact.h"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/tools/minima.hpp>
#include <cmath>

#include "burrow/base/quantity.h"

namespace burrow {

namespace {

constexpr double least_spread_m = 1e-7;  // a perfectly known place is a step; this keeps it one without dividing by 0

constexpr double ends_out_of_reach_sd = 6;  // a round end farther off than this holds less than 1e-9
constexpr double not_worth_searching = 1e-6;

double dot(const ViewVector& a, const ViewVector& b) {
  return a.across_m * b.across_m + a.up_m * b.up_m;
}

/// Φ(high) − Φ(low), taken in the tail where both are small.
double normal_between(double low, double high) {
  const double root_half = std::sqrt(0.5);
  if (low > 0) return 0.5 * (std::erfc(low * root_half) - std::erfc(high * root_half));
  return 0.5 * (std::erfc(-high * root_half) - std::erfc(-low * root_half));
}

double form(const ViewSpread& spread, const ViewVector& a, const ViewVector& b) {
  return spread.across_m2 * a.across_m * b.across_m + spread.up_m2 * a.up_m * b.up_m +
         spread.mixed_m2 * (a.across_m * b.up_m + a.up_m * b.across_m);
}

double spread_along(const ViewSpread& spread, const ViewVector& unit) {
  return std::max(std::sqrt(std::max(form(spread, unit, unit), 0.0)), least_spread_m);
}

/// The stadium in its own axes: u along it, v across, origin at its centre; `u`, `v` are where the bore lies.
struct Frame {
  ViewVector unit_u, unit_v;
  double half_length = 0, radius = 0, u = 0, v = 0;
};

Frame frame_of(const Stadium& stadium) {
  const ViewVector d{stadium.to.across_m - stadium.from.across_m, stadium.to.up_m - stadium.from.up_m};
  const double length = std::hypot(d.across_m, d.up_m);
  Frame f;
  f.unit_u = length > 0 ? ViewVector{d.across_m / length, d.up_m / length} : ViewVector{1, 0};
  f.unit_v = {-f.unit_u.up_m, f.unit_u.across_m};
  f.half_length = length / 2;
  f.radius = stadium.radius_m;
  const ViewVector centre{(stadium.from.across_m + stadium.to.across_m) / 2, (stadium.from.up_m + stadium.to.up_m) / 2};
  f.u = -dot(centre, f.unit_u);
  f.v = -dot(centre, f.unit_v);
  return f;
}

/// Density along u times the chance that v lies inside the slice there.
struct Slices {
  double mean_u, mean_v, sd_u, sd_v_given_u, slope;  // mean of v given u: mean_v + slope (u − mean_u)

  [[nodiscard]] double at(double u, double half_width) const {
    const double k = (u - mean_u) / sd_u;
    const double v = mean_v + slope * (u - mean_u);
    return std::exp(-0.5 * k * k) / (sd_u * std::sqrt(2 * pi)) *
           normal_between((-half_width - v) / sd_v_given_u, (half_width - v) / sd_v_given_u);
  }
  /// Length of u over which the slices change little enough for seven Gauss points.
  [[nodiscard]] double panel() const {
    return std::min(sd_u, std::abs(slope) * sd_u > sd_v_given_u ? sd_v_given_u / std::abs(slope) : sd_u);
  }
};

template <unsigned points, class F>
double integrate(F f, double from, double to, double panels_wanted) {
  if (!(to > from)) return 0;
  const int panels = static_cast<int>(std::clamp(std::ceil(panels_wanted), 1.0, 200.0));
  double sum = 0;
  for (int i = 0; i < panels; ++i) {
    const double a = from + (to - from) * i / panels, b = from + (to - from) * (i + 1) / panels;
    sum += boost::math::quadrature::gauss<double, points>::integrate(f, a, b);
  }
  return sum;
}

/// One round end, |u| from half_length outward. u = half_length + R sin t takes the square root out of the slice.
double cap(const Slices& slices, const Frame& f, double low, double high, double side) {
  const double from = side > 0 ? std::max(low, f.half_length) : std::max(-high, f.half_length);
  const double to = side > 0 ? high : -low;
  if (!(to > from)) return 0;
  const double t0 = std::asin(std::clamp((from - f.half_length) / f.radius, 0.0, 1.0));
  const double t1 = std::asin(std::clamp((to - f.half_length) / f.radius, 0.0, 1.0));
  const auto slice = [&](double t) {
    const double half_width = f.radius * std::cos(t);
    return slices.at(side * (f.half_length + f.radius * std::sin(t)), half_width) * half_width;
  };
  const double sharpest = std::min(slices.panel(), slices.sd_v_given_u);
  return integrate<7>(slice, t0, t1, f.radius * (t1 - t0) / sharpest);
}

double straight_part(const Slices& slices, const Frame& f, double low, double high) {
  const double from = std::max(low, -f.half_length), to = std::min(high, f.half_length);
  if (!(to > from)) return 0;
  if (std::abs(slices.slope) * slices.sd_u < 1e-12 * slices.sd_v_given_u)
    return normal_between((from - slices.mean_u) / slices.sd_u, (to - slices.mean_u) / slices.sd_u) *
           crossing_chance(slices.mean_v, f.radius, slices.sd_v_given_u);
  return integrate<15>([&](double u) { return slices.at(u, f.radius); }, from, to, (to - from) / (3 * slices.panel()));
}

double chance_in(const Frame& f, const ViewSpread& spread) {
  const double sd_u = spread_along(spread, f.unit_u), sd_v = spread_along(spread, f.unit_v);
  const double reach_u = no_chance_beyond_sd * sd_u;
  if (!(f.radius > 0) || std::abs(f.v) - f.radius > no_chance_beyond_sd * sd_v) return 0;
  if (std::abs(f.u) - f.half_length - f.radius > reach_u) return 0;
  if (f.half_length - std::abs(f.u) >= ends_out_of_reach_sd * sd_u) return crossing_chance(f.v, f.radius, sd_v);
  const double mixed = form(spread, f.unit_u, f.unit_v);
  const double slope = mixed / (sd_u * sd_u);
  const double rest = std::sqrt(std::max(sd_v * sd_v - slope * mixed, 0.0));
  const Slices slices{f.u, f.v, sd_u, std::max(rest, least_spread_m), slope};
  const double low = std::max(f.u - reach_u, -f.half_length - f.radius);
  const double high = std::min(f.u + reach_u, f.half_length + f.radius);
  return std::clamp(cap(slices, f, low, high, -1) + straight_part(slices, f, low, high) + cap(slices, f, low, high, 1),
                    0.0, 1.0);
}

}  // namespace

ViewSpread total_spread(const ViewSpread& bore, const LocationSpread& location, double lateral_share,
                        double vertical_share) {
  ViewSpread sum = bore;
  const auto add = [&](const ViewVector& sd, double share) {
    const double k = share * share;
    sum.across_m2 += k * sd.across_m * sd.across_m;
    sum.up_m2 += k * sd.up_m * sd.up_m;
    sum.mixed_m2 += k * sd.across_m * sd.up_m;
  };
  add(location.lateral, lateral_share);
  add(location.vertical, vertical_share);
  return sum;
}

double crossing_chance(double distance_m, double radius_m, double spread_m) {
  const double s = std::max(spread_m, least_spread_m);
  return normal_between((-radius_m - distance_m) / s, (radius_m - distance_m) / s);
}

double worst_crossing_chance(double distance_m, double radius_m, double least_m, double stated_m) {
  const double gap = std::abs(distance_m);
  double worst = least_m;
  if (gap > radius_m && radius_m > 0) {
    const double turning = std::sqrt(2 * gap * radius_m / std::log((gap + radius_m) / (gap - radius_m)));
    worst = std::max(least_m, std::min(turning, stated_m));
  }
  return crossing_chance(gap, radius_m, worst);
}

double stadium_chance(const Stadium& stadium, const ViewSpread& spread) {
  return chance_in(frame_of(stadium), spread);
}

double worst_stadium_chance(const Stadium& stadium, const ViewSpread& bore, const LocationSpread& location,
                            double known_worst) {
  const Frame f = frame_of(stadium);
  const ViewSpread stated = total_spread(bore, location);
  const double sd_u = spread_along(stated, f.unit_u), sd_v = spread_along(stated, f.unit_v);
  if (!(f.radius > 0) || std::abs(f.v) - f.radius > no_chance_beyond_sd * sd_v) return 0;
  if (std::abs(f.u) - f.half_length - f.radius > no_chance_beyond_sd * sd_u) return 0;
  const double strip = worst_crossing_chance(f.v, f.radius, spread_along(bore, f.unit_v), sd_v);
  if (f.half_length - std::abs(f.u) >= ends_out_of_reach_sd * sd_u) return strip;
  if (strip < std::max(not_worth_searching, known_worst))
    return chance_in(f, stated);  // the stadium lies within the strip

  const auto chance = [&](double lateral, double vertical) {
    return chance_in(f, total_spread(bore, location, lateral, vertical));
  };
  double shares[2] = {1, 1};
  double worst = chance(1, 1);
  for (const auto& corner : {std::pair{0.0, 0.0}, {0.0, 1.0}, {1.0, 0.0}}) {
    const double there = chance(corner.first, corner.second);
    if (there > worst) {
      worst = there;
      shares[0] = corner.first;
      shares[1] = corner.second;
    }
  }
  // Uphill along one error at a time; the chance has a single top along each.
  for (int sweep = 0; sweep < 3; ++sweep) {
    const double before = worst;
    for (const int i : {0, 1}) {
      const auto lower = [&](double share) { return -(i == 0 ? chance(share, shares[1]) : chance(shares[0], share)); };
      const double inward = shares[i] > 0.5 ? shares[i] - 0.01 : shares[i] + 0.01;
      const bool at_end = shares[i] == 0 || shares[i] == 1;
      if (at_end && -lower(inward) <= worst) continue;
      std::uintmax_t steps = 40;
      const auto [share, lowest] = boost::math::tools::brent_find_minima(lower, 0.0, 1.0, 16, steps);
      if (-lowest > worst) {
        worst = -lowest;
        shares[i] = share;
      }
    }
    if (worst <= before * (1 + 1e-8)) break;
  }
  return worst;
}

}  // namespace burrow
