#include "burrow/file/clip_file.h"

#include <algorithm>
#include <array>

#include "burrow/crossing/blank.h"
#include "burrow/file/crossing_file.h"
#include "json_tree.h"

namespace burrow {

namespace {

constexpr std::string_view clip_format = "burrowline-clip";
constexpr std::array<std::string_view, 8> lists{"strata", "strips", "surface",   "boundaries",
                                                "trees",  "plant",  "utilities", "test_holes"};

const Json* member_of(const Json& of, std::string_view key) {
  if (!of.object()) return nullptr;
  for (const JsonMember& member : *of.object())
    if (member.key == key) return &member.value;
  return nullptr;
}

bool is_list(std::string_view key) {
  return std::find(lists.begin(), lists.end(), key) != lists.end();
}

/// A crossing that holds these things and what a file needs besides.
Crossing around(Site clip) {
  Crossing crossing = blank_crossing();
  clip.ground = crossing.site.ground;
  if (clip.strata.empty()) clip.strata = crossing.site.strata;
  clip.water.reset();
  clip.ground_points.clear();
  clip.background.clear();
  clip.georeference.reset();
  clip.utility_search = {};
  clip.nothing_above = {};
  clip.extra.clear();
  crossing.site = std::move(clip);
  return crossing;
}

}  // namespace

Site without_evidence(Site clip) {
  for (Stratum& stratum : clip.strata) stratum.known = Stratum().known;
  for (SurfaceFeature& feature : clip.surface) {
    feature.permission = SurfaceFeature().permission;
    feature.permit.clear();
    feature.rescue = {};
    feature.levels = {};
  }
  for (Utility& utility : clip.utilities) {
    utility.located = {};
    utility.abandonment = {};
    utility.agreed = {};
    utility.ends = {};
  }
  for (TestHole& hole : clip.test_holes) {
    hole.elevation.reset();
    hole.date.reset();
    hole.by.clear();
    hole.agreed = {};
  }
  return clip;
}

std::string write_clip(const Site& clip) {
  const bool no_strata = clip.strata.empty();
  // A hole whose utility stays behind belongs to none.
  Site alone = clip;
  for (TestHole& hole : alone.test_holes)
    if (std::none_of(alone.utilities.begin(), alone.utilities.end(),
                     [&](const Utility& utility) { return utility.id == hole.utility; }))
      hole.utility.clear();
  const Result<Json> whole = parse_json(write_crossing(around(std::move(alone))));
  const Json* site = whole ? member_of(*whole, "site") : nullptr;
  Json::Object kept;
  if (site)
    for (const JsonMember& member : *site->object())
      if (is_list(member.key) && !(no_strata && member.key == "strata")) kept.push_back(member);
  return pretty_json(Json(Json::Object{{"format", Json(clip_format)},
                                       {"version", Json(std::int64_t{known_file_version})},
                                       {"site", Json(std::move(kept))}}));
}

Result<Site> read_clip(std::string_view text, const Tables& tables) {
  const Result<Json> clip = parse_json(text);
  if (!clip) return tl::unexpected(clip.error());
  const Json* named = member_of(*clip, "format");
  if (!named || !named->text() || *named->text() != clip_format)
    return fail("/format", named ? shown_json(*named) : std::string("nothing"), Phrase(std::string(clip_format)));
  const Json* version = member_of(*clip, "version");
  if (!version || !version->number() || version->number()->value > known_file_version)
    return fail("/version", version ? shown_json(*version) : std::string("nothing"),
                translatable("a version that this program knows"));
  const Json* copied = member_of(*clip, "site");
  Result<Json> whole = parse_json(write_crossing(around({})));
  if (!whole) return tl::unexpected(whole.error());
  bool strata = false;
  if (copied && copied->object())
    for (JsonMember& member : std::get<Json::Object>(whole->value)) {
      if (member.key != "site") continue;
      auto& site = std::get<Json::Object>(member.value.value);
      for (const JsonMember& list : *copied->object()) {
        if (!is_list(list.key)) continue;
        strata = strata || list.key == "strata";
        std::erase_if(site, [&](const JsonMember& old) { return old.key == list.key; });
        site.push_back(list);
      }
    }
  const Result<Crossing> crossing = read_crossing(compact_json(*whole), tables);
  if (!crossing) return tl::unexpected(crossing.error());
  Site site = crossing->site;
  site.ground.clear();
  if (!strata) site.strata.clear();
  return without_evidence(std::move(site));
}

}  // namespace burrow
