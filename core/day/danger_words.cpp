#include "danger_words.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

namespace burrow {

namespace {

using namespace std::string_view_literals;

/// At the beginning of a word.
constexpr std::array surely{"smell"sv,  "stink"sv,    "odour"sv,       "odor"sv,     "hiss"sv,  "struck"sv, "strike"sv,
                            "smoke"sv,  "leak"sv,     "flame"sv,       "fire"sv,     "explo"sv, "shock"sv,  "spark"sv,
                            "lights"sv, "collapse"sv, "riech"sv,       "zisch"sv,    "rauch"sv, "leck"sv,   "feuer"sv,
                            "brenn"sv,  "funken"sv,   "stromschlag"sv, "einsturz"sv, "licht"sv};
/// Anywhere: German joins them.
constexpr std::array surely_within{"geruch"sv, "getroffen"sv, "angebohrt"sv, "angefahren"sv, "gaslea"sv};
constexpr std::array maybe{"gas"sv,   "hit "sv,   "hit,"sv,    "metal"sv, "plastic"sv, "hollow"sv,
                           "water"sv, "steam"sv,  "cable"sv,   "wire"sv,  "crack"sv,   "lift"sv,
                           "sink"sv,  "sank"sv,   "wasser"sv,  "dampf"sv, "kabel"sv,   "draht"sv,
                           "riss"sv,  "hebung"sv, "setzung"sv, "hohl"sv,  "strom"sv,   "kunststoff"sv};

std::string lowered(std::string_view text) {
  std::string low(text);
  std::transform(low.begin(), low.end(), low.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return low + " ";
}

bool letter(char c) {
  return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

bool begins_a_word(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1))
    if (at == 0 || !letter(text[at - 1])) return true;
  return false;
}

template <class Words, class Found>
bool any_of(const Words& words, const Found& found) {
  return std::any_of(words.begin(), words.end(), found);
}

}  // namespace

DangerWords danger_in(std::string_view text) {
  const std::string low = lowered(text);
  const auto begins = [&](std::string_view word) { return begins_a_word(low, word); };
  const auto within = [&](std::string_view word) { return low.find(word) != std::string::npos; };
  if (any_of(surely, begins) || any_of(surely_within, within)) return DangerWords::surely;
  return any_of(maybe, begins) ? DangerWords::maybe : DangerWords::none;
}

}  // namespace burrow
