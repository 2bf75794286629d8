#include "project.h"

#include <fmt/format.h>
#include <proj.h>

#include <cmath>
#include <limits>
#include <memory>
#include <regex>

#include "burrow/base/quantity.h"
#include "burrow/language/say.h"

namespace burrow::frames {

namespace {

struct Free {
  void operator()(PJ* pj) const { proj_destroy(pj); }
  void operator()(PJ_CONTEXT* context) const { proj_context_destroy(context); }
};
using Pj = std::unique_ptr<PJ, Free>;
using Context = std::unique_ptr<PJ_CONTEXT, Free>;

/// One context a call, so that threads never share one.
Context new_context() {
  Context context(proj_context_create());
  proj_context_set_enable_network(context.get(), 0);
  proj_log_level(context.get(), PJ_LOG_NONE);
  return context;
}

/// "EPSG:25832", "EPSG:25832+7837", "urn:ogc:def:crs:EPSG::25832".
bool is_code(const std::string& crs) {
  static const std::regex code(
      R"([A-Za-z][A-Za-z0-9]*:[A-Za-z0-9_.-]+(\+[A-Za-z0-9_.-]+)?|urn:(ogc|x-ogc):def:[A-Za-z0-9:_.,()-]+)",
      std::regex::icase);
  return crs.size() < 200 && std::regex_match(crs, code);
}

bool is_wkt_without_files(const std::string& crs) {
  static const std::regex keyword(R"(\s*[A-Za-z_0-9]+\s*\[)");
  return std::regex_search(crs.substr(0, 40), keyword, std::regex_constants::match_continuous) && !names_file(crs);
}

Result<Pj> system(PJ_CONTEXT* context, const std::string& crs) {
  if (!is_code(crs) && !is_wkt_without_files(crs))
    return fail(translated("coordinate system"), crs.substr(0, 80),
                translated("a named one: \"EPSG:25832\", an OGC URN, or WKT that names no file"));
  Pj pj(proj_create(context, crs.c_str()));
  if (!pj || !proj_is_crs(pj.get()))
    return fail(translated("coordinate system"), crs.substr(0, 80), translated("one that PROJ knows, \"EPSG:25832\""));
  // Heights keep their own unit and datum: only the plan is transformed.
  if (proj_get_type(pj.get()) == PJ_TYPE_COMPOUND_CRS) return Pj(proj_crs_get_sub_crs(context, pj.get(), 0));
  return pj;
}

/// x, y of `from` in the order east, north into `to`, likewise.
Pj operation(PJ_CONTEXT* context, const Pj& from, const Pj& to) {
  const Pj plain(proj_create_crs_to_crs_from_pj(context, from.get(), to.get(), nullptr, nullptr));
  return plain ? Pj(proj_normalize_for_visualization(context, plain.get())) : Pj();
}

Result<PlanPoint> move_one(const Pj& by, PlanPoint p) {
  const PJ_COORD out = proj_trans(by.get(), PJ_FWD, proj_coord(p.x_m, p.y_m, 0, 0));
  if (!std::isfinite(out.xy.x) || !std::isfinite(out.xy.y))
    return fail(translated("point"), fmt::format("{:g}, {:g}", p.x_m, p.y_m),
                translated("a place within its coordinate system"));
  return PlanPoint{out.xy.x, out.xy.y};
}

Result<PlanPoint> longitude_latitude(PJ_CONTEXT* context, const Pj& crs, PlanPoint p) {
  const Pj geodetic(proj_crs_get_geodetic_crs(context, crs.get()));
  const Pj by = geodetic ? operation(context, crs, geodetic) : Pj();
  if (!by)
    return fail(translated("coordinate system"), translated("one without latitude and longitude"),
                translated("a map projection or degrees"));
  return move_one(by, p);
}

/// Transverse Mercator of scale 1 at a point, on a geodetic system, as PROJJSON.
std::string local_definition(std::string_view geodetic, PlanPoint longitude_latitude_deg) {
  constexpr std::string_view pattern =
      R"({{"type":"ProjectedCRS","name":"local","base_crs":{0},"conversion":{{"name":"local",)"
      R"("method":{{"name":"Transverse Mercator","id":{{"authority":"EPSG","code":9807}}}},"parameters":[)"
      R"({{"name":"Latitude of natural origin","value":{2},"unit":"degree","id":{{"authority":"EPSG","code":8801}}}},)"
      R"({{"name":"Longitude of natural origin","value":{1},"unit":"degree","id":{{"authority":"EPSG","code":8802}}}},)"
      R"({{"name":"Scale factor at natural origin","value":1,"unit":"unity","id":{{"authority":"EPSG","code":8805}}}},)"
      R"({{"name":"False easting","value":0,"unit":"metre","id":{{"authority":"EPSG","code":8806}}}},)"
      R"({{"name":"False northing","value":0,"unit":"metre","id":{{"authority":"EPSG","code":8807}}}}]}},)"
      R"("coordinate_system":{{"subtype":"Cartesian","axis":[)"
      R"({{"name":"Easting","abbreviation":"E","direction":"east","unit":"metre"}},)"
      R"({{"name":"Northing","abbreviation":"N","direction":"north","unit":"metre"}}]}}}})";
  return fmt::format(pattern, geodetic, longitude_latitude_deg.x_m, longitude_latitude_deg.y_m);
}

Result<Pj> local_system(PJ_CONTEXT* context, const LocalFrame& frame) {
  Result<Pj> crs = system(context, frame.crs);
  if (!crs) return crs;
  const Result<PlanPoint> at = longitude_latitude(context, *crs, {frame.x, frame.y});
  if (!at) return tl::unexpected(at.error());
  const Pj geodetic(proj_crs_get_geodetic_crs(context, crs->get()));
  const char* base = geodetic ? proj_as_projjson(context, geodetic.get(), nullptr) : nullptr;
  Pj local(base ? proj_create(context, local_definition(base, *at).c_str()) : nullptr);
  if (!local)
    return fail(translated("coordinate system"), frame.crs.substr(0, 80), translated("a map projection or degrees"));
  return local;
}

Result<Projected> move(PJ_CONTEXT* context, const Pj& from, const Pj& to, std::vector<PlanPoint>& points) {
  const Pj by = operation(context, from, to);
  if (!by)
    return fail(translated("coordinate system"), translated("no way between the two systems"),
                translated("systems of the same region"));
  constexpr double nowhere = std::numeric_limits<double>::quiet_NaN();
  for (PlanPoint& p : points) p = move_one(by, p).value_or(PlanPoint{nowhere, nowhere});
  Projected how;
  const Pj used(proj_trans_get_last_used_operation(by.get()));
  if (used) {
    how.shift_unknown = proj_coordoperation_has_ballpark_transformation(context, used.get()) != 0;
    const double accuracy = proj_coordoperation_get_accuracy(context, used.get());
    how.error_m = accuracy > 0 ? accuracy : 0;
  }
  return how;
}

}  // namespace

bool names_file(const std::string& crs) {
  static const std::regex file(R"(^\s?[/.~@]|PARAMETERFILE|EXTENSION\s*\[|grids|\+(proj|init)|proj=|init=)",
                               std::regex::icase);
  constexpr std::size_t longest = 20000;
  return crs.size() >= longest || std::regex_search(crs, file);
}

Result<Projected> project(const std::string& crs, const LocalFrame& frame, std::vector<PlanPoint>& points) {
  const Context context = new_context();
  const Result<Pj> from = system(context.get(), crs);
  if (!from) return tl::unexpected(from.error());
  const Result<Pj> to = local_system(context.get(), frame);
  if (!to) return tl::unexpected(to.error());
  return move(context.get(), *from, *to, points);
}

Result<Projected> unproject(const std::string& crs, const LocalFrame& frame, std::vector<PlanPoint>& points) {
  const Context context = new_context();
  const Result<Pj> to = system(context.get(), crs);
  if (!to) return tl::unexpected(to.error());
  const Result<Pj> from = local_system(context.get(), frame);
  if (!from) return tl::unexpected(from.error());
  return move(context.get(), *from, *to, points);
}

Result<std::string> metric_crs(const std::string& crs, double x, double y) {
  const Context context = new_context();
  const Result<Pj> from = system(context.get(), crs);
  if (!from) return tl::unexpected(from.error());
  const Result<PlanPoint> at = longitude_latitude(context.get(), *from, {x, y});
  if (!at) return tl::unexpected(at.error());
  if (!(std::abs(at->y_m) <= 84))
    return fail(translated("latitude"), fmt::format("{:g}", at->y_m), translated("between −84 and 84 degrees"));
  const double turn = at->x_m - 360 * std::floor((at->x_m + 180) / 360);
  const int zone = std::min(60, static_cast<int>(std::floor((turn + 180) / 6)) + 1);
  return fmt::format("EPSG:{}", (at->y_m < 0 ? 32700 : 32600) + zone);
}

}  // namespace burrow::frames
