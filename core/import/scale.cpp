#include "burrow/import/scale.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/quantity.h"
#include "burrow/language/say.h"
#include "survey_text.h"

namespace burrow {

namespace {

constexpr double most_times = 3;
constexpr double much_wider = 10;
constexpr Length widest_plan{50'000.0};

}  // namespace

ScaleView scale_of(const ImportFile& file, const std::optional<CrossingLine>& line) {
  ScaleView view;
  view.unit = plan_unit(file);
  view.is_said = file.unit.has_value() || file.unit_is_confirmed;
  view.is_stated = frame_of(file).unit.has_value();
  const double metres = metres_in(view.unit);
  if (const auto extent = extent_of(*file.found)) {
    view.wide = Length{(extent->high_x - extent->low_x) * metres};
    view.high = Length{(extent->high_y - extent->low_y) * metres};
  }
  if (line)
    view.line = Length{std::hypot(line->exit.x_m - line->launch.x_m, line->exit.y_m - line->launch.y_m) * metres};
  return view;
}

FirstPlan first_plan(const ImportFile& first, const std::optional<CrossingLine>& line) {
  const ScaleView view = scale_of(first, line);
  if (!frame_of(first).geographic) return {Length{std::max(view.wide.m, view.high.m)}, view.line};
  FirstPlan plan;
  constexpr double degree_m = 111'320;  // of the equator: to tell a plan from one of another scale
  if (line) {
    const double shorter = std::cos(line->launch.y_m * pi / 180);
    plan.crossing =
        Length{degree_m * std::hypot((line->exit.x_m - line->launch.x_m) * shorter, line->exit.y_m - line->launch.y_m)};
  }
  return plan;
}

std::optional<std::string> scale_doubt(const ImportFile& file, const std::optional<CrossingLine>& line,
                                       const std::optional<Length>& open_crossing,
                                       const std::optional<FirstPlan>& beside) {
  const FoundFrame& frame = frame_of(file);
  const ScaleView view = scale_of(file, line);
  const bool states_system = !file.said_frame && !frame.crs.empty();
  if (view.is_said || states_system || frame.geographic) return std::nullopt;
  if (file.found->frame.unit_is_foreign)
    return std::string(translated("the file states a unit that is none of m, mm, cm, ft, in and US survey ft"));
  if (frame.crs.empty() && survey::look_like_degrees(*file.found))
    return std::string(translated("its numbers lie as degrees of longitude and latitude do"));
  const Length shortest{open_crossing.value_or(usual_shortest).m / most_times};
  const Length longest{open_crossing.value_or(usual_longest).m * most_times};
  if (view.line && !(view.line->m >= shortest.m && view.line->m <= longest.m))
    return say("in {} the crossing line is {:.2f} m long; {:.1f} to {:.0f} m would be like {}", word_of(view.unit),
               view.line->m, shortest.m, longest.m,
               open_crossing ? translated("the open crossing") : translated("an unsteered bore"));
  const double widest = std::max(view.wide.m, view.high.m);
  const auto crossing = view.line ? view.line : beside ? beside->crossing : std::nullopt;
  if (crossing && widest > 0 && widest < crossing->m / most_times)
    return say("in {} the whole plan is {:.3f} m wide, the crossing line {:.2f} m long", word_of(view.unit), widest,
               crossing->m);
  const bool silent = frame.crs.empty() && !view.is_stated;
  if (silent && beside && beside->wide.m > 0 &&
      widest > much_wider * std::max(beside->wide.m, crossing.value_or(Length{0}).m))
    return say("in {} the plan is {:.0f} m wide, that of the first file {:.0f} m", word_of(view.unit), widest,
               beside->wide.m);
  if (widest > widest_plan.m) return say("in {} the plan is {:.0f} km wide", word_of(view.unit), widest / 1000);
  return std::nullopt;
}

std::optional<std::string> scale_doubt(const std::vector<ImportFile>& files, std::size_t which,
                                       const std::optional<CrossingLine>& line,
                                       const std::optional<Length>& open_crossing) {
  if (which == 0) return scale_doubt(files.front(), line, open_crossing);
  return scale_doubt(files.at(which), std::nullopt, open_crossing, first_plan(files.front(), line));
}

bool heights_in_doubt(const ImportFile& file) {
  const FoundFrame& frame = frame_of(file);
  if (file.height_unit || frame.height_unit || file.unit || frame.crs.empty() || frame.geographic) return false;
  if (frame.unit == FileUnit::metre) return false;
  const std::vector<LayerSummary> layers = summaries(*file.found);
  for (std::size_t i = 0; i < layers.size() && i < file.layers.size(); ++i) {
    const LayerChoice& choice = file.layers[i];
    const bool counts = choice.meaning == Meaning::ground || choice.on_ground || choice.meaning == Meaning::undecided ||
                        utility_kind(choice.meaning).has_value();
    if (counts && layers[i].with_height + layers[i].rasters > 0) return true;
  }
  return false;
}

}  // namespace burrow
