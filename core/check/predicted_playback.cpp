#include "burrow/check/predicted_playback.h"

namespace burrow {

Playback predicted_playback(const Assessment& assessment, const Tool& tool) {
  Playback bore;
  const auto& advance = assessment.advance;
  if (advance.points.size() != assessment.bore.points.size() || advance.points.size() < 2) return bore;
  bore.tool_length_m = tool.length.m;
  bore.tool_diameter_m = tool.diameter.m;
  const double end_m = advance.stop_s_m.value_or(assessment.bore.points.back().s_m);
  for (std::size_t i = 0; i < advance.points.size(); ++i) {
    if (assessment.bore.points[i].s_m > end_m) break;
    bore.path.points.push_back(assessment.bore.points[i]);
    bore.time_s.push_back(advance.points[i].time.p50_s);
  }
  bore.path.length_m = bore.path.points.empty() ? 0 : bore.path.points.back().s_m;
  bore.path.ends = assessment.bore.ends;
  for (const Mark& mark : assessment.marks)
    if (mark.nose_m && *mark.nose_m <= bore.path.length_m) bore.marks_m.push_back(*mark.nose_m);
  return bore.end_s() > 0 ? bore : Playback{};
}

}  // namespace burrow
