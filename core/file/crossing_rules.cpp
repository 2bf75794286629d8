#include "crossing_rules.h"

#include <algorithm>
#include <unordered_set>

#include "burrow/check/tool_plate.h"
#include "burrow/crossing/floor_outline.h"

namespace burrow {

namespace {

std::string digits(double value) {
  return compact_json(Json(value));
}

void check_bore(Reader& reader, const Bore& bore, const std::string& place) {
  if (bore.tool.tool_class.empty() && !bore.tool.diameter)
    reader.refuse(place + "/tool", "neither class nor diameter_m", "a class of tool, or a typed diameter_m");
  else if (const Result<void> holds = reader.error() ? Result<void>() : check_tool_plate(bore.tool, reader.tables());
           !holds)
    reader.refuse(place + "/tool/" + holds.error().place.english(), holds.error().found, holds.error().expected);
  if (!(bore.exit.station.m - bore.launch.station.m >= least_station_step_m))
    reader.refuse(place + "/exit/station_m", digits(bore.exit.station.m),
                  "an exit beyond the launch: more than launch.station_m, which is " + digits(bore.launch.station.m) +
                      ", by a millimetre (0.001) or more");
}

template <class List>
std::unordered_set<std::string> ids_of(const List& list) {
  std::unordered_set<std::string> ids;
  for (const auto& item : list) ids.insert(item.id);
  return ids;
}

template <class List>
std::string expected_id(const std::string& what, const List& list) {
  constexpr std::size_t most_shown = 20;
  std::string all;
  for (std::size_t i = 0; i < std::min(list.size(), most_shown); ++i) all += (i ? ", " : "") + list[i].id;
  if (list.size() > most_shown) all += ", …";
  return "the id of " + what + (all.empty() ? "; there is none" : ": " + all);
}

void check_floor(Reader& reader, const Pit& pit, const std::string& place) {
  const auto fault = fault_of_floor(pit.floor_outline);
  if (!fault) return;
  const std::size_t corner = std::min(fault->corner, pit.floor_outline.size() - 1);
  const PlanPoint& p = pit.floor_outline[corner];
  reader.refuse(
      json_pointer(place + "/floor_outline", corner), "[" + digits(p.x_m) + "," + digits(p.y_m) + "]",
      phrase(
          "corners of a floor, [into the pit from its face, to the left]: 3 to 24, no two within 5 cm, none before the "
          "face, no edges that cross, 0.1 m² or more; this one {}",
          fault->what));
}

void check_pits(Reader& reader, const Pits& pits, const std::string& place) {
  check_floor(reader, pits.launch, place + "/launch");
  check_floor(reader, pits.exit, place + "/exit");
}

void check_references(Reader& reader, const Crossing& crossing) {
  const Site& site = crossing.site;
  const auto utilities = ids_of(site.utilities);
  for (std::size_t i = 0; i < site.test_holes.size(); ++i)
    if (const std::string& id = site.test_holes[i].utility; !id.empty() && !utilities.contains(id))
      reader.refuse(json_pointer("/site/test_holes", i) + "/utility", shown_json(Json(id)),
                    expected_id("a utility", site.utilities));
  const auto alternatives = ids_of(crossing.alternatives);
  for (std::size_t i = 0; i < crossing.record.size(); ++i)
    if (const auto& id = crossing.record[i].alternative; id && !alternatives.contains(*id))
      reader.refuse(json_pointer("/record", i) + "/alternative", shown_json(Json(*id)),
                    expected_id("an alternative", crossing.alternatives));
}

void check_locks(Reader& reader, const std::vector<std::string>& locks, const std::string& place) {
  for (std::size_t i = 0; i < locks.size(); ++i)
    if (!locks[i].starts_with('/'))
      reader.refuse(json_pointer(place, i), shown_json(Json(locks[i])), "a JSON pointer, as /bore/launch/elevation_m");
}

}  // namespace

void check_rules(Reader& reader, const Crossing& crossing) {
  check_bore(reader, crossing.bore, "/bore");
  check_pits(reader, crossing.pits, "/pits");
  check_references(reader, crossing);
  check_locks(reader, crossing.locks, "/locks");
  for (std::size_t i = 0; i < crossing.record.size(); ++i)
    if (const KeptLayout& kept = crossing.record[i].layout; kept.bore)
      check_bore(reader, *kept.bore, json_pointer("/record", i) + "/layout/bore");
  for (std::size_t i = 0; i < crossing.alternatives.size(); ++i) {
    const std::string place = json_pointer("/alternatives", i);
    if (crossing.alternatives[i].bore) check_bore(reader, *crossing.alternatives[i].bore, place + "/bore");
    if (crossing.alternatives[i].pits) check_pits(reader, *crossing.alternatives[i].pits, place + "/pits");
    check_locks(reader, crossing.alternatives[i].locks, place + "/locks");
  }
}

}  // namespace burrow
