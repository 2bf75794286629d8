#pragma once
/// Chance that the bore touches a utility, in closed form. Seen along the bore, its axis is a point and the utility's
/// axis a straight line from `from` to `to`; they touch when the point lies within the contact radius of that line,
/// which is inside a stadium. Both places are uncertain, each by a normal error in that view.

namespace burrow {

/// A vector in the plane square to the bore: across (positive left) and up. On a sloping bore heights are those of
/// the upright plane times the cosine of the slope, which keeps the contact radius a circle.
struct ViewVector {
  double across_m = 0;
  double up_m = 0;
  bool operator==(const ViewVector&) const = default;
};

/// The utility's axis relative to the mean bore axis, widened by the contact radius R. A circle when `from` = `to`:
/// the utility runs along the bore.
struct Stadium {
  ViewVector from, to;
  double radius_m = 0;
};

/// Covariance in that view.
struct ViewSpread {
  double across_m2 = 0, up_m2 = 0, mixed_m2 = 0;
};

/// How badly the utility is located: one standard deviation across its line and one in height, as seen along the bore.
struct LocationSpread {
  ViewVector lateral, vertical;
};

/// The two errors together; each of the utility's taken `lateral_share` and `vertical_share` of its stated size.
ViewSpread total_spread(const ViewSpread& bore, const LocationSpread& location, double lateral_share = 1,
                        double vertical_share = 1);

/// Half widths of the bands of one coordinate, in standard deviations: 90 % and 99 %.
inline constexpr double band_90_sd = 1.645;
inline constexpr double band_99_sd = 2.576;

/// Beyond this many standard deviations a chance is taken as 0 (the true one is below 1e-17).
inline constexpr double no_chance_beyond_sd = 8.5;

/// Chance at a crossing: P = Φ((R − δ)/s) − Φ((−R − δ)/s).
/// Source: derived, along the common normal of two lines.   Symbols: δ distance of the axes, R contact radius, s
/// standard deviation along the common normal.   Range: radius ≥ 0, spread ≥ 0 (0: certain).
/// Evidence: PublishedContact.Derived_CrossingNormal, Contact.Crossing*
double crossing_chance(double distance_m, double radius_m, double spread_m);

/// The largest crossing chance for any s between `least_m` and `stated_m`: for δ > R it rises up to
/// s*² = 2δR / ln((δ+R)/(δ−R)) and falls after (derived: dP/ds = 0); for δ ≤ R the least s is the worst.
/// Evidence: Contact.WorstCrossing_*
double worst_crossing_chance(double distance_m, double radius_m, double least_m, double stated_m);

/// Chance that the bore lies inside the stadium, at any angle from crossing to parallel.
/// Source: derived; one quadrature across slices of the stadium, exact closed form where its ends are out of reach.
/// Accuracy 1e-9 for spreads above R/100.
/// Evidence: PublishedContact.Rice_EndSection, .Derived_Ellipse, Contact.Stadium*, Contact.Sweep_ContinuousOverAngle
double stadium_chance(const Stadium& stadium, const ViewSpread& spread);

/// The largest chance for any location error, lateral and vertical each between 0 and the stated one: a plain chance
/// falls again when a location gets very poor, and not knowing must not look safe. Non-decreasing in both, to 1e-6 of
/// itself. `known_worst`: where no error could give more than that, the chance at the stated one is enough.
/// Source: our model.   Evidence: Contact.Worst_NonDecreasingInBothErrors
double worst_stadium_chance(const Stadium& stadium, const ViewSpread& bore, const LocationSpread& location,
                            double known_worst = 0);

}  // namespace burrow
