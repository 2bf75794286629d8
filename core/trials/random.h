#pragma once
/// Random numbers of the trials: one stream for each block of trials, so that the answer does not depend on threads.

#include <array>
#include <boost/random/exponential_distribution.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cstdint>
#include <limits>

namespace burrow::trials {

/// xoshiro256++.   Source: Blackman & Vigna 2021 (from memory); state filled by splitmix64, as its authors advise.
class Engine {
 public:
  using result_type = std::uint64_t;
  static constexpr result_type min() { return 0; }
  static constexpr result_type max() { return std::numeric_limits<result_type>::max(); }

  Engine(std::uint64_t seed, std::uint64_t stream) {
    std::uint64_t mix = seed;
    mix = splitmix(mix) ^ stream;
    for (std::uint64_t& word : state_) word = splitmix(mix);
  }

  result_type operator()() {
    const std::uint64_t result = rotate_left(state_[0] + state_[3], 23) + state_[0];
    const std::uint64_t shifted = state_[1] << 17;
    state_[2] ^= state_[0];
    state_[3] ^= state_[1];
    state_[1] ^= state_[2];
    state_[0] ^= state_[3];
    state_[2] ^= shifted;
    state_[3] = rotate_left(state_[3], 45);
    return result;
  }

 private:
  static constexpr std::uint64_t rotate_left(std::uint64_t x, int bits) { return (x << bits) | (x >> (64 - bits)); }
  static std::uint64_t splitmix(std::uint64_t& state) {
    state += 0x9e3779b97f4a7c15U;
    std::uint64_t z = state;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31);
  }

  std::array<std::uint64_t, 4> state_{};
};

/// Standard normal and unit exponential draws (Boost's ziggurats: one word of the engine for most of them).
class Draws {
 public:
  Draws(std::uint64_t seed, std::uint64_t stream) : engine_(seed, stream) {}
  double normal() { return normal_(engine_); }
  double exponential() { return exponential_(engine_); }

 private:
  Engine engine_;
  boost::random::normal_distribution<double> normal_;
  boost::random::exponential_distribution<double> exponential_;
};

}  // namespace burrow::trials
