#include "burrow/bore/spread.h"

#include <cmath>

namespace burrow {

void Spread::advance(double h, double g, double noise, double steer) {
  // cosh and sinh of √g h as series: |g| h² is far below 1 at every step taken here.
  const double q = g * h * h;
  const double diagonal = 1 + q / 2 * (1 + q / 12 * (1 + q / 30));
  const double upper = h * (1 + q / 6 * (1 + q / 20 * (1 + q / 42)));
  const double lower = g * upper;

  const double position = position_, both = both_, heading = heading_;
  position_ =
      diagonal * diagonal * position + 2 * diagonal * upper * both + upper * upper * heading + noise * h * h * h / 3;
  both_ = diagonal * lower * position + (diagonal * diagonal + upper * lower) * both + diagonal * upper * heading +
          noise * h * h / 2;
  heading_ = lower * lower * position + 2 * diagonal * lower * both + diagonal * diagonal * heading + noise * h;

  const double shift = shift_, turn = turn_;
  shift_ = diagonal * shift + upper * turn + steer * h * h / 2;
  turn_ = lower * shift + diagonal * turn + steer * h;
}

double Spread::sd(double constant_sd) const {
  const double by_constant = constant_sd * shift_;
  return std::sqrt(position_ + by_constant * by_constant);
}

}  // namespace burrow
