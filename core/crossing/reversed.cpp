#include "burrow/crossing/reversed.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace burrow {

namespace {

/// Half a turn about the middle of the bore.
class HalfTurn {
 public:
  explicit HalfTurn(const Bore& bore) : sum_m_(bore.launch.station.m + bore.exit.station.m) {}

  [[nodiscard]] double station(double x_m) const { return sum_m_ - x_m; }
  [[nodiscard]] double sum_m() const { return sum_m_; }

  void turn(Length& station_m) const { station_m.m = station(station_m.m); }
  void turn(LevelLine& line) const {
    for (LevelPoint& p : line) p.station_m = station(p.station_m);
    std::reverse(line.begin(), line.end());
  }
  void turn(PlanLine& line) const {
    for (PlanPoint& p : line) p = {station(p.x_m), -p.y_m};
  }
  template <class Point>
  void turn_points(std::vector<Point>& points) const {
    for (Point& p : points) {
      p.x_m = station(p.x_m);
      p.y_m = -p.y_m;
    }
  }
  template <class Placed>
  void turn_place(Placed& placed) const {
    turn(placed.station);
    placed.offset.m = -placed.offset.m;
  }

 private:
  double sum_m_;
};

void turn_site(Site& site, const HalfTurn& half) {
  half.turn(site.ground);
  half.turn_points(site.ground_points);
  if (site.water) half.turn(*site.water);
  for (Stratum& stratum : site.strata)
    if (stratum.top) half.turn(*stratum.top);
  for (Strip& strip : site.strips) half.turn(strip.outline);
  for (SurfaceFeature& feature : site.surface) {
    for (std::optional<Length>* end : {&feature.from, &feature.to})
      if (*end) half.turn(**end);
    std::swap(feature.from, feature.to);
    half.turn(feature.outline);
    for (LevelPeg& peg : feature.levels.pegs) half.turn_place(peg);
  }
  for (Boundary& boundary : site.boundaries) half.turn(boundary.line);
  for (Tree& tree : site.trees) half.turn_place(tree);
  for (Plant& machine : site.plant) half.turn_place(machine);
  for (Utility& utility : site.utilities) half.turn_points(utility.path);
  for (TestHole& hole : site.test_holes) half.turn_place(hole);
  for (Background& sheet : site.background)
    for (PlanLine& line : sheet.lines) half.turn(line);
  if (!site.georeference) return;
  Georeference& map = *site.georeference;
  const double azimuth = map.azimuth->rad;
  map.origin.x_m += half.sum_m() * std::sin(azimuth);
  map.origin.y_m += half.sum_m() * std::cos(azimuth);
  map.azimuth.set(Angle{azimuth > 0 ? azimuth - pi : azimuth + pi});
}

void turn_bore(Bore& bore) {
  Launch& launch = bore.launch;
  Exit& exit = bore.exit;
  launch.elevation.m += launch.grade.v * (exit.station.m - launch.station.m);
  launch.grade.v = -launch.grade.v;
  std::swap(launch.offset, exit.offset);
  for (Given<Length>* offset : {&launch.offset, &exit.offset}) offset->value.m = 0 - offset->value.m;
}

/// What lay to its left lies to its right.
void turn_pit(Pit& pit) {
  if (pit.floor_offset) pit.floor_offset->m = -pit.floor_offset->m;
  for (PlanPoint& corner : pit.floor_outline) corner.y_m = -corner.y_m;
  std::swap(pit.sides.left, pit.sides.right);
  for (Given<PitSideName>* side : {&pit.spoil.side, &pit.ladder.side})
    side->value = side->value == PitSideName::left    ? PitSideName::right
                  : side->value == PitSideName::right ? PitSideName::left
                                                      : side->value;
  pit.ladder.along.value.m = 0 - pit.ladder.along.value.m;
}

/// What belongs to a launch or an exit, not to a place, stays: cradle, room to work, room beyond the band.
void turn_pits(Pits& pits) {
  std::swap(pits.launch, pits.exit);
  std::swap(pits.launch.working_length, pits.exit.working_length);
  std::swap(pits.launch.cradle_height, pits.exit.cradle_height);
  std::swap(pits.launch.allowance, pits.exit.allowance);
  turn_pit(pits.launch);
  turn_pit(pits.exit);
}

void swap_heads(std::string& text, const std::string& one, const std::string& other) {
  if (text == one || text.starts_with(one + "/"))
    text = other + text.substr(one.size());
  else if (text == other || text.starts_with(other + "/"))
    text = one + text.substr(other.size());
}

void turn_locks(std::vector<std::string>& locks) {
  std::erase_if(locks, [](const std::string& lock) {
    return lock == "/bore/launch/elevation_m" || lock == "/bore/launch/grade" || lock == "/bore/launch/heading_rad";
  });
  for (std::string& lock : locks) {
    swap_heads(lock, "/bore/launch", "/bore/exit");
    swap_heads(lock, "/pits/launch", "/pits/exit");
    for (const char* pit : {"/pits/launch", "/pits/exit"})
      swap_heads(lock, std::string(pit) + "/sides/left", std::string(pit) + "/sides/right");
  }
}

}  // namespace

Phrase why_not_reversed(const Crossing& crossing) {
  if (!crossing.practice.empty()) return translatable("a practice bore runs the way it was drawn");
  if (!crossing.record.empty())
    return translatable("readings of the day were taken along it; start from a copy without its records");
  return {};
}

Crossing reversed(const Crossing& crossing) {
  Crossing mirrored = crossing;
  const HalfTurn half(crossing.bore);
  turn_site(mirrored.site, half);
  turn_bore(mirrored.bore);
  turn_pits(mirrored.pits);
  turn_locks(mirrored.locks);
  for (Mute& mute : mirrored.muted) swap_heads(mute.subject, "launch-pit", "exit-pit");
  for (Alternative& other : mirrored.alternatives) {
    if (other.bore) {
      // Of a layout that begins or ends elsewhere too: it is mirrored about the same middle.
      const double launch = other.bore->launch.station.m, exit = other.bore->exit.station.m;
      turn_bore(*other.bore);
      other.bore->launch.station.m = half.station(exit);
      other.bore->exit.station.m = half.station(launch);
    }
    if (other.pits) turn_pits(*other.pits);
    turn_locks(other.locks);
  }
  return mirrored;
}

}  // namespace burrow
