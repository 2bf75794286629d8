/// Points of imported files: structures at which lies a service, and points of which nobody knows what they are.

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/language/say.h"
#include "importer.h"
#include "importing.h"

namespace burrow {

namespace {

/// Least distance in plan of a point from a polyline.
double away_from_line_m(const PathVertex& p, const std::vector<PathVertex>& line) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < line.size(); ++i) {
    const PathVertex &a = line[i], &b = line[std::min(i + 1, line.size() - 1)];
    const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, length2 = dx * dx + dy * dy;
    const double t = length2 > 0 ? std::clamp(((p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy) / length2, 0.0, 1.0) : 0.0;
    least = std::min(least, std::hypot(p.x_m - a.x_m - t * dx, p.y_m - a.y_m - t * dy));
  }
  return least;
}

}  // namespace

void Importer::say_gaps(const LayerLines& lines) {
  const auto near = std::count_if(lines.gaps.begin(), lines.gaps.end(),
                                  [&](const auto& gap) { return !inside_box(gap, asked_box_).empty(); });
  if (near > 0)
    ask(where_,
        say_count("{} gap between points near the crossing line", "{} gaps between points near the crossing line",
                  static_cast<std::size_t>(near)),
        translated("the points are more than 30 m apart and were not joined: nobody knows what lies between"));
}

void Importer::add_point(UtilityKind kind, const PlacedFile& file, const FoundFeature& feature, const PathVertex& at,
                         double away_m) {
  if (out_.utilities.size() >= bounds_.most_utilities) {
    const auto farthest = std::max_element(away_m_.begin(), away_m_.end());
    if (farthest == away_m_.end() || *farthest <= bounds_.asked_within.m) return leave_out_for_room(feature, away_m);
    const auto at_place = farthest - away_m_.begin();
    leave_out(where_, out_.utilities[static_cast<std::size_t>(at_place)].name,
              say_count("more than {} line of utilities near the crossing",
                        "more than {} lines of utilities near the crossing", bounds_.most_utilities));
    out_.utilities.erase(out_.utilities.begin() + at_place);
    away_m_.erase(farthest);
  }
  add_utility(kind, file, feature, {at}, true, away_m);
}

void Importer::take_points(const PlacedFile& file, const LayerChoice& choice,
                           const std::vector<std::uint32_t>& features) {
  const Found& found = *file.file->found;
  const bool utility = utility_kind(choice.meaning).has_value(), undecided = choice.meaning == Meaning::undecided;
  std::vector<std::pair<double, std::uint32_t>> near;  // distance from the crossing line
  std::size_t points = 0;
  for (const std::uint32_t number : features) {
    const FoundFeature& f = found.features[number];
    if (f.shape != Shape::point || f.is_text) continue;
    ++points;
    const PlanPoint& p = file.vertices[f.first];
    const bool in = p.x_m >= asked_box_.low_x && p.x_m <= asked_box_.high_x && p.y_m >= asked_box_.low_y &&
                    p.y_m <= asked_box_.high_y;
    const double beyond = std::max({0.0, -p.x_m, p.x_m - plan_.length_m});
    if (in) near.emplace_back(std::hypot(beyond, p.y_m), number);
  }
  if (points == 0 || choice.meaning == Meaning::background) return;
  if (choice.meaning == Meaning::ground) return;
  std::sort(near.begin(), near.end());
  if (choice.join_points && !undecided) {
    if (utility) add_structures(file, *utility_kind(choice.meaning), near);
    leave_out(where_, say_count("{} single point", "{} single points", points),
              translated("no other point of the line stands within 30 m: not joined"));
  } else if (utility) {
    const std::size_t alone = add_structures(file, *utility_kind(choice.meaning), near);
    leave_out(where_, say_count("{} single point", "{} single points", points),
              alone == 0 ? std::string(translated("a line is needed: let the points be joined"))
                         : say_count("a line is needed: let the points be joined; at {} of them near the crossing "
                                     "nobody drew one",
                                     "a line is needed: let the points be joined; at {} of them near the crossing "
                                     "nobody drew one",
                                     alone));
  } else if (undecided) {
    ask_points(file, near, points);
  } else if (!utility) {
    leave_out(where_, say_count("{} single point", "{} single points", points),
              translated("a line is needed: let the points be joined"));
  }
}

std::size_t Importer::add_structures(const PlacedFile& file, UtilityKind kind,
                                     const std::vector<std::pair<double, std::uint32_t>>& near) {
  std::size_t alone = 0;
  constexpr std::size_t most_tried = 2000;
  std::size_t tried = 0;
  for (const auto& [away, number] : near) {
    if (alone >= bounds_.most_structures || ++tried > most_tried) {
      ask(where_, say_count("{} point near the crossing line", "{} points near the crossing line", near.size()),
          say("only the nearest {} services that nobody drew were taken", alone));
      break;
    }
    const FoundFeature& f = file.file->found->features[number];
    const PathVertex at{file.vertices[f.first].x_m, file.vertices[f.first].y_m, std::nullopt};
    const bool drawn = std::any_of(out_.utilities.begin(), out_.utilities.end(), [&](const Utility& u) {
      return u.path.size() > 1 && away_from_line_m(at, u.path) <= bounds_.drawn_within.m;
    });
    if (drawn) continue;
    ++alone;
    add_point(kind, file, f, at, away);
    ask(where_, say("{} at station {:.2f} m, offset {:.2f} m", f.text, at.x_m, at.y_m),
        translated("a service nobody drew: it counts as one that may run any way"));
  }
  return alone;
}

void Importer::ask_points(const PlacedFile& file, const std::vector<std::pair<double, std::uint32_t>>& near,
                          std::size_t points) {
  if (near.empty()) {
    leave_out(where_, say_count("{} single point", "{} single points", points),
              translated("nobody said what they are; none is near the crossing line"));
    return;
  }
  const FoundFeature& f = file.file->found->features[near.front().second];
  const PathVertex at{file.vertices[f.first].x_m, file.vertices[f.first].y_m, std::nullopt};
  add_point(UtilityKind::unknown, file, f, at, near.front().first);
  ask(where_,
      say_count("{} point near the crossing line, the nearest at station {:.2f} m, offset {:.2f} m",
                "{} points near the crossing line, the nearest at station {:.2f} m, offset {:.2f} m", near.size(),
                at.x_m, at.y_m),
      translated("nobody said what they are: the nearest counts as a service nobody drew"));
}

void Importer::say_if_nothing_near(const PlacedFile& file) {
  const Found& found = *file.file->found;
  if (!found.rasters.empty() || drawn_.contains(&file)) return;
  const bool any = std::any_of(file.vertices.begin(), file.vertices.end(), [&](const PlanPoint& p) {
    return p.x_m >= box_.low_x && p.x_m <= box_.high_x && p.y_m >= box_.low_y && p.y_m <= box_.high_y;
  });
  // A face may be larger than all that is near.
  const bool over = std::any_of(file.surfaces.begin(), file.surfaces.end(), [&](const std::vector<PlanPoint>& points) {
    const auto [west, east] =
        std::minmax_element(points.begin(), points.end(), [](const auto& a, const auto& b) { return a.x_m < b.x_m; });
    const auto [south, north] =
        std::minmax_element(points.begin(), points.end(), [](const auto& a, const auto& b) { return a.y_m < b.y_m; });
    return !points.empty() && west->x_m <= box_.high_x && east->x_m >= box_.low_x && south->y_m <= box_.high_y &&
           north->y_m >= box_.low_y;
  });
  if (!any && !over)
    leave_out(short_name(found.file), translated("whole file"),
              say("nothing of it lies within {:.0f} m of the crossing line", bounds_.corridor.m));
}

}  // namespace burrow
