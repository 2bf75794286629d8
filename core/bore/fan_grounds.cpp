#include "burrow/bore/fan_grounds.h"

#include <algorithm>

#include "burrow/soil/mistaken_soils.h"

namespace burrow {

namespace {

using Classes = std::vector<std::string>;

struct Mix {
  Classes classes;
  double chance = 1;
};

std::vector<Mix> every_combination(const std::vector<std::vector<SoilGuess>>& strata) {
  std::vector<Mix> all{{}};
  for (const std::vector<SoilGuess>& stratum : strata) {
    std::vector<Mix> finer;
    for (const Mix& mix : all)
      for (const SoilGuess& guess : stratum) {
        finer.push_back(mix);
        finer.back().classes.push_back(guess.soil);
        finer.back().chance *= guess.chance;
      }
    all = std::move(finer);
  }
  return all;
}

/// Product in the field of four numbers; its sum is the exclusive or.
unsigned times(unsigned a, unsigned b) {
  constexpr unsigned table[4][4] = {{0, 0, 0, 0}, {0, 1, 2, 3}, {0, 2, 3, 1}, {0, 3, 1, 2}};
  return table[a][b];
}

/// Which quarter of its chance a stratum stands in, in one of the sixteen.
unsigned quarter(unsigned run, std::size_t stratum) {
  const unsigned i = run / 4, j = run % 4;
  const auto column = static_cast<unsigned>(stratum % 5);
  return column == 4 ? j : i ^ times(column, j);
}

const std::string& class_in(const std::vector<SoilGuess>& guesses, unsigned quarter_of_four) {
  double left = (quarter_of_four + 0.5) / 4;
  for (const SoilGuess& guess : guesses) {
    if (left < guess.chance) return guess.soil;
    left -= guess.chance;
  }
  return guesses.front().soil;
}

std::vector<Mix> sixteen(const std::vector<std::vector<SoilGuess>>& strata) {
  std::vector<Mix> all;
  for (unsigned run = 0; run < 16; ++run) {
    Mix mix{{}, 1.0 / 16};
    for (std::size_t k = 0; k < strata.size(); ++k) mix.classes.push_back(class_in(strata[k], quarter(run, k)));
    const auto same = std::find_if(all.begin(), all.end(), [&](const Mix& m) { return m.classes == mix.classes; });
    if (same == all.end())
      all.push_back(std::move(mix));
    else
      same->chance += mix.chance;
  }
  return all;
}

}  // namespace

FanGrounds::FanGrounds(const Site& site, const Tables& tables, const Ground& ground, const Tool& tool,
                       const FanTable::LaunchLine& line, std::vector<std::size_t> guessed)
    : guessed_(std::move(guessed)) {
  std::vector<std::vector<SoilGuess>> strata;
  for (const std::size_t stratum : guessed_) strata.push_back(soil_mistaken_for(site.strata[stratum].soil, tables));
  const bool coarse = strata.size() > 1;
  for (Mix& mix : strata.size() <= 2 ? every_combination(strata) : sixteen(strata)) {
    std::unique_ptr<const Ground> own;
    for (std::size_t k = 0; k < guessed_.size(); ++k)
      if (mix.classes[k] != site.strata[guessed_[k]].soil)
        own =
            std::make_unique<const Ground>((own ? *own : ground).with_class(site, tables, guessed_[k], mix.classes[k]));
    const Ground& its = own ? *own : ground;
    members_.push_back({mix.chance, std::move(mix.classes), std::move(own), FanTable(site, its, tool, line, coarse)});
  }
}

}  // namespace burrow
