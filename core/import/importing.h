#pragma once
/// Laid files become things of the site, layer by layer: decided lines, lines that nobody decided, points. Private to
/// this room.

#include <functional>
#include <list>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "background_sheets.h"
#include "near_lines.h"
#include "placed_plan.h"
#include "road_edges.h"
#include "waiting_lines.h"

namespace burrow {

class Importer {
 public:
  Importer(const PlacedPlan& plan, const ImportBounds& bounds, const std::function<bool(double)>& progress)
      : plan_(plan), bounds_(bounds), progress_(progress) {
    const auto around = [&](double reach) { return NearBox{-reach, plan.length_m + reach, -reach, reach}; };
    box_ = around(bounds.corridor.m);
    asked_box_ = around(bounds.asked_within.m);
  }

  Result<Imported> run();

 private:
  enum class Pass { decided, asked, points };

  [[nodiscard]] bool stop(double share) const { return progress_ && !progress_(share); }
  static tl::unexpected<Error> stopped_error();

  [[nodiscard]] tl::unexpected<Error> too_many_error() const;

  void say_height_factor();

  void take_layer(const PlacedFile& file, std::uint32_t layer, const std::vector<std::uint32_t>& features, Pass pass);

  /// Points to be joined that stand too far apart: what lies between them near the crossing line nobody knows.
  void say_gaps(const LayerLines& lines);

  /// Surfaces that are not the ground. Of a utility, and of what nobody decided, the nearest faces stand for it.
  void take_faces(const PlacedFile& file, std::uint32_t layer, const LayerChoice& choice);

  void take_line(const LayerChoice& choice, const PlacedFile& file, const LayerLine& line,
                 std::vector<std::vector<PathVertex>> parts);

  /// A line of which nobody said what it is: near the crossing line a utility of unknown kind, beyond it drawn only.
  void ask_line(const PlacedFile& file, const LayerLine& line, std::vector<std::vector<PathVertex>> parts);

  void wait(UtilityKind kind, bool asked, const PlacedFile& file, const LayerLine& line,
            std::vector<std::vector<PathVertex>> parts);

  /// Now that all lines are known: the nearest are asked about, and the nearest come in.
  void settle_waiting();

  /// What lies so near is never left out without a word of refusal.
  void leave_out_for_room(const FoundFeature& feature, double away_m);

  const std::vector<bool>& zero_counts_of(const PlacedFile& file);

  void add_utility(UtilityKind kind, const PlacedFile& file, const FoundFeature& feature, std::vector<PathVertex> path,
                   bool whole_line, double away_m);

  /// A service at a point near the crossing line: where there is no room the farthest line makes some.
  void add_point(UtilityKind kind, const PlacedFile& file, const FoundFeature& feature, const PathVertex& at,
                 double away_m);

  /// Points that no line is made of: at a manhole or a valve lies a service, drawn or not.
  void take_points(const PlacedFile& file, const LayerChoice& choice, const std::vector<std::uint32_t>& features);

  /// A service that nobody drew, at its place: it may run any way. How many there are.
  std::size_t add_structures(const PlacedFile& file, UtilityKind kind,
                             const std::vector<std::pair<double, std::uint32_t>>& near);

  /// Of points that mean nothing yet the nearest stands for all.
  void ask_points(const PlacedFile& file, const std::vector<std::pair<double, std::uint32_t>>& near,
                  std::size_t points);

  /// A whole file of which nothing lies near is said.
  void say_if_nothing_near(const PlacedFile& file);

  void pair_road_edges();

  void add_building(const LayerLine& line);

  void add_background(const PlacedFile& file, const FoundFeature& feature,
                      const std::vector<std::vector<PathVertex>>& parts);

  void lighten_background();

  void leave_out(std::string place, std::string text, std::string reason, bool matters = true);

  void ask(std::string place, std::string text, std::string reason);

  const PlacedPlan& plan_;
  const ImportBounds& bounds_;
  const std::function<bool(double)>& progress_;
  NearBox box_, asked_box_;
  Imported out_;
  RoadEdges edges_;
  BackgroundSheets background_;
  std::set<const PlacedFile*> drawn_;  ///< files of which something was taken
  std::vector<WaitingLine> waiting_;
  std::vector<double> away_m_;    ///< of each utility from the crossing line
  std::list<FoundFeature> made_;  ///< that stand for faces of surfaces
  std::map<std::pair<const PlacedFile*, std::uint32_t>, std::vector<std::uint32_t>> alone_;  ///< points not joined
  std::map<const PlacedFile*, std::vector<bool>> zero_counts_;
  bool too_many_near_ = false;
  std::string where_;
};

}  // namespace burrow
