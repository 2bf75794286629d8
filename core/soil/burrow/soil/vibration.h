#pragma once
/// Vibration of the ground by the blows of the tool, and what buildings and buried pipes are held to bear.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/soil/soil.h"

namespace burrow {

/// How a ground passes blows on: k_p of the percussive form, n of the distance form.
struct BlowGround {
  double scale = 1.5;     ///< k_p: 1 soft or loose, 1.5 stiff or medium dense, 3 very stiff or dense, 5 refusal
  double exponent = 1.3;  ///< n: 1.4 weak, 1.3 competent, 1.1 hard, 1.0 rock
};

/// Source: k_p BS 5228-2 Table E.1; n Caltrans soil classes I to IV (from memory); which of our soils belongs where is
/// our model: s_u below 40 kPa soft, below 150 stiff, 400 and more as refusal; φ′ below 32° loose, below 36° medium,
/// 39.5° and more as refusal.
/// Evidence: Vibration.Ground_*
BlowGround blow_ground(const Soil& soil);

/// Resultant peak particle velocity, m/s: v = k_p √W/r^1.3 mm/s, W in J, r slope distance in m.
/// Source: BS 5228-2 Table E.1, percussive piling. Its stated range is W 1.5–85 kJ at 1–111 m: piercing tools (0.05–1
/// kJ) lie below it, so this is an extrapolation.   Range: W ≥ 0, r > 0.   Errors: out_of_range.
/// Evidence: PublishedVibration.BS5228_2_PercussiveForm
Result<double> percussive_vibration_m_s(double energy_J, Length distance, double scale);

/// Peak particle velocity, m/s: v = v_ref (25 ft/r)^n √(W/W_ref), v_ref 0.65 in/s at W_ref 36 000 ft·lb for impact
/// pile drivers. Source: Caltrans 2013 eq. 9; eq. 12 is the same without the energies.   Range: as above, W_ref > 0.
/// Evidence: PublishedVibration.Caltrans2013_Examples
struct ReferenceBlow {
  double velocity_m_s = 0.65 * 0.0254;
  double energy_J = 36000 * 1.3558179483314004;
};
Result<double> distance_vibration_m_s(double energy_J, Length distance, double exponent, ReferenceBlow reference = {});

/// Upper bound beside tunnelling machines, 180/r^1.3 mm/s: for comparison.   Source: TRL 429 eq. 24.
Result<double> tunnelling_bound_m_s(Length distance);

/// Lines of DIN 4150-3 Table 1, short-term vibration at the foundation: 1 commercial, 2 dwellings, 3 sensitive.
/// m/s: 20/5/3 mm/s to 10 Hz, rising evenly to 40/15/8 at 50 and 50/20/10 at 100 Hz, beyond as at 100.
/// Range: line 1 to 3, frequency > 0.   Errors: out_of_range.   Evidence: PublishedVibration.DIN4150_3_Line2
Result<double> din_4150_limit_m_s(int line, Frequency frequency);
/// BS 7385-2 line 2, unreinforced or light buildings: 15 mm/s at 4 Hz, 20 at 15, 50 from 40 Hz on, even between.
/// Range: frequency ≥ 4 Hz.   Evidence: PublishedVibration.BS7385_2_Line2
Result<double> bs_7385_limit_m_s(Frequency frequency);

}  // namespace burrow
