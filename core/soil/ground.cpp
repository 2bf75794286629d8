#include "burrow/soil/ground.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {
constexpr double bottomless = -std::numeric_limits<double>::infinity();
/// The fits reach this far below the lowest line that was entered; deeper the solver itself is asked.
constexpr double fitted_depth_m = 10;

const SoilClass& class_of(const Tables& tables, const std::string& id) {
  const SoilClass* row = find_soil(tables, id);
  BURROW_ENSURE(row != nullptr);
  return *row;
}

/// Greatest depth below the surface for which the fits are made.
double deepest_m(const Site& site) {
  double high = bottomless, low = -bottomless;
  const auto take = [&](const LevelLine& line) {
    for (const LevelPoint& p : line) {
      high = std::max(high, p.elevation_m);
      low = std::min(low, p.elevation_m);
    }
  };
  take(site.ground);
  for (const Stratum& stratum : site.strata)
    if (stratum.top) take(*stratum.top);
  return std::min(high - low, 50.0) + fitted_depth_m;
}

using Cuts = boost::container::small_vector<double, 8>;

/// Where the ray from the point (x, y) along (dx, dy) crosses the edges of an outline, between two distances.
void crossings(const PlanLine& outline, double x, double y, double dx, double dy, double near_end, double far_end,
               Cuts& cuts) {
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const double ex = outline[i].x_m - outline[j].x_m, ey = outline[i].y_m - outline[j].y_m;
    const double px = outline[j].x_m - x, py = outline[j].y_m - y;
    const double determinant = ex * dy - ey * dx;
    if (determinant == 0) continue;  // along the edge: its neighbours are met instead
    const double along_edge = (dx * py - dy * px) / determinant;
    const double r = (ex * py - ey * px) / determinant;
    if (along_edge >= 0 && along_edge <= 1 && r > near_end && r < far_end) cuts.push_back(r);
  }
}
}  // namespace

Ground::Ground(const Site& site, const Tables& tables) : ground_(site.ground), water_(site.water) {
  BURROW_ENSURE(!site.ground.empty());
  BURROW_ENSURE(!site.strata.empty());
  if (water_ && water_->empty()) water_.reset();
  for (const Stratum& stratum : site.strata) {
    soils_.push_back(resolve_soil(class_of(tables, stratum.soil), stratum.values));
    tops_.push_back(stratum.top && !stratum.top->empty() ? stratum.top : std::nullopt);
  }
  for (const Strip& strip : site.strips) {
    soils_.push_back(resolve_soil(class_of(tables, strip.soil), strip.values));
    Body body{.outline = strip.outline,
              .x_low_m = -bottomless,
              .x_high_m = bottomless,
              .y_low_m = -bottomless,
              .y_high_m = bottomless,
              .top_m = strip.top_elevation ? std::optional(strip.top_elevation->m) : std::nullopt,
              .bottom_m = strip.bottom_elevation.m};
    for (const PlanPoint& p : strip.outline) {
      body.x_low_m = std::min(body.x_low_m, p.x_m);
      body.x_high_m = std::max(body.x_high_m, p.x_m);
      body.y_low_m = std::min(body.y_low_m, p.y_m);
      body.y_high_m = std::max(body.y_high_m, p.y_m);
    }
    bodies_.push_back(std::move(body));
  }
  double heaviest = 0;
  for (const Soil& soil : soils_)
    heaviest = std::max({heaviest, soil.unit_weight.N_m3, soil.saturated_unit_weight.N_m3});
  fit(heaviest * deepest_m(site));
}

Ground Ground::uniform(const Soil& soil) {
  Ground ground;
  ground.ground_ = {{0, 0}};
  ground.tops_.emplace_back(std::nullopt);
  ground.soils_.push_back(soil);
  ground.fit(soil.unit_weight.N_m3 * fitted_depth_m);
  return ground;
}

Ground Ground::with_class(const Site& site, const Tables& tables, std::size_t stratum,
                          const std::string& soil_class) const {
  Ground other = *this;
  Soil& soil = other.soils_[stratum];
  soil = resolve_soil(class_of(tables, soil_class), site.strata[stratum].values);
  other.laws_[stratum] = LimitLaw(soil, Pressure{0.5 * (1 + soil.earth_pressure_ratio.v) * fitted_to_Pa_});
  return other;
}

void Ground::fit(double deepest_vertical_Pa) {
  fitted_to_Pa_ = deepest_vertical_Pa;
  laws_.reserve(soils_.size());
  for (const Soil& soil : soils_)
    laws_.emplace_back(soil, Pressure{0.5 * (1 + soil.earth_pressure_ratio.v) * deepest_vertical_Pa});
}

double Ground::surface_m(double x_m, double) const {
  return elevation_at(ground_, x_m);
}

std::optional<double> Ground::water_m(double x_m) const {
  if (!water_) return std::nullopt;
  return elevation_at(*water_, x_m);
}

double Ground::top_of(std::size_t stratum, double x_m, double surface) const {
  if (stratum == 0 || !tops_[stratum]) return surface;
  return std::min(elevation_at(*tops_[stratum], x_m), surface);
}

std::size_t Ground::stratum_at(double x_m, double y_m, double z_m) const {
  const double surface = surface_m(x_m, y_m);
  for (std::size_t i = tops_.size(); i-- > 1;)
    if (z_m <= top_of(i, x_m, surface)) return i;
  return 0;
}

bool Ground::contains(const Body& body, double x_m, double y_m) const {
  return x_m >= body.x_low_m && x_m <= body.x_high_m && y_m >= body.y_low_m && y_m <= body.y_high_m &&
         inside(body.outline, x_m, y_m);
}

bool Ground::same_strips(double x_m, double y_m, double other_x_m, double other_y_m) const {
  return std::all_of(bodies_.begin(), bodies_.end(), [&](const Body& body) {
    return contains(body, x_m, y_m) == contains(body, other_x_m, other_y_m);
  });
}

std::optional<std::size_t> Ground::strip_at(double x_m, double y_m, double z_m) const {
  for (std::size_t i = bodies_.size(); i-- > 0;) {
    const Body& body = bodies_[i];
    if (!(z_m > body.bottom_m) || !contains(body, x_m, y_m)) continue;
    if (z_m <= body.top_m.value_or(surface_m(x_m, y_m))) return i;
  }
  return std::nullopt;
}

const Soil& Ground::soil_at(double x_m, double y_m, double z_m) const {
  if (!bodies_.empty())
    if (const auto strip = strip_at(x_m, y_m, z_m)) return soils_[tops_.size() + *strip];
  return soils_[stratum_at(x_m, y_m, z_m)];
}

Column Ground::column(double x_m, double y_m) const {
  Column column;
  fill(column, x_m, y_m);
  return column;
}

void Ground::overlay_strips(Slices& slices, double x_m, double y_m, double surface) const {
  for (std::size_t i = 0; i < bodies_.size(); ++i) {
    const Body& body = bodies_[i];
    if (!contains(body, x_m, y_m)) continue;
    const double top = std::min(body.top_m.value_or(surface), surface), bottom = body.bottom_m;
    if (!(top > bottom)) continue;
    Slices cut;
    bool placed = false;
    for (const Slice& s : slices) {
      if (s.top_m > top) cut.push_back({s.top_m, std::max(s.bottom_m, top), s.soil});
      if (!placed && s.bottom_m < top) {
        cut.push_back({top, bottom, tops_.size() + i});
        placed = true;
      }
      if (s.bottom_m < bottom) cut.push_back({std::min(s.top_m, bottom), s.bottom_m, s.soil});
    }
    slices = std::move(cut);
  }
}

void Ground::fill(Column& column, double x_m, double y_m) const {
  const double surface = surface_m(x_m, y_m);
  const double water = water_m(x_m).value_or(bottomless);
  column.begin(water_unit_weight_N_m3 * std::max(water - surface, 0.0));
  const auto add = [&](double top, double bottom, std::size_t soil) {
    const Soil& properties = soils_[soil];
    const LimitLaw& law = laws_[soil];
    if (water < top && water > bottom) {
      column.add(top, water, false, soil, properties, law);
      column.add(water, bottom, true, soil, properties, law);
    } else {
      column.add(top, bottom, water >= top, soil, properties, law);
    }
  };
  const auto each_stratum = [&](auto&& take) {
    double top = surface;
    std::size_t from = 0;
    while (from < tops_.size()) {
      // The next stratum that shows: the lowest of those whose tops are highest below here.
      std::size_t next = tops_.size();
      double next_top = bottomless;
      for (std::size_t i = from + 1; i < tops_.size(); ++i)
        if (const double t = top_of(i, x_m, surface); t >= next_top) {
          next_top = t;
          next = i;
        }
      if (next_top < top) take(top, next_top, from);
      top = std::min(top, next_top);
      from = next;
    }
  };
  if (bodies_.empty()) {
    each_stratum(add);
    return;
  }
  Slices slices;
  each_stratum([&](double top, double bottom, std::size_t soil) { slices.push_back({top, bottom, soil}); });
  overlay_strips(slices, x_m, y_m, surface);
  for (const Slice& s : slices) add(s.top_m, s.bottom_m, s.soil);
}

bool Ground::strip_near(double x_m, double y_m, double reach_m) const {
  return std::any_of(bodies_.begin(), bodies_.end(), [&](const Body& body) {
    return x_m + reach_m >= body.x_low_m && x_m - reach_m <= body.x_high_m && y_m + reach_m >= body.y_low_m &&
           y_m - reach_m <= body.y_high_m;
  });
}

double Ground::resistance_beside(const Column& here, const Point3& axis, double across_x, double across_y,
                                 double inner_m, double outer_m) const {
  Cuts cuts{inner_m};
  if (outer_m > inner_m * (1 + 1e-9)) {
    for (const Body& body : bodies_)
      if (body.outline.size() >= 3)
        crossings(body.outline, axis.x_m, axis.y_m, across_x, across_y, inner_m, outer_m, cuts);
    cuts.push_back(outer_m);
    std::sort(cuts.begin(), cuts.end());
  } else {
    cuts.push_back(inner_m * (1 + 1e-9));
  }
  double integral = 0, weight = 0;
  Column column;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    if (!(cuts[i] > cuts[i - 1])) continue;
    const double middle = 0.5 * (cuts[i - 1] + cuts[i]), width = 1 / cuts[i - 1] - 1 / cuts[i];
    const double x = axis.x_m + middle * across_x, y = axis.y_m + middle * across_y;
    const bool as_here = same_strips(axis.x_m, axis.y_m, x, y);
    if (!as_here) fill(column, x, y);
    integral += width * (as_here ? here : column).limit_pressure(axis.z_m);
    weight += width;
  }
  return integral / weight;
}

}  // namespace burrow
