#pragma once
/// Highway wheels on the ground as the AASHTO LRFD bridge code spreads them through fill.

#include "burrow/base/enum_names.h"
#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

enum class HighwayVehicle { truck, tandem };
template <>
struct EnumNames<HighwayVehicle> {
  static constexpr std::pair<HighwayVehicle, std::string_view> list[] = {{HighwayVehicle::truck, "truck"},
                                                                         {HighwayVehicle::tandem, "tandem"}};
};

/// How far a load spreads for each unit of depth: 1.15 in select granular fill, 1.00 in any other (older editions);
/// later editions take 1.15 for all but concrete pipe.
inline constexpr double spread_granular = 1.15, spread_other = 1.00;

struct HighwayPressure {
  HighwayVehicle vehicle = HighwayVehicle::truck;
  double wheel_N = 0;
  double length_m = 0, width_m = 0;  ///< of the area the wheels are spread over
  int wheels = 1;                    ///< that share it: 1, 2 or 4
  double presence = 1.2;             ///< m, one loaded lane
  double impact = 0;                 ///< IM as a share
  double spread = spread_other;
  double pressure_Pa = 0;   ///< n P m (1 + IM)/(l w), service
  bool negligible = false;  ///< cover over 8 ft and over the span: the code lets it be left out
};

/// IM = 33 (1 − 0.125 D_E) %, not below 0, D_E cover in feet.
/// Source: AASHTO LRFD 3.6.2.2 (from memory).   Range: cover ≥ 0.   Evidence: Highway.LRFD_Impact
Result<Ratio> highway_impact(Length cover);

/// m = 1.20, 1.00, 0.85, 0.65 for 1, 2, 3, more loaded lanes.
/// Source: AASHTO LRFD 3.6.1.1.2 (from memory).   Range: lanes ≥ 1.
Result<Ratio> multiple_presence(int lanes);

/// Vertical pressure at the crown. Truck 16 kip wheels 6 ft apart, axles 14 ft; tandem 12.5 kip wheels, axles 4 ft;
/// patch 20 by 10 in. Length l = l_t + s H, width w = w_t + s H + 0.06 D_i; where neighbouring areas meet they count as
/// one, H ≥ (6 ft − w_t − 0.06 D_i)/s for wheels, H ≥ (axle distance − l_t)/s for axles.
/// Source: AASHTO LRFD 3.6.1.2.2 to .6, 3.6.2.2 (clauses from memory; wheel and spread reproduced against printed
/// examples, second-hand).
/// Range: cover > 0 (the code spreads so from 2 ft; above it this is its form put further), span ≥ 0, spread > 0.
/// Errors: out_of_range.   Evidence: Highway.*
Result<HighwayPressure> highway_pressure(HighwayVehicle vehicle, Length cover, Length span, Ratio spread);
/// The greater of truck and tandem.
Result<HighwayPressure> highway_pressure(Length cover, Length span, Ratio spread = {spread_other});

/// Pressure of one wheel alone without impact, n = 1: the trade's hand formula m f P/(l w).
/// Range: as above, presence and factor > 0.   Evidence: Highway.Printed_WheelExamples
Result<Pressure> single_wheel_pressure(Force wheel, Length cover, Ratio spread, Ratio presence, Ratio load_factor);

}  // namespace burrow
