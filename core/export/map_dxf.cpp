#include "burrow/export/map_dxf.h"

#include <algorithm>
#include <cmath>

#include "burrow/export/dxf_text.h"

namespace burrow {

namespace {

using Place = std::function<Result<std::vector<PlanPoint>>(std::vector<PlanPoint> local)>;

std::string in_capitals(std::string_view word) {
  std::string text(word);
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
  return text;
}

class Drawing {
 public:
  explicit Drawing(const Place& place) : place_(place) {}

  void outline(const std::string& layer, int colour, const std::vector<PlanPoint>& ring) {
    if (ring.size() < 3) return;
    text_.layer(layer, colour);
    if (const auto at = placed(ring); !at.empty()) text_.line(layer, at, true);
  }

  /// In space where all its heights are known.
  void line(const std::string& layer, int colour, const std::vector<PathVertex>& path) {
    if (path.size() < 2) return;
    std::vector<PlanPoint> plan;
    for (const PathVertex& v : path) plan.push_back({v.x_m, v.y_m});
    const std::vector<PlanPoint> at = placed(plan);
    if (at.empty()) return;
    const bool known =
        std::all_of(path.begin(), path.end(), [](const PathVertex& v) { return v.z_m && std::isfinite(*v.z_m); });
    const std::string name = known ? layer : layer + "-NO-DEPTH";
    text_.layer(name, colour, !known);
    if (!known) return text_.line(name, at);
    std::vector<Point3> in_space;
    for (std::size_t i = 0; i < at.size(); ++i) in_space.push_back({at[i].x_m, at[i].y_m, *path[i].z_m});
    text_.line(name, in_space);
  }

  void words(const std::string& layer, PlanPoint local, const std::string& said) {
    text_.layer(layer, 7);
    constexpr double height_m = 0.25;
    if (const auto at = placed({local}); !at.empty()) text_.text(layer, at.front(), height_m, said);
  }

  Result<std::string> take() {
    if (error_) return tl::unexpected(*error_);
    return text_.take();
  }

 private:
  std::vector<PlanPoint> placed(const std::vector<PlanPoint>& local) {
    if (error_) return {};
    Result<std::vector<PlanPoint>> at = place_(local);
    if (!at) {
      error_ = at.error();
      return {};
    }
    for (const PlanPoint& p : *at)
      if (!std::isfinite(p.x_m) || !std::isfinite(p.y_m)) {
        error_ = Error{"georeference", "a place off the map", "an origin within its coordinate system"};
        return {};
      }
    return std::move(*at);
  }

  const Place& place_;
  DxfText text_;
  std::optional<Error> error_;
};

}  // namespace

Result<std::string> write_map_dxf(const Crossing& crossing, const Assessment& assessment, const Place& place) {
  const auto& geo = crossing.site.georeference;
  if (!geo)
    return fail("/site/georeference", "nothing",
                "a crossing with a place on the map: import a survey, or enter \"origin\" and \"azimuth_rad\"");
  constexpr double band_sd = 1.645;
  constexpr int red = 1, grey = 8, black = 7, blue = 5;
  Drawing drawing(place);
  std::vector<PathVertex> axis;
  std::vector<PlanPoint> band, back;
  for (const PathPoint& p : assessment.bore.points) {
    axis.push_back({p.x_m, p.y_m, p.z_m});
    band.push_back({p.x_m, p.y_m - band_sd * p.sd_lateral_m});
    back.push_back({p.x_m, p.y_m + band_sd * p.sd_lateral_m});
  }
  band.insert(band.end(), back.rbegin(), back.rend());
  drawing.outline("MAP-BAND", grey, band);
  drawing.line("MAP-BORE", red, axis);
  drawing.outline("MAP-LAUNCH-PIT", black, assessment.launch_pit.footprint);
  drawing.outline("MAP-EXIT-PIT", black, assessment.exit_pit.footprint);
  for (const Utility& utility : crossing.site.utilities)
    drawing.line("MAP-" + in_capitals(word_of(utility.kind)), blue, utility.path);
  drawing.words("MAP-SYSTEM", {0, 0}, geo->crs.empty() ? "coordinates of the survey, in metres" : geo->crs);
  return drawing.take();
}

}  // namespace burrow
