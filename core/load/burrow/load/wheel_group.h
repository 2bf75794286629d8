#pragma once
/// Groups of wheels of the European codes, spread by the half-space, at the worst place below them.

#include <vector>

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/load/half_space.h"

namespace burrow {

/// Notional lanes of a carriageway. Below 5.4 m one of 3 m, from 5.4 to below 6 m two of half the width, from 6 m on as
/// many of 3 m as it holds; more than three bear no more wheels.
/// Source: EN 1991-2:2003 4.2.3, Table 4.1 (second-hand).   Range: any; what is no width counts as one lane.
/// Evidence: EuropeanLanes.*
struct NotionalLanes {
  int count = 1;
  double width_m = 3;
  bool operator==(const NotionalLanes&) const = default;
};
NotionalLanes notional_lanes(Length carriageway);
inline constexpr double two_lanes_from_m = 5.4, three_metre_lanes_from_m = 6.0;

/// Two axles 1.2 m apart in the middle of each lane, wheels 2.0 m apart on 0.40 × 0.40 m: 300, 200, 100 kN an axle in
/// the first, second and third lane. The second and third lie on either side of the first.
/// Source: EN 1991-2 load model 1 (axle loads, patch, gauge and spacing second-hand). Dynamic part included.
/// Range: 1 to 3 lanes, else a bug.   Evidence: WheelGroup.*
std::vector<RectangleLoad> european_wheels(int lanes, double lane_width_m = 3);

/// One axle of 400 kN, dynamic part included: wheels 2.0 m apart on 0.35 m along by 0.60 m across.
/// Source: EN 1991-2 4.3.3, load model 2 (axle and wheel loads second-hand, patch and gauge from memory).
/// Evidence: WheelGroup.LoadModel2_*
std::vector<RectangleLoad> european_single_axle();

/// One axle, wheels 1.8 m apart. Garage and parking areas: to 30 kN gross 20 kN on 0.10 m squares; to 160 kN gross
/// 90 kN on 0.20 m squares.   Source: EN 1991-1-1 categories F and G (from memory).
std::vector<RectangleLoad> car_wheels();
std::vector<RectangleLoad> light_vehicle_wheels();

/// Greatest stress below a group, over places at this depth, by search on a grid of 0.1 m over a quarter that mirrors
/// into the others or, where the lanes differ, a half: to the middle of the gap between the first and the second.
/// Range: depth > 0.   Errors: out_of_range.   Evidence: WheelGroup.LaneTandem_WorstPlace
Result<Pressure> worst_stress(const std::vector<RectangleLoad>& wheels, Length depth);

enum class WheelGroup { european_1, european_2, european_3, european_2_narrow, european_axle, light_vehicle, car };

/// `worst_stress` read off between 96 depths from 0.05 to 60 m, straight in the logarithms; made once for each group.
/// Deeper it falls as the square of the depth. Less than 0.4 % off.
/// Range: depth > 0; less than 0.05 m counts as that.   Evidence: WheelGroup.Table_AgainstTheSearch
Result<Pressure> group_pressure(WheelGroup group, Length depth);

struct EuropeanPressure {
  NotionalLanes lanes;
  double carriageway_m = 0;
  double model_1_Pa = 0;  ///< tandems and even load
  double model_2_Pa = 0;  ///< single axle, by itself
  [[nodiscard]] double greater_Pa() const { return model_1_Pa > model_2_Pa ? model_1_Pa : model_2_Pa; }
  bool operator==(const EuropeanPressure&) const = default;
};
/// Load models 1 and 2, of which the greater counts. To the tandems of the first comes its even load, 9 kN/m² on 3 m of
/// the first lane, 2.5 beside it without end. Two lanes narrower than 3 m are put as near as the narrowest, 2.7 m (the
/// safe side).   Range: depth > 0.   Errors: out_of_range.   Evidence: WheelGroup.European*, EuropeanLanes.*
Result<EuropeanPressure> european_pressure(Length carriageway, Length depth);

}  // namespace burrow
