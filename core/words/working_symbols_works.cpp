/// What the symbols of a working stand for: pits, pipe, air.

#include "burrow/base/phrase.h"
#include "working_symbols.h"

namespace burrow {

namespace {

constexpr SymbolRow rows_1[] = {{"h", translatable("head of water over the floor")},
                                {"z_water", translatable("level of the water")},
                                {"sump", translatable("depth of the sump")}};
constexpr SymbolRow rows_2[] = {{"d", translatable("depth")}};
constexpr SymbolRow rows_3[] = {{"h", translatable("difference")},
                                {"z_surface", translatable("level of the surface there")},
                                {"z_line", translatable("level of the ground line")}};
constexpr SymbolRow rows_4[] = {{"r", translatable("set-back")},
                                {"t", translatable("thickness of a layer, from the top down")},
                                {"n", translatable("its run for one of rise")}};
constexpr SymbolRow rows_5[] = {{"n", translatable("run for one of rise")}};
constexpr SymbolRow rows_6[] = {{"r", translatable("run")}, {"h", translatable("rise")}};
constexpr SymbolRow rows_7[] = {{"n", translatable("greatest rise for one of run")},
                                {"d_most", translatable("distance looked at")},
                                {"z(d)", translatable("level at distance d from the floor")}};
constexpr SymbolRow rows_8[] = {{"m", translatable("stretch without cover")},
                                {"x_surface", translatable("station where the side reaches the ground")}};
constexpr SymbolRow rows_9[] = {{"t", translatable("top of the support over the floor")},
                                {"z_top", translatable("level of its top")},
                                {"h", translatable("ground over the floor at that side")}};
constexpr SymbolRow rows_10[] = {{"u", translatable("foot of the support over the floor")},
                                 {"z_foot", translatable("level of its foot")}};
constexpr SymbolRow rows_11[] = {{"b", translatable("clear width")},
                                 {"y_left", translatable("left edge of the floor")},
                                 {"y_right", translatable("right edge of the floor")}};
constexpr SymbolRow rows_12[] = {{"w", translatable("room")}, {"L_floor", translatable("length of the floor")}};
constexpr SymbolRow rows_13[] = {{"L_t", translatable("length of the tool")}};
constexpr SymbolRow rows_14[] = {{"V_loose", translatable("volume, loose")},
                                 {"V", translatable("volume of a layer in the bank")},
                                 {"s", translatable("its swell")}};
constexpr SymbolRow rows_15[] = {{"V", translatable("volume")},
                                 {"L", translatable("length of the ridge")},
                                 {"b", translatable("width of the ridge")},
                                 {"h", translatable("height")}};
constexpr SymbolRow rows_16[] = {
    {"t", translatable("way")}, {"x", translatable("along the pit")}, {"y", translatable("across the pit")}};
constexpr SymbolRow rows_17[] = {{"V", translatable("volume dug")},
                                 {"V_straight", translatable("with upright sides")},
                                 {"V_sloped", translatable("with sloped sides")}};
constexpr SymbolRow rows_18[] = {{"s", translatable("room to spare")},
                                 {"b", translatable("distance in plan")},
                                 {"n", translatable("run for one of depth")},
                                 {"t", translatable("depth below its level")}};
constexpr SymbolRow rows_19[] = {{"F", translatable("safety")}};
constexpr SymbolRow rows_20[] = {
    {"N_c", translatable("bearing factor")},    {"σ", translatable("weight of the ground beside")},
    {"q", translatable("load at the surface")}, {"d", translatable("depth of the pit")},
    {"B", translatable("width of the pit")},    {"L", translatable("length of the pit")}};
constexpr SymbolRow rows_21[] = {{"W", translatable("weight of the layer under the floor")},
                                 {"h", translatable("head of water below it")}};
constexpr SymbolRow rows_22[] = {{"γ_w", translatable("unit weight of water")}};
constexpr SymbolRow rows_23[] = {{"h", translatable("floor above what the tool needs")},
                                 {"t", translatable("room below the tool")}};
constexpr SymbolRow rows_24[] = {{"n", translatable("hole over pipe")}, {"d", translatable("widest thing drawn in")}};
constexpr SymbolRow rows_25[] = {{"p", translatable("pressure on the crown")},
                                 {"H", translatable("cover over the crown")}};
constexpr SymbolRow rows_26[] = {{"γ", translatable("unit weight of the ground")},
                                 {"K", translatable("earth pressure ratio")},
                                 {"μ′", translatable("friction in the ground")},
                                 {"Kμ′", translatable("earth pressure ratio times friction")},
                                 {"B", translatable("width of the silo")}};
constexpr SymbolRow rows_27[] = {{"n", translatable("wheels, or lanes")},
                                 {"P", translatable("load of a wheel")},
                                 {"m", translatable("presence factor")},
                                 {"IM", translatable("impact")},
                                 {"l", translatable("length of the spread area")},
                                 {"w", translatable("its width; of a carriageway where lanes are counted")},
                                 {"counted", translatable("1: counts, 0: too deep to count")},
                                 {"p_half-space", translatable("pressure by the half-space")},
                                 {"b", translatable("width of a lane")},
                                 {"p_1", translatable("pressure by the first load model")},
                                 {"p_2", translatable("pressure by the second load model")},
                                 {"q", translatable("load on the ground")},
                                 {"I", translatable("influence below an area")},
                                 {"p(H)", translatable("value of the table at H")},
                                 {"Int", translatable("whole part")}};
constexpr SymbolRow rows_28[] = {{"F", translatable("safe pull")},          {"n", translatable("pipes")},
                                 {"A", translatable("area of the wall")},   {"f_T", translatable("temperature factor")},
                                 {"f_t", translatable("time factor")},      {"T_y", translatable("yield strength")},
                                 {"σ", translatable("stress by the table")}};
constexpr SymbolRow rows_29[] = {{"T", translatable("force")},
                                 {"T_drag", translatable("along the straight")},
                                 {"T_turn", translatable("by the turns of the path")},
                                 {"L", translatable("length in the hole")},
                                 {"L_wet", translatable("of it under water")},
                                 {"μ", translatable("friction")},
                                 {"Σ|Δθ|", translatable("turns of the path together")},
                                 {"θ", translatable("inclination")},
                                 {"p", translatable("pressure of the ground on the pipe")},
                                 {"d", translatable("outside diameter of the pipe")},
                                 {"E", translatable("modulus")},
                                 {"r", translatable("gap around the pipe")},
                                 {"n A", translatable("area of all walls")}};
constexpr SymbolRow rows_30[] = {{"w", translatable("weight per length")}};
constexpr SymbolRow rows_31[] = {{"ΔL", translatable("change of length")}};
constexpr SymbolRow rows_32[] = {{"p", translatable("gap")}};
constexpr SymbolRow rows_33[] = {{"R", translatable("least radius")},
                                 {"κ", translatable("greatest bend of the path")},
                                 {"k", translatable("diameters allowed")}};
constexpr SymbolRow rows_34[] = {{"D", translatable("outside diameter of the pipe")}};
constexpr SymbolRow rows_35[] = {{"κ", translatable("bend of the path")},
                                 {"g", translatable("gap over the pipe")},
                                 {"g/(0.5 h)²", translatable("bend of the settling ground")}};
constexpr SymbolRow rows_36[] = {{"d", translatable("flattening")},
                                 {"P_ground", translatable("pressure of the ground")},
                                 {"P_traffic", translatable("pressure of the traffic")},
                                 {"T_service", translatable("temperature in service")},
                                 {"E_long", translatable("modulus, long-term")},
                                 {"E_short", translatable("modulus, short-term")},
                                 {"E′", translatable("modulus of the soil beside")},
                                 {"S", translatable("compression")},
                                 {"p", translatable("pressure from outside")},
                                 {"u", translatable("pressure of the water")},
                                 {"ν", translatable("Poisson’s ratio")},
                                 {"N", translatable("safety asked for")},
                                 {"H/D", translatable("cover over diameter")},
                                 {"R_w", translatable("buoyancy factor")},
                                 {"B′", translatable("support factor")},
                                 {"f_o", translatable("factor for flattening, ((1 − d)/(1 + d)²)³")}};
constexpr SymbolRow rows_37[] = {{"DR", translatable("diameter over wall")}};
constexpr SymbolRow rows_38[] = {{"σ", translatable("tension")}, {"p", translatable("pressure inside")}};
constexpr SymbolRow rows_39[] = {
    {"α", translatable("expansion")}, {"L", translatable("length")}, {"ΔT", translatable("change of temperature")}};
constexpr SymbolRow rows_40[] = {{"n", translatable("weight over water displaced")}};
constexpr SymbolRow rows_41[] = {{"p", translatable("pressure at the tool")},
                                 {"p_compressor", translatable("pressure at the compressor")},
                                 {"Δp", translatable("loss on the way")}};
constexpr SymbolRow rows_42[] = {{"Q", translatable("free air taken")},
                                 {"Q_n", translatable("free air as rated")},
                                 {"p_n", translatable("pressure as rated")},
                                 {"p_0", translatable("pressure of the air at sea level")}};
constexpr SymbolRow rows_43[] = {{"p_h", translatable("pressure of the air on site")},
                                 {"p", translatable("gauge pressure at the tool")}};
constexpr SymbolRow rows_44[] = {{"p1", translatable("pressure at its inlet, absolute")},
                                 {"p2", translatable("pressure at its outlet, absolute")},
                                 {"G", translatable("mass flow per area")},
                                 {"ε", translatable("roughness")},
                                 {"Re", translatable("Reynolds number")},
                                 {"f", translatable("friction factor")},
                                 {"L", translatable("length of the part")},
                                 {"D", translatable("bore of the part")}};
constexpr SymbolRow rows_45[] = {{"R", translatable("gas constant of air")}, {"T", translatable("temperature")}};
constexpr SymbolRow rows_46[] = {{"p", translatable("pressure at rest")},
                                 {"p_compressor", translatable("setting of the compressor")},
                                 {"p_regulator", translatable("setting of the regulator")}};
constexpr SymbolRow rows_47[] = {{"p", translatable("least rating")}, {"p_rated", translatable("rating of a part")}};
constexpr SymbolRow rows_48[] = {{"Δp", translatable("loss")},
                                 {"p1", translatable("pressure at the inlet, absolute")},
                                 {"S", translatable("sum over the parts")},
                                 {"d", translatable("bore of a part")},
                                 {"L", translatable("length of a part")}};
constexpr SymbolRow rows_49[] = {{"Q", translatable("free air")}};
constexpr SymbolRow rows_50[] = {{"m", translatable("water per time")},
                                 {"φ", translatable("relative humidity")},
                                 {"p_w", translatable("vapour pressure over water")},
                                 {"p_s", translatable("saturation pressure")}};
constexpr SymbolRow rows_51[] = {{"V", translatable("oil needed")},
                                 {"r", translatable("oil per time")},
                                 {"t", translatable("time of nine bores in ten")}};
constexpr SymbolRow rows_52[] = {{"s", translatable("way of the nose")},
                                 {"m", translatable("mark on the hose")},
                                 {"t", translatable("length of the tail fitting")}};
constexpr SymbolGroup groups[] = {
    {"pit.water", rows_1},
    {"pit.depth pit.shield-depth", rows_2},
    {"pit.ground", rows_3},
    {"pit.set-back", rows_4},
    {"pit.slope pit.heap", rows_5},
    {"pit.slope", rows_6},
    {"pit.slope-by-calculation", rows_7},
    {"pit.bore-side-sloped", rows_8},
    {"pit.support-short", rows_9},
    {"pit.support-foot", rows_10},
    {"pit.trench-width", rows_11},
    {"pit.working-space", rows_12},
    {"pit.working-space air.mark", rows_13},
    {"pit.loose", rows_14},
    {"pit.heap", rows_15},
    {"pit.ladder", rows_16},
    {"pit.proposal", rows_17},
    {"pit.footing-spread pit.track-spread", rows_18},
    {"pit.base-heave pit.uplift", rows_19},
    {"pit.base-heave", rows_20},
    {"pit.uplift", rows_21},
    {"pit.uplift pipe.float", rows_22},
    {"pit.floor-high", rows_23},
    {"pipe.hole", rows_24},
    {"pipe.earth pipe.earth-arched pipe.live", rows_25},
    {"pipe.earth pipe.earth-arched", rows_26},
    {"pipe.live", rows_27},
    {"pipe.safe-pull", rows_28},
    {"pipe.pull pipe.pull-closed pipe.push pipe.hose pipe.stretch", rows_29},
    {"pipe.pull pipe.pull-closed pipe.push pipe.hose pipe.stretch pipe.float", rows_30},
    {"pipe.pull pipe.pull-closed pipe.push pipe.hose pipe.stretch pipe.thermal", rows_31},
    {"pipe.push", rows_32},
    {"pipe.bend", rows_33},
    {"pipe.bend pipe.strain pipe.float", rows_34},
    {"pipe.strain", rows_35},
    {"pipe.deflection pipe.deflection-bare pipe.ring pipe.buckling pipe.buckling-bare", rows_36},
    {"pipe.deflection pipe.deflection-bare pipe.ring pipe.buckling pipe.buckling-bare pipe.pressure", rows_37},
    {"pipe.pressure", rows_38},
    {"pipe.thermal", rows_39},
    {"pipe.float", rows_40},
    {"air.pressure-low", rows_41},
    {"air.demand", rows_42},
    {"air.demand air.water", rows_43},
    {"air.line", rows_44},
    {"air.line air.water", rows_45},
    {"air.standing", rows_46},
    {"air.rating", rows_47},
    {"air.harris", rows_48},
    {"air.harris air.water", rows_49},
    {"air.water", rows_50},
    {"air.oil", rows_51},
    {"air.mark", rows_52}};

}  // namespace

std::span<const SymbolGroup> symbols_of_works() {
  return groups;
}

}  // namespace burrow
