#include "importer.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "background_sheets.h"
#include "burrow/language/say.h"
#include "ground_cut.h"
#include "near_lines.h"
#include "road_edges.h"
#include "utility_from.h"

namespace burrow {

std::string short_name(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  return path.substr(slash == std::string::npos ? 0 : slash + 1);
}

namespace {

/// Least distance in plan of a point from a polyline.
double distance_m(const PathVertex& p, const std::vector<PathVertex>& line) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < line.size(); ++i) {
    const PathVertex &a = line[i], &b = line[std::min(i + 1, line.size() - 1)];
    const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, length2 = dx * dx + dy * dy;
    const double t = length2 > 0 ? std::clamp(((p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy) / length2, 0.0, 1.0) : 0.0;
    least = std::min(least, std::hypot(p.x_m - a.x_m - t * dx, p.y_m - a.y_m - t * dy));
  }
  return least;
}

class Importer {
 public:
  Importer(const PlacedPlan& plan, const ImportBounds& bounds, const std::function<bool(double)>& progress)
      : plan_(plan), bounds_(bounds), progress_(progress) {
    const auto around = [&](double reach) { return NearBox{-reach, plan.length_m + reach, -reach, reach}; };
    box_ = around(bounds.corridor.m);
    asked_box_ = around(bounds.asked_within.m);
  }

  Result<Imported> run() {
    out_.length = Length{plan_.length_m};
    out_.georeference = plan_.georeference;
    out_.notes = plan_.notes;
    if (stop(0.3)) return stopped_error();
    Result<GroundCut> ground = cut_ground(plan_, bounds_, [this] { return !stop(0); });
    if (!ground) return tl::unexpected(ground.error());
    out_.ground = std::move(ground->line);
    out_.ground_points = std::move(ground->points);
    out_.notes.insert(out_.notes.end(), ground->notes.begin(), ground->notes.end());
    // What was decided first, so that what is asked takes no room from it; points last, when all lines are there.
    for (const Pass pass : {Pass::decided, Pass::asked, Pass::points})
      for (const PlacedFile& file : plan_.files) {
        const auto features = features_by_layer(*file.file->found);
        for (std::uint32_t layer = 0; layer < file.file->layers.size(); ++layer) {
          if (stop(0.6)) return stopped_error();
          take_layer(file, layer, features[layer], pass);
        }
        if (pass == Pass::points) say_if_nothing_near(file);
      }
    pair_road_edges();
    lighten_background();
    if (stop(1)) return stopped_error();
    return std::move(out_);
  }

 private:
  enum class Pass { decided, asked, points };

  [[nodiscard]] bool stop(double share) const { return progress_ && !progress_(share); }
  static tl::unexpected<Error> stopped_error() {
    return fail(translated("import"), std::string(stopped_by_person), translated("to be carried to its end"),
                stopped_by_person);
  }

  void take_layer(const PlacedFile& file, std::uint32_t layer, const std::vector<std::uint32_t>& features, Pass pass) {
    const LayerChoice& choice = file.file->layers[layer];
    const Found& found = *file.file->found;
    if (choice.meaning == Meaning::not_used) return;
    where_ = say("{}, layer {}", short_name(found.file), found.layers[layer]);
    const bool undecided = choice.meaning == Meaning::undecided;
    if (pass == Pass::points) return take_points(file, choice, features);
    if (choice.meaning == Meaning::ground || undecided != (pass == Pass::asked)) return;
    std::size_t far = 0, asked = 0;
    const LayerLines lines = lines_of_layer(file, layer, features);
    if (lines.without_place > 0)
      leave_out(where_, say_count("{} element", "{} elements", lines.without_place),
                translated("too far off to have a place in the local frame"));
    for (const LayerLine& line : lines.lines) {
      const auto parts = inside_box(line.path, box_);
      far += parts.empty() ? 1u : 0u;
      if (parts.empty()) continue;
      drawn_.insert(&file);
      if (undecided)
        asked += ask_line(file, line, parts) ? 1u : 0u;
      else
        take_line(choice, file, line, parts);
    }
    if (far > 0 && choice.meaning != Meaning::background)
      leave_out(where_, say_count_in("drawn", "{} line", "{} lines", far),
                say("farther than {:.0f} m from the crossing line", bounds_.corridor.m), false);
    if (asked > 0)
      ask(where_, say_count_in("drawn", "{} line", "{} lines", asked),
          translated("nobody said what they are: near the crossing line each counts as a utility of unknown kind"));
  }

  void take_line(const LayerChoice& choice, const PlacedFile& file, const LayerLine& line,
                 const std::vector<std::vector<PathVertex>>& parts) {
    if (const auto kind = utility_kind(choice.meaning)) {
      for (const auto& part : parts) add_utility(*kind, file, *line.feature, part, part.size() == line.path.size());
    } else if (choice.meaning == Meaning::road_edge) {
      edges_.add(line.path, box_.low_x, box_.high_x);
    } else if (choice.meaning == Meaning::building && line.feature->shape == Shape::area) {
      add_building(line);
    } else if (choice.meaning == Meaning::boundary) {
      for (const auto& part : parts) {
        Boundary boundary;
        boundary.name = line.feature->text;
        for (const PathVertex& v : part) boundary.line.push_back({v.x_m, v.y_m});
        out_.boundaries.push_back(std::move(boundary));
      }
    } else {
      add_background(file, line, parts);
    }
  }

  /// A line of which nobody said what it is: near the crossing line a utility of unknown kind, beyond it drawn only.
  bool ask_line(const PlacedFile& file, const LayerLine& line, const std::vector<std::vector<PathVertex>>& parts) {
    const bool near = !inside_box(line.path, asked_box_).empty() && asked_lines_ < bounds_.most_asked_lines;
    if (!near) {
      add_background(file, line, parts);
      return false;
    }
    ++asked_lines_;
    for (const auto& part : parts)
      add_utility(UtilityKind::unknown, file, *line.feature, part, part.size() == line.path.size());
    return true;
  }

  void add_utility(UtilityKind kind, const PlacedFile& file, const FoundFeature& feature, std::vector<PathVertex> path,
                   bool whole_line) {
    if (out_.utilities.size() >= bounds_.most_utilities) {
      leave_out(where_, feature.text,
                say_count("more than {} line of utilities near the crossing",
                          "more than {} lines of utilities near the crossing", bounds_.most_utilities));
      return;
    }
    MadeUtility made = utility_from(*file.file, feature, kind, std::move(path), whole_line, out_.ground, where_);
    for (LeftOut& l : made.left_out) leave_out(std::move(l.place), std::move(l.text), std::move(l.reason));
    out_.utilities.push_back(std::move(made.utility));
  }

  /// Points that no line is made of: at a manhole or a valve lies a service, drawn or not.
  void take_points(const PlacedFile& file, const LayerChoice& choice, const std::vector<std::uint32_t>& features) {
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
    if (points == 0 || (choice.join_points && !undecided) || choice.meaning == Meaning::background) return;
    if (choice.meaning == Meaning::ground) return;
    std::sort(near.begin(), near.end());
    if (utility && !choice.join_points) {
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

  /// A service that nobody drew, at its place: it may run any way. How many there are.
  std::size_t add_structures(const PlacedFile& file, UtilityKind kind,
                             const std::vector<std::pair<double, std::uint32_t>>& near) {
    std::size_t alone = 0;
    constexpr std::size_t most_tried = 2000;
    std::size_t tried = 0;
    for (const auto& [away, number] : near) {
      if (alone >= bounds_.most_structures || ++tried > most_tried) break;
      const FoundFeature& f = file.file->found->features[number];
      const PathVertex at{file.vertices[f.first].x_m, file.vertices[f.first].y_m, std::nullopt};
      const bool drawn = std::any_of(out_.utilities.begin(), out_.utilities.end(), [&](const Utility& u) {
        return u.path.size() > 1 && distance_m(at, u.path) <= bounds_.drawn_within.m;
      });
      if (drawn) continue;
      ++alone;
      add_utility(kind, file, f, {at}, true);
      ask(where_, say("{} at station {:.2f} m, offset {:.2f} m", f.text, at.x_m, at.y_m),
          translated("a service nobody drew: it counts as one that may run any way"));
    }
    return alone;
  }

  /// Of points that mean nothing yet the nearest stands for all.
  void ask_points(const PlacedFile& file, const std::vector<std::pair<double, std::uint32_t>>& near,
                  std::size_t points) {
    if (near.empty()) {
      leave_out(where_, say_count("{} single point", "{} single points", points),
                translated("nobody said what they are; none is near the crossing line"));
      return;
    }
    const FoundFeature& f = file.file->found->features[near.front().second];
    const PathVertex at{file.vertices[f.first].x_m, file.vertices[f.first].y_m, std::nullopt};
    add_utility(UtilityKind::unknown, file, f, {at}, true);
    ask(where_,
        say_count("{} point near the crossing line, the nearest at station {:.2f} m, offset {:.2f} m",
                  "{} points near the crossing line, the nearest at station {:.2f} m, offset {:.2f} m", near.size(),
                  at.x_m, at.y_m),
        translated("nobody said what they are: the nearest counts as a service nobody drew"));
  }

  /// A whole file of which nothing lies near is said.
  void say_if_nothing_near(const PlacedFile& file) {
    const Found& found = *file.file->found;
    if (!found.surfaces.empty() || !found.rasters.empty() || drawn_.contains(&file)) return;
    const bool any = std::any_of(file.vertices.begin(), file.vertices.end(), [&](const PlanPoint& p) {
      return p.x_m >= box_.low_x && p.x_m <= box_.high_x && p.y_m >= box_.low_y && p.y_m <= box_.high_y;
    });
    if (!any)
      leave_out(short_name(found.file), translated("whole file"),
                say("nothing of it lies within {:.0f} m of the crossing line", bounds_.corridor.m));
  }

  void pair_road_edges() {
    for (SurfaceFeature& road : edges_.paired()) out_.surface.push_back(std::move(road));
    if (const auto alone = edges_.alone_m())
      leave_out(translated("crossing line"), say("road edge at station {:.2f} m", *alone),
                translated("an odd number of road edges: it has no other side"));
    if (edges_.count() > 2)
      out_.notes.push_back(say("{} road edges along the line were paired in their order", edges_.count()));
  }

  void add_building(const LayerLine& line) {
    SurfaceFeature building;
    building.kind = SurfaceKind::building;
    building.name = line.feature->text;
    // The closing vertex is not repeated in an outline.
    for (std::size_t i = 0; i + 1 < line.path.size(); ++i) {
      if (std::abs(line.path[i].x_m) > 1e5 || std::abs(line.path[i].y_m) > 1e5)
        return leave_out(where_, line.feature->text, translated("too far off to have a place in the local frame"));
      building.outline.push_back({line.path[i].x_m, line.path[i].y_m});
    }
    out_.surface.push_back(std::move(building));
  }

  void add_background(const PlacedFile& file, const LayerLine& line,
                      const std::vector<std::vector<PathVertex>>& parts) {
    background_.add(short_name(file.file->found->file), file.file->found->layers[line.feature->layer], parts);
  }

  void lighten_background() {
    const auto how = background_.lighten(bounds_.background_tolerance.m, bounds_.most_background, asked_box_);
    out_.background = background_.take();
    if (how.lines_dropped > 0)
      return leave_out("background", say_count_in("drawn", "{} line", "{} lines", how.lines_dropped),
                       say_count("more than {} vertex near the crossing", "more than {} vertices near the crossing",
                                 bounds_.most_background));
    if (how.after < how.before)
      out_.notes.push_back(say_count("background: {1} of {0} vertex kept, lines within {2:.0f} mm of the drawing",
                                     "background: {1} of {0} vertices kept, lines within {2:.0f} mm of the drawing",
                                     how.before, how.after, how.tolerance_m * 1000));
  }

  void leave_out(std::string place, std::string text, std::string reason, bool matters = true) {
    constexpr std::size_t most = 2000;
    if (out_.left_out.size() < most)
      out_.left_out.push_back({std::move(place), std::move(text), std::move(reason), matters});
    else
      ++out_.left_out_more;
  }

  void ask(std::string place, std::string text, std::string reason) {
    constexpr std::size_t most = 2000;
    if (out_.asked.size() < most) out_.asked.push_back({std::move(place), std::move(text), std::move(reason)});
  }

  const PlacedPlan& plan_;
  const ImportBounds& bounds_;
  const std::function<bool(double)>& progress_;
  NearBox box_, asked_box_;
  Imported out_;
  RoadEdges edges_;
  BackgroundSheets background_;
  std::set<const PlacedFile*> drawn_;  ///< files of which something was taken
  std::size_t asked_lines_ = 0;
  std::string where_;
};

}  // namespace

Result<Imported> import_plan(const PlacedPlan& plan, const ImportBounds& bounds,
                             const std::function<bool(double)>& progress) {
  return Importer(plan, bounds, progress).run();
}

}  // namespace burrow
