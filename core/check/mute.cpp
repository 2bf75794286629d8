#include "burrow/check/mute.h"
#include "burrow/base/say.h"
#include "burrow/crossing/statement.h"

#include <algorithm>
#include <array>

namespace burrow {

namespace {

bool about(const Mute& mute, const Finding& finding) {
  return mute.code == finding.code && mute.subject == finding.subject;
}

}  // namespace

Result<std::vector<Mute>> with_mute(const Crossing& crossing, const Finding& finding, const MuteWords& words) {
  if (!says_something(words.reason))
    return fail(said("reason"), said("nothing"),
                said("in a few words why this finding may stand, as “cut and capped, 2 May”"));
  std::vector<Mute> muted = crossing.muted;
  auto at = std::find_if(muted.begin(), muted.end(), [&](const Mute& m) { return about(m, finding); });
  if (at == muted.end()) at = muted.insert(muted.end(), Mute{});
  at->code = finding.code;
  at->subject = finding.subject;
  at->reason = words.reason;
  at->by = words.by;
  at->date = words.date;
  at->measured = finding.measured;
  return muted;
}

std::vector<Mute> without_mute(const Crossing& crossing, const Finding& finding) {
  std::vector<Mute> muted = crossing.muted;
  std::erase_if(muted, [&](const Mute& m) { return about(m, finding); });
  return muted;
}

const Mute* mute_of(const Crossing& crossing, const Finding& finding) {
  const auto at =
      std::find_if(crossing.muted.begin(), crossing.muted.end(), [&](const Mute& m) { return about(m, finding); });
  return at == crossing.muted.end() ? nullptr : &*at;
}

bool can_hurt_people(const Finding& finding) {
  static constexpr std::array codes{
      "air.pressure-high",  "footing.influence",        "pit.air",         "pit.base-heave",
      "pit.edge-load",      "pit.footing-spread",       "pit.inflow",      "pit.plant",
      "pit.slope",          "pit.slope-by-calculation", "pit.soil-type",   "pit.soil-unconfirmed",
      "pit.track-spread",   "pit.unprotected",          "pit.uplift",      "pit.utility",
      "pipe.hose-unrated",  "site.camera-before-found", "utility.contact", "utility.encroachment",
      "utility.expose",     "utility.separation",       "utility.strain",  "trials.contact",
      "trials.encroachment"};
  if (finding.severity == Severity::note) return false;
  return finding.severity == Severity::stop || std::find(codes.begin(), codes.end(), finding.code) != codes.end();
}

}  // namespace burrow
