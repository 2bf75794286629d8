#include "burrow/check/mute.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "burrow/base/phrase.h"
#include "burrow/check/fingerprint.h"
#include "burrow/crossing/statement.h"

namespace burrow {

namespace {

bool same_name(const Mute& mute, const Finding& finding) {
  return mute.code == finding.code && mute.subject == finding.subject;
}

/// Nor about another finding of that code, as where both pits meet the same road.
bool about(const Mute& mute, const Finding& finding, const Crossing& crossing) {
  return same_name(mute, finding) && !beside_each_other(mute.fingerprint, fingerprint_of(crossing, finding));
}

/// Worse by more than the last digit shown.
bool worse_than_muted(const Finding& finding, const Mute& mute) {
  const double slack = 0.005 * std::max(std::abs(*mute.measured), finding.limit ? std::abs(*finding.limit) : 0.0);
  return finding.at_least ? !(*finding.measured >= *mute.measured - slack)
                          : !(*finding.measured <= *mute.measured + slack);
}

/// Among several findings of one code a mute is that one's which it was given for, else that one's which is nearest.
double distance(const Crossing& crossing, const Mute& mute, const Finding& finding) {
  if (!mute.fingerprint.empty() && mute.fingerprint == fingerprint_of(crossing, finding)) return -1;
  if (mute.measured && finding.measured) return std::abs(*mute.measured - *finding.measured);
  return std::numeric_limits<double>::infinity();
}

}  // namespace

Result<std::vector<Mute>> with_mute(const Crossing& crossing, const Finding& finding, const MuteWords& words) {
  if (!says_something(words.reason))
    return fail(translatable("reason"), translatable("nothing"),
                translatable("in a few words why this finding may stand, as “cut and capped, 2 May”"));
  if (!says_something(words.by))
    return fail(translatable("name"), translatable("nothing"), translatable("who says so, by name or initials"),
                "name");
  if (!date_of(words.date))
    return fail(translatable("date"), translatable("nothing"), translatable("the day, as 2026-05-02"));
  std::vector<Mute> muted = crossing.muted;
  auto at = std::find_if(muted.begin(), muted.end(), [&](const Mute& m) { return about(m, finding, crossing); });
  if (at == muted.end()) at = muted.insert(muted.end(), Mute{});
  at->code = finding.code;
  at->subject = finding.subject;
  at->reason = words.reason;
  at->by = words.by;
  at->date = words.date;
  at->measured = finding.measured;
  at->fingerprint = fingerprint_of(crossing, finding);
  return muted;
}

std::vector<Mute> without_mute(const Crossing& crossing, const Finding& finding) {
  std::vector<Mute> muted = crossing.muted;
  std::erase_if(muted, [&](const Mute& m) { return same_name(m, finding); });
  return muted;
}

const Mute* mute_of(const Crossing& crossing, const Finding& finding) {
  const auto at = std::find_if(crossing.muted.begin(), crossing.muted.end(),
                               [&](const Mute& m) { return about(m, finding, crossing); });
  return at == crossing.muted.end() ? nullptr : &*at;
}

std::optional<MuteFault> fault_of_words(const Mute& mute, const std::optional<Date>& on) {
  if (!says_something(mute.reason)) return MuteFault::no_reason;
  if (!says_something(mute.by)) return MuteFault::no_name;
  if (!dated(mute.date, on)) return MuteFault::no_date;
  return std::nullopt;
}

std::optional<MuteFault> fault_of_matter(const Crossing& crossing, const Mute& mute, const Finding& finding) {
  if (finding.measured && mute.measured)
    return worse_than_muted(finding, mute) ? std::optional(MuteFault::worse) : std::nullopt;
  if (mute.fingerprint.empty()) return MuteFault::not_kept;
  return mute.fingerprint == fingerprint_of(crossing, finding) ? std::nullopt : std::optional(MuteFault::changed);
}

const char* why_void(MuteFault fault) {
  switch (fault) {
    case MuteFault::no_reason:
      return translatable("no reason");
    case MuteFault::no_name:
      return translatable("no name");
    case MuteFault::no_date:
      return translatable("no date of a day that has come");
    case MuteFault::nothing_there:
      return translatable("there is no such finding now");
    case MuteFault::not_kept:
      return translatable("what it was given for is not kept with it");
    case MuteFault::worse:
      return translatable("the number has got worse since");
    case MuteFault::changed:
      break;
  }
  return translatable("what it was given for has changed");
}

std::vector<VoidMute> apply_mutes(const Crossing& crossing, const std::optional<Date>& on,
                                  std::vector<Finding>& findings) {
  std::vector<VoidMute> voids;
  for (const Mute& mute : crossing.muted) {
    std::optional<MuteFault> fault = fault_of_words(mute, on);
    Finding* its = nullptr;
    if (!fault) {
      fault = MuteFault::nothing_there;
      double least = std::numeric_limits<double>::infinity();
      for (Finding& finding : findings) {
        if (finding.muted || !same_name(mute, finding)) continue;
        if (const auto other = fault_of_matter(crossing, mute, finding)) {
          if (!its) fault = other;
          continue;
        }
        const double away = distance(crossing, mute, finding);
        if (its && !(away < least)) continue;
        its = &finding;
        least = away;
      }
    }
    if (its)
      its->muted = Muted{mute.reason, mute.by, mute.date};
    else
      voids.push_back({&mute, *fault});
  }
  return voids;
}

bool can_hurt_people(const Finding& finding) {
  static constexpr std::array codes{"air.pressure-high",
                                    "air.rating-unknown",
                                    "air.standing",
                                    "bore.daylight-chance",
                                    "footing.influence",
                                    "pipe.hose-unrated",
                                    "pit.air",
                                    "pit.base-heave",
                                    "pit.edge-load",
                                    "pit.footing-spread",
                                    "pit.inflow",
                                    "pit.plant",
                                    "pit.plant-heaviest",
                                    "pit.slope",
                                    "pit.slope-by-calculation",
                                    "pit.slope-conditions",
                                    "pit.soil-type",
                                    "pit.soil-unconfirmed",
                                    "pit.track-spread",
                                    "pit.unprotected",
                                    "pit.uplift",
                                    "pit.utility",
                                    "pit.utility-near",
                                    "site.camera-before-found",
                                    "trials.contact",
                                    "trials.daylight",
                                    "trials.encroachment",
                                    "utility.contact",
                                    "utility.encroachment",
                                    "utility.expose",
                                    "utility.separation",
                                    "utility.strain"};
  if (finding.severity == Severity::note) return false;
  return finding.severity == Severity::stop || finding.can_hurt ||
         std::find(codes.begin(), codes.end(), finding.code) != codes.end();
}

bool counts_in_verdict(const Finding& finding) {
  if (finding.severity == Severity::stop || finding.missing) return true;
  return finding.severity == Severity::caution && (!finding.muted || can_hurt_people(finding));
}

}  // namespace burrow
