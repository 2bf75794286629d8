/// What the symbols of a working stand for: bore, utilities, surface.

#include "burrow/base/phrase.h"
#include "working_symbols.h"

namespace burrow {

namespace {

constexpr SymbolRow rows_1[] = {{"D", translatable("diameter of the tool")},
                                {"x", translatable("station")},
                                {"y", translatable("offset")},
                                {"L", translatable("length of the bore")},
                                {"z_ground", translatable("level of the ground")},
                                {"z_axis", translatable("level of the bore’s axis")},
                                {"z_floor", translatable("level of the pit floor")},
                                {"P", translatable("chance")},
                                {"Φ", translatable("normal distribution")},
                                {"sd", translatable("standard deviation")},
                                {"ds", translatable("piece of the path")}};
constexpr SymbolRow rows_2[] = {{"c", translatable("steering constant")},
                                {"f(c)", translatable("its density")},
                                {"p", translatable("share of a ground, where guesses leave several")},
                                {"P_ground", translatable("chance in that ground")}};
constexpr SymbolRow rows_3[] = {{"y_right", translatable("right edge of the exit window")},
                                {"y_left", translatable("left edge of the exit window")},
                                {"z_low", translatable("lower edge of the exit window")},
                                {"z_high", translatable("upper edge of the exit window")}};
constexpr SymbolRow rows_4[] = {{"x_exit", translatable("station of the exit")},
                                {"x_launch", translatable("station of the launch")}};
constexpr SymbolRow rows_5[] = {{"ζ(c)", translatable("greatest of (z + D/2 − z_ground)/s along the bore with c")}};
constexpr SymbolRow rows_6[] = {{"z", translatable("level of the axis")}};
constexpr SymbolRow rows_7[] = {{"ζ(c)", translatable("greatest of (C_wanted − C)/s along the stretch with c")},
                                {"C_wanted", translatable("cover required")},
                                {"C", translatable("cover")}};
constexpr SymbolRow rows_8[] = {{"ζ", translatable("their score")},
                                {"s", translatable("standard deviation of the height")}};
constexpr SymbolRow rows_9[] = {{"N", translatable("refusals to be expected")}, {"r", translatable("rate of refusal")}};
constexpr SymbolRow rows_10[] = {{"N_from", translatable("refusals to be expected before it")},
                                 {"N_to", translatable("refusals to be expected to its end")},
                                 {"from", translatable("station of its beginning")},
                                 {"to", translatable("station of its end")}};
constexpr SymbolRow rows_11[] = {{"Δz", translatable("departure from the aim")},
                                 {"z_0", translatable("level of the axis at the launch")},
                                 {"x_0", translatable("station of the launch")},
                                 {"i", translatable("grade of the aim")}};
constexpr SymbolRow rows_12[] = {{"set", translatable("advance of a blow")}};
constexpr SymbolRow rows_13[] = {{"η", translatable("efficiency of the blow")},
                                 {"E", translatable("energy of a blow")},
                                 {"R", translatable("resistance")},
                                 {"R_nose", translatable("resistance at the nose")},
                                 {"J", translatable("damping")},
                                 {"v", translatable("speed of the tool after the blow")},
                                 {"r_e", translatable("rebound")},
                                 {"p", translatable("gauge pressure")},
                                 {"share", translatable("share of the pressure that works")},
                                 {"A_piston", translatable("area of the piston")},
                                 {"d_piston", translatable("diameter of the piston")},
                                 {"stroke", translatable("stroke of the striker")},
                                 {"e", translatable("restitution")},
                                 {"m_striker", translatable("mass of the striker")},
                                 {"m_tool", translatable("mass of the tool")},
                                 {"α", translatable("half angle of the nose")}};
constexpr SymbolRow rows_14[] = {{"R_side", translatable("resistance along the side")}};
constexpr SymbolRow rows_15[] = {{"grip", translatable("friction over recoil")},
                                 {"p A_piston", translatable("recoil: pressure on the piston")}};
constexpr SymbolRow rows_16[] = {
    {"t", translatable("time of half of all bores")}, {"f", translatable("blow rate")},
    {"F", translatable("factor from the field")},     {"F_low", translatable("its low end")},
    {"F_high", translatable("its high end")},         {"k", translatable("spread")},
    {"P10", translatable("time of one bore in ten")}, {"P90", translatable("time of nine bores in ten")}};
constexpr SymbolRow rows_17[] = {{"C", translatable("cover over the crown of the hole")}};
constexpr SymbolRow rows_18[] = {{"C_low", translatable("low estimate")},
                                 {"sd", translatable("standard deviation of the height")}};
constexpr SymbolRow rows_19[] = {{"C_n", translatable("neutral cover")}, {"dθ/ds", translatable("bend of the path")}};
constexpr SymbolRow rows_20[] = {
    {"r", translatable("reach")}, {"n", translatable("reach over radius")}, {"G", translatable("shear modulus")}};
constexpr SymbolRow rows_21[] = {{"a", translatable("radius of the hole")}};
constexpr SymbolRow rows_22[] = {{"s_u", translatable("undrained strength")}};
constexpr SymbolRow rows_23[] = {{"β", translatable("angle")},
                                 {"skew", translatable("skew of what stands on top")},
                                 {"ψ", translatable("heading of the bore")}};
constexpr SymbolRow rows_24[] = {{"a", translatable("distance square to the edge")},
                                 {"x_edge", translatable("station of the edge")},
                                 {"skew", translatable("skew of the edge")}};
constexpr SymbolRow rows_25[] = {{"x_face", translatable("station of the pit face")}};
constexpr SymbolRow rows_26[] = {{"g", translatable("gap in plan")},
                                 {"x", translatable("station of the nearer place")},
                                 {"y", translatable("offset there")},
                                 {"x_edge", translatable("station of the edge there")},
                                 {"y_edge", translatable("offset of the edge there")}};
constexpr SymbolRow rows_27[] = {{"s", translatable("settlement")},
                                 {"f", translatable("share of the gap that comes down")},
                                 {"n", translatable("pipes in the hole")},
                                 {"d", translatable("outside diameter of a pipe")}};
constexpr SymbolRow rows_28[] = {{"h", translatable("depth of the axis")}};
constexpr SymbolRow rows_29[] = {{"w", translatable("heave")},
                                 {"w_high", translatable("heave, high estimate")},
                                 {"f_v", translatable("share of the hole that heaves")}};
constexpr SymbolRow rows_30[] = {{"w", translatable("movement of the peg")},
                                 {"z_then", translatable("level afterwards")},
                                 {"z_before", translatable("level before")}};
constexpr SymbolRow rows_31[] = {{"g", translatable("gap to the plane at 45° under the edge")},
                                 {"b", translatable("distance beside the footing")},
                                 {"t", translatable("depth below its founding level")}};
constexpr SymbolRow rows_32[] = {
    {"v", translatable("peak particle velocity")}, {"v_1", translatable("by the first form")},
    {"v_2", translatable("by the second form")},   {"k_p", translatable("factor of the ground")},
    {"W", translatable("energy of a blow")},       {"r", translatable("distance")},
    {"n", translatable("exponent of the ground")}};
constexpr SymbolRow rows_33[] = {{"δ", translatable("least distance axis to axis")}};
constexpr SymbolRow rows_34[] = {{"x_bore", translatable("station of the bore there")},
                                 {"y_bore", translatable("offset of the bore there")},
                                 {"z_bore", translatable("level of the bore there")},
                                 {"x_utility", translatable("station of the utility there")},
                                 {"y_utility", translatable("offset of the utility there")},
                                 {"z_utility", translatable("level of the utility there")}};
constexpr SymbolRow rows_35[] = {{"R", translatable("radii of tool and utility together")},
                                 {"g", translatable("clear gap, outside to outside")},
                                 {"g_low", translatable("low estimate")},
                                 {"s_bore", translatable("spread of the bore across the utility")},
                                 {"s_utility", translatable("location error of the utility across")},
                                 {"α", translatable("angle between the two")},
                                 {"δ(c)", translatable("distance with c")},
                                 {"s_bore(c)", translatable("spread of the bore with c")},
                                 {"e(c)", translatable("share of the bores that passes between its ends")},
                                 {"s_worst", translatable("location error that is worst, from 0 to the stated one")},
                                 {"P_worst", translatable("worst chance")},
                                 {"P_near", translatable("chance of coming nearer")}};
constexpr SymbolRow rows_36[] = {{"s", translatable("spread of bore and utility together")},
                                 {"g_req", translatable("gap required, without spread")}};
constexpr SymbolRow rows_37[] = {{"g_all", translatable("clear gap required in all")}};
constexpr SymbolRow rows_38[] = {{"P_any", translatable("chance of touching any")},
                                 {"P", translatable("chance of each")}};
constexpr SymbolRow rows_39[] = {{"P_after", translatable("chance left")},
                                 {"s_u", translatable("location error now")},
                                 {"s_h", translatable("error of a level measured in the hole")},
                                 {"P_stop", translatable("chance from which the bore is stopped")},
                                 {"g", translatable("gap required when exposed")},
                                 {"m", translatable("distance that is found")},
                                 {"p(m)", translatable("chance of contact then")},
                                 {"E", translatable("mean")}};
constexpr SymbolRow rows_40[] = {{"u", translatable("movement")},
                                 {"u_out", translatable("movement outward")},
                                 {"u_up", translatable("movement upward")},
                                 {"f_v", translatable("share of the hole that moves the ground")},
                                 {"x", translatable("distance beside the bore")},
                                 {"z", translatable("depth of the utility")}};
constexpr SymbolRow rows_41[] = {{"ε", translatable("strain")}};
constexpr SymbolRow rows_42[] = {{"β", translatable("angle of crossing")},
                                 {"d", translatable("outside diameter")},
                                 {"κ", translatable("bend beside the bore")},
                                 {"ε_x", translatable("stretch beside the bore")},
                                 {"κ_front", translatable("bend ahead of the nose")},
                                 {"ε_front", translatable("stretch ahead of the nose")},
                                 {"j", translatable("share of the stretch that counts")}};
constexpr SymbolRow rows_43[] = {{"λ", translatable("services per area")}};
constexpr SymbolGroup groups[] = {
    {"*", rows_1},
    {"bore.exit-window bore.daylight-chance bore.cover-chance surface.cover-chance utility.contact "
     "utility.contact-worst utility.encroachment",
     rows_2},
    {"bore.exit-window", rows_3},
    {"bore.length", rows_4},
    {"bore.daylight-chance", rows_5},
    {"bore.daylight-chance bore.climb bore.sag", rows_6},
    {"bore.cover-chance surface.cover-chance", rows_7},
    {"bore.daylight-chance bore.cover-chance surface.cover-chance", rows_8},
    {"bore.refusal surface.stuck", rows_9},
    {"surface.stuck", rows_10},
    {"bore.climb bore.sag", rows_11},
    {"bore.set bore.efficiency bore.time", rows_12},
    {"bore.set bore.efficiency", rows_13},
    {"bore.set bore.efficiency bore.grip", rows_14},
    {"bore.grip", rows_15},
    {"bore.time", rows_16},
    {"bore.cover surface.cover bore.cover-low surface.cover-low bore.neutral-cover", rows_17},
    {"bore.cover-low surface.cover-low", rows_18},
    {"bore.neutral-cover", rows_19},
    {"bore.plastic-zone utility.plastic-zone", rows_20},
    {"bore.plastic-zone utility.plastic-zone surface.heave surface.heave-high utility.movement", rows_21},
    {"bore.plastic-zone utility.plastic-zone pit.base-heave", rows_22},
    {"surface.angle", rows_23},
    {"surface.pit-setback", rows_24},
    {"surface.pit-setback pit.bore-side-sloped", rows_25},
    {"surface.near-centre surface.pit-edge pit.edge-load pit.plant pit.tree", rows_26},
    {"surface.settlement", rows_27},
    {"surface.settlement surface.heave surface.heave-high utility.movement pipe.strain", rows_28},
    {"surface.heave surface.heave-high", rows_29},
    {"surface.levels-rose surface.levels-sank", rows_30},
    {"footing.influence", rows_31},
    {"building.vibration utility.vibration", rows_32},
    {"utility.distance utility.separation utility.gap-low utility.contact utility.contact-worst utility.encroachment "
     "utility.after-hole",
     rows_33},
    {"utility.distance", rows_34},
    {"utility.separation utility.gap-low utility.contact utility.contact-worst utility.encroachment utility.after-hole",
     rows_35},
    {"utility.separation utility.gap-low utility.contact utility.contact-worst utility.encroachment utility.after-hole "
     "utility.required",
     rows_36},
    {"utility.required", rows_37},
    {"utility.contact-any", rows_38},
    {"utility.after-hole", rows_39},
    {"utility.movement", rows_40},
    {"utility.strain pipe.strain", rows_41},
    {"utility.strain", rows_42},
    {"site.unknown-service", rows_43}};

}  // namespace

std::span<const SymbolGroup> symbols_of_bore() {
  return groups;
}

}  // namespace burrow
