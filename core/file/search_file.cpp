#include "burrow/file/search_file.h"

#include "burrow/words/launch_text.h"
#include "json_answers.h"

namespace burrow {

namespace {

struct Writer {
  const Crossing& crossing;
  const LaunchMap& map;
  UnitSystem units;

  [[nodiscard]] Json launch(const MapPlace& place) const {
    const Launch at = launch_at(crossing, map.over, place);
    const MapPlace depth = map.over == MapOver::depth_and_grade ? place : place_of(crossing, MapOver::depth_and_grade);
    return object({{"station_m", Json(at.station.m)},
                   {"offset_m", Json(at.offset->m)},
                   {"elevation_m", Json(at.elevation.m)},
                   {"depth_m", Json(depth.down)},
                   {"grade", Json(at.grade.v)}});
  }

  [[nodiscard]] Json cell(const LaunchCell& cell) const {
    return object({{"launch", launch(cell.place)},
                   {"verdict", Json(word_of(cell.verdict))},
                   {"assessed", Json(word_of(cell.assessed))},
                   {"missing", Json(std::int64_t{cell.missing})},
                   {"arrives", Json(cell.arrives)},
                   {"margin", Json(cell.margin)},
                   {"binds", cell.binds < 0 ? Json() : Json(std::int64_t{cell.binds})},
                   {"measured", number(cell.measured)},
                   {"limit", number(cell.limit)},
                   {"chance_clean", number(cell.chance_clean)},
                   {"earth_m3", Json(cell.earth_m3)},
                   {"pit_depth_m", Json(cell.pit_depth_m)},
                   {"length_m", Json(cell.length_m)},
                   {"text", Json(binding_text(map, cell, units))}});
  }

  [[nodiscard]] Json broken(const Finding& f) const {
    return object({{"code", Json(f.code)},
                   {"severity", Json(word_of(f.severity))},
                   {"subject", Json(f.subject)},
                   {"measured", number(f.measured)},
                   {"limit", number(f.limit)},
                   {"unit", Json(f.unit)},
                   {"gives", Json(gives_text(f, units))},
                   {"text", Json(finding_text(f, units))}});
  }

  [[nodiscard]] Json broken(const std::vector<Finding>& all) const {
    return list_of(all, [&](const Finding& f) { return broken(f); });
  }

  [[nodiscard]] Json axis(const MapAxis& axis, std::string_view of) const {
    return object({{"of", Json(of)},
                   {"from", Json(axis.from)},
                   {"to", Json(axis.to)},
                   {"count", Json(std::int64_t{axis.count})},
                   {"locked", Json(axis.locked)}});
  }

  [[nodiscard]] Json cells() const {
    const auto each = [&](auto one) { return list_of(map.cells, one); };
    return object(
        {{"verdict", each([](const LaunchCell& c) { return Json(word_of(c.verdict)); })},
         {"assessed", each([](const LaunchCell& c) { return Json(word_of(c.assessed)); })},
         {"missing", each([](const LaunchCell& c) { return Json(std::int64_t{c.missing}); })},
         {"arrives", each([](const LaunchCell& c) { return Json(c.arrives); })},
         {"margin", each([](const LaunchCell& c) { return Json(c.margin); })},
         {"binds", each([](const LaunchCell& c) { return c.binds < 0 ? Json() : Json(std::int64_t{c.binds}); })},
         {"chance_clean", each([](const LaunchCell& c) { return number(c.chance_clean); })}});
  }

  [[nodiscard]] Json exposure(const Exposure& e) const {
    return object({{"utility", Json(e.utility)},
                   {"works", Json(e.works)},
                   {"launch", launch(e.best.place)},
                   {"text", Json(exposure_text(e, map.over, units))}});
  }

  [[nodiscard]] Json tool(const ToolRow& row) const {
    return object({{"tool", Json(row.tool)},
                   {"insertion", Json(word_of(row.insertion))},
                   {"in_force", Json(row.in_force)},
                   {"pipe_fits", Json(row.pipe_fits)},
                   {"works", Json(row.works)},
                   {"verdict", row.best ? Json(word_of(row.best->verdict)) : Json()},
                   {"assessed", row.best ? Json(word_of(row.best->assessed)) : Json()},
                   {"missing", row.best ? Json(std::int64_t{row.best->missing}) : Json()},
                   {"margin", row.best ? Json(row.best->margin) : Json()},
                   {"launch", row.best ? launch(row.best->place) : Json()},
                   {"why", broken(row.why)},
                   {"text", Json(tool_text(row, units))}});
  }
};

Json heading_of(const std::string& file, Json::Object rest) {
  Json::Object members{{"format", Json("burrowline-search")}, {"version", Json(std::int64_t{1})}, {"file", Json(file)}};
  for (JsonMember& member : rest) members.push_back(std::move(member));
  return object(std::move(members));
}

}  // namespace

std::string write_search(const Crossing& crossing, const SearchAnswer& answer, const std::string& file,
                         const SearchOptions& options) {
  const LaunchMap& map = answer.map;
  const Writer write{crossing, map, options.units};
  const bool over_depth = map.over == MapOver::depth_and_grade;
  const auto limit = [&](const Finding& f) {
    return object({{"code", Json(f.code)},
                   {"subject", Json(f.subject)},
                   {"severity", Json(word_of(f.severity))},
                   {"title", Json(limit_title(f))}});
  };
  const auto edge = [](const MapEdge& e) { return object({{"side", Json(word_of(e.side))}, {"last", Json(e.last)}}); };
  const auto relaxation = [&](const Relaxation& r) {
    return object(
        {{"launch", write.launch(r.place)}, {"margin", Json(r.worst_margin)}, {"limits", write.broken(r.limits)}});
  };
  Json::Object members{{"crossing", Json(crossing.name)},
                       {"over", Json(word_of(map.over))},
                       {"across", write.axis(map.across, over_depth ? "grade" : "station_m")},
                       {"down", write.axis(map.down, over_depth ? "depth_m" : "offset_m")},
                       {"judged", Json(map.judged)},
                       {"works", Json(map.works)},
                       {"headline", Json(search_headline(map, options.units))},
                       {"best", map.best ? write.cell(*map.best) : Json()},
                       {"best_by_limits", map.best_by_limits ? write.cell(*map.best_by_limits) : Json()},
                       {"edges", list_of(map.edges, edge)},
                       {"widened", Json(std::int64_t{map.widened})},
                       {"here", write.cell(map.here)},
                       {"limits", list_of(map.limits, limit)},
                       {"cells", write.cells()},
                       {"everywhere", write.broken(map.everywhere)},
                       {"missing", write.broken(map.missing)},
                       {"conflict", Json(conflict_text(map))},
                       {"relaxations", list_of(map.relaxations, relaxation)},
                       {"exposures", list_of(answer.exposures, [&](const Exposure& e) { return write.exposure(e); })}};
  if (options.tools)
    members.push_back({"tools", list_of(answer.tools, [&](const ToolRow& row) { return write.tool(row); })});
  return compact_json(heading_of(file, std::move(members)));
}

std::string write_search_failure(const std::string& file, const Error& error) {
  const Json shown = object({{"pointer", Json(error.place.english())},
                             {"found", Json(error.found.english())},
                             {"expected", Json(error.expected.english())}});
  return compact_json(heading_of(file, {{"error", shown}}));
}

}  // namespace burrow
