#include "layer_words.h"

#include <algorithm>
#include <array>

namespace burrow {

namespace {

enum class Sign { small, capital, figure, letter_of_no_case, other };

Sign sign_of(char c) {
  if (c >= 'a' && c <= 'z') return Sign::small;
  if (c >= 'A' && c <= 'Z') return Sign::capital;
  if (c >= '0' && c <= '9') return Sign::figure;
  return static_cast<unsigned char>(c) >= 0x80 ? Sign::letter_of_no_case : Sign::other;
}

/// Umlauts in two letters of the same case.
std::string without_umlauts(std::string_view text) {
  static constexpr std::pair<std::string_view, std::string_view> letters[] = {
      {"ä", "ae"}, {"Ä", "AE"}, {"ö", "oe"}, {"Ö", "OE"}, {"ü", "ue"}, {"Ü", "UE"}, {"ß", "ss"}};
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const auto umlaut = std::find_if(std::begin(letters), std::end(letters),
                                     [&](const auto& l) { return text.substr(i).starts_with(l.first); });
    if (umlaut == std::end(letters)) {
      out += text[i++];
    } else {
      out += umlaut->second;
      i += umlaut->first.size();
    }
  }
  return out;
}

/// Whether a word ends softly before the sign at `i`.
bool soft_cut(std::string_view text, std::size_t i) {
  const Sign before = sign_of(text[i - 1]), here = sign_of(text[i]);
  if ((before == Sign::figure) != (here == Sign::figure)) return true;
  if (before == Sign::small && here == Sign::capital) return true;
  // The last of several capitals begins the word of small letters after it: "GASLeitung".
  return before == Sign::capital && here == Sign::capital && i + 1 < text.size() && sign_of(text[i + 1]) == Sign::small;
}

constexpr std::size_t least_for_plural = 4;

struct Letters {
  std::string text;                 ///< without blanks
  std::vector<std::size_t> breaks;  ///< where blanks stood
};

Letters letters_of(std::string_view phrase) {
  Letters letters;
  for (const char c : phrase) {
    if (c == ' ')
      letters.breaks.push_back(letters.text.size());
    else
      letters.text += c;
  }
  return letters;
}

}  // namespace

LayerWords::LayerWords(std::string_view name) {
  const std::string text = without_umlauts(name);
  bool hard = true;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const Sign sign = sign_of(text[i]);
    if (sign == Sign::other) {
      hard = true;
      continue;
    }
    if (hard || soft_cut(text, i)) pieces_.push_back({{}, !hard});
    hard = false;
    pieces_.back().text += sign == Sign::capital ? static_cast<char>(text[i] - 'A' + 'a') : text[i];
  }
  for (const Piece& piece : pieces_)
    if (!piece.is_number()) without_figures_ += (piece.soft_before || without_figures_.empty() ? "" : " ") + piece.text;
}

std::optional<LayerWords::Place> LayerWords::at(std::size_t piece, std::string_view phrase) const {
  if (phrase.empty() || piece >= pieces_.size() || phrase[0] != pieces_[piece].text[0]) return std::nullopt;
  const Letters wanted = letters_of(phrase);
  std::size_t met = 0;
  for (std::size_t i = piece; i < pieces_.size(); ++i) {
    // A hard cut of the name must be a blank of the phrase.
    const bool cut_there = i == piece || pieces_[i].soft_before ||
                           std::find(wanted.breaks.begin(), wanted.breaks.end(), met) != wanted.breaks.end();
    if (!cut_there) return std::nullopt;
    const std::string_view rest = std::string_view(wanted.text).substr(met);
    const std::string& text = pieces_[i].text;
    const bool plural = wanted.text.size() >= least_for_plural && text.size() == rest.size() + 1 &&
                        text.starts_with(rest) && text.back() == 's';
    if (text == rest || plural) return Place{piece, i + 1};
    if (!rest.starts_with(text)) return std::nullopt;
    met += text.size();
  }
  return std::nullopt;
}

std::optional<LayerWords::Place> LayerWords::find(std::string_view phrase) const {
  for (std::size_t i = 0; i < pieces_.size(); ++i)
    if (const auto place = at(i, phrase)) return place;
  return std::nullopt;
}

bool LayerWords::is_code(std::string_view code) const {
  return !without_figures_.empty() && without_figures_ == code;
}

std::pair<std::string, std::size_t> LayerWords::word_at(std::size_t piece) const {
  std::string word;
  std::size_t i = piece;
  for (; i < pieces_.size() && (i == piece || pieces_[i].soft_before); ++i) {
    if (pieces_[i].is_number()) break;
    word += pieces_[i].text;
  }
  return {std::move(word), std::max(i, piece + 1)};
}

std::optional<Compound> compound_of(std::string_view word) {
  static constexpr std::array<std::string_view, 16> heads{
      "hausanschluss", "leitungen", "leitung", "versorgung", "anschluss", "schaechte", "schacht", "schieber",
      "kanaele",       "trasse",    "kabel",   "kanal",      "rohre",     "rohr",      "netz",    "hydrant"};
  for (const std::string_view head : heads)
    if (word.size() > head.size() + 1 && word.ends_with(head))
      return Compound{std::string(word.substr(0, word.size() - head.size())), head.size()};
  return std::nullopt;
}

}  // namespace burrow
