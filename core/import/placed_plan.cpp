#include "placed_plan.h"

#include <fmt/format.h>

#include <cmath>
#include "burrow/language/say.h"

namespace burrow {

namespace {

double metres_of_plan(const ImportFile& file) {
  return metres_in(file.unit.value_or(file.found->frame.unit.value_or(FileUnit::metre)));
}

/// The system of a file; one that does not say is taken to be in that of the first.
const std::string& crs_of(const ImportFile& file, const std::string& first) {
  return file.found->frame.crs.empty() ? first : file.found->frame.crs;
}

class Placer {
 public:
  Placer(const std::vector<ImportFile>& files, const CrossingLine& line) : files_(files), line_(line) {}

  Result<PlacedPlan> run() {
    const Found& first = *files_.front().found;
    plan_.frame = {first.frame.crs, line_.launch.x_m, line_.launch.y_m};
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
    return std::move(plan_);
  }

 private:
  std::optional<Error> to_metres(const ImportFile& file, std::vector<PlanPoint>& points) {
    if (plan_.frame.crs.empty()) {
      const double metres = metres_of_plan(file);
      for (PlanPoint& p : points) p = {p.x_m * metres - plan_.origin_m.x_m, p.y_m * metres - plan_.origin_m.y_m};
      return std::nullopt;
    }
    const Result<const Readers*> readers = load_readers();
    if (!readers) return readers.error();
    const Result<Projected> done = (*readers)->project(crs_of(file, plan_.frame.crs), plan_.frame, points);
    if (!done) return done.error();
    doubt(file, *done);
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
    const FoundFrame& frame = files_.front().found->frame;
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
      const Result<std::string> zone = (*readers)->metric_crs(frame.crs, line_.launch.x_m, line_.launch.y_m);
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
    const bool first = &file == &files_.front();
    if (!first && found.frame.crs.empty() != files_.front().found->frame.crs.empty())
      plan_.notes.push_back(
          say("{}: taken to lie in the coordinates of the first file, since one of the two does not say its coordinate "
              "system",
              found.file));
    plan_.files.push_back(std::move(placed));
    return std::nullopt;
  }

  const std::vector<ImportFile>& files_;
  const CrossingLine& line_;
  PlacedPlan plan_;
};

}  // namespace

double metres_of_height(const ImportFile& file) {
  const FoundFrame& frame = file.found->frame;
  // The unit of a map projection says nothing about the heights.
  const auto plain = frame.crs.empty() ? frame.unit : std::nullopt;
  return metres_in(
      file.height_unit.value_or(frame.height_unit.value_or(file.unit.value_or(plain.value_or(FileUnit::metre)))));
}

Result<PlacedPlan> place(const std::vector<ImportFile>& files, const CrossingLine& line) {
  for (const double v : {line.launch.x_m, line.launch.y_m, line.exit.x_m, line.exit.y_m})
    if (!(std::abs(v) <= 1e11))
      return fail(translated("crossing line"), fmt::format("{:g}", v), translated("a coordinate of the plan"));
  if (files.empty()) return fail(translated("import"), translated("no file"), translated("at least one"));
  return Placer(files, line).run();
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
  const auto done = (*readers)->unproject(crs_of(file, plan.frame.crs), plan.frame, local);
  if (!done) return tl::unexpected(done.error());
  return local;
}

}  // namespace burrow
