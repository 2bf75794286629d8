#include "burrow/export/geojson.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

namespace burrow {

namespace {

using Json = nlohmann::ordered_json;

constexpr double band_sd = 1.645;

double twice_area(const std::vector<PlanPoint>& ring) {
  double sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const PlanPoint& a = ring[i];
    const PlanPoint& b = ring[(i + 1) % ring.size()];
    sum += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return sum;
}

class Collection {
 public:
  explicit Collection(const ToLongitudeLatitude& place) : place_(place) {}

  void line(const std::vector<PlanPoint>& local, Json properties) {
    if (local.size() < 2) return;
    const auto at = placed(local);
    if (at.empty()) return;
    add({{"type", "LineString"}, {"coordinates", positions(at)}}, std::move(properties));
  }

  void ring(std::vector<PlanPoint> local, Json properties) {
    if (local.size() < 3) return;
    if (twice_area(local) < 0) std::reverse(local.begin(), local.end());
    local.push_back(local.front());
    const auto at = placed(local);
    if (at.empty()) return;
    add({{"type", "Polygon"}, {"coordinates", Json::array({positions(at)})}}, std::move(properties));
  }

  Result<std::string> take(const std::string& name) {
    if (error_) return tl::unexpected(*error_);
    const Json all{{"type", "FeatureCollection"}, {"name", name}, {"features", std::move(features_)}};
    return all.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
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

  static Json positions(const std::vector<PlanPoint>& points) {
    Json list = Json::array();
    // Nine decimals of a degree: a tenth of a millimetre.
    for (const PlanPoint& p : points) list.push_back({std::round(p.x_m * 1e9) / 1e9, std::round(p.y_m * 1e9) / 1e9});
    return list;
  }

  void add(Json geometry, Json properties) {
    features_.push_back(
        {{"type", "Feature"}, {"properties", std::move(properties)}, {"geometry", std::move(geometry)}});
  }

  const ToLongitudeLatitude& place_;
  Json features_ = Json::array();
  std::optional<Error> error_;
};

Json known(const std::optional<double>& value) {
  return value && std::isfinite(*value) ? Json(*value) : Json();
}

void add_bore(Collection& all, const Assessment& answer) {
  std::vector<PlanPoint> axis, left, right;
  Json levels = Json::array();
  for (const PathPoint& p : answer.bore.points) {
    axis.push_back({p.x_m, p.y_m});
    left.push_back({p.x_m, p.y_m + band_sd * p.sd_lateral_m});
    right.push_back({p.x_m, p.y_m - band_sd * p.sd_lateral_m});
    levels.push_back(p.z_m);
  }
  all.line(axis, {{"what", "bore"},
                  {"length_m", answer.bore.length_m},
                  {"ends", word_of(answer.bore.ends)},
                  {"elevation_m", levels}});
  right.insert(right.end(), left.rbegin(), left.rend());
  all.ring(right, {{"what", "band"}, {"holds", "nine bores in ten"}});
}

void add_pit(Collection& all, const PitShape& pit, const char* what) {
  all.ring(pit.footprint, {{"what", what},
                           {"depth_m", pit.depth_m},
                           {"floor_elevation_m", pit.floor_elevation_m},
                           {"volume_m3", pit.volume_m3}});
}

void add_utility(Collection& all, const Utility& utility, const Assessment& answer) {
  std::vector<PlanPoint> line;
  Json levels = Json::array();
  for (const PathVertex& v : utility.path) {
    line.push_back({v.x_m, v.y_m});
    levels.push_back(known(v.z_m));
  }
  Json properties{{"what", "utility"},
                  {"id", utility.id},
                  {"name", utility.name},
                  {"owner", utility.owner},
                  {"kind", word_of(utility.kind)},
                  {"status", word_of(*utility.status)},
                  {"located", word_of(*utility.located.how)},
                  {"outside_diameter_m", utility.outside_diameter ? Json(utility.outside_diameter->m) : Json()},
                  {"elevation_m", levels}};
  const auto judged = std::find_if(answer.utilities.begin(), answer.utilities.end(),
                                   [&](const UtilityAnswer& a) { return a.id == utility.id; });
  const bool found = judged != answer.utilities.end();
  properties["separation_m"] = found ? known(judged->separation_m) : Json();
  properties["required_m"] = found ? known(judged->required_m) : Json();
  all.line(line, std::move(properties));
}

}  // namespace

Result<std::string> write_geojson(const Crossing& crossing, const Assessment& assessment,
                                  const ToLongitudeLatitude& place) {
  const auto& geo = crossing.site.georeference;
  if (!geo || geo->crs.empty())
    return fail("/site/georeference", geo ? "no coordinate system" : "nothing",
                "a georeferenced crossing: import a survey that states its coordinate system, or enter \"crs\", "
                "\"origin\" and \"azimuth_rad\"; without a place on the map a table in metres of the local frame: "
                "-o OUT.csv");
  Collection all(place);
  add_bore(all, assessment);
  add_pit(all, assessment.launch_pit, "launch-pit");
  add_pit(all, assessment.exit_pit, "exit-pit");
  for (const Utility& utility : crossing.site.utilities) add_utility(all, utility, assessment);
  return all.take(crossing.name);
}

}  // namespace burrow
