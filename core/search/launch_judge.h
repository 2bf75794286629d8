#pragma once
/// One launch of a map judged, cut down to what the search weighs.

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "burrow/check/prepared_site.h"
#include "burrow/search/launch_map.h"

namespace burrow::launch {

/// A limit at one launch. A broken one without a measure has no `limit`. Its margin is not bounded yet: what is
/// followed uphill needs to know how far beyond.
struct Entry {
  int key = 0;
  bool broken = false, stop = false;
  double margin = 0;
  std::optional<double> measured, limit, limit_base;
  [[nodiscard]] bool measurable() const { return limit.has_value(); }
};

/// Everything judged at one launch: of each limit the worst, all that are broken, and the least margins of the others.
struct Judged {
  MapPlace place;
  std::vector<Entry> entries;
  std::vector<int> missing;
  std::optional<double> chance_clean;
  double earth_m3 = 0, pit_depth_m = 0, length_m = 0;
  bool arrives = true;                    ///< the mean path ends at the exit face
  Verdict verdict = Verdict::incomplete;  ///< of the crossing with this launch, all findings among them
};

/// Numbers for limits: by code, subject and severity, in the order in which they are met.
class Keys {
 public:
  int of(const Finding& finding);
  /// Limits come in nearly the same order at each launch: the one after the last is tried first.
  void begin() { last_ = -1; }
  [[nodiscard]] const std::vector<Finding>& limits() const { return limits_; }

 private:
  std::unordered_map<std::string, int> numbers_;
  std::vector<Finding> limits_;
  std::vector<int> after_;  ///< by number, which came after it the last time
  int last_ = -1;
};

/// Least and greatest margin that a limit was met with, and how often.
struct Seen {
  double least = 0, greatest = 0;
  std::int64_t times = 0, broken = 0;
  void take(double margin, bool is_broken);
  void take(const Seen& other);
};

/// Judges launches one after the other, with numbers of its own for the limits.
class LaunchJudge {
 public:
  LaunchJudge(const Crossing& crossing, const Tables& tables, const PreparedSite& groundwork, MapOver over)
      : crossing_(crossing), entered_(crossing), tables_(tables), groundwork_(groundwork), over_(over) {}
  /// Goes on with the numbers of a map.
  void number_as(const Keys& keys) { keys_ = keys; }
  Judged at(const MapPlace& place);
  [[nodiscard]] const Keys& keys() const { return keys_; }
  /// By number, of all launches judged so far: also of limits that `Judged` left out.
  [[nodiscard]] const std::vector<Seen>& seen() const { return seen_; }

 private:
  void take(std::vector<Entry>& entries, const Finding& finding, bool broken);

  Crossing crossing_;
  const Crossing& entered_;
  const Tables& tables_;
  const PreparedSite& groundwork_;
  MapOver over_;
  Keys keys_;
  LaunchCache memory_;
  std::vector<Seen> seen_;
  std::vector<std::size_t> place_in_entries_;  // by number, one past; 0: not met at this launch
};

}  // namespace burrow::launch
