#include "importing.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/language/say.h"
#include "ground_cut.h"
#include "importer.h"
#include "utility_from.h"

namespace burrow {

std::string short_name(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  return path.substr(slash == std::string::npos ? 0 : slash + 1);
}

Result<Imported> Importer::run() {
  out_.length = Length{plan_.length_m};
  out_.georeference = plan_.georeference;
  out_.notes = plan_.notes;
  if (stop(0.3)) return stopped_error();
  Result<GroundCut> ground = cut_ground(plan_, bounds_, [this] { return !stop(0); });
  if (!ground) return tl::unexpected(ground.error());
  out_.ground = std::move(ground->line);
  out_.ground_points = std::move(ground->points);
  out_.notes.insert(out_.notes.end(), ground->notes.begin(), ground->notes.end());
  say_height_factor();
  // Points last, when all lines are there.
  for (const Pass pass : {Pass::decided, Pass::asked, Pass::points}) {
    if (pass == Pass::points) settle_waiting();
    for (const PlacedFile& file : plan_.files) {
      const auto features = features_by_layer(*file.file->found);
      for (std::uint32_t layer = 0; layer < file.file->layers.size(); ++layer) {
        if (stop(0.6)) return stopped_error();
        take_layer(file, layer, features[layer], pass);
      }
      if (pass == Pass::points) say_if_nothing_near(file);
    }
  }
  if (too_many_near_) return too_many_error();
  pair_road_edges();
  lighten_background();
  if (stop(1)) return stopped_error();
  return std::move(out_);
}

tl::unexpected<Error> Importer::stopped_error() {
  return fail(translated("import"), std::string(stopped_by_person), translated("to be carried to its end"),
              stopped_by_person);
}

tl::unexpected<Error> Importer::too_many_error() const {
  return fail(translated("import"),
              say_count("more than {0} line of utilities within {1:.0f} m of the crossing line",
                        "more than {0} lines of utilities within {1:.0f} m of the crossing line",
                        bounds_.most_utilities, bounds_.asked_within.m),
              translated("fewer: say what the layers are that are no utilities, or leave files out"));
}

/// Lengths of a coordinate system are those at the level of its ellipsoid.
void Importer::say_height_factor() {
  constexpr double earth_radius_m = 6'371'000, over_m = 10, worth_saying_m = 0.001;
  if (out_.ground.empty() || plan_.frame.crs.empty()) return;
  const double longer_m = over_m * out_.ground.front().elevation_m / earth_radius_m;
  if (std::abs(longer_m) >= worth_saying_m)
    out_.notes.push_back(
        say("at {:.0f} m above the sea lengths on the ground are {:.1f} mm in 10 m longer than here: the height is not "
            "taken into account",
            out_.ground.front().elevation_m, longer_m * 1000));
}

void Importer::take_layer(const PlacedFile& file, std::uint32_t layer, const std::vector<std::uint32_t>& features,
                          Pass pass) {
  const LayerChoice& choice = file.file->layers[layer];
  const Found& found = *file.file->found;
  if (choice.meaning == Meaning::not_used) return;
  where_ = say("{}, layer {}", short_name(found.file), found.layers[layer]);
  const bool undecided = choice.meaning == Meaning::undecided;
  if (pass == Pass::points) {
    const bool joined = choice.join_points && !undecided;
    return take_points(file, choice, joined ? alone_[{&file, layer}] : features);
  }
  if (choice.meaning == Meaning::ground || undecided != (pass == Pass::asked)) return;
  std::size_t far = 0;
  LayerLines lines = lines_of_layer(file, layer, features);
  if (undecided || utility_kind(choice.meaning)) say_gaps(lines);
  alone_[{&file, layer}] = std::move(lines.alone);
  if (lines.without_place > 0)
    leave_out(where_, say_count("{} element", "{} elements", lines.without_place),
              translated("too far off to have a place in the local frame"));
  for (const LayerLine& line : lines.lines) {
    auto parts = inside_box(line.path, box_);
    far += parts.empty() ? 1u : 0u;
    if (parts.empty()) continue;
    drawn_.insert(&file);
    if (undecided)
      ask_line(file, line, std::move(parts));
    else
      take_line(choice, file, line, std::move(parts));
  }
  take_faces(file, layer, choice);
  if (far > 0 && choice.meaning != Meaning::background)
    leave_out(where_, say_count_in("drawn", "{} line", "{} lines", far),
              say("farther than {:.0f} m from the crossing line", bounds_.corridor.m), false);
}

void Importer::take_faces(const PlacedFile& file, std::uint32_t layer, const LayerChoice& choice) {
  constexpr std::size_t most_for_utility = 20, most_drawn = 2000;
  const bool undecided = choice.meaning == Meaning::undecided;
  const auto kind = undecided ? std::optional(UtilityKind::unknown) : utility_kind(choice.meaning);
  std::vector<std::pair<double, std::vector<PathVertex>>> near;
  for (std::vector<PathVertex>& face : faces_of_layer(file, layer))
    if (!inside_box(face, undecided ? asked_box_ : box_).empty())
      near.emplace_back(distance_from_crossing_m(face, plan_.length_m), std::move(face));
  if (near.empty()) return;
  drawn_.insert(&file);
  const std::string count = say_count("{} face of a surface", "{} faces of surfaces", near.size());
  if (!kind && choice.meaning != Meaning::background)
    return leave_out(where_, count, translated("a line is needed: draw it"));
  if (undecided && file.file->found->format == "LandXML")  // there a surface is a ground, today's or another
    return ask(where_, count, translated("nobody said whether it is the ground of today: it is not used"));
  std::stable_sort(near.begin(), near.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  near.resize(std::min(near.size(), kind ? most_for_utility : most_drawn));
  FoundFeature& stands_for = made_.emplace_back();
  stands_for.layer = layer;
  stands_for.shape = Shape::line;
  for (const auto& [away_m, face] : near) {
    const LayerLine line{&stands_for, face};
    if (kind)
      wait(*kind, false, file, line, inside_box(face, box_));
    else
      add_background(file, stands_for, inside_box(face, box_));
  }
  if (kind)
    ask(where_, count,
        undecided ? translated("nobody said what they are: the nearest of them count as utilities of unknown kind")
                  : translated("a utility drawn as surfaces: the nearest faces stand for it until its line is drawn"));
}

void Importer::take_line(const LayerChoice& choice, const PlacedFile& file, const LayerLine& line,
                         std::vector<std::vector<PathVertex>> parts) {
  if (const auto kind = utility_kind(choice.meaning)) {
    wait(*kind, false, file, line, std::move(parts));
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
    add_background(file, *line.feature, parts);
  }
}

void Importer::ask_line(const PlacedFile& file, const LayerLine& line, std::vector<std::vector<PathVertex>> parts) {
  if (inside_box(line.path, asked_box_).empty()) return add_background(file, *line.feature, parts);
  wait(UtilityKind::unknown, true, file, line, std::move(parts));
}

void Importer::wait(UtilityKind kind, bool asked, const PlacedFile& file, const LayerLine& line,
                    std::vector<std::vector<PathVertex>> parts) {
  WaitingLine one{kind, asked, &file, line.feature, std::move(parts), false, 0, where_};
  one.whole = one.parts.size() == 1 && one.parts.front() == line.path;
  one.away_m = std::numeric_limits<double>::infinity();
  for (const auto& part : one.parts) one.away_m = std::min(one.away_m, distance_from_crossing_m(part, plan_.length_m));
  waiting_.push_back(std::move(one));
}

void Importer::settle_waiting() {
  const std::vector<LineLot> lots = lots_of(waiting_, bounds_.most_asked_lines, bounds_.most_utilities);
  CountByPlace asked, drawn_only;
  for (std::size_t i = 0; i < waiting_.size(); ++i) {
    WaitingLine& line = waiting_[i];
    where_ = line.where;
    if (lots[i] == LineLot::drawn_only) {
      add_background(*line.file, *line.feature, line.parts);
      drawn_only.add(where_);
      continue;
    }
    if (line.asked) asked.add(where_);
    if (lots[i] == LineLot::no_room) {
      leave_out_for_room(*line.feature, line.away_m);
      continue;
    }
    for (auto& part : line.parts)
      add_utility(line.kind, *line.file, *line.feature, std::move(part), line.whole, line.away_m);
  }
  for (const auto& [where, count] : asked.all())
    ask(where, say_count_in("drawn", "{} line", "{} lines", count),
        translated("nobody said what they are: near the crossing line each counts as a utility of unknown kind"));
  for (const auto& [where, count] : drawn_only.all())
    ask(where, say_count_in("drawn", "{} line", "{} lines", count),
        say("nobody said what they are, and {} others lie nearer: these are only drawn", bounds_.most_asked_lines));
  waiting_.clear();
}

void Importer::leave_out_for_room(const FoundFeature& feature, double away_m) {
  too_many_near_ = too_many_near_ || away_m <= bounds_.asked_within.m;
  leave_out(where_, feature.text,
            say_count("more than {} line of utilities near the crossing",
                      "more than {} lines of utilities near the crossing", bounds_.most_utilities));
}

/// Looked up once a file: all of a column is read for it.
const std::vector<bool>& Importer::zero_counts_of(const PlacedFile& file) {
  const auto it = zero_counts_.find(&file);
  return it != zero_counts_.end() ? it->second
                                  : zero_counts_.emplace(&file, zero_heights_count(*file.file)).first->second;
}

void Importer::add_utility(UtilityKind kind, const PlacedFile& file, const FoundFeature& feature,
                           std::vector<PathVertex> path, bool whole_line, double away_m) {
  MadeUtility made =
      utility_from(*file.file, feature, kind, std::move(path), whole_line, zero_counts_of(file), out_.ground, where_);
  for (LeftOut& l : made.left_out) leave_out(std::move(l.place), std::move(l.text), std::move(l.reason));
  out_.utilities.push_back(std::move(made.utility));
  away_m_.push_back(away_m);
}

void Importer::pair_road_edges() {
  for (SurfaceFeature& road : edges_.paired()) out_.surface.push_back(std::move(road));
  if (const auto alone = edges_.alone_m())
    leave_out(translated("crossing line"), say("road edge at station {:.2f} m", *alone),
              translated("an odd number of road edges: it has no other side"));
  if (edges_.count() > 2)
    out_.notes.push_back(say("{} road edges along the line were paired in their order", edges_.count()));
}

void Importer::add_building(const LayerLine& line) {
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

void Importer::add_background(const PlacedFile& file, const FoundFeature& feature,
                              const std::vector<std::vector<PathVertex>>& parts) {
  background_.add(short_name(file.file->found->file), file.file->found->layers[feature.layer], parts);
}

void Importer::lighten_background() {
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

void Importer::leave_out(std::string place, std::string text, std::string reason, bool matters) {
  constexpr std::size_t most = 2000;
  if (out_.left_out.size() < most)
    out_.left_out.push_back({std::move(place), std::move(text), std::move(reason), matters});
  else
    ++out_.left_out_more;
}

void Importer::ask(std::string place, std::string text, std::string reason) {
  constexpr std::size_t most = 2000;
  if (out_.asked.size() < most) out_.asked.push_back({std::move(place), std::move(text), std::move(reason)});
}

Result<Imported> import_plan(const PlacedPlan& plan, const ImportBounds& bounds,
                             const std::function<bool(double)>& progress) {
  return Importer(plan, bounds, progress).run();
}

}  // namespace burrow
