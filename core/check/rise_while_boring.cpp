#include "burrow/check/rise_while_boring.h"

#include <cmath>

namespace burrow {

std::vector<double> rise_with_tip_at(const std::vector<HeavePoint>& heave, double station_m) {
  std::vector<double> rise;
  rise.reserve(heave.size());
  for (const HeavePoint& p : heave) {
    const double ahead = p.station_m - station_m, slant = std::hypot(ahead, p.depth_m);
    rise.push_back(slant > 0 ? p.low_m / 2 * (1 - ahead / slant) : p.low_m / 2);
  }
  return rise;
}

}  // namespace burrow
