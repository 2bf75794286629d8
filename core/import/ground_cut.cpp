#include "ground_cut.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include "burrow/language/say.h"
#include "reader_process.h"
#include "simplified.h"

namespace burrow {

namespace {

constexpr double same_place_m = 1e-3;

/// A ground line under way, from one kind of source.
struct Line {
  LevelLine points;
  double covered_m = 0;  ///< of the way from pit to pit
  std::vector<std::string> notes;
};

class Cutter {
 public:
  Cutter(const PlacedPlan& plan, const ImportBounds& bounds, const std::function<bool()>& go_on)
      : plan_(plan),
        low_(-bounds.ground_beyond.m),
        high_(plan.length_m + bounds.ground_beyond.m),
        bounds_(bounds),
        go_on_(go_on) {}

  Result<GroundCut> run() {
    Line best = from_surfaces();
    if (!whole(best)) {
      Result<Line> grids = from_grids();
      if (!grids) return tl::unexpected(grids.error());
      take_better(best, std::move(*grids));
    }
    collect_points();
    if (!whole(best)) {
      Result<Line> points = from_points();
      if (!points) return tl::unexpected(points.error());
      take_better(best, std::move(*points));
    }
    GroundCut cut;
    cut.notes = std::move(best.notes);
    cut.line = kept(std::move(best.points), cut.notes);
    keep_near_points(cut);
    return cut;
  }

 private:
  [[nodiscard]] bool whole(const Line& line) const { return line.covered_m >= plan_.length_m - 1e-6; }

  static void take_better(Line& best, Line other) {
    if (other.covered_m > best.covered_m || best.points.empty()) best = std::move(other);
  }

  [[nodiscard]] static bool is_ground(const PlacedFile& file, std::uint32_t layer) {
    return file.file->layers.at(layer).meaning == Meaning::ground;
  }

  /// A point that means something else, and lies on the ground: the edge of a road.
  [[nodiscard]] static bool on_ground(const PlacedFile& file, const FoundFeature& f) {
    return f.shape == Shape::point && file.file->layers.at(f.layer).on_ground;
  }

  Line from_surfaces() {
    std::vector<CutPiece> pieces;
    const auto add = [&](const std::array<Point3, 3>& corners) {
      if (const auto piece = cut_triangle(corners)) pieces.push_back(*piece);
    };
    for (const PlacedFile& file : plan_.files) {
      const Found& found = *file.file->found;
      for (std::size_t s = 0; s < found.surfaces.size(); ++s) {
        if (!is_ground(file, found.surfaces[s].layer)) continue;
        const auto corner = [&](std::uint32_t i) {
          return Point3{file.surfaces[s][i].x_m, file.surfaces[s][i].y_m,
                        found.surfaces[s].points[i].z_m * file.metres_of_height};
        };
        for (const auto& face : found.surfaces[s].faces) add({corner(face[0]), corner(face[1]), corner(face[2])});
      }
      for (const FoundFeature& f : found.features) {
        // Faces of a drawing: areas of three or four corners with heights.
        if (f.shape != Shape::area || f.count > 4 || !is_ground(file, f.layer)) continue;
        std::vector<Point3> corners;
        for (std::size_t i = f.first; i < f.first + f.count; ++i)
          if (const auto& z = found.vertices[i].z_m)
            corners.push_back({file.vertices[i].x_m, file.vertices[i].y_m, *z * file.metres_of_height});
        for (std::size_t k = 2; k < corners.size() && corners.size() == f.count; ++k)
          add({corners[0], corners[k - 1], corners[k]});
      }
    }
    return chained(std::move(pieces), "surface");
  }

  /// Pieces one after the other; where two surfaces lie over each other the first met holds.
  Line chained(std::vector<CutPiece> pieces, std::string_view what) const {
    Line line;
    std::sort(pieces.begin(), pieces.end(),
              [](const CutPiece& a, const CutPiece& b) { return a.from.station_m < b.from.station_m; });
    double end = low_;
    bool doubled = false;
    for (CutPiece piece : pieces) {
      if (!clip(piece)) continue;
      if (line.points.empty()) end = piece.from.station_m;
      if (piece.to.station_m <= end + 1e-9) {
        doubled = doubled || end - piece.from.station_m > same_place_m;
        continue;
      }
      const double gap = piece.from.station_m - end;
      if (gap > same_place_m)
        line.notes.push_back(say("the {} has a gap from station {:.2f} to {:.2f} m: the ground is drawn straight there",
                                 what, end, piece.from.station_m));
      for (const LevelPoint& p : {piece.from, piece.to})
        if (line.points.empty() || p.station_m > line.points.back().station_m + same_place_m) line.points.push_back(p);
      const double from = std::max({0.0, piece.from.station_m, end}), to = std::min(plan_.length_m, piece.to.station_m);
      line.covered_m += std::max(0.0, to - from);
      end = piece.to.station_m;
    }
    if (doubled)
      line.notes.push_back(translated("surfaces lie over each other along the line: the first met was taken"));
    // Rounding at shared corners must not count as a gap.
    line.covered_m += 1e-9 * static_cast<double>(pieces.size()) + same_place_m;
    if (line.points.empty()) line.covered_m = 0;
    return line;
  }

  bool clip(CutPiece& piece) const {
    const double from = piece.from.station_m, to = piece.to.station_m;
    if (!(to > low_ && from < high_) || !(to - from > 0)) return false;
    const auto at = [&, a = piece.from.elevation_m, b = piece.to.elevation_m](double s) {
      return LevelPoint{s, a + (b - a) * (s - from) / (to - from)};
    };
    if (from < low_) piece.from = at(low_);
    if (to > high_) piece.to = at(high_);
    return true;
  }

  Result<Line> from_grids() const {
    Line best;
    for (const PlacedFile& file : plan_.files)
      for (const FoundRaster& raster : file.file->found->rasters) {
        if (!is_ground(file, raster.layer)) continue;
        Result<Line> one = from_grid(file, raster);
        if (!one) return one;
        take_better(best, std::move(*one));
      }
    return best;
  }

  Result<Line> from_grid(const PlacedFile& file, const FoundRaster& raster) const {
    constexpr int steps = 400;
    std::vector<PlanPoint> local;
    for (int i = 0; i <= steps; ++i) local.push_back({low_ + (high_ - low_) * i / steps, 0});
    const Result<std::vector<PlanPoint>> there = in_file(plan_, *file.file, local);
    if (!there) return tl::unexpected(there.error());
    const auto heights = heights_of(*file.file->found, raster, *there, go_on_);
    if (!heights) return tl::unexpected(heights.error());
    std::vector<CutPiece> pieces;
    for (std::size_t i = 1; i < local.size(); ++i) {
      const auto &a = (*heights)[i - 1], &b = (*heights)[i];
      if (a && b)
        pieces.push_back({{local[i - 1].x_m, *a * file.metres_of_height}, {local[i].x_m, *b * file.metres_of_height}});
    }
    return chained(std::move(pieces), "grid");
  }

  /// Single points, and the vertices of lines such as contours, that lie near enough to shape the ground at the line.
  void collect_points() {
    for (const PlacedFile& file : plan_.files) {
      const Found& found = *file.file->found;
      for (const FoundFeature& f : found.features) {
        if (!(is_ground(file, f.layer) || on_ground(file, f)) || (f.shape == Shape::area && f.count <= 4)) continue;
        for (std::size_t i = f.first; i < f.first + f.count; ++i)
          if (const auto& z = found.vertices[i].z_m)
            take_point({file.vertices[i].x_m, file.vertices[i].y_m, *z * file.metres_of_height});
      }
      for (std::size_t s = 0; s < found.surfaces.size(); ++s)
        if (is_ground(file, found.surfaces[s].layer))
          for (std::size_t i = 0; i < file.surfaces[s].size(); ++i)
            if (std::abs(file.surfaces[s][i].y_m) < 15)
              surface_points_.push_back({file.surfaces[s][i].x_m, file.surfaces[s][i].y_m,
                                         found.surfaces[s].points[i].z_m * file.metres_of_height});
    }
  }

  void take_point(const Point3& p) {
    const double reach = std::max(2 * bounds_.corridor.m, plan_.length_m);
    if (p.x_m > low_ - reach && p.x_m < high_ + reach && std::abs(p.y_m) < reach) points_.push_back(p);
  }

  Result<Line> from_points() {
    constexpr std::size_t most = 20'000;
    const auto nearer = [](const Point3& a, const Point3& b) { return std::abs(a.y_m) < std::abs(b.y_m); };
    if (points_.size() > most) {
      std::nth_element(points_.begin(), points_.begin() + most, points_.end(), nearer);
      points_.resize(most);
    }
    drop_doubles();
    if (points_.size() < 2) return Line{};
    std::vector<PlanPoint> plan;
    for (const Point3& p : points_) plan.push_back({p.x_m, p.y_m});
    const Result<const Readers*> readers = load_readers();
    if (!readers) return tl::unexpected(readers.error());
    const auto triangles = (*readers)->triangles(plan);
    Line line;
    if (triangles) {
      std::vector<CutPiece> pieces;
      double longest = 0;
      for (const auto& t : *triangles) {
        const std::array corners{points_[t[0]], points_[t[1]], points_[t[2]]};
        const auto piece = cut_triangle(corners);
        if (!piece || piece->to.station_m < 0 || piece->from.station_m > plan_.length_m) {
          if (piece) pieces.push_back(*piece);
          continue;
        }
        pieces.push_back(*piece);
        for (std::size_t k = 0; k < 3; ++k)
          longest = std::max(longest, std::hypot(corners[k].x_m - corners[(k + 1) % 3].x_m,
                                                 corners[k].y_m - corners[(k + 1) % 3].y_m));
      }
      line = chained(std::move(pieces), translated("triangles between the points"));
      if (longest > 15)
        line.notes.push_back(
            say("few ground points near the line: triangles with sides up to {:.0f} m were cut", longest));
    }
    take_better(line, along_line());
    return line;
  }

  /// Points measured on the line itself, as a levelled profile.
  Line along_line() const {
    constexpr double beside_m = 1.0;
    std::vector<LevelPoint> on;
    for (const Point3& p : points_)
      if (std::abs(p.y_m) <= beside_m && p.x_m >= low_ && p.x_m <= high_) on.push_back({p.x_m, p.z_m});
    std::sort(on.begin(), on.end(), [](const LevelPoint& a, const LevelPoint& b) { return a.station_m < b.station_m; });
    std::vector<CutPiece> pieces;
    for (std::size_t i = 1; i < on.size(); ++i) pieces.push_back({on[i - 1], on[i]});
    Line line = chained(std::move(pieces), "profile");
    if (!line.points.empty())
      line.notes.emplace_back(translated("the ground line runs through the points within 1 m of the crossing line"));
    return line;
  }

  /// Two points at one place would make triangles without a side.
  void drop_doubles() {
    std::sort(points_.begin(), points_.end(), [](const Point3& a, const Point3& b) {
      return a.x_m != b.x_m ? a.x_m < b.x_m : a.y_m != b.y_m ? a.y_m < b.y_m : a.z_m < b.z_m;
    });
    const auto same = [](const Point3& a, const Point3& b) {
      return std::abs(a.x_m - b.x_m) < same_place_m && std::abs(a.y_m - b.y_m) < same_place_m;
    };
    points_.erase(std::unique(points_.begin(), points_.end(), same), points_.end());
  }

  LevelLine kept(LevelLine line, std::vector<std::string>& notes) const {
    std::vector<PlanPoint> shape;
    for (const LevelPoint& p : line) shape.push_back({p.station_m, p.elevation_m});
    constexpr std::size_t most = 1000;
    double tolerance = bounds_.ground_tolerance.m;
    std::vector<std::size_t> keep = simplified(shape, tolerance);
    while (keep.size() > most) keep = simplified(shape, tolerance *= 2);
    LevelLine out;
    for (const std::size_t i : keep) out.push_back(line[i]);
    const bool low =
        std::any_of(out.begin(), out.end(), [](const LevelPoint& p) { return !(std::abs(p.elevation_m) <= 1e4); });
    if (!low) return out;
    notes.emplace_back(translated("heights beyond 10,000 m are not taken for ground: is the unit of heights right?"));
    return {};
  }

  void keep_near_points(GroundCut& cut) const {
    constexpr std::size_t most = 500;
    constexpr double beside_m = 15;
    std::vector<Point3> near;
    for (const std::vector<Point3>* all : {&points_, &surface_points_})
      for (const Point3& p : *all)
        if (std::abs(p.y_m) <= beside_m && p.x_m >= low_ && p.x_m <= high_ && std::abs(p.z_m) <= 1e4) near.push_back(p);
    std::sort(near.begin(), near.end(), [](const Point3& a, const Point3& b) {
      return std::abs(a.y_m) != std::abs(b.y_m) ? std::abs(a.y_m) < std::abs(b.y_m) : a.x_m < b.x_m;
    });
    if (near.size() > most) near.resize(most);
    cut.points = std::move(near);
  }

  const PlacedPlan& plan_;
  double low_, high_;
  const ImportBounds& bounds_;
  const std::function<bool()>& go_on_;
  std::vector<Point3> points_;
  std::vector<Point3> surface_points_;
};

}  // namespace

Result<GroundCut> cut_ground(const PlacedPlan& plan, const ImportBounds& bounds, const std::function<bool()>& go_on) {
  return Cutter(plan, bounds, go_on).run();
}

std::optional<CutPiece> cut_triangle(const std::array<Point3, 3>& corners) {
  std::array<LevelPoint, 3> met;
  std::size_t count = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    const Point3 &a = corners[i], &b = corners[(i + 1) % 3];
    // A corner on the line counts as lying to the left, so that neighbours neither share nor miss it.
    if ((a.y_m >= 0) == (b.y_m >= 0)) continue;
    const double t = a.y_m / (a.y_m - b.y_m);
    met[count++] = {a.x_m + t * (b.x_m - a.x_m), a.z_m + t * (b.z_m - a.z_m)};
  }
  if (count != 2) return std::nullopt;
  if (met[0].station_m > met[1].station_m) std::swap(met[0], met[1]);
  if (!(met[1].station_m > met[0].station_m)) return std::nullopt;
  return CutPiece{met[0], met[1]};
}

}  // namespace burrow
