#pragma once
/// Pressure along the air line: hose, couplings and lubricator one after the other.

#include <cstddef>
#include <optional>
#include <vector>

#include "burrow/air/atmosphere.h"
#include "burrow/base/result.h"
#include "burrow/crossing/air.h"

namespace burrow {

/// A part as a straight pipe that resists as it does.
struct LinePart {
  std::size_t entered = 0;  ///< which part of the crossing's list
  Length length;            ///< of a hose; of a fitting its equivalent length times their number
  Length bore;
  Length roughness;
  bool operator==(const LinePart&) const = default;
};

/// Starting values for fittings whose equivalent length nobody entered (our default).
inline constexpr double coupling_equivalent_m = 0.6;
inline constexpr double lubricator_equivalent_m = 1.5;

/// The parts with what was not entered filled in: a fitting has the bore of the hose before it, the first ones that of
/// the first hose.
/// Errors: `place` "hose" (none, or one without length or bore), "hose bore" (under 1 mm or over 5 m), "roughness"
/// (over a twentieth of the bore, beyond Colebrook), "length" (over 1e5 m or none).   Evidence: AirLine.Parts_*
Result<std::vector<LinePart>> line_parts(const std::vector<AirPart>& entered);

/// Darcy friction factor: the greater of 64/Re and Colebrook's, so that it has no jump where flow turns turbulent.
/// Source: Colebrook 1939, 1/√f = −2 log10(ε/(3.7 D) + 2.51/(Re √f)), as usually printed (from memory); solved by two
/// Newton steps from Haaland's formula.   Symbols: `relative_roughness` ε/D.
/// Range: Re > 0, 0 ≤ ε/D ≤ 0.05 (callers inside have checked them).   Evidence: AirLine.Colebrook_*
double friction_factor(double reynolds, double relative_roughness);

struct PartFlow {
  std::size_t entered = 0;
  double inlet_Pa = 0, outlet_Pa = 0;  ///< absolute
  double speed_m_s = 0;                ///< at its outlet
  bool choked = false;                 ///< the air leaves it at the speed at which no more can pass
  bool operator==(const PartFlow&) const = default;
};

/// From the tool back to the compressor: what pressure each part needs at its inlet to pass the flow.
/// Source: isothermal flow of a perfect gas in a pipe (textbook), p1² − p2² = G² R T (f L/D + 2 ln(p1/p2)); level
/// differences and the losses where the bore changes are left out (fittings carry equivalent lengths).
/// A part whose outlet would have to be below p* = G √(R T) is choked there: it discharges at p*, whatever stands
/// behind. Worked backward, because forward there is no solution beyond the choked flow and here there always is one.
/// Symbols: G mass flow by area.   Range: outlet > 0, mass flow ≥ 0, parts from `line_parts`.
/// Evidence: AirLine.*, PublishedAir.*
std::vector<PartFlow> flow_back(const std::vector<LinePart>& parts, const SiteAir& air, Pressure outlet_absolute,
                                double mass_kg_s);
/// The first inlet of the same alone.
Pressure inlet_for(const std::vector<LinePart>& parts, const SiteAir& air, Pressure outlet_absolute, double mass_kg_s);

/// Loss by the older formula of the trade, for comparison only: it takes rough iron pipe and so gives more.
/// Source: Harris, Δp = L Q²/(2390 P d^5.31) in psi, ft, ft³/min of free air, psia in the mean, in (read), as
/// p1² − p2² = 2 L Q²/(2390 d^5.31).   Empty: it asks for more than there is.
/// Range: inlet > 0, flow ≥ 0 at sea-level density.   Evidence: PublishedAir.Harris_*
std::optional<Pressure> harris_outlet(const std::vector<LinePart>& parts, Pressure inlet_absolute, VolumeFlow free_air);

}  // namespace burrow
