#pragma once
/// What follows from one pit: soil type proposed, earth to be moved, duties, members of the support, water.
/// SI throughout; an empty optional is "unknown", never 0.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/base/source.h"
#include "burrow/crossing/pits.h"
#include "burrow/crossing/site.h"
#include "burrow/pit/soil_type.h"

namespace burrow {

/// A stratum in the pit. The types proposed reach from `proposed.best` to `proposed.worst`; `type` is in force.
struct PitLayerAnswer {
  std::string stratum;  ///< id
  Phrase soil;          ///< name of its class
  double top_m = 0, bottom_m = 0;
  ExcavationType type = ExcavationType::c;
  TypeProposal proposed;
  double run_per_rise = 0;  ///< of a slope by the rules
  double bank_m3 = 0, loose_m3 = 0;
  bool operator==(const PitLayerAnswer&) const = default;
};

/// Surface opened by the excavation; without id: what no road, footway or drive covers (verge).
struct SurfaceCut {
  std::string id;
  Phrase name;
  double area_m2 = 0;
  bool operator==(const SurfaceCut&) const = default;
};

/// Ridge of loose soil along one side of the pit; `length`, `width` and `outline` take in all of it.
struct SpoilHeap {
  PitSideName side = PitSideName::left;
  double setback_m = 0, length_m = 0, width_m = 0, height_m = 0, volume_m3 = 0;
  PlanLine outline;
  bool operator==(const SpoilHeap&) const = default;
};

/// Something to be done at this pit: "ladder", "air-test", "guard", "inspection". `code` points to a literal.
struct PitDuty {
  std::string_view code;
  bool applies = false;
  std::optional<double> measured_m, limit_m;
  Source source;
  bool operator==(const PitDuty&) const = default;
};

/// What the sides left to the program come to, and what another way to hold them would take.
struct PitProposal {
  bool made = false;
  SideKind kind = SideKind::shored;  ///< of the sides left to the program
  bool upright_allowed = false;      ///< without support
  double straight_m3 = 0;            ///< upright, shored or behind a shield: the same earth
  std::optional<double> sloped_m3;   ///< sloped by the rules, the bore side straight; nothing: deeper than their slopes
  bool operator==(const PitProposal&) const = default;
};

struct PitAnswer {
  ExcavationType proposed_best = ExcavationType::c, proposed_worst = ExcavationType::c;  ///< worst of its layers
  bool confirmed = false;  ///< somebody put a name to the soil type
  PitProposal proposal;
  std::vector<PitLayerAnswer> layers;
  std::optional<double> roof_missing_m;  ///< length of bore over which a sloped bore side takes the roof away
  std::optional<double> bank_m3, loose_m3;
  std::optional<double> compacted_m3;  ///< the same soil put back and compacted
  std::optional<double> refill_m3;     ///< loose soil that fills the pit again, once compacted
  std::optional<double> truck_loads;   ///< of all that is dug
  std::vector<SurfaceCut> cuts;
  SpoilHeap heap;
  std::vector<PitDuty> duties;
  std::optional<PlanPoint> ladder;
  std::optional<double> ladder_travel_m;  ///< from the farthest place of the floor
  std::vector<std::string> shoring;       ///< ids of the table's rows that fit
  std::optional<double> shoring_width_m;  ///< between the sides that it holds apart
  std::optional<double> edge_load_gap_m;  ///< from the edge to the nearest traffic or machine
  std::optional<double> water_head_m;     ///< of the water over the floor, sump included; negative: below it
  std::optional<double> base_heave_safety, uplift_safety;
  bool operator==(const PitAnswer&) const = default;
};

}  // namespace burrow
