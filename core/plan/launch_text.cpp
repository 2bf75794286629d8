#include "burrow/plan/launch_text.h"
#include "burrow/base/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "launch_weigh.h"

namespace burrow {

namespace {

/// Words for a code; "{}" is what the finding calls its subject.
struct TitleRow {
  std::string_view code;
  const char* title;  ///< marked by `noted`
};

constexpr TitleRow titles[] = {
    {"utility.separation", noted("clear gap to {}")},
    {"utility.contact", noted("chance of touching {}")},
    {"utility.encroachment", noted("chance of passing too near to {}")},
    {"utility.movement", noted("movement of {}")},
    {"utility.strain", noted("strain of {}")},
    {"utility.wall-unknown", noted("strain of {}")},
    {"utility.vibration", noted("shaking of {}")},
    {"utility.expose", noted("{} not exposed")},
    {"bore.cover", noted("cover over the bore")},
    {"bore.cover-low", noted("cover at the edge of the band")},
    {"bore.climb", noted("climb by the ground")},
    {"bore.sag", noted("sag by the ground")},
    {"bore.length", noted("length of the bore")},
    {"bore.daylight", noted("coming out of the ground early")},
    {"bore.daylight-chance", noted("chance of coming out of the ground early")},
    {"bore.cover-chance", noted("chance of too little cover")},
    {"bore.no-arrival", noted("not reaching the exit")},
    {"bore.exit-window", noted("chance to come out inside the exit pit")},
    {"bore.refusal", noted("being stopped by the ground")},
    {"bore.exit-off-aim", noted("arrival beside the exit entered")},
    {"bore.grip", noted("grip of the ground on the tool")},
    {"bore.set", noted("advance at each blow")},
    {"surface.cover", noted("cover under {}")},
    {"surface.cover-low", noted("cover under {} at the edge of the band")},
    {"surface.cover-chance", noted("chance of too little cover under {}")},
    {"surface.heave", noted("rise of {}")},
    {"surface.heave-high", noted("rise of {}, high estimate")},
    {"surface.settlement", noted("later sinking of {}")},
    {"surface.stuck", noted("getting stuck under {}")},
    {"surface.would-stop", noted("stopping under {}")},
    {"surface.angle", noted("angle to {}")},
    {"surface.pit-setback", noted("pits away from {}")},
    {"surface.driven", noted("hole under {}")},
    {"building.vibration", noted("shaking of {}")},
    {"footing.influence", noted("ground that carries {}")},
    {"pit.depth", noted("depth of the {}")},
    {"pit.water", noted("water in the {}")},
    {"pit.inflow", noted("water running into the {}")},
    {"pit.utility", noted("{} inside a pit")},
    {"pit.utility-near", noted("{} beside a pit")},
    {"pit.floor-length", noted("length of the floor, {}")},
    {"pit.floor-width", noted("width of the floor, {}")},
    {"pit.floor-high", noted("level of the floor, {}")},
    {"pit.floor-low", noted("level of the floor, {}")},
    {"pit.unprotected", noted("unprotected sides of the {}")},
    {"pit.slope", noted("slope of the {}")},
    {"pit.slope-depth", noted("depth for slopes, {}")},
    {"pit.base-heave", noted("heave of the floor, {}")},
    {"pit.tool-off-floor", noted("tool off the floor drawn, {}")},
    {"pit.uplift", noted("uplift of the floor, {}")},
    {"pit.edge-load", noted("loads beside the {}")},
    {"pit.plant", noted("{} beside a pit")},
    {"pit.tree", noted("{} beside a pit")},
    {"pit.footing-spread", noted("pit beside {}")},
    {"pit.track-spread", noted("pit beside {}")},
    {"pit.on-road", noted("pit cut into {}")},
    {"pit.on-track", noted("pit cut into {}")},
    {"pit.on-ditch", noted("pit cut into {}")},
    {"pit.on-structure", noted("pit cut into {}")},
    {"pit.boundary", noted("pit across {}")},
    {"pit.heap-on", noted("spoil heap on {}")},
};

Dimension dimension_of(const Finding& limit) {
  if (limit.unit == "m")
    return limit.limit && std::abs(*limit.limit) < 0.1 ? Dimension::small_length : Dimension::length;
  if (limit.unit == "rad") return Dimension::angle;
  const bool chance = limit.code.ends_with("contact") || limit.code.ends_with("encroachment") ||
                      limit.code.ends_with("window") || limit.code.ends_with("stuck") ||
                      limit.code.ends_with("refusal");
  return chance ? Dimension::chance : Dimension::ratio;
}

std::string joined(const std::vector<std::string>& all, std::string_view between) {
  std::string text;
  for (const std::string& one : all) {
    if (!text.empty()) text += between;
    text += one;
  }
  return text;
}

Finding with_numbers(const LaunchMap& map, const LaunchCell& cell) {
  Finding finding = map.limits[static_cast<std::size_t>(cell.binds)];
  finding.measured = cell.measured;
  finding.limit = cell.limit;
  finding.limit_base = cell.limit_base;
  finding.margin = cell.margin;
  return finding;
}

/// Words of findings are of limits that are broken; a few of them would be wrong of one that is kept.
std::string words_of(const Finding& limit, UnitSystem units) {
  const bool kept = limit.margin && !(*limit.margin < 0) && limit.measured && limit.limit;
  if (!kept) return finding_text(limit, units);
  if (limit.code == "pit.water")
    return say("floor of {} {} above the water level", said_phrase(limit.name),
               format(-*limit.measured, Dimension::length, units));
  for (const std::string_view code : {"bore.climb", "bore.sag", "bore.set", "bore.exit-off-aim", "surface.would-stop",
                                      "pit.unprotected", "pit.floor-high", "pit.floor-low"})
    if (limit.code == code)
      return fmt::format("{}: {}, {} {}", limit_title(limit), format(*limit.measured, dimension_of(limit), units),
                         format(*limit.limit, dimension_of(limit), units),
                         limit.at_least ? said("wanted") : said("at most"));
  return finding_text(limit, units);
}

}  // namespace

std::string limit_title(const Finding& limit) {
  const std::string name = said_phrase(limit.name);
  for (const TitleRow& row : titles)
    if (row.code == limit.code) return fmt::vformat(said(row.title), fmt::make_format_args(name));
  std::string words = limit.code;
  std::replace(words.begin(), words.end(), '-', ' ');
  std::replace(words.begin(), words.end(), '.', ' ');
  return name.empty() ? words : words + ", " + name;
}

std::string place_text(MapOver over, const MapPlace& place, UnitSystem units) {
  if (over == MapOver::station_and_offset)
    return say("station {}, offset {}", format(place.across, Dimension::station, units),
               format(place.down, Dimension::station, units));
  return say("{} deep at {}", format(place.down, Dimension::length, units),
             format(place.across, Dimension::grade, units));
}

std::string binding_text(const LaunchMap& map, const LaunchCell& cell, UnitSystem units) {
  if (cell.binds < 0) return {};
  return words_of(with_numbers(map, cell), units);
}

std::string margin_text(double margin) {
  const double percent = std::abs(margin) * 100;
  if (!(margin < 0)) return say("margin {:.0f} %", percent);
  if (percent > 99.5) return said("far short");
  return say("{:.0f} % short", std::max(percent, 1.0));
}

std::string margin_text(const LaunchCell& cell) {
  if (!cell.arrives) return said("does not arrive");
  if (cell.margin < 0 && !cell.limit) return said("not kept");
  return margin_text(cell.margin);
}

std::string verdict_text(const LaunchCell& cell) {
  switch (cell.assessed) {
    case Verdict::stop:
      return cell.verdict == Verdict::stop ? said("stop") : said("stop, the same at every launch");
    case Verdict::incomplete:
      return say_count("incomplete ({} thing not known)", "incomplete ({} things not known)", cell.missing);
    case Verdict::caution:
      return cell.verdict == Verdict::caution ? said("caution") : said("caution, the same at every launch");
    case Verdict::within_limits:
      break;
  }
  return said("within limits");
}

std::string conflict_text(const LaunchMap& map) {
  if (map.works) return {};
  std::vector<std::string> things, all;  // all limits about one utility are one thing
  for (const Relaxation& relaxation : map.relaxations)
    for (const Finding& limit : relaxation.limits) {
      const std::string thing = launch::unit_of(limit);
      if (std::find(things.begin(), things.end(), thing) != things.end()) continue;
      things.push_back(thing);
      all.push_back(limit_title(limit));
    }
  return all.size() < 2 ? std::string() : joined(all, "; ");
}

std::string gives_text(const Finding& limit, UnitSystem units) {
  if (!limit.measured || !limit.limit) return {};
  const Dimension dimension = dimension_of(limit);
  return fmt::format("{} {}", format(std::abs(*limit.limit - *limit.measured), dimension, units),
                     limit.at_least ? said("less") : said("more"));
}

std::vector<std::string> relaxation_lines(const Relaxation& relaxation, UnitSystem units) {
  std::vector<std::string> lines;
  for (const Finding& limit : relaxation.limits) {
    const std::string gives = gives_text(limit, units);
    lines.push_back(finding_text(limit, units) + (gives.empty() ? "" : ": " + gives));
  }
  return lines;
}

std::string exposure_text(const Exposure& exposure, MapOver over, UnitSystem units) {
  if (!exposure.works) return say("Exposing {} alone does not open a launch.", exposure.name);
  return say("Expose {} by hand: if it is found where it is drawn, {} works.", exposure.name,
             place_text(over, exposure.best.place, units));
}

std::string tool_text(const ToolRow& row, UnitSystem units) {
  if (!row.pipe_fits) return said("the pipe is wider than the hole");
  std::vector<std::string> why;
  for (const Finding& limit : row.why) why.push_back(finding_text(limit, units));
  if (!why.empty()) return joined(why, "; ");
  return row.binds ? words_of(*row.binds, units) : std::string();
}

std::string insertion_words(Insertion insertion) {
  switch (insertion) {
    case Insertion::pulled_after:
      return said("pulled in after the tool is out");
    case Insertion::towed:
      return said("towed behind the tool");
    case Insertion::pushed:
      return said("pushed in from the launch pit");
  }
  return {};
}

}  // namespace burrow
