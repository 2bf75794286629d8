#include "burrow/document/answers_at_once.h"

#include <algorithm>
#include <cmath>

#include "burrow/crossing/statement.h"

namespace burrow {

namespace {

/// In plan, from a vertex to the straight line from launch face to exit face.
double away_from_bore(const Crossing& crossing, const PathVertex& at) {
  const double x0 = crossing.bore.launch.station.m, y0 = crossing.bore.launch.offset->m;
  const double dx = crossing.bore.exit.station.m - x0, dy = crossing.bore.exit.offset->m - y0;
  const double square = dx * dx + dy * dy;
  const double share = square > 0 ? std::clamp(((at.x_m - x0) * dx + (at.y_m - y0) * dy) / square, 0.0, 1.0) : 0;
  return std::hypot(at.x_m - x0 - share * dx, at.y_m - y0 - share * dy);
}

/// Whether a finding asks why the line ends there.
bool asked_about(const std::vector<Finding>& findings, const std::string& utility, const PathVertex& at) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) {
    return f.code == "missing.utility-course" && f.subject == utility && f.station_m == at.x_m && f.offset_m == at.y_m;
  });
}

}  // namespace

std::vector<OpenEnd> open_ends(const Crossing& crossing, const std::vector<Finding>& findings) {
  std::vector<OpenEnd> open;
  for (const Utility& utility : crossing.site.utilities) {
    if (utility.path.empty()) continue;
    const auto asks = [&](const PathVertex& end) {
      return away_from_bore(crossing, end) <= near_end_m || asked_about(findings, utility.id, end);
    };
    if (!utility.ends.first && asks(utility.path.front())) open.push_back({utility.id, true});
    if (!utility.ends.last && asks(utility.path.back())) open.push_back({utility.id, false});
  }
  return open;
}

Site with_ends(const Crossing& crossing, const std::vector<OpenEnd>& ends, LineEnd meaning) {
  Site site = crossing.site;
  for (const OpenEnd& end : ends)
    for (Utility& utility : site.utilities)
      if (utility.id == end.utility) (end.first ? utility.ends.first : utility.ends.last) = meaning;
  return site;
}

std::vector<std::string> open_background(const Crossing& crossing, const std::optional<Date>& on) {
  std::vector<std::string> open;
  for (const Background& line : crossing.site.background)
    if (!declared(line.not_a_service, on)) open.push_back(line.id);
  return open;
}

Site with_no_services(const Crossing& crossing, const Statement& statement, const std::optional<Date>& on) {
  Site site = crossing.site;
  for (const std::string& id : open_background(crossing, on))
    for (Background& line : site.background) {
      if (line.id != id) continue;
      line.not_a_service.how = statement.how;
      line.not_a_service.by = statement.by;
      line.not_a_service.date = statement.date;
    }
  return site;
}

Site with_service(const Crossing& crossing, const std::string& background) {
  Crossing draft = crossing;
  const auto& all = crossing.site.background;
  const auto line = std::find_if(all.begin(), all.end(), [&](const Background& one) { return one.id == background; });
  if (line == all.end()) return draft.site;
  for (const PlanLine& piece : line->lines) {
    Utility utility;
    utility.id = free_id(draft, "u");
    utility.name = line->name.empty() ? line->layer : line->name;
    utility.recorded.source = line->source;
    for (const PlanPoint& at : piece) utility.path.push_back({at.x_m, at.y_m, std::nullopt});
    draft.site.utilities.push_back(std::move(utility));
  }
  std::erase_if(draft.site.background, [&](const Background& one) { return one.id == background; });
  return draft.site;
}

std::vector<std::string> lone_holes(const Crossing& crossing) {
  std::vector<std::string> lone;
  for (const TestHole& hole : crossing.site.test_holes)
    if (std::none_of(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                     [&](const Utility& utility) { return utility.id == hole.utility; }))
      lone.push_back(hole.id);
  return lone;
}

}  // namespace burrow
