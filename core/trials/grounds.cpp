#include "grounds.h"

#include <cmath>

#include "burrow/soil/mistaken_soils.h"
#include "random.h"

namespace burrow::trials {

namespace {
constexpr std::size_t drawn_grounds = 32;
}  // namespace

std::vector<DrawnGround> grounds_of(const Site& site, const Tables& tables, std::uint64_t seed) {
  std::vector<std::size_t> guessed;
  std::vector<std::vector<SoilGuess>> classes;
  for (std::size_t i = 0; i < site.strata.size(); ++i) {
    if (site.strata[i].known.value != StratumEvidence::guess) continue;
    auto guesses = soil_mistaken_for(site.strata[i].soil, tables);
    if (guesses.size() < 2) continue;
    guessed.push_back(i);
    classes.push_back(std::move(guesses));
  }
  std::vector<DrawnGround> grounds{{site, 1.0}};
  if (guessed.size() <= 2) {
    for (std::size_t k = 0; k < guessed.size(); ++k) {
      std::vector<DrawnGround> finer;
      for (const DrawnGround& ground : grounds)
        for (const SoilGuess& guess : classes[k]) {
          finer.push_back(ground);
          finer.back().site.strata[guessed[k]].soil = guess.soil;
          finer.back().chance *= guess.chance;
        }
      grounds = std::move(finer);
    }
    return grounds;
  }
  grounds.assign(drawn_grounds, {site, 1.0 / drawn_grounds});
  Engine engine(seed, ~std::uint64_t{0});
  for (std::size_t k = 0; k < guessed.size(); ++k) {
    std::vector<std::string> dealt;
    for (const SoilGuess& guess : classes[k])
      dealt.insert(dealt.end(), static_cast<std::size_t>(std::lround(guess.chance * drawn_grounds)), guess.soil);
    for (std::size_t i = dealt.size(); i > 1; --i) std::swap(dealt[i - 1], dealt[engine() % i]);
    for (std::size_t i = 0; i < drawn_grounds; ++i) grounds[i].site.strata[guessed[k]].soil = dealt[i];
  }
  return grounds;
}

}  // namespace burrow::trials
