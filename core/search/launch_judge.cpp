#include "launch_judge.h"

#include <algorithm>
#include <tuple>

#include "burrow/check/mute.h"

namespace burrow::launch {

namespace {

/// Of the limits that are kept only those nearest to being broken are remembered.
constexpr std::size_t kept_remembered = 40;

/// A chance that is to be reached counts by what is left to fail: 96 % where 90 % is wanted uses 40 % of the room. By
/// the chance itself no bore, however sure, would be more than a ninth above the limit.
double margin_in_search(const Finding& finding) {
  const bool chance = finding.code == "bore.exit-window" && finding.measured && finding.limit;
  if (!chance) return *finding.margin;
  const double allowed = 1 - *finding.limit;
  return allowed > 0 ? (*finding.measured - *finding.limit) / allowed : *finding.margin;
}

/// That the ground lets it through, and that it comes out inside the exit pit.
double chance_of_arrival(const Assessment& answer) {
  if (answer.bore.ends != PathEnd::exit) return 0.0;
  return answer.arrival.chance_inside_exit_pit.value_or(0) * (1 - answer.chance_of_refusal.value_or(0));
}

}  // namespace

int Keys::of(const Finding& finding) {
  const auto is = [&](int number) {
    const Finding& known = limits_[static_cast<std::size_t>(number)];
    return known.severity == finding.severity && known.code == finding.code && known.subject == finding.subject;
  };
  const auto after_last = static_cast<std::size_t>(last_ + 1);  // 0: the first of a launch
  if (after_.size() <= limits_.size()) after_.resize(limits_.size() + 1, -1);
  if (const int guess = after_[after_last]; guess >= 0 && is(guess)) return last_ = guess;
  std::string key = finding.code;
  key += '\n';
  key += finding.subject;
  key += static_cast<char>('0' + static_cast<int>(finding.severity));
  const auto [at, added] = numbers_.try_emplace(std::move(key), static_cast<int>(limits_.size()));
  if (added) limits_.push_back(finding);
  after_[after_last] = at->second;
  return last_ = at->second;
}

void Seen::take(double margin, bool is_broken) {
  least = times == 0 ? margin : std::min(least, margin);
  greatest = times == 0 ? margin : std::max(greatest, margin);
  ++times;
  if (is_broken) ++broken;
}

void Seen::take(const Seen& other) {
  if (other.times == 0) return;
  least = times == 0 ? other.least : std::min(least, other.least);
  greatest = times == 0 ? other.greatest : std::max(greatest, other.greatest);
  times += other.times;
  broken += other.broken;
}

void LaunchJudge::take(std::vector<Entry>& entries, const Finding& finding, bool broken) {
  if (finding.severity == Severity::note) return;
  Entry entry;
  entry.key = keys_.of(finding);
  entry.broken = broken;
  entry.stop = finding.severity == Severity::stop;
  entry.measured = finding.measured;
  if (finding.margin) entry.limit = finding.limit;
  entry.limit_base = finding.limit_base;
  entry.margin = entry.measurable() ? margin_in_search(finding) : -1;
  const auto number = static_cast<std::size_t>(entry.key);
  if (number >= place_in_entries_.size()) place_in_entries_.resize(number + 1, 0);
  if (const std::size_t place = place_in_entries_[number]; place > 0) {
    if (entry.margin < entries[place - 1].margin) entries[place - 1] = entry;
    return;
  }
  entries.push_back(entry);
  place_in_entries_[number] = entries.size();
}

Judged LaunchJudge::at(const MapPlace& place) {
  crossing_.bore.launch = launch_at(entered_, over_, place);
  keys_.begin();
  JudgedLaunch launch = judge_launch(crossing_, tables_, groundwork_, &memory_);
  const Assessment& answer = launch.answer;
  Judged judged;
  judged.place = place;
  for (const Finding& finding : answer.findings) {
    if (finding.missing)
      judged.missing.push_back(keys_.of(finding));
    else if (!finding.muted || counts_in_verdict(finding))
      take(judged.entries, finding, true);
  }
  for (const Finding& finding : launch.passed) take(judged.entries, finding, false);
  memory_.room = std::move(launch.passed);

  if (seen_.size() < keys_.limits().size()) seen_.resize(keys_.limits().size());
  for (const Entry& entry : judged.entries) {
    seen_[static_cast<std::size_t>(entry.key)].take(entry.margin, entry.broken);
    place_in_entries_[static_cast<std::size_t>(entry.key)] = 0;
  }
  const auto first_kept =
      std::partition(judged.entries.begin(), judged.entries.end(), [](const Entry& entry) { return entry.broken; });
  if (judged.entries.end() - first_kept > static_cast<std::ptrdiff_t>(kept_remembered)) {
    const auto last = first_kept + static_cast<std::ptrdiff_t>(kept_remembered);
    // Numbers differ from thread to thread: equal margins are told apart by what they are of.
    std::nth_element(first_kept, last, judged.entries.end(), [this](const Entry& a, const Entry& b) {
      if (a.margin != b.margin) return a.margin < b.margin;
      const Finding &one = keys_.limits()[static_cast<std::size_t>(a.key)],
                    &other = keys_.limits()[static_cast<std::size_t>(b.key)];
      return std::tie(one.code, one.subject, one.severity) < std::tie(other.code, other.subject, other.severity);
    });
    judged.entries.erase(last, judged.entries.end());
  }
  const double unknown = answer.chance_unknown_service.value_or(0);
  if (answer.bore.ends != PathEnd::exit)
    judged.chance_clean = 0.0;
  else if (answer.contact_chance_any)
    judged.chance_clean = chance_of_arrival(answer) * (1 - *answer.contact_chance_any) * (1 - unknown);
  judged.pit_depth_m = std::max(answer.launch_pit.depth_m, answer.exit_pit.depth_m);
  judged.length_m = answer.bore.length_m;
  judged.earth_m3 = answer.launch_pit.volume_m3 + answer.exit_pit.volume_m3;
  judged.arrives = answer.bore.ends == PathEnd::exit;
  judged.verdict = answer.verdict;
  return judged;
}

}  // namespace burrow::launch
