#include "burrow/import/scale.h"

#include <algorithm>
#include <cmath>

#include "burrow/language/say.h"

namespace burrow {

namespace {

constexpr double most_times = 3;
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

std::optional<std::string> scale_doubt(const ImportFile& file, const std::optional<CrossingLine>& line,
                                       const std::optional<Length>& open_crossing) {
  const FoundFrame& frame = frame_of(file);
  const ScaleView view = scale_of(file, line);
  if (view.is_said || !frame.crs.empty() || frame.geographic) return std::nullopt;
  const Length shortest{open_crossing.value_or(usual_shortest).m / most_times};
  const Length longest{open_crossing.value_or(usual_longest).m * most_times};
  if (view.line && !(view.line->m >= shortest.m && view.line->m <= longest.m))
    return say("in {} the crossing line is {:.2f} m long; {:.1f} to {:.0f} m would be like {}", word_of(view.unit),
               view.line->m, shortest.m, longest.m,
               open_crossing ? translated("the open crossing") : translated("an unsteered bore"));
  const double widest = std::max(view.wide.m, view.high.m);
  if (view.line && widest > 0 && widest < view.line->m / most_times)
    return say("in {} the whole plan is {:.3f} m wide, the crossing line {:.2f} m long", word_of(view.unit), widest,
               view.line->m);
  if (widest > widest_plan.m) return say("in {} the plan is {:.0f} km wide", word_of(view.unit), widest / 1000);
  return std::nullopt;
}

}  // namespace burrow
