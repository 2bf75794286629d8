#include "burrow/crossing/danger_words.h"

#include <algorithm>
#include <array>
#include <string>

namespace burrow {

namespace {

using namespace std::string_view_literals;

/// At the beginning of a word.
constexpr std::array surely{"smell"sv,    "stink"sv,         "odour"sv,   "odor"sv,     "hiss"sv,         "struck"sv,
                            "strike"sv,   "smoke"sv,         "leak"sv,    "flame"sv,    "fire"sv,         "explo"sv,
                            "shock"sv,    "spark"sv,         "lights"sv,  "collapse"sv, "burst"sv,        "ruptur"sv,
                            "punctur"sv,  "severed"sv,       "riech"sv,   "zisch"sv,    "rauch"sv,        "leck"sv,
                            "feuer"sv,    "brenn"sv,         "funken"sv,  "einsturz"sv, "stromschlag"sv,  "licht"sv,
                            "geplatzt"sv, "huele"sv,         "olor"sv,    "apesta"sv,   "silb"sv,         "humo"sv,
                            "fuga"sv,     "llamas"sv,        "fuego"sv,   "incend"sv,   "arde"sv,         "chispa"sv,
                            "calambre"sv, "electrocut"sv,    "derrumb"sv, "colaps"sv,   "desplom"sv,      "revent"sv,
                            "pinchad"sv,  "choque"sv,        "chocado"sv, "chocamos"sv, "choc\xc3\xb3"sv, "luces"sv,
                            "luz"sv,      "apag\xc3\xb3n"sv, "apagon"sv};
/// Anywhere: German joins them.
constexpr std::array surely_within{"geruch"sv, "getroffen"sv,   "angebohrt"sv, "angefahren"sv,
                                   "gaslea"sv, "durchtrennt"sv, "rohrbruch"sv, "leitungsbruch"sv};
/// Done to a line, danger.
constexpr std::array harmed{"hit "sv,
                            "hit,"sv,
                            "broke"sv,
                            "damag"sv,
                            "pierc"sv,
                            "ripped"sv,
                            "tore "sv,
                            "gerissen"sv,
                            "zerrissen"sv,
                            "gebrochen"sv,
                            "erwischt"sv,
                            "besch\xc3\xa4"
                            "dig"sv,
                            "golpe"sv,
                            "rompi"sv,
                            "roto"sv,
                            "rota "sv,
                            "rotura"sv,
                            "da\xc3\xb1"
                            "ad"sv,
                            "toc\xc3\xb3"sv,
                            "tocado"sv,
                            "tocamos"sv};
constexpr std::array lines{"gas"sv,
                           "main"sv,
                           "cable"sv,
                           "pipe"sv,
                           "duct"sv,
                           "wire"sv,
                           "drain"sv,
                           "sewer"sv,
                           "wasserl"sv,
                           "draht"sv,
                           "tuber"sv,
                           "tubo"sv,
                           "conduc"sv,
                           "ca\xc3\xb1"
                           "er"sv,
                           "acometida"sv,
                           "desag"sv};
constexpr std::array lines_within{"leitung"sv, "kabel"sv, "rohr"sv};
constexpr std::array maybe{"gas"sv,
                           "metal"sv,
                           "met\xc3\xa1l"sv,
                           "plastic"sv,
                           "pl\xc3\xa1st"sv,
                           "hollow"sv,
                           "water"sv,
                           "steam"sv,
                           "cable"sv,
                           "wire"sv,
                           "crack"sv,
                           "lift"sv,
                           "sink"sv,
                           "sank"sv,
                           "wasser"sv,
                           "dampf"sv,
                           "kabel"sv,
                           "draht"sv,
                           "riss"sv,
                           "hebung"sv,
                           "setzung"sv,
                           "hohl"sv,
                           "strom"sv,
                           "kunststoff"sv,
                           "agua"sv,
                           "vapor"sv,
                           "hueco"sv,
                           "vac\xc3\xad"
                           "o"sv,
                           "vacio"sv,
                           "grieta"sv,
                           "hundi"sv,
                           "levant"sv,
                           "asent"sv,
                           "alambre"sv,
                           "corriente"sv,
                           "descarga"sv};

std::string in_small_letters(std::string_view text) {
  std::string low(text);
  std::transform(low.begin(), low.end(), low.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return low + " ";
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

bool begins_some_word(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1))
    if (at == 0 || !is_letter(text[at - 1])) return true;
  return false;
}

template <class Words, class Found>
bool some_of(const Words& words, const Found& found) {
  return std::any_of(words.begin(), words.end(), found);
}

}  // namespace

DangerWords danger_in(std::string_view text) {
  const std::string low = in_small_letters(text);
  const auto begins = [&](std::string_view word) { return begins_some_word(low, word); };
  const auto within = [&](std::string_view word) { return low.find(word) != std::string::npos; };
  if (some_of(surely, begins) || some_of(surely_within, within)) return DangerWords::surely;
  const bool harm = some_of(harmed, begins), line = some_of(lines, begins) || some_of(lines_within, within);
  if (harm && line) return DangerWords::surely;
  return harm || some_of(maybe, begins) ? DangerWords::maybe : DangerWords::none;
}

}  // namespace burrow
