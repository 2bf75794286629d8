#pragma once
/// Groups of wheels of the European codes, spread by the half-space, at the worst place below them.

#include <vector>

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/load/half_space.h"

namespace burrow {

/// Two axles 1.2 m apart in each lane of 3 m, wheels 2.0 m apart on 0.40 × 0.40 m: 300, 200, 100 kN an axle in the
/// first, second and third lane. The second and third lie on either side of the first.
/// Source: EN 1991-2 load model 1 (axle loads second-hand, geometry from memory). Dynamic part included.
/// Range: 1 to 3 lanes, else a bug.   Evidence: WheelGroup.*
std::vector<RectangleLoad> european_wheels(int lanes);

/// One axle, wheels 1.8 m apart. Garage and parking areas: to 30 kN gross 20 kN on 0.10 m squares; to 160 kN gross
/// 90 kN on 0.20 m squares.   Source: EN 1991-1-1 categories F and G (from memory).
std::vector<RectangleLoad> car_wheels();
std::vector<RectangleLoad> light_vehicle_wheels();

/// Greatest stress below a group, over places at this depth, by search on a grid of 0.1 m over a quarter that mirrors
/// into the others or, where the lanes differ, a half.
/// Range: depth > 0.   Errors: out_of_range.   Evidence: WheelGroup.LaneTandem_WorstPlace
Result<Pressure> worst_stress(const std::vector<RectangleLoad>& wheels, Length depth);

enum class WheelGroup { european_1, european_2, european_3, light_vehicle, car };

/// `worst_stress` read off between 96 depths from 0.05 to 60 m, straight in the logarithms; made once for each group.
/// Deeper it falls as the square of the depth. Less than 0.4 % off.
/// Range: depth > 0; less than 0.05 m counts as that.   Evidence: WheelGroup.Table_AgainstTheSearch
Result<Pressure> group_pressure(WheelGroup group, Length depth);

/// With the even load of load model 1 added: 9 kN/m² on the first lane, 2.5 beside it without end.
Result<Pressure> european_pressure(int lanes, Length depth);

}  // namespace burrow
