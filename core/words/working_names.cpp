#include "burrow/words/working_names.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "burrow/base/phrase.h"
#include "burrow/language/say.h"
#include "working_symbols.h"

namespace burrow {

namespace {

struct TitleRow {
  std::string_view code;
  const char* title;  ///< marked by `translatable`
};

constexpr TitleRow titles[] = {
    {"bore.length", translatable("Length of the bore")},
    {"bore.exit-window", translatable("Chance of arriving in the exit pit")},
    {"bore.daylight-chance", translatable("Chance of coming out of the ground before the exit")},
    {"bore.cover-chance", translatable("Chance of less cover than required over the bore")},
    {"surface.cover-chance", translatable("Chance of less cover than required below the surface")},
    {"bore.refusal", translatable("Chance of sticking before the exit")},
    {"bore.climb", translatable("Climb of the path above the aim")},
    {"bore.sag", translatable("Sag of the path below the aim")},
    {"bore.set", translatable("Set of a blow")},
    {"bore.efficiency", translatable("Efficiency of a blow")},
    {"bore.grip", translatable("Grip of the ground on the tool")},
    {"bore.time", translatable("Time of the bore")},
    {"bore.cover", translatable("Cover over the bore")},
    {"bore.cover-low", translatable("Cover over the bore, low estimate")},
    {"bore.neutral-cover", translatable("Cover against the neutral cover")},
    {"bore.plastic-zone", translatable("Reach of the yielding ground at the bore")},
    {"surface.cover", translatable("Cover below the surface")},
    {"surface.cover-low", translatable("Cover below the surface, low estimate")},
    {"surface.angle", translatable("Angle of the crossing")},
    {"surface.pit-setback", translatable("Pit face to the edge")},
    {"surface.near-centre", translatable("Excavation to the centre line")},
    {"surface.pit-edge", translatable("Excavation to the edge")},
    {"surface.settlement", translatable("Settlement of the surface")},
    {"surface.heave", translatable("Heave of the surface")},
    {"surface.heave-high", translatable("Heave of the surface, high estimate")},
    {"surface.levels-rose", translatable("Rise of the levelled pegs")},
    {"surface.levels-sank", translatable("Drop of the levelled pegs")},
    {"surface.stuck", translatable("Chance of sticking under it")},
    {"footing.influence", translatable("Bore to the ground that carries a footing")},
    {"building.vibration", translatable("Vibration at a building")},
    {"utility.distance", translatable("Least distance of the axes")},
    {"utility.separation", translatable("Clear gap to the utility")},
    {"utility.required", translatable("Clear gap required")},
    {"utility.gap-low", translatable("Clear gap to the utility, low estimate")},
    {"utility.contact", translatable("Chance of contact")},
    {"utility.contact-worst", translatable("Chance of contact, worst location error")},
    {"utility.contact-any", translatable("Chance of touching any utility")},
    {"utility.encroachment", translatable("Chance of coming nearer than required")},
    {"utility.after-hole", translatable("Chance of contact left after a test hole")},
    {"utility.movement", translatable("Ground movement at the utility")},
    {"utility.strain", translatable("Strain of the utility")},
    {"utility.vibration", translatable("Vibration at the utility")},
    {"utility.plastic-zone", translatable("Reach of the yielding ground at the utility")},
    {"site.unknown-service", translatable("Chance of meeting a service nobody drew")},
    {"pit.water", translatable("Water above the floor of the pit")},
    {"pit.depth", translatable("Depth of the pit")},
    {"pit.shield-depth", translatable("Depth of the pit against the rating of its shield")},
    {"pit.ground", translatable("Ground at the pit against the ground line")},
    {"pit.set-back", translatable("Set-back of the sloped sides")},
    {"pit.slope", translatable("Slope past the benches")},
    {"pit.slope-by-calculation", translatable("Slope of the ground beside the pit")},
    {"pit.bore-side-sloped", translatable("Bore without cover where the side is sloped")},
    {"pit.support-short", translatable("Top of the support")},
    {"pit.support-foot", translatable("Foot of the support")},
    {"pit.trench-width", translatable("Clear width of the pit")},
    {"pit.working-space", translatable("Floor behind the tool")},
    {"pit.loose", translatable("Dug soil, loose")},
    {"pit.heap", translatable("Heap of spoil")},
    {"pit.ladder", translatable("Way to the ladder")},
    {"pit.edge-load", translatable("Heap to the edge of the pit")},
    {"pit.plant", translatable("Machine to the edge of the pit")},
    {"pit.tree", translatable("Pit to the protected zone of a tree")},
    {"pit.proposal", translatable("Kind of sides proposed")},
    {"pit.footing-spread", translatable("Excavation beside the spread of a footing")},
    {"pit.track-spread", translatable("Excavation beside the spread of a track")},
    {"pit.base-heave", translatable("Safety against heave of the floor")},
    {"pit.uplift", translatable("Safety against uplift of the floor")},
    {"pit.floor-high", translatable("Floor above what the tool needs")},
    {"pipe.hole", translatable("Hole over the widest thing drawn in")},
    {"pipe.earth", translatable("Earth on the pipe, whole")},
    {"pipe.earth-arched", translatable("Earth on the pipe, arched")},
    {"pipe.live", translatable("Traffic and machines on the pipe")},
    {"pipe.safe-pull", translatable("Safe pull on the pipe")},
    {"pipe.pull", translatable("Pull-in, hole open")},
    {"pipe.pull-closed", translatable("Pull-in, the hole closed on the pipe")},
    {"pipe.push", translatable("Push-in, hole open")},
    {"pipe.hose", translatable("Pull on the air hose")},
    {"pipe.stretch", translatable("Stretch by the pull")},
    {"pipe.bend", translatable("Least radius of the path")},
    {"pipe.strain", translatable("Strain along the pipe as it follows the ground")},
    {"pipe.deflection", translatable("Flattening, ground closed on the pipe")},
    {"pipe.deflection-bare", translatable("Flattening, hole still open")},
    {"pipe.ring", translatable("Compression around the ring")},
    {"pipe.buckling-bare", translatable("Buckling, hole still open")},
    {"pipe.buckling", translatable("Buckling, ground closed on the pipe")},
    {"pipe.pressure", translatable("Tension around the ring by the pressure inside")},
    {"pipe.thermal", translatable("Change of length by temperature")},
    {"pipe.float", translatable("Weight of the empty pipe over the water it displaces")},
    {"air.pressure-low", translatable("Pressure at the tool")},
    {"air.demand", translatable("Air the tool takes")},
    {"air.line", translatable("Pressure at the inlet of the line")},
    {"air.standing", translatable("Pressure in the line at rest")},
    {"air.rating", translatable("Weakest part of the line")},
    {"air.harris", translatable("Loss of pressure by Harris, for comparison")},
    {"air.water", translatable("Water that comes out of the air")},
    {"air.oil", translatable("Oil for the bore")},
    {"air.mark", translatable("Nose at a mark of the hose")}};

constexpr TitleRow fixed_places[] = {{"bore", translatable("bore")},         {"launch-pit", translatable("launch pit")},
                                     {"exit-pit", translatable("exit pit")}, {"pipe", translatable("pipe")},
                                     {"air", translatable("air")},           {"site", translatable("site")}};

/// "pit.slope" in "pit.slope pit.depth", but for its beginning alone.
bool names(std::string_view codes, std::string_view code) {
  for (std::size_t at = 0; at < codes.size();) {
    const std::size_t end = std::min(codes.find(' ', at), codes.size());
    if (codes.substr(at, end - at) == code) return true;
    at = end + 1;
  }
  return false;
}

const char* meaning_in(std::string_view codes_with, std::string_view symbol) {
  for (const std::span<const SymbolGroup> all : {symbols_of_bore(), symbols_of_works()})
    for (const SymbolGroup& group : all)
      if (names(group.codes, codes_with))
        for (const SymbolRow& row : group.rows)
          if (row.symbol == symbol) return row.meaning;
  return nullptr;
}

/// "t_3" is a "t" of the third layer.
std::string_view without_number(std::string_view symbol) {
  const std::size_t under = symbol.rfind('_');
  const bool numbered = under != std::string_view::npos && under + 1 < symbol.size() &&
                        std::all_of(symbol.begin() + static_cast<std::ptrdiff_t>(under) + 1, symbol.end(),
                                    [](char c) { return c >= '0' && c <= '9'; });
  return numbered ? symbol.substr(0, under) : symbol;
}

/// Whole: "s" does not stand in "s_bore", nor "r" in "arc".
bool stands_in(std::string_view formula, std::string_view symbol) {
  const auto part_of_a_symbol = [](char c) {
    return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || static_cast<unsigned char>(c) >= 0x80;
  };
  const auto joins = [&](std::size_t at) {
    if (at >= formula.size()) return false;
    // Signs of arithmetic are of more than one byte too; letters that stand in symbols are Greek, or a prime.
    const auto lead = static_cast<unsigned char>(formula[at]);
    return lead < 0x80 ? part_of_a_symbol(formula[at]) : lead == 0xce || lead == 0xcf;
  };
  for (std::size_t at = formula.find(symbol); at != std::string_view::npos; at = formula.find(symbol, at + 1)) {
    std::size_t before = at;
    while (before > 0 && (static_cast<unsigned char>(formula[before - 1]) & 0xc0) == 0x80) --before;
    const bool joined = (before > 0 && joins(before - 1)) || joins(at + symbol.size()) ||
                        formula.substr(at + symbol.size()).starts_with("′");
    if (!joined) return true;
  }
  return false;
}

}  // namespace

std::string working_title(std::string_view code) {
  for (const TitleRow& row : titles)
    if (row.code == code) return std::string(translated(row.title));
  std::string words(code.substr(code.find('.') == std::string_view::npos ? 0 : code.find('.') + 1));
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

std::string symbol_meaning(std::string_view code, std::string_view symbol) {
  const char* meaning = meaning_in(code, symbol);
  if (!meaning) meaning = meaning_in(code, without_number(symbol));
  if (!meaning) meaning = meaning_in("*", symbol);
  return meaning ? std::string(translated(meaning)) : std::string();
}

std::vector<SymbolMeaning> symbols_of(const Working& working) {
  std::vector<SymbolMeaning> all;
  const auto add = [&](std::string_view symbol) {
    const bool there =
        std::any_of(all.begin(), all.end(), [&](const SymbolMeaning& one) { return one.symbol == symbol; });
    const std::string meaning = there ? std::string() : symbol_meaning(working.code, symbol);
    if (!meaning.empty()) all.push_back({std::string(symbol), meaning});
  };
  add(working.symbol);
  for (const WorkingInput& input : working.inputs) {
    const std::string_view plain = without_number(input.symbol);
    add(meaning_in(working.code, input.symbol) ? input.symbol : plain);
  }
  // Those that the formula has besides: a distribution, a piece of the path.
  for (const std::string_view codes : {working.code, std::string_view("*")})
    for (const std::span<const SymbolGroup> groups : {symbols_of_bore(), symbols_of_works()})
      for (const SymbolGroup& group : groups)
        if (names(group.codes, codes))
          for (const SymbolRow& row : group.rows)
            if (stands_in(working.formula, row.symbol)) add(row.symbol);
  return all;
}

std::string working_place(const Crossing& crossing, std::string_view subject) {
  for (const TitleRow& row : fixed_places)
    if (row.code == subject) return std::string(translated(row.title));
  for (const Utility& u : crossing.site.utilities)
    if (u.id == subject) return u.name.empty() ? std::string(translated_word(u.kind)) + " " + u.id : u.name;
  for (const SurfaceFeature& f : crossing.site.surface)
    if (f.id == subject) return f.name.empty() ? std::string(translated_word(f.kind)) + " " + f.id : f.name;
  for (const Tree& t : crossing.site.trees)
    if (t.id == subject) return t.name.empty() ? say("tree {}", t.id) : t.name;
  return std::string(subject);
}

}  // namespace burrow
