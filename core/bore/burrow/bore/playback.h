#pragma once
/// A bore as it happens: where the tool is at a time of it. Nothing here knows a clock; the same time gives the same
/// place, so that any moment can be drawn, tested or written to a file.

#include <vector>

#include "burrow/bore/path.h"

namespace burrow {

struct Playback {
  BorePath path;
  std::vector<double> time_s;   ///< since the start, when the nose is at each point of the path; never falls
  std::vector<double> marks_m;  ///< arc lengths of the nose at the hose marks, rising
  double tool_length_m = 0, tool_diameter_m = 0;

  [[nodiscard]] bool empty() const { return path.points.size() < 2; }
  [[nodiscard]] double end_s() const { return time_s.empty() ? 0 : time_s.back(); }
};

/// Arc length of the nose at a time, and the first time it is there; both stay within the bore.
/// Range: a path of two points or more.   Evidence: Playback.*
double nose_at(const Playback& bore, double time_s);
double time_at(const Playback& bore, double nose_m);
/// Metres a second at that time; 0 before the start and after the end.
double pace_at(const Playback& bore, double time_s);

/// The axis between two arc lengths, ends included. Before the launch face it goes on straight: there the tool lies on
/// its cradle.
std::vector<PathPoint> axis_between(const Playback& bore, double from_m, double to_m);

/// How much of its final heave the ground has at a place so far behind the nose (negative: ahead of it), over an axis
/// so deep: (1 + u/√(u² + h²))/2, a line of ground losses that ends at the nose. Source: Sagaseta 1987, point sources
/// summed along the bore (from memory).   Range: depth > 0. Evidence: Playback.Heave_*
double heave_share(double behind_nose_m, double depth_m);

/// The mark next to come, and the last one passed; -1: none.
int next_mark(const Playback& bore, double nose_m);
int last_mark(const Playback& bore, double nose_m);

/// A bore known only at some places and times ("nose at 1.50 m after 61 s"): straight in between.
/// Range: arc lengths and times rise; the first is the start.   Evidence: Playback.Readings_*
std::vector<double> times_between(const BorePath& path, const std::vector<double>& nose_m,
                                  const std::vector<double>& time_s);

}  // namespace burrow
