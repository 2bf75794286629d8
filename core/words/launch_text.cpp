#include "burrow/words/launch_text.h"
#include "burrow/language/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/search/launch_rank.h"

namespace burrow {

namespace {

/// Words for a code; "{}" is what the finding calls its subject.
struct TitleRow {
  std::string_view code;
  const char* title;  ///< marked by `translatable`
};

constexpr TitleRow titles[] = {
    {"utility.separation", translatable("clear gap to {}")},
    {"utility.contact", translatable("chance of touching {}")},
    {"utility.encroachment", translatable("chance of passing too near to {}")},
    {"utility.movement", translatable("movement of {}")},
    {"utility.strain", translatable("strain of {}")},
    {"utility.wall-unknown", translatable("strain of {}")},
    {"utility.vibration", translatable("shaking of {}")},
    {"utility.expose", translatable("{} not exposed")},
    {"bore.cover", translatable("cover over the bore")},
    {"bore.cover-low", translatable("cover at the edge of the band")},
    {"bore.climb", translatable("climb by the ground")},
    {"bore.sag", translatable("sag by the ground")},
    {"bore.length", translatable("length of the bore")},
    {"bore.daylight", translatable("coming out of the ground early")},
    {"bore.daylight-chance", translatable("chance of coming out of the ground early")},
    {"bore.cover-chance", translatable("chance of too little cover")},
    {"bore.no-arrival", translatable("not reaching the exit")},
    {"bore.exit-window", translatable("chance to come out inside the exit pit")},
    {"bore.refusal", translatable("being stopped by the ground")},
    {"bore.exit-off-aim", translatable("arrival beside the exit entered")},
    {"bore.grip", translatable("grip of the ground on the tool")},
    {"bore.set", translatable("advance at each blow")},
    {"surface.cover", translatable("cover under {}")},
    {"surface.cover-low", translatable("cover under {} at the edge of the band")},
    {"surface.cover-chance", translatable("chance of too little cover under {}")},
    {"surface.heave", translatable("rise of {}")},
    {"surface.heave-high", translatable("rise of {}, high estimate")},
    {"surface.settlement", translatable("later sinking of {}")},
    {"surface.stuck", translatable("getting stuck under {}")},
    {"surface.would-stop", translatable("stopping under {}")},
    {"surface.angle", translatable("angle to {}")},
    {"surface.pit-setback", translatable("pits away from {}")},
    {"surface.driven", translatable("hole under {}")},
    {"building.vibration", translatable("shaking of {}")},
    {"footing.influence", translatable("ground that carries {}")},
    {"pit.depth", translatable("depth of the {}")},
    {"pit.water", translatable("water in the {}")},
    {"pit.inflow", translatable("water running into the {}")},
    {"pit.utility", translatable("{} inside a pit")},
    {"pit.utility-near", translatable("{} beside a pit")},
    {"pit.floor-length", translatable("length of the floor, {}")},
    {"pit.floor-width", translatable("width of the floor, {}")},
    {"pit.floor-high", translatable("level of the floor, {}")},
    {"pit.floor-low", translatable("level of the floor, {}")},
    {"pit.unprotected", translatable("unprotected sides of the {}")},
    {"pit.slope", translatable("slope of the {}")},
    {"pit.slope-depth", translatable("depth for slopes, {}")},
    {"pit.base-heave", translatable("heave of the floor, {}")},
    {"pit.tool-off-floor", translatable("tool off the floor drawn, {}")},
    {"pit.uplift", translatable("uplift of the floor, {}")},
    {"pit.edge-load", translatable("loads beside the {}")},
    {"pit.plant", translatable("{} beside a pit")},
    {"pit.tree", translatable("{} beside a pit")},
    {"pit.footing-spread", translatable("pit beside {}")},
    {"pit.track-spread", translatable("pit beside {}")},
    {"pit.on-road", translatable("pit cut into {}")},
    {"pit.on-track", translatable("pit cut into {}")},
    {"pit.on-ditch", translatable("pit cut into {}")},
    {"pit.on-structure", translatable("pit cut into {}")},
    {"pit.boundary", translatable("pit across {}")},
    {"pit.heap-on", translatable("spoil on {}")},
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
    return say("floor of {} {} above the water level", translated_phrase(limit.name),
               format(-*limit.measured, Dimension::length, units));
  for (const std::string_view code : {"bore.climb", "bore.sag", "bore.set", "bore.exit-off-aim", "surface.would-stop",
                                      "pit.unprotected", "pit.floor-high", "pit.floor-low"})
    if (limit.code == code)
      return fmt::format("{}: {}, {} {}", limit_title(limit), format(*limit.measured, dimension_of(limit), units),
                         format(*limit.limit, dimension_of(limit), units),
                         limit.at_least ? translated("required") : translated("at most"));
  return finding_text(limit, units);
}

}  // namespace

std::string limit_title(const Finding& limit) {
  const std::string name = translated_phrase(limit.name);
  for (const TitleRow& row : titles)
    if (row.code == limit.code) return fmt::vformat(translated(row.title), fmt::make_format_args(name));
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
  if (percent > 99.5) return translated("far short");
  return say("{:.0f} % short", std::max(percent, 1.0));
}

std::string margin_text(const LaunchCell& cell) {
  if (!cell.arrives) return translated("does not arrive");
  if (cell.margin < 0 && !cell.limit) return translated("not kept");
  return margin_text(cell.margin);
}

std::string verdict_text(const LaunchCell& cell) {
  switch (cell.assessed) {
    case Verdict::stop:
      return cell.verdict == Verdict::stop ? translated("stop") : translated("stop, the same at every launch");
    case Verdict::incomplete:
      return say_count("incomplete ({} thing not known)", "incomplete ({} things not known)", cell.missing);
    case Verdict::caution:
      return cell.verdict == Verdict::caution ? translated("caution") : translated("caution, the same at every launch");
    case Verdict::within_limits:
      break;
  }
  return translated("within limits");
}

std::string conflict_text(const LaunchMap& map) {
  if (map.works) return {};
  std::vector<std::string> items, all;  // all limits about one utility are one thing
  for (const Relaxation& relaxation : map.relaxations)
    for (const Finding& limit : relaxation.limits) {
      const std::string unit = launch::unit_of(limit);
      if (std::find(items.begin(), items.end(), unit) != items.end()) continue;
      items.push_back(unit);
      all.push_back(limit_title(limit));
    }
  return all.size() < 2 ? std::string() : joined(all, "; ");
}

std::string gives_text(const Finding& limit, UnitSystem units) {
  if (!limit.measured || !limit.limit) return {};
  const Dimension dimension = dimension_of(limit);
  return fmt::format("{} {}", format(std::abs(*limit.limit - *limit.measured), dimension, units),
                     limit.at_least ? translated("less") : translated("more"));
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
  if (!exposure.works) return say("Exposing {} alone does not open a launch.", translated_phrase(exposure.name));
  return say("Expose {} by hand: if it is found where it is drawn, {} works.", translated_phrase(exposure.name),
             place_text(over, exposure.best.place, units));
}

std::string tool_text(const ToolRow& row, UnitSystem units) {
  if (!row.pipe_fits) return translated("the pipe is wider than the hole");
  std::vector<std::string> why;
  for (const Finding& limit : row.why) why.push_back(finding_text(limit, units));
  if (!why.empty()) return joined(why, "; ");
  return row.binds ? words_of(*row.binds, units) : std::string();
}

std::string insertion_words(Insertion insertion) {
  switch (insertion) {
    case Insertion::pulled_after:
      return translated("pulled in after the tool is out");
    case Insertion::towed:
      return translated("towed behind the tool");
    case Insertion::pushed:
      return translated("pushed in from the launch pit");
  }
  return {};
}

}  // namespace burrow
