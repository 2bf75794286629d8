#pragma once
/// The two pits of a crossing: floors as typed or proposed, cut out of the ground.

#include "burrow/bore/path.h"
#include "burrow/bore/tool.h"
#include "burrow/crossing/crossing.h"
#include "burrow/pit/shape.h"
#include "burrow/pit/site_surface.h"

namespace burrow {

/// So near to the floor of a pit a surveyed point must lie for the ground across the line to count there.
/// Source: our default.
inline constexpr double surveyed_reach_m = 10;

/// What a floor needs. `elevation`: the highest that lets the tool lie or arrive on its axis.
struct FloorWanted {
  Length length, width, elevation;
};

/// Where a pipe in pieces enters the ground: at the launch pit where it is pushed or towed behind the tool; one that is
/// pulled in after the tool at the exit pit, unless a launch floor was entered that holds a piece.
/// Source: our default.   Evidence: PipePieces.*
struct PieceEntry {
  Length at_launch, at_exit;  ///< length of a piece that has to lie there; 0: none
};
PieceEntry piece_entry(const Crossing& crossing);

/// Of the launch pit: L_t + working length (of a pipe whose pieces enter here: a piece, where that is longer than the
/// tool) by max(0.9 m, D + 0.8 m), its level the axis less the tool's
/// radius, cradle and slab. The proposal is that.
/// Source: our model.   Evidence: LaunchPit.*, PitRoom.*, PipePieces.*
FloorWanted launch_floor_wanted(const Crossing& crossing, const Tool& tool);

/// Launch pit, behind the face (x < launch station). Floor as wanted; typed values win. Sides of the soil type typed,
/// else Type C.
/// It is cut out of the ground line, level across; where a surveyed point lies within `surveyed_reach_m` of its floor,
/// out of the surface through line and points. `surface`: that of the site, if it was made before. The same holds for
/// the other pits.
/// A floor entered as an outline counts instead of length and width; one that `fault_of_floor` finds fault with does
/// not.
/// Source: our model.   Evidence: LaunchPit.*
PitShape launch_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables,
                          const SiteSurface& surface = {});
/// Its earth if it stood with other sides than those entered: that of the whole shape, sooner computed.
/// Evidence: PitProposal.OtherSides_EarthOfTheWholeShape
double launch_pit_m3(const Crossing& crossing, const Tool& tool, const Tables& tables, const PitSides& sides,
                     const SiteSurface& surface = {});

/// Where the bore comes through the exit face.
struct ArrivalSpread {
  double offset_m = 0, elevation_m = 0;
  double sd_lateral_m = 0, sd_vertical_m = 0;
};

/// The mean arrival. A path that does not arrive is replaced by the straight launch line, with the spread it had where
/// it ended, or the set-up errors over that length where they are more.
ArrivalSpread expected_arrival(const Crossing& crossing, const BorePath& path);

/// Of an exit pit about `centre`: it takes in the 90 % band of the arrival and the allowance, as low as
/// z − 1.645 sd − a − allowance, as wide as max(0.9 m, 2 (off + 1.645 sd + a + allowance)), off how far the mean
/// arrival lies beside the centre. As long as the tool plus the working length: it is driven out whole, then uncoupled
/// by a person standing beside its tail and lifted level.
/// Source: our model.   Evidence: ExitPit.*, PitRoom.*
FloorWanted exit_floor_wanted(const Crossing& crossing, const Tool& tool, const ArrivalSpread& arrival, Length centre);

/// Exit pit, beyond the exit face. Floor as wanted, about the offset entered for the exit, else about the mean arrival;
/// never proposed wider than the limit `exit_widest_m`: where the band needs more, the checks say so. Typed values win.
/// Source: our model.   Evidence: ExitPit.*
PitShape exit_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path,
                        const SiteSurface& surface = {});
double exit_pit_m3(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path,
                   const PitSides& sides, const SiteSurface& surface = {});

/// Where an arriving bore is wanted, on the exit face.
struct ExitOpening {
  double right_m = 0, left_m = 0;  ///< offsets, increasing
  double low_m = 0, high_m = 0;    ///< elevations
};

/// The width of the floor at the face, from 0.1 m above it up to the ground. `widest`: for a pit left to the program,
/// the widest exit the limits allow; it counts where it is wider. Source: our model.   Evidence: ExitWindow.*
ExitOpening exit_opening(const PitShape& exit, Length ground, std::optional<Length> widest = std::nullopt);

/// Chance that a bore which arrives does so inside the exit opening.
/// Source: our model; independent normal errors across and up.   Evidence: ExitWindow.*
double chance_inside(const PitShape& exit, const ArrivalSpread& arrival, Length ground,
                     std::optional<Length> widest = std::nullopt);

}  // namespace burrow
