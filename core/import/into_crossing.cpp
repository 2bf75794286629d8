#include "burrow/import/into_crossing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/crossing/blank.h"
#include "burrow/language/say.h"
#include "ground_cut.h"
#include "near_lines.h"

namespace burrow {

namespace {

std::string short_name(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  return path.substr(slash == std::string::npos ? 0 : slash + 1);
}

class Importer {
 public:
  Importer(const PlacedPlan& plan, const ImportBounds& bounds, const std::function<bool(double)>& progress)
      : plan_(plan), bounds_(bounds), progress_(progress) {
    const double reach = bounds.corridor.m;
    box_ = {-reach, plan.length_m + reach, -reach, reach};
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
    if (stop(0.6)) return stopped_error();
    for (const PlacedFile& file : plan_.files)
      for (std::uint32_t layer = 0; layer < file.file->layers.size(); ++layer) take_layer(file, layer);
    pair_road_edges();
    lighten_background();
    if (stop(1)) return stopped_error();
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool stop(double share) const { return progress_ && !progress_(share); }
  static tl::unexpected<Error> stopped_error() {
    return fail(translated("import"), std::string(stopped_by_person), translated("to be carried to its end"),
                stopped_by_person);
  }

  void take_layer(const PlacedFile& file, std::uint32_t layer) {
    const LayerChoice& choice = file.file->layers[layer];
    const Found& found = *file.file->found;
    where_ = say("{}, layer {}", short_name(found.file), found.layers[layer]);
    if (choice.meaning == Meaning::ground || choice.meaning == Meaning::not_used) return;
    std::size_t points = 0, far = 0;
    for (const FoundFeature& f : found.features) points += f.layer == layer && f.shape == Shape::point ? 1u : 0u;
    if (points > 0 && !choice.join_points && choice.meaning != Meaning::background)
      leave_out(where_, say_count("{} single point", "{} single points", points),
                translated("a line is needed: let the points be joined"));
    const LayerLines lines = lines_of_layer(file, layer);
    if (lines.without_place > 0)
      leave_out(where_, say_count("{} element", "{} elements", lines.without_place),
                translated("too far off to have a place in the local frame"));
    for (const LayerLine& line : lines.lines) {
      const auto parts = inside_box(line.path, box_);
      far += parts.empty() ? 1u : 0u;
      if (!parts.empty()) take_line(choice, file, line, parts);
    }
    if (far > 0 && choice.meaning != Meaning::background)
      leave_out(where_, say_count_in("drawn", "{} line", "{} lines", far),
                say("farther than {:.0f} m from the crossing line", bounds_.corridor.m));
  }

  void take_line(const LayerChoice& choice, const PlacedFile& file, const LayerLine& line,
                 const std::vector<std::vector<PathVertex>>& parts) {
    if (const auto kind = utility_kind(choice.meaning)) {
      for (const auto& part : parts) add_utility(*kind, choice, file, line, part);
    } else if (choice.meaning == Meaning::road_edge) {
      add_road_edge(line.path);
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

  void add_utility(UtilityKind kind, const LayerChoice& choice, const PlacedFile& file, const LayerLine& line,
                   std::vector<PathVertex> path) {
    if (out_.utilities.size() >= bounds_.most_utilities) {
      leave_out(where_, line.feature->text,
                say_count("more than {} line of utilities near the crossing",
                          "more than {} lines of utilities near the crossing", bounds_.most_utilities));
      return;
    }
    const Found& found = *file.file->found;
    Utility utility;
    utility.kind = kind;
    utility.name = line.feature->text.empty() ? found.layers[line.feature->layer] : line.feature->text;
    utility.located.how.set(LocatedHow::records);
    utility.recorded.source = where_;
    // The file states a level only together with heights above datum.
    const auto level = line.feature->level ? line.feature->level : choice.level;
    const auto from = line.feature->level ? DepthFrom::datum : choice.heights_from;
    utility.recorded.level = level;
    utility.recorded.from = from;
    std::optional<double> diameter_m;
    if (choice.diameter) {
      diameter_m = choice.diameter->m;
      utility.recorded.diameter = DiameterMeant::outside;
    } else if (line.feature->diameter_m) {
      diameter_m = *line.feature->diameter_m;
      utility.recorded.diameter = DiameterMeant::inside;
    }
    if (diameter_m && *diameter_m > 0 && *diameter_m <= 5) utility.outside_diameter = Length{*diameter_m};
    const std::string reason = centre_heights(path, level, from, utility.outside_diameter);
    if (!reason.empty()) leave_out(where_, say("heights of {}", utility.name), reason);
    utility.path = std::move(path);
    out_.utilities.push_back(std::move(utility));
  }

  /// Turns the heights into elevations of the centre line, or takes them away and says why.
  std::string centre_heights(std::vector<PathVertex>& path, std::optional<LevelMeant> level,
                             std::optional<DepthFrom> from, std::optional<Length> diameter) const {
    const bool any = std::any_of(path.begin(), path.end(), [](const PathVertex& v) { return v.z_m.has_value(); });
    if (!any) return {};
    std::string reason;
    if (!from) reason = translated("not said whether they are elevations or depths below the ground");
    if (from && !level) reason = translated("not said whether they are of the crown, the centre or the invert");
    if (from && level && *level != LevelMeant::centre && !diameter)
      reason = translated("the centre cannot be told without the diameter");
    if (from == DepthFrom::ground && out_.ground.empty())
      reason = translated("depths below a ground that is not known");
    for (PathVertex& v : path) {
      if (!v.z_m) continue;
      double z = *v.z_m;
      if (reason.empty() && from == DepthFrom::ground) z = elevation_at(out_.ground, v.x_m) - std::abs(z);
      if (reason.empty() && level == LevelMeant::crown) z -= diameter->m / 2;
      if (reason.empty() && level == LevelMeant::invert) z += diameter->m / 2;
      v.z_m = z;
      if (!reason.empty() || !(std::abs(z) <= 1e4)) v.z_m.reset();
    }
    return reason;
  }

  struct EdgeMet {
    double station_m = 0;
    double skew_rad = 0;
  };

  void add_road_edge(const std::vector<PathVertex>& path) {
    for (std::size_t i = 1; i < path.size(); ++i) {
      const PathVertex &a = path[i - 1], &b = path[i];
      if ((a.y_m >= 0) == (b.y_m >= 0)) continue;
      const double station = a.x_m + (b.x_m - a.x_m) * a.y_m / (a.y_m - b.y_m);
      // Square to the line is 0; the edge's direction has no sense, so it is turned to point to the left.
      const double turn = b.y_m > a.y_m ? 1 : -1;
      const double skew = std::atan2(turn * (b.x_m - a.x_m), std::abs(b.y_m - a.y_m));
      if (station >= box_.low_x && station <= box_.high_x) edges_.push_back({station, skew});
    }
  }

  void pair_road_edges() {
    std::sort(edges_.begin(), edges_.end(),
              [](const EdgeMet& a, const EdgeMet& b) { return a.station_m < b.station_m; });
    // The same edge drawn twice is one edge.
    const auto same = [](const EdgeMet& a, const EdgeMet& b) { return b.station_m - a.station_m < 0.05; };
    edges_.erase(std::unique(edges_.begin(), edges_.end(), same), edges_.end());
    for (std::size_t i = 0; i + 1 < edges_.size(); i += 2) {
      SurfaceFeature road;
      road.kind = SurfaceKind::road;
      road.name = "road";
      road.from = Length{edges_[i].station_m};
      road.to = Length{edges_[i + 1].station_m};
      road.skew.set(Angle{(edges_[i].skew_rad + edges_[i + 1].skew_rad) / 2});
      out_.surface.push_back(std::move(road));
    }
    if (edges_.size() % 2 == 1)
      leave_out(translated("crossing line"), say("road edge at station {:.2f} m", edges_.back().station_m),
                translated("an odd number of road edges: it has no other side"));
    if (edges_.size() > 2)
      out_.notes.push_back(say("{} road edges along the line were paired in their order", edges_.size()));
  }

  void add_building(const LayerLine& line) {
    SurfaceFeature building;
    building.kind = SurfaceKind::building;
    building.name = line.feature->text;
    // The closing vertex is not repeated in an outline.
    for (std::size_t i = 0; i + 1 < line.path.size(); ++i) {
      if (std::abs(line.path[i].x_m) > 1e5 || std::abs(line.path[i].y_m) > 1e5) return;
      building.outline.push_back({line.path[i].x_m, line.path[i].y_m});
    }
    out_.surface.push_back(std::move(building));
  }

  void add_background(const PlacedFile& file, const LayerLine& line,
                      const std::vector<std::vector<PathVertex>>& parts) {
    const std::string source = short_name(file.file->found->file);
    const std::string& layer = file.file->found->layers[line.feature->layer];
    if (out_.background.empty() || out_.background.back().source != source || out_.background.back().layer != layer) {
      Background sheet;
      sheet.source = source;
      sheet.layer = layer;
      out_.background.push_back(std::move(sheet));
    }
    for (const auto& part : parts) {
      PlanLine plain;
      for (const PathVertex& v : part) plain.push_back({v.x_m, v.y_m});
      out_.background.back().lines.push_back(std::move(plain));
    }
  }

  void lighten_background() {
    double tolerance = bounds_.background_tolerance.m;
    std::size_t before = 0;
    for (const Background& sheet : out_.background)
      for (const PlanLine& line : sheet.lines) before += line.size();
    for (int pass = 0; pass < 12; ++pass, tolerance *= 2) {
      std::size_t count = 0;
      for (Background& sheet : out_.background)
        for (PlanLine& line : sheet.lines) {
          PlanLine lighter;
          for (const std::size_t i : simplified(line, tolerance)) lighter.push_back(line[i]);
          line = std::move(lighter);
          count += line.size();
        }
      if (count > bounds_.most_background) continue;
      if (count < before)
        out_.notes.push_back(say_count("background: {1} of {0} vertex kept, lines within {2:.0f} mm of the drawing",
                                       "background: {1} of {0} vertices kept, lines within {2:.0f} mm of the drawing",
                                       before, count, tolerance * 1000));
      return;
    }
    // Very many short lines: the shortest go first.
    std::size_t count = 0, dropped = 0;
    for (Background& sheet : out_.background)
      std::erase_if(sheet.lines, [&](const PlanLine& line) {
        const bool too_many = count + line.size() > bounds_.most_background;
        if (too_many) ++dropped;
        if (!too_many) count += line.size();
        return too_many;
      });
    std::erase_if(out_.background, [](const Background& sheet) { return sheet.lines.empty(); });
    leave_out("background", say_count_in("drawn", "{} line", "{} lines", dropped),
              say_count("more than {} vertex near the crossing", "more than {} vertices near the crossing",
                        bounds_.most_background));
  }

  void leave_out(std::string place, std::string text, std::string reason) {
    constexpr std::size_t most = 2000;
    if (out_.left_out.size() < most) out_.left_out.push_back({std::move(place), std::move(text), std::move(reason)});
  }

  const PlacedPlan& plan_;
  const ImportBounds& bounds_;
  const std::function<bool(double)>& progress_;
  NearBox box_;
  Imported out_;
  std::vector<EdgeMet> edges_;
  std::string where_;
};

}  // namespace

ImportFile import_file(std::shared_ptr<const Found> found, const MeaningTable& table) {
  ImportFile file;
  for (const LayerSummary& layer : summaries(*found)) {
    LayerChoice choice;
    choice.meaning = meaning_of(*found, layer, table);
    file.layers.push_back(choice);
  }
  file.found = std::move(found);
  return file;
}

std::optional<CrossingLine> proposed_line(const ImportFile& file) {
  const auto extent = extent_of(*file.found);
  if (!extent) return std::nullopt;
  const PlanPoint middle{(extent->low_x + extent->high_x) / 2, (extent->low_y + extent->high_y) / 2};
  constexpr double length_m = 10;
  const FoundFrame& frame = file.found->frame;
  double units = length_m / metres_in(file.unit.value_or(frame.unit.value_or(FileUnit::metre)));
  if (frame.geographic) {
    constexpr double degree_m = 111'320;  // of the equator; a line to begin with need not be exactly 10 m
    units = length_m / (degree_m * std::max(0.05, std::cos(middle.y_m * pi / 180)));
  }
  return CrossingLine{{middle.x_m - units / 2, middle.y_m}, {middle.x_m + units / 2, middle.y_m}};
}

Result<Imported> into_crossing(const std::vector<ImportFile>& files, const CrossingLine& line,
                               const ImportBounds& bounds, const std::function<bool(double)>& progress) {
  Result<PlacedPlan> plan = place(files, line);
  if (!plan) return tl::unexpected(plan.error());
  Result<Imported> imported = Importer(*plan, bounds, progress).run();
  if (imported) {
    const std::string name = short_name(files.front().found->file);
    imported->name = name.substr(0, name.find_last_of('.'));
  }
  return imported;
}

Crossing crossing_from(const Imported& imported) {
  constexpr double depth_m = 1.2;
  Crossing crossing = blank_crossing(translated("New crossing"));
  crossing.name = imported.name.empty() ? crossing.name : imported.name;
  crossing.bore.exit.station = imported.length;
  // Nobody gave the ground: a line that ends before the launch counts as missing.
  crossing.site.ground = {{-2.0, 100.0}, {-1.0, 100.0}};
  crossing = with_imported(std::move(crossing), imported);
  crossing.bore.launch.elevation = Length{elevation_at(crossing.site.ground, 0) - depth_m};
  return crossing;
}

Crossing with_imported(Crossing crossing, const Imported& imported) {
  Site& site = crossing.site;
  if (!imported.ground.empty()) {
    site.ground = imported.ground;
    site.ground_points = imported.ground_points;
  }
  if (!imported.ground.empty() || !site.georeference) site.georeference = imported.georeference;
  const auto add = [&](auto& list, const auto& more, std::string_view prefix) {
    for (auto item : more) {
      item.id = free_id(crossing, prefix);
      list.push_back(std::move(item));
    }
  };
  add(site.utilities, imported.utilities, "u");
  add(site.surface, imported.surface, "f");
  add(site.boundaries, imported.boundaries, "b");
  add(site.background, imported.background, "g");
  return crossing;
}

}  // namespace burrow
