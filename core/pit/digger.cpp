#include "digger.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {

constexpr double hair_m = 1e-9;

/// Where two pieces overlap the deeper one stays.
void join(SolidPiece piece, std::vector<SolidPiece>& body) {
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
        const HalfPlane fresh_higher = above(f.bottom, t.bottom);
        const PlanLine taken = clipped(common, fresh_higher.opposite());
        const bool alike = fresh_higher.a == 0 && fresh_higher.b == 0 && fresh_higher.c == 0;
        if (taken.empty() || alike) {
          after.push_back(std::move(t));
          continue;
        }
        for (PlanLine& rest : without(t.outline, taken)) after.push_back({std::move(rest), t.ground, t.bottom});
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
          for (PlanLine& rest : without(o, common)) next.push_back(std::move(rest));
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

}  // namespace

std::vector<Digger::Stretch> Digger::stretches_of(const SideProfile& side) {
  std::vector<Stretch> stretches;
  double run = 0, height = 0;
  for (const SidePiece& piece : side.pieces()) {
    if (piece.run_m > 0) stretches.push_back({run, run + piece.run_m, height, height + piece.rise_m});
    run += piece.run_m;
    height += piece.rise_m;
  }
  return stretches;
}

Digger::Digger(const PitFloor& floor, const GroundSurface& ground)
    : floor_(floor), ground_(ground), parts_(parts_of(floor)), overlap_(!is_convex(floor.corners)) {
  BURROW_ENSURE(floor.corners.size() >= 3 && floor.sides.size() == floor.corners.size());
  for (std::size_t i = 0; i < floor.corners.size(); ++i)
    sides_.push_back(
        {left_of(floor.corners[(i + 1) % floor.corners.size()], floor.corners[i]), stretches_of(*floor.sides[i])});
}

void Digger::each(const TakeDug& take, const PlanBox* within) {
  const PlanBox look = within ? *within : where_it_is_dug();
  ground_.each_piece(reach(ground_.highest_m()), look, [&](Corners outline, const GroundPlane& plane) {
    store_.clear();
    joined_.clear();
    plane_ = plane;
    const StoredOutline whole = store_.add(outline);
    if (const SolidPart* part = overlap_ ? nullptr : part_around(outline)) {
      dig(whole, *part);
      give(take);
      return;
    }
    for (const SolidPart& part : parts_) {
      dig(store_.clipped(whole, part.within), part);
      give(take);
    }
    for (const SolidPiece& piece : joined_) take(piece.outline, piece.ground, piece.bottom);
  });
}

void Digger::give(const TakeDug& take) {
  for (const Dug& piece : pieces_) {
    const Corners outline = store_.corners(piece.outline);
    if (overlap_)
      join({{outline.begin(), outline.end()}, plane_, piece.bottom}, joined_);
    else
      take(outline, plane_, piece.bottom);
  }
}

/// Wider than anything that can be dug where the ground is nowhere higher. The mitre of a sharp corner reaches far.
PlanBox Digger::reach(double highest_m) const {
  const double height = std::max(highest_m - floor_.elevation_m, 0.0);
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

/// A hill far off does not count: what is dug reaches no further than the highest place within its reach makes it.
PlanBox Digger::where_it_is_dug() const {
  PlanBox box = reach(ground_.highest_m());
  constexpr int rounds = 4;
  for (int i = 0; i < rounds; ++i) box = reach(std::min(ground_.highest_in(box), ground_.highest_m()));
  return box;
}

/// The part that holds all of an outline, if one does: where parts do not overlap the others hold nothing of it.
const SolidPart* Digger::part_around(Corners outline) {
  const auto holds = [&](const SolidPart& part) {
    return std::all_of(part.within.begin(), part.within.end(), [&](const HalfPlane& half) {
      return std::all_of(outline.begin(), outline.end(), [&](const PlanPoint& p) { return half.at(p) >= 0; });
    });
  };
  for (std::size_t i = 0; i < parts_.size(); ++i) {
    const std::size_t at = (last_part_ + i) % parts_.size();
    if (!holds(parts_[at])) continue;
    last_part_ = at;
    return &parts_[at];
  }
  return nullptr;
}

/// Leaves in `pieces_` what a part takes away over an outline within it.
void Digger::dig(StoredOutline within_part, const SolidPart& part) {
  pieces_.clear();
  if (within_part.empty()) return;
  pieces_.push_back({within_part, {0, 0, floor_.elevation_m}});
  keep_below_ground();
  for (const std::size_t edge : part.edges) {
    raised_.clear();
    for (const Dug& piece : pieces_) raise(piece, sides_[edge]);
    std::swap(pieces_, raised_);
    keep_below_ground();
  }
}

void Digger::keep_below_ground() {
  for (Dug& piece : pieces_) piece.outline = store_.clipped(piece.outline, above(plane_, piece.bottom));
  std::erase_if(pieces_, [](const Dug& piece) { return piece.outline.empty(); });
}

/// The bottom is at least as high as a side; nothing is dug behind its end.
void Digger::raise(const Dug& piece, const Side& side) {
  const HalfPlane& d = side.outside;
  if (const StoredOutline before = store_.clipped(piece.outline, d.opposite()); !before.empty())
    raised_.push_back({before, piece.bottom});
  for (const Stretch& s : side.stretches) {
    StoredOutline over = store_.clipped(piece.outline, {d.a, d.b, d.c - s.from_m});
    if (over.empty()) break;
    over = store_.clipped(over, {-d.a, -d.b, s.to_m - d.c});
    if (over.empty()) continue;
    const double slope = (s.high_m - s.low_m) / (s.to_m - s.from_m);
    const GroundPlane plane{slope * d.a, slope * d.b, floor_.elevation_m + s.low_m + slope * (d.c - s.from_m)};
    const HalfPlane higher = above(plane, piece.bottom);
    const StoredOutline lifted = store_.clipped(over, higher);
    if (!lifted.empty()) raised_.push_back({lifted, plane});
    if (higher.a == 0 && higher.b == 0 && higher.c == 0) continue;  // one and the same
    if (const StoredOutline left = store_.clipped(over, higher.opposite()); !left.empty())
      raised_.push_back({left, piece.bottom});
  }
}

}  // namespace burrow
