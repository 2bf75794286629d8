#include "excavate.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/crossing/floor_outline.h"
#include "burrow/pit/pit_shapes.h"
#include "burrow/pit/proposal.h"
#include "burrow/pit/slope.h"
#include "burrow/pit/slope_conditions.h"
#include "burrow/pit/soil_facts.h"
#include "burrow/pit/solid.h"
#include "layers.h"

namespace burrow {

namespace {

double deepest(const FloorRectangle& floor, const LevelLine& ground) {
  double high = std::max(elevation_at(ground, floor.from_m), elevation_at(ground, floor.to_m));
  for (const LevelPoint& p : ground)
    if (p.station_m > floor.from_m && p.station_m < floor.to_m) high = std::max(high, p.elevation_m);
  return high - floor.elevation_m;
}

class Excavation {
 public:
  Excavation(const Crossing& crossing, const Pit& pit, const Tables& tables, const PlacedFloor& placed,
             const SiteSurface& surface)
      : crossing_(crossing),
        site_(crossing.site),
        pit_(pit),
        tables_(tables),
        rules_(row_of(tables, *crossing.pits.rules)),
        floor_(placed.floor) {
    shape_.face_station_m = placed.face_station_m;
    shape_.bore_side_high = placed.bore_side_high;
    shape_.floor = {{floor_.from_m, floor_.right_m},
                    {floor_.to_m, floor_.right_m},
                    {floor_.to_m, floor_.left_m},
                    {floor_.from_m, floor_.left_m}};
    if (!pit.floor_outline.empty() && !fault_of_floor(pit.floor_outline)) place_outline();
    shape_.floor_from_m = floor_.from_m;
    shape_.floor_to_m = floor_.to_m;
    shape_.floor_right_m = floor_.right_m;
    shape_.floor_left_m = floor_.left_m;
    shape_.floor_elevation_m = floor_.elevation_m;
    shape_.axis_elevation_m = placed.axis_elevation_m;
    shape_.floor_length_m = floor_.to_m - floor_.from_m;
    shape_.floor_width_m = floor_.left_m - floor_.right_m;
    choose_ground(surface);
  }

  PitShape all() {
    if (site_.ground.empty()) return std::move(shape_);  // nothing is known above the floor
    stand_sides();
    if (by_surface())
      dig_surface();
    else
      dig_line();
    return std::move(shape_);
  }

  double volume_alone_m3() {
    if (site_.ground.empty()) return 0;
    stand_sides();
    return by_surface() ? volume_dug(floor_of(shape_), shape_.ground)
                        : cut_out(floor_, shape_.sides, site_.ground).volume_m3;
  }

 private:
  void stand_sides() {
    shape_.depth_m = by_surface() ? deepest_of_surface() : deepest(floor_, site_.ground);
    cut_sides();
  }

  [[nodiscard]] bool by_surface() const { return shape_.ground.there(); }

  /// From the frame of the pit into that of the crossing.
  void place_outline() {
    const double middle = (floor_.right_m + floor_.left_m) / 2, into = shape_.bore_side_high ? -1 : 1;
    PlanLine corners;
    for (const PlanPoint& p : pit_.floor_outline)
      corners.push_back({shape_.face_station_m + into * p.x_m, middle + p.y_m});
    shape_.floor = wound_left(std::move(corners));
    shape_.outlined = true;
    floor_.from_m = floor_.to_m = shape_.floor.front().x_m;
    floor_.right_m = floor_.left_m = shape_.floor.front().y_m;
    for (const PlanPoint& p : shape_.floor) {
      floor_.from_m = std::min(floor_.from_m, p.x_m);
      floor_.to_m = std::max(floor_.to_m, p.x_m);
      floor_.right_m = std::min(floor_.right_m, p.y_m);
      floor_.left_m = std::max(floor_.left_m, p.y_m);
    }
  }

  void choose_ground(const SiteSurface& surface) {
    if (site_.ground.empty()) return;
    if (shape_.outlined) shape_.ground = GroundSurface(site_.ground, {});  // only that way knows other floors
    if (site_.ground_points.empty()) return;
    if (!(floor_.to_m > floor_.from_m && floor_.left_m > floor_.right_m)) return;
    const GroundSurface of_site = surface.of(site_);
    if (of_site.surveyed_near(shape_.floor, surveyed_reach_m)) shape_.ground = of_site;
  }

  [[nodiscard]] double ground_at(double station_m) const {
    if (!by_surface()) return elevation_at(site_.ground, station_m);
    return shape_.ground.height_at(station_m, (floor_.left_m + floor_.right_m) / 2);
  }

  [[nodiscard]] double deepest_of_surface() const {
    const SideProfile upright;
    const PitFloor floor{shape_.floor, std::vector<const SideProfile*>(shape_.floor.size(), &upright),
                         floor_.elevation_m};
    return depth_of(dig_out(floor, shape_.ground), floor);
  }

  [[nodiscard]] ExcavationType type_of(const PitLayer& layer) const {
    const PitPlace place{floor_, shape_.depth_m, shape_.bore_side_high, by_surface() ? &shape_.ground : nullptr};
    return type_in_force(crossing_, pit_, tables_, place, layer);
  }

  /// Sides by the layers at each of them: those of the long sides half way along the floor.
  void cut_sides() {
    double highest = floor_.elevation_m;  // the ground may rise behind the pit
    for (const LevelPoint& p : site_.ground) highest = std::max(highest, p.elevation_m);
    if (by_surface()) highest = std::max(highest, shape_.ground.highest_m());
    shape_.soil_type = ExcavationType::stable_rock;
    const auto layers = [&](double station) {
      std::vector<PitLayer> all = layers_at(site_, station, ground_at(station), floor_.elevation_m);
      if (all.empty()) all.push_back({0, floor_.elevation_m, floor_.elevation_m});
      for (PitLayer& layer : all) {
        layer.type = type_of(layer);
        shape_.soil_type = std::max(shape_.soil_type, layer.type);
      }
      slope_layers(all, rules_, shape_.depth_m, pit_);
      return all;
    };
    const auto profile = [&](const PitSide& side, const std::vector<PitLayer>& there) {
      const std::vector<SlopeStep> steps = steps_of(there, side, rules_, floor_.elevation_m, shape_.depth_m);
      const double highest_side = highest - floor_.elevation_m;
      if (*side.kind != SideKind::benched || !side.benches.empty()) return SideProfile(side, steps, highest_side);
      PitSide by_rules = side;
      by_rules.benches = benches_by_rules(rules_, side.run_per_rise ? side.run_per_rise->v : steps.back().run_per_rise);
      return SideProfile(by_rules, steps, highest_side);
    };
    const std::vector<PitLayer> middle = layers((floor_.from_m + floor_.to_m) / 2);
    const bool one = site_.strata.size() < 2;
    const std::vector<PitLayer> low = one ? middle : layers(floor_.from_m), high = one ? middle : layers(floor_.to_m);
    shape_.held = held_sides(rules_, pit_, what_holds(middle));
    const PitSides s = sides_in_force(pit_.sides, shape_.held);
    const bool bore_high = shape_.bore_side_high;
    shape_.sides = {profile(bore_high ? s.back : s.bore, low), profile(bore_high ? s.bore : s.back, high),
                    profile(s.left, middle), profile(s.right, middle)};
    shape_.layers = middle;
  }

  [[nodiscard]] PitGround what_holds(const std::vector<PitLayer>& layers) const {
    PitGround ground{Length{shape_.depth_m}, shape_.soil_type, soil_confirmed(pit_), true};
    for (const PitLayer& layer : layers) {
      const SoilClass* soil =
          layer.stratum < site_.strata.size() ? find_soil(tables_, site_.strata[layer.stratum].soil) : nullptr;
      const bool rock = soil && soil->excavation_type == ExcavationType::stable_rock;
      ground.sound_rock = ground.sound_rock && rock && layer.type == ExcavationType::stable_rock;
    }
    if (rules_.rules == ExcavationRules::din_4124 && may_stand_upright(rules_, pit_, ground.depth))
      ground.conditions_clear = conditions_clear();
    return ground;
  }

  /// What DIN 4124 asks of upright sides, those left to the program upright.
  [[nodiscard]] bool conditions_clear() const {
    Pit upright = pit_;
    for (PitSide* side : {&upright.sides.bore, &upright.sides.back, &upright.sides.left, &upright.sides.right})
      if (left_to_program(*side)) side->kind.value = SideKind::upright;
    const SlopeConditions conditions = slope_conditions(crossing_, upright, tables_, place_of(shape_));
    return conditions.present.empty() && conditions.open.empty();
  }

  void dig_line() {
    const Cut cut = cut_out(floor_, shape_.sides, site_.ground);
    parallel_for(cut.volume_m3, [&](std::size_t stratum) {
      return volume_below(floor_, shape_.sides, surface_of(site_, stratum, cut.from_m, cut.to_m), cut.from_m, cut.to_m);
    });
    shape_.depth_m = cut.depth_m;
    shape_.top_length_m = cut.top_length_m;
    shape_.top_width_m = cut.top_width_m;
    shape_.volume_m3 = cut.volume_m3;
    shape_.footprint = cut.footprint;
    shape_.section = cut.section;
  }

  void dig_surface() {
    const std::vector<SolidPiece> body = dig_out(floor_of(shape_), shape_.ground);
    shape_.section = cut_out(floor_, shape_.sides, site_.ground).section;  // along the line the ground is the line
    shape_.footprint = edge_of(body);
    shape_.volume_m3 = volume_of(body);
    double from = floor_.from_m, to = floor_.to_m, right = floor_.right_m, left = floor_.left_m;
    for (const PlanPoint& p : shape_.footprint) {
      from = std::min(from, p.x_m);
      to = std::max(to, p.x_m);
      right = std::min(right, p.y_m);
      left = std::max(left, p.y_m);
    }
    shape_.top_length_m = to - from;
    shape_.top_width_m = left - right;
    parallel_for(shape_.volume_m3, [&](std::size_t stratum) {
      const std::optional<LevelLine> top = top_of(site_, stratum, from, to);
      return top ? volume_below(body, *top) : shape_.volume_m3;
    });
  }

  /// What of the cut lies in each stratum: what lies below its top, less what lies below the next one's.
  template <class VolumeBelow>
  void parallel_for(double whole, VolumeBelow&& volume_below_top) {
    std::vector<PitLayer>& layers = shape_.layers;
    if (layers.empty()) return;
    if (site_.strata.size() < 2) {
      layers.front().volume_m3 = whole;
      return;
    }
    double below = 0;
    for (std::size_t i = site_.strata.size(); i-- > 0;) {
      const double from_here = i == 0 ? whole : volume_below_top(i);
      const double volume = std::max(from_here - below, 0.0);
      below = std::max(below, from_here);
      const auto layer = std::find_if(layers.begin(), layers.end(), [&](const PitLayer& l) { return l.stratum == i; });
      if (layer != layers.end()) {
        layer->volume_m3 = volume;
      } else if (volume > 0) {  // cut at one end of the pit only
        const auto next = std::find_if(layers.begin(), layers.end(), [&](const PitLayer& l) { return l.stratum > i; });
        const double level = next != layers.end() ? next->top_m : floor_.elevation_m;
        PitLayer thin = layers.front();
        thin.stratum = i;
        thin.top_m = thin.bottom_m = level;
        thin.type = type_of(thin);
        thin.volume_m3 = volume;
        shape_.soil_type = std::max(shape_.soil_type, thin.type);
        layers.insert(next, thin);
      }
    }
  }

  const Crossing& crossing_;
  const Site& site_;
  const Pit& pit_;
  const Tables& tables_;
  const ExcavationRuleSet& rules_;
  FloorRectangle floor_;  // or the one round the outline
  PitShape shape_;
};

}  // namespace

PitShape excavate(const Crossing& crossing, const Pit& pit, const Tables& tables, const PlacedFloor& placed,
                  const SiteSurface& surface) {
  return Excavation(crossing, pit, tables, placed, surface).all();
}

double excavated_m3(const Crossing& crossing, const Pit& pit, const Tables& tables, const PlacedFloor& placed,
                    const SiteSurface& surface) {
  return Excavation(crossing, pit, tables, placed, surface).volume_alone_m3();
}

}  // namespace burrow
