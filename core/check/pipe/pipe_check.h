#pragma once
/// What the checks of the pipe share.

#include <string>

#include "burrow/pipe/material.h"
#include "burrow/pipe/section.h"
#include "check_run.h"
#include "loads_above.h"

namespace burrow {

struct PipeUnderCheck {
  const Pipe& pipe;
  const PipeStrength* strength = nullptr;  ///< nothing is known of the material
  std::optional<PipeSection> section;
  std::optional<double> widest_m;
  bool water_known = false;
  const LoadsAbove& above;
  std::vector<const PathPoint*> places{};  ///< on the path, of each of `Assessment::loads`
  std::string subject = "pipe";

  /// Warmest in use. Not entered: the warmest that the rows of its material tell, since nobody knows what it will
  /// carry.
  [[nodiscard]] Temperature in_service() const;
  /// Whether a warmer pipe bears less.
  [[nodiscard]] bool minds_warmth() const { return strength && !strength->derating.empty(); }
};

/// A limit of a check: where it comes from, and what breaking it means.
struct PipeLimit {
  double value = 0;
  bool at_least = false;
  Severity severity = Severity::caution;
  Source source;
  bool near_counts = true;  ///< whether coming near it is worth saying
};

/// One result: the check, its finding where the limit is broken or near, its working.
struct PipeResult {
  std::string_view code;
  std::string_view name;
  double value = 0;
  std::string_view unit;
  const PathPoint* place = nullptr;
  Phrase text{};
};

/// Writes a judged check down. The working takes code, value, unit and limit from it.
void judge_pipe(CheckRun& run, const PipeUnderCheck& pipe, const PipeResult& result, const PipeLimit& limit,
                Working working);
/// Writes down what is told and not judged.
void report_pipe(CheckRun& run, const PipeUnderCheck& pipe, const PipeResult& result, Working working);
/// Writes down that a check could not be done, and what is not known.
void leave_out(CheckRun& run, std::string_view code, std::string_view name, Phrase what);

/// Point of the path under one of `Assessment::loads`.
const PathPoint* place_of(const CheckRun& run, const PipeUnderCheck& pipe, const LoadPoint& load);

/// All of them, the loads made ready.
void check_pipe(CheckRun& run, const LoadsAbove& above, std::vector<const PathPoint*> places);
void check_pipe_hole(CheckRun& run, const PipeUnderCheck& pipe);
void check_pipe_loads(CheckRun& run, const PipeUnderCheck& pipe);
void check_pipe_pull(CheckRun& run, const PipeUnderCheck& pipe);
void check_pipe_ring(CheckRun& run, const PipeUnderCheck& pipe);
void check_pipe_along(CheckRun& run, const PipeUnderCheck& pipe);

}  // namespace burrow
