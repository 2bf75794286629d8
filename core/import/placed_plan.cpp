#include "placed_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/language/say.h"

namespace burrow {

namespace {

double metres_of_plan(const ImportFile& file) {
  return metres_in(plan_unit(file));
}

const std::string& crs_of(const ImportFile& file) {
  return frame_of(file).crs;
}

class Placer {
 public:
  Placer(const std::vector<ImportFile>& files, const CrossingLine& line, const std::function<bool()>& go_on)
      : files_(files), line_(line), go_on_(go_on) {}

  Result<PlacedPlan> run() {
    if (auto error = cannot_be_reconciled()) return tl::unexpected(*error);
    const double units = units_of_system(files_.front());
    plan_.frame = {crs_of(files_.front()), line_.launch.x_m * units, line_.launch.y_m * units};
    const double metres = metres_of_plan(files_.front());
    plan_.origin_m = {line_.launch.x_m * metres, line_.launch.y_m * metres};
    std::vector<PlanPoint> ends{line_.launch, line_.exit};
    if (auto error = to_metres(files_.front(), ends)) return tl::unexpected(*error);
    const double dx = ends[1].x_m - ends[0].x_m, dy = ends[1].y_m - ends[0].y_m;
    plan_.length_m = std::hypot(dx, dy);
    if (!std::isfinite(plan_.length_m))
      return fail(translated("crossing line"), fmt::format("{:g}, {:g}", line_.exit.x_m, line_.exit.y_m),
                  translated("places within the coordinate system of the first file"));
    if (!(plan_.length_m >= 0.5 && plan_.length_m <= 2000))
      return fail(translated("crossing line"), say("{:.3f} m long", plan_.length_m),
                  translated("two points 0.5 m to 2000 m apart"));
    plan_.along = {dx / plan_.length_m, dy / plan_.length_m};
    if (auto error = georeference()) return tl::unexpected(*error);
    for (const ImportFile& file : files_)
      if (auto error = place_file(file)) return tl::unexpected(*error);
    for (const PlacedFile& file : plan_.files)
      if (auto error = lies_apart(file)) return tl::unexpected(*error);
    return std::move(plan_);
  }

 private:
  /// A system that is stated beside one that is not, or plans without one that lie far apart: where the second lies to
  /// the first nobody knows, and what is in it would vanish.
  [[nodiscard]] std::optional<Error> cannot_be_reconciled() const {
    const ImportFile& first = files_.front();
    for (const ImportFile& file : files_) {
      const bool states = !crs_of(file).empty(), first_states = !crs_of(first).empty();
      const ImportFile &silent = states ? first : file, &other = states ? file : first;
      if (states != first_states)
        return Error{
            silent.found->file,
            say("no coordinate system, beside {}, which is in {}", other.found->file, name_of_crs(crs_of(other))),
            translated("its coordinate system stated, \"EPSG:25832\"")};
      if (!states && &file != &first && apart_m(first, file) > farthest_apart_m)
        return Error{file.found->file,
                     say("a plan {:.0f} m away from {}, and neither says its coordinate system", apart_m(first, file),
                         first.found->file),
                     translated("plans in one system, or the coordinate system and unit of each stated")};
    }
    return std::nullopt;
  }

  static double apart_m(const ImportFile& a, const ImportFile& b) {
    const auto one = extent_of(*a.found), other = extent_of(*b.found);
    if (!one || !other) return 0;
    const double of_one = metres_of_plan(a), of_other = metres_of_plan(b);
    const auto gap = [&](double low1, double high1, double low2, double high2) {
      return std::max({0.0, low2 * of_other - high1 * of_one, low1 * of_one - high2 * of_other});
    };
    return std::hypot(gap(one->low_x, one->high_x, other->low_x, other->high_x),
                      gap(one->low_y, one->high_y, other->low_y, other->high_y));
  }

  std::optional<Error> to_metres(const ImportFile& file, std::vector<PlanPoint>& points) {
    if (plan_.frame.crs.empty()) {
      const double metres = metres_of_plan(file);
      for (PlanPoint& p : points) p = {p.x_m * metres - plan_.origin_m.x_m, p.y_m * metres - plan_.origin_m.y_m};
      return std::nullopt;
    }
    const Result<const Readers*> readers = load_readers();
    if (!readers) return readers.error();
    const double units = units_of_system(file);
    // In pieces, so that a person who has had enough need not wait.
    constexpr std::size_t piece = 100'000;
    std::vector<PlanPoint> some;
    for (std::size_t from = 0; from < points.size(); from += piece) {
      const std::size_t to = std::min(points.size(), from + piece);
      some.clear();
      for (std::size_t i = from; i < to; ++i) some.push_back({points[i].x_m * units, points[i].y_m * units});
      const Result<Projected> done = (*readers)->project(crs_of(file), plan_.frame, some);
      if (!done) return done.error();
      std::copy(some.begin(), some.end(), points.begin() + static_cast<std::ptrdiff_t>(from));
      doubt(file, *done);
      if (go_on_ && !go_on_())
        return Error{translated("import"), std::string(stopped_by_person), translated("to be carried to its end"),
                     stopped_by_person};
    }
    return std::nullopt;
  }

  void doubt(const ImportFile& file, const Projected& done) {
    constexpr double worth_saying_m = 0.1;
    std::string note;
    if (done.shift_unknown)
      note = translated(
          "no datum shift between its coordinate system and that of the first file is known here: it may lie off by "
          "many metres");
    else if (done.error_m > worth_saying_m)
      note = say("its coordinate system has another datum; the shift is good to {:g} m", done.error_m);
    if (note.empty()) return;
    note = file.found->file + ": " + note;
    if (plan_.notes.empty() || plan_.notes.back() != note) plan_.notes.push_back(std::move(note));
  }

  std::optional<Error> georeference() {
    Georeference& geo = plan_.georeference;
    const FoundFrame& frame = frame_of(files_.front());
    geo.vertical = frame.vertical;
    geo.crs = frame.crs;
    std::vector<PlanPoint> ends{{0, 0}, {plan_.along.x_m * plan_.length_m, plan_.along.y_m * plan_.length_m}};
    if (frame.crs.empty()) {
      geo.origin = plan_.origin_m;
      geo.azimuth.set(Angle{std::atan2(plan_.along.x_m, plan_.along.y_m)});
      return std::nullopt;
    }
    const Result<const Readers*> readers = load_readers();
    if (!readers) return readers.error();
    if (frame.geographic || frame.unit != FileUnit::metre) {
      const Result<std::string> zone = (*readers)->metric_crs(frame.crs, plan_.frame.x, plan_.frame.y);
      if (!zone) return zone.error();
      geo.crs = *zone;
    }
    const Result<Projected> done = (*readers)->unproject(geo.crs, plan_.frame, ends);
    if (!done) return done.error();
    geo.origin = ends[0];
    geo.azimuth.set(Angle{std::atan2(ends[1].x_m - ends[0].x_m, ends[1].y_m - ends[0].y_m)});
    return std::nullopt;
  }

  std::optional<Error> to_local(const ImportFile& file, std::vector<PlanPoint>& points) {
    if (auto error = to_metres(file, points)) return error;
    for (PlanPoint& p : points)
      p = {p.x_m * plan_.along.x_m + p.y_m * plan_.along.y_m, p.y_m * plan_.along.x_m - p.x_m * plan_.along.y_m};
    return std::nullopt;
  }

  std::optional<Error> place_file(const ImportFile& file) {
    const Found& found = *file.found;
    PlacedFile placed;
    placed.file = &file;
    placed.metres_of_height = metres_of_height(file);
    placed.vertices.reserve(found.vertices.size());
    for (const FoundVertex& v : found.vertices) placed.vertices.push_back({v.x_m, v.y_m});
    if (auto error = to_local(file, placed.vertices)) return error;
    for (const FoundSurface& surface : found.surfaces) {
      std::vector<PlanPoint> points;
      points.reserve(surface.points.size());
      for (const Point3& p : surface.points) points.push_back({p.x_m, p.y_m});
      if (auto error = to_local(file, points)) return error;
      placed.surfaces.push_back(std::move(points));
    }
    plan_.files.push_back(std::move(placed));
    return std::nullopt;
  }

  /// A file of which all lies so far off that its system or unit cannot be the one taken: it would vanish.
  [[nodiscard]] std::optional<Error> lies_apart(const PlacedFile& placed) {
    std::vector<PlanPoint> corners;  // of grids, which are not placed otherwise
    for (const FoundRaster& r : placed.file->found->rasters)
      for (const double column : {0.0, static_cast<double>(r.columns)})
        for (const double row : {0.0, static_cast<double>(r.rows)})
          corners.push_back({r.to_plan[0] + column * r.to_plan[1] + row * r.to_plan[2],
                             r.to_plan[3] + column * r.to_plan[4] + row * r.to_plan[5]});
    if (auto error = to_local(*placed.file, corners)) return error;
    constexpr double none = std::numeric_limits<double>::infinity();
    PlanExtent box{none, none, -none, -none};
    std::size_t points = 0;
    const auto take = [&](const std::vector<PlanPoint>& some) {
      points += some.size();
      for (const PlanPoint& p : some) {
        if (!std::isfinite(p.x_m) || !std::isfinite(p.y_m)) continue;
        box = {std::min(box.low_x, p.x_m), std::min(box.low_y, p.y_m), std::max(box.high_x, p.x_m),
               std::max(box.high_y, p.y_m)};
      }
    };
    take(placed.vertices);
    for (const auto& surface : placed.surfaces) take(surface);
    take(corners);
    if (points == 0) return std::nullopt;
    const double away_m =
        std::hypot(std::max({0.0, box.low_x - plan_.length_m, -box.high_x}), std::max({0.0, box.low_y, -box.high_y}));
    if (away_m <= farthest_apart_m) return std::nullopt;
    return Error{placed.file->found->file,
                 std::isfinite(away_m) ? say("all of it lies {:.0f} km or more from the crossing line", away_m / 1000)
                                       : std::string(translated("no place beside the first file")),
                 translated("the coordinate system and the unit in which its numbers are, or the import without it")};
  }

  const std::vector<ImportFile>& files_;
  static constexpr double farthest_apart_m = 1000;
  const CrossingLine& line_;
  const std::function<bool()>& go_on_;
  PlacedPlan plan_;
};

}  // namespace

double metres_of_height(const ImportFile& file) {
  const FoundFrame& frame = frame_of(file);
  // The unit of a map projection says nothing about the heights.
  const auto plain = frame.crs.empty() ? frame.unit : std::nullopt;
  return metres_in(
      file.height_unit.value_or(frame.height_unit.value_or(file.unit.value_or(plain.value_or(FileUnit::metre)))));
}

const FoundFrame& frame_of(const ImportFile& file) {
  return file.said_frame ? *file.said_frame : file.found->frame;
}

double units_of_system(const ImportFile& file) {
  const FoundFrame& frame = frame_of(file);
  if (!file.unit || !frame.unit || frame.geographic || frame.crs.empty()) return 1;
  return metres_in(*file.unit) / metres_in(*frame.unit);
}

FileUnit plan_unit(const ImportFile& file) {
  return file.unit.value_or(frame_of(file).unit.value_or(FileUnit::metre));
}

Result<ImportFile> in_system(ImportFile file, const std::string& crs) {
  const Result<const Readers*> readers = load_readers();
  if (!readers) return tl::unexpected(readers.error());
  Result<FoundFrame> frame = (*readers)->frame_of_crs(crs);
  if (!frame) return tl::unexpected(frame.error());
  // The heights keep what the file says of them.
  if (!frame->height_unit) frame->height_unit = file.found->frame.height_unit;
  if (frame->vertical.empty()) frame->vertical = file.found->frame.vertical;
  // A drawing in another unit than that of the system is read in its own.
  const auto& stated = file.found->frame.unit;
  if (!file.unit && stated && !frame->geographic && stated != frame->unit) file.unit = stated;
  file.said_frame = std::move(*frame);
  return file;
}

Result<PlacedPlan> place(const std::vector<ImportFile>& files, const CrossingLine& line,
                         const std::function<bool()>& go_on) {
  for (const double v : {line.launch.x_m, line.launch.y_m, line.exit.x_m, line.exit.y_m})
    if (!(std::abs(v) <= 1e11))
      return fail(translated("crossing line"), fmt::format("{:g}", v), translated("a coordinate of the plan"));
  if (files.empty()) return fail(translated("import"), translated("no file"), translated("at least one"));
  return Placer(files, line, go_on).run();
}

Result<std::vector<PlanPoint>> in_file(const PlacedPlan& plan, const ImportFile& file, std::vector<PlanPoint> local) {
  for (PlanPoint& p : local)
    p = {p.x_m * plan.along.x_m - p.y_m * plan.along.y_m, p.x_m * plan.along.y_m + p.y_m * plan.along.x_m};
  if (plan.frame.crs.empty()) {
    const double metres = metres_of_plan(file);
    for (PlanPoint& p : local) p = {(p.x_m + plan.origin_m.x_m) / metres, (p.y_m + plan.origin_m.y_m) / metres};
    return local;
  }
  const Result<const Readers*> readers = load_readers();
  if (!readers) return tl::unexpected(readers.error());
  const auto done = (*readers)->unproject(crs_of(file), plan.frame, local);
  if (!done) return tl::unexpected(done.error());
  const double units = units_of_system(file);
  for (PlanPoint& p : local) p = {p.x_m / units, p.y_m / units};
  return local;
}

}  // namespace burrow
