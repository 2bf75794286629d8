#pragma once
/// What a test hole where the bore passes would buy.

#include "burrow/clearance/clearance.h"

namespace burrow {

/// The crew measures where the utility lies, and goes on only if what was found is good enough; else the layout is
/// changed.
struct HolePlan {
  Length hole_sd;           ///< error of the measurement
  double contact_stop = 0;  ///< they go on up to this chance of contact …
  Length required;          ///< … and from this clear gap on
};

struct HoleWorth {
  double chance_to_go_on = 1;  ///< Q
  double chance_after = 0;     ///< that they go on and yet touch it: Q times the chance of contact then
};

/// Measuring alone does not change the expected chance of contact; acting on it does. Along the common normal the gap
/// found, m, is normal about δ with τ² = s_u⁴/(s_u² + s_h²); after it the utility's error is s_u s_h/√(s_u² + s_h²) and
/// the chance p(m) that of a crossing. p falls with |m|, so that the crew goes on from some |m*| outward:
/// Q = P(|m| ≥ m*), and chance_after = E[p(m); |m| ≥ m*], never more than the chance of contact as it is.
/// Beside a run (`bound`) this is the place nearest the bore seen along the common normal alone: one hole does not
/// settle a run, and both numbers are a guide there.
/// Source: derived (normal conditioning; one quadrature).   Symbols: δ gap of the axes, s_u error of the utility, s_h
/// of the hole.   Range: an answer with a contact chance and known errors.   Evidence: HoleWorth.*
HoleWorth test_hole_worth(const Clearance& clearance, const HolePlan& plan);

/// Its working: code `utility.after-hole`.
Working working_of(const Clearance& clearance, const HolePlan& plan, const HoleWorth& worth);

/// Chance of touching any of them: 1 − ∏(1 − P), plain chances, as if independent. Empty: one of them is not known.
std::optional<double> contact_chance_of_any(const std::vector<Clearance>& all);

/// Its working: code `utility.contact-any`, one input for each chance above 0.
Working working_of_any(const std::vector<Clearance>& all, double chance);

}  // namespace burrow
