#pragma once
/// The two pits, as entered. An empty dimension is proposed by the program.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/given.h"
#include "burrow/base/quantity.h"
#include "burrow/crossing/site.h"

namespace burrow {

enum class ExcavationRules { us_1926, din_4124 };
template <>
struct EnumNames<ExcavationRules> {
  static constexpr std::pair<ExcavationRules, std::string_view> list[] = {{ExcavationRules::us_1926, "us-1926"},
                                                                          {ExcavationRules::din_4124, "din-4124"}};
};

enum class SideKind { upright, sloped, benched, shored, shielded };
template <>
struct EnumNames<SideKind> {
  static constexpr std::pair<SideKind, std::string_view> list[] = {{SideKind::upright, "upright"},
                                                                   {SideKind::sloped, "sloped"},
                                                                   {SideKind::benched, "benched"},
                                                                   {SideKind::shored, "shored"},
                                                                   {SideKind::shielded, "shielded"}};
};

/// `bore`: where the tool goes in or comes out; `back` opposite; `left` and `right` looking along +x.
enum class PitSideName { bore, back, left, right };
template <>
struct EnumNames<PitSideName> {
  static constexpr std::pair<PitSideName, std::string_view> list[] = {{PitSideName::bore, "bore"},
                                                                      {PitSideName::back, "back"},
                                                                      {PitSideName::left, "left"},
                                                                      {PitSideName::right, "right"}};
};

/// One step: a face, and the tread above it.
struct Bench {
  Length rise;
  Length tread;
  std::optional<Ratio> run_per_rise;  ///< of the face; empty: upright
  std::string extra;
  bool operator==(const Bench&) const = default;
};

struct PitSide {
  Given<SideKind> kind{SideKind::sloped};
  std::optional<Ratio> run_per_rise;  ///< empty: by the soil type
  std::optional<Length> upright;      ///< height of an upright lower part
  /// Foot and top of a shield or shoring above the floor. Empty: from the floor, up to the ground; in front of an
  /// upright lower part of a slope an empty top means that there is none.
  std::optional<Length> support_foot, support_top;
  std::vector<Bench> benches;
  std::optional<bool> benches_only_walked;  ///< their treads catch no slides
  std::string extra;
  bool operator==(const PitSide&) const = default;
};

inline PitSide shored_side() {
  PitSide side;
  side.kind = Given<SideKind>(SideKind::shored);
  return side;
}

struct PitSides {
  PitSide bore = shored_side();
  PitSide back;
  PitSide left;
  PitSide right;
  std::string extra;
  bool operator==(const PitSides&) const = default;
};

/// What somebody saw on site; empty: nobody looked. From `joints` on: what DIN 4124 wants a calculation for, together
/// with `vibrated`, `seeping`, `dip_run_per_rise` and `distress`.
struct PitSigns {
  std::optional<bool> fissured;
  std::optional<bool> vibrated;
  std::optional<bool> disturbed;
  std::optional<bool> seeping;
  std::optional<Ratio> dip_run_per_rise;
  std::optional<bool> distress;
  std::optional<bool> bad_air;
  std::optional<bool> joints;         ///< faults or joints
  std::optional<bool> dips_inward;    ///< layers that dip into the pit
  std::optional<bool> loose_fill;     ///< fill that nobody compacted
  std::optional<bool> soft_deposit;   ///< soft organic soil or lake clay
  std::optional<bool> open_drainage;  ///< pumped from a sump in fine sand or silt
  std::optional<bool> flowing;        ///< soil that flows
  std::optional<bool> steep_heap;     ///< steeper than 1 : 2, or a stack over 10 kN/m², beside the load-free strip
  std::optional<bool> steep_ground;   ///< beside it steeper than 1 : 10, in cohesive soil 1 : 2
  Statement none_seen;                ///< of all that DIN 4124 asks; it counts where nobody has answered one
  std::string extra;
  bool operator==(const PitSigns&) const = default;
};

struct Spoil {
  Given<PitSideName> side{PitSideName::left};
  Given<Length> setback{Length{0.61}};
  std::optional<Length> height;
  std::string extra;
  bool operator==(const Spoil&) const = default;
};

struct Ladder {
  Given<PitSideName> side{PitSideName::back};
  Given<Length> along;
  std::string extra;
  bool operator==(const Ladder&) const = default;
};

/// A shield or box as its maker rates it: a row of the user's own.
struct RatedShield {
  std::optional<Length> depth;              ///< deepest pit it is rated for
  std::optional<ExcavationType> soil_type;  ///< worst soil it is rated for
  std::string source;                       ///< plate or tabulated data
  std::string extra;
  bool operator==(const RatedShield&) const = default;
};

struct Pit {
  std::optional<Length> floor_length;
  std::optional<Length> floor_width;
  std::optional<Length> floor_elevation;
  std::optional<Length> floor_offset;
  /// Corners of a floor that is no rectangle; instead of length and width. x from the face into the pit, y to the left
  /// (looking along the line) of the middle of the floor, in either order round. Empty: a rectangle.
  PlanLine floor_outline;
  Given<Length> working_length{Length{1.0}};
  Given<Length> cradle_height;
  Given<Length> slab_thickness;
  Given<Length> sump_depth;
  std::optional<ExcavationType> soil_type;
  std::string confirmed_by;
  std::optional<Duration> open_time;
  PitSigns signs;
  PitSides sides;
  RatedShield shield;
  Statement load_design;  ///< of a support of all sides, sized for the loads beside the pit
  Spoil spoil;
  Ladder ladder;
  Given<Length> allowance{Length{0.10}};  ///< exit pit: added to the arrival band
  std::string extra;
  bool operator==(const Pit&) const = default;
};

struct Pits {
  Given<ExcavationRules> rules{ExcavationRules::us_1926};
  Pit launch;
  Pit exit;
  std::string extra;
  bool operator==(const Pits&) const = default;
};

}  // namespace burrow
