#pragma once
/// A floor dug out with lists of its own for each piece and each cut: slow, and the second route to `dig_out`,
/// `edge_of` and `volume_below`. What both give is the same to the last bit.

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

#include "burrow/pit/solid.h"
#include "slow_ground.h"
#include "solid_parts.h"

namespace burrow::test::slow {

inline std::vector<PlanLine> outline_without(const PlanLine& convex, const PlanLine& other) {
  std::vector<PlanLine> pieces;
  PlanLine rest = convex;
  for (const Bound& half : bounds_of(other)) {
    PlanLine outside = clipped(rest, half.opposite());
    if (!outside.empty()) pieces.push_back(std::move(outside));
    rest = clipped(rest, half);
    if (rest.empty()) break;
  }
  return pieces;
}

inline double prism_volume(const PlanLine& convex, const GroundPlane& upper, const GroundPlane& lower) {
  double volume = 0;
  const auto height = [&](const PlanPoint& p) { return upper.at(p.x_m, p.y_m) - lower.at(p.x_m, p.y_m); };
  for (std::size_t i = 1; i + 1 < convex.size(); ++i)
    volume += cross(convex[0], convex[i], convex[i + 1]) / 2 *
              (height(convex[0]) + height(convex[i]) + height(convex[i + 1])) / 3;
  return volume;
}

inline Bound bound_above(const GroundPlane& upper, const GroundPlane& lower) {
  return {upper.a - lower.a, upper.b - lower.b, upper.c - lower.c};
}

constexpr double hair_m = 1e-9;

/// A stretch of a side over which it is plane: distances from the edge, heights above the floor.
struct Stretch {
  double from_m, to_m, low_m, high_m;
};

inline std::vector<Stretch> stretches_of(const SideProfile& side) {
  std::vector<Stretch> stretches;
  double run = 0, height = 0;
  for (const SidePiece& piece : side.pieces()) {
    if (piece.run_m > 0) stretches.push_back({run, run + piece.run_m, height, height + piece.rise_m});
    run += piece.run_m;
    height += piece.rise_m;
  }
  return stretches;
}

struct Side {
  Bound outside;  ///< distance from the edge
  std::vector<Stretch> stretches;
};

class SlowDigger {
 public:
  SlowDigger(const PitFloor& floor, const SlowSurface& ground)
      : floor_(floor), ground_(ground), parts_(parts_of(floor)), overlap_(!is_convex(floor.corners)) {
    for (std::size_t i = 0; i < floor.corners.size(); ++i)
      sides_.push_back({bound_left_of(floor.corners[(i + 1) % floor.corners.size()], floor.corners[i]),
                        stretches_of(*floor.sides[i])});
  }

  std::vector<SolidPiece> all() {
    std::vector<SolidPiece> body;
    for (const GroundPiece& piece : ground_.pieces_in(reach())) {
      std::vector<SolidPiece> here;
      for (const SolidPart& part : parts_) dig(piece, part, here);
      std::move(here.begin(), here.end(), std::back_inserter(body));
    }
    return body;
  }

 private:
  /// Wider than anything that can be dug. The mitre of a sharp corner reaches far.
  [[nodiscard]] PlanBox reach() const {
    const double height = std::max(ground_.highest_m - floor_.elevation_m, 0.0);
    const std::size_t n = floor_.corners.size();
    PlanBox box{1e300, -1e300, 1e300, -1e300};
    for (std::size_t i = 0; i < n; ++i) {
      const PlanPoint &a = floor_.corners[(i + n - 1) % n], &p = floor_.corners[i], &b = floor_.corners[(i + 1) % n];
      const double run =
          std::max(floor_.sides[(i + n - 1) % n]->run_at(height + hair_m), floor_.sides[i]->run_at(height + hair_m));
      const double ux = p.x_m - a.x_m, uy = p.y_m - a.y_m, vx = b.x_m - p.x_m, vy = b.y_m - p.y_m;
      const double turn = std::atan2(ux * vy - uy * vx, ux * vx + uy * vy);
      const double out = run / std::max(std::cos(std::max(turn, 0.0) / 2), 1e-3) + 0.1;
      box.x_low_m = std::min(box.x_low_m, p.x_m - out);
      box.x_high_m = std::max(box.x_high_m, p.x_m + out);
      box.y_low_m = std::min(box.y_low_m, p.y_m - out);
      box.y_high_m = std::max(box.y_high_m, p.y_m + out);
    }
    return box;
  }

  void dig(const GroundPiece& ground, const SolidPart& part, std::vector<SolidPiece>& body) const {
    PlanLine outline = ground.outline;
    for (const HalfPlane& h : part.within) outline = clipped(outline, Bound{h.a, h.b, h.c});
    if (outline.empty()) return;
    std::vector<SolidPiece> pieces{{std::move(outline), ground.plane, {0, 0, floor_.elevation_m}}};
    keep_below_ground(pieces);
    for (const std::size_t edge : part.edges) {
      std::vector<SolidPiece> next;
      for (const SolidPiece& piece : pieces) raise(piece, sides_[edge], next);
      pieces = std::move(next);
      keep_below_ground(pieces);
    }
    for (SolidPiece& piece : pieces) {
      if (overlap_)
        join(std::move(piece), body);
      else
        body.push_back(std::move(piece));
    }
  }

  static void keep_below_ground(std::vector<SolidPiece>& pieces) {
    for (SolidPiece& piece : pieces) piece.outline = clipped(piece.outline, bound_above(piece.ground, piece.bottom));
    std::erase_if(pieces, [](const SolidPiece& piece) { return piece.outline.empty(); });
  }

  /// The bottom is at least as high as a side; nothing is dug behind its end.
  void raise(const SolidPiece& piece, const Side& side, std::vector<SolidPiece>& raised) const {
    const Bound& d = side.outside;
    if (PlanLine before = clipped(piece.outline, d.opposite()); !before.empty())
      raised.push_back({std::move(before), piece.ground, piece.bottom});
    for (const Stretch& s : side.stretches) {
      PlanLine over = clipped(piece.outline, Bound{d.a, d.b, d.c - s.from_m});
      if (over.empty()) break;
      over = clipped(over, Bound{-d.a, -d.b, s.to_m - d.c});
      if (over.empty()) continue;
      const double slope = (s.high_m - s.low_m) / (s.to_m - s.from_m);
      const GroundPlane plane{slope * d.a, slope * d.b, floor_.elevation_m + s.low_m + slope * (d.c - s.from_m)};
      const Bound higher = bound_above(plane, piece.bottom);
      PlanLine lifted = clipped(over, higher), left = clipped(over, higher.opposite());
      if (higher.a == 0 && higher.b == 0 && higher.c == 0) left.clear();  // one and the same
      if (!lifted.empty()) raised.push_back({std::move(lifted), piece.ground, plane});
      if (!left.empty()) raised.push_back({std::move(left), piece.ground, piece.bottom});
    }
  }

  /// Where two pieces overlap the deeper one stays.
  static void join(SolidPiece piece, std::vector<SolidPiece>& body) {
    std::vector<SolidPiece> fresh{std::move(piece)};
    const std::size_t before = body.size();
    std::vector<SolidPiece> cut;
    for (std::size_t i = 0; i < before && !fresh.empty(); ++i) {
      std::vector<SolidPiece> there{std::move(body[i])}, still;
      for (const SolidPiece& f : fresh) {
        std::vector<SolidPiece> after;
        PlanLine lost;  // of the fresh one
        for (SolidPiece& t : there) {
          const PlanLine common = clipped(f.outline, bounds_of(t.outline));
          if (common.empty()) {
            after.push_back(std::move(t));
            continue;
          }
          const Bound fresh_higher = bound_above(f.bottom, t.bottom);
          const PlanLine taken = clipped(common, fresh_higher.opposite());
          const bool alike = fresh_higher.a == 0 && fresh_higher.b == 0 && fresh_higher.c == 0;
          if (taken.empty() || alike) {
            after.push_back(std::move(t));
            continue;
          }
          for (PlanLine& rest : outline_without(t.outline, taken))
            after.push_back({std::move(rest), t.ground, t.bottom});
        }
        there = std::move(after);
        // What those that are left there still hold of it.
        std::vector<PlanLine> open{f.outline};
        for (const SolidPiece& t : there) {
          std::vector<PlanLine> next;
          for (const PlanLine& o : open) {
            const PlanLine common = clipped(o, bounds_of(t.outline));
            if (common.empty()) {
              next.push_back(o);
              continue;
            }
            for (PlanLine& rest : outline_without(o, common)) next.push_back(std::move(rest));
          }
          open = std::move(next);
        }
        for (PlanLine& o : open) still.push_back({std::move(o), f.ground, f.bottom});
      }
      fresh = std::move(still);
      std::move(there.begin(), there.end(), std::back_inserter(cut));
      body[i].outline.clear();
    }
    std::erase_if(body, [](const SolidPiece& p) { return p.outline.empty(); });
    std::move(cut.begin(), cut.end(), std::back_inserter(body));
    std::move(fresh.begin(), fresh.end(), std::back_inserter(body));
  }

  const PitFloor& floor_;
  const SlowSurface& ground_;
  std::vector<SolidPart> parts_;
  std::vector<Side> sides_;
  bool overlap_;
};

inline std::vector<SolidPiece> dig_out(const PitFloor& floor, const SlowSurface& ground) {
  return SlowDigger(floor, ground).all();
}

inline double volume_below(const std::vector<SolidPiece>& body, const LevelLine& line) {
  double volume = 0;
  // Before the first point, between points, behind the last.
  for (std::size_t i = 0; i <= line.size(); ++i) {
    const bool first = i == 0, last = i == line.size();
    const LevelPoint &a = line[first ? 0 : i - 1], &b = line[last ? i - 1 : i];
    const double slope = first || last ? 0 : (b.elevation_m - a.elevation_m) / (b.station_m - a.station_m);
    const GroundPlane top{slope, 0, a.elevation_m - slope * a.station_m};
    for (const SolidPiece& piece : body) {
      PlanLine here = piece.outline;
      if (!first) here = clipped(here, Bound{1, 0, -a.station_m});
      if (!last && !here.empty()) here = clipped(here, Bound{-1, 0, b.station_m});
      if (here.empty()) continue;
      const Bound ground_higher = bound_above(piece.ground, top);
      const PlanLine under_top = clipped(clipped(here, ground_higher), bound_above(top, piece.bottom));
      volume += prism_volume(under_top, top, piece.bottom);
      if (ground_higher.a == 0 && ground_higher.b == 0 && ground_higher.c == 0) continue;
      volume += prism_volume(clipped(here, ground_higher.opposite()), piece.ground, piece.bottom);
    }
  }
  return volume;
}

}  // namespace burrow::test::slow
